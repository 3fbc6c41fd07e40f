package season

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "season.lateFrost", Title: "Days after the last frost within which a late one is not rare",
			Values: []float64{lateFrost}, Unit: "days",
			Used:   "Notes in the calendar.",
			Source: source.Ref{At: "warm crops go out one to two weeks after it", Standing: source.Practice},
		},
		{
			Code: "season.drained", Title: "Days before the first frost by which the system is drained",
			Values: []float64{drained}, Unit: "days",
			Used:   "The end of tender crops and the last task: the frost that is typed is an average.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "season.eve", Title: "Hours before the day on which the timer is set anew at which the calendar's alarm rings",
			Values: []float64{eve}, Unit: "h",
			Used:   "The calendar's file.",
			Source: source.Ref{At: "six in the evening", Standing: source.Choice},
		},
		{
			Code: "season.reference", Title: "Temperature that the days in the plug are meant for",
			Values: []float64{reference}, Kind: unit.Temperature,
			Used:   "Dates of sowing.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "season.tying", Title: "Days from planting out to the first tying up",
			Values: []float64{tying}, Unit: "days",
			Used:   "The list of tasks.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "season.tiedFrom", Title: "Height from which a crop is trained up",
			Values: []float64{tiedFrom}, Kind: unit.Length,
			Used:   "The list of tasks.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "season.ahead", Title: "Days before the first planting on which the system is filled and tested",
			Values: []float64{ahead}, Unit: "days",
			Used:   "The list of tasks.",
			Source: source.Ref{Standing: source.Choice},
		},
	}
}
