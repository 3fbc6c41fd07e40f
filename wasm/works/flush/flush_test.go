package flush

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// of works a plan's ends out, after its water.
func of(t testing.TB, p *plan.Plan) (*layout.Layout, [][]bool, *Flush) {
	t.Helper()
	if errs := p.Check(); len(errs) > 0 {
		t.Fatal(errs[0])
	}
	l := layout.New(p)
	var open [][]bool
	for _, z := range l.Zones {
		sol, err := network.Solve(l.Zone(z))
		if err != nil {
			t.Fatal(err)
		}
		open = append(open, sol.Open)
	}
	f := Of(l, open)
	if f == nil {
		t.Fatal("no ends")
	}
	return l, open, f
}

// hose is one row from a tank rise m above it, with one emitter that takes next
// to nothing: a hose with an open end.
func hose(rise float64) *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
	p.Runs[0].Rise = -rise
	p.Filter.Present = 0
	p.Rows = p.Rows[:1]
	r := &p.Rows[0]
	r.Plants, r.PerPiece, r.First = 1, 1, 9.8
	e := &p.Emitters[0]
	e.Kind, e.Flow, e.Nominal, e.Exponent = plan.NonCompensating, 0.1/3.6e6, 1e5, 0.5
	return p
}

// The tank's head is lost to friction and fittings in the lead and in the row,
// and at the mouth; solved here by halving, with the friction law alone.
func TestHoseByHand(t *testing.T) {
	for _, rise := range []float64{0.05, 0.3, 1.6, 6} {
		p := hose(rise)
		l, _, f := of(t, p)
		lost := func(q float64) float64 {
			sum := 0.0
			for i := range l.Network.Links {
				k := &l.Network.Links[i]
				sum += pipe.Head(q, k.Length+k.Extra, k.Bore, k.Roughness, l.Network.Water.Kinematic) + k.K*pipe.VelocityHead(pipe.Velocity(q, k.Bore))
			}
			v := q / (math.Pi / 4 * 0.0136 * 0.0136)
			return sum + 2*v*v/(2*water.Gravity) // the mouth: twice the velocity head
		}
		lo, hi := 0.0, 0.01
		for range 200 {
			if mid := (lo + hi) / 2; lost(mid) < rise {
				lo = mid
			} else {
				hi = mid
			}
		}
		want := pipe.Velocity(lo, 0.0136)
		e := f.Ends[0]
		if len(f.Ends) != 1 || e.Place != OfRow || e.Row != 0 || math.Abs(e.Speed-want) > 0.005*want {
			t.Errorf("tank %g m up: %+v, want one end at %g m/s within 0.5 %%, for the emitter's 0.1 L/h", rise, f.Ends, want)
		}
		if f.Slow == 0 != (want >= Wanted) {
			t.Errorf("tank %g m up: %d slow at %g m/s", rise, f.Slow, want)
		}
	}
}

// 1 ft/s in a bore of 13.6 mm is 157 L/h: derived from the area.
func TestFlowAtTheWantedSpeed(t *testing.T) {
	lo, hi := 0.01, 6.0
	for range 60 {
		mid := (lo + hi) / 2
		if _, _, f := of(t, hose(mid)); f.Ends[0].Speed < Wanted {
			lo = mid
		} else {
			hi = mid
		}
	}
	_, _, f := of(t, hose(hi))
	if got := f.Ends[0].Flow * 3.6e6; math.Abs(got-157) > 0.5+0.1 { // and the emitter's own
		t.Errorf("at %g m/s the supply gives %g L/h, want 157", f.Ends[0].Speed, got)
	}
}

// The mouth loses the velocity head and the catalogue's loss of an outlet.
func TestMouth(t *testing.T) {
	if want := 1 + catalogue.Fittings[catalogue.Exit].K; Mouth != want {
		t.Errorf("the mouth has %g, want %g", float64(Mouth), want)
	}
}

func TestDefaultPlan(t *testing.T) {
	_, _, f := of(t, plan.Default())
	rows, header := 0, 0
	for _, e := range f.Ends {
		switch e.Place {
		case OfRow:
			if e.Row != rows {
				t.Errorf("row %d stands at %d", e.Row, rows)
			}
			rows++
		case OfHeader:
			header++
			if e.Row != 3 || e.Bore != 0.0204 {
				t.Errorf("the header ends beside row 4: %+v", e)
			}
		}
	}
	if rows != 4 || header != 1 || f.Slow != 0 || len(f.Zones) != 1 || f.Zones[0].Ends != 4 {
		t.Errorf("%+v", f)
	}
}

// Rows of a ring have no ends of their own. What leaves at an open end of the
// far header came out of the rows.
func TestRing(t *testing.T) {
	p := plan.Default()
	p.Header.Layout = plan.Ring
	l, _, f := of(t, p)
	far, into, most, brought := 0, 0, 0.0, 0.0
	for _, e := range f.Ends {
		switch e.Place {
		case OfFar:
			far++
			most = max(most, pipe.FlowAt(e.Speed, e.Bore))
		case RowInto:
			into++
			brought += pipe.FlowAt(e.Speed, e.Bore)
		case OfRow:
			t.Errorf("row %d of a ring has an end", e.Row)
		}
	}
	if far != 2 || into != len(l.Plan.Rows) || len(f.Zones) != 0 {
		t.Errorf("%d far ends and %d rows: %+v", far, into, f)
	}
	if most == 0 || most > brought {
		t.Errorf("%g m³/s leave the far header, and the rows bring %g", most, brought)
	}
}

func TestOneLineHasOneEnd(t *testing.T) {
	p := plan.Default()
	p.Header.Layout = plan.OneLine
	_, _, f := of(t, p)
	if len(f.Ends) != 1 || f.Ends[0].Row != 3 || f.Zones[0].Most > 1 {
		t.Errorf("%+v", f)
	}
}

// random is a plan of a few rows that differ.
func random(r *rand.Rand) *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator = plan.PumpTwo, 0
	p.Supply.ShutOff, p.Supply.MaxFlow = 3+40*r.Float64(), (5+80*r.Float64())/6e4
	p.Header.Feed = r.IntN(2)
	p.Rows = p.Rows[:1+r.IntN(4)]
	for i := range p.Rows {
		row := &p.Rows[i]
		row.Plants, row.Spacing = 3+r.IntN(60), 0.1+r.Float64()
		row.Height, row.Slope = r.Float64()-0.5, 0.04*r.Float64()-0.02
		row.Zone = 1 + r.IntN(2)
	}
	if r.IntN(2) == 0 { // emitters that are always open
		e := &p.Emitters[0]
		e.Kind, e.Nominal, e.Exponent = plan.NonCompensating, 1e5, 0.5
	}
	return p
}

// reopened returns the speeds at open ends of a zone, in a network made afresh.
func reopened(t *testing.T, l *layout.Layout, f *Flush, zone int, open []bool, ends []End) []float64 {
	t.Helper()
	tp, err := newTap(l, zone)
	if err != nil {
		t.Fatal(err)
	}
	for i := range ends {
		tp.set(&ends[i], true)
	}
	sol, err := tp.solver.After(open)
	if err != nil {
		t.Fatal(err)
	}
	// What is open stays open, by the solver's other way.
	s, err := network.NewSolver(tp.net)
	if err != nil {
		t.Fatal(err)
	}
	if again, steady, err := s.Hold(sol.Open); err != nil || !steady && sol.Unsteady == 0 || math.Abs(again.Total-sol.Total) > 1e-9*sol.Total {
		t.Errorf("held open, the state is %v steady with %g m³/s, not %g: %v", steady, again.Total, sol.Total, err)
	}
	var v []float64
	for _, e := range ends {
		v = append(v, pipe.Velocity(sol.Out[e.Node], e.Bore))
	}
	return v
}

// shutOthers opens an end of a plan all of whose other rows have no emitters.
func shutOthers(t *testing.T, l *layout.Layout, open [][]bool, e End) float64 {
	t.Helper()
	if e.Place == RowInto || l.Plan.Header.Layout == plan.OneLine {
		return e.Speed
	}
	zone := slices.Index(l.Zones, e.Zone)
	n := l.Zone(e.Zone)
	for i := range l.Plants {
		if p := &l.Plants[i]; p.Row != e.Row || e.Place != OfRow {
			n.Nodes[p.Node].Emitter = network.None
		}
	}
	first := len(n.Emitters)
	n.Emitters = append(slices.Clone(n.Emitters), emitter.Emitter{
		Kind: emitter.NonCompensating, Exponent: 0.5, Flow: pipe.FlowAt(Wanted, e.Bore), Nominal: pipe.LocalHead(Mouth, Wanted),
	})
	n.Nodes[e.Node].Emitter, n.Nodes[e.Node].Count = first, 1
	s, err := network.NewSolver(n)
	if err != nil {
		t.Fatal(err)
	}
	sol, err := s.After(open[zone])
	if err != nil {
		t.Fatal(err)
	}
	return pipe.Velocity(sol.Out[e.Node], e.Bore)
}

func check(t *testing.T, p *plan.Plan) {
	if len(p.Check()) > 0 {
		return
	}
	l, open, f := of(t, p)
	for i, e := range f.Ends {
		if e.Row < 0 || e.Zone != l.ZoneOf(e.Row) || !(e.Speed >= 0) || math.IsInf(e.Speed, 0) || e.Shut < 0 || e.Speed < f.Ends[f.Slowest].Speed {
			t.Errorf("end %d: %+v, slowest %d", i, e, f.Slowest)
		}
		zone := 0
		for l.Zones[zone] != e.Zone {
			zone++
		}
		// The order in which ends are tried must not matter.
		if v := reopened(t, l, f, e.Zone, open[zone], []End{e})[0]; math.Abs(v-e.Speed) > 1e-6 {
			t.Errorf("end %d alone and afresh: %g m/s, not %g", i, v, e.Speed)
		}
	}
	for i, z := range f.Zones {
		var ends []End
		for _, e := range f.Ends {
			if e.Place == OfRow && e.Zone == z.Zone {
				ends = append(ends, e)
			}
		}
		if len(ends) != z.Ends || z.Most > z.Ends {
			t.Errorf("zone %d: %d of %d ends, and it has %d", z.Zone, z.Most, z.Ends, len(ends))
		}
		for n := 1; n <= len(ends); n++ {
			least := math.Inf(1)
			for _, v := range reopened(t, l, f, z.Zone, open[i], ends[:n]) {
				least = min(least, v)
			}
			if n <= z.Most != (least >= Wanted) {
				t.Errorf("zone %d: %d ends at once run at %g m/s, and %d are said to be the most", z.Zone, n, least, z.Most)
			}
		}
	}
	stuck := 0
	for i, e := range f.Ends {
		if e.Alone < Wanted {
			stuck++
		}
		if want := shutOthers(t, l, open, e); math.Abs(want-e.Alone) > 1e-6 && e.Speed < Wanted {
			t.Errorf("end %d: %g m/s with the other rows shut, not %g", i, want, e.Alone)
		}
		if p.Emitters[0].Kind == plan.NonCompensating && e.Alone < e.Speed-1e-9 {
			t.Errorf("end %d runs slower with the other rows shut: %g m/s, not %g", i, e.Alone, e.Speed)
		}
	}
	if stuck != f.Stuck {
		t.Errorf("%d ends stay slow, and %d are counted", stuck, f.Stuck)
	}
}

func TestRandomPlans(t *testing.T) {
	for seed := range uint64(150) {
		check(t, random(rand.New(rand.NewPCG(seed, 3))))
	}
}

func FuzzEnds(f *testing.F) {
	f.Add(uint64(1))
	f.Fuzz(func(t *testing.T, seed uint64) { check(t, random(rand.New(rand.NewPCG(seed, 4)))) })
}

// A lower pump never flushes faster, where no emitter shuts.
func TestLessHeadIsSlower(t *testing.T) {
	for seed := range uint64(30) {
		p := random(rand.New(rand.NewPCG(seed, 5)))
		p.Emitters[0].Kind, p.Emitters[0].Nominal, p.Emitters[0].Exponent = plan.NonCompensating, 1e5, 0.5
		_, _, strong := of(t, p)
		q := p.Clone()
		q.Supply.ShutOff *= 0.8
		_, _, weak := of(t, q)
		for i := range weak.Ends {
			if weak.Ends[i].Speed > strong.Ends[i].Speed+1e-9 {
				t.Errorf("seed %d, end %d: %g m/s with the weaker pump, %g with the stronger", seed, i, weak.Ends[i].Speed, strong.Ends[i].Speed)
			}
		}
	}
}

// Many rows are not all worked out, but the first and the last are.
func TestLargePlan(t *testing.T) {
	_, _, f := of(t, large())
	last := -1
	for _, e := range f.Ends {
		if e.Place == OfRow {
			if e.Row-last > f.Every {
				t.Errorf("row %d follows row %d, and every %d is said to be there", e.Row, last, f.Every)
			}
			last = e.Row
		}
	}
	if f.Every < 2 || f.Ends[0].Row != 0 || last != 59 {
		t.Errorf("every %d, from %d to %d", f.Every, f.Ends[0].Row, last)
	}
}

// large is a plan of the greatest size that a plan may have.
func large() *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator = plan.PumpTwo, 0
	p.Supply.ShutOff, p.Supply.MaxFlow = 40, 400.0/6e4
	r := p.Rows[0]
	r.Plants = 66
	p.Rows = nil
	for range 60 {
		p.Rows = append(p.Rows, r)
	}
	return p
}

func BenchmarkOf(b *testing.B) {
	for _, tt := range []struct {
		name string
		plan *plan.Plan
	}{{"default", plan.Default()}, {"long field", plan.Examples()[3].Plan}, {"3960 plants", large()}} {
		l, open, _ := of(b, tt.plan)
		b.Run(tt.name, func(b *testing.B) {
			for b.Loop() {
				Of(l, open)
			}
		})
	}
}
