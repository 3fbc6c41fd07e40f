package grow

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/trade/climate"
	"evenrow/wasm/trade/evapo"
	"evenrow/wasm/trade/sun"
	"evenrow/wasm/year/demand"
)

// mostThirsts is how many plantings the picture and the table of water show.
const mostThirsts = 6

// Weather says how much water the plants take up through the season, and when
// the sun stands above it.
func Weather(the *scene.Scene) {
	sc := part{the}
	d := sc.S.Demand
	if d == nil || len(d.Days) == 0 {
		sc.Say("p", "Nothing is planted out yet, so nothing drinks.")
		return
	}
	shown := d.Thirstiest(mostThirsts)
	first := shown[0]
	on, most := d.Peak(first, climate.Hot)
	use, young := d.Use(first, on), d.Use(first, d.Plantings[first].From)
	w, _ := d.On(on)
	daily := func(v float64) string { return sc.Amount(unit.PlantWater, v) }
	warm := func(k climate.Kind) string { return sc.Amount(unit.Temperature, w.High[k]) }
	sc.Say("p", "At its peak, about {date}, each plant of {planting} takes up {typical} on a typical day of {warm}, and {hot} on a hot one of {hottest}. Just planted out it takes {young}.",
		on.Words(), sc.planted(d, first), daily(use[climate.Typical]), warm(climate.Typical), daily(most), warm(climate.Hot), daily(young[climate.Typical]))
	sc.Tag("p", sc.wholeThirst(d))
	sc.Tag("p", sc.sunWords(d))
	known, sketch := words.Say("Only temperatures are known of the weather, so the evaporative demand (ETo) is calculated from them and the sun."), ""
	if d.More {
		known = words.Say("The evaporative demand (ETo) is calculated from temperatures, the sun, and what else you know of the weather.")
	}
	if sc.S.Plan.Sky.Climate != plan.OwnClimate {
		sketch = words.Say("The climate is an invented sketch: for your own place, choose to type its twelve months.")
	}
	sc.Tag("p", words.Sentences(known, sketch, words.Say("Measure what you give and what drains for a week, and set the correction in the form.")))
	caption := words.Say("Water for a plant and day. Thick line: a typical day. Dashed line: a hot day. Thin line: a cool day.")
	if len(shown) < len(d.Plantings) {
		caption = words.Sentences(caption, words.Say("Shown: the {shown} of {n} plantings that need most.", words.N(len(shown)), words.N(len(d.Plantings))))
	}
	sc.Picture(caption, func(class block.Markup, width float64) {
		sc.thirst(class, width, d, shown)
	})
	sc.SameAsTable(func() {
		sc.fortnights(d, shown)
	})
	sc.thirstWorking(d, first, on)
	sc.HTML(`<p>`).Linked("weather.html", "What lies behind it: [Sun, weather and water].").HTML(`</p>`)
}

// planted names a planting of the demand.
func (sc part) planted(d *demand.Demand, i int) string {
	return sc.S.Season.Name(sc.S.Plan, d.Plantings[i].Index)
}

// plantedBegin is planted at the beginning of a line.
func (sc part) plantedBegin(d *demand.Demand, i int) string {
	return sc.S.Season.NameBegin(sc.S.Plan, d.Plantings[i].Index)
}

// wholeThirst says which day needs most for all plants together.
func (sc part) wholeThirst(d *demand.Demand) string {
	on, most := d.Most()
	all := func(k climate.Kind) string { return sc.Amount(unit.Volume, most[k]) }
	return words.Say("All plants together need most about {date}: {typical} on a typical day, {hot} on a hot one and {record} on a record-hot one. A cool one takes {cool}. What is to drain comes on top.",
		on.Words(), all(climate.Typical), all(climate.Hot), all(climate.Record), all(climate.Cool))
}

// lit returns the sun's times on a day, on the clock of the place.
func (sc part) lit(at day.Day) sun.Times {
	s := &sc.S.Plan.Sky
	return sun.OnClock(at, s.Latitude, s.Longitude, s.Clock(at))
}

// sunWords says how long the days of the season are.
func (sc part) sunWords(d *demand.Demand) string {
	long, short := sun.Extremes(d.From, d.To, func(at day.Day) float64 { return sc.lit(at).Length })
	say := func(at day.Day, of *[sun.Kinds]words.Text) string {
		t := sc.lit(at)
		if t.Kind != sun.RisesAndSets {
			return words.Say(of[t.Kind], at.Words())
		}
		return words.Say(of[t.Kind], at.Words(), unit.HoursMinutes(t.Length), unit.Clock(sc.Sys, t.Rise), unit.Clock(sc.Sys, t.Set))
	}
	return words.Sentences(say(long, &longest), say(short, &shortest))
}

// The longest and the shortest day, by what the sun does on it.
var (
	longest [sun.Kinds]words.Text = [...]words.Text{
		sun.RisesAndSets: "The longest day of the season is {date}: {length}, from {rise} to {set} on your clock.",
		sun.Up:           "The longest day of the season is {date}: the sun is up all day.",
		sun.Down:         "The longest day of the season is {date}: the sun is down all day.",
		sun.RisesOnly:    "The longest day of the season is {date}: the sun rises, and does not set again that day.",
		sun.SetsOnly:     "The longest day of the season is {date}: the sun sets, having been up since the day before.",
	}
	shortest [sun.Kinds]words.Text = [...]words.Text{
		sun.RisesAndSets: "The shortest is {date}: {length}, from {rise} to {set} on your clock.",
		sun.Up:           "The shortest is {date}: the sun is up all day.",
		sun.Down:         "The shortest is {date}: the sun is down all day.",
		sun.RisesOnly:    "The shortest is {date}: the sun rises, and does not set again that day.",
		sun.SetsOnly:     "The shortest is {date}: the sun sets, having been up since the day before.",
	}
)

// thirst draws the water of each planting over the season, one below another
// with the same scale.
func (sc part) thirst(class block.Markup, width float64, d *demand.Demand, shown []int) {
	const high, room = 62.0, 96.0
	p := block.Plot{Left: 64, Right: width - 12, X0: float64(d.From), X1: float64(d.To)}
	for _, i := range shown {
		_, peak := d.Peak(i, climate.Hot)
		p.Y1 = max(p.Y1, 1.05*peak)
	}
	if !(p.Y1 > 0) {
		p.Y1 = 1e-4
	}
	top := 26.0
	sc.SVG(class, width, top+room*float64(len(shown))+12, words.Say("Water for a plant and day over the season"), func() {
		step := day.Day(max(1, int(d.To-d.From)/50))
		for n, i := range shown {
			g := &d.Plantings[i]
			p.Top = top + room*float64(n)
			p.Bottom = p.Top + high
			sc.Label(p.Left, p.Top-8, "start", sc.plantedBegin(d, i))
			sc.SideOf(&p, unit.PlantWater, 3) // with fewer, 0 may stand alone
			lines := [climate.Kinds]block.Path{}
			for at := g.From; ; at = min(at+step, g.To-1) {
				for k, u := range d.Use(i, at) {
					lines[k].To(p.Day(at), p.Y(u))
				}
				if at >= g.To-1 {
					break
				}
			}
			sc.Draw("line line--thin", &lines[climate.Cool]).Draw("dash", &lines[climate.Hot]).Draw("line line--main", &lines[climate.Typical])
		}
		p.Top = top
		sc.months(&p)
	})
}

// fortnights is the table of sun and water.
func (sc part) fortnights(d *demand.Demand, shown []int) {
	columns := []string{words.Say("Fortnight from"), block.Figures(words.Say("Sunrise")), block.Figures(words.Say("Sunset")), block.Figures(words.Say("Day")), block.Figures(words.Say("Evaporative demand, ETo"))}
	for _, i := range shown {
		columns = append(columns, block.Figures(sc.plantedBegin(d, i)))
	}
	sc.Say("p", "Each line is the middle of a fortnight. Water is for a plant and day: typical, then on a hot day. The evaporative demand, ETo (reference evapotranspiration), is that of a lawn in the open.")
	sc.Table(words.Say("Sun and water by fortnight"), columns...).Rows(func(t *block.Table) {
		for from := d.From; from < d.To; from += 14 {
			at := min(from+7, d.To-1)
			w, _ := d.On(at)
			s := sc.lit(at)
			cells := []string{from.Short(), unit.Clock(sc.Sys, s.Rise), unit.Clock(sc.Sys, s.Set), unit.HoursMinutes(s.Length),
				sc.Amount(unit.Evaporation, w.Reference[climate.Typical])}
			switch s.Kind {
			case sun.Up, sun.Down:
				cells[1], cells[2] = "–", "–"
			case sun.RisesOnly:
				cells[2] = "–"
			case sun.SetsOnly:
				cells[1] = "–"
			}
			for _, i := range shown {
				cell := "–"
				if g := &d.Plantings[i]; at >= g.From && at < g.To {
					use := d.Use(i, at)
					cell = words.List(sc.Bare(unit.PlantWater, use[climate.Typical]), sc.Amount(unit.PlantWater, use[climate.Hot]))
				}
				cells = append(cells, cell)
			}
			t.Row(cells...)
		}
	})
	warmer := func(k climate.Kind) string {
		by, _ := climate.Offsets(k)
		return sc.Warmer(by)
	}
	sc.Say("p", "Cool days lie {cool} below the usual high of the date, and hot and record-hot days {hot} and {record} above it: common practice, no source.",
		warmer(climate.Cool), warmer(climate.Hot), warmer(climate.Record))
}

// thirstWorking shows how the water of one planting on one day comes about.
func (sc part) thirstWorking(d *demand.Demand, i int, on day.Day) {
	g := &d.Plantings[i]
	w, _ := d.On(on)
	out := demand.Weather(sc.S.Plan, on, w.High[climate.Typical], w.Low[climate.Typical])
	kc, canopy := g.At(on)
	sc.Working(func() {
		sc.Say("p", "Radiation above the air on {date}:", on.Words())
		sc.Formula(sun.ExtraterrestrialFormula, out.Latitude, float64(out.OfYear))
		if d.More {
			sc.Say("p", "The evaporative demand (ETo) on a typical day, from the radiation that a green crop keeps:")
			sc.Formula(evapo.PenmanFormula, out.Low, out.High, out.Vapour(), out.Net(), 0, out.Breeze(), out.Height)
		} else {
			sc.Say("p", "The evaporative demand (ETo) on a typical day:")
			sc.Formula(evapo.HargreavesFormula, out.Low, out.High, out.Above())
		}
		sc.Say("p", "How much of it {planting} takes up at its age:", sc.planted(d, i))
		s := &g.Stages
		sc.Formula(evapo.CropCoefficientFormula, float64(on-g.From), s.Ini, s.Dev, s.Mid, s.Late, s.KcIni, s.KcMid, s.KcEnd)
		sc.Say("p", "And what that is for one plant:")
		sc.Formula(evapo.PlantWaterFormula, w.Reference[climate.Typical], d.Cover, kc, canopy, g.Area, d.Sky.AdjustOn(on))
	})
}
