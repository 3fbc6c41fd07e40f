package watering

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/year/shots"
)

// skies are kinds of day in words.
var skies [shots.Skies]words.Text = [...]words.Text{shots.Dull: "a dull day", shots.Typical: "a typical day", shots.Hot: "a hot day", shots.Record: "a record-hot day"}

// Cannot says what the timer cannot do, and what helps.
func Cannot(the *scene.Scene) {
	sc := part{the}
	c := sc.S.Shots
	if !c.Ready() {
		sc.Say("p", TimerWaits)
		return
	}
	if len(c.Limits) == 0 && c.Shared == nil && len(c.Empty) == 0 {
		sc.Say("p", "Nothing.")
	}
	for i := range c.Limits {
		l := &c.Limits[i]
		sc.Tag("p", limits[l.Kind](sc, l))
	}
	sc.shared(c)
}

// limits say what a timer cannot do, and what helps: a row for each kind.
var limits [shots.LimitKinds]func(sc part, l *shots.Limit) string = [...]func(sc part, l *shots.Limit) string{
	shots.FewValves: func(sc part, _ *shots.Limit) string {
		return words.Say("The plan has {zones} zones and the timer switches {n} {n|valve|valves}. Take a timer that switches {zones}, or turn the others by hand at every shot.", sc.zones(), words.N(sc.S.Plan.Timer.Channels))
	},
	shots.OneValve: func(sc part, _ *shots.Limit) string {
		return words.Say("The plan has {zones} zones, watered in turn. Such a timer switches one valve, and one for each zone would open several at once, for which the flows here are not worked out. Take a timer with start times that switches {zones} valves.", sc.zones())
	},
	shots.Pins: part.pins,
	shots.NoRoom: func(_ part, l *shots.Limit) string {
		return words.Say("On {day} the shots do not fit between the first and the last: emitters of more flow help, or two to a plant.", on(l))
	},
	shots.LateRound: func(_ part, l *shots.Limit) string {
		return words.Say("On {day} the rounds do not fit into the day: the last one begins {late} too late, because a round of all zones takes {round}. Water zones together if the supply carries it, or take emitters of more flow.", on(l), unit.HoursMinutes(l.Over), wording.Shot(l.Round))
	},
	shots.Gaps: func(sc part, l *shots.Limit) string {
		return wording.Sentences(words.Say("On {day} plants may lack water between two shots: a plant of {plants} takes up {used} from one to the next, and its medium gives up {easy} easily.",
			on(l), sc.bedName(l.Dryest.Bed), sc.Amount(unit.Dose, l.Dryest.Gap), sc.Amount(unit.Dose, l.Dryest.Bed.Easy)), sc.moreShots(l.Set), words.Say("More medium for each plant helps as well."))
	},
	shots.FewStarts: func(sc part, l *shots.Limit) string {
		if l.Free > 0 && l.Free < sc.S.Plan.Timer.Programmes {
			return wording.Sentences(words.Say("On {day} {wanted} shots would be right, and the timer holds {held} start times, of which {free} {free|lies|lie} within its light. So each is longer, {long} at most. The medium holds that, but more of it runs through.",
				on(l), words.N(l.Set.Wanted), words.N(sc.S.Plan.Timer.Programmes), words.N(l.Free), wording.Shot(l.Set.Longest())), sc.moreShots(l.Set))
		}
		return wording.Sentences(words.Say("On {day} {wanted} shots would be right, and the timer holds {held} start times. So each is longer, {long} at most. The medium holds that, but more of it runs through.",
			on(l), words.N(l.Set.Wanted), words.N(sc.S.Plan.Timer.Programmes), wording.Shot(l.Set.Longest())), sc.moreShots(l.Set))
	},
	shots.FewRounds: func(_ part, l *shots.Limit) string {
		return words.Say("On {day} {wanted} shots would be right, and no more than {free} {free|start fits|starts fit} between the first and the last, each {apart} after the one before. So each shot is longer, {long} at most. A finer card, whose times need not stay, may have room for more; or water zones together if the supply carries it, or take emitters of more flow.",
			on(l), words.N(l.Set.Wanted), words.N(l.Free), unit.HoursMinutes(l.Round), wording.Shot(l.Set.Longest()))
	},
	shots.LongByDay: func(_ part, l *shots.Limit) string {
		return words.Say("On {day} shots are longer than {most}, because the day is too short for more of them.", on(l), wording.Shot(shots.MostShot))
	},
	shots.LongByStep: func(sc part, l *shots.Limit) string {
		return words.Say("On {day} shots are longer than {most}, because the timer counts in steps of {step}.", on(l), wording.Shot(shots.MostShot), wording.Shot(float64(sc.S.Plan.Timer.Step)))
	},
	shots.ShortShots: func(part, *shots.Limit) string {
		return words.Say("While plants are small, shots are shorter than {least}, because they need no more. Emitters fill and open meanwhile, so look whether the far plants get theirs; or give two days' water every other day.", wording.Shot(shots.LeastShot))
	},
	shots.LightHours: func(part, *shots.Limit) string {
		return words.Say("The light switch lets the first shot come at sunrise and the last near sunset, earlier and later than plants like. A timer before it, or a cover over its eye, narrows that.")
	},
}

// on is the day on which the timer cannot do it.
func on(l *shots.Limit) string { return words.Say(skies[l.Sky]) }

func (sc part) zones() string { return words.N(len(sc.S.Layout.Zones)) }

// pins says what is wrong with a dial.
func (sc part) pins(l *shots.Limit) string {
	get := words.Say("Get a timer with a list of start times and steps of a minute, or one that counts seconds on and minutes off.")
	what := words.Say("This timer cannot give short shots: a pin is a quarter of an hour, which brings each plant {dose}, {share} of its medium.", sc.Amount(unit.Dose, l.Dose), sc.Amount(unit.Share, l.Share))
	if l.Taken {
		return wording.Sentences(what, words.Say("The medium takes that in, but there are few shots, and little to set."), get)
	}
	return wording.Sentences(what, words.Say("Most of it runs through, and there are few shots."), get)
}

func (sc part) moreShots(s *shots.Setting) string {
	if s.Notes&shots.Few != 0 {
		return words.Say("A timer with {n} start times, or one that goes on and off by itself, gives them.", words.N(s.Wanted))
	}
	if s.Notes&shots.Crowded != 0 {
		return words.Say("No more shots fit into the day, each of all zones in turn: water zones together if the supply carries it, or take emitters of more flow.")
	}
	return words.Say("Move the first shot earlier or the last one later.")
}

// shared says who gets more than is wanted because a valve is shared, in the
// line where that is most, and which rows are watered bare.
func (sc part) shared(c *shots.Card) {
	if s := c.Shared; s != nil {
		most := words.Say("In the {week} from {date} that is most: {lead} decides, and {other} drains {drain} % on a typical day, where {wanted} % would do.",
			sc.lineWord(), s.Line.From.Short(), sc.bedName(s.Lead), sc.bedName(s.Other), wording.Percent(s.Drain), wording.Percent(sc.S.Plan.Timer.Drain))
		sc.Tag("p", wording.Sentences(words.Say("Plants that need different amounts share a valve. Those that need most decide, so that no plant lacks water, and the others drain more."), most, words.Say(ownValves[s.Cure], words.N(s.Valves))))
	}
	sc.bareRows(c)
}

// ownValves say how a valve for each planting could be had.
var ownValves [shots.Cures]words.Text = [...]words.Text{
	shots.NeedsHeader: "In this layout rows cannot be shut alone; a header with rows could give each crop a valve.",
	shots.GroupAlike:  "Give rows that drink alike a zone of their own.",
	shots.OwnZone:     "A zone for each, and a timer that switches {n} {n|valve|valves}, gives each its own.",
}

// bareRows says which rows are watered with nothing in them.
func (sc part) bareRows(c *shots.Card) {
	for i := range c.Empty {
		if i == scene.MostWords {
			sc.Say("p", "Other rows are watered empty for a time as well.")
			break
		}
		e := &c.Empty[i]
		who, n, from := wording.RowsBegin(e.Rows), words.N(len(e.Rows)), e.From.Short()
		switch valves := sc.S.Plan.Header.Layout == plan.HeaderAndRows; {
		case valves && e.To > 0:
			sc.Say("p", "{rows} would be watered with nothing in {n|it|them} from {from} to {to}. Shut {n|it|them} off for so long.", who, n, from, e.To.Short())
		case valves:
			sc.Say("p", "{rows} would be watered with nothing in {n|it|them} from {from} on. Shut {n|it|them} off.", who, n, from)
		case e.To > 0:
			sc.Say("p", "{rows} would be watered with nothing in {n|it|them} from {from} to {to}. No valve can shut {n|it|them} off here: plug the emitters there for so long.", who, n, from, e.To.Short())
		default:
			sc.Say("p", "{rows} would be watered with nothing in {n|it|them} from {from} on. No valve can shut {n|it|them} off here: plug the emitters there.", who, n, from)
		}
	}
}
