package method

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// assumed are what values may really be while they are assumed.
func assumed() []formula.Assumption {
	why := map[string]source.Ref{
		"place.water":        {At: "a well in spring, and a tank in the sun", Standing: source.Practice},
		"supply.shut-off":    {At: "labels of small pumps promise more than the pump gives", Standing: source.Practice},
		"supply.max-flow":    {At: "labels of small pumps promise more than the pump gives", Standing: source.Practice},
		"supply.static":      {At: "taps of houses; of a typed one 30 % either way, by hour and season", Standing: source.Practice},
		"supply.tap-flow":    {At: "taps of houses; of a typed one 30 % either way, by hour and season", Standing: source.Practice},
		"supply.regulator":   {At: "regulators of one fixed pressure", Standing: source.Practice},
		"supply.devices":     {At: "none, up to a backflow device of two valves with a relief between them", Standing: source.Practice},
		"points.flow":        {At: "curves of small pumps promise more than the pump gives; all points in proportion", Standing: source.Practice},
		"points.head":        {At: "curves of small pumps promise more than the pump gives; all points in proportion", Standing: source.Practice},
		"runs.length":        {At: "a way that nobody has paced out", Standing: source.Choice},
		"runs.rise":          {At: "from a stream below the rows to a roof on the third storey", Standing: source.Choice},
		"runs.bore":          {At: "walls of tubing of one nominal size", Standing: source.Practice},
		"runs.elbows":        {At: "a way that nobody has walked", Standing: source.Choice},
		"runs.tees":          {At: "a way that nobody has walked", Standing: source.Choice},
		"runs.valves":        {At: "a way that nobody has walked", Standing: source.Choice},
		"runs.checks":        {At: "a way that nobody has walked", Standing: source.Choice},
		"filter.rated":       {At: "filters of one size of thread", Standing: source.Practice},
		"filter.clean":       {At: "filters of one size of thread", Standing: source.Practice},
		"filter.fouling":     {At: "how long growers wait", Standing: source.Practice},
		"header.bore":        {At: "walls of tubing of one nominal size", Standing: source.Practice},
		"emitters.flow":      {Work: "ISO 9261", At: "a sample's mean is within 7 % of what is printed", Standing: source.Memory},
		"emitters.opens":     {At: "data sheets of emitters that shut; at most the lowest pressure of the range", Standing: source.Practice},
		"emitters.lowest":    {At: "data sheets of emitters of one kind", Standing: source.Practice},
		"emitters.highest":   {At: "data sheets of emitters of one kind", Standing: source.Practice},
		"emitters.nominal":   {At: "gauges and data sheets", Standing: source.Practice},
		"emitters.exponent":  {At: "data sheets of emitters of one kind; within what the kind may have", Standing: source.Practice},
		"emitters.cv":        {Work: "ASAE EP405", At: "good to average", Standing: source.Memory},
		"emitters.gush":      {At: "data sheets rarely say", Standing: source.Choice},
		"emitters.regulates": {At: "data sheets rarely say; at most the lowest pressure of the range", Standing: source.Choice},
		"rows.spacing":       {At: "how far plants stand from where they were to stand; not beyond the end of the place", Standing: source.Practice},
		"rows.bore":          {At: "walls of tubing of one nominal size", Standing: source.Practice},
		"rows.height":        {At: "what ground that looks level hides", Standing: source.Practice},
		"rows.slope":         {At: "what ground that looks level hides", Standing: source.Practice},
	}
	meant := [plan.Meanings]string{plan.Within: "it is between these", plan.Added: "these are added to it", plan.Times: "it is multiplied by these"}
	var list []formula.Assumption
	for i := range plan.Spreads {
		sp := &plan.Spreads[i]
		f := plan.FieldOfAll(sp.Path)
		// What is multiplied has no unit of its own.
		kind, values := unit.Share, []float64{sp.Low, sp.High}
		if sp.As != plan.Times {
			u := unit.Of(f.Kind, unit.Metric)
			kind, values = f.Kind, []float64{u.ToInner(sp.Low), u.ToInner(sp.High)}
		}
		list = append(list, formula.Assumption{
			Code: "plan.Spreads", Title: "While it is assumed: " + words.Say("{section}: {field}", words.Say(plan.SectionNamed(f.Section).Title), words.Within(f.Label)),
			Values: values, Kind: kind,
			Rule:   "What it may really be: " + meant[sp.As] + ".",
			Used:   "What would turn the answer.",
			Source: why[sp.Path],
		})
	}
	return list
}
