package pipe

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "pipe.narrowing", Title: "Share of the smaller bore that a jet fills behind a sharp contraction, by tenths of the ratio of the areas from 0 to 1",
			Values: []float64{narrowing[0], narrowing[1], narrowing[2], narrowing[3], narrowing[4], narrowing[5], narrowing[6], narrowing[7], narrowing[8], narrowing[9], narrowing[10]},
			Used:   "As Cc in the formula for a contraction, by straight lines between the tenths.",
			Source: source.Ref{Work: source.Streeter, At: "Weisbach's values; those at 0 and at even tenths from memory"},
		},
		{
			Code: "pipe.LaminarMax", Title: "Reynolds number up to which flow is laminar",
			Values: []float64{LaminarMax},
			Used:   "Which of the two laws of friction holds.",
			Source: source.Ref{Work: "hydraulics textbooks", At: "2000 to 2300", Standing: source.Memory},
		},
		{
			Code: "pipe.TurbulentMin", Title: "Reynolds number from which flow is turbulent",
			Values: []float64{TurbulentMin},
			Used:   "Which of the two laws of friction holds. Between the two the friction factor is a straight line in the Reynolds number, which is our own choice.",
			Source: source.Ref{Work: "hydraulics textbooks", Standing: source.Memory},
		},
		{
			Code: "pipe.HoleDischarge", Title: "Discharge coefficient of a sharp-edged hole",
			Values: []float64{HoleDischarge},
			Used:   "The flow out of a hole where an emitter has come out.",
			Source: source.Ref{Work: "hydraulics textbooks", At: "0.60 to 0.62", Standing: source.Memory},
		},
	}
}
