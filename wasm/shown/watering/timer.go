// Package watering says what to set the timer to, what the tank holds, what the
// drain tells and how long plants last without water.
package watering

import (
	"strconv"
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/shots"
)

// TimerWaits stands where there is no card.
const TimerWaits words.Text = "This is worked out as soon as every plant gets water and something is planted."

// Shots says what the timer is set to when it matters most, and what it cannot
// do.
func Shots(the *scene.Scene) {
	sc := part{the}
	c := sc.S.Shots
	if !c.Ready() {
		sc.Say("p", TimerWaits)
		return
	}
	l := &c.Lines[c.Peak]
	s := l.Sets[shots.Typical].Longest()
	words := "In the " + sc.lineWord() + " of greatest need, from " + l.From.Short() + "," + sc.zoneWords(s.Zone, "", " in zone ") + " give " + shotsOf(s)
	if n := len(s.Shots); n > 1 {
		words += ", the first at " + sc.clock(s.Shots[0].At) + ", the last at " + sc.clock(s.Shots[n-1].At)
	}
	if h := l.Sets[shots.Hot].Zone(s.Zone); h != nil {
		words += ". On a hot day give " + shotsOf(h)
	}
	sc.Tag("p", words+". The card for the timer has every "+sc.lineWord()+" of the season.")
	sc.choice(c)
	closer := " Shots stand closer when there is more sun between them."
	if c.Hand != nil {
		closer = " The times stay the same all season: fewer shots use fewer of them."
	}
	if sc.S.Plan.Timer.Kind == plan.OnAndOff {
		closer = " Such a timer spreads them evenly, whatever the sun does."
	}
	sc.Picture("Each line is a "+sc.lineWord()+", each stroke a shot of a typical day"+sc.zoneWords(s.Zone, "", " in zone ")+". The thin lines are sunrise and sunset."+closer, func(class block.Markup, width float64) {
		sc.clockFace(class, width, c, s.Zone)
	})
	sc.SameAsTable(func() {
		sc.Table("When the shots are, through the season", "From", "#Shots", "#First", "#Last", "#Sunrise", "#Sunset").Rows(func(t *block.Table) {
			for i := range c.Lines {
				l := &c.Lines[i]
				if s := l.Sets[shots.Typical].Zone(s.Zone); s != nil {
					n := len(s.Shots)
					rise, set := sc.clock(l.Lit.Rise), sc.clock(l.Lit.Set)
					if long := l.Lit.Set - l.Lit.Rise; long >= 24*hour || long <= hour { // the sun hardly crosses the horizon, or not at all
						rise, set = "–", "–"
					}
					t.Row(shortDate(l.From.Date()), strconv.Itoa(n), sc.clock(s.Shots[0].At), sc.clock(s.Shots[n-1].At), rise, set)
				}
			}
		})
	})
	sc.Working(func() {
		b := s.Beds[s.Lead].Bed
		sc.Tag("p", "Typical day in the "+sc.lineWord()+" from "+l.From.Short()+", a plant of "+sc.bedName(b)+" at the least flow there:")
		wanted := b.Wanted(&sc.S.Plan.Timer, shots.Typical)
		given := dose.Applied(s.Beds[s.Lead].Use, wanted)
		sc.Formula(dose.AppliedFormula, s.Beds[s.Lead].Use, wanted)
		if dose.Count(given, s.Most*b.Least) == s.Wanted { // else they would be too short, and are fewer
			sc.Formula(dose.CountFormula, given, s.Most*b.Least)
		}
		sc.Formula(dose.MinutesFormula, given/float64(len(s.Shots)), b.Least)
	})
	sc.HTML(`<p>How to set a timer, and when to reset it: <a href="timer.html">Setting the timer</a>.</p>`)
}

// choice says how the card is made, what the finer one saves, and leads to the
// other.
func (sc part) choice(c *shots.Card) {
	f := c.Fine
	if f == nil {
		return
	}
	q := *sc.S.Plan
	q.Timer.Card = plan.ByHand + plan.Finer - q.Timer.Card
	hand, finer := words.N(f.Settings), words.N(f.Finer)
	saves, drains, share := sc.Amount(unit.Volume, f.Saves), sc.Amount(unit.Volume, f.Drained), wording.Percent(f.Share())
	var said words.Text
	var args []string
	switch byHand := c.Hand != nil; {
	case byHand && f.Little():
		said, args = "This card is made by hand: one length of shot a day, and start times that stay all season. [A finer card], with lengths that differ and times that follow the sun, saves next to no drain, and has {finer} {finer|setting|settings} for {hand}.", []string{finer, hand}
	case byHand:
		said, args = "This card is made by hand: one length of shot a day, and start times that stay all season. [A finer card], with lengths that differ and times that follow the sun, saves {saved} of the {drained} that drain over a season of typical days, {share} %, and has {finer} {finer|setting|settings} for {hand}.", []string{saves, drains, share, finer, hand}
	case f.Little():
		said, args = "This is the finer card, with lengths that differ and times that follow the sun. It saves next to no drain: [a card by hand], with one length of shot a day and start times that stay all season, has {hand} {hand|setting|settings} for {finer}.", []string{hand, finer}
	default:
		said, args = "This is the finer card, with lengths that differ and times that follow the sun. It saves {saved} of the {drained} that would drain over a season of typical days, {share} %. [A card by hand], with one length of shot a day and start times that stay all season, has {hand} {hand|setting|settings} for {finer}.", []string{saves, drains, share, hand, finer}
	}
	if sc.Link == nil {
		sc.Tag("p", unmarked(words.Say(said, args...)))
		return
	}
	sc.HTML(`<p>`).Linked(sc.Link(&q), said, args...).HTML(`</p>`)
}

// unmarked is a text without the brackets of what leads nowhere.
func unmarked(s string) string {
	before, rest, _ := strings.Cut(s, "[")
	name, after, _ := strings.Cut(rest, "]")
	return before + name + after
}

// lineWord is what a line of the card is for.
func (sc part) lineWord() string {
	if sc.S.Plan.Timer.Every == plan.Week {
		return words.Say("week")
	}
	return words.Say("fortnight")
}

// zoneWords is one where there is one zone, else many with the zone's number.
func (sc part) zoneWords(zone int, one, many string) string {
	if len(sc.S.Layout.Zones) < 2 {
		return one
	}
	return many + strconv.Itoa(zone)
}

// clock is a time of day.
func (sc part) clock(s float64) string { return unit.Clock(sc.Sys, s) }

// shotsOf is a setting in words: "12 shots of 5 min".
func shotsOf(s *shots.Setting) string {
	many, few, long, short := s.Lengths()
	words := wording.Count(many, "shot", "shots") + " of " + wording.Shot(long)
	if few > 0 {
		words += " and " + strconv.Itoa(few) + " of " + wording.Shot(short)
	}
	return words
}

// bedName names plants: "tomato in row 3".
func (sc part) bedName(b *shots.Bed) string {
	return words.Say("{planting} in {rows}", sc.S.Season.Name(sc.S.Plan, b.Planting), wording.Rows(b.Rows))
}
