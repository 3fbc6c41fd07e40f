package answer

import (
	"evenrow/wasm/works/chance"
	"evenrow/wasm/works/fault"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/year/shots"
)

// What is judged, by name.
var (
	signs     [fault.Signs]string     = [...]string{fault.NobodyShort: "nobody-short", fault.OnGauge: "gauge", fault.OnMeter: "flow-meter", fault.OnFoot: "walking-the-rows"}
	cleanings [fault.Cleanings]string = [...]string{fault.NoMatter: "no-matter", fault.InTime: "in-time", fault.Unread: "too-little-to-read", fault.TooLate: "too-late"}
	flushed   [flush.Verdicts]string  = [...]string{
		flush.Clean: "yes", flush.CleanShut: "yes-with-other-rows-shut", flush.Dry: "no-water", flush.Shared: "rows-share-the-far-header",
		flush.Weak: "too-slow", flush.WeakShut: "too-slow-with-other-rows-shut",
	}
	remedies [chance.Remedies]string = [...]string{
		chance.NoneWanted: "none-wanted", chance.Unblock: "unblock", chance.UnblockAndDouble: "unblock-and-two-each",
		chance.LessSpread: "smaller-cv", chance.LessSpreadOrTwice: "smaller-cv-or-two-each",
	}
	timerLimits [shots.LimitKinds]string = [...]string{
		shots.FewValves: "few-valves", shots.OneValve: "one-valve", shots.Pins: "pins", shots.NoRoom: "no-room", shots.LateRound: "late-round", shots.Gaps: "gaps",
		shots.FewStarts: "few-starts", shots.FewRounds: "few-rounds", shots.LongByDay: "long-by-day", shots.LongByStep: "long-by-step", shots.ShortShots: "short-shots", shots.LightHours: "light-hours",
	}
	fillings [shots.Fillings]string = [...]string{
		shots.NoTank: "none", shots.MoreThanOnce: "more-than-once-a-day", shots.TwiceWhenHot: "twice-when-hot", shots.EveryDays: "every-some-days", shots.Seldom: "seldom",
	}
	cures [shots.Cures]string = [...]string{shots.NeedsHeader: "header", shots.GroupAlike: "group-alike", shots.OwnZone: "zone-each"}
)

// A judged is what the card of the timer means for the plants.
type judged struct {
	Limits []cannot  `json:"cannot"` // what the timer cannot do
	Shared *sharing  `json:"shared_valve"`
	Empty  []emptied `json:"watered_empty"` // rows with nothing in them, each for the first time
	Hand   *byHand   `json:"card_by_hand,omitempty"`
	Fine   *finer    `json:"finer_card,omitempty"`
}

// A byHand is what a card by hand does not change: its start times, in the order in
// which they are switched on, for the zone that comes first in a round.
type byHand struct {
	Starts []clocked `json:"starts"`
}

type clocked struct {
	At number `json:"after_midnight_s"`
}

// A finer is what a finer card saves, or saves already, of what drains by hand on
// typical days, and how many settings each has.
type finer struct {
	Saves    number `json:"saves_m3"`
	Drained  number `json:"drained_by_hand_m3"`
	Settings int    `json:"settings_by_hand"`
	Finer    int    `json:"settings"`
}

// A refill is how often the tank has to be filled.
type refill struct {
	Often   string `json:"filled"`
	Typical int    `json:"every_days,omitempty"`
	Hot     int    `json:"when_hot_every_days,omitempty"`
	Record  bool   `json:"holds_record_hot_day"`
	Wanted  number `json:"would_hold_it_m3"`
}

func refillOf(r shots.Refill) *refill {
	if r.Filling == shots.NoTank {
		return nil
	}
	return &refill{fillings[r.Filling], r.Typical, r.Hot, r.Holds, number(r.Wanted)}
}

type cannot struct {
	Kind string `json:"kind"`
	Sky  string `json:"sky,omitempty"`
	Zone int    `json:"zone,omitempty"`
}

// A sharing is plants that get more than they should, because others that share
// their valve need more: in the line where that is most.
type sharing struct {
	Line   string `json:"timer_from"`
	Lead   []int  `json:"deciding_rows"`
	Other  []int  `json:"rows"`
	Drain  number `json:"drained_share"`
	Valves int    `json:"valves_for_each"`
	Cure   string `json:"remedy"`
}

type emptied struct {
	Rows []int  `json:"rows"`
	From string `json:"from"`
	To   string `json:"to,omitempty"` // left out where nothing follows
}

// judgedOf is null where the card has nothing to set.
func judgedOf(c *shots.Card) *judged {
	if !c.Ready() {
		return nil
	}
	out := &judged{Limits: []cannot{}, Empty: []emptied{}}
	for i := range c.Limits {
		l := &c.Limits[i]
		one := cannot{Kind: timerLimits[l.Kind]}
		if l.Set != nil {
			one.Sky, one.Zone = skies[l.Sky], l.Set.Zone
		}
		out.Limits = append(out.Limits, one)
	}
	if h := c.Hand; h != nil {
		out.Hand = &byHand{}
		for _, at := range h.Starts {
			out.Hand.Starts = append(out.Hand.Starts, clocked{number(at)})
		}
	}
	if f := c.Fine; f != nil {
		out.Fine = &finer{number(f.Saves), number(f.Drained), f.Settings, f.Finer}
	}
	if s := c.Shared; s != nil {
		out.Shared = &sharing{s.Line.From.ISO(), numbered(s.Lead.Rows), numbered(s.Other.Rows), number(s.Drain), s.Valves, cures[s.Cure]}
	}
	for _, e := range c.Empty {
		one := emptied{Rows: numbered(e.Rows), From: e.From.ISO()}
		if e.To > 0 {
			one.To = e.To.ISO()
		}
		out.Empty = append(out.Empty, one)
	}
	return out
}

// numbered are rows as they are counted, from 1.
func numbered(rows []int) []int {
	out := make([]int, len(rows))
	for i, r := range rows {
		out[i] = r + 1
	}
	return out
}
