package sheet

import (
	"slices"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/parts"
)

// A Wanted is the pump to ask for in a shop, where the plan has none of a known
// curve: one that gives Least or more at Flow, and Most or less with everything
// shut. Where Does is true the answer is Yes with every one that is so ([drive]), but for what
// is no matter of the pump, and with one that gives less at Flow, or more shut, it need not be.
//
// All of the sheet is worked out with one such pump, the parabola of
// Layout.Plan: through Least at Flow, at four fifths of its shut-off head or, where
// that is more than Most, with Most shut.
//
// Where Does is false no pump does it as the plan stands. Least and Flow are then
// what it would take if nothing were too much for anything, and Least is 0 where it
// takes more than the form does; the sheet is that of such a pump.
type Wanted struct {
	Least     float64 // m
	Flow      float64 // m³/s
	Most      float64 // m; behind a regulator what the form takes
	Regulator float64 // Pa, of a regulator behind the pump; 0 for none
	Does      bool
}

// watered says whether the answer is Yes, or would be but for what is no matter of
// the pump: rows that do not fit the place, and rows with emitters that do not
// belong together.
func (s *Sheet) watered() bool {
	return !slices.ContainsFunc(s.Findings, func(f Finding) bool {
		return f.Kind != OutsidePlace && f.Kind != Unlike && Kinds[f.Kind].Verdict != Yes
	})
}

// leastPump is the least shut-off head in m that the form takes: a pump of less is
// not asked for, also where the water nearly falls far enough by itself.
func leastPump() float64 { return plan.FieldNamed("supply", "shut-off").Min }

// provided gives a plan without a known pump the one that it takes; see [Wanted].
func provided(told *plan.Plan, m *work.Meter) (*plan.Plan, *Wanted) {
	p := told.Clone()
	p.Supply.Regulator, p.Supply.Devices = 0, 0 // of another kind of supply: the form does not ask
	s := &Sheet{Plan: p, Layout: layout.Metered(p, m)}
	for _, z := range s.Layout.Zones {
		s.Zones = append(s.Zones, ZoneResult{Zone: z})
	}
	t := trial{s: s, sought: true, loose: true}
	t.head, t.flow, t.within = duty(s, leastPump(), layout.Lead)
	d, with, ok := t.demanded()
	if !ok && d.least > 0 && t.higher(d.least) {
		d, with, ok = t.demanded()
	}
	if !ok && d.least > 0 {
		// The weakest that it would take, which hardly gives more shut: a stronger
		// one may do, and not every one.
		const weakest = 1.001
		with = p.Clone()
		with.Supply.Kind, with.Supply.Points = plan.PumpPoints, []plan.Point{{Head: d.least * weakest}, {Flow: d.flow / 2, Head: d.least * (1 + weakest) / 2}, {Flow: d.flow, Head: d.least}}
	}
	if d.least == 0 || len(with.Check()) > 0 {
		with, d = p.Clone(), drive{}
		with.Supply.Kind = plan.PumpTwo
		with.Supply.ShutOff, with.Supply.MaxFlow = design.MostHead, plan.FieldNamed("supply", "max-flow").Max
	}
	return with, &Wanted{Least: d.least, Flow: d.flow, Most: d.most, Regulator: d.regulator, Does: ok}
}

// bought is the pump as it is put on the list of parts; nil where none will do, or
// the plan has one.
func (w *Wanted) bought() *parts.Pump {
	if w == nil || !w.Does {
		return nil
	}
	b := &parts.Pump{Least: w.Least, Flow: w.Flow, Most: w.Most}
	if w.Regulator > 0 {
		b.Most = 0
	}
	return b
}

// higher looks for a head above one at which the plan wants nothing but more of
// it, such as emitters that are more even at a higher one, and returns whether there
// is one that is enough. It is the trial's then.
func (t *trial) higher(least float64) bool {
	const step, fine = 1.15, 0.1 // the latter in m
	lo := least
	for range 12 {
		hi := lo * step
		s := level(t.s.meter(), t.s.Plan, hi)
		switch {
		case hi > design.MostHead || s.over() > 0:
			return false
		case !t.will(s):
			lo = hi
			continue
		}
		for hi-lo > fine {
			mid := (lo + hi) / 2
			if t.will(level(t.s.meter(), t.s.Plan, mid)) {
				hi = mid
			} else {
				lo = mid
			}
		}
		t.head, t.flow = hi, level(t.s.meter(), t.s.Plan, hi).drawn()
		return true
	}
	return false
}
