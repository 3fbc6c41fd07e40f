package answer

import (
	"encoding/json"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/limit"
	"evenrow/wasm/year/shots"
)

// read decodes what a value is written as, with the keys of the file.
func read(t *testing.T, v any) map[string]any {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var keys map[string]any
	if err := json.Unmarshal(text, &keys); err != nil {
		t.Fatal(err)
	}
	return keys
}

// Why none serves, which no example has, is in the file: by name, and with what most
// fail only where no limit alone forbids it.
func TestWhyNoneServesIsInTheFile(t *testing.T) {
	failures := [limit.Limits]int{limit.Reach: 1, limit.Flushing: 3, limit.Place: 2}
	for _, tt := range []struct {
		d           sheet.Designs
		why, failed any
		all         bool
	}{
		{sheet.Designs{Unequal: 2, Unlike: 2}, "different-emitters", nil, true},
		{sheet.Designs{Result: design.Result{Cut: true}}, "ended-early", nil, false},
		{sheet.Designs{Result: design.Result{Forbids: limit.Place.Alone(), Failures: failures}}, "forbidden", nil, true},
		{sheet.Designs{}, "none-compared", nil, true},
		{sheet.Designs{Result: design.Result{Counted: 4, Failures: failures}, Unequal: 1}, "none-in-full", nil, true},
		{sheet.Designs{Result: design.Result{Counted: 4, Failures: failures}}, "one-limit-or-another", "flushing", true},
		{sheet.Designs{Result: design.Result{Counted: 4}, Best: []sheet.Best{{Take: plan.Default(), Design: design.Design{Present: true}}}}, nil, nil, true},
	} {
		got := read(t, searchOf(&sheet.Sheet{Plan: plan.Default(), Designs: &tt.d}))
		if got["none_because"] != tt.why || got["most_failed"] != tt.failed || got["all_compared"] != tt.all || (got["conclusion"] == "none-serves") != (tt.why != nil) {
			t.Errorf("%+v: %v", tt.d, got)
		}
	}
}

// A harvest that frost takes has in the file what would save it, and no other
// conflict has that: the default plan, with a pepper that goes out on 1 August, too
// late to be picked before frost.
func TestALostHarvestIsInTheFile(t *testing.T) {
	p := plan.Default()
	late := plan.Planting{Crop: 0, From: 1, To: 1, Mode: plan.FromPlanting + 1, Date: int(day.Of(2027, 8, 1)), Times: 1, Every: 1}
	p.Plantings = append(p.Plantings, late)
	s := sheet.Answer(p)
	s.Explore(sheet.Season)
	lost := 0
	y := read(t, yearOf(p, s.Season))
	for i, c := range y["conflicts"].([]any) {
		c := c.(map[string]any)
		l, told := c["harvest_lost"].(map[string]any)
		if told != (c["kind"] == "frost-before-harvest") {
			t.Errorf("%v", c)
		}
		if !told {
			continue
		}
		lost++
		want := s.Season.Loss(p, &s.Season.Conflicts[i])
		days := func(key string) int { n, _ := l[key].(float64); return int(n) }
		if l["system_drained_before"] != want.Drained || days("too_short_days") != want.Short || days("sow_earlier_least_days") != want.Least || days("sow_earlier_most_days") != want.Most {
			t.Errorf("%v, want %+v", l, want)
		}
		if (want.Short > 0) == (want.Least > 0) {
			t.Errorf("%+v", want)
		}
	}
	if lost == 0 {
		t.Errorf("no harvest is lost: %v", y["conflicts"])
	}
}

// The tank's filling is in the file by name, in cubic metres and days, and no tank
// is null.
func TestTheTankIsInTheFile(t *testing.T) {
	given := [shots.Skies]float64{shots.Typical: 0.1, shots.Hot: 0.15, shots.Record: 0.18}
	for tank, want := range map[float64]map[string]any{
		0.05: {"filled": "more-than-once-a-day", "holds_record_hot_day": false, "would_hold_it_m3": 0.18},
		0.12: {"filled": "twice-when-hot", "holds_record_hot_day": false, "would_hold_it_m3": 0.18},
		0.35: {"filled": "every-some-days", "every_days": 3.0, "when_hot_every_days": 2.0, "holds_record_hot_day": true, "would_hold_it_m3": 0.18},
		2:    {"filled": "seldom", "holds_record_hot_day": true, "would_hold_it_m3": 0.18},
	} {
		got := read(t, refillOf(shots.RefillOf(tank, given)))
		for key, v := range want {
			if got[key] != v {
				t.Errorf("a tank of %g m³: %s is %v, want %v", tank, key, got[key], v)
			}
		}
		if len(got) != len(want) {
			t.Errorf("a tank of %g m³: %v", tank, got)
		}
	}
	if refillOf(shots.Refill{}) != nil {
		t.Error("no tank is one")
	}
	// Of the examples those with a tap and those without water have none.
	some := 0
	for _, e := range plan.Examples() {
		s := sheet.Work(e.Plan)
		text, err := written(s)
		if err != nil {
			t.Fatal(err)
		}
		var d document
		if err := json.Unmarshal(text, &d); err != nil {
			t.Fatal(err)
		}
		if (d.Tank != nil) != (e.Plan.Supply.Kind != plan.Mains && d.Verdict != "no") {
			t.Errorf("%s: %s with a tank of %g m³: %+v", e.Key, d.Verdict, e.Plan.Supply.Tank, d.Tank)
		}
		if d.Tank != nil {
			some++
		}
	}
	if some < 2 {
		t.Errorf("%d examples have a tank", some)
	}
}
