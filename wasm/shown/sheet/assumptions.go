package sheet

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "sheet.moreHead", Title: "Head that a design may take of a pump that is yet to be bought, above the least that any takes with as few zones", Values: []float64{moreHead}, Kind: unit.Head,
			Used:   "A plan that is proposed from five answers.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "sheet.sameFrom", Title: "Emission uniformity from which plants are said to get the same water",
			Values: []float64{sameFrom}, Kind: unit.Share,
			Used:   "The words of the answer.",
			Source: source.Ref{At: "what a cup cannot tell from 100 %", Standing: source.Choice},
		},
		{
			Code: "sheet.nearlyFrom", Title: "Emission uniformity from which they are said to get nearly the same",
			Values: []float64{nearlyFrom}, Kind: unit.Share,
			Used:   "The words of the answer.",
			Source: source.Ref{Work: "ASAE EP405", At: "excellent", Standing: source.Memory},
		},
		{
			Code: "sheet.leastFouling", Title: "Least rise of a filter's loss that a reader is asked to see on gauges",
			Values: []float64{leastFouling}, Kind: unit.Pressure,
			Used:   "The remedy to clean a filter sooner.",
			Source: source.Ref{At: "half a division of a tenth of a bar", Standing: source.Practice},
		},
		{
			Code: "sheet.littleHead", Title: "Height of a tank that is worth showing beside a cheaper design",
			Values: []float64{littleHead}, Kind: unit.Length,
			Used:   "The list of designs.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "sheet.littlePower", Title: "Power of a pump that is worth showing beside a cheaper design, as a share",
			Values: []float64{littlePower}, Kind: unit.Share,
			Used:   "The list of designs.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "sheet.trial.demanded", Title: "Pumps and taps that a remedy speaks of",
			Rule:   "All whose head falls as the flow rises, is at least the first that is named at the flow that is named, and at most the second with everything shut. The plan is worked out with the least and the most of them, and with some between.",
			Used:   "The remedy of another pump or tap.",
			Source: source.Ref{At: "flows and heads rise with the head of the supply", Standing: source.Derived},
		},
		{
			Code: "sheet.steep", Title: "Highest head over the least, from which a pump is looked for without a regulator",
			Values: []float64{steep},
			Used:   "The remedy of another pump or tap.",
			Source: source.Ref{At: "most pumps are meant to run below nine tenths of their shut-off head", Standing: source.Practice},
		},
		{
			Code: "sheet.thirst", Title: "Flow that emitters without compensation may draw at the highest head, over that at the least",
			Values: []float64{thirst},
			Used:   "The remedy of another pump or tap.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "sheet.smallTank", Title: "Time of a zone's flow that a tank holds, under which it is small",
			Values: []float64{smallTank}, Kind: unit.Duration,
			Used:   "The finding that the tank is small.",
			Source: source.Ref{Standing: source.Choice},
		},
	}
}
