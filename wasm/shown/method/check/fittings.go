package check

import "evenrow/wasm/ground/source"

// narrow returns a row of a sharp contraction, within 1 %.
func narrow(id, given string, ratio, want float64) Row {
	return Row{
		ID: id, Topic: "fittings", Quantity: "loss coefficient of a sharp contraction, on the velocity behind it", Given: given,
		Source: source.Ref{Work: source.Streeter, At: "table of contraction coefficients, as reprinted; K = (1/Cc - 1)²", Standing: source.Derived},
		Parts:  []Part{of("contraction", want, 0.01*want, ratio)},
	}
}

var fittingRows = []Row{
	{
		// 0.61 × π/4 × 9 mm² × √(2 × 9.80665 × 10) m/s, by hand.
		ID: "LK-01", Topic: "leaks", Quantity: "flow out of a sharp-edged hole", Given: "d 3 mm, h 10 m, coefficient 0.61",
		Source: source.Ref{Work: "Torricelli's law", Standing: source.Derived},
		Parts:  []Part{of("hole-flow", 3.623, 0.0005, 3*mm, 10).in("L/min", 60*lph)},
	},
	narrow("HY-083", "A₂/A₁ 0.1, Cc 0.624", 0.1, 0.363),
	narrow("HY-084", "A₂/A₁ 0.5, Cc 0.681", 0.5, 0.219),
	narrow("HY-086", "A₂/A₁ 0.9, Cc 0.892", 0.9, 0.0147),
	{
		ID: "HY-087", Topic: "fittings", Quantity: "loss coefficient of a sudden expansion, on the velocity before it", Given: "d₁/d₂ 0.5",
		Source: source.Ref{Work: "Borda and Carnot, (1 - (d₁/d₂)²)²", Standing: source.Derived},
		Parts:  []Part{of("expansion", 0.5625, 0, 0.5, 1)},
	},
}
