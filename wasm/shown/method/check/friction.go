package check

import "evenrow/wasm/ground/source"

const library = "value printed with a library of fluid-mechanics formulas"

// factor returns a row of a friction factor.
func factor(id, quantity, given string, from source.Ref, p ...Part) Row {
	return Row{ID: id, Topic: "friction", Quantity: quantity, Given: given, Source: from, Parts: p}
}

// smooth returns a row of a factor measured in a smooth pipe, within 4 %.
func smooth(id, given string, re, want float64) Row {
	r := factor(id, "measured factor of a smooth pipe", given,
		source.Ref{Work: source.McKeon, At: "smooth-pipe data as retyped"},
		of("friction-factor", want, 0.04*want, re, 0))
	r.Note = "A measurement: the tolerance is its scatter about any law."
	return r
}

var frictionRows = []Row{
	factor("HY-016", "factor, Colebrook", "Re 100 000, ε/D 0.0001",
		source.Ref{Work: source.Colebrook + "; " + source.Clamond, At: library},
		of("friction-factor", 0.0185139, 1e-5, 1e5, 1e-4)),
	{
		ID: "HY-017", Topic: "friction", Quantity: "factor, Swamee and Jain", Given: "Re 100 000, ε/D 0.0001",
		Source: source.Ref{Work: source.SwameeJain, At: library},
		Note:   "The library uses 6.97 in place of 5.74/Re^0.9 and prints 0.0184524.",
		Parts:  []Part{of("swamee-jain-factor", 0.018452, 2e-5, 1e5, 1e-4)},
	},
	factor("HY-018", "factor, Churchill", "Re 100 000, ε/D 0.0001",
		source.Ref{Work: source.Churchill, At: library},
		of("churchill-factor", 0.0184626, 1e-6, 1e5, 1e-4)),
	factor("HY-020", "factor, Churchill", "Re 1000, ε/D 0.0001",
		source.Ref{Work: source.Churchill, At: library},
		of("churchill-factor", 0.064000, 1e-5, 1000, 1e-4)),
	factor("HY-022", "factor, Haaland", "Re 100 000, ε/D 0.0001",
		source.Ref{Work: source.Haaland, At: library},
		of("haaland-factor", 0.018265, 1e-5, 1e5, 1e-4)),
	factor("HY-023", "factor, Blasius", "Re 10 000",
		source.Ref{Work: source.Blasius, At: library},
		of("blasius-factor", 0.03164, 1e-12, 1e4)),
	factor("HY-024", "factor of laminar flow", "Re 128",
		source.Ref{Work: "64/Re", At: library},
		of("laminar-factor", 0.5, 0, 128),
		of("friction-factor", 0.5, 0, 128, 0)),
	factor("HY-025", "where 64/Re and Blasius cross", "constants 64 and 0.3164",
		source.Ref{Work: source.Zazueta, At: "table 1, which changes at 1200", Standing: source.Derived},
		of("laminar-blasius-crossing", 1187, 1, 64, 0.3164)),
	smooth("HY-026", "Re 3980", 3980, 0.03995),
	smooth("HY-028", "Re 10 900", 10900, 0.03088),
	smooth("HY-030", "Re 59 220", 59220, 0.02000),
	smooth("HY-031", "Re 120 000", 120000, 0.01686),
	factor("HY-032", "factor, Colebrook, stainless pipe", "3.056 m/s, D 0.05 m, ρ 999 kg/m³, μ 1.138 mPa s, ε 0.002 mm",
		source.Ref{Work: source.Cengel, At: "example 8-3 as retyped"},
		of("reynolds", 134126, 100, 3.056, 0.05, 1.138e-3/999),
		of("friction-factor", 0.0172, 0.01*0.0172, 134126, 0.002/50)),
	{
		ID: "HY-034", Topic: "friction", Quantity: "factor of drawn tubing", Given: "Re 45 095, D 0.0625 ft, ε 0.000005 ft",
		Source: source.Ref{Work: source.Munson, At: "example 8.8 as retyped"},
		Note:   "Read off a chart in the book; Colebrook's equation gives 0.0217.",
		Parts:  []Part{of("friction-factor", 0.0215, 0.015*0.0215, 45095, 5e-6/0.0625)},
	},
	{
		ID: "HY-035", Topic: "friction", Quantity: "measured factor of polyethylene rows", Given: "Re 20 000, bores 10 to 19.7 mm",
		Source: source.Ref{Work: source.Unesp, At: "abstract"},
		Note:   "A law for smooth walls must come out 3 to 6 % higher: the study found Blasius 5.1 % too high.",
		Parts: []Part{
			of("polyethylene-factor", 0.02523, 5e-6, 20000),
			of("blasius-factor", 0.02523*1.045, 0.02523*0.015, 20000),
		},
	},
}
