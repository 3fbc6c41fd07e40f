package check

import (
	"evenrow/wasm/ground/source"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/water"
)

// hazen returns a row of the chart for polyethylene tube, within 0.5 %. A psi
// is 2.309 ft of water.
func hazen(id, given string, q, d, want float64) Row {
	return Row{
		ID: id, Topic: "Hazen and Williams", Quantity: "loss in 100 ft of polyethylene tube, C 140", Given: given,
		Source: source.Ref{Work: "friction-loss chart for polyethylene tube, reprinted in many extension guides", Standing: source.Memory},
		Parts:  []Part{of("hazen-williams-head", want, 0.005*want, q*gpm, 100*foot, d*inch, 140).in("psi", 2.309*foot)},
	}
}

const handNote = "Only the same friction law agrees. Laws that stay laminar up to Re 2000 or beyond give 9 to 17 % less."

// level returns a row of the friction along a level row, within 1 %.
func level(id, given string, n, spacing, q, hand, blasius float64) Row {
	nu := water.At(20).Kinematic
	return Row{
		ID: id, Topic: "rows", Quantity: "friction along a level row of equal outlets", Given: given, Note: handNote,
		Source: source.Ref{Work: "equation of Darcy and Weisbach, summed stretch by stretch", Standing: source.Derived},
		Parts: []Part{
			of("row-head-smooth", hand, 0.01*hand, n, spacing, q*lph, 13.6*mm, nu).in("m", 1),
			of("row-head-blasius", blasius, 0.01*blasius, n, spacing, q*lph, 13.6*mm, nu).in("m", 1),
		},
	}
}

// Heads of HY-036 and HY-037 as computed, from which their pressures follow.
var (
	small = pipe.Head(0.9*pipe.Area(0.003), 9, 0.003, 0, 1.519e-6)
	steel = pipe.Head(0.006, 60, 0.05, 2e-6, 1.138e-3/999)
)

var tubingRows = []Row{
	{
		ID: "HY-036", Topic: "tubing", Quantity: "loss in a small tube, laminar",
		Given:  "μ 1.519 mPa s, ρ 1000 kg/m³, D 3 mm, L 9 m, v 0.9 m/s",
		Source: source.Ref{Work: source.Cengel, At: "example 8-2 as retyped"},
		Parts: []Part{
			of("reynolds", 1777, 1, 0.9, 0.003, 1.519e-6),
			of("friction-factor", 0.0360, 0.005*0.036, 1777, 0),
			of("tubing-head", 4.46, 0.005*4.46, 0.9*pipe.Area(0.003), 9, 0.003, 0, 1.519e-6).in("m", 1),
			of("pressure-of-head", 43.7, 0.005*43.7, 1000, small).in("kPa", kPa),
		},
	},
	{
		ID: "HY-037", Topic: "tubing", Quantity: "loss in a pipe, turbulent, and power for it",
		Given:  "ρ 999 kg/m³, μ 1.138 mPa s, D 5 cm, L 60 m, Q 6 L/s, ε 0.002 mm",
		Source: source.Ref{Work: source.Cengel, At: "example 8-3 as retyped"},
		Note:   "The book rounds the factor; Colebrook's gives 96.2 kPa, 9.82 m and 577 W.",
		Parts: []Part{
			of("tubing-head", 9.85, 0.01*9.85, 0.006, 60, 0.05, 2e-6, 1.138e-3/999).in("m", 1),
			of("pressure-of-head", 96.5, 0.01*96.5, 999, steel).in("kPa", kPa),
			of("hydraulic-power", 579, 0.01*579, 999, 0.006, steel).in("W", 1),
		},
	},
	{
		ID: "HY-040", Topic: "tubing", Quantity: "pressure at the inlet: without losses, with friction, with all losses",
		Given:  "D 0.0625 ft, L 60 ft, Q 0.0267 ft³/s, rise 20 ft, f 0.0215, K 4 × 1.5 + 10 + 2, nozzle 0.5 in, ρ 1.94 slug/ft³",
		Source: source.Ref{Work: source.Munson, At: "example 8.8 as retyped"},
		Parts: []Part{
			inlet(10.75, 0, 0),
			inlet(21.3, 0.0215, 0),
			inlet(30.5, 0.0215, 18),
		},
	},
	{
		ID: "HY-041", Topic: "tubing", Quantity: "depth of a reservoir",
		Given:  "Q 8.4 L/s, D 75 mm, L 100 m, f 0.017, K 0.5 at the inlet and 1 at the exit",
		Source: source.Ref{Work: source.Fox, At: "example 8.5 as retyped"},
		Note:   "The retyped code adds 1.6 m without a reason; left out here.",
		Parts:  []Part{of("all-head", 4.46, 0.005*4.46, 0.017, 100, 0.075, 1.5, 0.0084).in("m", 1)},
	},
	hazen("HY-042", "D 0.622 in, 2 gal/min", 2, 0.622, 1.76),
	hazen("HY-044", "D 0.824 in, 4 gal/min", 4, 0.824, 1.62),
	hazen("HY-045", "D 0.824 in, 8 gal/min", 8, 0.824, 5.84),
	level("HY-080", "40 outlets of 2 L/h, 0.3 m apart, D 13.6 mm, 20 °C", 40, 0.3, 2, 0.0200, 0.0186),
	level("HY-082", "30 outlets of 4 L/h, 0.5 m apart, D 13.6 mm, 20 °C", 30, 0.5, 4, 0.0489, 0.0477),
}

// inlet returns one part of HY-040, within 0.5 %.
func inlet(want, f, k float64) Part {
	return of("inlet-pressure", want, 0.005*want,
		1.94*scf, 0.0267*cfs, 0.0625*foot, 0.5*inch, 20*foot, 60*foot, f, k).in("psi", psi)
}
