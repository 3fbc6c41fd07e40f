package startup

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// of works a plan out, after its water.
func of(t testing.TB, p *plan.Plan) (*layout.Layout, *Startup) {
	t.Helper()
	if errs := p.Check(); len(errs) > 0 {
		t.Fatal(errs[0])
	}
	l := layout.New(p)
	var running []*network.Solution
	for _, z := range l.Zones {
		sol, err := network.Solve(l.Zone(z))
		if err != nil {
			t.Fatal(err)
		}
		running = append(running, sol)
	}
	s := Of(l, running)
	if s == nil {
		t.Fatal("nothing settles")
	}
	return l, s
}

// tube is one level pipe behind a tank of constant level.
func tube(head, long, bore float64) *lines {
	return &lines{
		head: head, water: water.At(20),
		z: []float64{0, 0}, drips: []float64{0, 0}, kind: []int{-1, -1},
		lengths: []length{{from: 0, to: 1, long: long, bore: bore, volume: pipe.Volume(long, bore)}},
	}
}

// full is when lines are full.
func full(f *lines) float64 {
	_, at := f.fill()
	return at
}

// A thin tube fills laminar: by Hagen and Poiseuille the head H drives v = g D²
// H/(32 ν x) through the wet length x, and with the mouth's velocity head
// negligible t = 16 ν L²/(g D² H). Derived.
func TestLaminarPipeFromConstantHead(t *testing.T) {
	const head, long, bore = 0.2, 40.0, 0.003
	want := 16 * water.At(20).Kinematic * long * long / (water.Gravity * bore * bore * head)
	got := full(tube(head, long, bore))
	// The velocity head, near the start, is left out of the formula; the steps
	// are exact where the time of a step rises straight with x.
	if math.Abs(got-want) > 0.01*want {
		t.Errorf("%g s, want %g s", got, want)
	}
}

// A rough turbulent pipe has a nearly constant factor f: then v = √(2gH/(1 +
// fx/D)), and t = 2D/(3f) ((1 + fL/D)^1.5 - 1)/√(2gH). Derived. Here the factor
// follows the flow, so the time lies between those of its ends.
func TestTurbulentPipeFromConstantHead(t *testing.T) {
	const head, long, bore = 8.0, 60.0, 0.02
	f := tube(head, long, bore)
	f.lengths[0].rough = 1e-3 // fully rough: f barely changes
	closed := func(factor float64) float64 {
		u := 1 + factor*long/bore
		return 2 * bore / (3 * factor) * (u*math.Sqrt(u) - 1) / math.Sqrt(2*water.Gravity*head)
	}
	nu := f.water.Kinematic
	fast, _ := pipe.Friction(math.Sqrt(2*water.Gravity*head)*bore/nu, 0.05)
	v := math.Sqrt(2 * water.Gravity * head / (1 + fast*long/bore))
	slow, _ := pipe.Friction(v*bore/nu, 0.05)
	got := full(f)
	// The trapezium over eighths of the length is good to a few tenths of a per cent.
	if got < 0.995*closed(fast) || got > 1.005*closed(slow) {
		t.Errorf("%g s, want %g to %g s", got, closed(fast), closed(slow))
	}
}

// Two pipes that meet: the ring fills from both sides, and each place is
// reached as soon as by the pipe that is quicker.
func TestRingFillsFromBothSides(t *testing.T) {
	f := &lines{
		head: 3, water: water.At(20),
		z: make([]float64, 4), drips: make([]float64, 4), kind: []int{-1, -1, -1, -1},
		lengths: []length{
			{from: 0, to: 1, long: 5, bore: 0.02, volume: 1},
			{from: 1, to: 2, long: 10, bore: 0.0136},
			{from: 1, to: 3, long: 10, bore: 0.0136},
			{from: 2, to: 3, long: 6, bore: 0.0136},
		},
	}
	at, _ := f.fill()
	if math.Abs(at[2]-at[3]) > 1e-6*at[2] {
		t.Errorf("alike branches are full after %g and %g s", at[2], at[3])
	}
	alone := &lines{head: 3, water: f.water, z: f.z, drips: f.drips, kind: f.kind, lengths: f.lengths[:2]}
	alone.z, alone.drips, alone.kind = f.z[:3], f.drips[:3], f.kind[:3]
	if one := full(alone); !(one < at[2]) {
		t.Errorf("one branch alone takes %g s, both %g s", one, at[2])
	}
}

// Water does not climb above the tank's level.
func TestWaterStopsAtTheTanksLevel(t *testing.T) {
	f := tube(2, 30, 0.0136)
	f.z[1] = 2.2
	if got := full(f); !math.IsInf(got, 1) {
		t.Errorf("after %g s the water is above the tank", got)
	}
	f.z[1] = 1.8
	if got := full(f); math.IsInf(got, 1) {
		t.Error("below the tank's level it never arrives")
	}
}

// A plan's lines fill no sooner than their volume at the greatest flow allows,
// hold what the tubing of the parts list holds, and fill no slower with more
// head.
func TestFillingOfExamples(t *testing.T) {
	for _, e := range plan.Examples() {
		l, s := of(t, e.Plan)
		held := 0.0
		for i := range l.Stretches {
			st := &l.Stretches[i]
			if st.Tube != layout.NoTube {
				held += pipe.Volume(st.Length, l.Tubes[st.Tube].Bore)
			}
		}
		for i := range s.Zones {
			z := &s.Zones[i]
			if len(l.Zones) == 1 && math.Abs(z.Holds-held) > 1e-9 {
				t.Errorf("%s: holds %g m³, its tubing %g m³", e.Key, z.Holds, held)
			}
			if z.Filled < z.Bound(l) {
				t.Errorf("%s: full after %g s, and the greatest flow takes %g s", e.Key, z.Filled, z.Bound(l))
			}
			for _, r := range z.Rows {
				if r.End < r.Start && e.Plan.Header.Layout != plan.Ring || r.Start < z.Lead && len(z.Rows) > 1 {
					t.Errorf("%s: %+v, and the lead is full after %g s", e.Key, r, z.Lead)
				}
			}
		}
	}
}

// A filling that takes too much work is given up, which is something else than
// water that stands; and it ends where the meter of its network does.
func TestFillingIsGivenUp(t *testing.T) {
	for _, e := range plan.Examples() {
		l := layout.Metered(e.Plan, work.New(1<<40, nil))
		lines := func() *lines { return linesOf(l, l.Zones[0]) }
		_, whole := lines().fill()
		for _, units := range []int{0, 100, 1000} {
			if reached, full := lines().fillWithin(units); reached != nil || full != 0 {
				t.Errorf("%s: with %d units it is full after %g s", e.Key, units, full)
			}
		}
		before := l.Network.Meter.Left()
		if _, full := lines().fillWithin(10 * mostWork); full != whole || l.Network.Meter.Left() == before {
			t.Errorf("%s: full after %g s, and with more units %g; %d spent", e.Key, whole, full, before-l.Network.Meter.Left())
		}
		l.Network.Meter = nil
		if _, full := lines().fill(); full != whole {
			t.Errorf("%s: full after %g s, and without a meter %g", e.Key, whole, full)
		}
		l.Network.Meter = work.New(100, nil)
		if l.Network.Meter.Within(func() { lines().fill() }) {
			t.Errorf("%s: filled for nothing", e.Key)
		}
	}
}

// lifted gives a plan's supply m metres more head at any flow. A curve by two
// values cannot be lifted: it becomes one by points.
func lifted(p *plan.Plan, m float64) *plan.Plan {
	q := p.Clone()
	for i := range q.Supply.Points {
		q.Supply.Points[i].Head += m
	}
	if p.Supply.Kind == plan.GravityTank {
		q.Runs[0].Rise -= m
	}
	return q
}

func TestMoreHeadFillsNoSlower(t *testing.T) {
	compared := 0
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 21))
		p := random(r)
		if p.Supply.Kind != plan.GravityTank {
			p.Supply.Kind, p.Supply.Regulator = plan.PumpPoints, 0
		}
		a, b := layout.New(p), layout.New(lifted(p, 1+5*r.Float64()))
		for _, zone := range a.Zones {
			weak, strong := Zone{Zone: zone}, Zone{Zone: zone}
			weak.fill(a)
			strong.fill(b)
			// The steps, of eighths, err by less than a hundredth.
			if strong.Filled > 1.01*weak.Filled {
				t.Errorf("seed %d, zone %d: full after %g s, with more head after %g s", seed, zone, weak.Filled, strong.Filled)
			}
			if !math.IsInf(weak.Filled, 1) {
				compared++
			}
		}
	}
	if compared < 10 {
		t.Errorf("only %d zones fill", compared)
	}
}

// Below a tank 20 m up a device takes 1 bar, 10.2 m, of what flows: an emitter
// that opens at 0.7 bar and keeps open from 0.5 bar, 5.1 m, on opens for good
// with 15.3 m above it, within a rung of the ladder. The next ones see what the
// device leaves, and wait for 1.7 bar, 17.4 m.
func TestADeviceBelowATank(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator, p.Supply.Devices = plan.GravityTank, 0, 1e5
	p.Runs[0].Rise, p.Filter.Present = -20, 0
	p.Rows = p.Rows[:1]
	p.Rows[0].Plants = 4
	l := layout.New(p)
	n := l.Zone(1)
	running, err := network.Solve(n)
	if err != nil {
		t.Fatal(err)
	}
	at, err := order(l, n, running)
	if err != nil {
		t.Fatal(err)
	}
	rung := (20 - 7.15) / float64(rungs(len(n.Nodes)))
	for i := range at {
		want := 17.37
		if i == 0 {
			want = 15.32
		}
		if above := at[i] + 20; above < want-0.01 || above > want+rung+0.05 {
			t.Errorf("plant %d opens with %.2f m above it, want %.2f and at most %.2f more", i+1, above, want, rung)
		}
	}
}
