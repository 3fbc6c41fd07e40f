package design

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// mixed is a small plan whose rows differ: in length and height, in emitters of
// two kinds and in how many of them a plant has.
func mixed(r *rand.Rand, seed int) *plan.Plan {
	p := few(r, seed)
	other := p.Emitters[0]
	other.Flow *= 0.5 + r.Float64()
	other.CV += 0.04
	other.Lowest *= 0.9 + 0.2*r.Float64()
	other.Highest = other.Lowest * 2
	if seed%6 == 4 {
		other.Kind, other.Nominal, other.Exponent = plan.NonCompensating, 1e5, 0.6
	}
	p.Emitters = append(p.Emitters, other)
	for p.Header.Layout != plan.OneLine && len(p.Rows) < 5 {
		p.Rows = append(p.Rows, p.Rows[r.IntN(len(p.Rows))])
		p.Rows[len(p.Rows)-1].Height = 0.6*r.Float64() - 0.3
	}
	for i := range p.Rows {
		row := &p.Rows[i]
		row.Emitter, row.PerPlant, row.Gap = r.IntN(2), 1+r.IntN(3), 0.4+2*r.Float64()
	}
	if p.Header.Layout != plan.OneLine {
		p.Rows[2] = p.Rows[1] // two alike
	}
	p.Supply.Devices = 1e4 * float64(seed%2)
	p.Filter.Present = max(p.Filter.Present, seed%4/2)
	return p
}

// A candidate is one taken apart, as the search has it, and its plan.
type candidate struct {
	zones []zone
	lead  *lead
	head  *header
	field *field
	plan  *plan.Plan
}

// apart returns about so many candidates of a search, spread over all of them.
func apart(t *testing.T, s *search, most int) (list []candidate) {
	t.Helper()
	all := 0
	for _, p := range s.zoned {
		for h := range s.all {
			all += len(s.all[h].leads) * len(s.rows[min(len(p.Zones())-1, 1)])
		}
	}
	step := all/most | 1 // odd, so that it meets both feeds
	k := 0
	for _, p := range s.zoned {
		numbers := p.Zones()
		fields := s.rows[min(len(numbers)-1, 1)]
		for h := range s.all {
			for f := range fields {
				for a := range s.all[h].leads {
					if k++; k%step != 0 {
						continue
					}
					// A header's leads hold the sums of one zoning at a time: here each candidate has its own.
					head := s.all[h]
					head.leads = slices.Clone(head.leads)
					for i := range head.leads {
						head.leads[i].loss, head.leads[i].fouled, head.leads[i].lifts = nil, nil, nil
					}
					c := candidate{make([]zone, len(numbers)), &head.leads[a], &head, &fields[f], laid(p, fields[f].size, head.size, head.leads[a].sizes, head.feed)}
					if s.tree {
						var spreads []spread
						for _, number := range numbers {
							spreads = append(spreads, s.spreadOf(&head, p, number, c.field))
						}
						s.leadsAt(&head, spreads)
						for i := range spreads {
							c.zones[i] = s.zoneOf(&spreads[i], c.field)
						}
					} else if !s.solve(c.zones, p, &head, c.field, numbers) {
						t.Fatal("no solver")
					}
					list = append(list, c)
				}
			}
		}
	}
	return list
}

// driven is a network of a layout whose supply gives one head.
func driven(l *layout.Layout, n *network.Network, head float64) *network.Network {
	m := *n
	m.Links = slices.Clone(n.Links)
	if l.Stretches[0].Kind == layout.Source {
		m.Links[0].Law = through{}
	}
	m.Head = head
	return &m
}

// A zone taken apart is, at any head that it may get, what the whole network
// says: what flows, what the feed needs so that each emitter has its lowest,
// none is above its range and nothing draws air, how fast the water runs, how
// even it is, and what the lead loses.
func TestZonesAreThoseOfTheWholeNetwork(t *testing.T) {
	for seed := range 15 {
		p := mixed(rand.New(rand.NewPCG(uint64(seed), 11)), seed)
		s := newSearch(p, split, nil)
		within := near / 10 // of the solver, and of sums
		if s.tabled {
			within = 1e-3 // between the states of a response
		}
		for _, c := range apart(t, s, 8) {
			l := layout.New(c.plan)
			for i, number := range l.Zones {
				z := &c.zones[i]
				least, flow, ok := z.least(0)
				if !ok {
					t.Errorf("seed %d: nothing is enough for zone %d", seed, number)
					continue
				}
				if z.loose != nil {
					// No head that is enough is less, and where the ground alone counts it is this.
					low, ground := z.loose.lowest(), math.Inf(-1)
					for k := range l.Plants {
						if node := &l.Network.Nodes[l.Plants[k].Node]; l.ZoneOf(l.Plants[k].Row) == number {
							ground = max(ground, node.Z+l.Network.Emitters[node.Emitter].Lowest)
						}
					}
					if low > least+near || low < ground-near || !s.tabled && low != ground {
						t.Errorf("seed %d, zone %d: begins at %g m, for a least of %g and emitters' of %g", seed, number, low, least, ground)
					}
				}
				lost, lift := c.lead.at(flow, false)
				for _, more := range []float64{2 * near, 0.3, 3, 30, 110} {
					whole := driven(l, l.Zone(number), max(least, lift)+lost+more)
					sol := allOpen(t, whole)
					feed := sol.Head[l.Feed]
					at := z.at(feed)
					differs := func(what string, got, want, within float64) {
						if math.Abs(got-want) > within {
							t.Errorf("seed %d, zone %d, %g m: %s is %.9g, and %.9g of the whole", seed, number, feed, what, got, want)
						}
					}
					differs("the flow", at.flow, sol.Total, 1e-5*sol.Total)
					loss, lift := c.lead.at(sol.Total, false)
					differs("the loss of the lead", loss, whole.Head-feed, 1e-5)
					differs("the speed in the lead", c.lead.fastest(sol.Total), speed(l, whole, sol, layout.Lead), 1e-9)
					differs("the speed in the header", at.speed, speed(l, whole, sol, layout.Main), 1e-9+1e-5*at.speed)
					needs, top, air, runs := math.Inf(-1), math.Inf(1), math.Inf(-1), math.Inf(-1)
					n, sum, lowest, cv, fewest := 0.0, 0.0, math.Inf(1), 0.0, math.Inf(1)
					for k, node := range whole.Nodes {
						if node.Emitter == network.None {
							continue
						}
						e := &whole.Emitters[node.Emitter]
						lost := feed - (sol.Head[k] - node.Z)
						needs, top = max(needs, lost+e.Lowest), min(top, lost+e.Highest)
						share := sol.Out[k] / node.Count / e.Flow
						n, sum, lowest = n+1, sum+share, min(lowest, share)
						cv, fewest = max(cv, e.CV), min(fewest, node.Count)
					}
					for i := range l.Stretches {
						to := l.Network.Links[l.Stretches[i].Links[0]].To
						switch lost := feed - sol.Head[to] + whole.Nodes[to].Z; l.Stretches[i].Kind {
						case layout.HeaderOf, layout.Between:
							air = max(air, lost)
						case layout.RunOf:
							runs = max(runs, lost)
						}
					}
					differs("what it needs", at.needs, needs, within)
					differs("where the range ends", at.top, top, within)
					differs("the evenness", at.even, evenness.Design(cv, fewest, lowest*n/sum), 1e-5)
					differs("what the runs need", lift, runs, 1e-6)
					if !math.IsInf(air, -1) || !math.IsInf(at.air, -1) {
						differs("what the header needs", at.air, air, within)
					}
					if l.FilterLink >= 0 {
						due := allOpen(t, driven(l, l.Fouled(whole, l.Network.Water.HeadOf(p.Filter.Fouling)), whole.Head+5))
						loss, _ := c.lead.at(due.Total, true)
						differs("the loss of the lead with a dirty filter", loss, whole.Head+5-due.Head[l.Feed], 1e-5)
					}
				}
			}
		}
	}
}

// speed is the greatest in the tubing of a rank.
func speed(l *layout.Layout, n *network.Network, sol *network.Solution, rank int) float64 {
	v := 0.0
	for i := range l.Stretches {
		if st := &l.Stretches[i]; st.Tube != layout.NoTube && st.Rank() == rank {
			for _, k := range st.Links {
				v = max(v, math.Abs(pipe.Velocity(sol.Flow[k], n.Links[k].Bore)))
			}
		}
	}
	return v
}

// The least head of a zone, clean and with a filter that is due, is the one that
// is found by solving the whole network at one head after another.
func TestLeastHeadIsThatOfTheWholeNetwork(t *testing.T) {
	for seed := range 15 {
		p := mixed(rand.New(rand.NewPCG(uint64(seed), 12)), seed)
		s := newSearch(p, split, nil)
		for _, c := range apart(t, s, 4) {
			l := layout.New(c.plan)
			for i, number := range l.Zones {
				for _, due := range []bool{false, true} {
					n, reserve := l.Zone(number), p.Limits.Reserve
					if due {
						n, reserve = l.Fouled(n, s.fouling), 0
					}
					head, flow, ok := s.least(&c.zones[i], c.lead, i, due, reserve)
					want, draws := duty(t, l, n, reserve)
					if !ok || math.Abs(head-want) > 1e-3 || math.Abs(flow-draws) > 1e-4*draws {
						t.Errorf("seed %d, zone %d, due %t: %.6g m at %.6g m³/s, %t, want %.6g and %.6g", seed, number, due, head, flow, ok, want, draws)
					}
				}
			}
		}
	}
}

// Flushing a row alone takes at the feed what the whole network takes there
// while the row's end runs as fast as it is wanted to, no other row takes water
// and its own emitters are open that have their closing head.
func TestGushesAreThoseOfTheWholeNetwork(t *testing.T) {
	several, shut := 0, 0
	for seed := range 15 {
		p := mixed(rand.New(rand.NewPCG(uint64(seed), 13)), seed)
		if p.Header.Layout == plan.Ring {
			continue // its rows have no ends
		}
		p.Prices.Flush = 1
		s := newSearch(p, split, nil)
		for _, c := range apart(t, s, 4) {
			l := layout.New(c.plan)
			var want []gush
			for r, end := range l.Ends {
				if end < 0 {
					continue
				}
				g, closed := flushed(t, l, r, end)
				want = append(want, g)
				if closed {
					shut++
				}
			}
			got := s.gushes(c.head, c.field)
			near := func(a, b gush) bool {
				return math.Abs(a.flow-b.flow) < 1e-6*b.flow && math.Abs(a.head-b.head) < 1e-5
			}
			for _, g := range got {
				if !slices.ContainsFunc(want, func(w gush) bool { return near(g, w) }) {
					t.Errorf("seed %d: %v is no row's of %v", seed, g, want)
				}
			}
			for _, w := range want {
				if !slices.ContainsFunc(got, func(g gush) bool { return math.Abs(g.flow-w.flow) < 1e-6*w.flow && g.head > w.head-1e-5 }) {
					t.Errorf("seed %d: a row takes %v, and the most are %v", seed, w, got)
				}
			}
			if len(got) > 1 {
				several++
			}
			if again := s.gushes(c.head, c.field); !slices.Equal(again, got) {
				t.Errorf("seed %d: asked again, %v and not %v", seed, again, got)
			}
		}
	}
	if several < 10 || shut < 10 {
		t.Errorf("%d candidates whose rows differ, %d rows with emitters that shut: too few", several, shut)
	}
}

// flushed returns what flushing a row alone takes at the feed, and whether some
// of its emitters shut meanwhile.
func flushed(t *testing.T, l *layout.Layout, row, end int) (gush, bool) {
	n := driven(l, &l.Network, 0)
	n.Nodes = slices.Clone(n.Nodes)
	for i := range l.Plants {
		if l.Plan.Header.Layout != plan.OneLine && l.Plants[i].Row != row {
			n.Nodes[l.Plants[i].Node].Emitter = network.None
		}
	}
	bore := n.Links[end-1].Bore
	n.Nodes[end].Draw = pipe.FlowAt(flush.Wanted, bore)
	mouth := n.Nodes[end].Z + pipe.LocalHead(flush.Mouth, flush.Wanted)
	open := slices.Repeat([]bool{true}, len(n.Nodes))
	for closed := false; ; closed = true {
		var sol *network.Solution
		for missing := mouth; math.Abs(missing) > 1e-9; missing = mouth - sol.Head[end] {
			n.Head += missing // losses only rise: at least as much is missing
			var err error
			if sol, err = network.Hold(n, open); err != nil {
				t.Fatal(err)
			}
		}
		least, at := 0.0, -1 // the emitter that lacks most of its closing head
		for i, node := range n.Nodes {
			if node.Emitter == network.None || !open[i] || n.Emitters[node.Emitter].Kind != plan.Compensating {
				continue
			}
			if spare := sol.Head[i] - node.Z - n.Emitters[node.Emitter].Closes; spare < least {
				least, at = spare, i
			}
		}
		if at < 0 {
			return gush{sol.Head[l.Feed], sol.Total}, closed
		}
		open[at] = false
	}
}

// A candidate breaks the limits that its whole networks break: with the supply of
// the plan, and with a pump of any size. One that does not carry it is told of
// that, whatever else it breaks.
func TestLimitsAreThoseOfTheWholeNetwork(t *testing.T) {
	var met [Limits]int
	kept := 0
	for seed := range 20 {
		r := rand.New(rand.NewPCG(uint64(seed), 14))
		p := mixed(r, seed)
		p.Prices.Flush = 1
		for k := range 4 {
			p.Limits.Evenness = 0.8 + 0.16*r.Float64()
			if p.Supply.Kind == plan.PumpTwo {
				p.Supply.ShutOff, p.Supply.MaxFlow = 8+40*r.Float64(), (5+60*r.Float64())/6e4
				p.Supply.Regulator = float64(r.IntN(2)) * 2e5
			} else {
				p.Runs[0].Rise = -10 - 30*r.Float64()
			}
			if k == 2 { // little flow, so that flushing takes the most
				p.Emitters[0].Flow, p.Emitters[1].Flow = p.Emitters[0].Flow/8, p.Emitters[1].Flow/8
			}
			if k > 1 {
				p.Supply.ShutOff, p.Supply.MaxFlow = 14+20*r.Float64(), (2+6*r.Float64())/6e4
			}
			p.Limits.Speed = 0.3 + 2*r.Float64()
			s := newSearch(p, split, nil)
			for _, c := range apart(t, s, 4) {
				want := broken(t, c.plan)
				got := s.breaks(c.zones, c.lead, s.mine, s.rests, c.head, c.field)
				for i := range met {
					if want&(1<<i) != 0 {
						met[i]++
					}
				}
				if want == 0 {
					kept++
				}
				if got != want && got&want&Reach == 0 {
					t.Errorf("seed %d: %06b are broken, and %06b of the whole", seed, got, want)
				}
			}
		}
	}
	for i, n := range met[:Limits-1] {
		if n < 5 {
			t.Errorf("only %d candidates break limit %d", n, i)
		}
	}
	if kept < 10 {
		t.Errorf("only %d break none", kept)
	}
	t.Log(met, kept)
}

// A response begins where a row's weakest emitter has its lowest and goes as far
// as any supply does. It is found by a pass for each state, and few more to begin
// with, each of which costs what its links do; between states it is what a pass
// says.
func TestResponseBeginsAtTheLowest(t *testing.T) {
	for _, seed := range []int{0, 3, 4, 13, 18} { // headers, where flows follow the heads
		p := mixed(rand.New(rand.NewPCG(uint64(seed), 17)), seed)
		p.Header.Layout = plan.HeaderAndRows
		p.Emitters[1].Exponent = 0.15
		s := newSearch(p, split, nil)
		l := layout.New(p)
		for i := range l.Stretches {
			st := &l.Stretches[i]
			if st.Kind != layout.RowOf {
				continue
			}
			links := l.Network.Links[st.Links[0] : st.Links[0]+len(st.Links)]
			drags := s.drags(links)
			r := s.respond(l, links, drags)
			first, last := &r.states[0], &r.states[knots-1]
			if first.told[spareOf] < 0 || first.told[spareOf] > near/10 || last.told[spareOf] < MostHead || r.plants != float64(p.Rows[st.Index].Plants) {
				t.Errorf("seed %d, row %d: %g m to spare at first, %g at last, %g plants", seed, st.Index, first.told[spareOf], last.told[spareOf], r.plants)
			}
			passes := 0
			for units := 0; ; units += len(links) {
				s.meter = work.New(units, nil)
				if s.meter.Within(func() { s.respond(l, links, drags) }) {
					break
				}
				passes++
			}
			if s.meter = nil; passes <= knots || passes > knots+6 {
				t.Errorf("seed %d, row %d: %d passes", seed, st.Index, passes)
			}
			for k := range knots - 1 {
				if !(r.states[k].head < r.states[k+1].head) {
					t.Errorf("seed %d, row %d: state %d stands at %g m, the next at %g", seed, st.Index, k, r.states[k].head, r.states[k+1].head)
				}
			}
			for more := 0.01; more < MostHead; more = more*1.1 + 0.1 {
				// Where the cubic is furthest off, a flow is within a few millionths of
				// its own and a head within a millimetre.
				exact := s.march(l, links, drags, first.head+more)
				if exact.head > last.head {
					break
				}
				for what := range tells {
					within := 1e-3
					if what == flowOf || what == sumOf || what == leastOf {
						within = 5e-6 * exact.told[what]
					}
					if got, slope := r.at(what, exact.head); math.Abs(got-exact.told[what]) > within || math.Abs(slope-exact.slope[what]) > 1e-2*math.Abs(exact.slope[what])+1e-9 {
						t.Errorf("seed %d, row %d, %g m: %d is %g, slope %g, want %g and %g", seed, st.Index, exact.head, what, got, slope, exact.told[what], exact.slope[what])
					}
				}
			}
		}
	}
}

// Working a zone out spends from the meter what it counts as its own work: the
// nodes, or pieces of the header, of every step.
func TestZonesCountTheirWork(t *testing.T) {
	for seed := range 15 {
		p := mixed(rand.New(rand.NewPCG(uint64(seed), 18)), seed)
		s := newSearch(p, split, nil)
		if s.tree {
			continue
		}
		for _, c := range apart(t, s, 3) {
			z := &c.zones[0]
			if (z.loose == nil) != s.fixed {
				t.Errorf("seed %d: fixed flows %t, asked at every head %t", seed, s.fixed, z.loose != nil)
			}
			if z.loose == nil {
				continue // worked out already
			}
			before := s.work
			first := z.at(20)
			did := s.work - before
			size, most := len(c.head.pieces), 4 // steps of Newton's on the header, which has few pieces
			if a, ok := z.loose.(*loose); ok {
				size, most = len(a.net.Nodes), 8
			}
			if did < size || did > most*size {
				t.Errorf("seed %d: %d steps of nodes, for %d", seed, did, size)
			}
			if again := z.at(20); again != first || s.work != before+did {
				t.Errorf("seed %d: asked again, %d steps more", seed, s.work-before-did)
			}
			if z.at(21) == first {
				t.Errorf("seed %d: another head's answer is the same", seed)
			}
			// What is known of a reserve is not looked for again.
			head, flow, ok := z.least(0.5)
			did = s.work
			if h, q, k := z.least(0.5); h != head || q != flow || k != ok || s.work != did {
				t.Errorf("seed %d: %g m at %g m³/s, and then %g at %g, after %d steps more", seed, head, flow, h, q, s.work-did)
			}
			if h, _, _ := z.least(2.5); h < head+1.9 {
				t.Errorf("seed %d: %g m with a reserve of 2.5 m, and %g with 0.5", seed, h, head)
			}
		}
	}
}

// A zone is taken out of a layout that stays as it was, and where no state of the
// water is found it has nothing that would serve, and counts as much work as the
// solver does before it gives up.
func TestZoneOfTheSolver(t *testing.T) {
	p := simple()
	p.Header.Layout = plan.Ring
	s := newSearch(p, split, nil)
	l := layout.New(p)
	was := slices.Clone(l.Network.Links)
	a, ok := s.looseOf(l, l.Zones[0])
	if !ok || !slices.Equal(l.Network.Links, was) {
		t.Errorf("the layout has changed, or there is no solver: %t", ok)
	}
	wrong := layout.New(p)
	wrong.Network.Links[3].Length = math.NaN()
	if _, ok := s.looseOf(wrong, l.Zones[0]); ok {
		t.Error("a network of no length is taken")
	}
	z := a.at(math.NaN())
	if !math.IsInf(z.needs, 1) || !math.IsInf(z.air, -1) || !math.IsInf(z.top, 1) || z.flow != 0 || s.work != 100*len(a.net.Nodes) {
		t.Errorf("no head: %+v, %d nodes of steps for %d", z, s.work, len(a.net.Nodes))
	}
}
