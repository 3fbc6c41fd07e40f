package check

import "evenrow/wasm/ground/source"

// sheet returns a row of an emitter's printed table: k in L/h at 1 bar, the
// pressure p in bar, the flow in L/h to its last printed digit.
func sheet(id, given string, k, x, p, want float64) Row {
	return Row{
		ID: id, Topic: "emitters", Quantity: "flow of a non-compensating emitter, q = k pˣ", Given: given,
		Source: source.Ref{Work: "printed table of a data sheet, maker withheld", Standing: source.Practice},
		Parts:  []Part{of("emitter-flow", want, 0.01, k*lph, barM, x, p*barM).in("L/h", lph)},
	}
}

// class returns a row of the bounds of a class of uniformity, within a point.
func class(id, given string, us, want float64) Row {
	return Row{
		ID: id, Topic: "evenness", Quantity: "emission uniformity that goes with a statistical uniformity", Given: given,
		Source: source.Ref{Work: source.EP458, At: "classes", Standing: source.Memory},
		Parts:  []Part{of("uniformity-from-statistical", want, 1, us*pct).in("%", pct)},
	}
}

// eight are the flows of HY-079 in m³/s.
var eight = []float64{4.0 * lph, 3.8 * lph, 4.2 * lph, 3.9 * lph, 4.1 * lph, 3.6 * lph, 4.0 * lph, 4.2 * lph}

var emitterRows = []Row{
	sheet("HY-063", "k 1.06, x 0.49, 0.6 bar", 1.06, 0.49, 0.6, 0.83),
	sheet("HY-064", "k 1.06, x 0.49, 2.0 bar", 1.06, 0.49, 2.0, 1.49),
	sheet("HY-066", "k 2.05, x 0.49, 0.6 bar", 2.05, 0.49, 0.6, 1.60),
	sheet("HY-067", "k 2.05, x 0.49, 3.0 bar", 2.05, 0.49, 3.0, 3.51),
	sheet("HY-069", "k 4.03, x 0.46, 3.0 bar", 4.03, 0.46, 3.0, 6.68),
	{
		ID: "HY-070", Topic: "evenness", Quantity: "emission uniformity of a design", Given: "CV 0.06, 2 emitters a plant, qmin/qmean 0.95",
		Source: source.Ref{Work: source.Karmeli, At: "formula", Standing: source.Derived},
		Parts:  []Part{of("emission-uniformity", 89.88, 0.01, 0.06, 2, 0.95).in("%", pct)},
	},
	{
		ID: "HY-072", Topic: "evenness", Quantity: "low quarter of a normal distribution, standard deviations below its mean", Given: "share 0.25",
		Source: source.Ref{Work: "statistics of the normal distribution", Standing: source.Derived},
		Parts:  []Part{of("normal-low", 1.2711, 0.0005, 0.25)},
	},
	{
		ID: "HY-073", Topic: "evenness", Quantity: "Christiansen's coefficient of a normal distribution", Given: "CV 0.10",
		Source: source.Ref{Work: "statistics of the normal distribution", Standing: source.Derived},
		Parts:  []Part{of("normal-christiansen", 92.02, 0.02, 0.10).in("%", pct)},
	},
	class("HY-074", "Us 95 %", 95, 94),
	class("HY-075", "Us 85 %", 85, 81),
	class("HY-077", "Us 60 %", 60, 50),
	{
		ID: "HY-079", Topic: "evenness", Quantity: "mean, CV, Us, DU and CU of eight flows", Given: "4.0, 3.8, 4.2, 3.9, 4.1, 3.6, 4.0 and 4.2 L/h",
		Source: source.Ref{Work: "definitions", Standing: source.Derived},
		Parts: []Part{
			of("mean-flow", 3.9750, 0.00005, eight...).in("L/h", lph),
			of("variation", 0.05164, 0.000005, eight...),
			of("statistical-uniformity", 94.84, 0.02, eight...).in("%", pct),
			of("low-quarter", 93.08, 0.02, eight...).in("%", pct),
			of("christiansen-coefficient", 96.07, 0.02, eight...).in("%", pct),
		},
	},
}
