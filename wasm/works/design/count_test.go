package design

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/layout"
)

// simple is a plan of two sizes of tubing that its supply carries.
func simple() *plan.Plan {
	p := had(1, 2)
	p.Rows = p.Rows[:4]
	for i := range p.Rows {
		p.Rows[i].Tube, p.Rows[i].Zone = 1, 1
	}
	p.Runs = p.Runs[:1]
	p.Runs[0].Tube, p.Header.Tube = 1, 1
	p.Prices.Tubes[2], p.Prices.Flush = 2, 0
	return p
}

// Candidates are counted by hand: sizes of rows, of the header and of each run,
// two feeds where there is a header, and groupings.
func TestCountedByHand(t *testing.T) {
	wide := slices.IndexFunc(catalogue.Tubes[:], func(c catalogue.Tube) bool { return !c.Row })
	for _, c := range []struct {
		name   string
		change func(p *plan.Plan)
		want   int
	}{
		{"four rows", func(p *plan.Plan) {}, 2 * 2 * 2 * 2 * 4},
		{"grouped in a way of their own", func(p *plan.Plan) { p.Rows[2].Zone = 2 }, 2 * 2 * 2 * 2 * 5},
		{"grouped as is tried in any case", func(p *plan.Plan) { p.Rows[2].Zone, p.Rows[3].Zone = 2, 2 }, 2 * 2 * 2 * 2 * 4},
		{"one size", func(p *plan.Plan) { p.Prices.Tubes[2] = 0 }, 2 * 4},
		{"two rows", func(p *plan.Plan) { p.Rows = p.Rows[:2] }, 2 * 2 * 2 * 2 * 2},
		{"one row", func(p *plan.Plan) { p.Rows = p.Rows[:1] }, 2 * 2},
		{"a ring", func(p *plan.Plan) { p.Header.Layout = plan.Ring }, 2 * 2 * 2 * 2},
		{"a line", func(p *plan.Plan) { p.Header.Layout, p.Rows = plan.OneLine, p.Rows[:2] }, 2 * 2},
		{"two runs", func(p *plan.Plan) { p.Runs = append(p.Runs, p.Runs[0]) }, 2 * 2 * 2 * 2 * 2 * 4},
		{"rows of two sizes, which may stay", func(p *plan.Plan) { p.Rows[2].Tube = 2 }, 3 * 2 * 2 * 2 * 4},
		{"a size that no row can be", func(p *plan.Plan) { p.Prices.Tubes[wide] = 1 }, 2 * 3 * 2 * 3 * 4},
		{"nothing that a row can be", func(p *plan.Plan) {
			p.Prices.Tubes[1], p.Prices.Tubes[2], p.Prices.Tubes[wide] = 0, 0, 1
		}, 0},
		{"flows that follow the heads", func(p *plan.Plan) { p.Emitters[0].Exponent = 0.05 }, 2 * 2 * 2 * 2 * 4},
	} {
		p := simple()
		c.change(p)
		r := Of(p, split, nil)
		if r.Counted != c.want || r.Solved+r.Pruned != r.Counted || r.Cut {
			t.Errorf("%s: %d counted, want %d; %d solved, %d passed over, cut: %t", c.name, r.Counted, c.want, r.Solved, r.Pruned, r.Cut)
		}
		if r.Counted > 0 != (len(r.List) > 0) || r.Forbids != 0 || r.Counted >= 64 && r.Pruned < r.Counted/4 {
			t.Errorf("%s: %d designs, %06b forbids, %d of %d passed over", c.name, len(r.List), r.Forbids, r.Pruned, r.Counted)
		}
		if got := Cost(layout.New(p)); r.Now != got {
			t.Errorf("%s: it costs %g now, want %g", c.name, r.Now, got)
		}
	}
}

// A design says what its plan is, costs what that costs and is marked if the
// plan's own supply carries it.
func TestDesignsAreTheirPlans(t *testing.T) {
	for _, change := range []func(p *plan.Plan){
		func(p *plan.Plan) {},
		func(p *plan.Plan) { p.Emitters[0].Exponent, p.Rows[1].Tube = 0.05, 2 }, // rows of two sizes, which may stay
		func(p *plan.Plan) { p.Prices.Valve, p.Prices.Zone, p.Limits.Speed = 0.1, 0.1, 0.4 },
		func(p *plan.Plan) { p.Runs = append(p.Runs, p.Runs[0]) },
	} {
		p := simple()
		change(p)
		r := Of(p, split, nil)
		if len(r.List) == 0 || len(r.Own) != 1 {
			t.Fatalf("%d designs, %d of the plan's supply", len(r.List), len(r.Own))
		}
		for i, d := range append(slices.Clone(r.List), r.Own...) {
			rows := d.Plan.Rows[0].Tube
			if d.Plan.Rows[1].Tube != rows {
				rows = Kept
			}
			same := d.Rows == rows && d.Header == d.Plan.Header.Tube && d.Middle == (d.Plan.Header.Feed == plan.FeedMiddle) && d.Zones == len(d.Plan.Zones())
			for k := range d.Runs {
				same = same && d.Runs[k] == d.Plan.Runs[k].Tube
			}
			// Heads agree within a few tenths of a millimetre.
			if w := solve(t, d.Plan); math.Abs(w.head-d.Head) > 1e-3 || math.Abs(w.flow-d.Flow) > 1e-4*d.Flow || !w.ok && !d.Present || !w.own && d.Present {
				t.Errorf("design %d takes %g m at %g m³/s, and its plan %g at %g", i, d.Head, d.Flow, w.head, w.flow)
			}
			if !same || len(d.Runs) != len(p.Runs) || math.Abs(d.Cost-Cost(layout.New(d.Plan))) > 1e-9 || d.Present != (i == len(r.List)) {
				t.Errorf("design %d is %+v, and its plan %+v", i, d, d.Plan)
			}
		}
	}
}

// A limit that nothing keeps, and none that something keeps, is to blame for an
// empty list, and every candidate fails it.
func TestWhatForbids(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *plan.Plan)
		want   Limit
	}{
		{"emitters that need more than any supply gives", func(p *plan.Plan) { p.Emitters[0].Lowest, p.Emitters[0].Highest = 16e5, 17e5 }, Reach},
		{"water that may not run", func(p *plan.Plan) { p.Limits.Speed = 0.01 }, Fast},
		{"an evenness that no emitter has", func(p *plan.Plan) { p.Limits.Evenness = 0.999 }, Uneven},
		{"both", func(p *plan.Plan) { p.Limits.Speed, p.Limits.Evenness = 0.01, 0.999 }, Fast | Uneven},
		{"a range without room", func(p *plan.Plan) { p.Emitters[0].Highest = p.Emitters[0].Lowest }, Above},
		{"more than tubing carries in the sun", func(p *plan.Plan) { p.Emitters[0].Lowest, p.Emitters[0].Highest = 2.4e5, 9e5 }, Rating},
	} {
		for _, exponent := range []float64{0, 0.05} {
			for _, shape := range []int{plan.HeaderAndRows, plan.Ring, plan.OneLine} {
				p := simple()
				p.Header.Layout = shape
				p.Emitters[0].Exponent = exponent
				c.change(p)
				r := Of(p, split, nil)
				if len(r.List) > 0 || r.Forbids != c.want || r.Solved+r.Pruned != r.Counted || r.Counted == 0 {
					t.Errorf("%s, exponent %g, layout %d: %06b forbids, want %06b; %+v", c.name, exponent, shape, r.Forbids, c.want, r)
				}
				for i, n := range r.Failures {
					if c.want&(1<<i) != 0 && n != r.Counted {
						t.Errorf("%s, exponent %g, layout %d: %d of %d fail limit %d", c.name, exponent, shape, n, r.Counted, i)
					}
				}
			}
		}
	}
}

// One candidate that fails is to blame like many, and none is not.
func TestWhatForbidsAFew(t *testing.T) {
	p := simple()
	p.Header.Layout, p.Prices.Tubes[2], p.Limits.Speed = plan.OneLine, 0, 0.01
	if r := Of(p, split, nil); r.Counted != 1 || r.Forbids != Fast || len(r.List) > 0 {
		t.Errorf("one candidate: %+v", r)
	}
	p.Prices.Tubes[1] = 0
	if r := Of(p, split, nil); r.Counted != 0 || r.Forbids != 0 {
		t.Errorf("no candidate: %+v", r)
	}
}

// Which way a plan's water is worked out: flows that follow no head are summed,
// others run along each row, and rings and lines are left to the solver.
func TestWaysOfWorkingOut(t *testing.T) {
	soft := func(p *plan.Plan) { p.Emitters[0].Exponent = 0.05 }
	one := func(p *plan.Plan) { p.Rows = p.Rows[:1] }
	other := func(p *plan.Plan) {
		p.Emitters = append(p.Emitters, p.Emitters[0])
		p.Emitters[1].Kind, p.Emitters[1].Exponent = plan.NonCompensating, 0.5
		p.Rows[0].Emitter = 1
	}
	for _, c := range []struct {
		name                string
		layout              int
		change              []func(p *plan.Plan)
		tree, tabled, fixed bool
	}{
		{"header", plan.HeaderAndRows, nil, true, false, true},
		{"header, some flows follow heads", plan.HeaderAndRows, []func(*plan.Plan){soft}, false, true, false},
		{"header, one row's do", plan.HeaderAndRows, []func(*plan.Plan){other}, false, true, false},
		{"one row", plan.HeaderAndRows, []func(*plan.Plan){one}, false, false, true},
		{"ring", plan.Ring, nil, false, false, true},
		{"ring, flows follow heads", plan.Ring, []func(*plan.Plan){soft}, false, false, false},
		{"line", plan.OneLine, nil, false, false, true},
		{"line, flows follow heads", plan.OneLine, []func(*plan.Plan){soft}, false, false, false},
	} {
		p := simple()
		p.Header.Layout = c.layout
		for _, change := range c.change {
			change(p)
		}
		s := newSearch(p, split, nil)
		s.run()
		if s.tree != c.tree || s.tabled != c.tabled || s.fixed != c.fixed {
			t.Errorf("%s: sums %t, responses %t, fixed %t", c.name, s.tree, s.tabled, s.fixed)
		}
		if (s.work == 0) != c.tree {
			t.Errorf("%s: %d nodes of steps", c.name, s.work)
		}
	}
}

// Ends are flushed where the grower flushes them, and a ring's rows have none.
func TestWhereEndsAreFlushed(t *testing.T) {
	for _, c := range []struct {
		flush, layout int
		want          bool
	}{{0, plan.HeaderAndRows, false}, {1, plan.HeaderAndRows, true}, {1, plan.OneLine, true}, {1, plan.Ring, false}} {
		p := simple()
		p.Prices.Flush, p.Header.Layout = c.flush, c.layout
		if s := newSearch(p, split, nil); s.flush != c.want || (s.gushes(&s.all[0], &s.rows[0][0]) != nil) != c.want {
			t.Errorf("flushing %d, layout %d: %t", c.flush, c.layout, s.flush)
		}
	}
}

// Fouling is what the filter may lose more; a plan without one has none.
func TestFouling(t *testing.T) {
	p := simple()
	p.Filter.Present, p.Filter.Fouling = 1, 2e4
	if s := newSearch(p, split, nil); s.fouling != s.water.HeadOf(2e4) {
		t.Errorf("a filter fouls by %g m", s.fouling)
	}
	p.Filter.Present = 0
	if s := newSearch(p, split, nil); s.fouling != 0 {
		t.Errorf("no filter fouls by %g m", s.fouling)
	}
}

// Rows of several zones have valves, and only where zones are tried.
func TestRowsWithValves(t *testing.T) {
	p := simple()
	s := newSearch(p, split, nil)
	if len(s.rows[0]) != 2 || len(s.rows[1]) != 2 {
		t.Fatalf("%d and %d fields", len(s.rows[0]), len(s.rows[1]))
	}
	for i := range s.rows[0] {
		for k := range p.Rows {
			// A valve and what it is pushed into lose some of the head.
			if open, valved := s.rows[0][i].rows[k], s.rows[1][i].rows[k]; !(valved.needs > open.needs) || valved.flow != open.flow {
				t.Errorf("size %d, row %d: %g m at %g m³/s without a valve, and %g m at %g m³/s with one", i, k, open.needs, open.flow, valved.needs, valved.flow)
			}
		}
	}
	seen := map[int]bool{}
	for _, fields := range s.rows {
		for i := range fields {
			if seen[fields[i].place] {
				t.Errorf("two fields have place %d", fields[i].place)
			}
			seen[fields[i].place] = true
		}
	}
	p.Header.Layout = plan.Ring
	if s := newSearch(p, split, nil); len(s.rows[0]) != 2 || len(s.rows[1]) != 0 {
		t.Errorf("a ring: %d and %d fields", len(s.rows[0]), len(s.rows[1]))
	}
}

// What a part costs, and what still water it carries, is what its stretches of
// the whole layout cost and carry.
func TestPartsOfTheCost(t *testing.T) {
	for seed := range 5 {
		p := mixed(rand.New(rand.NewPCG(uint64(seed), 15)), seed)
		p.Prices.Valve, p.Prices.Zone = 3, 7
		s := newSearch(p, split, nil)
		for _, c := range apart(t, s, 9) {
			l := layout.New(c.plan)
			cost := c.lead.cost + c.head.cost + c.field.cost
			if n := len(l.Zones); n > 1 {
				cost += float64(len(p.Rows))*3 + float64(n)*7
			}
			if want := Cost(l); math.Abs(cost-want) > 1e-9*want {
				t.Errorf("seed %d: its parts cost %g, and the whole %g", seed, cost, want)
			}
			still := [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}
			for i := range l.Stretches {
				st := &l.Stretches[i]
				if st.Tube == layout.NoTube {
					continue
				}
				for _, k := range st.Links {
					low := min(l.Points[l.Network.Links[k].From].Z, l.Points[l.Network.Links[k].To].Z)
					still[st.Rank()] = min(still[st.Rank()], low+l.Network.Water.HeadOf(catalogue.Tubes[l.Tubes[st.Tube].Entry].InSun()))
				}
			}
			if got := [3]float64{c.lead.still, c.head.still, c.field.still}; got != still {
				t.Errorf("seed %d: still water may stand at %v, and in the whole at %v", seed, got, still)
			}
		}
	}
}

// The bound of a zoning is below what any of its candidates takes, and what a
// zone of level ground takes without losses.
func TestBounds(t *testing.T) {
	for seed := range 10 {
		p := mixed(rand.New(rand.NewPCG(uint64(seed), 16)), seed)
		s := newSearch(p, split, nil)
		for _, c := range apart(t, s, 5) {
			b := s.bound.of(c.plan, c.plan.Zones())
			head, flow := math.Inf(-1), 0.0
			for i := range c.zones {
				h, q, ok := s.least(&c.zones[i], c.lead, i, true, 0)
				if !ok {
					t.Fatalf("seed %d: nothing is enough", seed)
				}
				head, flow = max(head, h), max(flow, q)
			}
			// A root is within near of its place, and so may a flow be.
			if b.head > head+near || b.flow > flow*(1+1e-5) {
				t.Errorf("seed %d: at least %g m and %g m³/s, and it takes %g and %g", seed, b.head, b.flow, head, flow)
			}
			most, draws := math.Inf(-1), 0.0
			for _, number := range c.plan.Zones() {
				q := 0.0
				for i := range s.base.Plants {
					if r := s.base.Plants[i].Row; c.plan.ZoneOf(r) == number {
						e := &c.plan.Emitters[c.plan.Rows[r].Emitter]
						made := e.Flow
						if e.Kind == plan.NonCompensating {
							made *= math.Pow(e.Lowest/e.Nominal, e.Exponent)
						}
						q += made * float64(c.plan.Rows[r].PerPlant)
						most = max(most, s.base.Plants[i].At.Z+s.water.HeadOf(e.Lowest))
					}
				}
				draws = max(draws, q)
			}
			if math.Abs(b.head-most) > 1e-9 || math.Abs(b.flow-draws) > 1e-9*draws {
				t.Errorf("seed %d: at least %g m and %g m³/s, want %g and %g", seed, b.head, b.flow, most, draws)
			}
		}
	}
}

// spent is how many units a search takes from its meter.
func spent(p *plan.Plan) int {
	lo, hi := 0, 1<<30 // is too little, is enough
	for hi-lo > 1 {
		mid := (lo + hi) / 2
		if m := work.New(mid, nil); m.Within(func() { Of(p, split, m) }) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi
}

// A search spends at least a unit for each candidate's zones and for each node of
// the solver's steps; and longer rows cost it only where rows are laid out or gone
// along, not with every header and lead.
func TestSearchSpends(t *testing.T) {
	for _, exponent := range []float64{0, 0.05} {
		p := simple()
		p.Emitters[0].Exponent = exponent
		s := newSearch(p, split, nil)
		s.run()
		least := s.work
		for _, q := range s.zoned {
			least += s.r.Counted / len(s.zoned) * len(q.Zones())
		}
		units := spent(p)
		if units < least {
			t.Errorf("exponent %g: %d units, for %d candidates' zones and nodes", exponent, units, least)
		}
		if exponent == 0 {
			q := p.Clone()
			more := 0
			for i := range q.Rows {
				more += 9 * q.Rows[i].Plants
				q.Rows[i].Plants *= 10
			}
			// Laid out are the plan, and rows of each size with valves and without: two units a place.
			if grown := spent(q) - units; grown > 2*(1+len(s.rows[0])+len(s.rows[1]))*more {
				t.Errorf("%d plants more cost %d units more", more, grown)
			}
		}
	}
}

// What costs more than a design that takes nothing is not solved at all.
func TestNothingIsSolvedThatIsBeaten(t *testing.T) {
	for _, layout := range []int{plan.Ring, plan.HeaderAndRows, plan.OneLine} {
		p := simple()
		p.Header.Layout = layout
		p.Emitters[0].Exponent = 0.05
		s := newSearch(p, split, nil)
		s.front, s.mine = []*found{{}}, nil
		if s.run(); s.work != 0 || s.r.Solved != 0 || s.r.Pruned != s.r.Counted || s.r.Counted == 0 {
			t.Errorf("layout %d: %d nodes of steps, %+v", layout, s.work, s.r)
		}
	}
}

// Sums of leads are those of the zoning at hand, whatever was summed before.
func TestLeadsOfTheZoningAtHand(t *testing.T) {
	p := simple()
	p.Filter.Present, p.Filter.Fouling = 1, 2e4
	s := newSearch(p, split, nil)
	h := &s.all[0]
	for _, flows := range [][]float64{{1e-4}, {2e-4, 2e-4, 1e-4, 3e-4}, {1e-4, 2e-4}} {
		var zones []spread
		for _, q := range flows {
			zones = append(zones, spread{flow: q})
		}
		s.leadsAt(h, zones)
		for a := range h.leads {
			lead := &h.leads[a]
			if len(lead.loss) != len(flows) || len(lead.fouled) != len(flows) || len(lead.lifts) != len(flows) {
				t.Fatalf("%d sums for %d zones", len(lead.loss), len(flows))
			}
			for i, q := range flows {
				loss, lift := lead.at(q, false)
				due, _ := lead.at(q, true)
				if lead.loss[i] != loss || lead.fouled[i] != due || lead.lifts[i] != lift || due <= loss {
					t.Errorf("zone %d of %v: %g, %g and %g m, want %g, %g and %g", i, flows, lead.loss[i], lead.fouled[i], lead.lifts[i], loss, due, lift)
				}
			}
		}
	}
}
