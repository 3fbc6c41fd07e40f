package season_test

import (
	"slices"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/year/season"
)

// again returns the season of a plan with nothing in it but a planting of one
// crop, sown on a day.
func again(p *plan.Plan, crop int, sown day.Day) *season.Season {
	q := *p
	q.Rows = slices.Clone(p.Rows[:1])
	q.Rows[0].Crop = crop // else what the row holds would be planted too, and stand first
	q.Plantings = []plan.Planting{{Crop: crop, From: 1, To: 1, Mode: plan.FromSowing + 1, Date: int(sown), Times: 1, Every: 1}}
	return season.Of(&q)
}

// has reports whether the first planting of a season has a conflict of a kind.
func has(s *season.Season, k season.ConflictKind) bool {
	return slices.ContainsFunc(s.Conflicts, func(c season.Conflict) bool { return c.Kind == k && c.Planting == 0 })
}

// A planting that frost kills, sown again on each day before, until it would go
// out in the time of frost: the days that save its harvest are those that are
// told, and no others. Where none does, a first frost later by the days that the
// time is too short lets the soonest be harvested, and one a day sooner does not. No
// crop here is picked within two weeks: such a one can go out after the rows are
// to be clear and still be picked before the frost.
func TestSownSoonerItIsHarvested(t *testing.T) {
	saved, short, drained := 0, 0, 0
	for n, p := range plans(t) {
		s := season.Of(p)
		for i := range s.Conflicts {
			c := &s.Conflicts[i]
			if c.Kind != season.FrostKill {
				continue
			}
			g := &s.Plantings[c.Planting]
			l := s.Loss(p, c)
			var days []int
			soonest := 0               // how many days before it can be sown at the most
			for k := 1; k < 400; k++ { // a year at the most, and some
				a := again(p, g.Crop, g.Dates[season.Sow]-day.Day(k))
				if has(a, season.FrostOut) {
					break
				}
				soonest = k
				if h := &a.Plantings[0]; h.Dates[season.Harvest] < h.Dates[season.End] {
					days = append(days, k)
				}
			}
			if l.Drained {
				drained++
			}
			if len(days) > 0 {
				saved++
				if l.Short != 0 || l.Least != days[0] || l.Most != days[len(days)-1] || l.Most-l.Least+1 != len(days) {
					t.Errorf("plan %d: %s sown %v days sooner is harvested, said: %+v", n, s.Name(p, c.Planting), days, l)
				}
				continue
			}
			short++
			// The same frosts typed for the year in question, so that moving one over
			// the end of a February does not count.
			q := *p
			q.Season.LastFrost = int(g.Dates[season.Slab]) - soonest - 1
			for later := range l.Short + 1 {
				q.Season.FirstFrost = int(c.Until) + later
				h := &again(&q, g.Crop, g.Dates[season.Sow]-day.Day(soonest)).Plantings[0]
				if picked := h.Dates[season.Harvest] < h.Dates[season.End]; picked != (later == l.Short) || l.Short < 1 || l.Least != 0 || l.Most != 0 {
					t.Errorf("plan %d: %s with the frost %d days later is harvested: %t, said: %+v", n, s.Name(p, c.Planting), later, picked, l)
				}
			}
			if l.Short < 1 {
				t.Errorf("plan %d: no day of sowing saves %s, said: %+v", n, s.Name(p, c.Planting), l)
			}
		}
	}
	if saved < 10 || short < 10 || drained < 5 {
		t.Errorf("only %d are saved, of %d the time is too short, and %d are lost to draining", saved, short, drained)
	}
}

// By hand: the last frost is on 12 May, the first on 8 October, and what is to be
// picked has to be by 22 September. From 13 May to that day are 132 days.
func TestLossByHand(t *testing.T) {
	for _, c := range []struct {
		out  day.Day
		wait float64 // days from there to the first harvest
		want season.Loss
	}{
		{day.Of(2027, 8, 24), 30, season.Loss{Drained: true, Least: 1, Most: 103}}, // to be picked on 23 September
		{day.Of(2027, 9, 7), 30, season.Loss{Drained: true, Least: 15, Most: 117}}, // on 7 October
		{day.Of(2027, 9, 8), 30, season.Loss{Least: 16, Most: 118}},                // with the frost
		{day.Of(2027, 10, 7), 30, season.Loss{Least: 45, Most: 147}},
		{day.Of(2027, 5, 14), 132, season.Loss{Drained: true, Least: 1, Most: 1}}, // on no day but 13 May
		{day.Of(2027, 5, 13), 133, season.Loss{Drained: true, Short: 1}},
		{day.Of(2027, 6, 13), 133, season.Loss{Short: 1}}, // later takes no longer
		{day.Of(2027, 5, 13), 147, season.Loss{Drained: true, Short: 15}},
		{day.Of(2027, 5, 13), 148, season.Loss{Short: 16}},
		{day.Of(2028, 5, 13), 148, season.Loss{Short: 16}}, // the year after
	} {
		p := plan.Default()
		plan.SectionNamed("rows").Resize(p, 1)
		p.Rows[0].Crop = pepper
		own(p, pepper, map[catalogue.Trait]float64{catalogue.Wait: c.wait})
		p.Plantings = []plan.Planting{out(pepper, 1, 1, c.out)}
		s := season.Of(p)
		i := slices.IndexFunc(s.Conflicts, func(c season.Conflict) bool { return c.Kind == season.FrostKill })
		if i < 0 {
			t.Errorf("planted out on %s, picked %g days later: frost does not kill it", c.out.ISO(), c.wait)
		} else if got := s.Loss(p, &s.Conflicts[i]); got != c.want {
			t.Errorf("planted out on %s, picked %g days later: %+v, want %+v", c.out.ISO(), c.wait, got, c.want)
		}
	}
}
