package sizes

import (
	"bytes"
	"errors"
	"fmt"
)

// A Limit is what a file may weigh and why it may weigh that much.
type Limit struct {
	KB     int
	Reason string
}

// The budget. A reader on a field's edge has little signal: what makes a
// download larger first has to be won back elsewhere, and else needs a new line at
// the end of its list here, with the size that is reached, rounded up to the next
// kB, and what the reader gets for it. The last line is what counts.
var (
	// WebAssembly, compressed by brotli.
	Program = []Limit{
		{627, "what the program weighs once it is packed and rewritten (build/compile)"},
		{634, "every text whole, so that another language can say it, and what was judged by the view is told by the sheet"},
		{637, "an open table cannot be forgotten, and why no design serves, how the tank is filled and what frost takes is judged once, for the JSON too"},
		{647, "every value knows whether it was assumed, looked up, typed or measured, in the form, the link and the file, and how to measure it"},
		{667, "a card of the timer by hand; a pump that is yet to be bought is asked for by its duty, for a label with power only too, and amounts are read in more units"},
		{702, "one job in sight with its groups of inputs, what it comes to in a line, and only what has changed is sent"},
		{710, "what today means: this week's tasks, today's setting, until when water lasts, and one button that moves the season to another year"},
		{725, "two plans are held side by side, and a set of jobs is made ready for paper"},
		{732, "what the answer rests on: each assumed value is moved through what it may really be, and those that would turn it are named with the value at which they do"},
		{735, "a plan that is proposed again keeps what was said in the one before, its season is that of the device's year, and a drain reading that is used is in the plan, from its day on"},
		{712, "names and fields of types, and what a stack trace alone reads, won back (build/compile/types.go, unneeded.go)"},
		{729, "tubing is cut into named pieces from the fewest rolls, rows are marked for punching, with strips at full scale, and parts, pieces and marks are saved as tables"},
		{734, "hose clamps by their sizes, gauges on their tees, what a tank stands on and is filled by, drain trays, meters, cups and tools, and micro tubing are counted"},
		{771, "the list of parts has packs, prices and what one has already, adds up by counter, and says in plain words what to ask for; parts of the supply are joined by threads that mate"},
		{783, "the building in its order: which parts each step takes, what can hurt, what gauges and cups are expected to show; the places of each part on the plan view"},
		{785, "the list is folded by counter, steps say what nobody could place"},
		{786, "on the plan view no name, number or ring stands on another"},
		{787, "steps, tasks, the calendar file and cards say what to do against whatever can hurt in them, from one catalogue"},
	}
	// Scripts written by hand, minified: a third of that once it is compressed.
	Script = []Limit{
		{24, "the page, its worker, what is kept, and the service worker"},
		{25, "the texts of another language, where a page names a list, are fetched as the planner starts"},
		{30, "one job in sight: the way to the others, by address and by history, and undoing"},
		{31, "of a job the part comes first that is gravest, and of all jobs in season that of the timer"},
		{32, "the planner starts while the page is still read; a job's address alone is of the plan worked on last, and what is left is kept"},
		{33, "what is ticked in the list and in the steps is kept, and the places of a part light up"},
	}
	// Styles, minified.
	Style = []Limit{
		{16, "all pages, on paper and on screens"},
		{21, "jobs at the foot of a phone and at the left of a desk, groups closed to a line"},
		{22, "choices side by side, an answer on one sheet of paper"},
		{23, "strips of marks at full scale"},
		{24, "the list of parts with its prices fits a phone, and two sheets of paper"},
		{26, "steps, boxes to tick, and the places of parts"},
		{27, "what can hurt in the tasks of a season, on their one sheet of paper"},
	}
)

// Budget prints what is measured against the budget, and names all that is
// over it. program is the size compressed by brotli.
func Budget(program, script, style int) (string, error) {
	var b bytes.Buffer
	var errs []error
	for _, line := range []struct {
		name   string
		size   int
		limits []Limit
	}{
		{"program, brotli", program, Program},
		{"scripts by hand, minified", script, Script},
		{"style, minified", style, Style},
	} {
		limit := line.limits[len(line.limits)-1]
		fmt.Fprintf(&b, "%-26s %7.1f of %5d kB\n", line.name, kB(line.size), limit.KB)
		if line.size > limit.KB*1000 {
			errs = append(errs, fmt.Errorf("%s: %.1f kB is over the budget of %d kB: win it back, or add a line {%d, \"what for\"} in build/sizes/budget.go",
				line.name, kB(line.size), limit.KB, (line.size+999)/1000))
		}
	}
	return b.String(), errors.Join(errs...)
}
