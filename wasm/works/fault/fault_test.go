package fault

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// of works a plan's faults out, after its water.
func of(t testing.TB, p *plan.Plan) (*layout.Layout, []*network.Solution, *Faults) {
	t.Helper()
	if errs := p.Check(); len(errs) > 0 {
		t.Fatal(errs[0])
	}
	l := layout.New(p)
	var flows []*network.Solution
	for _, z := range l.Zones {
		sol, err := network.Solve(l.Zone(z))
		if err != nil {
			t.Fatal(err)
		}
		flows = append(flows, sol)
	}
	return l, flows, Of(l, flows)
}

func (f *Faults) find(kind Kind) *Slow {
	for i := range f.Slow {
		if f.Slow[i].Kind == kind {
			return &f.Slow[i]
		}
	}
	return nil
}

func (f *Faults) broken(kind Kind) *Sudden {
	for i := range f.Sudden {
		if f.Sudden[i].Kind == kind {
			return &f.Sudden[i]
		}
	}
	return nil
}

// What is worked out holds in a plan that has the fault from the start: just
// before it the weakest emitter is in its range, just after it is not.
func TestLimitsHoldInAPlanThatHasThem(t *testing.T) {
	p := plan.Default()
	p.Supply.Regulator = 0
	l, _, f := of(t, p)
	margin := func(p *plan.Plan, extra float64) float64 {
		l := layout.New(p)
		n := l.Fouled(l.Zone(1), extra)
		sol, err := network.Solve(n)
		if err != nil {
			t.Fatal(err)
		}
		least := math.Inf(1)
		for _, pl := range l.Plants {
			node := n.Nodes[pl.Node]
			least = min(least, sol.Head[pl.Node]-node.Z-n.Emitters[node.Emitter].Lowest)
		}
		return least
	}
	d, w := f.find(Dirt), f.find(Wear)
	if d == nil || w == nil || d.Already || d.Never || w.Already || w.Never {
		t.Fatalf("%+v, %+v", d, w)
	}
	for _, step := range []float64{-1e-3, 1e-3} {
		if m := margin(p, d.Amount*(1+step)); (m > 0) != (step < 0) {
			t.Errorf("dirt of %g: margin %g", d.Amount*(1+step), m)
		}
		q := p.Clone()
		for i := range q.Supply.Points {
			q.Supply.Points[i].Head *= 1 - w.Amount*(1+step)
		}
		if m := margin(q, 0); (m > 0) != (step < 0) {
			t.Errorf("wear of %g: margin %g", w.Amount*(1+step), m)
		}
	}
	// The filter's loss is on the gauges: its law, by hand.
	lost := (l.Clean.Clean + d.Amount) * math.Pow(d.Now.Flow/l.Clean.Rated, 2)
	if got := d.Now.Before - d.Now.After; math.Abs(got-lost) > 1e-6 {
		t.Errorf("the gauges differ by %g m, the filter loses %g", got, lost)
	}
	if want := (1 - w.Amount) * w.Was.Still; math.Abs(w.Now.Still-want) > 1e-9*want {
		t.Errorf("worn it holds %g m, want %g", w.Now.Still, want)
	}
}

// A regulator follows the filter, so the gauges at the filter see the pump's own
// pressure, also when it is worn: by hand 34 m with no flow, and while watering
// what the curve without the regulator gives.
func TestGaugesStandBeforeTheRegulator(t *testing.T) {
	l, _, f := of(t, plan.Default())
	d, w := f.find(Dirt), f.find(Wear)
	own := l.Plan.Supply
	own.Regulator = 0
	alone, _ := layout.Drive(&own, l.Network.Water).Head(d.Was.Flow)
	if math.Abs(d.Was.Still-34) > 1e-9 || math.Abs(d.Was.Before-alone) > 1e-6 {
		t.Errorf("the gauge before the filter shows %g m at rest and %g m while watering, want 34 and %g", d.Was.Still, d.Was.Before, alone)
	}
	lost := (l.Clean.Clean + d.Amount) * math.Pow(d.Now.Flow/l.Clean.Rated, 2)
	if got := d.Now.Before - d.Now.After; math.Abs(got-lost) > 1e-6 {
		t.Errorf("the gauges differ by %g m, the filter loses %g", got, lost)
	}
	left := 1 - w.Amount
	if got, want := w.Now.Before, left*w.Was.Before; math.Abs(w.Now.Still-left*34) > 1e-9 || math.Abs(got-want) > 1e-6 {
		t.Errorf("worn, it shows %.3f m at rest and %.9f m while watering, want %.9f", w.Now.Still, got, want)
	}
	// Without a filter the one gauge stands behind the regulator.
	p := plan.Default()
	p.Filter.Present = 0
	l, _, f = of(t, p)
	if got, want := f.find(Wear).Was.Still, l.Network.Water.HeadOf(2e5); math.Abs(got-want) > 1e-9 {
		t.Errorf("behind the regulator it shows %.2f m at rest, want %.2f", got, want)
	}
}

// In still water a tank's level falls by as much as the margin.
func TestATankSinksByItsMargin(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind, p.Filter.Present, p.Supply.Regulator = plan.GravityTank, 0, 0
	p.Runs[0].Rise = -16
	p.Emitters[0].Flow = 0.2 / 3.6e6
	_, _, f := of(t, p)
	s := f.find(Sinking)
	if s == nil || s.Never || s.Already || f.find(Wear) != nil || f.find(Dirt) != nil || f.Due != nil {
		t.Fatalf("%+v", f)
	}
	if fell := s.Was.Header - s.Now.Header; math.Abs(fell-s.Amount) > 0.01 {
		t.Errorf("the level falls %g m, the header's gauge %g", s.Amount, fell)
	}
	// A regulator takes up what it took away before.
	p.Supply.Regulator = 1.4e5
	_, _, g := of(t, p)
	if r := g.find(Sinking); r == nil || math.Abs(r.Amount-s.Amount) > 0.05 {
		t.Errorf("with a regulator %+v, without %g", r, s.Amount)
	}
}

// The hole gives what the orifice's law says at the head there, and what the
// supply gives is the sum of all that leaves.
func TestWhatALeakLoses(t *testing.T) {
	p := plan.Default()
	l, _, f := of(t, p)
	h := f.broken(Hole)
	if h == nil {
		t.Fatal("no hole")
	}
	n := l.Zone(h.Zone)
	n.Emitters = append(n.Emitters, emitter.Emitter{Kind: emitter.NonCompensating, Exponent: 0.5, Nominal: 1, Flow: pipe.HoleFlow(HoleBore, 1)})
	node := &n.Nodes[l.Plants[h.Plant].Node]
	node.Emitter, node.Count = len(n.Emitters)-1, 1
	sol, err := network.Solve(n)
	if err != nil {
		t.Fatal(err)
	}
	if want := pipe.HoleFlow(HoleBore, sol.Head[l.Plants[h.Plant].Node]-node.Z); math.Abs(h.Lost-want) > 1e-9*want {
		t.Errorf("the hole loses %g, want %g", h.Lost, want)
	}
	sum := 0.0
	for _, q := range sol.Out {
		sum += q
	}
	if math.Abs(sum-h.Now.Flow) > 1e-9*sum {
		t.Errorf("the supply gives %g, %g leaves", h.Now.Flow, sum)
	}
}

// random is a plan of any supply and layout.
func random(r *rand.Rand) *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator = []int{plan.PumpTwo, plan.GravityTank, plan.Mains, plan.PumpPoints}[r.IntN(4)], 0
	p.Supply.ShutOff, p.Supply.MaxFlow = 3+40*r.Float64(), (5+80*r.Float64())/6e4
	p.Supply.Static, p.Supply.TapFlow = 5e4+4e5*r.Float64(), (5+40*r.Float64())/6e4
	if r.IntN(3) == 0 {
		p.Supply.Regulator = 0.5e5 + 2e5*r.Float64()
	}
	p.Runs[0].Rise = 5*r.Float64() - 20*float64(r.IntN(2))
	p.Filter.Present = r.IntN(2)
	p.Header.Feed, p.Header.Layout = r.IntN(2), r.IntN(3)
	p.Rows = p.Rows[:1+r.IntN(4)]
	for i := range p.Rows {
		row := &p.Rows[i]
		row.Plants, row.Spacing = 1+r.IntN(40), 0.1+r.Float64()
		row.PerPiece = 1
		row.Height, row.Slope = r.Float64()-0.5, 0.04*r.Float64()-0.02
		row.Zone, row.PerPlant = 1+r.IntN(2), 1+r.IntN(2)
	}
	if r.IntN(2) == 0 {
		e := &p.Emitters[0]
		e.Kind, e.Nominal, e.Exponent = plan.NonCompensating, 1e5, 0.3+0.7*r.Float64()
	}
	return p
}

// sound checks what holds of any plan.
func sound(t *testing.T, name string, l *layout.Layout, flows []*network.Solution, f *Faults) {
	t.Helper()
	total := 0.0
	for _, s := range flows {
		total += s.Total
	}
	if f == nil {
		if total > 0 {
			t.Errorf("%s: water flows and nothing is said", name)
		}
		return
	}
	fine := func(what Kind, vs ...float64) {
		for _, v := range vs {
			if !(math.Abs(v) < 1e9) {
				t.Errorf("%s: fault %d: %g", name, what, v)
			}
		}
	}
	for _, s := range f.Slow {
		fine(s.Kind, s.Amount, s.Was.Flow, s.Now.Flow, s.Now.Before, s.Now.After, s.Now.Header, s.Now.Still)
		if s.Amount < 0 || s.Already && s.Amount != 0 || s.Now.Flow > s.Was.Flow*(1+1e-9) {
			t.Errorf("%s: %+v", name, s)
		}
	}
	for _, s := range f.Sudden {
		fine(s.Kind, s.Lost, s.Now.Flow, s.Now.Before, s.Now.After, s.Now.Header, s.Least, s.Most)
		if s.Tried < 1 || s.Least < 0 || s.Least > s.Most || s.Lost > s.Now.Flow*(1+1e-9) || s.Cut+s.Dry+s.Below+s.Above > len(l.Plants) {
			t.Errorf("%s: %+v", name, s)
		}
		// A leak takes more from the supply, a blockage less.
		if leak := s.Kind == Hole || s.Kind == End; leak && s.Dry+s.Cut == 0 && s.Now.Flow < s.Was.Flow*(1-1e-9) {
			t.Errorf("%s: %+v", name, s)
		}
	}
}

func TestExamples(t *testing.T) {
	for _, p := range plan.Examples() {
		l, flows, f := of(t, p.Plan)
		sound(t, p.Plan.Name, l, flows, f)
		if f != nil {
			for _, s := range f.Slow {
				t.Logf("%s: %+v", p.Plan.Name, s)
			}
			for _, s := range f.Sudden {
				t.Logf("%s: %+v", p.Plan.Name, s)
			}
		}
	}
}

func TestRandomPlans(t *testing.T) {
	seen := map[Kind]int{}
	for seed := range uint64(150) {
		p := random(rand.New(rand.NewPCG(seed, 5)))
		if len(p.Check()) > 0 {
			continue
		}
		l, flows, f := of(t, p)
		sound(t, "seed", l, flows, f)
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
		if f != nil {
			for _, s := range f.Slow {
				seen[s.Kind]++
			}
			for _, s := range f.Sudden {
				seen[s.Kind]++
			}
		}
	}
	if len(seen) != int(End)+1 {
		t.Errorf("too little was tried: %v", seen)
	}
}

// More dirt never gives any emitter more.
func TestDirtNeverGivesMore(t *testing.T) {
	for seed := range uint64(60) {
		p := random(rand.New(rand.NewPCG(seed, 9)))
		p.Filter.Present = 1
		if len(p.Check()) > 0 {
			continue
		}
		l, flows, _ := of(t, p)
		z := &zone{l: l, number: l.Zones[0], was: flows[0]}
		n := l.Zone(z.number)
		before := flows[0].Out
		for _, extra := range []float64{0.3, 1, 3, 10, 30} {
			s, err := network.NewSolver(l.Fouled(n, extra))
			if err != nil {
				t.Fatal(err)
			}
			sol, _, err := s.Hold(z.was.Open)
			if err != nil {
				t.Fatal(err)
			}
			for i, q := range sol.Out {
				if q > before[i]+1e-9*flows[0].Total {
					t.Fatalf("seed %d: node %d gets %g with %g m of dirt, and %g with less", seed, i, q, extra, before[i])
				}
			}
			before = sol.Out
		}
	}
}

// The zone that fails first is found whatever the order of the zones.
func TestTheFirstZoneToFail(t *testing.T) {
	tried := 0
	for seed := range uint64(240) {
		p := random(rand.New(rand.NewPCG(seed, 3)))
		if len(p.Check()) > 0 {
			continue
		}
		l, flows, f := of(t, p)
		if f == nil || len(l.Zones) < 2 {
			continue
		}
		for _, s := range f.Slow {
			least := math.Inf(1)
			for i, number := range l.Zones {
				if flows[i].Total <= 0 {
					continue
				}
				alone := &Faults{Every: 1}
				if !alone.slow(&zone{l: l, number: number, was: flows[i]}) {
					t.Fatal("unsettled")
				}
				if o := alone.find(s.Kind); !o.Never {
					least = min(least, o.Amount)
				}
			}
			tried++
			if s.Never != math.IsInf(least, 1) || !s.Never && math.Abs(s.Amount-least) > 1e-6*least {
				t.Errorf("seed %d: %+v, and alone the first fails at %g", seed, s, least)
			}
		}
	}
	if tried < 20 {
		t.Errorf("only %d tried", tried)
	}
}

// large is the largest plan that is laid out: 4,000 plants in as many zones.
func large(zones int) *plan.Plan {
	p := plan.Default()
	row := p.Rows[0]
	p.Rows = nil
	for i := range 50 {
		row.Plants, row.Spacing, row.Gap, row.Zone = 80, 0.3, 1, 1+i%zones
		p.Rows = append(p.Rows, row)
	}
	p.Supply.Kind, p.Supply.ShutOff, p.Supply.MaxFlow, p.Supply.Regulator = plan.PumpTwo, 50, 6e-3, 0
	p.Runs[0].Tube, p.Runs[0].Bore, p.Header.Tube, p.Header.Bore = 0, 0.06, 0, 0.06
	return p
}

func benchmark(b *testing.B, p *plan.Plan) {
	l, flows, _ := of(b, p)
	for b.Loop() {
		if Of(l, flows) == nil {
			b.Fatal("nothing")
		}
	}
}

func BenchmarkDefault(b *testing.B) { benchmark(b, plan.Default()) }
func BenchmarkLarge(b *testing.B)   { benchmark(b, large(1)) }
func BenchmarkZones(b *testing.B)   { benchmark(b, large(12)) }

// Points of a curve may differ by the last digit of their head: as shares of it some
// are the same, and the worn pump still has a curve.
func TestACurveThatHardlyFalls(t *testing.T) {
	p := plan.Default()
	p.Supply.Regulator = 2e5
	head := 60.0
	p.Supply.Points = nil
	for i := range plan.MaxPoints - 1 {
		p.Supply.Points = append(p.Supply.Points, plan.Point{Flow: float64(i) * 1e-9, Head: head})
		head = math.Nextafter(head, 0)
	}
	p.Supply.Points = append(p.Supply.Points, plan.Point{Flow: 1e-3, Head: 10})
	if errs := p.Check(); len(errs) > 0 {
		t.Fatal(errs)
	}
	_, _, f := of(t, p)
	if s := f.find(Wear); s == nil || s.Amount < 0.2 || s.Amount > 0.9 {
		t.Errorf("wear %+v", s)
	}
}
