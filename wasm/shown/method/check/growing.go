package check

import "evenrow/wasm/ground/source"

var (
	oxygenTable = source.Ref{Work: "EN 25814", At: "table of saturation, as reproduced; APHA polynomial of 1985"}
	chlorineRef = source.Ref{Work: "Goyal (ed.), Management, Performance and Applications of Micro Irrigation Systems", At: "table 3, injection rate of chlorine"}
)

// oxygen returns a row of the table of oxygen in water.
func oxygen(id, given string, celsius, want, tol float64) Row {
	return Row{
		ID: id, Topic: "water", Quantity: "oxygen that fresh water holds at 101.325 kPa", Given: given, Source: oxygenTable,
		Parts: []Part{of("dissolved-oxygen", want, tol, celsius).in("mg/L", 1)},
	}
}

// bleach returns a row of the table of chlorine.
func bleach(id, given string, flow, milligrams, strength, want float64) Row {
	return Row{
		ID: id, Topic: "chlorine", Quantity: "bleach to inject", Given: given, Source: chlorineRef,
		Parts: []Part{of("chlorine-injection", want, 0.006, flow*gpm, milligrams, strength*pct).in("gal/h", gpm/60)},
	}
}

// mL is a millilitre, standing in for the flow that it was caught at: the
// measures of evenness are shares.
func cups(volumes ...float64) []float64 {
	for i := range volumes {
		volumes[i] *= 1e-6
	}
	return volumes
}

var growingRows = []Row{
	oxygen("DO-00", "5 °C", 5, 12.8, 0.06),
	oxygen("DO-01", "10 °C", 10, 11.3, 0.06),
	oxygen("DO-03", "18 °C", 18, 9.47, 0.011),
	oxygen("DO-04", "20 °C", 20, 9.09, 0.011),
	oxygen("DO-06", "25 °C", 25, 8.26, 0.011),
	oxygen("DO-07", "28 °C", 28, 7.83, 0.011),
	bleach("CL-00", "1 mg/L, 100 gal/min, stock of 5.25 %", 100, 1, 5.25, 0.114),
	bleach("CL-01", "2 mg/L, 100 gal/min, stock of 5.25 %", 100, 2, 5.25, 0.229),
	bleach("CL-03", "20 mg/L, 500 gal/min, stock of 5.25 %", 500, 20, 5.25, 11.43),
	bleach("CL-04", "1 mg/L, 100 gal/min, stock of 10 %", 100, 1, 10, 0.06),
	bleach("CL-06", "50 mg/L, 500 gal/min, stock of 10 %", 500, 50, 10, 15.0),
	{
		ID: "CL-10", Topic: "chlorine", Quantity: "strength of bleach let down with water", Given: "1 part of 5.25 % and 9 parts of water",
		Source: source.Ref{Work: "University of Georgia extension", At: "list of greenhouse disinfectants, which rounds it to 0.5 %"},
		Parts:  []Part{of("diluted-strength", 0.525, 0.03, 5.25*pct, 9).in("%", pct)},
	},
	{
		ID: "SB-01", Topic: "medium", Quantity: "water held, container capacity and air space of a coco bag", Given: "18.0 L wet, 4.176 L of solids, 11.603 kg drained, 2.05 kg dry",
		Source: source.Ref{At: "worked example of a supplier", Standing: source.Practice},
		Parts: []Part{
			of("water-held", 9.553, 0.0005, 11.603, 2.05).in("L", litre),
			of("container-capacity", 53.1, 0.06, 9.553*litre, 18*litre).in("%", pct),
			of("air-space", 23.7, 0.06, 18*litre, 4.176*litre, 9.553*litre).in("%", pct),
		},
	},
	{
		ID: "DU-01", Topic: "evenness", Quantity: "distribution uniformity of the low quarter", Given: "16 cups: 95, 100, 98, 102, 90, 101, 99, 97, 103, 96, 88, 100, 94, 105, 99 and 93 mL",
		Source: counted,
		Parts:  []Part{of("low-quarter", 93.6, 0.06, cups(95, 100, 98, 102, 90, 101, 99, 97, 103, 96, 88, 100, 94, 105, 99, 93)...).in("%", pct)},
	},
	{
		ID: "DU-03", Topic: "evenness", Quantity: "distribution uniformity with two blocked emitters", Given: "12 cups: 100, 100, 100, 60, 98, 102, 97, 55, 101, 99, 103 and 96 mL",
		Source: counted,
		Parts:  []Part{of("low-quarter", 76.0, 0.06, cups(100, 100, 100, 60, 98, 102, 97, 55, 101, 99, 103, 96)...).in("%", pct)},
	},
	{
		ID: "GD-01", Topic: "degree-days", Quantity: "degree-days without a ceiling, with one, and folded back at it", Given: "18 to 34 °C, base 10 °C, ceiling 30 °C",
		Source: source.Ref{Work: "Heliyon 6(10) (2020) e05114", At: "table 3, methods III, VIII and IX, worked out", Standing: source.Derived},
		Parts: []Part{
			of("degree-days", 16, 0.001, 34, 18, 10).in("°C d", 1),
			of("degree-days-capped", 14, 0.001, 34, 18, 10, 30).in("°C d", 1),
			of("degree-days-folded", 12, 0.001, 34, 18, 10, 30).in("°C d", 1),
		},
	},
}
