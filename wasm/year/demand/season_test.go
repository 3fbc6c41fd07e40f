package demand

import (
	"math"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/climate"
	"evenrow/wasm/year/season"
)

// two is a plan with a crop planted early and another, later, that is cleared
// later too.
func two(t *testing.T) (*plan.Plan, *Demand) {
	t.Helper()
	p := plan.Default()
	p.Plantings = []plan.Planting{
		{Crop: p.Rows[0].Crop, Mode: plan.FromPlanting + 1, Date: int(day.Of(2027, 6, 20)), Times: 1, Every: 1},
		{Crop: p.Rows[2].Crop, Mode: plan.FromPlanting + 1, Date: int(day.Of(2027, 5, 20)), Times: 1, Every: 1},
	}
	d := of(p)
	if len(d.Plantings) < 2 {
		t.Fatalf("%d plantings", len(d.Plantings))
	}
	return p, d
}

// The season is from the first planting out to the last clearing, and each
// planting takes water in its own time only.
func TestTheSeasonHoldsEveryPlanting(t *testing.T) {
	_, d := two(t)
	from, to := d.Plantings[0].From, d.Plantings[0].To
	for _, g := range d.Plantings {
		from, to = min(from, g.From), max(to, g.To)
	}
	if d.From != from || d.To != to || len(d.Days) != int(to-from) {
		t.Errorf("from %s to %s, %d days, want %s to %s", d.From.ISO(), d.To.ISO(), len(d.Days), from.ISO(), to.ISO())
	}
	waits := 0
	for i := range d.Plantings {
		g := &d.Plantings[i]
		for at := d.From - 2; at < d.To+2; at++ {
			if use, stands := d.Use(i, at)[climate.Typical], at >= g.From && at < g.To; stands != (use > 0) {
				t.Fatalf("planting %d from %s to %s takes %g on %s", i, g.From.ISO(), g.To.ISO(), use, at.ISO())
			} else if !stands && at >= d.From && at < d.To {
				waits++
			}
		}
	}
	if waits == 0 {
		t.Error("all stand for as long: the test tests nothing")
	}
	for at, want := range map[day.Day]bool{d.From - 1: false, d.From: true, d.To - 1: true, d.To: false} {
		if w, ok := d.On(at); ok != want || (w != nil) != want {
			t.Errorf("weather of %s: %v, %t, want %t", at.ISO(), w, ok, want)
		}
	}
}

// All plants together take what each takes, times how many there are; the day of
// the greatest need is the first on which they take most, were it hot.
func TestTotalAndMost(t *testing.T) {
	_, d := two(t)
	on, most := d.From, 0.0
	for at := d.From; at < d.To; at++ {
		want := 0.0
		for i, g := range d.Plantings {
			want += d.Use(i, at)[climate.Hot] * float64(g.Plants)
		}
		if got := d.Total(at)[climate.Hot]; math.Abs(got-want) > 1e-12 {
			t.Fatalf("%s: %g m³ in all, want %g", at.ISO(), got, want)
		}
		if want > most*(1+1e-12) {
			on, most = at, want
		}
	}
	if got, use := d.Most(); got != on || math.Abs(use[climate.Hot]-most) > 1e-12 || use != d.Total(on) {
		t.Errorf("most on %s, %v, want on %s, %g", got.ISO(), use, on.ISO(), most)
	}
}

// A planting's peak is the first day on which it takes most.
func TestPeakIsTheFirstOfTheGreatest(t *testing.T) {
	_, d := two(t)
	for i := range d.Plantings {
		for k := range climate.Kind(climate.Kinds) {
			on, most := d.Peak(i, k)
			for at := d.From; at < d.To; at++ {
				if use := d.Use(i, at)[k]; use > most || use == most && at < on {
					t.Fatalf("planting %d, %v: %g on %s, and %g on its peak of %s", i, k, use, at.ISO(), most, on.ISO())
				}
			}
		}
	}
	// What takes nothing has its peak when it is planted out.
	_, d = two(t)
	d.Sky = &plan.Sky{}
	for i, g := range d.Plantings {
		if on, most := d.Peak(i, climate.Hot); on != g.From || most != 0 {
			t.Errorf("without any need: %g on %s, want nothing on %s", most, on.ISO(), g.From.ISO())
		}
	}
	if on, use := d.Most(); on != d.From || use[climate.Hot] != 0 {
		t.Errorf("without any need: %v on %s, want nothing on %s", use, on.ISO(), d.From.ISO())
	}
}

// A plan of which nothing is planted needs nothing; what stands in no row
// counts for nothing.
func TestNothingPlantedNeedsNothing(t *testing.T) {
	p := plan.Default()
	p.Season.After = -40 // frost kills all on the day they are planted out
	d := of(p)
	if d == nil || len(d.Plantings) != 0 || len(d.Days) != 0 {
		t.Errorf("%+v", d)
	}
	p = plan.Default()
	want := len(of(p).Plantings)
	p.Plantings = append(p.Plantings, plan.Planting{Crop: 11, From: 9, Mode: plan.FromPlanting + 1, Date: int(day.Of(2027, 4, 1)), Times: 1, Every: 1})
	if d := of(p); len(d.Plantings) != want || d.From < day.Of(2027, 5, 1) {
		t.Errorf("with one that stands in no row: %d plantings from %s", len(d.Plantings), d.From.ISO())
	}
}

// The four stages last from planting out to the end of the harvest, whether
// frost cuts that short or not: the grown one takes what the others leave, or a
// day.
func TestStagesFillTheLife(t *testing.T) {
	p := plan.Default()
	s := season.Of(p)
	cut := 0
	for i := range s.Plantings {
		g := &s.Plantings[i]
		a := stages(p, g)
		life := float64(int(g.Dates[season.End]-g.Dates[season.Slab]) + g.Cut)
		others := p.Trait(g.Crop, catalogue.Ini) + p.Trait(g.Crop, catalogue.Dev) + p.Trait(g.Crop, catalogue.Late)
		if a.Mid <= 1 || math.Abs(others+a.Mid-life) > 1e-9 {
			t.Errorf("planting %d: the grown stage is %g days of %g, and the others %g", i, a.Mid, life, others)
		}
		if g.Cut > 0 {
			cut++
		}
		// By hand for one that is cut: peppers are cleared on 23 September, 131
		// days after 15 May, 104 days before their end.
		if i == 0 && (life != 131+104 || g.Cut != 104) {
			t.Errorf("peppers stand for %g days, %d of them cut", life, g.Cut)
		}
	}
	if cut == 0 {
		t.Error("frost cuts none: the test tests nothing")
	}
	g := s.Plantings[0]
	g.Cut, g.Dates[season.End] = 0, g.Dates[season.Slab]+5
	if a := stages(p, &g); a.Mid != 1 {
		t.Errorf("of a life of five days the grown stage is %g days, want 1", a.Mid)
	}
}

// A crop that is tied up has the coefficient for that, where there is one,
// however small.
func TestTiedPlantsHaveTheirOwnCoefficient(t *testing.T) {
	p := plan.Default()
	s := season.Of(p)
	g := s.Plantings[0]
	own := plan.Crop{Of: g.Crop}
	for i := range own.Traits {
		own.Traits[i] = plan.Unset
	}
	own.Traits[catalogue.KcMid], own.Traits[catalogue.KcTied] = 0.9, 0.8
	p.Crops = []plan.Crop{own}
	for tied, want := range map[bool]float64{true: 0.8, false: 0.9} {
		if g.Tied = tied; stages(p, &g).KcMid != want {
			t.Errorf("tied %t: Kc is %g, want %g", tied, stages(p, &g).KcMid, want)
		}
	}
	p.Crops[0].Traits[catalogue.KcTied] = 0
	if g.Tied = true; stages(p, &g).KcMid != 0.9 {
		t.Errorf("where none is printed for tied plants Kc is %g, want 0.9", stages(p, &g).KcMid)
	}
}
