package flush

import (
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
)

// A Verdict says whether the water carries the dirt out at every end.
type Verdict uint8

const (
	Clean     Verdict = iota // with one end open at a time
	CleanShut                // with one end open at a time and the other rows shut, and not while they run
	Dry                      // no water comes to the end that is told of
	Shared                   // the rows share what leaves the far header of a ring
	Weak                     // the end that is told of needs more flow
	WeakShut                 // also with the other rows shut
	Verdicts  = iota         // how many there are
)

// Judge says what the speeds at the ends come to.
func (f *Flush) Judge(l *layout.Layout) {
	f.Told = f.Slowest
	weakest := 0
	for i := range f.Ends {
		e := &f.Ends[i]
		f.Draws = max(f.Draws, e.Flow)
		if e.Alone < f.Ends[weakest].Alone {
			weakest = i
		}
	}
	f.Least = f.Ends[weakest].Alone
	if f.Stuck > 0 {
		f.Told = weakest
	}
	f.Verdict = f.verdict(l.Plan.Header.Layout != plan.OneLine && len(l.Plan.Rows) > 1)
	if s := &l.Plan.Supply; s.Kind == plan.PumpPoints && len(s.Points) > 0 {
		if last := s.Points[len(s.Points)-1].Flow; f.Draws > last {
			f.Guess = last
		}
	}
}

// verdict says whether the ends can be flushed. others says whether there are
// other rows that can be shut.
func (f *Flush) verdict(others bool) Verdict {
	told := &f.Ends[f.Told]
	switch {
	case f.Slow == 0:
		return Clean
	case f.Stuck == 0:
		return CleanShut
	case !(told.Alone > 0):
		return Dry
	case told.Place == RowInto:
		return Shared
	case others:
		return WeakShut
	}
	return Weak
}
