package build

import (
	"slices"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/works/parts"
	"evenrow/wasm/works/steps"
)

// What is said of each kind of step: its name, what is done, and what to look at.
var told = [steps.Kinds]struct{ title, does, look words.Text }{
	steps.Place: {"The place",
		"Clear the ground, make it level, and mark where each row runs.",
		"Nothing rocks, and each row has its full length free."},
	steps.Supply: {"The supply, and what is screwed to it",
		"", // by what drives the water
		"Threads of one kind run on by hand for several turns. One that stops after a turn is the wrong one: never force it."},
	steps.Filter: {"The filter, by its arrow",
		"Screw it on so that its arrow points the way the water runs, where it can be opened for cleaning.",
		"The arrow points from the supply to the rows, and the lid can be reached."},
	steps.Lead: {"The supply line",
		"Lay it out and join it from the supply on. The plan counts its bends and valves and does not say where they are: cut it where the way turns, and put a valve where a hand reaches it, to shut the rows off for work on them.",
		"Ends are square and pushed home, and no tubing is kinked."},
	steps.Header: {"The header and its tees",
		"Cut its pieces by the cut list, and join them with the tees, whose branches point to the rows. Its closed end stays open until it is flushed.",
		"All branches point the same way, and no piece is twisted."},
	steps.Rows: {"The rows",
		"Cut each by the cut list, join it, and lay it straight without pulling. End caps go on, the header's too, and stay open; no hole is made before all is flushed.",
		"No row is kinked where it begins, and each reaches past its last plant."},
	steps.Media: {"What the plants stand in",
		"Set it out along the rows, soak it with plain water from a bucket or a hose, and cut or open it at its lower side, where its drain is to leave.",
		"What runs out runs off, and stands nowhere."},
	steps.Power: {"The outlet, and its protection",
		"The outlet stands above splash, off the ground and covered, and the cord hangs in a loop below it. It is within reach of the cord that the pump came with, and as far from the water as local code asks. Press its test button with nothing in it that runs: it must cut off at once. Then reset it.",
		"The button cuts the outlet off. One that does not is not used."},
	steps.Fill: {"The first water",
		"", // by what drives the water
		"Water runs out of every open end, and the supply stands where it stood."},
	steps.Flush: {"Flush, then close the ends",
		"Let the water run out of the ends until it is clear, those nearest to the supply first, and let it run off. Then stop the water and close all ends.",
		"At each end the water is clear and carries no bits."},
	steps.Emitters: {"Emitters and stakes",
		"With the water off, make each hole at its mark with the punch that is made for the emitter, push the emitter in, and set its stake so that it drips on the block. A hole in the wrong place takes a plug.",
		"Each sits tight, and no hole goes through the far side."},
	steps.Leaks: {"Look for leaks",
		"", // by what drives the water
		"No joint drips. Where one does, stop the water, let an end run empty, and make the joint anew."},
	steps.Gauges: {"Read the gauges",
		"",
		"A reading that is off by more than a mark or two has a reason: Mend lists what moves a gauge."},
	steps.Cups: {"The cup test",
		"", // with how long it takes
		"About 19 of 20 emitters lie between the two figures. One that does not in a second test is blocked or broken."},
	steps.Plants: {"Feed and plants",
		"",
		"The first shots come out at every plant, and some of each drains."},
}

// also is said of a part where it is fitted.
var also = []struct {
	item parts.Item
	says words.Text
}{
	{parts.ASowingPlug, "Sow first: seedlings take weeks, and Grow has the dates. Each plug goes into its block when its crop asks for it."},
	{parts.ADrainCan, "A tray that is to be read has a can under its lowest edge: let it drain there through a spout, or raise it on two blocks."},
	{parts.ATimerValve, "Until all is tested the timer is switched by hand; then it is set by the card of Water."},
	{parts.APumpTimer, "Until all is tested the timer is switched by hand; then it is set by the card of Water."},
	{parts.ATank, "The tank stands level, on ground that carries it full."},
	{parts.AGauge, "A gauge stands where the list says, one at the end of a row behind its last plant: turn it so that it can be read."},
	{parts.ARegulator, "The regulator, too, has an arrow. It is the last part before the tubing."},
	{parts.ABackflow, "The backflow device stands the way up that its sheet says."},
}

// What is said of the steps that depend on what drives the water.
var pumped, tapped, stood = [...]words.Text{
	"Set the pump where it is to stand and screw on what follows it, in the order of the water. One that stands in the water takes a piece of tubing first, up to the rim, so that filter and gauges stand dry; one beside the tank takes a suction hose with a strainer, as its maker says: neither is on the list. Its plug stays out until the outlet is tested.",
	"Fill the tank with plain water and the pump as its maker says: it must never run dry. With every end open, plug it in.",
	"Plug the pump in and walk along every joint for ten minutes. The emitters let the water out all the while, so that the pump never runs with every way out shut. Do not close a valve or fold a line to make the pressure rise.",
}, [...]words.Text{
	"Read the pressure of the tap with all taps shut, at night too: where it is more than the plan says, type it in first. Shut the tap and screw on what follows it, in the order of the water.",
	"With every end open, open the tap slowly.",
	"Open the tap slowly and walk along every joint for ten minutes, while the emitters drip.",
}, [...]words.Text{
	"Fit the outlet low in the wall of the empty tank, and the valve behind it.",
	"Fill the tank with plain water. With every end open, open the valve slowly.",
	"Open the valve and walk along every joint for ten minutes, while the emitters drip.",
}

// Steps says in which order the plan is built.
func Steps(the *scene.Scene) {
	sc := part{the}
	l := sc.S.Layout
	if l == nil || len(sc.S.Parts) == 0 {
		sc.Say("p", "There is nothing to build yet.")
		return
	}
	sc.Say("p", "In the order in which it is built. A number is that of the list of parts, where each part stands once. Times are rough, for one person; they and the cautions are common practice, no source. Local code, the law and the sheets of the makers come first.")
	had := make([]bool, len(sc.S.Parts))
	sc.HTML(`<div class="steps">`)
	for i, s := range steps.Of(l, sc.S.Parts) {
		sc.step(i+1, &s, had)
	}
	sc.HTML(`</div>`)
}

// StepsLine says how many steps there are, and how long all take.
func StepsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	if the.S.Layout == nil || len(the.S.Parts) == 0 {
		return "", sheet.Yes
	}
	all := steps.Of(the.S.Layout, the.S.Parts)
	minutes := 0
	for i := range all {
		minutes += all[i].Minutes
	}
	return words.Say("{n} {n|step|steps}, about {hours} {hours|hour|hours} for one person", words.N(len(all)), words.N(max(1, (minutes+30)/60))), sheet.Yes
}

// step writes one. had are the parts that were led to already.
func (sc part) step(n int, s *steps.Step, had []bool) {
	t := &told[s.Kind]
	sc.HTML(`<div class="step"><h3><label class="tick"><input type="checkbox"`).Attr("data-tick", "step "+steps.Keys[s.Kind]).HTML(`> `).
		Text(words.Say("{n}. {title}", words.N(n), words.Say(t.title))).HTML(`</label></h3>`)
	sc.Careful(s.Hazards)
	sc.Tag("p", words.Sentences(sc.does(s)...))
	if len(s.Takes) > 0 {
		sc.HTML(`<ul class="takes">`)
		for i := range s.Takes {
			sc.HTML(`<li>`)
			sc.take(&s.Takes[i], had)
			sc.HTML(`</li>`)
		}
		sc.HTML(`</ul>`)
	}
	if len(s.Tools) > 0 {
		sc.HTML(`<p class="takes">`).Text(words.Say("Tools:"))
		for _, i := range s.Tools {
			sc.HTML(` <span>`)
			sc.numbered(i, had)
			if n := sc.S.Parts[i].Count; n > 1 && sc.S.Parts[i].Item != parts.AWasher {
				sc.Text(words.Say("{n} × {part}", words.N(n), sc.S.Parts[i].Name))
			} else {
				sc.Text(sc.S.Parts[i].Name)
			}
			sc.HTML(`</span>`)
		}
		sc.HTML(`</p>`)
	}
	switch s.Kind {
	case steps.Gauges:
		sc.gauges()
	case steps.Cups:
		sc.cups()
	}
	sc.HTML(`<p>`).Text(words.Say("Look: {at} About {n} min.", words.Say(t.look), words.N(s.Minutes))).HTML(`</p></div>`)
}

// does says what is done in a step.
func (sc part) does(s *steps.Step) []string {
	of := &pumped
	switch sc.S.Plan.Supply.Kind {
	case plan.Mains:
		of = &tapped
	case plan.GravityTank:
		of = &stood
	}
	said := words.Say(told[s.Kind].does)
	switch s.Kind { // else it is the same for all plans
	case steps.Supply:
		said = words.Say(of[0])
	case steps.Fill:
		said = words.Say(of[1])
	case steps.Leaks:
		said = words.Say(of[2])
	case steps.Gauges:
		said = words.Say("Let the water run, wait until the gauges stand still, and compare them with what is expected.")
		if len(sc.S.Layout.Zones) > 1 {
			said = words.Say("Water one zone at a time, wait until the gauges stand still, and compare them with what is expected.")
		}
	case steps.Cups:
		said = words.Say("Set the cups under emitters all over the rows: at the start, in the middle and at the end of each row, those that are left between. Water for {n} minutes, and measure what is in each.", words.N(steps.CupTime/60))
	case steps.Plants:
		said = words.Say("Set the meters by their fluids, mix the feed by its label, and set the plants out once all of the above is well.")
		if sc.S.Plan.Supply.Kind == plan.Mains {
			said = words.Say("From the tap comes plain water: this plan has nothing that mixes feed into it, so feed by hand or from a tank. Set the meters by their fluids, and set the plants out once all of the above is well.")
		}
		said = words.Sentences(said, sc.planted())
	}
	all := []string{said}
	for i := range also {
		for k := range s.Takes {
			if sc.S.Parts[s.Takes[k].Line].Item == also[i].item {
				all = append(all, words.Say(also[i].says))
				break
			}
		}
	}
	return all
}

// planted says which crop is in which rows.
func (sc part) planted() string {
	var said []string
	var had []int
	for i := range sc.S.Plan.Rows {
		crop := sc.S.Plan.Rows[i].Crop
		if slices.Contains(had, crop) {
			continue
		}
		had = append(had, crop)
		var rows []int
		for k := range sc.S.Plan.Rows {
			if sc.S.Plan.Rows[k].Crop == crop {
				rows = append(rows, k)
			}
		}
		said = append(said, words.Say("{rows}: {crop}", wording.RowsBegin(rows), sc.S.Plan.CropName(crop)))
	}
	return words.Say("{list}.", words.Notes(said...))
}

// take writes what a step takes of a line.
func (sc part) take(t *steps.Take, had []bool) {
	sc.numbered(t.Line, had)
	name := sc.S.Parts[t.Line].Name
	n, spare := words.N(t.Count), words.N(t.Spare)
	switch {
	case t.Length > 0:
		sc.Text(words.Say("{length} of {part}", sc.Amount(unit.Length, t.Length), name))
	case t.Count == 0:
		sc.Text(words.Say("{n} × {part}, to spare", spare, name))
	case t.Spare > 0:
		sc.Text(words.Say("{n} × {part}, and {spare} to spare", n, name, spare))
	default:
		sc.Text(words.Say("{n} × {part}", n, name))
	}
}

// numbered writes the number of a line, which the plan view leads to where it stands
// first.
func (sc part) numbered(i int, had []bool) {
	id := ""
	if !had[i] {
		had[i], id = true, "take-"+words.N(i+1)
	}
	sc.Number(i, id)
}

// listed says whether an item is on the list.
func (sc part) listed(item parts.Item) bool {
	for i := range sc.S.Parts {
		if sc.S.Parts[i].Item == item {
			return true
		}
	}
	return false
}
