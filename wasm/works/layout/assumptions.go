package layout

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "layout.Bed.InDoor", Title: "The way in",
			Rule:   "The door is in the middle of the near end. Before it as much ground is to be free as it is wide.",
			Used:   "The finding of a row that stands in the way in.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "layout.Layout.Beds", Title: "The ground that plants stand on",
			Rule:   "Slabs, bags, buckets and pots lie in the middle of their row, each with its plants in its middle. Two rows have a path between them where they stand beside each other.",
			Used:   "The free strips between rows and at the walls.",
			Source: source.Ref{At: "leaves that hang over a path are not counted", Standing: source.Choice},
		},
		{
			Code: "layout.InsertShare", Title: "Bore of a fitting that is pushed into tubing, as a share of the tubing's bore",
			Values: []float64{InsertShare},
			Used:   "As d/D in the formula for a fitting pushed into tubing, for each that the next line counts. The loss goes with the fourth power of it.",
			Source: source.Ref{At: "a 16 mm fitting has about 10 to 11 mm where the tubing has 13.6", Standing: source.Practice},
		},
		{
			Code: "layout.insert", Title: "Where fittings narrow the tubing",
			Rule:   "In the supply line, each run counts one at either end and one for each bend, tee, valve and check valve in it. Each piece of the header and of the far header of a loop counts one. A row counts one at its tee, one more at its valve where there are several zones, and one at its far tee in a loop. In one line, the first row counts one, and each turn two with its two bends. A header narrower than the run that meets its end counts two more, by the bore of the header. Tubing that takes compression fittings counts none.",
			Used:   "As loss coefficients of each length of tubing, besides those of bends, tees and valves.",
			Source: source.Ref{At: "a joiner is counted on both of its sides, which errs on the safe side", Standing: source.Choice},
		},
		{
			Code: "layout.Fittings", Title: "Where tees are counted",
			Rule:   "A row counts the way out of a branch at its tee, and in a loop at its far tee too. A piece of the header counts the way straight through the row's tee that it comes from. Fed in the middle, the last run counts the way out of a branch.",
			Used:   "As loss coefficients, from the table of fittings.",
			Source: source.Ref{At: "whatever the shares of the flow", Standing: source.Choice},
		},
		{
			Code: "layout.barb", Title: "Where barbs of emitters are counted",
			Rule:   "Each emitter adds its length of tubing, by the formulas for barbs, to the piece of tubing that ends at its plant. Several at one plant add up.",
			Used:   "The friction in the rows.",
			Source: source.Ref{At: "by the kind of barb in the plan, whatever the spacing", Standing: source.Choice},
		},
		{
			Code: "layout.Drive", Title: "Where a regulator stands",
			Rule:   "Counted directly behind a pump or a tap, before devices and filter, although it belongs behind them, where the list of parts has it. Gauges at the filter are taken to stand before it. Where its supply gives less than its set pressure it is taken to lose nothing.",
			Used:   "The head that the supply gives.",
			Source: source.Ref{At: "the loss of devices and filter comes off what it lets through, which errs on the safe side", Standing: source.Choice},
		},
		{
			Code: "layout.throttled", Title: "What a regulator below a tank takes away",
			Rule:   "The head of still water at the header, less its set pressure, at any flow.",
			Used:   "The head at the header of a tank above the rows.",
			Source: source.Ref{At: "the loss on the way then comes off what it lets through, which errs on the safe side", Standing: source.Choice},
		},
		{
			Code: "layout.Stub", Title: "Short pieces of tubing at a closed end of the header, and from a row's last plant to its cap",
			Values: []float64{Stub}, Kind: unit.Length,
			Used:   "The list of parts, and the water that the lines hold.",
			Source: source.Ref{At: "enough to fold the end into a can", Standing: source.Practice},
		},
		{
			Code: "layout.together", Title: "Distance below which the middle of a header and a row's tee count as one place",
			Values: []float64{together}, Kind: unit.Length,
			Used:   "Where a header that is fed in its middle is cut.",
			Source: source.Ref{Standing: source.Choice},
		},
	}
}
