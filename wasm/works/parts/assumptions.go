package parts

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "parts.emitterSpare", Title: "Spare emitters",
			Values: []float64{1.0 / emitterSpare}, Kind: unit.Share,
			Used:   "The list of parts.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "catalogue.SowingSpare", Title: "Spare seeds, and plugs to sow in",
			Values: []float64{1.0 / catalogue.SowingSpare}, Kind: unit.Share,
			Used:   "The list of parts, and the task of sowing.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "parts.leastSpare", Title: "Least number of spare emitters, and of spare plugs to sow in",
			Values: []float64{leastSpare},
			Used:   "The list of parts.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "parts.holeSpare", Title: "Plugs for wrong holes, as a share of the holes",
			Values: []float64{1.0 / holeSpare}, Kind: unit.Share,
			Used:   "The list of parts.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "parts.leastHoles", Title: "Least number of plugs for wrong holes",
			Values: []float64{leastHoles},
			Used:   "The list of parts.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "parts.ranges", Title: "Scales that pressure gauges are sold with, to",
			Values: ranges[unit.Metric], Unit: "bar",
			Used:   "The list of parts in metric units.",
			Source: source.Ref{Work: "EN 837-1, nominal ranges", Standing: source.Memory},
		},
		{
			Code: "parts.ranges", Title: "Those in US units, to",
			Values: ranges[unit.US], Unit: "psi",
			Used:   "The list of parts in US units.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "parts.count.gauges", Title: "The scale that is listed",
			Rule:   "The least that has the pressure at rest on it, and the pressure while watering within three quarters of it.",
			Used:   "The list of parts.",
			Source: source.Ref{Work: "EN 837-2", Standing: source.Memory},
		},
		{
			Code: "parts.Kinds", Title: "What a part costs, and how many are in a pack, until somebody says it",
			Rule:   "Invented: a figure for each kind of part, which nobody has asked a shop for.",
			Used:   "The list of parts.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "parts.times", Title: "What fittings cost, by what they are",
			Rule:   "Invented: a tee half as much again as a joiner, a ball valve four times as much, a check valve and a zone valve five times.",
			Used:   "The list of parts.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "parts.usualBore", Title: "Bore of the tubing whose fittings cost what is invented; others with the power 1.5 of their bore",
			Values: []float64{usualBore}, Kind: unit.Bore,
			Used:   "The list of parts.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "parts.usualTank", Title: "Volume of the tank that costs what is invented; others by their volume",
			Values: []float64{usualTank}, Kind: unit.Volume,
			Used:   "The list of parts.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "parts.usualMedium", Title: "Volume of the medium that costs what is invented; others by their volume",
			Values: []float64{usualMedium}, Kind: unit.Volume,
			Used:   "The list of parts.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "parts.breakerHours", Title: "For how many hours at a time a vacuum breaker of a tap may stand under pressure",
			Values: []float64{breakerHours},
			Used:   "The list of parts.",
			Source: source.Ref{Work: "Minnesota Department of Agriculture, guide on backflow", At: "and a city's page on taps for hoses"},
		},
		{
			Code: "catalogue.ClampsMM", Title: "Hose clamps of shops that sell by millimetres: from, to",
			Values: clampEnds(catalogue.ClampsMM), Kind: unit.Bore,
			Rule:   "The one whose range has the outside of the tubing, and its middle nearest to it.",
			Used:   "The list of parts in metric units.",
			Source: catalogue.ClampsMMSource,
		},
		{
			Code: "catalogue.ClampsSAE", Title: "Hose clamps of shops that sell by SAE numbers 4, 6, 8, 10, 12, 16, 20 and 24: from, to",
			Values: clampEnds(catalogue.ClampsSAE), Kind: unit.Bore,
			Rule:   "As above.",
			Used:   "The list of parts in US units.",
			Source: catalogue.ClampsSAESource,
		},
		{
			Code: "parts.fillBores", Title: "Bore of the pipe that a float valve is sold for",
			Values: fillBores[:], Kind: unit.Bore,
			Used:   "The list of parts, in metric units and in those of the United States.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "parts.leastGap", Title: "Air gap above a tank's rim, at least",
			Values: []float64{leastGap}, Kind: unit.Bore,
			Rule:   "Twice the bore of the pipe that fills the tank, and no less than this.",
			Used:   "The list of parts.",
			Source: source.Ref{Work: "Minnesota Department of Agriculture, backflow guide; municipal codes"},
		},
		{
			Code: "parts.cups", Title: "Cups of a test, at most",
			Values: []float64{cups},
			Used:   "The list of parts.",
			Source: source.Ref{At: "at least a dozen emitters, better twenty", Standing: source.Practice},
		},
		{
			Code: "plan.MicroBore", Title: "Bore of micro tubing",
			Values: []float64{plan.MicroBore}, Kind: unit.Bore,
			Used:   "The longest micro tubing that a plan may have, and the list of parts.",
			Source: source.Ref{At: "4 mm, or 0.170 in", Standing: source.Practice},
		},
		{
			Code: "plan.MicroShare", Title: "Share of an emitter's lowest pressure that its micro tubing may take, and that is not counted",
			Values: []float64{plan.MicroShare}, Kind: unit.Share,
			Rule:   "Taken at the emitter's flow, in water of 5 °C, by 64/Re or 0.3164/Re^0.25, whichever is more. A plan with more is refused.",
			Used:   "The longest micro tubing that a plan may have.",
			Source: source.Ref{Standing: source.Choice},
		},
	}
}

// clampEnds lists the ranges of clamps, from and to, in m.
func clampEnds(clamps []catalogue.Clamp) []float64 {
	var list []float64
	for i := range clamps {
		list = append(list, clamps[i].Least, clamps[i].Most)
	}
	return list
}
