package drain

import (
	"math"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/year/shots"
)

// A Timer is what the log's days were watered by, and the next will be: what the
// timer can be set to, and its card, which may be nil or have nothing to set.
type Timer struct {
	*plan.Timer
	Card *shots.Card
	Sky  *plan.Sky // what of it is measured already
}

// CardSky returns the kind of day of the card that a day of the log was.
func (e *Entry) CardSky() shots.Sky { return shots.Sky(e.Sky.Taken() - Dull) }

// Set returns the card's line for the day of an entry, that of greatest need
// where it has no date, and its setting of the zone that runs longest; nil where
// the card has none.
func (t Timer) Set(e *Entry) (*shots.Line, *shots.Setting) {
	if !t.Card.Ready() {
		return nil, nil
	}
	line := &t.Card.Lines[t.Card.Peak]
	if e.Day != 0 {
		// The same date in the year of the plan.
		_, month, dom := e.Day.Date()
		on, _ := day.Near(month, dom, line.From)
		line = nil
		for i := range t.Card.Lines {
			if l := &t.Card.Lines[i]; on >= l.From && int(on-l.From) < l.Days {
				line = l
			}
		}
		if line == nil {
			return nil, nil
		}
	}
	return line, line.Sets[e.CardSky()].Longest()
}

// Noted returns the share that is to drain on the day of an entry, and for how
// many seconds the timer gave water: as it is noted, else as the card has it.
func (t Timer) Noted(e *Entry) (wanted, run float64) {
	line, set := t.Set(e)
	wanted = [...]float64{Dull: t.DrainLow, Typical: t.Drain, Hot: t.DrainHot}[e.Sky.Taken()]
	if line != nil && allYoung(line) {
		wanted = t.DrainLow
	}
	n, long := e.Shots, e.Long
	if set != nil {
		if math.IsNaN(n) {
			n = float64(len(set.Shots))
		}
		if math.IsNaN(long) {
			long = set.Given / float64(len(set.Shots))
		}
	}
	if run = n * long; run > MostRun {
		run = math.NaN() // many shots, with the length on the card
	}
	return wanted, run
}

// allYoung says whether all plants of a line root in.
func allYoung(l *shots.Line) bool {
	for i := range l.Beds {
		if !l.Beds[i].Young {
			return false
		}
	}
	return true
}

// RightIfHot says whether what drained of days whose weather was not noted is too
// much for a typical day, as which they count, and would be right for a hot one.
func (t Timer) RightIfHot(a *Advice) bool {
	return a.Last.Sky == Untold && a.Reasons&TooMuch != 0 && a.Out <= t.DrainHot+Close
}

// A Step is what is done to the timer on the next day of the weather.
type Step uint8

const (
	Leave   Step = iota // it stays as it was
	ByShare             // more or less by a share: what the timer was set to is not known, or not what it could be
	NoRoom              // it stays: no more fits between the first shot of the day and the last
	TooFine             // it stays: it cannot be set so finely
	SetTo               // it is set to Next.Set
)

// A Next is what the timer is set to on the next day of the weather.
type Next struct {
	Step  Step
	Share float64 // ByShare and SetTo: of the water, how much more or, negative, less than on the last day: 0.1 for a tenth more

	// SetTo
	Was    *shots.Setting // what the card has for the last day
	Set    shots.Setting
	AsCard bool // it is as the card has it
}

// Next says what to set the timer to: what it can be set to, and where too
// little drained never less than the card has.
func (t Timer) Next(a *Advice) Next {
	line, card := t.Set(a.Last)
	if a.Change == 0 || card == nil || math.IsNaN(a.Run) {
		if math.Abs(a.Change) < leastShare {
			return Next{}
		}
		return Next{Step: ByShare, Share: a.Change}
	}
	sky, n := a.Last.CardSky(), Next{Step: SetTo, Was: card}
	run := a.Run * (1 + a.Change)
	if a.Reasons&TooLittle != 0 && run <= card.Given {
		run, n.AsCard = card.Run, true
	}
	if room := shots.Room(t.Timer, line.Lit, sky); run > room {
		if a.Change > 0 {
			return Next{Step: NoRoom}
		}
		run = room
	}
	ok := false
	if n.Set, ok = t.Card.Fit(t.Timer, line, card.Zone, sky, run); !ok || a.Change < 0 && n.Set.Given >= a.Run {
		return Next{Step: TooFine}
	}
	n.Share = n.Set.Given/a.Run - 1
	return n
}

// A Rewrite is the rest of a card, as the drain has it.
type Rewrite struct {
	Card   *shots.Card
	From   day.Day // the day after the last one that was measured, in the year of the plan
	Times  float64 // what the plants are then counted to take up, by what the card counts on the day of the reading: 1.1 for a tenth more
	Adjust float64 // and by what is worked out
	Used   bool    // the card is that already
}

// Rewrite writes the card anew from the day after the last reading on, with all
// plants counted to take up as much more or less than before as that setting
// should have given more or less. What is given for some days to wash out salt
// stays out of it. ok is false where it is not known what was given, or when, where
// the card stays as it is, and where it goes by a later reading.
func (t Timer) Rewrite(a *Advice) (r Rewrite, ok bool) {
	if a.Days == 0 || a.Last.Day == 0 || math.IsNaN(a.Run) {
		return r, false
	}
	line, card := t.Set(a.Last)
	if card == nil {
		return r, false
	}
	// Where it drains as it should, what was given is right, to what a jug shows;
	// else what is needed is known.
	r.Times = a.Run / card.Given
	if a.Lasting != 0 {
		r.Times = a.Run * (1 + a.Lasting) / card.Run
		if a.Lasting > 0 && r.Times < 1 {
			r.Times = 1 // less was given than the card has, and too little drained
		}
	}
	_, month, dom := a.Last.Day.Date()
	on, _ := day.Near(month, dom, line.From)
	r.From = on + 1
	r.Adjust = t.Sky.AdjustOn(on) * r.Times
	r.Used = t.Sky.Since == int(r.From) && math.Abs(r.Adjust/t.Sky.Adjust-1) < leastShare
	if math.Abs(r.Times-1) < leastShare || t.Sky.Since > int(r.From) {
		return r, false
	}
	r.Card = t.Card.After(t.Timer, r.From, r.Adjust/t.Sky.AdjustOn(r.From))
	return r, len(r.Card.Lines) > 0
}

// leastShare is the least change that is one, as it is told in whole per cent.
const leastShare = 0.005
