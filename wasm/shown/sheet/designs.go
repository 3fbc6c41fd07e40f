package sheet

import (
	"slices"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/limit"
)

// Designs are what a search for cheaper designs found, each worked out again
// as a whole plan, with the fixes that can be bought at the plan's prices among
// them.
type Designs struct {
	design.Result
	Best    []Best // what the plan's own supply carries, then what it carries behind a regulator set anew, then what takes another one, each cheapest first
	Unequal int    // designs that were left out because the plan as a whole gave another answer
	Unlike  int    // of them, those whose rows that are watered together get other shares of what they need
}

// A Best is one design, with the answer to the plan as a whole.
type Best struct {
	design.Design
	Fix       *Fix       // of the sheet, that it is; nil for one that the search alone found
	Take      *plan.Plan // ready to be taken over: with the supply that stands, where it carries the design, else with one of the least duty
	Margin    float64    // m, of the weakest emitter
	Even      float64    // EU, of the zone whose plants are least alike
	Regulator float64    // Pa, that one behind the supply that stands is set to anew; 0 where it stays as it is
	Weak      bool       // the pump or the tap that stands gives less than Head at Flow, without a regulator
	Wanted    *Wanted    // the pump that it takes, where that is sought; Head and Flow are its
	Round     float64    // s, for one litre to every plant, zones one after another
}

// listed is how many designs of the list are shown.
const listed = 6

// Designs that take so much less are shown beside a cheaper one: in m of a tank,
// or W of a pump; and as a share of its power. Our own choice.
const (
	littleHead  = 0.05
	littlePower = 0.02
)

// searched looks for cheaper designs; nil where a row does not fit the place,
// which no tubing mends, says so in Forbids.
func searched(s *Sheet) *Designs {
	d := &Designs{}
	for _, f := range s.Findings {
		if d.Forbids = Kinds[f.Kind].Breaks & limit.Place.Alone(); d.Forbids != 0 {
			return d
		}
	}
	if s.found == nil {
		s.found = design.Of(s.Plan, split, s.meter())
	}
	d.Result = *s.found
	for i := range d.Own {
		d.check(s, &d.Own[i])
	}
	for _, k := range few(d.List, listed) {
		if c := &d.List[k]; len(d.Own) == 0 || c.Cost != d.Own[0].Cost || c.Power != d.Own[0].Power {
			d.check(s, c)
		}
	}
	for i := range s.Fixes {
		if f := &s.Fixes[i]; f.Solves && f.bought() {
			d.join(s, f)
		}
	}
	// What is carried comes first, and each part rises in cost.
	for i := range d.Best {
		for ; i > 0; i-- {
			a, b := &d.Best[i-1], &d.Best[i]
			if x, y := a.rank(), b.rank(); x < y || x == y && a.Cost <= b.Cost {
				break
			}
			*a, *b = *b, *a
		}
	}
	return d
}

// rank is what a design takes of the supply: it as it stands, a regulator, or
// another one.
func (b *Best) rank() int {
	switch {
	case b.Present:
		return 0
	case b.Regulator > 0:
		return 1
	}
	return 2
}

// bought says whether a fix is one of tubing, feed, zones and supply, and not a
// design that takes another supply: those are looked for anew.
func (f *Fix) bought() bool {
	regulator := f.Kind == AddRegulator || f.And != nil && f.And.Kind == AddRegulator
	other := FixesOf[f.Kind].Emitters || f.And != nil && FixesOf[f.And.Kind].Emitters
	return !other && (f.Kind != Redesign || regulator)
}

// check works a design of a sheet's plan out as a whole.
func (d *Designs) check(of *Sheet, c *design.Design) {
	b := Best{Design: *c, Take: c.Plan}
	s := assess(b.Take, of.meter())
	if w := s.Wanted; w != nil && s.Verdict == Yes {
		b.Head, b.Flow, b.Wanted = w.Least, w.Flow, w
		b.Power = pump.HydraulicPower(s.Layout.Network.Water.Density, w.Flow, w.Least)
		d.add(of, b, s)
		return
	}
	if b.Present = s.Verdict == Yes; !b.Present && s.Wanted == nil {
		if t := (trial{s: s}); t.pressed() || c.Plan.Supply.Regulator > 0 {
			if f := behind(c.Plan, of.meter()); f != nil {
				b.Take, b.Regulator = f.Plan, f.Value
				d.add(of, b, assess(b.Take, of.meter()))
				return
			}
		}
		b.Take = c.Plan.Clone()
		design.Strengthen(b.Take, c.Head, c.Flow)
		s = assess(b.Take, of.meter())
	}
	if s.Verdict != Yes || len(b.Take.Check()) > 0 {
		d.Unequal++
		if (&trial{s: s}).has(Unlike) {
			d.Unlike++
		}
		return
	}
	d.add(of, b, s)
}

// add adds a design of a sheet's plan that is s as a whole.
func (d *Designs) add(of *Sheet, b Best, s *Sheet) {
	p := of.Plan.Clone()
	p.Supply.Regulator = 0
	if c := layout.New(p).Curve; c != nil {
		h, _ := c.Head(b.Flow)
		b.Weak = h < b.Head
	}
	b.Margin, b.Even = s.Zones[s.Critical].Margin, 1
	for i := range s.Zones {
		b.Even = min(b.Even, s.Zones[i].Alike.EU)
	}
	b.Round, _ = s.Round()
	d.Best = append(d.Best, b)
}

// join adds a fix of a sheet, unless it is one of the designs, which it then
// names.
func (d *Designs) join(s *Sheet, f *Fix) {
	for i := range d.Best {
		if b := &d.Best[i]; same(b.Take, f.Plan) || !b.Present && b.Regulator == 0 && f.Driven() && alike(b.Take, f.Plan) {
			if f.Kind != Redesign && !f.Driven() {
				b.Fix = f
			}
			return
		}
	}
	p := f.Plan
	known := func(tube int) int {
		if tube == catalogue.Custom {
			return design.Kept
		}
		return tube
	}
	a := assess(p, s.meter())
	b := Best{Fix: f, Take: p, Design: design.Design{Plan: p, Rows: known(p.Rows[0].Tube), Header: known(p.Header.Tube), Middle: p.Header.Feed == plan.FeedMiddle,
		Zones: len(a.Zones), Cost: d.Now + f.Cost, Present: !f.Unpriced}}
	if set := p.Supply.Regulator; !b.Present && !f.Driven() {
		b.Regulator = set
	}
	if f.Kind == Redesign {
		b.Fix = nil
	}
	for i := range p.Rows {
		if p.Rows[i].Tube != p.Rows[0].Tube {
			b.Rows = design.Kept
		}
	}
	for i := range p.Runs {
		b.Runs = append(b.Runs, known(p.Runs[i].Tube))
	}
	from := 0.0
	if p.Supply.Kind == plan.GravityTank {
		from = plan.FieldNamed("runs", "rise").Min
	}
	var ok bool
	if b.Head, b.Flow, ok = duty(a, from, layout.Lead); ok {
		b.Head += s.Plan.Runs[0].Rise - p.Runs[0].Rise // of a tank that is raised
		b.Power = max(0, pump.HydraulicPower(a.Layout.Network.Water.Density, b.Flow, b.Head))
		d.add(s, b, a)
	}
}

// few returns the places in a list, in order, of the designs that differ most:
// the first, the last, and those whose loss would leave the largest gap, as the
// product of what the neighbours differ by in cost and in head and flow.
func few(list []design.Design, most int) []int {
	var kept []int
	for i := range list {
		kept = append(kept, i)
	}
	effort := func(i int) float64 {
		if list[i].Power > 0 {
			return list[i].Power
		}
		return list[i].Head
	}
	for len(kept) > most {
		least, at := 0.0, 0
		for k := 1; k < len(kept)-1; k++ {
			gap := (list[kept[k+1]].Cost - list[kept[k]].Cost) * (effort(kept[k-1]) - effort(kept[k]))
			if at == 0 || gap < least {
				least, at = gap, k
			}
		}
		kept = slices.Delete(kept, at, at+1)
	}
	// What hardly takes less than the one before is not worth reading.
	for k := 1; k < len(kept); {
		if before := effort(kept[k-1]); before-effort(kept[k]) < max(littleHead, littlePower*before) {
			kept = slices.Delete(kept, k, k+1)
		} else {
			k++
		}
	}
	return kept
}
