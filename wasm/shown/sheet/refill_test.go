package sheet

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/year/shots"
)

// taken is what the plants of a line get in a day, in m³: of each zone's time the
// flows of the plants that stand in it, added plant by plant.
func taken(s *Sheet, l *shots.Line, sky shots.Sky) (sum float64) {
	for _, set := range l.Sets[sky].Zones {
		z := slices.IndexFunc(s.Zones, func(z ZoneResult) bool { return z.Zone == set.Zone })
		for _, b := range l.Beds {
			if b.Zone != set.Zone {
				continue
			}
			for _, row := range b.Rows {
				for i := range s.Layout.Plants {
					if p := &s.Layout.Plants[i]; p.Row == row {
						sum += set.Given * s.Zones[z].Solution.Out[p.Node]
					}
				}
			}
		}
	}
	return sum
}

// lasts is how many whole days a tank gives so much, taken day by day.
func lasts(tank, daily float64) (days int) {
	for ; tank >= daily && days < 1000; days++ {
		tank -= daily
	}
	return days
}

// A tank is filled as often as it is emptied in the line of which most is taken on
// a hot day. With no answer it is not known what is taken, and a tap has no tank.
func TestRefill(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 19))
	const near = 1e-9 // sums of flows in another order; no tank of a random size is that near to a border
	seen, away, taps, noes := map[shots.Filling]int{}, 0, 0, 0
	for range 250 {
		p := seasonal(r)
		p.Supply.Kind, p.Supply.ShutOff, p.Supply.MaxFlow, p.Supply.Regulator = plan.PumpTwo, 15+10*r.Float64(), 80.0/6e4, 0
		if r.IntN(5) == 0 { // out of the pump's reach, with its zone; others are watered
			p.Rows[len(p.Rows)-1].Height, p.Supply.ShutOff = 10, 12+3*r.Float64()
		}
		if len(p.Check()) > 0 {
			continue
		}
		s := explored(p)
		if !s.Shots.Ready() {
			if got := s.Refill(); got != (shots.Refill{}) {
				t.Errorf("a card with nothing to set: %+v", got)
			}
			continue
		}
		if s.Verdict == No {
			noes++
			if got := s.Refill(); got != (shots.Refill{}) {
				t.Errorf("the answer is No: %+v", got)
			}
			continue
		}
		at, most := s.Shots.Peak, taken(s, &s.Shots.Lines[s.Shots.Peak], shots.Hot)
		for i := range s.Shots.Lines {
			if sum := taken(s, &s.Shots.Lines[i], shots.Hot); sum > most*(1+near) {
				at, most = i, sum
			}
		}
		if at != s.Shots.Peak {
			away++
		}
		l := &s.Shots.Lines[at]
		typical, record := taken(s, l, shots.Typical), taken(s, l, shots.Record)
		for _, times := range []float64{0.3, 1.2, 2.7, 9.3, 40.1} {
			p.Supply.Tank = most * times * (1 + 0.1*r.Float64())
			if most > 1.01*typical && r.IntN(3) == 0 {
				p.Supply.Tank = typical + (most-typical)*(0.1+0.8*r.Float64())
			}
			got, days, hot := s.Refill(), lasts(p.Supply.Tank, typical), lasts(p.Supply.Tank, most)
			want := shots.EveryDays
			switch {
			case days == 0:
				want = shots.MoreThanOnce
			case hot == 0:
				want = shots.TwiceWhenHot
			case days > 14:
				want = shots.Seldom
			}
			seen[want]++
			if got.Filling != want || math.Abs(got.Wanted-record) > near*record || got.Holds != (p.Supply.Tank >= record) || want == shots.EveryDays && (got.Typical != days || got.Hot != hot) {
				t.Errorf("a tank of %g m³, of which %g, %g and %g are taken: %+v, want %d after %d and %d days", p.Supply.Tank, typical, most, record, got, want, days, hot)
			}
		}
		p.Supply.Kind = plan.Mains
		taps++
		if got := s.Refill(); got != (shots.Refill{}) {
			t.Errorf("a tap: %+v", got)
		}
		p.Supply.Kind, s.Verdict = plan.PumpTwo, No
		if got := s.Refill(); got != (shots.Refill{}) {
			t.Errorf("some get no water: %+v", got)
		}
	}
	t.Logf("%v, %d from another line than the peak, %d taps, %d with no answer", seen, away, taps, noes)
	if len(seen) != shots.Fillings-1 || away < 3 || taps < 30 || noes < 3 {
		t.Errorf("only %v, %d from another line than the peak, %d taps, %d with no answer", seen, away, taps, noes)
	}
	if got := (&Sheet{Plan: plan.Default()}).Refill(); got != (shots.Refill{}) {
		t.Errorf("before there is a card: %+v", got)
	}
}

// More emitters may be shut where the water has to get over a height, by hand for
// each kind of finding, and by the height of a hump against a pump of 20 m.
func TestMoreShut(t *testing.T) {
	for k := range FindingKind(FindingKinds) {
		s := &Sheet{Findings: []Finding{{Kind: NeverOpen}, {Kind: k}, {Kind: BelowRange}}}
		if got := s.MoreShut(); got != (k == TooHigh || k == Suction) {
			t.Errorf("%s: %t", Kinds[k].Name, got)
		}
	}
	if (&Sheet{}).MoreShut() {
		t.Error("nothing is found")
	}
	for over, want := range map[float64]bool{22: true, 19.95: true, 19: false, 1: false} {
		if got := Answer(hump(over, 20)).MoreShut(); got != want {
			t.Errorf("over %g m: %t", over, got)
		}
	}
}
