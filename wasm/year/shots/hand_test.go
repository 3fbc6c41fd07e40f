package shots

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/season"
)

// By hand, as a grower would: 1.5 L of use and a fifth to drain is 1.875 L, at
// 2 L/h 56.25 minutes. A shot of 3 % of 16/3 L takes 4.8 minutes, so five are
// the most: twelve of them give 60. With half of the use 28.125 minutes make six
// of five, 30; seven of five are 35, eight of four 32. On a hot day with 2.4 L and
// 30 % to drain, 102.86 minutes take 21 shots of five; with twelve starts each
// takes nine, 108, of which twelve are needed. Eleven of these starts come before
// half past five, the end of a typical day's shots: with eleven each takes six,
// and ten of them are enough.
func TestHandByHand(t *testing.T) {
	tm := timer()
	b := Bed{Zone: 1, Plants: 30, Root: 16.0 / 3 * litre, Easy: litre, Least: 2 * lph, Mean: 2 * lph, days: 14}
	b.Use = [Skies]float64{0.75 * litre, 1.5 * litre, 2.4 * litre, 2.4 * litre}
	tm.DrainLow = tm.Drain
	lines := []Line{{From: 100, Days: 14, Lit: dose.Of(6*hour, 20*hour), Beds: []Bed{b}}}
	h := setLines(tm, lines)
	for sky, want := range [...]struct {
		n     int
		long  float64
		notes Note
	}{{6, 300, 0}, {10, 360, Few}, {12, 540, Few | Long}, {12, 540, Few | Long}} {
		s := &lines[0].Sets[sky].Zones[0]
		if len(s.Shots) != want.n || s.Given != float64(want.n)*want.long || s.Notes != want.notes {
			t.Errorf("sky %d: %d shots, %g s in all, notes %b; want %d of %g s, notes %b", sky, len(s.Shots), s.Given, s.Notes, want.n, want.long, want.notes)
		}
	}
	// From 7:30 to 18:30 of a hot day: twelve at quarters, apart by more in the
	// morning and the evening.
	times := slices.Clone(h.Starts)
	slices.Sort(times)
	if len(times) != 12 || times[0] != 7.5*hour || times[11] > 18.5*hour || times[1]-times[0] < times[6]-times[5] {
		t.Errorf("starts at %v", times)
	}
	early := 0
	for _, at := range times {
		if at <= 17.5*hour {
			early++
		}
	}
	if early != 11 {
		t.Errorf("%d of %v by half past five", early, times)
	}
	if s := &lines[0].Sets[Hot].Zones[0]; s.Wanted != 21 {
		t.Errorf("%d shots wanted on a hot day, want 21", s.Wanted)
	}
	// Fewer shots use the first of the list, and stand spread over the day: of six
	// no two are neighbours but where the sun is low.
	gap := 0.0
	six := lines[0].Sets[Dull].Zones[0].Shots
	for k := 1; k < len(six); k++ {
		gap = max(gap, six[k].At-six[k-1].At)
	}
	if six[0].At > 9.5*hour || six[5].At < 16*hour || gap > 3*hour {
		t.Errorf("six shots at %v", six)
	}
}

// handful is some lines of random beds in the same zones.
func handful(r *rand.Rand, tm *plan.Timer) []Line {
	tm.Kind, tm.Card = plan.StartTimes, plan.ByHand
	zones, lit := 1+r.IntN(4), randomLit(r)
	if r.IntN(6) == 0 {
		zones = plan.MaxZones
	}
	var lines []Line
	for range 1 + r.IntN(6) {
		l := Line{From: 100 + day.Day(14*len(lines)), Days: 14, Lit: lit}
		for zone := 1; zone <= zones; zone++ {
			for range r.IntN(3) {
				b := randomBed(r, zone)
				b.days, b.taken = l.Days, float64(l.Days)*b.Use[Typical]*r.Float64()
				l.Beds = append(l.Beds, b)
			}
		}
		lit.Rise += 0.5 * hour * r.Float64()
		lit.Set -= 0.5 * hour * r.Float64()
		lit = dose.Of(lit.Rise, lit.Set)
		lines = append(lines, l)
	}
	return lines
}

// least is the least time in s that at most free equal shots of whole steps give
// in all, when it is to be enough and none may be longer than need be, nor
// shorter than it should: by trying them all.
func least(tm *plan.Timer, need, most float64, free int) float64 {
	step := float64(tm.Step)
	whole := func(s float64) float64 {
		n := math.Round(s / step)
		for n*step < s-1e-6 {
			n++
		}
		return max(1, n) * step
	}
	many := 1
	for n := 2; n <= free; n++ {
		if whole(need/float64(n)) >= LeastShot {
			many = n
		}
	}
	limit := max(whole(most), whole(need/float64(many)))
	first, best := 0, math.Inf(1)
	for n := 1; n <= many; n++ {
		long := whole(need / float64(n))
		if long > limit {
			continue
		}
		if first == 0 {
			first = n
		}
		if n <= first+2 {
			best = min(best, float64(n)*long)
		}
	}
	return best
}

func TestHandOfRandomLines(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	settings, crowded, bent := 0, 0, 0
	for range 600 {
		tm := randomTimer(r)
		lines := handful(r, tm)
		h := setLines(tm, lines)
		if len(h.Starts) > tm.Programmes {
			t.Fatalf("%d starts, the timer holds %d", len(h.Starts), tm.Programmes)
		}
		for i, at := range h.Starts {
			if math.Mod(at, Quarter) != 0 || slices.Contains(h.Starts[:i], at) {
				t.Fatalf("starts %v", h.Starts)
			}
		}
		for i := range lines {
			l := &lines[i]
			for sky := range l.Sets {
				d := &l.Sets[sky]
				w := windowOf(tm, l.Lit, Sky(sky))
				type spell struct{ from, to float64 }
				var spells []spell
				free := 0
				for _, at := range h.Starts {
					if at >= w.first-Quarter/2 && at < w.last+Quarter/2 {
						free++
					}
				}
				for k := range d.Zones {
					s := &d.Zones[k]
					settings++
					if len(s.Shots) == 0 || len(s.Shots) > tm.Programmes || s.Given < s.Run-1e-5 {
						t.Fatalf("%+v\n%+v", tm, s)
					}
					sum := 0.0
					for _, shot := range s.Shots {
						sum += shot.For
						spells = append(spells, spell{shot.At, shot.At + shot.For})
						at := h.Start(s.Zone, shot)
						if shot.For != s.Shots[0].For || math.Mod(shot.For, float64(tm.Step)) != 0 || at < 0 {
							t.Fatalf("%+v\n%+v", tm, s)
						}
						if start := h.Starts[at]; free > 0 && (start < w.first-Quarter/2 || start > w.last+Quarter/2) {
							t.Fatalf("a start at %g h, the window is from %g to %g h", start/hour, w.first/hour, w.last/hour)
						}
					}
					if free == 0 {
						bent++
						if len(s.Shots) != 1 {
							t.Fatalf("no start is within the light, and %d are used", len(s.Shots))
						}
					}
					if sum != s.Given {
						t.Fatalf("gives %g s, the shots %g", s.Given, sum)
					}
					if s.Notes&Crowded != 0 {
						crowded++
					}
					// No plant lacks.
					for _, f := range s.Beds {
						if f.Use > 0 && dose.Drain(f.Use, f.Worst) < f.Bed.Wanted(tm, Sky(sky))-1e-9 {
							t.Fatalf("a plant drains less than it should: %+v", f)
						}
					}
					// Of what is possible close to the least; a hotter day gives no less.
					need, cooler := s.Run, (*Setting)(nil)
					if sky > 0 {
						if cooler = l.Sets[sky-1].Zone(s.Zone); cooler != nil {
							need = max(need, cooler.Given)
							if s.Given < cooler.Given || len(s.Shots) < len(cooler.Shots) {
								t.Fatalf("under sky %d %+v\nafter %+v", sky, s, cooler)
							}
						}
					}
					if best := least(tm, need, s.Most, max(1, min(free, tm.Programmes))); cooler == nil && s.Given > best*(1+Spare)+1e-6 {
						t.Fatalf("%+v\ngives %g s for %g in %d of %d shots, %g is possible:\n%+v", tm, s.Given, need, len(s.Shots), free, best, s)
					}
				}
				// No two zones run at once.
				slices.SortFunc(spells, func(a, b spell) int { return int(a.from - b.from) })
				for k := 1; k < len(spells); k++ {
					if spells[k].from < spells[k-1].to {
						t.Fatalf("%+v\nshots overlap: %v", tm, spells)
					}
				}
			}
			// In the same light more shots use the same starts and some more.
			for k := range l.Sets[Dull].Zones {
				dull := &l.Sets[Dull].Zones[k]
				typical := l.Sets[Typical].Zone(dull.Zone)
				for _, shot := range dull.Shots {
					if !slices.ContainsFunc(typical.Shots, func(s Shot) bool { return s.At == shot.At }) {
						t.Fatalf("a dull day begins at %g, and a typical one does not: %v", shot.At, typical.Shots)
					}
				}
			}
		}
	}
	if settings < 5000 || crowded < 50 || bent == 0 {
		t.Errorf("%d settings, %d crowded, %d beyond the light", settings, crowded, bent)
	}
}

// More need never gives less, but for what is spared a change.
func TestMoreNeedGivesNoLess(t *testing.T) {
	r := rand.New(rand.NewPCG(33, 34))
	for range 3000 {
		tm := randomTimer(r)
		s := Setting{Run: 60 + 2e4*r.Float64(), Most: LeastShot + (MostShot-LeastShot)*r.Float64()}
		free := 1 + r.IntN(20)
		was := choose(tm, &s, free, run{}, run{})
		more := s
		more.Run *= 1 + r.Float64()
		is := choose(tm, &more, free, run{}, run{})
		if is.all() < was.all()/(1+Spare)-float64(tm.Step*free) || is.all() < more.Run-1e-5 {
			t.Fatalf("%+v, %d free: %g s give %v, %g s give %v", tm, free, s.Run, was, more.Run, is)
		}
		// What was set before stays while it serves.
		if kept := choose(tm, &s, free, run{}, was); kept != was {
			t.Fatalf("%v becomes %v with nothing changed", was, kept)
		}
	}
}

// What a finer card saves is what it gives less, and that drained: of all water,
// by hand, in lines of 14 and 7 days.
func TestWhatAFinerCardSaves(t *testing.T) {
	tm := timer()
	b := Bed{Zone: 1, Plants: 30, Root: 16.0 / 3 * litre, Easy: litre, Least: 2 * lph, Mean: 2 * lph, days: 14, taken: 14 * 1.4 * litre}
	b.Use = [Skies]float64{0.75 * litre, 1.5 * litre, 2.4 * litre, 2.4 * litre}
	after := b
	after.days, after.taken = 7, 7*1.5*litre
	lines := []Line{{From: 100, Days: 14, Lit: dose.Of(6*hour, 20*hour), Beds: []Bed{b}}, {From: 114, Days: 7, Lit: dose.Of(6*hour, 20*hour), Beds: []Bed{after}}}
	for _, card := range []int{plan.ByHand, plan.Finer} {
		tm.Card = card
		setLines(tm, lines)
		f := fineOf(tm, lines)
		// 60 min by hand, 57 min finer, 2 L/h, 30 plants, 21 days.
		saves := 3.0 / 60 * 2 * litre * 30 * 21
		drained := 30 * (21*2*litre - 14*1.4*litre - 7*1.5*litre)
		if math.Abs(f.Saves-saves) > 1e-9 || math.Abs(f.Drained-drained) > 1e-9 || f.Settings != 1 || f.Finer != 1 {
			t.Errorf("card %d: %+v, want %g m³ saved of %g", card, f, saves, drained)
		}
	}
	tm.Kind = plan.Dial
	if setLines(tm, lines); fineOf(tm, lines) != nil {
		t.Error("a dial has a finer card")
	}
	r := rand.New(rand.NewPCG(35, 36))
	for range 200 {
		tm := randomTimer(r)
		lines := handful(r, tm)
		setLines(tm, lines)
		if f := fineOf(tm, lines); f.Saves < -1e-12 || f.Saves > f.Drained+1e-12 {
			t.Fatalf("%+v", f)
		}
	}
}

// Lines that are set alike are one.
func TestSpansOfTheMillraceTunnel(t *testing.T) {
	p := plan.Default()
	y := year(p)
	c := y.Card()
	spans := c.Spans(0)
	days := 0
	for i, s := range spans {
		days += s.Days
		if i > 0 {
			was := spans[i-1]
			if s.From != was.From+day.Day(was.Days) || s.First != was.Last+1 {
				t.Errorf("%+v after %+v", s, was)
			}
		}
		for k := s.First; k <= s.Last; k++ {
			for sky := Dull; sky <= Hot; sky++ {
				if !slices.Equal(c.Lines[k].Sets[sky].Zones[0].Shots, c.Lines[s.First].Sets[sky].Zones[0].Shots) {
					t.Errorf("line %d is not set as line %d", k, s.First)
				}
			}
		}
	}
	all := 0
	for i := range c.Lines {
		all += c.Lines[i].Days
	}
	if days != all || len(spans) >= len(c.Lines) || c.Fine.Settings != len(spans) {
		t.Errorf("%d spans of %d days, %d lines of %d; %+v", len(spans), days, len(c.Lines), all, c.Fine)
	}
	if len(c.Spans(1)) != len(spans) || len(c.Spans(2)) != 1 {
		t.Errorf("zone 1 %d, zone 2 %d", len(c.Spans(1)), len(c.Spans(2)))
	}
}

// A change of the timer is a task on the day from which it is so, and says what
// the card says.
func TestChangesAreTasks(t *testing.T) {
	p := plan.Default()
	p.Rows[2].Zone, p.Rows[3].Zone = 2, 2
	y := year(p)
	c := y.Card()
	tasks, spans := c.Tasks(2), c.Spans(0)
	if len(tasks) != len(spans) || len(tasks) < 3 {
		t.Fatalf("%d tasks, %d settings", len(tasks), len(spans))
	}
	set := map[int]season.ZoneTiming{}
	for i, k := range tasks {
		if k.Day != spans[i].From || k.Number != i || k.Kind != season.Resetting || k.Planting != -1 || k.Last() != k.Day {
			t.Errorf("%+v, want it on %s", k, spans[i].From.ISO())
		}
		changed := false
		for _, z := range k.Timer.Zones {
			was := set[z.Zone]
			changed = changed || !slices.Equal(was.Typical.At, z.Typical.At) || was.Typical.Long != z.Typical.Long || was.Hot.Long != z.Hot.Long || was.Dull.Long != z.Dull.Long || !slices.Equal(was.Hot.At, z.Hot.At) || !slices.Equal(was.Dull.At, z.Dull.At)
			set[z.Zone] = z
		}
		if !changed {
			t.Errorf("task %d changes nothing", i)
		}
		// With what was set before, that is the line's setting of each zone.
		for zone := 1; zone <= 2; zone++ {
			for sky, told := range [...]season.Shots{Dull: set[zone].Dull, Typical: set[zone].Typical, Hot: set[zone].Hot} {
				s := c.Lines[spans[i].First].Sets[sky].Zone(zone)
				if s == nil != (len(told.At) == 0) || s != nil && (len(s.Shots) != len(told.At) || s.Given != float64(told.Many)*told.Long || s.Shots[0].At != told.At[0]) {
					t.Errorf("task %d, zone %d, sky %d: %+v, the card has %+v", i, zone, sky, told, s)
				}
			}
		}
	}
	if one := year(plan.Default()).Card().Tasks(1); one[0].Timer.Zones[0].Zone != 0 {
		t.Errorf("a plan of one zone names it: %+v", one[0].Timer)
	}
	if got := (*Card)(nil).Tasks(1); got != nil {
		t.Errorf("no card has tasks: %v", got)
	}
}

// From a day on with plants that take up a tenth more: the same starts, no plant
// lacks, and what is before is gone. With as much as before it is the card.
func TestAfterAReading(t *testing.T) {
	for _, card := range []int{plan.ByHand, plan.Finer} {
		p := plan.Default()
		p.Timer.Card = card
		c := year(p).Card()
		from := c.Lines[c.Peak].From + 5
		same := c.After(&p.Timer, from, 1)
		if same.Lines[0].From != from || same.Lines[0].Days != c.Lines[c.Peak].Days-5 || len(same.Lines) != len(c.Lines)-c.Peak || same.Peak != 0 {
			t.Fatalf("%+v", same.Lines[0])
		}
		for _, times := range []float64{0.9, 1.1, 4} {
			a := c.After(&p.Timer, from, times)
			if card == plan.ByHand && times < 2 && a.Hand != c.Hand {
				t.Errorf("%g times: other starts", times)
			}
			for i := range a.Lines {
				l, was := &a.Lines[i], &c.Lines[c.Peak+i]
				for sky := range l.Sets {
					s, old := &l.Sets[sky].Zones[0], &was.Sets[sky].Zones[0]
					if math.Abs(s.Run-times*old.Run) > 1e-6 || s.Given < s.Run-1e-6 {
						t.Errorf("%g times: %g s are needed and %g given, were %g and %g", times, s.Run, s.Given, old.Run, old.Given)
					}
					for k := 1; k < len(s.Shots); k++ {
						if s.Shots[k].At < s.Shots[k-1].At+s.Shots[k-1].For {
							t.Errorf("%g times: shots overlap: %v", times, s.Shots)
						}
					}
				}
			}
		}
		if l := &c.Lines[c.Peak]; l.Beds[0].Use[Typical] != same.Lines[0].Beds[0].Use[Typical] || l.Days != 14 {
			t.Errorf("the card itself has changed: %+v", l)
		}
		if end := c.Lines[len(c.Lines)-1]; len(c.After(&p.Timer, end.From+day.Day(end.Days), 1.1).Lines) != 0 {
			t.Error("a card after its end")
		}
	}
}

// What is set after a reading keeps to the card's own starts and whole steps.
func TestFitByTheCard(t *testing.T) {
	r := rand.New(rand.NewPCG(37, 38))
	for range 300 {
		tm := randomTimer(r)
		lines := handful(r, tm)
		c := &Card{Lines: lines}
		c.Hand = setLines(tm, lines)
		for i := range lines {
			for k := range lines[i].Sets[Typical].Zones {
				was := &lines[i].Sets[Typical].Zones[k]
				run := was.Given * (0.7 + 0.6*r.Float64())
				s, ok := c.Fit(tm, &lines[i], was.Zone, Typical, run)
				if !ok || s.Given < run-1e-5 || len(s.Shots) > tm.Programmes {
					t.Fatalf("%g s: %+v", run, s)
				}
				for _, shot := range s.Shots {
					if c.Hand.Start(s.Zone, shot) < 0 || shot.For != s.Shots[0].For || math.Mod(shot.For, float64(tm.Step)) != 0 {
						t.Fatalf("%g s: %+v", run, s)
					}
				}
			}
		}
		if _, ok := c.Fit(tm, &lines[0], plan.MaxZones, Typical, 0); ok {
			t.Fatal("no water at all is set")
		}
	}
}

// A card that goes by a reading from a day on is that of before until then; from then on no
// plant lacks, starts and steps are those of the timer, and its days are each in one line.
func TestACardCorrected(t *testing.T) {
	r := rand.New(rand.NewPCG(39, 40))
	kept := 0
	for range 200 {
		p := plan.Default()
		p.Timer = *randomTimer(r)
		y := year(p)
		was := y.Card()
		if !was.Ready() {
			continue
		}
		first, end := was.Lines[0].From, was.Lines[len(was.Lines)-1]
		p.Sky.Since, p.Sky.Adjust = int(first)+1+r.IntN(int(end.From-first)), 0.6+r.Float64()
		plain := y.Use
		y.Use = func(g int, d day.Day) (use [Skies]float64) {
			use = plain(g, d)
			for sky := range use {
				use[sky] *= p.Sky.AdjustOn(d)
			}
			return use
		}
		c := y.Card()
		on := day.Day(p.Sky.Since)
		next := first
		for i := range c.Lines {
			l := &c.Lines[i]
			if l.From != next || l.From < on && l.From+day.Day(l.Days) > on {
				t.Fatalf("line %d is of %d days from %s, and the reading from %s", i, l.Days, l.From.ISO(), on.ISO())
			}
			next = l.From + day.Day(l.Days)
			for sky := range l.Sets {
				for _, s := range l.Sets[sky].Zones {
					if s.Given < s.Run-1e-6 || p.Timer.Kind == plan.StartTimes && len(s.Shots) > p.Timer.Programmes {
						t.Errorf("%g s in %d shots, %g needed, %d starts", s.Given, len(s.Shots), s.Run, p.Timer.Programmes)
					}
				}
			}
		}
		if next != end.From+day.Day(end.Days) {
			t.Fatalf("ends %s, not %s", next.ISO(), (end.From + day.Day(end.Days)).ISO())
		}
		if c.Hand != nil && slices.Equal(c.Hand.Starts, was.Hand.Starts) {
			kept++
		}
	}
	if kept < 20 {
		t.Errorf("the starts stay %d times", kept)
	}
}
