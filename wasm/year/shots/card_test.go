package shots

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/season"
)

// year is a plan's year with water that grows with the plant, and with flows
// of 2 L/h.
func year(p *plan.Plan) *Year {
	y := &Year{Plan: p, Season: season.Of(p)}
	for i := range p.Rows {
		y.Flows = append(y.Flows, Flow{Zone: p.Rows[i].Zone, Least: 2 * lph, Mean: 2.05 * lph})
	}
	y.Use = func(g int, d day.Day) (use [Skies]float64) {
		dates := &y.Season.Plantings[g].Dates
		grown := min(1, float64(d-dates[season.Slab])/60)
		for sky, f := range []float64{0.5, 1, 1.6, 2} {
			use[sky] = litre * (0.1 + 1.4*grown) * f
		}
		return use
	}
	for i := range y.Season.Plantings {
		y.Most = max(y.Most, y.Season.Plantings[i].Dates[season.Slab]+70) // all are grown
	}
	y.Sun = func(day.Day) dose.Sunlit { return dose.Of(6*hour, 21*hour) }
	return y
}

func TestCardOfTheMillraceTunnel(t *testing.T) {
	p := plan.Default()
	p.Timer.Card = plan.Finer
	y := year(p)
	c := y.Card()
	first := c.Lines[0].From
	for i := range y.Season.Plantings {
		if g := &y.Season.Plantings[i]; g.Dates[season.Slab] < first {
			t.Errorf("planting %d goes out on %s, before the card's first line on %s", i, g.Dates[season.Slab].ISO(), first.ISO())
		}
	}
	var end day.Day
	for i := range c.Lines {
		l := &c.Lines[i]
		if i > 0 && l.From != end {
			t.Errorf("line %d begins on %s, and the one before ended on %s", i, l.From.ISO(), end.ISO())
		}
		end = l.From + day.Day(l.Days)
		for sky := range Skies {
			check(t, &p.Timer, &l.Sets[sky], l.Lit)
		}
		if i > 0 && i < c.Peak && l.Sets[Typical].Zones[0].Given < c.Lines[i-1].Sets[Typical].Zones[0].Given {
			t.Errorf("line %d gives less than the one before, though the plants grow", i)
		}
		for k := range l.Beds {
			if b := &l.Beds[k]; b.Young != (i == 0 && b.Root < 0.66*litre) && i == 0 {
				t.Errorf("line %d: bed %+v", i, b)
			}
		}
	}
	if n := len(c.Lines); n < 8 || n > 30 || c.Peak == 0 {
		t.Errorf("%d lines, the peak in %d", n, c.Peak)
	}
	// The lines give what the day of greatest use needs: by hand, 1.5 L.
	peak := &c.Lines[c.Peak].Sets[Typical].Zones[0]
	if use := peak.Beds[peak.Lead].Use; math.Abs(use-1.5*litre) > 1e-12 {
		t.Errorf("at the peak a plant takes up %g L, want 1.5", use/litre)
	}

	p.Timer.Every = plan.Week
	if weeks := len(year(p).Card().Lines); weeks < 2*len(c.Lines)-1 || weeks > 2*len(c.Lines) {
		t.Errorf("%d lines of a week, %d of a fortnight", weeks, len(c.Lines))
	}
}

// Each zone has its own beds; rows in which nothing grows while their zone is
// watered are named.
func TestZonesAndBareRows(t *testing.T) {
	p := plan.Default()
	p.Rows[2].Zone, p.Rows[3].Zone = 2, 2
	y := year(p)
	for i := range y.Season.Plantings {
		if g := &y.Season.Plantings[i]; g.In(3) {
			for k := range g.Dates {
				g.Dates[k] += 40
			}
		}
	}
	p.Timer.Kind, p.Timer.Channels = plan.StartTimes, 1
	c := y.Card()
	if !slices.ContainsFunc(c.Limits, func(l Limit) bool { return l.Kind == FewValves }) {
		t.Errorf("two zones and one valve: %+v", c.Limits)
	}
	l := &c.Lines[0]
	if len(l.Beds) != 2 || l.Beds[0].Zone != 1 || l.Beds[0].Plants != 60 || l.Beds[1].Zone != 2 || l.Beds[1].Plants != 30 {
		t.Fatalf("%+v", l.Beds)
	}
	if len(l.Bare) != 1 || l.Bare[0] != 3 {
		t.Errorf("bare rows %v, want row 4", l.Bare)
	}
	if l := &c.Lines[5]; len(l.Beds) != 3 || len(l.Bare) != 0 || len(l.Sets[Hot].Zones) != 2 {
		t.Errorf("%+v", l)
	}
}

func TestNothingPlanted(t *testing.T) {
	p := plan.Default()
	y := year(p)
	y.Season.Plantings = nil
	if c := y.Card(); len(c.Lines) != 0 {
		t.Errorf("%+v", c)
	}
}

// The reference's own example: a coco bag of 18 L, three plants, a quarter
// easily available, at about 0.3 L/h: 5 h (worked out from values from memory).
// With 2.5 L a day that rate is the midday's.
func TestBagLastsFiveHours(t *testing.T) {
	lit := dose.Of(5*hour, 19*hour)
	if rate := 2.5 * litre * lit.Peak() * hour; math.Abs(rate-0.3*litre) > 0.03*litre {
		t.Errorf("midday's use is %.3f L/h, want about 0.3", rate/litre)
	}
	steady := dose.Dry(6*litre, 0.25, 2.5*litre*lit.Peak())
	if got := Lasts(lit, 9.5*hour, 1.5*litre, 2.5*litre); math.Abs(got-steady) > 1e-6 || got < 4.5*hour || got > 5.5*hour {
		t.Errorf("lasts %.2f h, want %.2f, about 5", got/hour, steady/hour)
	}
}

// Taking up use from the moment on empties the medium at the end, and not
// before; and never later than in step with the sun.
func TestLastsIsTheInverseOfUse(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	shorter := 0
	for range 1000 {
		lit := randomLit(r)
		at, easy, use := 24*hour*r.Float64(), 2*litre*r.Float64(), litre*(0.3+2*r.Float64())
		long := Lasts(lit, at, easy, use)
		noon := use * lit.Peak()
		taken := 0.0 // in steps of a minute
		for s := at; s < at+min(long, 8*24*hour); s += 60 {
			rate := 0.15 * noon
			for k := -1.0; k < 9; k++ {
				if s >= lit.Rise+24*hour*k && s < lit.Set+24*hour*k {
					rate = noon
				}
			}
			taken += rate * min(60, at+long-s)
		}
		// Sunrise and sunset fall within a step, twice a day.
		edges := 2 + 2*min(long, 8*24*hour)/(24*hour)
		if near := edges * 60 * 0.85 * noon; math.IsInf(long, 1) {
			if taken > easy+near {
				t.Fatalf("never, with %g of %g a day", easy, use)
			}
		} else if long < 0 || math.Abs(taken-easy) > near {
			t.Fatalf("%+v at %g: %g s, by when %g of %g are taken up", lit, at, long, taken, easy)
		}
		bySun := func(until float64) float64 {
			days := math.Floor(until / (24 * hour))
			return use * (days + lit.Share(until-days*24*hour) - lit.Share(at))
		}
		if !math.IsInf(long, 1) && bySun(at+long) > easy*(1+1e-9)+1e-12 {
			t.Fatalf("%+v at %g: the sun alone takes %g of %g by then", lit, at, bySun(at+long), easy)
		} else if bySun(at+min(long, 1e6)) < 0.9*easy {
			shorter++
		}
		if more := Lasts(lit, at, easy+0.1*litre, use); more < long {
			t.Fatalf("more water lasts less: %g, %g", long, more)
		}
		if hotter := Lasts(lit, at, easy, use*1.3); hotter > long {
			t.Fatalf("a hotter day lasts longer: %g, %g", long, hotter)
		}
	}
	if shorter < 300 {
		t.Errorf("only %d of 1000 are on the safe side", shorter)
	}
	if !math.IsInf(Lasts(dose.Of(6*hour, 18*hour), 0, litre, 0), 1) || Lasts(dose.Of(6*hour, 18*hour), 12*hour, -1, litre) > 0.02 {
		t.Error("no use lasts for ever, no water not at all")
	}
}

func TestByHand(t *testing.T) {
	lit := dose.Of(6*hour, 20*hour)
	b := &Bed{Easy: 1.2 * litre}
	r := ByHand(lit, b, 2*litre)
	// As much is given as is taken up.
	if math.Abs(r.Each/r.Every-r.Hour/hour) > 1e-15 || r.Each != 0.6*litre || r.Hour < 2*litre/14 {
		t.Errorf("%+v", r)
	}
	if r := ByHand(lit, b, 0); r.Every != 0 || r.Hour != 0 {
		t.Errorf("no use: %+v", r)
	}
}
