package steps

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// CupTime is for how many seconds a cup stands under an emitter in the cup test, and
// Spread how many times the variation of manufacture a cup may lie off: 19 of 20
// emitters, of a normal curve.
const (
	CupTime = 300
	Spread  = 2
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	practice := source.Ref{Standing: source.Practice}
	return []formula.Assumption{
		{
			Code: "steps.CupTime", Title: "How long a cup stands under an emitter in the cup test",
			Values: []float64{CupTime}, Kind: unit.Duration,
			Used:   "The steps of building.",
			Source: practice,
		},
		{
			Code: "steps.Spread", Title: "How far a cup may be off, in variations of manufacture",
			Values: []float64{Spread},
			Used:   "The steps of building.",
			Source: practice,
		},
		{
			Code: "steps.items", Title: "Minutes of work for each part",
			Rule:   "Three for a fitting, half a minute for an emitter or a metre of tubing, a quarter of an hour for a pump or a tank, and the like.",
			Used:   "The steps of building, which say that their times are rough.",
			Source: practice,
		},
		{
			Code: "steps.kinds", Title: "Minutes of work for each step besides",
			Rule:   "Five minutes to half an hour, for fetching, looking and waiting.",
			Used:   "The steps of building.",
			Source: practice,
		},
	}
}
