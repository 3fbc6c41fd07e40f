package watering

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/year/shots"
)

// What each part comes to in a line, and whether there is something to do.

// ShotsLine says what the timer is set to when plants need most, or that it
// cannot do all of it.
func ShotsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	c := the.S.Shots
	if !c.Ready() {
		return "", sheet.Yes
	}
	for i := range c.Limits {
		if !c.Limits[i].Kind.Slight() {
			return words.Say("the timer cannot do all of it"), sheet.Nearly
		}
	}
	if len(c.Empty) > 0 {
		return words.Say("rows with nothing in them are watered"), sheet.Nearly
	}
	told := c.Lines[c.Peak].Sets[shots.Typical].Longest().Told()
	return words.Say("{setting} when plants need most", told.String()), sheet.Yes
}

// TankLine says how long the tank lasts, or how much drains where there is none.
func TankLine(the *scene.Scene) (said string, is sheet.Verdict) {
	c := the.S.Shots
	if !c.Ready() {
		return "", sheet.Yes
	}
	if the.S.Plan.Supply.Kind == plan.Mains || the.S.Verdict == sheet.No {
		_, drained := c.Lines[c.Peak].Given()
		return words.Say("{volume} a day to catch", the.Amount(unit.Volume, drained[shots.Hot])), sheet.Yes
	}
	switch r := the.S.Refill(); {
	case r.Filling == shots.NoTank:
		return "", sheet.Yes
	case r.Filling == shots.Seldom:
		return words.Say("it lasts more than two weeks"), sheet.Yes
	case r.Filling == shots.EveryDays && r.Holds:
		return words.Say("fill it every {days}", every(r.Hot)), sheet.Yes
	case r.Filling == shots.EveryDays:
		return words.Say("a record-hot day empties it"), sheet.Nearly
	case r.Filling == shots.TwiceWhenHot:
		return words.Say("a hot day empties it"), sheet.Nearly
	}
	return words.Say("a typical day empties it"), sheet.Nearly
}
