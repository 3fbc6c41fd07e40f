package watering

import (
	"slices"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/year/shots"
)

// What each part comes to in a line, and whether there is something to do.

// TimerLine says from when to when the card goes.
func TimerLine(the *scene.Scene) (said string, is sheet.Verdict) {
	c := the.S.Shots
	if !c.Ready() {
		return "", sheet.Yes
	}
	from, last := c.Lines[0].From, &c.Lines[len(c.Lines)-1]
	return spanned(shots.Span{From: from, Days: int(last.From-from) + last.Days}), sheet.Yes
}

// CannotLine says how much there is that the timer cannot do, and whether plants
// lack water for it or rows are watered empty.
func CannotLine(the *scene.Scene) (said string, is sheet.Verdict) {
	c := the.S.Shots
	if !c.Ready() {
		return "", sheet.Yes
	}
	n := len(c.Limits) + len(c.Empty)
	if c.Shared != nil {
		n++
	}
	if len(c.Empty) > 0 || slices.ContainsFunc(c.Limits, func(l shots.Limit) bool { return !l.Kind.Slight() }) {
		is = sheet.Nearly
	}
	if n == 0 {
		return words.Say("nothing"), is
	}
	return words.Say("{n} {n|thing|things}", words.N(n)), is
}

// ShotsLine says what the timer is set to when plants need most.
func ShotsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	c := the.S.Shots
	if !c.Ready() {
		return "", sheet.Yes
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
	case floats(the):
		return words.Say("a float valve keeps it full"), sheet.Yes
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
