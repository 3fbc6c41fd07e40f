package shots

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/dose"
)

const (
	litre = 1e-3
	lph   = 1 / 3.6e6
	hour  = 3600.0
)

// timer is the default plan's.
func timer() *plan.Timer { return &plan.Default().Timer }

// randomTimer is any timer that the form takes.
func randomTimer(r *rand.Rand) *plan.Timer {
	t := timer()
	t.Kind = r.IntN(3)
	t.Programmes = 1 + r.IntN(30)
	t.Step = []int{1, 10, 60, 60, 60, 300}[r.IntN(6)]
	t.Window = r.IntN(2)
	t.Shot = 0.005 + 0.1*r.Float64()
	t.DrainLow = 0.2 * r.Float64()
	t.Drain = t.DrainLow + 0.2*r.Float64()
	t.DrainHot = t.Drain + 0.2*r.Float64()
	t.First, t.Last = 4*hour*r.Float64(), 4*hour*r.Float64()
	t.LastHot = t.Last * r.Float64()
	return t
}

func randomBed(r *rand.Rand, zone int) Bed {
	b := Bed{Zone: zone, Plants: 1 + r.IntN(100), Root: litre * (0.65 + 15*r.Float64())}
	b.Easy = b.Root * (0.1 + 0.4*r.Float64())
	b.Least = lph * (0.3 + 8*r.Float64())
	b.Mean = b.Least * (1 + 0.3*r.Float64())
	use := litre * 3 * r.Float64() * r.Float64()
	for sky := range b.Use {
		b.Use[sky] = use
		use *= 1 + 0.5*r.Float64()
	}
	b.Young = r.IntN(4) == 0
	return b
}

func randomLit(r *rand.Rand) dose.Sunlit {
	rise := hour * (3 + 6*r.Float64())
	return dose.Of(rise, rise+hour*(6+12*r.Float64()))
}

// By hand: 1.5 L of use and a fifth to drain is 1.875 L, at 2 L/h 56.25
// minutes, so 57 of a timer of whole minutes. 3 % of 16/3 L is 160 mL, 4.8
// minutes, so 12 shots: nine of five minutes and three of four.
func TestOneBedByHand(t *testing.T) {
	tm := timer()
	b := Bed{Zone: 1, Plants: 30, Root: 16.0 / 3 * litre, Easy: litre, Least: 2 * lph, Mean: 2 * lph}
	b.Use = [Skies]float64{Typical: 1.5 * litre}
	d := Of(tm, []Bed{b}, dose.Of(6*hour, 20*hour), Typical)
	s := &d.Zones[0]
	if math.Abs(s.Run-56.25*60) > 1e-6 || s.Given != 57*60 || s.Wanted != 12 || len(s.Shots) != 12 || s.Notes != 0 || d.Over != 0 {
		t.Fatalf("%+v", d)
	}
	five := 0
	for k, shot := range s.Shots {
		if shot.For == 300 {
			five++
		} else if shot.For != 240 || k > 0 && k < 10 {
			t.Errorf("shot %d of %g s: the shorter ones stand at the ends", k+1, shot.For)
		}
	}
	if first, last := s.Shots[0].At, s.Shots[11].At; five != 9 || first != 7.5*hour || last > 17.5*hour+60 {
		t.Errorf("%d of five minutes, from %g to %g h", five, first/hour, last/hour)
	}
	if f := s.Beds[0]; math.Abs(f.Given-1.9*litre) > 1e-9 || math.Abs(f.Drain-0.4/1.9) > 1e-9 {
		t.Errorf("given %g L, drain %g", f.Given/litre, f.Drain)
	}
	if given, drained := d.Given(); math.Abs(given-57*litre) > 1e-9 || math.Abs(drained-12*litre) > 1e-9 {
		t.Errorf("30 plants: %g L given, %g L drained", given, drained)
	}

	// Eight start times only: fewer, longer shots.
	tm.Programmes = 8
	s = &[]Day{Of(tm, []Bed{b}, dose.Of(6*hour, 20*hour), Typical)}[0].Zones[0]
	if len(s.Shots) != 8 || s.Given != 57*60 || s.Notes != Few|Long {
		t.Errorf("eight start times: %+v", s)
	}
	// A cycle timer: 3375 s in 12 shots of 282 s; 10 h less between first and
	// last in 11 periods of 3272 s, so 49 minutes off.
	tm.Kind = plan.OnAndOff
	s = &[]Day{Of(tm, []Bed{b}, dose.Of(6*hour, 20*hour), Typical)}[0].Zones[0]
	if len(s.Shots) != 12 || s.Shots[5].For != 282 || s.Off != 49*60 || s.Given != 12*282 {
		t.Errorf("on and off: %+v", s)
	}
	// Pins of a quarter of an hour: four of them give an hour.
	tm.Kind = plan.Dial
	s = &[]Day{Of(tm, []Bed{b}, dose.Of(6*hour, 20*hour), Typical)}[0].Zones[0]
	if len(s.Shots) != 4 || s.Given != hour || s.Notes != Long {
		t.Errorf("dial: %+v", s)
	}
}

// Plants that root in beside grown ones do not make the shots small.
func TestYoungPlantsDoNotLimitTheShotsOfGrownOnes(t *testing.T) {
	grown := Bed{Zone: 1, Root: 5 * litre, Easy: litre, Least: 2 * lph, Mean: 2 * lph, Use: [Skies]float64{litre, litre, litre, litre}}
	young := grown
	young.Young, young.Root, young.Use = true, 0.65*litre, [Skies]float64{0.3 * litre, 0.3 * litre, 0.3 * litre, 0.3 * litre}
	lit := dose.Of(6*hour, 20*hour)
	alone := Of(timer(), []Bed{grown}, lit, Typical).Zones[0]
	if both := Of(timer(), []Bed{grown, young}, lit, Typical).Zones[0]; both.Wanted != alone.Wanted {
		t.Errorf("%d shots beside young plants, %d without", both.Wanted, alone.Wanted)
	}
	if few := Of(timer(), []Bed{young}, lit, Typical).Zones[0]; few.Wanted != 5 { // 600 s of two minutes
		t.Errorf("young plants alone: %+v", few)
	}
}

// The thirstiest bed of a zone decides, and the others drain more.
func TestNoPlantLacks(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 3000 {
		tm, lit := randomTimer(r), randomLit(r)
		var beds []Bed
		for zone := 1; zone <= 1+r.IntN(4); zone++ {
			for range 1 + r.IntN(3) {
				beds = append(beds, randomBed(r, zone))
			}
		}
		for sky := range Skies {
			d := Of(tm, beds, lit, Sky(sky))
			check(t, tm, &d, lit)
		}
	}
}

// check holds what is true of every setting.
func check(t *testing.T, tm *plan.Timer, d *Day, lit dose.Sunlit) {
	t.Helper()
	step := float64(tm.Step)
	if tm.Kind == plan.Dial {
		step = Quarter
	}
	for i := range d.Zones {
		s := &d.Zones[i]
		sum := 0.0
		for k, shot := range s.Shots {
			sum += shot.For
			if k > 0 && shot.At < s.Shots[k-1].At+s.Shots[k-1].For {
				t.Fatalf("%+v: shots overlap", s)
			}
		}
		if tm.Kind == plan.OnAndOff {
			step = float64(len(s.Shots)) // each to the second
			if tm.Window == plan.ByLight {
				// A second less would be a second each less of that many shots.
				on := s.Shots[0].For
				step = 1 + (lit.Set-lit.Rise)/max(1, on-1+s.Off)
			}
		}
		// Never less than is needed, and more by less than a step. 1e-6 s is rounding.
		if math.Abs(sum-s.Given) > 1e-6 || s.Given < s.Run-1e-5 || s.Given > s.Run+step+1e-6 {
			t.Fatalf("%+v\n%+v: needs %g s, gives %g", tm, s, s.Run, s.Given)
		}
		if tm.Kind == plan.StartTimes && len(s.Shots) > tm.Programmes {
			t.Fatalf("%d shots with %d start times", len(s.Shots), tm.Programmes)
		}
		least := math.Inf(1)
		for k := range s.Beds {
			f := &s.Beds[k]
			wanted := f.Bed.Wanted(tm, d.Sky)
			left := dose.Drain(f.Use, f.Worst)
			if left < wanted-1e-9 && f.Use > 0 {
				t.Fatalf("a plant drains %g, and %g is wanted: %+v", left, wanted, s)
			}
			if f.Drain < left-1e-9 {
				t.Fatalf("the mean plant drains less than the worst: %+v", s)
			}
			if f.Use > 0 {
				least = min(least, left-wanted)
			}
		}
		// The one that decides gets no more than it needs, but for the step.
		lead := &s.Beds[s.Lead]
		if most := lead.Bed.Least * (s.Run + step); lead.Worst > most*(1+1e-9) {
			t.Fatalf("the thirstiest get %g and need %g", lead.Worst, most)
		}
	}
	// No two zones run at once.
	if tm.Kind == plan.OnAndOff {
		return
	}
	for i := range d.Zones {
		for k := i + 1; k < len(d.Zones); k++ {
			for _, a := range d.Zones[i].Shots {
				for _, b := range d.Zones[k].Shots {
					if a.At < b.At+b.For-1e-6 && b.At < a.At+a.For-1e-6 {
						t.Fatalf("zones %d and %d run at once: %+v %+v", i, k, a, b)
					}
				}
			}
		}
	}
}

// A hotter day never has fewer shots or less water; nor has one with more
// radiation, which is more use.
func TestHotterIsNeverLess(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 3000 {
		tm, lit := randomTimer(r), randomLit(r)
		beds := []Bed{randomBed(r, 1), randomBed(r, 1)}
		was := Setting{}
		for sky := range Skies {
			d := Of(tm, beds, lit, Sky(sky))
			if len(d.Zones) == 0 {
				continue
			}
			s := d.Zones[0]
			slack := 0.0
			if tm.Kind == plan.OnAndOff { // each of its shots is rounded up to a second
				slack = float64(len(was.Shots))
			}
			if tm.Kind == plan.OnAndOff && tm.Window == plan.ByLight {
				was = s // daylight counts its shots
				continue
			}
			if s.Wanted < was.Wanted || len(s.Shots) < len(was.Shots) || s.Given < was.Given-slack {
				t.Fatalf("%+v\nunder sky %d: %d shots, %g s, after %d shots, %g s", tm, sky, len(s.Shots), s.Given, len(was.Shots), was.Given)
			}
			was = s
		}
	}
}

// What does not fit a day is said, and what fits lies within its window.
func TestRoundsFitOrAreOver(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	over := 0
	for range 2000 {
		tm, lit := randomTimer(r), randomLit(r)
		tm.Kind, tm.Step = plan.StartTimes, 60
		var beds []Bed
		for zone := range 1 + r.IntN(12) {
			beds = append(beds, randomBed(r, zone+1))
		}
		d := Of(tm, beds, lit, Hot)
		total, last := 0.0, 0.0
		for i := range d.Zones {
			total += d.Zones[i].Given
			for _, s := range d.Zones[i].Shots {
				last = max(last, s.At)
			}
		}
		room := lit.Set - tm.LastHot - lit.Rise - tm.First
		// Two minutes: the edges of the window are rounded to one each.
		if total > max(0, room)+d.Round+120 && d.Over == 0 {
			t.Fatalf("%g s of water in %g s of day, and nothing is over", total, room)
		}
		if d.Over > 0 {
			over++
		} else if start := lit.Set - tm.LastHot + d.Round + 120; room > 0 && last > start {
			t.Fatalf("the last shot at %g, after %g: %+v", last, start, d)
		}
	}
	if over == 0 || over == 2000 {
		t.Errorf("%d of 2000 days do not fit", over)
	}
}

func TestNothingToSet(t *testing.T) {
	lit := dose.Of(6*hour, 20*hour)
	shut := Bed{Zone: 1, Root: litre, Mean: lph, Use: [Skies]float64{litre, litre, litre, litre}}
	idle := Bed{Zone: 2, Root: litre, Mean: lph, Least: lph}
	if d := Of(timer(), []Bed{shut, idle}, lit, Hot); len(d.Zones) != 0 {
		t.Errorf("%+v", d)
	}
	if d := Of(timer(), nil, lit, Dull); len(d.Zones) != 0 || d.Over != 0 {
		t.Errorf("%+v", d)
	}
	// A day that is shorter than what stands before and after the shots.
	b := Bed{Zone: 1, Root: litre, Mean: lph, Least: lph, Use: [Skies]float64{litre, litre, litre, litre}}
	d := Of(timer(), []Bed{b}, dose.Of(10*hour, 12*hour), Dull)
	if len(d.Zones) != 1 || d.Zones[0].Shots[0].At < 9*hour || math.IsNaN(d.Over) {
		t.Errorf("%+v", d)
	}
}

// A setting for a given time keeps to the limits of the timer: what the card
// gives comes out as the card has it, and more or less as more or less.
func TestFitKeepsToTheTimer(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 2000 {
		tm, lit := randomTimer(r), randomLit(r)
		beds := []Bed{randomBed(r, 1)}
		d := Of(tm, beds, lit, Hot)
		if len(d.Zones) == 0 {
			continue
		}
		was := &d.Zones[0]
		same, ok := Fit(tm, beds, lit, Hot, was.Run)
		if !ok || same.Given != was.Given || len(same.Shots) != len(was.Shots) {
			t.Fatalf("%+v\n%+v, want %+v", tm, same, was)
		}
		more, _ := Fit(tm, beds, lit, Hot, was.Run*(1+r.Float64()))
		less, _ := Fit(tm, beds, lit, Hot, was.Run*r.Float64())
		for _, s := range []*Setting{&more, &less} {
			if len(s.Shots) == 0 || s.Given < s.Run-1e-5 || tm.Kind == plan.StartTimes && len(s.Shots) > tm.Programmes || tm.Kind == plan.Dial && len(s.Shots) > 96 {
				t.Fatalf("%+v\n%+v", tm, s)
			}
			for _, shot := range s.Shots {
				step := map[int]float64{plan.StartTimes: float64(tm.Step), plan.Dial: Quarter, plan.OnAndOff: 1}[tm.Kind]
				if n := shot.For / step; math.Abs(n-math.Round(n)) > 1e-9 || shot.For < step {
					t.Fatalf("%+v\n%+v", tm, s)
				}
			}
		}
	}
	if _, ok := Fit(timer(), []Bed{{Zone: 1, Root: litre}}, dose.Of(6*hour, 20*hour), Hot, 600); ok {
		t.Error("plants without water are given some")
	}
}
