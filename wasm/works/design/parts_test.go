package design

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/layout"
)

// By hand: a pump of 10 m whose flow is 2 m³/s gives 8 m at √0.2 of that.
func TestThroughByHand(t *testing.T) {
	if shutOff, most := Through(8, 2*math.Sqrt(0.2)); math.Abs(shutOff-10) > 1e-12 || math.Abs(most-2) > 1e-12 {
		t.Errorf("%g m and %g m³/s, want 10 and 2", shutOff, most)
	}
}

// Up to the next 5 cm, or to the next tenth of a foot.
func TestRiseByHand(t *testing.T) {
	for _, c := range []struct {
		sys        unit.System
		head, want float64
	}{{unit.Metric, 1.23, 1.25}, {unit.Metric, 1.26, 1.30}, {unit.Metric, 1.25, 1.25}, {unit.US, 1, 33 * 0.03048}, {unit.US, 0.03, 0.03048}} {
		if got := Rise(c.sys, c.head); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%g m is %g m, want %g", c.head, got, c.want)
		}
	}
}

// A level gives one head at any flow.
func TestLevel(t *testing.T) {
	l := level(3)
	h, slope := l.Head(7)
	loss, rises := l.Loss(7)
	if h != 3 || slope != 0 || loss != -3 || rises != 0 || !math.IsInf(l.LastFlow(), 1) {
		t.Errorf("%g, %g, %g, %g, %g", h, slope, loss, rises, l.LastFlow())
	}
	a := held(4)
	if loss, slope := a.Loss(2); loss != -4 || slope != 0 {
		t.Errorf("a held head of 4 m loses %g, slope %g", loss, slope)
	}
	if loss, slope := (through{}).Loss(2); loss != 0 || slope != 0 {
		t.Errorf("a way without a loss loses %g, slope %g", loss, slope)
	}
}

// Rows are grouped alike whatever their zones are called.
func TestGrouped(t *testing.T) {
	of := func(zones ...int) *plan.Plan {
		p := plan.Default()
		for i, z := range zones {
			p.Rows[i].Zone = z
		}
		return p
	}
	for _, c := range []struct {
		a, b []int
		want bool
	}{
		{[]int{1, 1, 2, 2}, []int{2, 2, 1, 1}, true}, {[]int{1, 1, 2, 2}, []int{3, 3, 1, 1}, true}, {[]int{1, 2, 3, 4}, []int{4, 3, 2, 1}, true}, {[]int{1, 1, 1, 1}, []int{2, 2, 2, 2}, true},
		{[]int{1, 1, 2, 2}, []int{1, 2, 2, 2}, false}, {[]int{1, 1, 1, 1}, []int{1, 1, 1, 2}, false}, {[]int{1, 2, 3, 4}, []int{1, 1, 1, 1}, false}, {[]int{1, 2, 1, 2}, []int{1, 1, 2, 2}, false},
	} {
		if got := grouped(of(c.a...), of(c.b...)); got != c.want {
			t.Errorf("%v and %v are grouped alike: %t", c.a, c.b, got)
		}
	}
}

// had is a plan of which only some sizes are to be had.
func had(sizes ...int) *plan.Plan {
	p := plan.Default()
	for i := range p.Prices.Tubes {
		p.Prices.Tubes[i] = 0
	}
	for _, i := range sizes {
		p.Prices.Tubes[i] = 1
	}
	return p
}

// What is to be had, of rows only what rows can be, and what stands there if it
// has a price and is none of these.
func TestSizes(t *testing.T) {
	wide := slices.IndexFunc(catalogue.Tubes[:], func(c catalogue.Tube) bool { return !c.Row && c.Metric() && c.Bore > 0 })
	if wide < 0 || !catalogue.Tubes[1].Row || !catalogue.Tubes[2].Row {
		t.Fatalf("tube %d is for no row", wide)
	}
	p := had(1, 2, wide)
	for _, c := range []struct {
		name string
		p    *plan.Plan
		row  bool
		now  []int
		want []int
	}{
		{"a lead", p, false, []int{1}, []int{1, 2, wide}},
		{"a row", p, true, []int{1}, []int{1, 2}},
		{"rows of wide tubing", p, true, []int{wide}, []int{1, 2, Kept}},
		{"rows that differ", p, true, []int{1, 2}, []int{1, 2, Kept}},
		{"rows alike", p, true, []int{2, 2}, []int{1, 2}},
		{"a size without a price", had(1), false, []int{2}, []int{1}},
		{"one of two without a price", had(1), false, []int{1, 2}, []int{1}},
		{"measured tubing with a price", had(1, catalogue.Custom), false, []int{catalogue.Custom}, []int{1, Kept}},
	} {
		got := sizes(c.p, c.row, c.now...)
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// One run and two in every combination, more than two all alike.
func TestLeads(t *testing.T) {
	p := had(1, 2)
	run := p.Runs[0]
	run.Tube = 1
	for n, want := range map[int][][]int{
		1: {{1}, {2}}, 2: {{1, 1}, {1, 2}, {2, 1}, {2, 2}}, 3: {{1, 1, 1}, {2, 2, 2}},
	} {
		p.Runs = slices.Repeat([]plan.Run{run}, n)
		if got := leads(p); !slices.EqualFunc(got, want, slices.Equal[[]int]) {
			t.Errorf("%d runs: %v, want %v", n, got, want)
		}
	}
	// Runs may be what no row can be, and what stands there is kept run by run,
	// or where there are more than two for all of them.
	wide := slices.IndexFunc(catalogue.Tubes[:], func(c catalogue.Tube) bool { return !c.Row })
	for _, c := range []struct {
		had, now []int
		want     [][]int
	}{
		{[]int{1, wide}, []int{1}, [][]int{{1}, {wide}}},
		{[]int{1, catalogue.Custom}, []int{catalogue.Custom}, [][]int{{1}, {Kept}}},
		{[]int{1, catalogue.Custom}, []int{catalogue.Custom, 1}, [][]int{{1, 1}, {Kept, 1}}},
		{[]int{1, catalogue.Custom}, []int{1, catalogue.Custom}, [][]int{{1, 1}, {1, Kept}}},
		{[]int{wide}, []int{wide, wide}, [][]int{{wide, wide}}},
		{[]int{1, wide}, []int{1, wide, wide}, [][]int{{1, 1, 1}, {wide, wide, wide}, {Kept, Kept, Kept}}},
	} {
		p := had(c.had...)
		p.Runs = slices.Repeat([]plan.Run{run}, len(c.now))
		for i, tube := range c.now {
			p.Runs[i].Tube = tube
		}
		if got := leads(p); !slices.EqualFunc(got, c.want, slices.Equal[[]int]) {
			t.Errorf("runs of %v, of %v: %v, want %v", c.now, c.had, got, c.want)
		}
	}
}

// A plan is laid with other sizes, and what is kept stays, in it and in the
// plan that it was made of.
func TestLaid(t *testing.T) {
	p := plan.Default()
	p.Runs = append(p.Runs[:1], p.Runs[0])
	p.Rows[0].Tube, p.Header.Tube, p.Runs[0].Tube, p.Runs[1].Tube, p.Header.Feed = 3, 4, 5, 5, plan.FeedEnd
	q := laid(p, 1, 2, []int{Kept, 3}, plan.FeedMiddle)
	if q.Rows[0].Tube != 1 || q.Rows[3].Tube != 1 || q.Header.Tube != 2 || q.Runs[0].Tube != 5 || q.Runs[1].Tube != 3 || q.Header.Feed != plan.FeedMiddle {
		t.Errorf("%+v, %+v, %+v", q.Rows, q.Header, q.Runs)
	}
	q = laid(p, Kept, Kept, []int{2, Kept}, plan.FeedEnd)
	if q.Rows[0].Tube != 3 || q.Header.Tube != 4 || q.Runs[0].Tube != 2 || q.Runs[1].Tube != 5 || q.Header.Feed != plan.FeedEnd || p.Runs[0].Tube != 5 {
		t.Errorf("%+v, %+v, %+v", q.Rows, q.Header, q.Runs)
	}
}

// Cost by hand: tubing by the metre at its price, the stubs at a header's ends,
// and with several zones a valve for each row and a place at the timer for each
// zone.
func TestCostByHand(t *testing.T) {
	p := had(1, 2, 3)
	p.Prices.Tubes[1], p.Prices.Tubes[2], p.Prices.Tubes[3] = 2, 3, 5
	p.Prices.Valve, p.Prices.Zone = 7, 11
	p.Runs = p.Runs[:1]
	p.Runs[0].Length, p.Runs[0].Tube, p.Header.Tube = 6, 3, 2
	rows := 0.0
	for i := range p.Rows {
		p.Rows[i].Tube, p.Rows[i].Gap = 1, 1
		rows += p.Rows[i].Length()
	}
	l := layout.New(p)
	stubs := 0
	for i := range l.Joints {
		if l.Joints[i].Stub() != layout.NoTube {
			stubs++
		}
	}
	if stubs == 0 {
		t.Fatal("no stubs: the test tests too little")
	}
	want := 6*5 + 3*3 + rows*2 // three metres of header between four rows
	for i := range l.Joints {
		if s := l.Joints[i].Stub(); s != layout.NoTube {
			want += layout.Stub * p.Prices.Tubes[l.Tubes[s].Entry]
		}
	}
	if got := Cost(l); math.Abs(got-want) > 1e-9 {
		t.Errorf("it costs %g, want %g", got, want)
	}
	p.Rows[3].Zone = 2
	if got := Cost(layout.New(p)); math.Abs(got-(want+4*7+2*11)) > 1e-9 {
		t.Errorf("in two zones it costs %g, want %g", got, want+4*7+2*11)
	}
}

// The head where a measure that rises is nothing, with the flow there, wherever
// it lies, after so few steps, and none where there is none. A measure that rises
// as the head does, as that of fixed flows, takes two steps.
func TestRising(t *testing.T) {
	asked := 0
	for _, c := range []struct {
		name   string
		f      func(h float64) float64
		lo, hi float64
		want   float64
		ok     bool
		most   int // heads that are asked about
	}{
		{"straight", func(h float64) float64 { return h - 5 }, 0, 100, 5, true, 3},
		{"as steep as is expected", func(h float64) float64 { return (h - 5) / 1.02 }, 0, 100, 5, true, 2},
		{"steep", func(h float64) float64 { return 40 * (h - 5) }, 0, 100, 5, true, 3},
		{"steeper than the bracket is wide", func(h float64) float64 { return 40 * (h - 5) }, 1, 9, 5, true, 2},
		{"flat", func(h float64) float64 { return 0.05 * (h - 50) }, 0, 100, 50, true, 3},
		{"flat, and from below", func(h float64) float64 { return 0.05 * (h + 10) }, -60, 100, -10, true, 3},
		{"bent", func(h float64) float64 { return h*h*h - 1000 }, 0, 100, 10, true, 13},
		{"bent the other way", func(h float64) float64 { return math.Sqrt(h) - 5 }, 0, 100, 25, true, 8},
		{"there already", func(h float64) float64 { return h + 1 }, 2, 100, 2, true, 1},
		{"just near enough", func(h float64) float64 { return h - 5 - near }, 5, 100, 5, true, 1},
		{"flat, and from above", func(h float64) float64 { return 0.05 * (h - 90) }, 60, 100, 90, true, 3},
		{"near enough already", func(h float64) float64 { return h - 5 }, 5 - near, 100, 5, true, 1},
		{"at the end", func(h float64) float64 { return h - 100 }, 0, 100, 100, true, 21},
		{"with a step", func(h float64) float64 { return h - 5 + math.Copysign(1e-5, h-5) }, 0, 100, 5, true, 3},
		{"too far", func(h float64) float64 { return h - 500 }, 0, 100, 0, false, 21},
		{"over a gap", func(h float64) float64 { return math.Copysign(1, h-5) }, 0, 100, 0, false, 61},
		{"no number", func(h float64) float64 { return math.NaN() }, 0, 100, 0, false, 2},
		{"no number further on", func(h float64) float64 { return math.Sqrt(2-h) - 3 }, 0, 100, 0, false, 3},
	} {
		asked = 0
		head, flow, ok := rising(func(h float64) (float64, float64) {
			asked++
			return c.f(h), 3 * h
		}, c.lo, c.hi)
		if ok != c.ok || ok && (math.Abs(c.f(head)) > near && head != c.lo || math.Abs(flow-3*head) > 1e-9) || !ok && (head != 0 || flow != 0) {
			t.Errorf("%s: %g m, %g m³/s, %t, want %g, %t", c.name, head, flow, ok, c.want, c.ok)
		}
		if asked > c.most {
			t.Errorf("%s: %d heads were asked about, and %d are enough", c.name, asked, c.most)
		}
	}
}

// Between its states a response is the cubic that has their values and slopes,
// so it gives a cubic back exactly, with its slope; beyond them it goes straight
// on.
func TestResponseGivesACubicBack(t *testing.T) {
	f := func(h float64) (v, slope float64) { return 2 + h*(3+h*(0.5-h*0.1)), 3 + h*(1-h*0.3) }
	r := new(response)
	for k := range r.states {
		h := 1 + 0.02*float64(k*k) // closer where it is low
		s := state{head: h}
		s.told[spareOf], s.slope[spareOf] = f(h)
		s.told[flowOf], s.slope[flowOf] = -1, 0
		r.states[k] = s
	}
	last := r.states[knots-1].head
	for h := 1.0; h <= last; h += 0.0371 {
		want, rises := f(h)
		if got, slope := r.at(spareOf, h); math.Abs(got-want) > 1e-9*(1+math.Abs(want)) || math.Abs(slope-rises) > 1e-8*(1+math.Abs(rises)) {
			t.Fatalf("at %g: %.12g, slope %.12g, want %.12g, %.12g", h, got, slope, want, rises)
		}
		if v, slope := r.at(flowOf, h); math.Abs(v+1) > 1e-12 || math.Abs(slope) > 1e-12 {
			t.Fatalf("at %g: %g, slope %g, want -1 and level", h, v, slope)
		}
	}
	for _, c := range []struct{ from, h float64 }{{1, 0.2}, {1, -3}, {last, last + 2}} {
		v, rises := f(c.from)
		want := v + rises*(c.h-c.from)
		if got, slope := r.at(spareOf, c.h); math.Abs(got-want) > 1e-9*(1+math.Abs(want)) || slope != rises {
			t.Errorf("at %g, beyond %g: %g, slope %g, want %g, %g", c.h, c.from, got, slope, want, rises)
		}
	}
}

// What the plan's own supply gives: a pump its curve, a tank nothing beyond its
// level, less what its regulator takes away; and still water as much, but for the
// lead of a tank, which stands before the regulator.
func TestOwnSupply(t *testing.T) {
	p := plan.Default()
	s := newSearch(p, split, nil)
	if h, _ := s.mine.Head(0); s.rests != [2]float64{h, h} || h != s.water.HeadOf(p.Supply.Regulator) {
		t.Errorf("a regulated pump: %g m, still %v", h, s.rests)
	}
	p.Supply.Kind = plan.GravityTank
	p.Runs = p.Runs[:1]
	p.Runs[0].Rise = -30
	for regulator, taken := range map[float64]float64{0: 0, 0.5e5: 30 - s.water.HeadOf(0.5e5), 4e5: 0} {
		p.Supply.Regulator = regulator
		s := newSearch(p, split, nil)
		if h, _ := s.mine.Head(1e-3); math.Abs(h+taken) > 1e-9 || s.rests[0] != 0 || math.Abs(s.rests[1]+taken) > 1e-9 {
			t.Errorf("a tank with a regulator of %g Pa: %g m, still %v, want %g less", regulator, h, s.rests, taken)
		}
	}
	p.Supply.Kind = plan.PumpPower
	if s := newSearch(p, split, nil); s.mine != nil {
		t.Errorf("a pump without a curve gives %+v", s.mine)
	}
}

// The least supply of a duty: a pump whose parabola passes at it or a little
// above, or a tank raised by it, as far as the form takes one.
func TestLeastSupply(t *testing.T) {
	p := plan.Default()
	s := newSearch(p, split, nil)
	c, rests, ok := s.supply(8, 1e-3)
	if !ok {
		t.Fatal("the form takes no pump of 8 m")
	}
	top, _ := c.Head(0)
	at, _ := c.Head(1e-3)
	if at < 8 || at > 8.2 || rests != [2]float64{top, top} || top < 10 || top > 10.2 {
		t.Errorf("%g m at the duty of 8, %g with nothing flowing, still %v", at, top, rests)
	}
	head, flow := plan.FieldNamed("supply", "shut-off").Max, plan.FieldNamed("supply", "max-flow").Max
	for _, c := range []struct {
		head, flow float64
		ok         bool
	}{{0.8*head - 0.2, 1e-3, true}, {0.8*head + 0.2, 1e-3, false}, {8, 0.44 * flow, true}, {8, 0.45 * flow, false}, {0.8*head + 0.2, 0.45 * flow, false}} {
		if _, _, ok := s.supply(c.head, c.flow); ok != c.ok {
			t.Errorf("%g m at %g m³/s: taken %t, want %t", c.head, c.flow, ok, c.ok)
		}
	}
	p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
	p.Runs = p.Runs[:1]
	p.Runs[0].Rise = -5
	s = newSearch(p, split, nil)
	c, rests, ok = s.supply(2, 1e-3)
	if raised, _ := c.Head(1e-3); !ok || raised < 2-1e-9 || raised > 2.05+1e-9 || rests != [2]float64{raised, raised} || p.Runs[0].Rise != -5 {
		t.Errorf("a tank that is to give 2 m more is raised by %g m, still %v, taken %t", raised, rests, ok)
	}
	if c, _, ok := s.supply(-3, 1e-3); !ok {
		t.Errorf("a tank that gives 3 m too much: %v", c)
	} else if raised, _ := c.Head(0); raised != 0 {
		t.Errorf("a tank that gives 3 m too much is moved by %g m", raised)
	}
	lowest := plan.FieldNamed("runs", "rise").Min
	for more, want := range map[float64]bool{-5 - lowest - 0.1: true, -5 - lowest + 0.1: false} {
		if _, _, ok := s.supply(more, 1e-3); ok != want {
			t.Errorf("a tank that is to give %g m more: taken %t, want %t", more, ok, want)
		}
	}
}

// What a search keeps is beaten by nothing, cheapest first, and what is beaten by
// what is kept goes.
func TestKeep(t *testing.T) {
	s := newSearch(plan.Default(), split, nil)
	for _, c := range []found{{cost: 5, effort: 5}, {cost: 3, effort: 9}, {cost: 9, effort: 2}, {cost: 4, effort: 5}, {cost: 2, effort: 3}, {cost: 9, effort: 1}} {
		s.keep(&c)
	}
	var got [][2]float64
	for _, c := range s.front {
		got = append(got, [2]float64{c.cost, c.effort})
	}
	if want := [][2]float64{{2, 3}, {9, 1}}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	// What is beaten stays out, also by one that costs or takes as much; what costs
	// as much and takes less comes in its place.
	for _, c := range []struct {
		found
		want []found
	}{
		{found{cost: 5, effort: 4}, []found{{cost: 2, effort: 3}, {cost: 9, effort: 1}}},
		{found{cost: 9, effort: 2}, []found{{cost: 2, effort: 3}, {cost: 9, effort: 1}}},
		{found{cost: 2, effort: 2}, []found{{cost: 2, effort: 2}, {cost: 9, effort: 1}}},
		{found{cost: 8, effort: 1}, []found{{cost: 2, effort: 2}, {cost: 8, effort: 1}}},
		{found{cost: 3, effort: 1.5}, []found{{cost: 2, effort: 2}, {cost: 3, effort: 1.5}, {cost: 8, effort: 1}}},
		{found{cost: 2, effort: 1}, []found{{cost: 2, effort: 1}}},
		{found{cost: 2, effort: 3}, []found{{cost: 2, effort: 1}}},
		{found{cost: 9, effort: 0.5}, []found{{cost: 2, effort: 1}, {cost: 9, effort: 0.5}}},
		{found{cost: 2, effort: 0.7}, []found{{cost: 2, effort: 0.7}, {cost: 9, effort: 0.5}}},
		{found{cost: 2, effort: 3}, []found{{cost: 2, effort: 0.7}, {cost: 9, effort: 0.5}}},
		{found{cost: 1, effort: 3}, []found{{cost: 1, effort: 3}, {cost: 2, effort: 0.7}, {cost: 9, effort: 0.5}}},
	} {
		s.keep(&c.found)
		if !slices.EqualFunc(s.front, c.want, func(a *found, b found) bool { return *a == b }) {
			t.Errorf("with %+v, not %+v", c.found, c.want)
		}
	}
	s.front = []*found{{cost: 2, effort: 3}, {cost: 9, effort: 1}}
	for cost, want := range map[float64]int{1: 0, 2: 1, 5: 1, 9: 2, 20: 2} {
		if got := s.rank(cost); got != want {
			t.Errorf("%d cost no more than %g, want %d", got, cost, want)
		}
	}
	for _, c := range []struct {
		cost, effort float64
		want         bool
	}{{1, 1, false}, {2, 3, true}, {2, 2.9, false}, {3, 4, true}, {9, 1, true}, {10, 0.5, false}} {
		if got := s.inFront(&found{cost: c.cost, effort: c.effort}); got != c.want {
			t.Errorf("what costs %g and takes %g is beaten: %t", c.cost, c.effort, got)
		}
	}
}
