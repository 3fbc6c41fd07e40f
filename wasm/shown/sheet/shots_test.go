package sheet

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/climate"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/shots"
)

func explored(p *plan.Plan) *Sheet {
	s := Answer(p)
	s.Explore(Season)
	return s
}

// The card goes by the solved flow of the plant that gets least, not by what
// the emitter is named.
func TestCardGoesByTheWeakestPlant(t *testing.T) {
	p := example(t, "balcony")
	s := explored(p)
	z := &s.Zones[0]
	least := math.Inf(1)
	for i := range s.Layout.Plants {
		least = min(least, z.Solution.Out[s.Layout.Plants[i].Node])
	}
	l := &s.Shots.Lines[s.Shots.Peak]
	b := &l.Beds[0]
	if b.Least != least || b.Mean <= b.Least || math.Abs(b.Mean*8-z.Flow) > 1e-9*z.Flow {
		t.Errorf("least %g and mean %g m³/s, want %g and %g", b.Least, b.Mean, least, z.Flow/8)
	}
	set := &l.Sets[shots.Typical].Zones[0]
	if want := dose.Applied(b.Use[shots.Typical], p.Timer.Drain) / least; math.Abs(set.Run-want) > 1e-6 {
		t.Errorf("runs %g s, want %g", set.Run, want)
	}
}

// What all settings of a day give is no more than what the zones draw in their
// time, and the plants' use and the drain make it up.
func TestGivenIsWhatTheZonesDraw(t *testing.T) {
	p := example(t, "millrace")
	p.Rows[2].Zone, p.Rows[3].Zone = 2, 3
	s := explored(p)
	l := &s.Shots.Lines[s.Shots.Peak]
	for sky := range shots.Skies {
		d := &l.Sets[sky]
		given, drained := d.Given()
		drawn, used := 0.0, 0.0
		for i := range d.Zones {
			drawn += d.Zones[i].Given * s.Zones[d.Zones[i].Zone-1].Flow
			for _, f := range d.Zones[i].Beds {
				used += f.Use * float64(f.Bed.Plants)
			}
		}
		// Rounding of sums of flows.
		if math.Abs(given-drawn) > 1e-9*drawn || math.Abs(given-drained-used) > 1e-9*given {
			t.Errorf("sky %d: given %g m³, drawn %g, used %g and drained %g", sky, given, drawn, used, drained)
		}
	}
}

// seasonal is a plan with any timer, place, season and rows.
func seasonal(r *rand.Rand) *plan.Plan {
	p := plan.Default()
	p.Rows = p.Rows[:1+r.IntN(4)]
	for i := range p.Rows {
		row := &p.Rows[i]
		row.Plants, row.PerPiece = 1+r.IntN(6), 1
		row.Crop, row.Medium = r.IntN(15), r.IntN(5)
		row.Zone, row.PerPlant = 1+r.IntN(3), 1+r.IntN(3)
	}
	p.Header.Layout = r.IntN(3)
	p.Season.LastFrost += r.IntN(300) - 150
	p.Season.FirstFrost = p.Season.LastFrost + 1 + r.IntN(300)
	p.Season.Shelter = r.IntN(3)
	p.Sky.Latitude, p.Sky.Longitude = 180*r.Float64()-90, 360*r.Float64()-180
	p.Sky.Adjust = 0.3 + 2*r.Float64()
	t := &p.Timer
	t.Kind, t.Window, t.Every = r.IntN(3), r.IntN(2), r.IntN(2)
	t.Programmes, t.Step, t.Channels = 1+r.IntN(99), 1+r.IntN(1800), 1+r.IntN(12)
	t.Shot = 0.005 + 0.19*r.Float64()
	t.DrainLow = 0.6 * r.Float64()
	t.Drain = t.DrainLow + (0.6-t.DrainLow)*r.Float64()
	t.DrainHot = t.Drain + (0.6-t.Drain)*r.Float64()
	t.First, t.Last = 8*3600*r.Float64(), 8*3600*r.Float64()
	t.LastHot = t.Last * r.Float64()
	if r.IntN(4) == 0 {
		p.Supply.Kind, p.Supply.ShutOff, p.Supply.MaxFlow, p.Supply.Regulator = plan.PumpTwo, 20*r.Float64(), 20.0/6e4*r.Float64(), 0
	}
	return p
}

// Any valid plan has a card without a number that is none, or no card.
func TestCardsOfRandomPlans(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	cards := 0
	for range 300 {
		p := seasonal(r)
		if len(p.Check()) > 0 {
			continue
		}
		s := explored(p)
		if s.Shots == nil {
			continue
		}
		for i := range s.Shots.Lines {
			l := &s.Shots.Lines[i]
			if !(l.Lit.Set > l.Lit.Rise) || len(l.Beds) == 0 {
				t.Fatalf("%+v", l)
			}
			for sky := range l.Sets {
				d := &l.Sets[sky]
				given, drained := d.Given()
				if math.IsNaN(given+drained+d.Over+d.Round) || math.IsInf(given, 0) || drained > given {
					t.Fatalf("%+v\n%+v", p.Timer, d)
				}
				for k := range d.Zones {
					z := &d.Zones[k]
					// A hotter day never has fewer shots or less water. A timer that
					// goes on and off rounds each of its shots up.
					if sky > 0 && p.Timer.Kind != plan.OnAndOff && k < len(l.Sets[sky-1].Zones) {
						if cooler := &l.Sets[sky-1].Zones[k]; cooler.Zone == z.Zone && (z.Given < cooler.Given || len(z.Shots) < len(cooler.Shots)) {
							t.Fatalf("%+v\nunder sky %d %+v\nafter %+v", p.Timer, sky, z, cooler)
						}
					}
					cards++
					if len(z.Shots) == 0 || z.Given < z.Run-1e-5 {
						t.Fatalf("%+v\n%+v", p.Timer, z)
					}
					for _, shot := range z.Shots {
						if math.IsNaN(shot.At) || !(shot.For > 0) {
							t.Fatalf("%+v", z)
						}
					}
				}
			}
		}
	}
	if cards < 1000 {
		t.Errorf("only %d settings", cards)
	}
}

// The line of greatest need is that of the day on which all plants together
// use most, so that no two sections name different ones.
func TestThePeakIsThatOfTheWeather(t *testing.T) {
	for _, x := range plan.Examples() {
		s := explored(x.Plan)
		if s.Shots == nil || len(s.Shots.Lines) == 0 {
			continue
		}
		on, most := s.Demand.From, 0.0
		for at := s.Demand.From; at < s.Demand.To; at++ {
			if sum := s.Demand.Total(at)[climate.Hot]; sum > most {
				on, most = at, sum
			}
		}
		if l := &s.Shots.Lines[s.Shots.Peak]; on < l.From || on >= l.From+day.Day(l.Days) {
			t.Errorf("%s: most is used on %s, the peak is from %s", x.Key, on.ISO(), l.From.ISO())
		}
	}
}
