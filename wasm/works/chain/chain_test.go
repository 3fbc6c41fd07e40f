package chain

import (
	"math"
	"sync"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/ends"
)

// choice is a plan's choice of a thread.
func choice(t *testing.T, name string) int {
	t.Helper()
	for i, e := range ends.All {
		if e.Name("") == name {
			return i + 1
		}
	}
	t.Fatalf("no end is called %q", name)
	return 0
}

// What joins what in plans by hand, in the order of the water.
func TestWaysByHand(t *testing.T) {
	inches := func(p *plan.Plan) { p.Units, p.Runs[0].Tube = unit.US, 10 }
	for _, c := range []struct {
		what   string
		change func(*plan.Plan)
		places []Device
		parts  []int // of each gap
	}{
		{"a pump with filter and regulator", func(*plan.Plan) {}, []Device{Outlet, First, Filter, Second, Regulator, Tubing}, []int{1, 0, 0, 1, 1}},
		{"a pump alone", func(p *plan.Plan) { p.Filter.Present, p.Supply.Regulator = 0, 0 }, []Device{Outlet, First, Tubing}, []int{0, 1}},
		{"a regulator and no filter", func(p *plan.Plan) { p.Filter.Present = 0 }, []Device{Outlet, Regulator, First, Tubing}, []int{1, 1, 1}},
		{"a tap", func(p *plan.Plan) { p.Supply.Kind, p.Supply.Regulator = plan.Mains, 0 }, []Device{Outlet, TimerValve, Backflow, First, Filter, Second, Tubing}, []int{0, 0, 0, 0, 0, 1}},
		{"a tap with hose threads", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Regulator, p.Filter.Present = plan.Mains, 0, 0
			inches(p)
		}, []Device{Outlet, TimerValve, Backflow, First, Tubing}, []int{0, 0, 0, 1}},
		{"a tank", func(p *plan.Plan) { p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0 }, []Device{Outlet, TimerValve, Filter, Tubing}, []int{0, 1, 1}},
		{"too little for gauges", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.ShutOff, p.Supply.Regulator = plan.PumpTwo, 2, 0
		}, []Device{Outlet, Filter, Tubing}, []int{1, 1}},
		{"a pump that is yet to be bought", func(p *plan.Plan) { p.Supply.Kind = plan.PumpWanted }, []Device{Outlet, First, Filter, Second, Tubing}, []int{1, 0, 0, 1}},
	} {
		p := plan.Default()
		c.change(p)
		w := Of(p).Supply
		if len(w.Places) != len(c.places) {
			t.Errorf("%s: %d places, want %d: %+v", c.what, len(w.Places), len(c.places), w.Places)
			continue
		}
		for i := range w.Places {
			if w.Places[i].Device != c.places[i] {
				t.Errorf("%s: place %d is %d, want %d", c.what, i, w.Places[i].Device, c.places[i])
			}
		}
		for i := range w.Gaps {
			if g := &w.Gaps[i]; !g.OK || g.Weak || len(g.Steps) != c.parts[i] {
				t.Errorf("%s: gap %d has %d parts, want %d: %+v", c.what, i, len(g.Steps), c.parts[i], g)
			}
		}
	}
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 1e5
	if h := Of(p).Header; len(h.Places) != 3 || h.Parts() != 2 {
		t.Errorf("a tank's regulator: %+v", h)
	}
}

// The answer is another with another thread, with a part of one's own, with adapters that
// few shops have.
func TestWhatTheGrowerSaysCounts(t *testing.T) {
	p := plan.Default()
	p.Ends.Out[plan.AtOutlet] = choice(t, "3/4 in pipe thread (NPT), male")
	c := Of(p)
	g, w := c.Missing()
	if g == nil || w != &c.Supply || g.From != 0 || len(g.Reached) == 0 || g.Joints[0] != ends.MixedPipes {
		t.Fatalf("NPT leads to BSP: %+v", g)
	}
	npt, bsp := MateOf(w.Places[0].Out), MateOf(w.Places[1].In)
	if !ends.Mate(npt, w.Places[0].Out).Holds(0) || !ends.Mate(bsp, w.Places[1].In).Holds(0) {
		t.Errorf("%s and %s would not help", npt.Name(""), bsp.Name(""))
	}
	// What is said to help does.
	at := func(e ends.End) int {
		for i := range ends.All {
			if ends.All[i] == e {
				return i
			}
		}
		return -1
	}
	own := p.Clone()
	own.Fittings = []plan.Fitting{{Name: "what the neighbour has", A: at(npt), B: at(bsp), Price: 0}}
	if c := Of(own); c.Parts[c.Supply.Gaps[0].Steps[0].Part].Own != 0 || len(c.Supply.Gaps[0].Steps) != 1 {
		t.Errorf("a fitting of one's own is not used: %+v", c.Supply.Gaps[0])
	}
	mixed := p.Clone()
	mixed.Ends.Mixed = 1
	if g, _ := Of(mixed).Missing(); g != nil {
		t.Errorf("adapters that can be had do not help: %+v", g)
	}
	// And the water's way: another thread, another loss.
	narrow := plan.Default()
	narrow.Ends.Out[plan.AtFilter] = choice(t, "G 1/2 parallel thread, male")
	if a, b := Of(plan.Default()).Loss(0.0204), Of(narrow).Loss(0.0204); !(b > a+0.5) {
		t.Errorf("a filter with a thread of 1/2 in: K %g, and %g with one of 3/4", b, a)
	}
}

// What carries too little is said, and what carries enough is taken in its place.
func TestSealsCarryWhatStandsThere(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Static, p.Supply.Regulator = plan.Mains, 12e5, 0
	c := Of(p)
	g := c.Weak()
	if g == nil || c.Stands(&c.Supply, g) != 12e5 {
		t.Fatalf("12 bar on %+v", g)
	}
	if rule, weak := g.Weakest(); !weak || ends.Seals[rule].Pressure >= 12e5 {
		t.Errorf("the weakest is %d", rule)
	}
	p.Supply.Static = 5.9e5
	if g := Of(p).Weak(); g != nil {
		t.Errorf("5.9 bar on %+v", g)
	}
}

// By hand: three parts and two tees with threads of 3/4 in, 16.5 mm free, in tubing of 20.4.
func TestLossByHand(t *testing.T) {
	r := 20.4 / 16.5
	area := 1 / (r * r)
	// A contraction to that area, between the printed 0.6 and 0.7 (Weisbach), and an
	// expansion from it (Borda, Carnot).
	cc := 0.712 + (area-0.6)/0.1*(0.755-0.712)
	each := math.Pow(1/cc-1, 2) + math.Pow(1-area, 2)
	want := (3*0.08 + 2*0.9 + 5*each) * r * r * r * r
	if got := Of(plan.Default()).Supply.Loss(0.0204); math.Abs(got-want) > 0.01 {
		t.Errorf("K is %g, by hand %g", got, want)
	}
}

// The ways are searched once for plans that differ in what they do not depend on.
func TestWaysAreSearchedOnce(t *testing.T) {
	p := plan.Default()
	Of(p)
	was := searched.Load()
	for n := range 200 {
		p.Rows[0].Plants = 1 + n
		p.Runs[0].Length = 1 + float64(n)
		Of(p)
	}
	if n := searched.Load() - was; n != 0 {
		t.Errorf("searched %d times for what has not changed", n)
	}
	for i, change := range []func(){
		func() { p.Ends.Shortest = 1 },
		func() { p.Ends.In[plan.AtFilter] = 3 },
		func() { p.Filter.Present = 0 },
		func() { p.Runs[0].Tube = 4 },
		func() { p.Fittings = []plan.Fitting{{A: 0, B: 1}} },
	} {
		was = searched.Load()
		change()
		Of(p)
		if searched.Load() != was+1 {
			t.Errorf("change %d: searched %d times, want once", i, searched.Load()-was)
		}
	}
}

// Many plans at once get the ways that each would get alone.
func TestWaysAtOnce(t *testing.T) {
	var plans []*plan.Plan
	var want []float64
	for n := range 40 {
		p := plan.Default()
		p.Supply.Kind, p.Runs[0].Tube, p.Ends.Shortest = n%6, 1+n%16, n%2
		plans = append(plans, p)
		newest.Store(nil)
		c := Of(p)
		want = append(want, c.Loss(0.02)+c.Supply.Price())
	}
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for i, p := range plans {
				c := Of(p)
				c.Between(catalogue.Custom, 4, true)
				if got := c.Loss(0.02) + c.Supply.Price(); got != want[i] {
					t.Errorf("plan %d: %g at once, %g alone", i, got, want[i])
				}
			}
		})
	}
	wait.Wait()
}

func BenchmarkOf(b *testing.B) {
	p := plan.Default()
	for b.Loop() {
		newest.Store(nil)
		Of(p)
	}
}
