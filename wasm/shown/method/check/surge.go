package check

import (
	"math"

	"evenrow/wasm/ground/source"
)

// spike returns a row of the table of surges for 1 ft/s, within 0.1 psi.
func spike(id, given string, e, dr, want float64) Row {
	return Row{
		ID: id, Topic: "surge", Quantity: "surge of a sudden change of 1 ft/s in plastic pipe", Given: given,
		Source: source.Ref{Work: "table of surges in thermoplastic pipe, damaged reprint", Standing: source.Practice},
		Parts:  []Part{of("plastic-surge", want, 0.1, e*psi, dr, 62.4*pcf, foot).in("psi", psi)},
	}
}

var surgeRows = []Row{
	spike("HY-089", "E 115 000 psi, DR 11", 115000, 11, 12.7),
	spike("HY-091", "E 115 000 psi, DR 21", 115000, 21, 8.8),
	spike("HY-092", "E 115 000 psi, DR 9", 115000, 9, 14.3),
	spike("HY-094", "E 400 000 psi, DR 18", 400000, 18, 17.4),
	{
		ID: "HY-095", Topic: "surge", Quantity: "surge by Joukowsky's equation", Given: "Q 30 ft³/s, radius 2 ft, a 3200 ft/s, ρ 1.94 slug/ft³",
		Source: source.Ref{Work: source.Daugherty, At: "example 13.4 as retyped"},
		Parts:  []Part{of("surge", 102.9, 0.002*102.9, 1.94*scf, 3200*foot, 30/(math.Pi*4)*foot).in("psi", psi)},
	},
	{
		ID: "HY-097", Topic: "filling", Quantity: "volume and fill time of a line", Given: "D 13.6 mm, L 12 m, 80 L/h flow in",
		Source: source.Ref{Work: "geometry", Standing: source.Derived},
		Parts: []Part{
			of("volume", 1.743, 0.005*1.743, 12, 13.6*mm).in("L", 1e-3),
			of("fill-time", 78.4, 0.005*78.4, 12, 13.6*mm, 80*lph).in("s", 1),
		},
	},
}
