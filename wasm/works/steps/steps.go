// Package steps puts the building of a plan in an order: what is done first, which
// parts and tools each step takes, about how long it is, and what can hurt in it.
//
// A part is taken once, in the step in which it is fitted; what is to spare is laid
// aside in the last step that takes some of it.
package steps

import (
	"math"
	"slices"

	"evenrow/wasm/grower/care"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/parts"
)

// A Take is what a step takes of a line of the list.
type Take struct {
	Line   int     // index into the list
	Count  int     // pieces that are fitted
	Spare  int     // pieces that are laid aside
	Length float64 // m, of what is sold by length
}

// A Step is one thing to do.
type Step struct {
	Kind    Kind
	Takes   []Take // in the order of the list
	Tools   []int  // indices into the list
	Minutes int    // about how long it is for one person; rough
	Hazards care.Set
}

// Of returns the steps for a layout and the list of its parts.
func Of(l *layout.Layout, list []parts.Line) []Step {
	var all [Kinds]Step
	b := &builder{l, list, &all}
	for i := range list {
		b.take(i)
	}
	gauged := false // there is something to read
	for i := range list {
		item := list[i].Item
		gauged = gauged || item == parts.AGauge || item == parts.AClearHose
	}
	var steps []Step
	in := care.In(l.Plan)
	for k := range Kind(Kinds) {
		s := &all[k]
		if len(s.Takes) == 0 && !kinds[k].always && !(k == Gauges && gauged) {
			continue
		}
		s.Kind = k
		s.Hazards |= kinds[k].hazards
		minutes, clamped, screws := kinds[k].minutes, false, false
		for _, t := range s.Takes {
			clamped = clamped || list[t.Line].Item == parts.AClamp
			of := &items[list[t.Line].Item]
			screws = screws || of.thread
			minutes += of.minutes * (float64(t.Count) + t.Length)
			s.Hazards |= of.hazards
		}
		for i := range list {
			of := &items[list[i].Item]
			if of.tool>>k&1 != 0 && (list[i].Item != parts.AClampDriver || clamped) && (list[i].Item != parts.AThreadTape || screws) {
				s.Tools = append(s.Tools, i)
				s.Hazards |= of.hazards
			}
		}
		s.Hazards &= in
		s.Minutes = about(minutes)
		steps = append(steps, *s)
	}
	return steps
}

// about is a time in minutes as roughly as it is known: to five minutes within the
// first hour, and to half an hour from three hours on.
func about(minutes float64) int {
	step := 5.0
	switch {
	case minutes >= 180:
		step = 30
	case minutes >= 60:
		step = 15
	}
	return int(max(1, math.Round(minutes/step)) * step)
}

type builder struct {
	l     *layout.Layout
	list  []parts.Line
	steps *[Kinds]Step
}

// take shares a line out among the steps.
func (b *builder) take(i int) {
	n := &b.list[i]
	if items[n.Item].tool != 0 {
		return
	}
	var to [Kinds]float64
	left := float64(n.Count-n.Spare) + n.Length
	for site, m := range n.By {
		to[sites[site]] += m
		left -= m
	}
	if k := b.screwed(n); k > 0 {
		to[Lead] -= k
		left += k
	}
	if b.endGauge(i) {
		to[Rows]++
		left--
	}
	at := b.at(n.Item)
	if left > 1e-6 {
		to[at] += left
	}
	last := at
	for k, m := range to {
		if m == 0 {
			continue
		}
		last = Kind(k)
		t := Take{Line: i}
		if n.Length > 0 {
			t.Length = m
		} else {
			t.Count = int(math.Round(m))
		}
		b.steps[k].Takes = append(b.steps[k].Takes, t)
	}
	if n.Spare == 0 {
		return
	}
	s := &b.steps[last]
	if k := len(s.Takes) - 1; k >= 0 && s.Takes[k].Line == i {
		s.Takes[k].Spare = n.Spare
		return
	}
	s.Takes = append(s.Takes, Take{Line: i, Spare: n.Spare})
}

// at is the step that takes what has no site.
func (b *builder) at(item parts.Item) Kind {
	switch item {
	case parts.AConnector:
		if b.l.FilterLink >= 0 { // most of them stand behind it, and all can be screwed on then
			return Filter
		}
	case parts.ARegulator, parts.AGauge, parts.AGaugeTee:
		// A tank's stand where there is pressure: at the end of the supply line.
		switch {
		case b.l.Plan.Supply.Kind == plan.GravityTank:
			return Lead
		case b.l.FilterLink < 0:
			return Supply
		}
	}
	return items[item].at
}

// screwed is how much of what a line has in the supply line is screwed to the supply, before
// the first run.
func (b *builder) screwed(n *parts.Line) (k float64) {
	switch {
	case n.Item == parts.AConnector:
		at := slices.IndexFunc(b.l.Joints, func(j layout.Joint) bool { return j.Kind == layout.Adapter })
		for _, node := range n.Nodes {
			if at >= 0 && node == b.l.Joints[at].Node {
				k++
			}
		}
	case n.Item == parts.AGaugeTee && b.l.Plan.Supply.Kind != plan.GravityTank:
		k = n.By[parts.Leading]
	}
	return min(k, n.By[parts.Leading])
}

// endGauge says whether one of a line stands at the end of the last row: of the last line
// of gauges, unless a clear hose takes that place.
func (b *builder) endGauge(i int) bool {
	const item = parts.AGauge
	if b.list[i].Item != item {
		return false
	}
	for k := range b.list {
		if b.list[k].Item == parts.AClearHose || k > i && b.list[k].Item == item {
			return false
		}
	}
	return true
}
