package watering

import (
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/year/season"
	"evenrow/wasm/year/shots"
)

// Today says what the timer is set to on the day of the sheet, and when that
// changes.
func Today(the *scene.Scene) {
	sc := part{the}
	t := sc.S.Today()
	if sc.OutOfSeason(t) {
		return
	}
	date := sc.S.Now.Day.Words()
	if !sc.S.Shots.Ready() {
		sc.Say("p", TimerWaits)
		return
	}
	if !t.Waters() {
		sc.Tag("p", wording.Sentences(words.Say("Today, {date}, nothing has to be watered.", date), sc.nextChange(t.Next)))
		return
	}
	l := t.Line
	if zones := l.Sets[shots.Hot].Zones; len(sc.S.Layout.Zones) == 1 {
		of := func(sky shots.Sky) string {
			told := l.Sets[sky].Zone(zones[0].Zone).Told()
			return told.String()
		}
		sc.Say("p", "Today, {date}: {typical}. If it is hot, {hot}; if it is dull, {dull}.", date, of(shots.Typical), of(shots.Hot), of(shots.Dull))
	} else {
		sc.Say("p", "Today is {date}.", date)
	}
	sc.Table(words.Say("What to set the timer to today"), words.Say("Weather"), "#"+words.Say("Shots")).Rows(func(t *block.Table) {
		for _, zone := range sc.S.Layout.Zones {
			if len(sc.S.Layout.Zones) > 1 {
				t.Group(words.Say("Zone {n}", words.N(zone)))
			}
			for _, sky := range [...]shots.Sky{shots.Typical, shots.Hot, shots.Dull} {
				if s := l.Sets[sky].Zone(zone); s != nil {
					t.Row(words.Say(skyNames[sky]), cellOf(s))
					t.Across(strings.TrimSuffix(sc.times(s), "."))
				}
			}
		}
	})
	sc.Tag("p", wording.Sentences(sc.corrected(), sc.nextChange(t.Next), sc.stopsNow(l)))
}

// skyNames are kinds of day as they begin a line.
var skyNames = [shots.Skies]words.Text{shots.Dull: "Dull", shots.Typical: "Typical", shots.Hot: "Hot", shots.Record: "As hot as it has been"}

// nextChange says when the timer is set anew.
func (sc part) nextChange(k *season.Task) string {
	if k == nil {
		return words.Say("The timer is not changed any more this season.")
	}
	return words.Say("The next change is on {date}: {setting}.", k.Day.Short(), k.Timer.String())
}

// Stopped says how long the plants last when the water stops now.
func Stopped(the *scene.Scene) {
	sc := part{the}
	t := sc.S.Today()
	switch {
	case !sc.S.Now.Timed:
		sc.Say("p", "This page does not know what time it is. How long plants last by the time of the day is worked out for the time of greatest need.")
	case !sc.S.Shots.Ready():
		sc.Say("p", TimerWaits)
	case t.Line == nil || len(t.Line.Beds) == 0:
		sc.Say("p", "Nothing stands in the rows today.")
	default:
		sc.Tag("p", wording.Sentences(sc.stopsNow(t.Line), words.Say("After that growth suffers, then leaves and fruit. This errs to the short side.")))
		b := t.Line.First(float64(sc.S.Now.Second))
		r := shots.ByHand(t.Line.Lit, b, b.Use[shots.Hot])
		sc.Say("p", "Then water by hand: give each plant of {plants} {dose} every {time} about noon of a hot day. All plants together need {volume} an hour then.",
			sc.bedName(b), sc.Amount(unit.PlantWater, r.Each), wording.Lasting(r.Every), sc.Amount(unit.Volume, t.Line.Hour(shots.Hot)))
	}
}

// stopsNow says until when the plants that suffer first have water, when it stops
// at the time of the sheet; empty where that is not known.
func (sc part) stopsNow(l *shots.Line) string {
	if !sc.S.Now.Timed {
		return ""
	}
	at := float64(sc.S.Now.Second)
	b := l.First(at)
	until := func(sky shots.Sky) string { return sc.lasts(at, l.Lasts(b, sky, at)) }
	said := words.Text("If the water stops now, at {time}, {plants} has water that is easy to take up {typical} in typical weather, {hot} if it is hot and {dull} if it is dull.")
	if giver, _, _ := sc.giver(); giver == "pump" {
		said = "If the pump stops now, at {time}, {plants} has water that is easy to take up {typical} in typical weather, {hot} if it is hot and {dull} if it is dull."
	}
	return words.Say(said, sc.clock(at), sc.bedName(b), until(shots.Typical), until(shots.Hot), until(shots.Dull))
}

// lasts says until when something lasts that begins at a time of the day.
func (sc part) lasts(at, long float64) string {
	switch end := at + long; {
	case end < 24*hour:
		return words.Say("until {time}", sc.clock(end))
	case end < 48*hour:
		return words.Say("until {time} tomorrow", sc.clock(end))
	}
	return words.Say("for {time}", wording.Lasting(long))
}
