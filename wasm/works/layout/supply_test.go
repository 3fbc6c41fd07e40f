package layout

import (
	"math"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/filter"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/network"
)

// Head of 1 bar of water at 20 °C: 1e5 / (998.207 × 9.80665), the density as
// printed in IAPWS and CRC tables.
const headOfBar = 10.2155

func TestPumpGivesItsHead(t *testing.T) {
	p := plan.Default()
	p.Supply.Regulator = 0
	l := New(p)
	for _, tt := range []struct{ litres, head float64 }{{0, 34}, {20, 29}, {40, 19}, {50, 12}} {
		loss, slope := l.Network.Links[0].Law.Loss(tt.litres / 6e4)
		if math.Abs(loss+tt.head) > 1e-9 || !(slope > 0) {
			t.Errorf("at %g L/min the pump loses %g m with slope %g, want %g", tt.litres, loss, slope, -tt.head)
		}
	}
	if l.Network.Head != 0 {
		t.Errorf("the source's head is %g m, want the water's level, 0", l.Network.Head)
	}
	if k := l.Network.Links[2].K; k >= 2*1.5+0.05+joined(0.0204, 3, 2)+0.4 {
		t.Errorf("the lead after a pump has K %g: the way into it is the pump's own", k)
	}
}

func TestSupplies(t *testing.T) {
	tests := []struct {
		name   string
		change func(*plan.Plan)
		source bool
		head   float64 // what the supply gives at no flow
	}{
		{"a pump by two figures", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.ShutOff, p.Supply.MaxFlow = plan.PumpTwo, 6.5, 90/6e4
		}, true, 6.5},
		{"a pump with a regulator of 1 bar", func(p *plan.Plan) { p.Supply.Regulator = 1e5 }, true, headOfBar},
		{"a tap of 3 bar", func(p *plan.Plan) { p.Supply.Kind, p.Supply.Static, p.Supply.Regulator = plan.Mains, 3e5, 0 }, true, 3 * headOfBar},
		{"a tap with a regulator of 1.5 bar", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Static, p.Supply.Regulator = plan.Mains, 3e5, 1.5e5
		}, true, 1.5 * headOfBar},
		{"a tap below its regulator", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Static, p.Supply.Regulator = plan.Mains, 1e5, 1.5e5
		}, true, headOfBar},
		{"a tank above", func(p *plan.Plan) { p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0 }, false, 0},
		{"a pump of unknown curve", func(p *plan.Plan) { p.Supply.Kind = plan.PumpPower }, false, 0},
		{"a pump that is yet to be bought, after a tap with a device and a regulator", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Regulator, p.Supply.Devices = plan.PumpWanted, 1e5, 2e4
		}, false, 0},
		{"a tank 15 m up with a regulator of 1 bar", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Regulator, p.Runs[0].Rise = plan.GravityTank, 1e5, -15
		}, true, headOfBar - 15},
		{"a tank too low for its regulator", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Regulator, p.Runs[0].Rise = plan.GravityTank, 1e5, -2
		}, true, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := plan.Default()
			tt.change(p)
			l := New(p)
			if got := l.Stretches[0].Kind == Source; got != tt.source {
				t.Fatalf("the first stretch is of kind %d", l.Stretches[0].Kind)
			}
			if l.Stretches[0].Kind != Source {
				if l.Curve != nil || l.FilterLink != 0 || l.Points[0].X != -8.5 {
					t.Errorf("curve %v, filter at link %d, source at %v", l.Curve, l.FilterLink, l.Points[0])
				}
				return
			}
			loss, _ := l.Network.Links[0].Law.Loss(0)
			if math.Abs(loss+tt.head) > 1e-3 {
				t.Errorf("it gives %g m at no flow, want %g", -loss, tt.head)
			}
		})
	}
}

// Water enters the tubing of a gravity tank from rest.
func TestEntranceFromATank(t *testing.T) {
	p := plan.Default()
	k := New(p).Network.Links[2].K - joined(0.0204, 3, 2)
	p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
	if got := New(p).Network.Links[1].K; !near(got, k+0.5+joined(0.0204, 2, 0)) {
		t.Errorf("lead has K %g from a tank, %g from a pump; want 0.5 more", got, k)
	}
	p.Filter.Present = 0
	l := New(p)
	if l.FilterLink != -1 || l.Clean != (filter.Filter{}) || l.Stretches[0].Kind != RunOf || l.Network.Links[0].From != 0 {
		t.Errorf("without pump and filter: filter link %d, first stretch %+v", l.FilterLink, l.Stretches[0])
	}
	if n := &l.Network; l.Fouled(n, 1) != n {
		t.Error("a filter that is not there fouls")
	}
}

func TestFilter(t *testing.T) {
	l := New(plan.Default())
	at := 20 / 6e4
	clean, _ := l.Network.Links[l.FilterLink].Law.Loss(at)
	if math.Abs(clean-0.07*headOfBar) > 1e-4 {
		t.Errorf("the clean filter loses %g m at its rated flow, want 0.07 bar", clean)
	}
	dirty, _ := l.Fouled(l.Zone(1), 2.5).Links[l.FilterLink].Law.Loss(at)
	if math.Abs(dirty-clean-2.5) > 1e-9 {
		t.Errorf("the fouled one loses %g m, want 2.5 more than %g", dirty, clean)
	}
	if again, _ := l.Network.Links[l.FilterLink].Law.Loss(at); again != clean {
		t.Error("Fouled changed the layout")
	}
}

func TestEmitterHeads(t *testing.T) {
	p := plan.Default()
	plan.SectionNamed("emitters").Resize(p, 2)
	p.Emitters[1].Kind, p.Emitters[1].Exponent = plan.NonCompensating, 0.5
	p.Emitters[1].Nominal = 2e5
	got := New(p).Network.Emitters
	if e := got[0]; e.Kind != emitter.Compensating || math.Abs(e.Lowest-1.03*headOfBar) > 1e-3 || e.Nominal != e.Lowest ||
		math.Abs(e.Opens-0.7*headOfBar) > 1e-3 || math.Abs(e.Closes-0.5*headOfBar) > 1e-3 ||
		math.Abs(e.Highest-4*headOfBar) > 1e-3 || e.CV != p.Emitters[0].CV || e.Flow != p.Emitters[0].Flow {
		t.Errorf("compensating: %+v", e)
	}
	if e := got[1]; e.Kind != emitter.NonCompensating || math.Abs(e.Nominal-2*headOfBar) > 1e-3 || e.Exponent != 0.5 || e.Opens != 0 {
		t.Errorf("not compensating: %+v", e)
	}
	p.Place.Water = 40
	if warm := New(p).Network.Emitters[0].Lowest; !(warm > got[0].Lowest) {
		t.Errorf("warm water is lighter, so its column is higher: %g, cold %g", warm, got[0].Lowest)
	}
}

func TestTubes(t *testing.T) {
	p := plan.Default()
	p.Runs[0].Tube, p.Runs[0].Bore = catalogue.Custom, 0.03
	p.Rows[0].Tube, p.Rows[0].Bore = catalogue.Custom, 0.013
	p.Rows[1].Tube, p.Rows[1].Bore = catalogue.Custom, 0.013
	l := New(p)
	bores := make([]float64, 0, 4)
	for _, tube := range l.Tubes {
		bores = append(bores, tube.Bore)
	}
	if len(bores) != 4 || bores[0] != 0.03 || bores[1] != 0.0204 || bores[2] != 0.013 || bores[3] != 0.0136 {
		t.Errorf("bores in use: %v", bores)
	}
	for _, tt := range []struct{ got, want string }{
		{l.Tubes[0].Short(0), "30.0 mm bore"},
		{l.Tubes[0].Name(0), "tubing of 30.0 mm bore"},
		{l.Tubes[1].Short(0), "25 mm"},
		{l.Tubes[3].Name(0), "16 mm drip tubing (13.6 mm bore)"},
	} {
		if tt.got != tt.want {
			t.Errorf("name %q, want %q", tt.got, tt.want)
		}
	}
	if w := water.At(20); l.Network.Water != w {
		t.Errorf("water %+v, want %+v", l.Network.Water, w)
	}
	if _, is := l.Network.Links[0].Law.(pump.Curve); !is {
		t.Error("the pump's link has no curve")
	}
}

func BenchmarkNew(b *testing.B) {
	for _, bm := range []struct {
		name         string
		rows, plants int
	}{{"100 plants", 4, 25}, {"4000 plants", 40, 100}} {
		b.Run(bm.name, func(b *testing.B) {
			p := plan.Default()
			p.Rows[0].Plants = bm.plants
			plan.SectionNamed("rows").Resize(p, 1)
			plan.SectionNamed("rows").Resize(p, bm.rows)
			b.ReportAllocs()
			for b.Loop() {
				New(p)
			}
		})
	}
}

// A device takes its head from flowing water and nothing from still water, and
// stands between the supply and the filter.
func TestDevice(t *testing.T) {
	p := plan.Default()
	p.Supply.Devices = 0.5e5
	l := New(p)
	solve := func(l *Layout) *network.Solution {
		s, err := network.Solve(&l.Network)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	with, without := solve(l), solve(New(plan.Default()))
	taken := without.Head[len(without.Head)-1] - with.Head[len(with.Head)-1]
	if want := 0.5 * headOfBar; math.Abs(taken-want) > 1e-3 {
		t.Errorf("it takes %.4f m, want %.4f", taken, want)
	}
	if l.Stretches[1].Kind != Devices || l.Stretches[2].Kind != Filter {
		t.Errorf("stretches %+v", l.Stretches[:3])
	}
	if s, err := network.Hold(&l.Network, make([]bool, len(l.Points))); err != nil || s.Total != 0 || math.Abs(s.Head[l.Feed]-2*headOfBar) > 1e-3 {
		t.Errorf("with all shut %.4f m stand at the header, want the regulator's: %v", s.Head[l.Feed], err)
	}
}

// In any plan, from the supply's head to the filter's inlet, or to the lead
// without one, water that flows loses all that the devices take.
func TestDevicesTakeAllOfIt(t *testing.T) {
	flowing, still := 0, 0
	forRandom(t, func(t *testing.T, seed uint64, l *Layout) {
		if l.Plan.Supply.Sought() {
			return
		}
		taken := l.Plan.Supply.Devices / (l.Network.Water.Density * 9.80665)
		for _, z := range l.Zones {
			s, err := network.Solve(l.Zone(z))
			if err != nil {
				t.Fatal(err)
			}
			head := l.Network.Head
			if l.Curve != nil {
				h, _ := l.Curve.Head(s.Total)
				head += h
			} else if l.Stretches[0].Kind == Source {
				h, _ := l.Network.Links[0].Law.Loss(s.Total)
				head -= h
			}
			at := 0
			for _, st := range l.Stretches {
				if st.Kind == Source || st.Kind == Devices {
					at = l.Network.Links[st.Links[0]].To
				}
			}
			if s.Total == 0 {
				still++
			} else if flowing++; math.Abs(head-s.Head[at]-taken) > 1e-6*(1+math.Abs(head)) {
				t.Errorf("zone %d: at %g m³/s the devices take %g m of %g", z, s.Total, head-s.Head[at], taken)
			}
		}
	})
	if flowing < 50 || still < 50 {
		t.Errorf("%d zones flowed, %d were still: too little was tried", flowing, still)
	}
}

// A header narrower than the lead that meets its end costs its two barbs, in
// the header's bore, besides.
func TestNarrowerHeader(t *testing.T) {
	p := plan.Default()
	lead := func(tube int) float64 {
		p.Header.Tube = tube
		l := New(p)
		for _, s := range l.Stretches {
			if s.Kind == RunOf {
				return l.Network.Links[s.Links[0]].K
			}
		}
		t.Fatal("no run")
		return 0
	}
	same, narrow, wide := lead(3), lead(1), lead(4)
	share := 0.0204 / 0.0136
	if want := same + 2*inserted(1)*share*share*share*share; math.Abs(narrow-want) > 1e-9 || wide != same {
		t.Errorf("K of the lead is %g, to a narrower header %g, want %g, to a wider one %g", same, narrow, want, wide)
	}
}
