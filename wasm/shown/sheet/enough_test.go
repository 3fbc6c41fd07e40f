package sheet

import (
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
)

// What the search for the fewest zones comes to, by hand.
func TestEnough(t *testing.T) {
	other := plan.Default()
	crops := func(of ...int) *plan.Plan {
		p := plan.Default()
		p.Rows = p.Rows[:len(of)]
		for i, crop := range of {
			p.Rows[i].Crop = crop
		}
		return p
	}
	alike, mixed := crops(0, 0, 0), crops(0, 0, 1)
	for _, tt := range []struct {
		what    string
		plan    *plan.Plan
		verdict Verdict
		now     int
		is      Zoning
		want    Enough
	}{
		{"one line that is well", alike, Yes, 1, Zoning{Alone: true, Tried: 1, Fewest: 1}, Enough{Kind: OneAlone}},
		{"one line that is not", alike, No, 1, Zoning{Alone: true, Tried: 1}, Enough{Kind: NoneAlone}},
		{"a large plan", alike, Nearly, 1, Zoning{Large: true, Tried: 5}, Enough{Kind: TooLarge}},
		{"a plan too large to try one", alike, Nearly, 1, Zoning{Large: true, Tried: 1}, Enough{Kind: TooLarge}},
		{"one row", crops(0), No, 1, Zoning{Tried: 1}, Enough{Kind: OneRow}},
		{"no number", alike, No, 1, Zoning{Tried: 3}, Enough{Kind: NoneEnough}},
		{"one would do for two, of one crop", alike, Yes, 2, Zoning{Fewest: 1, Tried: 1, Plan: other}, Enough{Kind: FewerDo}},
		{"one would do for two, of two crops", mixed, Yes, 2, Zoning{Fewest: 1, Tried: 1, Plan: other}, Enough{Kind: FewerDo, Crops: true}},
		{"two are enough, and not these", mixed, Nearly, 2, Zoning{Fewest: 2, Tried: 2, Plan: other}, Enough{Kind: Regroup}},
		{"one instead of two", alike, Nearly, 2, Zoning{Fewest: 1, Tried: 1, Plan: other}, Enough{Kind: OthersDo}},
		{"two instead of one", mixed, No, 1, Zoning{Fewest: 2, Tried: 2, Plan: other}, Enough{Kind: OthersDo}},
		{"three instead of one", alike, No, 1, Zoning{Fewest: 3, Tried: 3, Plan: other}, Enough{Kind: OthersDo, Together: true}},
		{"one", alike, Yes, 1, Zoning{Fewest: 1, Tried: 1}, Enough{Kind: OneDoes}},
		{"two, and both", alike, Yes, 2, Zoning{Fewest: 2, Tried: 2}, Enough{Kind: AllNeeded}},
		{"three, and all", mixed, Yes, 3, Zoning{Fewest: 3, Tried: 3}, Enough{Kind: AllNeeded, Together: true}},
	} {
		s := &Sheet{Plan: tt.plan, Verdict: tt.verdict, Zones: make([]ZoneResult, tt.now), Zoning: &tt.is}
		if got := s.Enough(); got != tt.want {
			t.Errorf("%s: %+v, want %+v", tt.what, got, tt.want)
		}
	}
}

// What is said of the zones is what comes of it when every number of them is
// worked out.
func TestEnoughAsEachNumberIsTried(t *testing.T) {
	told := map[EnoughKind]int{}
	for seed := range uint64(90) {
		r := rand.New(rand.NewPCG(seed, 22))
		p := small(r)
		p.Supply.Kind, p.Header.Layout, p.Supply.Regulator = plan.PumpTwo, plan.HeaderAndRows, 0
		p.Supply.ShutOff, p.Supply.MaxFlow = 14, 8e-5
		s := zonedAndLooped(p)
		if s.Zoning == nil {
			continue
		}
		now, yes := len(s.Zones), make([]bool, len(p.Rows)+1) // by number of zones
		least := 0
		for n := len(p.Rows); n > 0; n-- {
			q := p.Clone()
			split(q, n)
			if yes[n] = assess(q, nil).Verdict == Yes; yes[n] {
				least = n
			}
		}
		fewer := least > 0 && least < now
		var right bool
		kind := s.Enough().Kind
		switch kind {
		case FewerDo:
			right = s.Verdict == Yes && fewer
		case OneDoes:
			right = s.Verdict == Yes && now == 1
		case AllNeeded:
			right = s.Verdict == Yes && !fewer && now > 1
		case Regroup:
			right = s.Verdict != Yes && yes[now] && !fewer
		case OthersDo:
			right = s.Verdict != Yes && least > 0 && (fewer || least > now)
		case NoneEnough:
			right = s.Verdict != Yes && least == 0 && len(p.Rows) > 1
		case OneRow:
			right = s.Verdict != Yes && len(p.Rows) == 1
		case OneAlone:
			right = s.Verdict == Yes && len(p.Rows) == 1 // of which the search says no more
		}
		if told[kind]++; !right {
			t.Errorf("seed %d: %d with %d zones, verdict %d, and the answer is Yes with %v", seed, kind, now, s.Verdict, yes)
		}
	}
	t.Log(told)
	for _, kind := range []EnoughKind{FewerDo, OthersDo, NoneEnough} {
		if told[kind] == 0 {
			t.Errorf("no plan comes to %d: %v", kind, told)
		}
	}
}
