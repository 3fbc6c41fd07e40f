package demand

import (
	"math"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/climate"
	"evenrow/wasm/trade/evapo"
)

// The air holds as much vapour on a hotter day as on the usual one, and the sun
// shines for longer: by half of what lacks to a clear sky on a hot day, by three
// quarters on a record day, and for half as long on a cool one.
func TestAnotherKindOfDay(t *testing.T) {
	usual := evapo.Weather{Latitude: 47, OfYear: 180, Low: 12, High: 24, More: true, Humidity: 0.6, Wind: 2, Sunshine: 0.4}
	for _, c := range []struct {
		kind      climate.Kind
		low, high float64
		sunshine  float64
	}{
		{climate.Cool, 10, 16, 0.2},
		{climate.Typical, 12, 24, 0.4},
		{climate.Hot, 16, 30, 0.7},
		{climate.Record, 20, 36, 0.85},
	} {
		w := another(usual, c.kind, c.high, c.low)
		if w.Low != c.low || w.High != c.high || w.Wind != 2 || w.Latitude != 47 {
			t.Errorf("%v: %+v", c.kind, w)
		}
		if math.Abs(w.Sunshine-c.sunshine) > 1e-12 {
			t.Errorf("%v: sunshine %g, want %g", c.kind, w.Sunshine, c.sunshine)
		}
		want := usual.Vapour()
		if most := evapo.MeanSaturation(c.low, c.high); want > most {
			t.Fatalf("%v: the case is none, the air cannot hold %g Pa", c.kind, want)
		}
		if got := w.Vapour(); math.Abs(got-want) > 1e-9*want {
			t.Errorf("%v: vapour of %g Pa, want %g", c.kind, got, want)
		}
	}
	// What the air of a cold day cannot hold has rained.
	usual.Humidity = 0.95
	if w := another(usual, climate.Cool, 12, 2); w.Humidity != 1 {
		t.Errorf("humidity %g on a cold day after a damp one, want 1", w.Humidity)
	}
}

// What is not known of a day is not known of another, either, and zero is a
// number like others.
func TestAnotherDayKnowsNoMore(t *testing.T) {
	for _, w := range []evapo.Weather{
		{More: false, Humidity: 0.6, Sunshine: 0.4},
		{More: true, Humidity: plan.Unset, Sunshine: plan.Unset},
	} {
		w.Low, w.High = 12, 24
		got := another(w, climate.Hot, 30, 16)
		if got.Humidity != w.Humidity || got.Sunshine != w.Sunshine {
			t.Errorf("of %+v another is %+v", w, got)
		}
	}
	dark := evapo.Weather{More: true, Low: 12, High: 24, Humidity: 0.5, Sunshine: 0}
	if got := another(dark, climate.Hot, 30, 16).Sunshine; got != 0.5 {
		t.Errorf("where the sun never shines, it does for %g of a hot day, want 0.5", got)
	}
}

// In a still winter a warmer day would take less than a cooler one, because more
// heat leaves it than the sun brings: then it counts as much as the cooler.
func TestAWarmerWinterDayTakesNoLess(t *testing.T) {
	would := map[climate.Kind]int{} // take less than the one before, which takes more than any before that
	for _, sunshine := range []float64{0.2, 0.9} {
		p := plan.Default()
		p.Sky.Latitude, p.Sky.Humidity, p.Sky.Wind, p.Sky.Sunshine = 50, 0.7, 0.5, sunshine
		year := climate.New(p.Year())
		for at := day.Of(2027, 11, 1); at < day.Of(2028, 2, 28); at++ {
			d := weather(p, year, at)
			high, low := year.At(at, climate.Typical)
			was, rose := 0.0, true
			for k := range climate.Kind(climate.Kinds) {
				w := another(Weather(p, at, high, low), k, d.High[k], d.Low[k])
				alone := w.Reference()
				if alone < was && rose {
					would[k]++
				}
				if want := max(alone, was); d.Reference[k] != want {
					t.Fatalf("%s, %v: %g m, want %g", at.ISO(), k, d.Reference[k], want)
				}
				rose, was = alone > was, d.Reference[k]
			}
		}
	}
	if would[climate.Typical] == 0 || would[climate.Hot] == 0 {
		t.Errorf("would take less than the kind before: %v; the test tests too little", would)
	}
}
