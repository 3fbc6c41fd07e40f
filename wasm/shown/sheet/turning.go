package sheet

import (
	"math"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
)

// A Rest is what the answer rests on: the values that nobody has typed or
// measured, each moved by itself through the range that it may really have, and
// the plan solved again. What was typed is the grower's word, but for the
// pressure and the flow of a tap, of which only a measurement is proof; see
// [plan.Field.Doubted].
//
// Values of one field that are the same in several records are moved together,
// as one thing: nobody assumes a slope for each of forty rows. So are the points
// of a pump's curve, in proportion. Where a pump is still to be bought nothing is
// moved: what is assumed makes it another pump, and not another answer.
type Rest struct {
	Turns    []Turn // those that would turn the answer, the most delicate first
	Steady   int    // how many things cannot turn it
	Untested int    // how many were not tried, because it takes too much work
}

// A Turn is one thing that would turn the answer: make it another than it is.
type Turn struct {
	Field     *plan.Field
	Records   []int      // from 0; the first is the one that the figures are of
	From      float64    // what is assumed, in the field's inner unit
	Low, High float64    // what it may really be
	Ends      [2]TurnEnd // downwards and upwards from there
	Margin    float64    // the least of its ends'
}

// A TurnEnd is where the answer turns on one side of what is assumed. Still and At
// are two values that follow one another on a scale of the plan's units, so that
// what is printed is what was solved; either may be an end of the range, and Still
// what is assumed.
type TurnEnd struct {
	Turns  bool
	Still  float64 // the farthest value with which the answer was found to be what it is
	At     float64 // the nearest with which it was found to be another
	To     Verdict // which
	Margin float64 // how far At is, as a share of the way from what is assumed to the end of the range
}

// turning bounds the work, which comes with the answer: about a fifth of a second.
const turning = 10_000_000

// fineness is how many steps of the scale there are at least on the way to an end
// of a range.
const fineness = 20

// between are the places, in quarters of the way, at which an answer that is not
// yes is looked for between what is assumed and the end of its range: there may be
// too little on the one side and too much on the other.
const between = 4

// rests finds what the answer rests on.
func rests(s *Sheet) *Rest {
	r := &Rest{}
	if s.Verdict == Cannot {
		return r
	}
	all := doubts(s.Plan)
	if s.Wanted != nil {
		r.Untested = len(all) // each time another pump would be asked for
		return r
	}
	bound := min(turning, s.meter().Left())
	m := work.New(bound, s.gone)
	whole := m.Within(func() {
		for i := range all {
			t := all[i].turn(s, m)
			if t.Ends[0].Turns || t.Ends[1].Turns {
				r.Turns = append(r.Turns, t)
			} else {
				r.Steady++
			}
		}
	})
	used := bound - m.Left()
	if m.Gone() || bound < turning && !whole {
		used = s.meter().Left() + 1 // and so it is left out, or of no use
	}
	s.meter().Spend(min(used, bound+1))
	r.Untested = len(all) - len(r.Turns) - r.Steady
	list := r.Turns
	// Each at its place, so that equals stay in the order of the page.
	for i := range list {
		for k := i; k > 0 && list[k].Margin < list[k-1].Margin; k-- {
			list[k], list[k-1] = list[k-1], list[k]
		}
	}
	return r
}

// Doubted reports whether the answer rests on anything that is not known, explored
// or not.
func (s *Sheet) Doubted() bool { return s.Verdict != Cannot && len(doubts(s.Plan)) > 0 }

// Sure reports whether the answer is so whatever is assumed, as far as it was
// found out.
func (s *Sheet) Sure() bool {
	if s.Rest == nil || s.Left[Turning] {
		return !s.Doubted()
	}
	return len(s.Rest.Turns)+s.Rest.Untested == 0
}

// A doubt is one thing that is not known.
type doubt struct {
	field     *plan.Field
	records   []int
	from      float64
	low, high float64
}

// doubts are all of a plan, in the order of the page.
func doubts(p *plan.Plan) []doubt {
	var all []doubt
	for _, f := range plan.Fields() {
		if f.Range == nil {
			continue
		}
		first, n := len(all), plan.SectionNamed(f.Section).Records(p)
	records:
		for i := range n {
			low, high, doubted := f.Doubted(p, i)
			if !doubted {
				continue
			}
			if f.Section == "points" {
				all = append(all, curve(f, p, n))
				break
			}
			for k := first; k < len(all); k++ {
				if d := &all[k]; d.from == f.Value(p, i) {
					d.records = append(d.records, i)
					d.low, d.high = max(d.low, low), min(d.high, high)
					continue records
				}
			}
			all = append(all, doubt{f, []int{i}, f.Value(p, i), low, high})
		}
	}
	return all
}

// curve is a whole curve of n points of which some are not known: the greatest,
// and all others in proportion.
func curve(f *plan.Field, p *plan.Plan, n int) doubt {
	d := doubt{field: f}
	for i := range n {
		d.records = append(d.records, i)
		if v := f.Value(p, i); v > d.from {
			d.records[0], d.records[i] = i, d.records[0]
			d.from = v
		}
	}
	d.low, d.high = f.Range(p, d.records[0])
	return d
}

// inProportion says whether it is a whole curve.
func (d *doubt) inProportion() bool { return d.field.Section == "points" }

// moved is the plan with another value.
func (d *doubt) moved(p *plan.Plan, v float64) *plan.Plan {
	q := p.Clone()
	for _, i := range d.records {
		x := v
		if d.inProportion() {
			x = d.field.Value(p, i) * (v / d.from)
		}
		d.field.SetValue(q, i, x)
	}
	return q
}

// turn looks where the answer turns.
func (d *doubt) turn(s *Sheet, m *work.Meter) Turn {
	t := Turn{Field: d.field, Records: d.records, From: d.from, Low: d.low, High: d.high, Margin: math.Inf(1)}
	for side, end := range [...]float64{d.low, d.high} {
		if end == d.from {
			continue
		}
		scale := newScale(d.field, s.Plan.Units, d.from, end)
		verdict := func(k int) Verdict { return assess(d.moved(s.Plan, scale.at(k)), m).Verdict }
		same, other := 0, 0
		looks := between
		if s.Verdict == Yes {
			looks = 1 // what is wrong nearer to what is right than the end is wrong at the end
		}
		to := s.Verdict
		for look := range looks {
			k := max(1, scale.steps*(look+1)/looks)
			if to = verdict(k); to != s.Verdict {
				other = k
				break
			}
			same = k
		}
		if other == 0 {
			continue
		}
		for other-same > 1 {
			k := (same + other) / 2
			if v := verdict(k); v != s.Verdict {
				other, to = k, v
			} else {
				same = k
			}
		}
		e := &t.Ends[side]
		*e = TurnEnd{true, scale.at(same), scale.at(other), to, 0}
		e.Margin = math.Abs((e.At - d.from) / (end - d.from))
		t.Margin = min(t.Margin, e.Margin)
	}
	return t
}

// A scale goes from what is assumed to an end of its range in steps of one, or of
// ten or a tenth of it and so on, of the unit that the plan is typed in.
type scale struct {
	unit      unit.Unit
	from, end float64 // inner
	first     int     // number of steps from zero to the first place behind from
	down      bool
	steps     int     // to the end
	ten       float64 // what a unit is divided by for a step, or multiplied with where many is set
	many      bool
}

func newScale(f *plan.Field, sys unit.System, from, end float64) scale {
	sc := scale{unit: unit.Of(f.Kind, sys), from: from, end: end, down: end < from, ten: 1}
	a, b := sc.unit.FromInner(from), sc.unit.FromInner(end)
	if f.Type == plan.Whole {
		a, b = from, end
		sc.unit = unit.Of(unit.Count, sys)
	} else {
		for math.Abs(b-a)*sc.ten < fineness && sc.ten < 1e9 {
			sc.ten *= 10
		}
		if sc.ten == 1 {
			for sc.many = true; math.Abs(b-a) >= 10*fineness*sc.ten; sc.ten *= 10 {
			}
		}
	}
	a, b = sc.inSteps(a), sc.inSteps(b)
	if sc.down {
		a, b = -a, -b
	}
	sc.first = int(math.Floor(a+rounding)) + 1
	sc.steps = max(1, int(math.Ceil(b-rounding))-sc.first+1)
	return sc
}

func (sc *scale) inSteps(x float64) float64 {
	if sc.many {
		return x / sc.ten
	}
	return x * sc.ten
}

// at is a place of the scale, in the inner unit: 0 what is assumed, and steps the
// end.
func (sc *scale) at(k int) float64 {
	switch k {
	case 0:
		return sc.from
	case sc.steps:
		return sc.end
	}
	n := float64(sc.first + k - 1)
	if sc.down {
		n = -n
	}
	if sc.many {
		return sc.unit.ToInner(n * sc.ten)
	}
	return sc.unit.ToInner(n / sc.ten)
}

// Said is the value that is printed for an end: one with which the answer was
// solved, on the safe side. A grower who measures it has the answer, or, where the
// answer gets better, the better one.
func (e *TurnEnd) Said(now Verdict) float64 {
	if e.To < now {
		return e.At
	}
	return e.Still
}
