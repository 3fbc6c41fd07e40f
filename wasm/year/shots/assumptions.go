package shots

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "shots.LeastShot", Title: "Least time of a shot",
			Values: []float64{LeastShot}, Kind: unit.Duration,
			Used:   "What the timer is set to.",
			Source: source.Ref{At: "shorter ones are uneven", Standing: source.Practice},
		},
		{
			Code: "shots.MostShot", Title: "Greatest time of a shot",
			Values: []float64{MostShot}, Kind: unit.Duration,
			Used:   "What the timer is set to.",
			Source: source.Ref{At: "longer ones run through", Standing: source.Practice},
		},
		{
			Code: "shots.Spare", Title: "How much more than the least that is possible a card by hand may give, so that the timer is changed less often",
			Values: []float64{Spare}, Kind: unit.Share,
			Used:   "What the timer is set to, by hand.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "shots.moreStarts", Title: "How many more shots than the fewest a card by hand may have, to give less in whole steps",
			Values: []float64{moreStarts}, Unit: "shots",
			Used:   "What the timer is set to, by hand.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "shots.Rooting", Title: "Days after planting out for which a plant lives on its block",
			Values: []float64{Rooting}, Unit: "days",
			Used:   "What the timer is set to, and how long young plants last.",
			Source: source.Ref{At: "one to three weeks", Standing: source.Practice},
		},
		{
			Code: "shots.Taken", Title: "Largest shot that a medium takes in, as a share of it",
			Values: []float64{Taken}, Kind: unit.Share,
			Used:   "What is said of a timer with pins.",
			Source: source.Ref{Work: "handbooks", At: "the upper end of what is usual on coco", Standing: source.Memory},
		},
		{
			Code: "shots.TooMuch", Title: "How much more than wanted must drain before it is said that plants share a valve",
			Values: []float64{TooMuch}, Kind: unit.Share,
			Used:   "The section on the timer.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "shots.ByHand", Title: "Water to give by hand at a time",
			Rule:   "Half of what the medium gives easily, so that it is taken in.",
			Used:   "The section on a pump that stops.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "shots.Night", Title: "What a plant takes up in an hour of the night, as a share of the hour about noon",
			Values: []float64{Night}, Kind: unit.Share,
			Rule:   "By day it is taken to use as much in every hour as in that about noon.",
			Used:   "How long plants last when nothing is given.",
			Source: source.Ref{Work: "Caird, Richards and Donovan, Plant Physiology 143 (2007)", At: "the upper end of 5 to 15 %", Standing: source.Memory},
		},
		{
			Code: "shots.Morning", Title: "Time of the day at which the water is taken to stop",
			Values: []float64{Morning / 3600}, Unit: "h",
			Used:   "Which plants are the first without water.",
			Source: source.Ref{Standing: source.Choice},
		},
	}
}
