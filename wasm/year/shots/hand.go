package shots

import (
	"math"
	"slices"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/dose"
)

// Spare is how much more than the least that is possible a card by hand may
// give, as a share of it, so that the timer is changed less often: with a fifth
// to drain, 24 % drain then (our own choice).
const Spare = 0.05

// moreStarts is how many more shots than the fewest a card by hand may have, to
// give less in whole steps: each is a start to type (our own choice).
const moreStarts = 2

// A Hand is what a card by hand does not change: start times at whole quarters
// of an hour that stay the same through the season. They stand in the order in
// which they are switched on: a setting of n shots uses the first n of those
// that lie within the light of its days. So a change switches some on or some
// off, and moves none; each new one goes where the wait between two shots is
// longest by the sun. First in time and first in the list are two things, since
// the first n of the day would leave the afternoon dry.
type Hand struct {
	Starts []float64                  // s after midnight, of a round of all zones, in the order in which they are switched on
	Lag    [plan.MaxZones + 1]float64 // s from the start of a round to that of each zone
	Round  float64                    // s that a round is given: in whole quarters, no shot takes longer
	room   [plan.MaxZones + 1]float64 // s that a zone's shot is given within a round
	crowd  bool                       // there would be more starts if a round were shorter
}

// A run is the shots of a zone on a day, all as long.
type run struct {
	n    int
	long float64 // s
}

func (r run) all() float64 { return float64(r.n) * r.long }

// A runs is those of each zone, by its number.
type runs [plan.MaxZones + 1]run

// byHand sets the lines by hand, whose needs are known, and returns what stays
// the same in all of them.
func byHand(t *plan.Timer, lines []Line) *Hand {
	most, by, sky, run := 0, (*Line)(nil), Typical, 0.0
	for i := range lines {
		l := &lines[i]
		for k := range l.Sets {
			for j := range l.Sets[k].Zones {
				s := &l.Sets[k].Zones[j]
				if Sky(k) <= Hot { // a record-hot day is on no card: its shots are longer
					most = max(most, wanted(t, s))
				}
				if s.Run > run {
					by, sky, run = l, Sky(k), s.Run
				}
			}
		}
	}
	if by == nil {
		return &Hand{}
	}
	most = max(most, 1)
	var h *Hand
	// Zones in turn begin at quarters of an hour too, unless there is no time for that.
	for _, tick := range [...]float64{Quarter, Quarter / 3, 60} {
		if h = placed(t, lines, most, tick, windowOf(t, by.Lit, sky)); !h.reaches(t, lines) {
			if w, ok := common(t, lines, by); ok {
				h = placed(t, lines, most, tick, w)
			}
		}
		if !h.crowd {
			break
		}
	}
	h.set(t, lines, h.runs(t, lines))
	return h
}

// wanted returns how many shots a setting should have, were the starts its only
// limit.
func wanted(t *plan.Timer, s *Setting) int {
	return choose(t, s, t.Programmes, run{}, run{}).n
}

// common is the part of the day in which shots may be on each day of the lines.
func common(t *plan.Timer, lines []Line, by *Line) (w window, ok bool) {
	w = window{by.Lit, math.Inf(-1), math.Inf(1)}
	for i := range lines {
		for sky := Dull; sky <= Hot; sky++ {
			if len(lines[i].Sets[sky].Zones) > 0 {
				d := windowOf(t, lines[i].Lit, sky)
				w.first, w.last = max(w.first, d.first), min(w.last, d.last)
			}
		}
	}
	return w, w.first <= w.last
}

// placed finds at most so many starts for the lines within a window, and how
// zones follow one another, in whole ticks. What has to run longer takes more of
// a round, so that there may be fewer of them, which makes each longer again.
func placed(t *plan.Timer, lines []Line, most int, tick float64, w window) *Hand {
	h := &Hand{Round: Quarter}
	const tries = 20
	for try := 0; ; try++ {
		n := min(most, 1+int((quarter(w.last)-quarter(w.first))/h.Round+1e-9))
		if h.crowd = n < most; try >= tries {
			n = 1
		}
		h.spread(n, w)
		if try < tries {
			h.fill(t, lines)
		}
		h.order(w)
		long := longest(h.runs(t, lines))
		grown := false
		all := 0.0
		for zone := range h.room {
			h.Lag[zone] = all
			if need := math.Ceil(long[zone]/tick-1e-9) * tick; need > h.room[zone] {
				h.room[zone], grown = need, true
			}
			all += h.room[zone]
		}
		if !grown {
			return h
		}
		h.Round = math.Ceil(all/Quarter-1e-9) * Quarter
	}
}

// quarter is the quarter of an hour that is nearest to a time.
func quarter(s float64) float64 { return math.Ceil(s/Quarter-0.5) * Quarter }

// holds says whether a round may begin at a time: at the quarter nearest to an
// end of the window it may.
func (w window) holds(at float64) bool { return at >= w.first-Quarter/2 && at < w.last+Quarter/2 }

// spread finds n starts with equal sums of radiation between them, as far as
// quarters and rounds allow.
func (h *Hand) spread(n int, w window) {
	first, last := quarter(w.first), quarter(w.last)
	h.Starts = w.Spread(n, w.first, w.last)
	for k := range h.Starts {
		h.Starts[k] = max(quarter(h.Starts[k]), first)
		if k > 0 {
			h.Starts[k] = max(h.Starts[k], h.Starts[k-1]+h.Round)
		}
	}
	for k := n - 1; k >= 0 && h.Starts[k] > last; k-- {
		h.Starts[k] = last
		last -= h.Round
	}
}

// fill adds starts, as many as the timer holds, for days whose light leaves them
// too few: each as far from the others as there is room.
func (h *Hand) fill(t *plan.Timer, lines []Line) {
	for i := range lines {
		for sky := Dull; sky <= Hot; sky++ {
			want, w := 0, windowOf(t, lines[i].Lit, sky)
			for k := range lines[i].Sets[sky].Zones {
				want = max(want, wanted(t, &lines[i].Sets[sky].Zones[k]))
			}
			for h.within(w) < want && len(h.Starts) < t.Programmes {
				at, apart := 0.0, 0.0
				for q := quarter(w.first); q <= quarter(w.last); q += Quarter {
					near := math.Inf(1)
					for _, s := range h.Starts {
						near = min(near, math.Abs(s-q))
					}
					if near > apart {
						at, apart = q, near
					}
				}
				if apart < h.Round {
					break
				}
				h.Starts = append(h.Starts, at)
			}
		}
	}
}

// within counts the starts within a window.
func (h *Hand) within(w window) (n int) {
	for _, at := range h.Starts {
		if w.holds(at) {
			n++
		}
	}
	return n
}

// order puts the starts in the order in which they are switched on: the one goes
// last without which the wait is shortest, by the sun.
func (h *Hand) order(w window) {
	left := slices.Clone(h.Starts)
	numeric.Sort(len(left), func(i, j int) bool { return left[i] < left[j] }, func(i, j int) { left[i], left[j] = left[j], left[i] })
	for last := len(left) - 1; last >= 0; last-- {
		out, least := 0, math.Inf(1)
		for k := range left {
			n := len(left)
			gap := w.Share(left[(k+1)%n]) - w.Share(left[(k+n-1)%n])
			if k == 0 || k == n-1 { // over the night
				gap++
			}
			if gap < least+1e-9 { // of several the latest, whose plants have the night before them
				out, least = k, gap
			}
		}
		h.Starts[last] = left[out]
		left = slices.Delete(left, out, out+1)
	}
}

// reaches says whether some start lies within the light of each day of the lines.
func (h *Hand) reaches(t *plan.Timer, lines []Line) bool {
	for i := range lines {
		for sky := Dull; sky <= Hot; sky++ {
			if len(lines[i].Sets[sky].Zones) > 0 && h.within(windowOf(t, lines[i].Lit, sky)) == 0 {
				return false
			}
		}
	}
	return true
}

// free lists the starts that a day may use, in the order in which they are
// switched on; the nearest one where none lies within its light.
func (h *Hand) free(t *plan.Timer, l *Line, sky Sky) (list []float64) {
	w := windowOf(t, l.Lit, sky)
	for _, at := range h.Starts {
		if w.holds(at) {
			list = append(list, at)
		}
	}
	if len(list) > 0 || len(h.Starts) == 0 {
		return list
	}
	near, middle := h.Starts[0], (w.first+w.last)/2
	for _, at := range h.Starts {
		if math.Abs(at-middle) < math.Abs(near-middle) {
			near = at
		}
	}
	return []float64{near}
}

// runs finds the shots of all lines: a hotter day never has fewer or less than a
// cooler one, and what need not be changed stays as it is in the line before.
func (h *Hand) runs(t *plan.Timer, lines []Line) [][Skies]runs {
	all := make([][Skies]runs, len(lines))
	for i := range lines {
		for sky := range all[i] {
			zones := lines[i].Sets[sky].Zones
			if len(zones) == 0 {
				continue
			}
			free := len(h.free(t, &lines[i], Sky(sky)))
			for k := range zones {
				s := &zones[k]
				var least, before run
				if sky > 0 {
					least = all[i][sky-1][s.Zone]
				}
				if i > 0 {
					before = all[i-1][sky][s.Zone]
				}
				all[i][sky][s.Zone] = choose(t, s, free, least, before)
			}
		}
	}
	return all
}

// longest returns how long the longest shot of each zone is.
func longest(all [][Skies]runs) (long [plan.MaxZones + 1]float64) {
	for i := range all {
		for sky := range all[i] {
			for zone, r := range all[i][sky] {
				long[zone] = max(long[zone], r.long)
			}
		}
	}
	return long
}

// choose splits what a setting needs into shots that are all as long, with no
// more starts than are free. What is given lies no more than Spare above the
// least that is enough, with shots as long as they should be: before where that
// serves, else the fewest shots that do. least is what is given at least, and in
// how many shots.
func choose(t *plan.Timer, s *Setting, free int, least, before run) run {
	free = max(1, min(free, t.Programmes), least.n)
	need := max(s.Run, least.all())
	few, most := counts(t, need, max(s.Most, need/float64(free)))
	few = max(min(few, free), least.n)
	most = max(few, min(free, most, few+moreStarts))
	of := func(n int) run { return run{n, steps(t, need/float64(n))} }
	bound := math.Inf(1)
	for n := few; n <= most; n++ {
		bound = min(bound, of(n).all()*(1+Spare))
	}
	if before.n >= few && before.n <= most && before.all() >= need-1e-6 && before.all() <= bound {
		return before
	}
	for n := few; n < most; n++ {
		if r := of(n); r.all() <= bound {
			return r
		}
	}
	return of(most)
}

// steps is a time in whole steps of the timer, rounded up.
func steps(t *plan.Timer, s float64) float64 {
	step := float64(t.Step)
	return max(1, math.Ceil(s/step-1e-9)) * step
}

// counts returns how many shots make up a time at least, when none takes longer
// than long, and at most, when none is shorter than it should be; both as the
// timer rounds them.
func counts(t *plan.Timer, need, long float64) (few, most int) {
	most = dose.Count(need, 1) // some hundred thousand
	if under := steps(t, LeastShot) - float64(t.Step); under > 0 {
		most = dose.Count(need, under) - 1
	}
	most = max(1, most)
	return min(dose.Count(need, steps(t, long)), most), most
}

// set writes the shots into the lines.
func (h *Hand) set(t *plan.Timer, lines []Line, all [][Skies]runs) {
	for i := range lines {
		l := &lines[i]
		for sky := range l.Sets {
			d := &l.Sets[sky]
			free := h.free(t, l, Sky(sky))
			for k := range d.Zones {
				s := &d.Zones[k]
				h.give(t, s, free, all[i][sky][s.Zone])
				d.Round = max(d.Round, h.Lag[s.Zone]+s.Longest())
				s.fare(l.Lit)
			}
		}
	}
}

// give writes the shots of a zone: at the first of the starts that are free.
func (h *Hand) give(t *plan.Timer, s *Setting, free []float64, r run) {
	s.Given = r.all()
	for _, at := range free[:r.n] {
		s.Shots = append(s.Shots, Shot{at + h.Lag[s.Zone], r.long})
	}
	list := s.Shots
	numeric.Sort(len(list), func(i, j int) bool { return list[i].At < list[j].At }, func(i, j int) { list[i], list[j] = list[j], list[i] })
	s.judge(r.long)
	s.Most = steps(t, s.Most)
	s.Wanted, _ = counts(t, s.Run, s.Most)
	switch {
	case s.Wanted <= len(free):
	case len(h.Starts) < t.Programmes:
		s.Notes |= Crowded
	default:
		s.Notes |= Few
	}
}

// Fit returns what the timer is set to for a zone in a line, when it is to give
// water for run s in all: with the starts of the card where it is made by hand.
// ok is as in the function [Fit].
func (c *Card) Fit(t *plan.Timer, l *Line, zone int, sky Sky, seconds float64) (s Setting, ok bool) {
	var beds []Bed
	for i := range l.Beds {
		if l.Beds[i].Zone == zone {
			beds = append(beds, l.Beds[i])
		}
	}
	if len(beds) == 0 {
		return s, false
	}
	if c.Hand == nil {
		return Fit(t, beds, l.Lit, sky, seconds)
	}
	if s, ok = need(t, beds, sky); !ok || !(seconds > 0) {
		return s, false
	}
	s.Run = seconds
	free := c.Hand.free(t, l, sky)
	c.Hand.give(t, &s, free, choose(t, &s, len(free), run{}, run{}))
	s.fare(l.Lit)
	return s, true
}

// After returns the card from a day on, with plants that take up so many times
// what was counted. By hand the starts stay where they are, unless a shot grows
// longer than there is room for.
func (c *Card) After(t *plan.Timer, from day.Day, more float64) *Card {
	var lines []Line
	peak := 0
	for i, l := range c.Lines {
		for _, part := range l.split(from) {
			if i == c.Peak {
				peak = len(lines)
			}
			lines = append(lines, part)
		}
	}
	lines = times(lines, from, more)
	a := &Card{Hand: c.reset(t, lines)}
	for i := range lines {
		if lines[i].From >= from {
			if i <= peak {
				a.Peak = len(a.Lines)
			}
			a.Lines = append(a.Lines, lines[i])
		}
	}
	return a
}

// times returns lines whose plants take up so many times as much from a day on. They have no
// settings yet.
func times(lines []Line, from day.Day, more float64) []Line {
	lines = slices.Clone(lines)
	for i := range lines {
		l := &lines[i]
		if l.Beds = slices.Clone(l.Beds); l.From < from {
			continue
		}
		for k := range l.Beds {
			for sky := range l.Beds[k].Use {
				l.Beds[k].Use[sky] *= more
			}
		}
	}
	return lines
}

// reset sets the timer in other lines, by hand with the starts of the card, unless a shot is
// longer than there is room for; what stays the same by hand is nil where it is not.
func (c *Card) reset(t *plan.Timer, lines []Line) *Hand {
	if c.Hand == nil {
		return setLines(t, lines)
	}
	needLines(t, lines)
	all, fits := c.Hand.runs(t, lines), true
	for zone, long := range longest(all) {
		fits = fits && long <= c.Hand.room[zone]
	}
	if !fits {
		return byHand(t, lines)
	}
	c.Hand.set(t, lines, all)
	return c.Hand
}

// Start returns the place, from 0, that a shot's start has among those of the
// card; -1 where it has none.
func (h *Hand) Start(zone int, shot Shot) int {
	return slices.Index(h.Starts, shot.At-h.Lag[zone])
}
