package grow

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
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
		sc.Tag("p", "Nothing is planted out yet, so nothing drinks.")
		return
	}
	shown := sc.thirstiest(d)
	first := shown[0]
	on, most := d.Peak(first, climate.Hot)
	use, young := d.Use(first, on), d.Use(first, d.Plantings[first].From)
	w, _ := d.On(on)
	daily := func(v float64) string { return sc.Amount(unit.PlantWater, v) }
	warm := func(k climate.Kind) string { return sc.Amount(unit.Temperature, w.High[k]) }
	sc.Tag("p", "At its peak, about "+on.Words()+", each plant of "+sc.planted(d, first)+" takes up "+daily(use[climate.Typical])+
		" on a typical day of "+warm(climate.Typical)+", and "+daily(most)+" on a hot one of "+warm(climate.Hot)+". Just planted out it takes "+daily(young[climate.Typical])+".")
	sc.Tag("p", sc.wholeThirst(d))
	sc.Tag("p", sc.sunWords(d))
	known := "Only temperatures are known of the weather, so the evaporative demand (ETo) is calculated from them and the sun. "
	if d.More {
		known = "The evaporative demand (ETo) is calculated from temperatures, the sun, and what else you know of the weather. "
	}
	if sc.S.Plan.Sky.Climate != plan.OwnClimate {
		known += "The climate is an invented sketch: for your own place, choose to type its twelve months. "
	}
	sc.Tag("p", known+"Measure what you give and what drains for a week, and set the correction in the form.")
	words := "Water for a plant and day. Thick line: a typical day. Dashed line: a hot day. Thin line: a cool day."
	if len(shown) < len(d.Plantings) {
		words += " Shown: the " + strconv.Itoa(len(shown)) + " of " + strconv.Itoa(len(d.Plantings)) + " plantings that need most."
	}
	sc.Picture(words, func(class block.Markup, width float64) {
		sc.thirst(class, width, d, shown)
	})
	sc.SameAsTable(func() {
		sc.fortnights(d, shown)
	})
	sc.thirstWorking(d, first, on)
	sc.HTML(`<p>What lies behind it: <a href="weather.html">Sun, weather and water</a>.</p>`)
}

// planted names a planting of the demand.
func (sc part) planted(d *demand.Demand, i int) string {
	return sc.S.Season.Name(sc.S.Plan, d.Plantings[i].Index)
}

// thirstiest returns the plantings that take up most on a hot day, in the order
// of the season, but the thirstiest first.
func (sc part) thirstiest(d *demand.Demand) []int {
	var shown []int
	var peaks []float64
	for i := range d.Plantings {
		_, peak := d.Peak(i, climate.Hot)
		at := len(shown)
		for at > 0 && peak > peaks[at-1] {
			at--
		}
		shown = append(shown[:at], append([]int{i}, shown[at:]...)...)
		peaks = append(peaks[:at], append([]float64{peak}, peaks[at:]...)...)
		if len(shown) > mostThirsts {
			shown, peaks = shown[:mostThirsts], peaks[:mostThirsts]
		}
	}
	return shown
}

// wholeThirst says which day needs most for all plants together.
func (sc part) wholeThirst(d *demand.Demand) string {
	on, most := d.Most()
	all := func(k climate.Kind) string { return sc.Amount(unit.Volume, most[k]) }
	return "All plants together need most about " + on.Words() + ": " + all(climate.Typical) + " on a typical day, " + all(climate.Hot) + " on a hot one and " +
		all(climate.Record) + " on a record-hot one. A cool one takes " + all(climate.Cool) + ". What is to drain comes on top."
}

// lit returns the sun's times on a day, on the clock of the place.
func (sc part) lit(at day.Day) sun.Times {
	s := &sc.S.Plan.Sky
	return sun.OnClock(at, s.Latitude, s.Longitude, s.Clock(at))
}

// sunWords says how long the days of the season are.
func (sc part) sunWords(d *demand.Demand) string {
	long, short := sun.Extremes(d.From, d.To, func(at day.Day) float64 { return sc.lit(at).Length })
	say := func(at day.Day) string {
		t := sc.lit(at)
		if t.Kind != sun.RisesAndSets {
			return at.Words() + ": the sun " + t.Kind.String()
		}
		return at.Words() + ": " + unit.HoursMinutes(t.Length) + ", from " + unit.Clock(sc.Sys, t.Rise) + " to " + unit.Clock(sc.Sys, t.Set) + " on your clock"
	}
	return "The longest day of the season is " + say(long) + ". The shortest is " + say(short) + "."
}

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
	sc.SVG(class, width, top+room*float64(len(shown))+12, "Water for a plant and day over the season", func() {
		step := day.Day(max(1, int(d.To-d.From)/50))
		for n, i := range shown {
			g := &d.Plantings[i]
			p.Top = top + room*float64(n)
			p.Bottom = p.Top + high
			sc.Label(p.Left, p.Top-8, "start", unit.Capital(sc.planted(d, i)))
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
	columns := []string{"Fortnight from", "#Sunrise", "#Sunset", "#Day", "#Evaporative demand, ETo"}
	for _, i := range shown {
		columns = append(columns, "#"+unit.Capital(sc.planted(d, i)))
	}
	sc.Tag("p", "Each line is the middle of a fortnight. Water is for a plant and day: typical, then on a hot day. The evaporative demand, ETo (reference evapotranspiration), is that of a lawn in the open.")
	t := sc.Table("Sun and water by fortnight", columns...)
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
				cell = sc.Bare(unit.PlantWater, use[climate.Typical]) + ", " + sc.Amount(unit.PlantWater, use[climate.Hot])
			}
			cells = append(cells, cell)
		}
		t.Row(cells...)
	}
	t.End()
	sc.Tag("p", "Cool days lie "+sc.warmer(climate.Cool)+" below the usual high of the date, and hot and record-hot days "+sc.warmer(climate.Hot)+" and "+sc.warmer(climate.Record)+" above it: common practice, no source.")
}

// warmer is how far the high of a kind of day lies from that of a typical one.
func (sc part) warmer(k climate.Kind) string {
	u := unit.Of(unit.Temperature, sc.Sys)
	by, _ := climate.Offsets(k)
	return strconv.Itoa(int(math.Abs(math.Round(u.FromInner(by)-u.FromInner(0))))) + "\u00a0" + u.Symbol
}

// thirstWorking shows how the water of one planting on one day comes about.
func (sc part) thirstWorking(d *demand.Demand, i int, on day.Day) {
	g := &d.Plantings[i]
	w, _ := d.On(on)
	out := demand.Weather(sc.S.Plan, on, w.High[climate.Typical], w.Low[climate.Typical])
	kc, canopy := g.At(on)
	sc.Working(func() {
		sc.Tag("p", "Radiation above the air on "+on.Words()+":")
		sc.Formula(sun.ExtraterrestrialFormula, out.Latitude, float64(out.OfYear))
		if d.More {
			sc.Tag("p", "The evaporative demand (ETo) on a typical day, from the radiation that a green crop keeps:")
			sc.Formula(evapo.PenmanFormula, out.Low, out.High, out.Vapour(), out.Net(), 0, out.Breeze(), out.Height)
		} else {
			sc.Tag("p", "The evaporative demand (ETo) on a typical day:")
			sc.Formula(evapo.HargreavesFormula, out.Low, out.High, out.Above())
		}
		sc.Tag("p", "How much of it "+sc.planted(d, i)+" takes up at its age:")
		s := &g.Stages
		sc.Formula(evapo.CropCoefficientFormula, float64(on-g.From), s.Ini, s.Dev, s.Mid, s.Late, s.KcIni, s.KcMid, s.KcEnd)
		sc.Tag("p", "And what that is for one plant:")
		sc.Formula(evapo.PlantWaterFormula, w.Reference[climate.Typical], d.Cover, kc, canopy, g.Area, d.Adjust)
	})
}
