package sheet

import (
	"slices"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/flush"
)

// pairing is how many nodes, over all plans that are tried, are worked out in
// the search for pairs: some tenths of a second. A plan whose supply is sought
// counts as dozens.
const (
	pairing = 100_000
	dozens  = 40
)

// pairs tries changes two by two: the most of both first, and where that is
// enough the least of each. The second may also be what the supply, a regulator,
// the filter or the emitters must be once the first is done.
func (t *trial) pairs() {
	moves, work := t.moves(), 0
	spent := func(times int) bool {
		work += times * len(t.s.Layout.Points)
		t.cut = t.cut || work > pairing
		return work > pairing
	}
	alike := t.alike() // first: there is no other way, and what helps beside them is sought anew
	moves = append(alike, moves...)
	one := false // kind of emitter for all was enough
	for i := range moves {
		a := &moves[i]
		if one && a.kind == OneEmitter {
			continue
		}
		for j := i + 1; j < len(moves) && i >= len(alike); j++ {
			b := &moves[j]
			both := func(x, y int) (*plan.Plan, bool) {
				if spent(1) {
					return nil, false
				}
				return t.try(func(p *plan.Plan) { a.do(p, x); b.do(p, y) })
			}
			if _, ok := both(a.last(), b.last()); !ok {
				continue
			}
			x := least(a, func(x int) bool { _, ok := both(x, b.last()); return ok })
			y := least(b, func(y int) bool { _, ok := both(x, y); return ok })
			if p, ok := both(x, y); ok {
				t.add(Change{Kind: a.kind, Index: x}, &Change{Kind: b.kind, Index: y}, true, p)
			}
		}
		var found *Fix
		beside := func(x int) bool {
			if spent(dozens) {
				return false
			}
			p := t.s.Plan.Clone()
			a.do(p, x)
			f := helped(p, t.s.meter())
			if f != nil {
				found = f
			}
			return f != nil
		}
		if beside(a.last()) {
			x := least(a, beside)
			one = one || a.kind == OneEmitter
			t.add(Change{Kind: a.kind, Index: x}, &found.Change, true, found.Plan)
		}
	}
}

// least returns the least step of a move that is enough, or its last.
func least(m *move, enough func(step int) bool) int {
	for _, step := range m.steps[:len(m.steps)-1] {
		if enough(step) {
			return step
		}
	}
	return m.last()
}

// helped looks for a change of the supply, a regulator, the filter or the
// emitters that turns the answer to a plan into a yes.
func helped(p *plan.Plan, m *work.Meter) *Fix {
	if len(p.Check()) > 0 {
		return nil
	}
	t := trial{s: assess(p, m)}
	t.filter()
	t.supply()
	t.regulator()
	t.emitters()
	t.unlike()
	for _, f := range t.fixes {
		if f.Solves {
			return f
		}
	}
	return nil
}

// behind tries a regulator in the plan of a design, set anew. Where the prices
// ask for ends that flush, every row's must.
func behind(p *plan.Plan, m *work.Meter) *Fix {
	t := trial{s: assess(p, m)}
	if t.s.Verdict == Cannot || !t.regulate() {
		return nil
	}
	f := t.fixes[0]
	if p.Prices.Flush != 0 && p.Header.Layout != plan.Ring {
		if o := flushed(assess(f.Plan, m)); o == nil || slices.ContainsFunc(o.Ends, func(e flush.End) bool { return e.Place == flush.OfRow && e.Alone < flush.Wanted }) {
			return nil
		}
	}
	return f
}

// regulated takes the cheapest design that the supply carries behind a
// regulator, where there is too much pressure.
func (t *trial) regulated() {
	if !t.pressed() || t.s.Wanted != nil {
		return
	}
	list := t.s.found.List
	if set := t.bearable(); set > 0 {
		q := t.s.Plan.Clone()
		q.Supply.Regulator = set
		found := design.Of(q, split, t.s.meter())
		t.cut = t.cut || found.Cut
		list = append(found.Own, list...)
	}
	for i := range list[:min(len(list), listed)] {
		d := list[i]
		p := d.Plan.Clone()
		p.Supply.Regulator = t.s.Plan.Supply.Regulator
		f := behind(p, t.s.meter())
		if f == nil {
			continue
		}
		for _, g := range t.fixes {
			if g.Solves && same(g.Plan, f.Plan) {
				return
			}
		}
		t.add(Change{Kind: Redesign}, &f.Change, true, f.Plan).Design = &d
		return
	}
}

// redesign takes the cheapest design with which the plan as a whole is Yes on
// its own supply.
func (t *trial) redesign() {
	found := t.s.found
	designs := found.Own
	for _, k := range few(found.List, listed) {
		designs = append(designs, found.List[k])
	}
	for i := range designs {
		d := &designs[i]
		if !solves(d.Plan, t.s.meter()) {
			continue
		}
		for _, f := range t.fixes {
			if f.Solves && same(f.Plan, d.Plan) {
				return
			}
		}
		t.add(Change{Kind: Redesign}, nil, true, d.Plan).Design = d
		return
	}
}

// anew takes the cheapest design of all, with another supply: any that is so
// strong, or else the one that its plan has. Only the supply that stands is taken
// where it is asked for. Where the pump is sought all designs have another one
// already.
func (t *trial) anew(standing bool) {
	if t.s.Wanted != nil {
		return
	}
	list := t.s.found.List
	some := few(list, listed)
	for _, very := range [...]bool{false, true} {
		for _, k := range some {
			d := &list[k]
			if very {
				if standing {
					return
				}
				p := d.Plan.Clone()
				design.Strengthen(p, d.Head, d.Flow)
				if solves(p, t.s.meter()) {
					t.add(Change{Kind: Redesign, Value: d.Head, Flow: d.Flow}, nil, true, p).Design = d
					return
				}
			} else if f := helped(d.Plan, t.s.meter()); f != nil && !(standing && f.Driven()) {
				t.add(Change{Kind: Redesign}, &f.Change, true, f.Plan).Design = d
				return
			}
		}
	}
}

// same says whether two changed plans have the same tubing, layout, zones and
// emitters, and the same filter and supply.
func same(p, q *plan.Plan) bool {
	a, b := &p.Supply, &q.Supply
	return alike(p, q) && p.Runs[0].Rise == q.Runs[0].Rise && p.Filter == q.Filter && p.Emitters[0] == q.Emitters[0] &&
		a.Kind == b.Kind && a.Regulator == b.Regulator && a.ShutOff == b.ShutOff && a.MaxFlow == b.MaxFlow && a.Static == b.Static
}

// alike says whether two changed plans have the same tubing, layout and zones,
// and the same kinds of emitters in their rows.
func alike(p, q *plan.Plan) bool {
	for i := range p.Rows {
		if a, b := &p.Rows[i], &q.Rows[i]; a.Tube != b.Tube || a.Emitter != b.Emitter || a.PerPlant != b.PerPlant {
			return false
		}
		for j := range i {
			together := p.Rows[i].Zone == p.Rows[j].Zone
			if together != (q.Rows[i].Zone == q.Rows[j].Zone) && p.Header.Layout == plan.HeaderAndRows {
				return false
			}
		}
	}
	for i := range p.Runs {
		if p.Runs[i].Tube != q.Runs[i].Tube {
			return false
		}
	}
	return p.Header == q.Header
}
