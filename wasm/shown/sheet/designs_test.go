package sheet

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/build/oracle"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/works/layout"
)

// small is a small plan, of which only few sizes of tubing are to be had.
func small(r *rand.Rand) *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator = plan.PumpTwo, 0
	p.Supply.ShutOff, p.Supply.MaxFlow = 10+20*r.Float64(), (6+20*r.Float64())/6e4
	p.Filter.Present = r.IntN(2)
	p.Filter.Fouling = 2e4 * r.Float64()
	p.Limits.Reserve = r.Float64()
	p.Limits.Evenness = 0.86 + 0.1*r.Float64()
	p.Limits.Speed = 0.4 + 0.8*r.Float64()
	p.Rows = p.Rows[:2+r.IntN(2)]
	for i := range p.Rows {
		row := &p.Rows[i]
		row.Plants, row.Spacing = 3+r.IntN(5), 0.2+1.5*r.Float64()
		row.Slope, row.Height = 0.06*r.Float64()-0.03, 0.6*r.Float64()-0.3
		row.Gap, row.Zone = 0.5+r.Float64(), 1+r.IntN(2)
	}
	p.Place.Length, p.Place.Width = 60, 40
	e := &p.Emitters[0]
	e.Flow = (2 + 25*r.Float64()) / 3.6e6
	e.Opens = e.Lowest * (0.5 + 0.5*r.Float64())
	e.Closes = e.Opens * r.Float64()
	if r.IntN(3) == 0 {
		e.Highest = e.Lowest * (1.1 + 0.4*r.Float64())
	}
	switch r.IntN(4) {
	case 0:
		e.Kind, e.Nominal, e.Exponent, e.Lowest = plan.NonCompensating, 1e5, 0.5, 7e4
	case 1:
		e.Exponent = 0.1 * r.Float64()
	}
	switch r.IntN(6) {
	case 0:
		p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
		p.Runs[0].Rise = -8 - 10*r.Float64()
	case 1:
		p.Header.Layout = plan.OneLine
		for i := range p.Rows { // a line that comes back further than it went leaves the place
			p.Rows[i].Plants, p.Rows[i].Spacing = p.Rows[0].Plants, p.Rows[0].Spacing
		}
		p.Rows = p.Rows[:2]
	case 2:
		p.Header.Layout = plan.Ring
	case 3:
		p.Runs = append(p.Runs, plan.Run{Length: 4, Rise: 3 * r.Float64(), Tube: 2, Bore: 0.02})
		if r.IntN(2) == 0 { // over a height where the lead may draw air
			p.Runs[0].Rise = 25 * r.Float64()
			p.Runs[1].Rise = -p.Runs[0].Rise
		}
	}
	p.Prices.Flush = r.IntN(2)
	for i := range p.Prices.Tubes {
		p.Prices.Tubes[i] = 0.2 + float64(i)*0.3 + 0.2*r.Float64()
	}
	p.Prices.Tubes[catalogue.Custom] = 0
	p.Prices.Tubes[[...]int{1, 2, 4, 5, 6}[r.IntN(5)]] = 0
	p.Prices.Tubes[6], p.Prices.Tubes[4] = 0, 0
	return p
}

// whole is a candidate that serves, found by solving its network as a whole.
type whole struct{ cost, head, flow, effort float64 }

// wholes solves every candidate of a plan, one after another.
func wholes(t *testing.T, p *plan.Plan) (list []whole, n int) {
	var had, ofRows []int
	for i := range catalogue.Tubes {
		if c := &catalogue.Tubes[i]; i > 0 && p.Prices.Tubes[i] > 0 && c.Metric() {
			had = append(had, i)
			if c.Row {
				ofRows = append(ofRows, i)
			}
		}
	}
	leads := [][]int{}
	for _, a := range had {
		if len(p.Runs) == 1 {
			leads = append(leads, []int{a})
			continue
		}
		for _, b := range had {
			leads = append(leads, []int{a, b})
		}
	}
	headers, feeds, zones := had, []int{plan.FeedEnd, plan.FeedMiddle}, []int{1}
	if p.Header.Layout == plan.OneLine {
		headers, feeds = []int{p.Header.Tube}, []int{p.Header.Feed}
	}
	if p.Header.Layout == plan.HeaderAndRows {
		for z := 2; z <= len(p.Rows); z++ {
			zones = append(zones, z)
		}
		zones = append(zones, 0) // as they stand
	}
	for _, z := range zones {
		for _, row := range ofRows {
			for _, header := range headers {
				for _, feed := range feeds {
					for _, runs := range leads {
						q := p.Clone()
						if z > 0 {
							split(q, z)
						}
						q.Header.Tube, q.Header.Feed = header, feed
						for i := range q.Rows {
							q.Rows[i].Tube = row
						}
						for i := range q.Runs {
							q.Runs[i].Tube = runs[i]
						}
						n++
						if w, ok := serve(t, q); ok {
							list = append(list, w)
						}
					}
				}
			}
		}
	}
	return list, n
}

// serve finds the least supply of a plan with the solver of whole networks, and
// says whether with it the answer is yes and the ends flush.
func serve(t *testing.T, p *plan.Plan) (w whole, ok bool) {
	s := &Sheet{Plan: p, Layout: layout.New(p)}
	fouling := s.Layout.Network.Water.HeadOf(p.Filter.Fouling)
	w.head = math.Inf(-1)
	for _, z := range s.Layout.Zones {
		for due := range 2 {
			extra, reserve := 0.0, p.Limits.Reserve
			if due == 1 {
				if s.Layout.FilterLink < 0 {
					break
				}
				extra, reserve = fouling, 0
			}
			from := 0.0
			if p.Supply.Kind == plan.GravityTank {
				from = -15 // below what any tank of these plans needs
			}
			head, flow, ok := dutyWith(s, z, extra, reserve, from, layout.Lead)
			if !ok {
				return w, false
			}
			w.head, w.flow = max(w.head, head), max(w.flow, flow)
		}
	}
	for i := range s.Layout.Stretches {
		if st := &s.Layout.Stretches[i]; st.Tube != layout.NoTube {
			w.cost += st.Length * p.Prices.Tubes[s.Layout.Tubes[st.Tube].Entry]
		}
	}
	for i := range s.Layout.Joints {
		if stub := s.Layout.Joints[i].Stub(); stub != layout.NoTube {
			w.cost += layout.Stub * p.Prices.Tubes[s.Layout.Tubes[stub].Entry]
		}
	}
	if n := len(s.Layout.Zones); n > 1 {
		w.cost += float64(len(p.Rows))*p.Prices.Valve + float64(n)*p.Prices.Zone
	}
	w.effort = pump.HydraulicPower(s.Layout.Network.Water.Density, w.flow, w.head)
	if p.Supply.Kind == plan.GravityTank {
		w.effort = w.head
	}
	q := p.Clone()
	design.Strengthen(q, w.head, w.flow)
	if len(q.Check()) > 0 || assess(q, nil).Verdict != Yes {
		return w, false
	}
	return w, p.Prices.Flush == 0 || p.Header.Layout == plan.Ring || oracle.Flushes(t, q)
}

// front keeps what nothing beats, cheapest first.
func front(list []whole) []whole {
	slices.SortFunc(list, func(a, b whole) int {
		if a.cost != b.cost {
			return int(math.Copysign(1, a.cost-b.cost))
		}
		return int(math.Copysign(1, a.effort-b.effort))
	})
	var kept []whole
	for _, w := range list {
		if len(kept) == 0 || w.effort < kept[len(kept)-1].effort {
			kept = append(kept, w)
		}
	}
	return kept
}

// Every candidate solved as a whole network, one by one, gives the list that
// the search gives.
func TestSearchFindsWhatSolvingEverythingFinds(t *testing.T) {
	served, empty, layouts := 0, 0, map[int]int{}
	for seed := range uint64(60) {
		p := small(rand.New(rand.NewPCG(seed, 77)))
		if errs := p.Check(); len(errs) > 0 {
			t.Fatalf("seed %d: %v", seed, errs[0])
		}
		layouts[p.Header.Layout]++
		found := design.Of(p, split, nil)
		all, n := wholes(t, p)
		if found.Cut || found.Solved+found.Pruned != found.Counted {
			t.Errorf("seed %d: %d counted, %d solved, %d pruned", seed, found.Counted, found.Solved, found.Pruned)
		}
		// A grouping that is the plan's own may be one that is tried anyway.
		if found.Counted > n || found.Counted < n/2 {
			t.Errorf("seed %d: %d candidates counted, %d here", seed, found.Counted, n)
		}
		want := front(all)
		if len(want) == 0 {
			empty++
			if found.Forbids == 0 && !slices.ContainsFunc(found.Failures[:], func(n int) bool { return n > 0 }) {
				t.Errorf("seed %d: nothing serves, and nothing is to blame", seed)
			}
		} else {
			served++
		}
		// The duties are searched to 1 mm of head here, and two designs whose
		// efforts differ by less may beat one another either way.
		const near = 3e-3
		covers := func(cost, effort float64, flow float64, in []whole) bool {
			tolerance := near
			if p.Supply.Kind != plan.GravityTank {
				tolerance = pump.HydraulicPower(1000, flow, near)
			}
			return slices.ContainsFunc(in, func(w whole) bool { return w.cost <= cost+1e-9 && w.effort <= effort+tolerance })
		}
		var got []whole
		for _, d := range found.List {
			w := whole{d.Cost, d.Head, d.Flow, d.Power}
			if p.Supply.Kind == plan.GravityTank {
				w.effort = d.Head
			}
			got = append(got, w)
		}
		for _, w := range got {
			if !covers(w.cost, w.effort, w.flow, want) {
				t.Errorf("seed %d: the list has %+v, solving everything has nothing as good: %+v", seed, w, want)
			}
		}
		for _, w := range want {
			if !covers(w.cost, w.effort, w.flow, got) {
				t.Errorf("seed %d: the list has nothing as good as %+v: %+v", seed, w, got)
			}
		}
		if t.Failed() {
			t.Fatalf("layout %d, supply %d, emitter %+v", p.Header.Layout, p.Supply.Kind, p.Emitters[0])
		}
	}
	if served < 20 || empty < 3 || len(layouts) < 3 {
		t.Errorf("%d plans with designs, %d without, layouts %v", served, empty, layouts)
	}
}

// Whatever is listed is worked out as a whole plan, and its answer is Yes with
// what the link opens; every example has such a design.
func TestDesignsAreYes(t *testing.T) {
	try := func(name string, p *plan.Plan) *Designs {
		s := Answer(p)
		s.Explore(Searching)
		d := s.Designs
		if d.Unequal > 0 {
			t.Errorf("%s: %d designs are not Yes as a whole", name, d.Unequal)
		}
		for i, b := range d.Best {
			if Answer(b.Take).Verdict != Yes {
				t.Errorf("%s: design %d is not Yes", name, i+1)
			}
			if supply := b.Take.Supply; b.Present && (supply.Kind != p.Supply.Kind || supply.ShutOff != p.Supply.ShutOff || b.Take.Runs[0].Rise != p.Runs[0].Rise) {
				t.Errorf("%s: design %d is carried by the supply, and opens with another", name, i+1)
			}
			for _, v := range []float64{b.Cost, b.Head, b.Flow, b.Power, b.Margin, b.Even, b.Round} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%s: design %d has %g", name, i+1, v)
				}
			}
		}
		return d
	}
	for _, e := range plan.Examples() {
		d := try(e.Key, e.Plan)
		if len(d.Best) == 0 {
			t.Errorf("%s: no design", e.Key)
			continue
		}
		if e.Key == "long-field" && !(d.Best[0].Present && d.Best[0].Zones > 1) {
			t.Errorf("the first design of the long field has %d zones, and is carried: %v", d.Best[0].Zones, d.Best[0].Present)
		}
		if e.Key == "long-field" && d.Counted < 2000 {
			t.Errorf("%d candidates of the long field", d.Counted)
		}
	}
	for seed := range uint64(60) {
		try("random", small(rand.New(rand.NewPCG(seed, 5))))
	}
}

// The cheapest design that the plan's own supply carries is that of solving
// everything.
func TestOwnSupply(t *testing.T) {
	carried := 0
	for seed := range uint64(40) {
		p := small(rand.New(rand.NewPCG(seed, 9)))
		p.Rows = p.Rows[:2]
		p.Prices.Flush = 0
		if p.Header.Layout != plan.HeaderAndRows || len(p.Runs) > 1 {
			continue
		}
		found := design.Of(p, split, nil)
		if len(found.Own) == 0 {
			continue
		}
		carried++
		if own := &found.Own[0]; assess(own.Plan, nil).Verdict != Yes {
			t.Errorf("seed %d: the plan's own supply does not carry %+v", seed, own)
		}
		for i := range found.List {
			d := &found.List[i]
			if d.Cost < found.Own[0].Cost-1e-9 && assess(d.Plan, nil).Verdict == Yes {
				t.Errorf("seed %d: the plan's own supply carries %g, cheaper than %g", seed, d.Cost, found.Own[0].Cost)
			}
		}
	}
	if carried < 5 {
		t.Errorf("only %d plans", carried)
	}
}

// What costs more makes no design cheaper, and what is not to be had is not
// proposed.
func TestPrices(t *testing.T) {
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 13))
		p := small(r)
		before := design.Of(p, split, nil)
		if len(before.List) == 0 {
			continue
		}
		q := p.Clone()
		switch i := r.IntN(6); i {
		case 0:
			q.Prices.Valve++
		default:
			if q.Prices.Tubes[i] > 0 {
				q.Prices.Tubes[i] += r.Float64()
			}
		}
		after := design.Of(q, split, nil)
		if after.List[0].Cost < before.List[0].Cost-1e-9 {
			t.Errorf("seed %d: %g became %g", seed, before.List[0].Cost, after.List[0].Cost)
		}
		q.Prices.Tubes[before.List[0].Runs[0]] = 0
		for _, d := range design.Of(q, split, nil).List {
			if q.Prices.Tubes[d.Runs[0]] == 0 || q.Prices.Tubes[d.Rows] == 0 || d.Header >= 0 && q.Prices.Tubes[d.Header] == 0 && q.Header.Layout != plan.OneLine {
				t.Errorf("seed %d: a design of what is not to be had: %+v", seed, d)
			}
		}
	}
	p := plan.Default()
	p.Units = unit.US
	for _, d := range design.Of(p, split, nil).List {
		if d.Rows != design.Kept && catalogue.Tubes[d.Rows].Metric() {
			t.Errorf("metric tubing in US units: %+v", d)
		}
	}
}

// flushing is a plan of several longer rows that must flush clean, most of which
// a weak pump waters.
func flushing(seed uint64) *plan.Plan {
	r := rand.New(rand.NewPCG(seed, 31))
	p := small(r)
	p.Prices.Flush = 1
	p.Limits.Reserve *= 0.3
	p.Filter.Fouling /= 10
	p.Limits.Speed = 2
	if p.Header.Layout == plan.Ring { // its rows have no ends
		p.Header.Layout = plan.HeaderAndRows
	}
	e := &p.Emitters[0]
	e.Lowest = (0.2 + 0.5*r.Float64()) * 1e5
	e.Opens, e.Closes = e.Lowest*0.6, e.Lowest*0.4
	e.Flow /= 4
	for n := 3 + r.IntN(5); len(p.Rows) < n && p.Header.Layout != plan.OneLine; {
		p.Rows = append(p.Rows, p.Rows[r.IntN(2)])
	}
	for i := range p.Rows {
		p.Rows[i].Plants, p.Rows[i].Spacing = 10+r.IntN(20), 0.3
		if p.Header.Layout == plan.OneLine {
			p.Rows[i].Plants = 15
		}
	}
	p.Runs[0].Length = 5 + 40*r.Float64()
	return p
}

// The designs of a plan whose rows must flush clean with the other rows shut do
// so in the section on flushing of the plans that they open as.
func TestDesignsFlushAsPromised(t *testing.T) {
	plans, designs, running := 0, 0, 0
	for seed := range uint64(210) {
		p := flushing(seed)
		if errs := p.Check(); len(errs) > 0 {
			t.Fatalf("seed %d: %v", seed, errs[0])
		}
		s := Answer(p)
		s.Explore(Searching)
		if len(s.Designs.Best) > 0 {
			plans++
		}
		var takes []*plan.Plan
		for _, b := range s.Designs.Best {
			if b.Fix == nil { // which promises nothing of the kind
				takes = append(takes, b.Take)
			}
		}
		for _, k := range few(s.Designs.List, listed) {
			c := &s.Designs.List[k]
			q := c.Plan.Clone()
			design.Strengthen(q, c.Head, c.Flow)
			if solves(q, nil) {
				takes = append(takes, q)
			}
		}
		for i, take := range takes {
			designs++
			o := assess(take, nil)
			o.Explore(Flushing)
			slow := false
			for _, e := range o.Flush.Ends {
				if e.Place != flush.OfRow {
					continue
				}
				if e.Alone < flush.Wanted {
					t.Errorf("seed %d: design %d promises that its rows flush, and row %d reaches %g m/s with the others shut", seed, i+1, e.Row+1, e.Alone)
				}
				slow = slow || e.Speed < flush.Wanted
			}
			if slow {
				running++
			}
		}
	}
	t.Logf("%d plans, %d designs, %d of which flush only with the other rows shut", plans, designs, running)
	if plans < 190 || running < 1 {
		t.Errorf("%d plans with designs, %d designs that flush only with the other rows shut", plans, running)
	}
}
