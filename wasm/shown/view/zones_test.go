package view

import (
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/limit"
)

// planOf returns an example.
func planOf(t *testing.T, key string) *plan.Plan {
	t.Helper()
	for _, e := range plan.Examples() {
		if e.Key == key {
			return e.Plan
		}
	}
	t.Fatalf("no example %q", key)
	return nil
}

// wordsOf returns what explorations say about a plan, after a change to what
// they found, with a link to every plan.
func wordsOf(p *plan.Plan, which sheet.Exploration, change func(s *sheet.Sheet)) string {
	s := sheet.Answer(p)
	s.Explore(which)
	if change != nil {
		change(s)
	}
	all := ""
	for _, f := range Explored(s, which, func(*plan.Plan) string { return "#plan" }) {
		all += f.HTML
	}
	return all
}

func TestZonesAndRingInWords(t *testing.T) {
	three := plan.Default()
	for i := range three.Rows {
		three.Rows[i].Zone = 1 + i%3
	}
	untied := planOf(t, "ring")
	untied.Header.Layout = plan.HeaderAndRows
	power := plan.Default()
	power.Supply.Kind = plan.PumpPower
	for _, tt := range []struct {
		p      *plan.Plan
		change func(s *sheet.Sheet)
		want   []string
	}{
		{plan.Default(), nil, []string{"All rows are watered together. A litre for every plant takes 30\u00a0min.", "One zone is enough.", "as much pressure without the far header", "rows 1 to 4"}},
		{three, nil, []string{"in 3 zones, one after another", "You use 3 zones, and 1 would do. Crops that need different amounts are a reason to keep them.", `<a href="#plan">Open the plan with 1 zone</a>`, "zone 1: rows 1 and 4", "<small>row 2</small>", "With several zones there is none"}},
		{planOf(t, "long-field"), nil, []string{"With 2 zones the answer is Yes, and with no fewer.", "Open the plan with 2 zones", "A far header would give", "Open the plan with a far header"}},
		{planOf(t, "wrong-pump"), nil, []string{"No number of zones up to 4 is enough by itself.", "Evenness (EU)</th><td class=\"n\">–</td><td class=\"n\">–</td>"}},
		{planOf(t, "balcony"), nil, []string{"no valve can shut off a row alone in any case", "One row alone has nothing to be tied to."}},
		{planOf(t, "ring"), nil, []string{"The far header gives the weakest emitter 0.05\u00a0bar (0.5\u00a0m) more, for 6.4\u00a0m more tubing.", "longer than without it", "The answer is Yes with it, and not without.", "Open the plan without the far header"}},
		{planOf(t, "long-field"), func(s *sheet.Sheet) { s.Zoning.Fewest = 3 }, []string{"With 3 zones the answer is Yes, and with no fewer, as long as rows that stand together share a zone."}},
		{untied, nil, []string{"A far header would give the weakest emitter 0.05\u00a0bar (0.5\u00a0m) more"}},
		{power, nil, []string{"All rows are watered together.", "One zone is enough."}},
		{plan.Default(), func(s *sheet.Sheet) { s.Zoning.Fewest, s.Zoning.Large, s.Zoning.Tried = 0, true, 5 }, []string{"With up to 5 the answer is not Yes."}},
		{planOf(t, "ring"), func(s *sheet.Sheet) {
			s.Loop.Side[sheet.Tied].Zone.Margin = s.Loop.Side[sheet.Untied].Zone.Margin - 0.8
			s.Loop.Side[sheet.Untied].Verdict, s.Loop.Side[sheet.Tied].Verdict = sheet.Yes, sheet.No
		}, []string{"Nothing: with a far header the weakest emitter has 0.08\u00a0bar (0.8\u00a0m) less.", "The answer is Yes without it, and not with it."}},
	} {
		got := wordsOf(tt.p, sheet.Looping, tt.change)
		for _, want := range tt.want {
			if !strings.Contains(got, want) {
				t.Errorf("%s: not said: %s\nin %.900s", tt.p.Name, want, got)
			}
		}
	}
}

func TestDesignsInWords(t *testing.T) {
	power := plan.Default()
	power.Supply.Kind = plan.PumpPower
	outside := plan.Default()
	outside.Place.Length = 5
	slow := plan.Default()
	slow.Limits.Evenness = 0.99
	bare := plan.Default()
	for i := range bare.Prices.Tubes {
		bare.Prices.Tubes[i] = 0
	}
	for _, tt := range []struct {
		p      *plan.Plan
		change func(s *sheet.Sheet)
		want   []string
	}{
		{plan.Default(), nil, []string{"With the pump that you have it could cost 18.06 instead of 24.38.", "6.32 less than your plan", `<a href="#plan">Use design 1</a>`, "576 designs were compared", "hydraulic power"}},
		{planOf(t, "long-field"), nil, []string{"Design 1 serves with the pump that you have, and is the cheapest that does.", "fed in its middle", "2 zones", "16800 designs were compared", "which the pump that you have gives. A regulator set to"}},
		{planOf(t, "wrong-pump"), nil, []string{"No design works with the pump that you have. Each needs another", "more than the pump that you have gives: the link"}},
		{planOf(t, "balcony"), nil, []string{"nothing cheaper works with the tank that you have", "it could stand"}},
		{power, nil, []string{"each design says which it takes", "It takes a pump of at least ", "with everything shut."}},
		{outside, nil, []string{"No design serves, whatever the tubing, the feed and the zones. A row does not fit the place."}},
		{slow, nil, []string{"No design serves, whatever the tubing, the feed and the zones. The water is less even than your limit."}},
		{bare, nil, []string{"there is no tubing for some part"}},
		{plan.Default(), func(s *sheet.Sheet) { s.Designs.Best, s.Designs.Cut = nil, true }, []string{"too large for a search", "may have been missed"}},
		{plan.Default(), func(s *sheet.Sheet) {
			s.Designs.Best, s.Designs.List = nil, nil
			s.Designs.Failures = [limit.Limits]int{1, 9}
		}, []string{"No limit alone forbids it; most often it is this one. The water runs faster"}},
		{plan.Default(), func(s *sheet.Sheet) { s.Designs.Unequal = 1 }, []string{"1 was left out because that gave another answer"}},
		{plan.Default(), func(s *sheet.Sheet) { s.Designs = nil }, []string{"as soon as the plan can be"}},
	} {
		got := wordsOf(tt.p, sheet.Searching, tt.change)
		for _, want := range tt.want {
			if !strings.Contains(got, want) {
				t.Errorf("%s: not said: %s\nin %.900s", tt.p.Name, want, got)
			}
		}
	}
}

// What the answer says is pointed to where it says something; and one zone, one
// row and the last of one are told as such.
func TestOneOfAKindInWords(t *testing.T) {
	one := plan.Default()
	one.Rows = one.Rows[:1]
	one.Place.Length = 3
	s := sheet.Work(one)
	if s.Verdict == sheet.Yes || len(s.Fixes) > 0 {
		t.Fatal("something helps where the row is too long for the place")
	}
	for _, id := range []string{"zones", "headroom"} {
		if got := said(t, s, id); strings.Contains(got, "helps") || id == "zones" && !strings.Contains(got, "One row cannot be split into zones.<") {
			t.Errorf("%s: %.300s", id, got)
		}
	}
	s.Zoning.Fewest, s.Zoning.Plan, s.Zones = 1, one, append(s.Zones, s.Zones[0])
	if got := said(t, s, "zones"); !strings.Contains(got, ">With 1 zone the answer is Yes.<") {
		t.Error(got)
	}
	weak := sheet.Work(planOf(t, "wrong-pump"))
	for _, id := range []string{"zones", "headroom"} {
		if got := said(t, weak, id); !strings.Contains(got, "The answer says what helps.") {
			t.Errorf("%s: %.300s", id, got)
		}
	}
	low := planOf(t, "balcony")
	low.Header.Layout, low.Runs[0].Rise = plan.HeaderAndRows, 0.3
	if got := said(t, sheet.Work(low), "starting"); !strings.Contains(got, "never reaches the end of the row.") {
		t.Errorf("%.300s", got)
	}
}
