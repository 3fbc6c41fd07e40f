package grow

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/climate"
)

// What each part comes to in a line, and whether there is something to do.

// CropsLine says how many crops would do better by another method.
func CropsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	if other := others(the.S.Plan); len(other) > 0 {
		return words.Say("another for {crops}", words.List(other...)), sheet.Yes
	}
	return words.Say("drip for all"), sheet.Yes
}

// TasksLine says how much there is to do, and when.
func TasksLine(the *scene.Scene) (said string, is sheet.Verdict) {
	s := the.S.Season
	if s == nil || len(s.Tasks) == 0 {
		return "", sheet.Yes
	}
	return words.Say("{n} {n|task|tasks}, {first} to {last}", words.N(len(s.Tasks)), s.First.Short(), s.Last.Words()), sheet.Yes
}

// WeatherLine says what a plant takes up when that is most.
func WeatherLine(the *scene.Scene) (said string, is sheet.Verdict) {
	d := the.S.Demand
	if d == nil || len(d.Days) == 0 {
		return "", sheet.Yes
	}
	most := 0.0
	for i := range d.Plantings {
		_, use := d.Peak(i, climate.Typical)
		most = max(most, use)
	}
	return words.Say("at most {amount} a plant on a typical day", the.Amount(unit.PlantWater, most)), sheet.Yes
}
