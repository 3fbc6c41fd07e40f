package season

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/grower/plan"
)

// A Timing is what the timer is set to from a day on, in the zones in which that
// is something else than before.
type Timing struct{ Zones []ZoneTiming }

// A ZoneTiming is what a zone is set to.
type ZoneTiming struct {
	Zone               int // 0 where the plan has one only
	Dull, Typical, Hot Shots
}

// Shots are those of a day.
type Shots struct {
	At    []float64 // s after midnight, when each begins, rising; none where nothing is given
	Many  int       // so many take Long s
	Long  float64
	Few   int // and the others Short s; may be 0
	Short float64
	Off   float64 // s of rest between two, of a timer that goes on and off; else 0
}

// String is how the timer is set: "8 × 6 min", "9 × 5 min + 3 × 4 min".
func (s *Shots) String() string {
	if len(s.At) == 0 {
		return words.Say("off")
	}
	const times = "\u00a0×\u00a0" // a narrow column breaks at the plus only
	text := strconv.Itoa(s.Many) + times + unit.MinutesSeconds(s.Long)
	if s.Few > 0 {
		text += " + " + strconv.Itoa(s.Few) + times + unit.MinutesSeconds(s.Short)
	}
	if s.Off > 0 && s.Many > 1 {
		return words.Say("{shots}, off {rest}", text, unit.MinutesSeconds(s.Off))
	}
	return text
}

// when is how the timer is set, and the times of the shots.
func (s *Shots) when(sys unit.System) string {
	n := len(s.At)
	switch {
	case n == 0:
		return s.String()
	case s.Off > 0:
		return words.Say("{shots}, the first at {first}, the last at {last}", s.String(), unit.Clock(sys, s.At[0]), unit.Clock(sys, s.At[n-1]))
	}
	var times []string
	for _, at := range s.At {
		times = append(times, unit.Clock(sys, at))
	}
	return words.Say("{shots} at {times}", s.String(), words.List(times...))
}

// String is the setting of a typical day: "8 × 6 min", or that of each zone.
func (t *Timing) String() string {
	var zones []string
	for i := range t.Zones {
		z := &t.Zones[i]
		if z.Zone == 0 {
			return z.Typical.String()
		}
		zones = append(zones, words.Say("zone {n} {shots}", words.N(z.Zone), z.Typical.String()))
	}
	return words.List(zones...)
}

// How says how a task is done, with what the timer is set to on each kind of
// day, and what to do against what can hurt in it.
func (s *Season) How(p *plan.Plan, t *Task) string {
	said := []string{t.Note()}
	if t.Timer != nil {
		for i := range t.Timer.Zones {
			z := &t.Timer.Zones[i]
			typical, hot, dull := z.Typical.when(p.Units), z.Hot.when(p.Units), z.Dull.when(p.Units)
			if z.Zone > 0 {
				said = append(said, words.Say("Zone {n}, typical day: {typical}. Hot day: {hot}. Dull day: {dull}.", words.N(z.Zone), typical, hot, dull))
			} else {
				said = append(said, words.Say("Typical day: {typical}. Hot day: {hot}. Dull day: {dull}.", typical, hot, dull))
			}
		}
	}
	return words.Sentences(append(said, care.Short(t.Kind.Hazards(), p)...)...)
}
