package fault

import (
	"slices"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// HoleBore is the diameter in m of the hole that is punched for an emitter's
// barb: 3 mm (common practice, no source).
const HoleBore = 3e-3

// A breaker is a zone in which one thing at a time is broken.
type breaker struct {
	*zone
	f      *Faults
	net    *network.Network
	solver *network.Solver
	hole   int // the emitter that stands for a hole; open ends follow, by tube
	tried  [End + 1]int
	failed bool
}

// sudden breaks one thing of a zone at a time, and says whether the flows
// settled.
func (f *Faults) sudden(z *zone) bool {
	l := z.l
	n := l.Zone(z.number)
	b := &breaker{zone: z, f: f, net: n, hole: len(n.Emitters)}
	n.Emitters = append(slices.Clone(n.Emitters), emitter.Emitter{
		Kind: emitter.NonCompensating, Exponent: 0.5, Nominal: 1, Flow: pipe.HoleFlow(HoleBore, 1),
	})
	for i := range l.Tubes {
		n.Emitters = append(n.Emitters, emitter.Emitter{
			Kind: emitter.NonCompensating, Exponent: 0.5,
			Flow: pipe.FlowAt(flush.Wanted, l.Tubes[i].Bore), Nominal: pipe.LocalHead(flush.Mouth, flush.Wanted),
		})
	}
	var err error
	if b.solver, err = network.NewSolver(n); err != nil {
		return false
	}
	b.blockEmitter()
	rows := f.rows(z)
	for _, r := range rows {
		first, end := z.plants(r)
		b.leak(Sudden{Kind: Hole, Row: r, Plant: first}, l.Plants[first].Node)
		if end-first > 1 {
			b.leak(Sudden{Kind: Hole, Row: r, Plant: end - 1}, l.Plants[end-1].Node)
		}
		if l.Ends[r] >= 0 && l.Plan.Header.Layout != plan.Ring {
			b.leak(Sudden{Kind: End, Row: r, Plant: -1}, l.Ends[r])
		}
		if len(rows) > 1 && (l.Plan.Header.Layout != plan.OneLine || r > 0) {
			b.blockRow(r)
		}
	}
	for i := range f.Sudden {
		if s := &f.Sudden[i]; s.Zone == z.number {
			s.Tried = b.tried[s.Kind]
		}
	}
	return !b.failed
}

// blockEmitter blocks the emitter that takes the most: what it no longer takes
// raises the others most.
func (b *breaker) blockEmitter() {
	at, most := -1, 0.0
	for i := range b.l.Plants {
		node := b.l.Plants[i].Node
		if q := b.was.Out[node]; b.net.Nodes[node].Emitter != network.None && q/b.net.Nodes[node].Count > most {
			at, most = i, q/b.net.Nodes[node].Count
		}
	}
	if at < 0 {
		return
	}
	p := &b.l.Plants[at]
	node := &b.net.Nodes[p.Node]
	kept := *node
	if node.Count--; node.Count < 1 {
		node.Emitter, node.Count = network.None, 0
	}
	b.solve(Sudden{Kind: Emitter, Row: p.Row, Plant: at}, b.solver, func(i int) bool { return i == at })
	b.net.Nodes[p.Node] = kept
}

// leak lets water out at a node: of a plant, whose emitters it takes the
// place of, or at an end.
func (b *breaker) leak(s Sudden, at int) {
	node := &b.net.Nodes[at]
	kept := *node
	node.Emitter, node.Count = b.hole, 1
	if s.Kind == End {
		bore := b.l.Network.Links[at-1].Bore // link i leads to node i+1
		tube := slices.IndexFunc(b.l.Tubes, func(t layout.Tube) bool { return t.Bore == bore })
		node.Emitter += 1 + tube
	}
	b.solve(s, b.solver, func(i int) bool { return i == s.Plant })
	*node = kept
}

// blockRow blocks a row at its start: in one line all that follows too, in a
// ring only what the far end does not bring.
func (b *breaker) blockRow(row int) {
	cut := func(i int) bool {
		r := b.l.Plants[i].Row
		return r == row || b.l.Plan.Header.Layout == plan.OneLine && r > row
	}
	s := Sudden{Kind: Row, Row: row, Plant: -1}
	if b.l.Plan.Header.Layout != plan.Ring || len(b.l.Plan.Rows) < 2 {
		kept := slices.Clone(b.net.Nodes)
		for i := range b.l.Plants {
			if cut(i) {
				node := &b.net.Nodes[b.l.Plants[i].Node]
				node.Emitter, node.Count = network.None, 0
			}
		}
		b.solve(s, b.solver, cut)
		copy(b.net.Nodes, kept)
		return
	}
	n := *b.net
	at := slices.IndexFunc(b.l.Stretches, func(t layout.Stretch) bool { return t.Kind == layout.RowOf && t.Index == row })
	link := b.l.Stretches[at].Links[0]
	n.Links = slices.Delete(slices.Clone(n.Links), link, link+1)
	solver, err := network.NewSolver(&n)
	if err != nil {
		b.failed = true
		return
	}
	b.solve(s, solver, func(int) bool { return false })
}

// solve turns the water on with the fault, and keeps it if it is the worst of
// its kind. cut says which plants, by index into Layout.Plants, it takes the
// water from by itself.
func (b *breaker) solve(s Sudden, solver *network.Solver, cut func(int) bool) {
	b.tried[s.Kind]++
	sol, err := solver.Start()
	if err != nil {
		b.failed = true
		return
	}
	s.Zone, s.Was, s.Now = b.number, b.read(b.was, 0), b.read(sol, 0)
	switch s.Kind {
	case Hole:
		s.Lost = sol.Out[b.l.Plants[s.Plant].Node]
	case End:
		s.Lost = sol.Out[b.l.Ends[s.Row]]
	}
	s.Least, s.Most, s.Worst = 1, 1, -1
	for i := range b.l.Plants {
		b.compare(&s, sol, i, cut(i))
	}
	for i := range b.f.Sudden {
		if o := &b.f.Sudden[i]; o.Kind == s.Kind {
			if s.worse(o) {
				*o = s
			}
			return
		}
	}
	b.f.Sudden = append(b.f.Sudden, s)
}

// compare notes how plant i of the zone fares.
func (b *breaker) compare(s *Sudden, sol *network.Solution, i int, cut bool) {
	p := &b.l.Plants[i]
	node := &b.l.Network.Nodes[p.Node]
	had := b.was.Out[p.Node]
	if b.l.ZoneOf(p.Row) != b.number || had <= 0 {
		return
	}
	if cut {
		s.Cut++
		return
	}
	e := &b.l.Network.Emitters[node.Emitter]
	before, now := e.State(b.was.Head[p.Node]-node.Z), e.State(sol.Head[p.Node]-node.Z)
	share := sol.Out[p.Node] / had
	switch {
	case share <= 0:
		s.Dry++
	case now == emitter.Below && before != emitter.Below:
		s.Below++
	case now == emitter.Above && before != emitter.Above:
		s.Above++
	}
	if share < s.Least || s.Worst < 0 && share <= s.Least {
		s.Least, s.Worst = share, i
	}
	s.Most = max(s.Most, share)
}

// worse says whether a fault does more harm than another of its kind.
func (s *Sudden) worse(o *Sudden) bool {
	a, b := s.Dry+s.Below+s.Above, o.Dry+o.Below+o.Above
	if a != b {
		return a > b
	}
	return s.Most-s.Least > o.Most-o.Least
}
