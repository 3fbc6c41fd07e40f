package shots

import (
	"math"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/dose"
)

// Of returns what the timer is set to on a day under a sky, for beds in the
// order of their zones. A zone whose plants take up nothing, or of which some
// get no water, has no setting.
//
// Each zone is given what its thirstiest plants need at the least flow of their
// bed: no plant lacks, and the others drain more. The time is split into shots
// that bring no bed more than the wanted share of its medium, from two to six
// minutes each, as far as the timer can.
func Of(t *plan.Timer, beds []Bed, lit dose.Sunlit, sky Sky) Day {
	d := needs(t, beds, sky)
	d.set(t, lit)
	return d
}

// needs are the settings of a day as far as the plants decide them.
func needs(t *plan.Timer, beds []Bed, sky Sky) Day {
	d := Day{Sky: sky}
	for i := 0; i < len(beds); {
		n := i + 1
		for n < len(beds) && beds[n].Zone == beds[i].Zone {
			n++
		}
		if s, ok := need(t, beds[i:n], sky); ok {
			d.Zones = append(d.Zones, s)
		}
		i = n
	}
	return d
}

// Fit returns what the timer is set to for the beds of one zone, when it is to
// give water for run s in all: as [Of] does it, with the limits of the timer.
// ok is false where these plants take up nothing or some get no water.
func Fit(t *plan.Timer, beds []Bed, lit dose.Sunlit, sky Sky, run float64) (s Setting, ok bool) {
	if s, ok = need(t, beds, sky); !ok {
		return s, false
	}
	s.Run = run
	s.split()
	d := Day{Sky: sky, Zones: []Setting{s}}
	d.set(t, lit)
	return d.Zones[0], s.Wanted > 0
}

// set finds the shots of all zones.
func (d *Day) set(t *plan.Timer, lit dose.Sunlit) {
	w := windowOf(t, lit, d.Sky)
	if t.Kind == plan.OnAndOff {
		for i := range d.Zones {
			d.Over = max(d.Over, d.Zones[i].cycle(t, w))
		}
	} else {
		d.list(t, w)
	}
	for i := range d.Zones {
		d.Zones[i].fare(lit)
	}
}

// A window is the part of a day in which shots begin.
type window struct {
	dose.Sunlit
	first, last float64
}

func windowOf(t *plan.Timer, lit dose.Sunlit, sky Sky) window {
	w := window{lit, lit.Rise + t.First, lit.Set - t.Last}
	if sky >= Hot {
		w.last = lit.Set - t.LastHot
	}
	if w.last < w.first { // a short winter's day
		w.first = (w.first + w.last) / 2
		w.last = w.first
	}
	return w
}

// Room returns the time in s from the first shot of a day to the last, and that
// of the longest shot that should be.
func Room(t *plan.Timer, lit dose.Sunlit, sky Sky) float64 {
	w := windowOf(t, lit, sky)
	return w.last - w.first + MostShot
}

// need works out the time that a zone's beds need, and the shots that it
// should be given in.
func need(t *plan.Timer, beds []Bed, sky Sky) (s Setting, ok bool) {
	// Plants that root in do not limit the shots of grown ones: what runs out of
	// their block wets the medium below it.
	longest, young := float64(MostShot), float64(MostShot)
	grown := false
	for i := range beds {
		b := &beds[i]
		if !(b.Least > 0) {
			return s, false
		}
		run := dose.Applied(b.Use[sky], b.Wanted(t, sky)) / b.Least
		if run > forever {
			return s, false // they get next to nothing
		}
		if run > s.Run {
			s.Run, s.Lead = run, i
		}
		s.Beds = append(s.Beds, Fare{Bed: b, Use: b.Use[sky]})
		if brings := t.Shot * b.Root / b.Mean; b.Young {
			young = min(young, brings)
		} else {
			longest, grown = min(longest, brings), true
		}
	}
	if !grown {
		longest = young
	}
	s.Zone = beds[0].Zone
	s.Most = max(longest, LeastShot)
	s.split()
	return s, s.Wanted > 0
}

// forever is a time of watering, in s, that no day's water takes.
const forever = 1e9

// split finds the number of shots that a setting's time should be split into:
// rather few than such as are too short.
func (s *Setting) split() {
	s.Wanted = min(dose.Count(s.Run, s.Most), max(1, int(s.Run/LeastShot)))
}

// steps returns how many steps of the timer make up the time, rounded up.
func (s *Setting) steps(step float64) int { return dose.Count(s.Run, step) }

// list sets a timer that holds start times. All zones start in turn, those
// with fewer shots in some of the rounds only.
func (d *Day) list(t *plan.Timer, w window) {
	step, most, tick := float64(t.Step), t.Programmes, 60.0
	if t.Kind == plan.Dial {
		step, most, tick = Quarter, 96, Quarter
	}
	rounds := 0
	counts := make([]int, len(d.Zones))
	for i := range d.Zones {
		s := &d.Zones[i]
		counts[i] = min(s.Wanted, most, s.steps(step))
		rounds = max(rounds, counts[i])
	}
	// How long each round takes, before it is known when it is.
	long := make([]float64, rounds)
	share := func(i, round int) float64 { // s of zone i in a round
		n := counts[i]
		k := (round*n + rounds - 1) / rounds // its first shot not before this round
		if k >= n || k*rounds/n != round {
			return 0
		}
		all := d.Zones[i].steps(step)
		each := all / n
		if middle(k, n) < all%n {
			each++
		}
		return float64(each) * step
	}
	for r := range long {
		for i := range d.Zones {
			long[r] += share(i, r)
		}
		d.Round = max(d.Round, long[r])
	}
	times := w.Spread(rounds, w.first, w.last)
	for r := range times {
		times[r] = math.Round(times[r]/tick) * tick
	}
	part(times, long, tick, w)
	if rounds > 0 {
		d.Over = max(0, times[rounds-1]-max(w.last, w.first)-tick)
	}
	for r, at := range times {
		for i := range d.Zones {
			s := &d.Zones[i]
			if long := share(i, r); long > 0 {
				s.Shots = append(s.Shots, Shot{at, long})
				s.Given += long
				at += long
				s.judge(long)
			}
		}
	}
	for i := range d.Zones {
		if s := &d.Zones[i]; t.Kind == plan.StartTimes && counts[i] == most && s.Wanted > most {
			s.Notes |= Few
		}
	}
}

// middle returns how far the shot k of n is from the middle one, by rank: 0 for
// the middle. The shots about noon are the first to be a step longer.
func middle(k, n int) int {
	m := (n - 1) / 2
	if k <= m {
		return 2 * (m - k)
	}
	return 2*(k-m) - 1
}

// part moves rounds apart that would overlap, towards the window's edges, and
// beyond its end only if they do not fit.
func part(times, long []float64, tick float64, w window) {
	for i := range long {
		long[i] = math.Ceil(long[i]/tick-1e-9) * tick
	}
	later := func() {
		for i := 1; i < len(times); i++ {
			times[i] = max(times[i], times[i-1]+long[i-1])
		}
	}
	later()
	end := math.Ceil(w.last/tick) * tick
	for i := len(times) - 1; i >= 0 && times[i] > end; i-- {
		times[i] = end
		end -= long[max(i-1, 0)]
	}
	if len(times) > 0 {
		times[0] = max(times[0], math.Floor(w.first/tick)*tick)
	}
	later()
}

func (s *Setting) judge(long float64) {
	if long < LeastShot {
		s.Notes |= Short
	}
	if long > MostShot {
		s.Notes |= Long
	}
}

// cycle sets a timer that goes on for seconds and off for minutes, over and
// over within a window, and returns by how much that does not suffice.
func (s *Setting) cycle(t *plan.Timer, w window) (over float64) {
	first, last := w.first, w.last
	if t.Window == plan.ByLight {
		first, last = w.Rise, w.Set
	}
	n := min(s.Wanted, mostCycles)
	on := math.Ceil(s.Run/float64(n) - 1e-9)
	if n == 1 { // one rest as long as the window
		s.Off = math.Ceil(max(0, last-first)/60) * 60
	} else {
		s.Off = max(1, math.Floor(((last-first)/float64(n-1)-on)/60)) * 60
	}
	if t.Window == plan.ByLight {
		// The window's end is the evening's: as many shots as begin before it.
		on, n = enough(s.Run, s.Off, last-first)
	}
	s.judge(on)
	s.Given = on * float64(n)
	for k := range n {
		s.Shots = append(s.Shots, Shot{first + float64(k)*(on+s.Off), on})
	}
	return max(0, s.Shots[n-1].At-last, on-max(last-first, MostShot))
}

// enough returns the least whole number of seconds on that gives so many in all,
// and how many shots that makes: as many as begin within the window, with off
// seconds between them. It is over by less than a second a shot.
//
// The longer each is, the fewer there are. So with fewer seconds than all of
// them take from as many shots as there are now, it is never enough, and each
// step goes there at once. A step without an end comes with fewer shots, of
// which a window has some hundreds.
func enough(run, off, window float64) (on float64, n int) {
	count := func() int { return 1 + int(window/(on+off)) }
	on = 1
	on = math.Ceil(run/float64(count()) - 1e-9)
	for n = count(); on*float64(n) < run-1e-6; n = count() {
		on = max(on+1, math.Ceil((run-1e-6)/float64(n)))
	}
	return on, n
}

// mostCycles is how many shots of the least time, with the least rest of a
// minute between them, a day has room for. Where that is not enough each takes
// longer, and they do not fit either.
const mostCycles = 24 * 3600 / (LeastShot + 60)

// fare works out what each bed gets.
func (s *Setting) fare(lit dose.Sunlit) {
	gap := 1.0 // as a share of the day's radiation
	if n := len(s.Shots); n > 1 {
		gap = 0
		for k := 1; k < n; k++ {
			gap = max(gap, lit.Share(s.Shots[k].At)-lit.Share(s.Shots[k-1].At))
		}
		gap = max(gap, 1-lit.Share(s.Shots[n-1].At)+lit.Share(s.Shots[0].At))
	}
	for i := range s.Beds {
		f := &s.Beds[i]
		f.Given = s.Given * f.Bed.Mean
		f.Worst = s.Given * f.Bed.Least
		f.Drain = dose.Drain(f.Use, f.Given)
		f.Gap = gap * f.Use
		if f.Gap > f.Bed.Easy {
			s.Notes |= Dry
		}
	}
}
