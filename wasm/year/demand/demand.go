// Package demand says how much water each plant of a season takes up, day by
// day: the weather's thirst, what the cover lets through, how far the crop has
// grown, and the floor that a plant has.
package demand

import (
	"slices"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/climate"
	"evenrow/wasm/trade/evapo"
	"evenrow/wasm/year/season"
)

// A Planting is what is known of one planting's thirst.
type Planting struct {
	Index  int     // in season.Season.Plantings
	From   day.Day // planted out: before it, the plants stand elsewhere
	To     day.Day // cleared: the first day without them
	Stages evapo.Stages
	Area   float64 // m² of floor for each plant, the mean over its rows
	Plants int
}

// A Day is the weather of one day, as seen from the plants.
type Day struct {
	High, Low [climate.Kinds]float64 // °C
	Reference [climate.Kinds]float64 // m, in the open, by kind of day
}

// A Demand is the thirst of a season.
type Demand struct {
	From, To  day.Day // from the first planting out to the last clearing
	Days      []Day   // from From on
	Plantings []Planting
	Cover     float64 // share of the sun that reaches the plants
	Sky       *plan.Sky
	More      bool // more than temperatures is known of the weather
}

// Of returns the demand of a plan that has been checked, over its season;
// without days where nothing is planted in a row.
func Of(p *plan.Plan, s *season.Season) *Demand {
	d := &Demand{Cover: p.Sky.Cover, Sky: &p.Sky, More: p.Sky.Known()}
	for i := range s.Plantings {
		g := &s.Plantings[i]
		if !g.Grows() {
			continue
		}
		n := Planting{Index: i, From: g.Dates[season.Slab], To: g.Dates[season.End], Stages: stages(p, g), Plants: g.Plants}
		floor, plants := 0.0, 0
		for _, row := range g.Rows {
			floor += Area(p, row, g.Crop) * float64(p.Rows[row].Plants)
			plants += p.Rows[row].Plants
		}
		n.Area = floor / float64(plants)
		if len(d.Plantings) == 0 || n.From < d.From {
			d.From = n.From
		}
		d.To = max(d.To, n.To)
		d.Plantings = append(d.Plantings, n)
	}
	if len(d.Plantings) == 0 {
		return d
	}
	year := climate.New(p.Year())
	for at := d.From; at < d.To; at++ {
		d.Days = append(d.Days, weather(p, year, at))
	}
	return d
}

// weather returns one day out of doors. A warmer day never takes less water
// than a cooler one: where it would, because a clear winter's day loses more
// heat than the sun brings, it counts as much.
func weather(p *plan.Plan, year *climate.Climate, at day.Day) (d Day) {
	usualHigh, usualLow := year.At(at, climate.Typical)
	for k := range climate.Kind(climate.Kinds) {
		d.High[k], d.Low[k] = year.At(at, k)
		w := another(Weather(p, at, usualHigh, usualLow), k, d.High[k], d.Low[k])
		d.Reference[k] = max(w.Reference(), d.Reference[max(0, k-1)])
	}
	return d
}

// Weather returns a typical day at the place of a plan, of which the high and
// the low are given in °C.
func Weather(p *plan.Plan, at day.Day, high, low float64) evapo.Weather {
	s := &p.Sky
	return evapo.Weather{Latitude: s.Latitude, OfYear: at.OfYear(), Height: s.Height, Low: low, High: high,
		More: s.Known(), Humidity: s.Humidity, Wind: s.Wind, Sunshine: s.Sunshine}
}

// sunnier is how far the sunshine of a kind of day is on the way from the usual
// to a clear sky; below 0 to an overcast one. Common practice, no source.
var sunnier = [climate.Kinds]float64{climate.Cool: -0.5, climate.Hot: 0.5, climate.Record: 0.75}

// another returns a day of another kind than w at the same time of the year. The air holds
// as much vapour as on the typical one, or what it can, and the sun shines for
// longer the hotter it is, where these are known.
func another(w evapo.Weather, k climate.Kind, high, low float64) evapo.Weather {
	usual := w.Vapour()
	w.High, w.Low = high, low
	if w.More && w.Humidity >= 0 {
		w.Humidity = min(1, usual/evapo.MeanSaturation(low, high))
	}
	if w.More && w.Sunshine >= 0 {
		clear := 1 - w.Sunshine
		if sunnier[k] < 0 {
			clear = w.Sunshine
		}
		w.Sunshine += sunnier[k] * clear
	}
	return w
}

// On returns the weather of a day, and false outside the season.
func (d *Demand) On(at day.Day) (*Day, bool) {
	if i := int(at - d.From); i >= 0 && i < len(d.Days) {
		return &d.Days[i], true
	}
	return nil, false
}

// Use returns what a plant of a planting, an index into d.Plantings, takes up
// on a day, in m³ by kind of day; nothing before it is planted out, and nothing
// once the row is cleared.
func (d *Demand) Use(planting int, at day.Day) (use [climate.Kinds]float64) {
	g := &d.Plantings[planting]
	w, ok := d.On(at)
	if !ok || at < g.From || at >= g.To {
		return use
	}
	kc, canopy := g.At(at)
	for k := range use {
		use[k] = evapo.PlantWater(w.Reference[k], d.Cover, kc, canopy, g.Area, d.Sky.AdjustOn(at))
	}
	return use
}

// At returns the crop coefficient on a day and the share of its canopy that has
// grown.
func (g *Planting) At(at day.Day) (kc, canopy float64) {
	days := float64(at - g.From)
	return g.Stages.Kc(days), Canopy(&g.Stages, days)
}

// Total returns what all plants of the season take up on a day, in m³ by kind
// of day.
func (d *Demand) Total(at day.Day) (sum [climate.Kinds]float64) {
	for i := range d.Plantings {
		for k, u := range d.Use(i, at) {
			sum[k] += u * float64(d.Plantings[i].Plants)
		}
	}
	return sum
}

// Most returns the day of the season's greatest need, and what all plants take
// up on it, in m³ by kind of day: the first of the days on which that is most,
// were each of them hot. Every part of the page means this day, and the line of
// the card that holds it.
func (d *Demand) Most() (on day.Day, use [climate.Kinds]float64) {
	on = d.From
	for at := d.From; at < d.To; at++ {
		if t := d.Total(at); t[climate.Hot] > use[climate.Hot] {
			on, use = at, t
		}
	}
	return on, use
}

// Peak returns the day on which a plant of a planting takes up most on a day of
// a kind, and how much, in m³.
func (d *Demand) Peak(planting int, k climate.Kind) (on day.Day, use float64) {
	g := &d.Plantings[planting]
	on = g.From
	for at := g.From; at < g.To; at++ {
		if u := d.Use(planting, at)[k]; u > use {
			on, use = at, u
		}
	}
	return on, use
}

// Thirstiest returns the plantings of which a plant takes up most on a hot day, at
// most so many, as indices into d.Plantings: the one that takes most first, and of
// those that take the same the one that stands first.
func (d *Demand) Thirstiest(most int) []int {
	var list []int
	var peaks []float64
	for i := range d.Plantings {
		_, peak := d.Peak(i, climate.Hot)
		at := len(list)
		for at > 0 && peak > peaks[at-1] {
			at--
		}
		list, peaks = slices.Insert(list, at, i), slices.Insert(peaks, at, peak)
		if len(list) > most {
			list, peaks = list[:most], peaks[:most]
		}
	}
	return list
}

// stages returns the life of a planting. The grown stage is stretched or
// shortened so that the last one ends when the harvest does, because FAO-56's
// lengths are a guide for other seasons; a harvest that frost cuts short ends
// before that.
func stages(p *plan.Plan, g *season.Planting) evapo.Stages {
	of := func(t catalogue.Trait) float64 { return p.Trait(g.Crop, t) }
	s := evapo.Stages{Ini: of(catalogue.Ini), Dev: of(catalogue.Dev), Late: of(catalogue.Late),
		KcIni: of(catalogue.KcIni), KcMid: of(catalogue.KcMid), KcEnd: of(catalogue.KcEnd)}
	if tied := of(catalogue.KcTied); g.Tied && tied > 0 {
		s.KcMid = tied
	}
	life := float64(int(g.Dates[season.End]-g.Dates[season.Slab]) + g.Cut)
	s.Mid = max(1, life-s.Ini-s.Dev-s.Late)
	return s
}
