package check

import (
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

var (
	sp811  = source.Ref{Work: source.SP811, At: "B.8 and B.9"}
	memory = source.Ref{Work: source.SP811, At: "B.8 and B.9", Standing: source.Memory}
)

// conversion returns a row of a unit, to seven digits.
func conversion(id, quantity string, from source.Ref, p ...Part) Row {
	for i := range p {
		p[i].Tol = 5e-7 * p[i].Want
	}
	return Row{ID: id, Topic: "units", Quantity: quantity, Given: "1", Source: from, Parts: p}
}

// one returns what one of the unit that sys shows is, printed in another.
func one(kind unit.Kind, sys unit.System, want float64, symbol string, per float64) Part {
	return Part{Kind: kind, System: sys, In: []float64{1}, Want: want, Unit: symbol, Per: per}
}

var unitRows = []Row{
	conversion("HY-105", "psi", sp811, one(unit.Pressure, unit.US, 6894.757, "Pa", 1)),
	conversion("HY-106", "US gallon a minute", sp811,
		one(unit.Flow, unit.US, 6.309020e-5, "m³/s", 1),
		one(unit.Flow, unit.US, 3.785412, "L/min", 1e-3/60)),
	conversion("HY-107", "US gallon an hour", memory, one(unit.EmitterFlow, unit.US, 3.785412, "L/h", lph)),
	conversion("HY-109", "bar", sp811, one(unit.Pressure, unit.Metric, 1e5, "Pa", 1)),
	conversion("HY-111", "inch", memory, one(unit.Bore, unit.US, 25.4, "mm", mm)),
	conversion("HY-112", "US gallon a minute", memory, one(unit.Flow, unit.US, 227.1247, "L/h", lph)),
	{
		ID: "HY-113", Topic: "units", Quantity: "feet of water in a psi", Given: "62.4 lb/ft³",
		Source: source.Ref{Work: source.Merkley, At: "constants"},
		Parts:  []Part{of("head-of-pressure", 2.308, 0.001, 62.4*pcf, psi).in("ft", foot)},
	},
	{
		ID: "HY-114", Topic: "units", Quantity: "water horsepower of 3956 and of 3960 gal/min lifted by 1 ft", Given: "62.4 lb/ft³; 8.333 lb/gal",
		Source: source.Ref{Work: source.Merkley + "; " + source.Auburn, At: "equations 222 and 223"},
		Note:   "The constant depends on the weight of water that it assumes.",
		Parts: []Part{
			of("hydraulic-power", 1, 0.001, 62.4*pcf, 3956*gpm, foot).in("hp", hp),
			of("hydraulic-power", 1, 0.001, 8.333*pound/3.785411784e-3, 3960*gpm, foot).in("hp", hp),
		},
	},
}
