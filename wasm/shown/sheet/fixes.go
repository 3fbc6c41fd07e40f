package sheet

import (
	"math"
	"slices"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/layout"
)

// Fixes that are offered: at most so many, of which those that take something
// without a price have so many places to themselves.
const (
	most     = 5
	unpriced = 2
)

// fixes looks for changes that turn the answer into a yes: single ones; the
// cheapest design that the supply carries; and pairs where no single change is
// enough. Each is tried on a copy of the plan, which is worked out again. They
// come in the order of their cost, and what takes something that the plan has
// no price for comes last. Where nothing is enough, the pump or the tap that the
// plan needs is named all the same.
//
// What was found when the work ends is offered all the same: each fix stands
// for itself.
func fixes(s *Sheet) []Fix {
	t := trial{s: s}
	s.Untried = !s.meter().Within(t.look) || t.cut
	return t.offered()
}

// look looks for them.
func (t *trial) look() {
	t.supply()
	if !t.has(OutsidePlace) { // which nothing else mends
		for _, m := range t.moves() {
			t.single(&m)
		}
		t.regulator()
		t.filter()
		t.emitters()
		t.unlike()
		alone := t.solving()
		t.s.found = design.Of(t.s.Plan, split, t.s.meter())
		t.cut = t.s.found.Cut
		t.redesign()
		if !alone {
			t.pairs()
			t.regulated()
		}
		switch {
		case !t.solving():
			t.anew(false)
		case !slices.ContainsFunc(t.fixes, func(f *Fix) bool { return f.Solves && !f.Driven() }):
			if !alone {
				t.anew(true)
			}
		}
	}
}

// offered puts what was found in order, and returns what is offered of it.
func (t *trial) offered() []Fix {
	solving := t.solving()
	now := design.Cost(t.s.Layout)
	var list []*Fix
	priced := 0
	for _, f := range t.fixes {
		if solving && !f.Solves {
			continue
		}
		f.Unpriced = f.unpriced() || f.Flow > 0 || f.And != nil && f.And.unpriced()
		if f.Plan != nil {
			f.Cost = design.Cost(layout.New(f.Plan)) - now
		}
		if !f.Unpriced {
			priced++
		}
		list = append(list, f)
		for i := len(list) - 1; i > 0 && f.before(list[i-1]); i-- {
			list[i], list[i-1] = list[i-1], f
		}
	}
	room := most - min(unpriced, len(list)-priced)
	var offered []Fix
	for i, f := range list {
		if i < room || i >= priced && len(offered) < most {
			if f.Plan != nil {
				f.Plan.Shorten(t.s.Plan)
			}
			offered = append(offered, *f)
		}
	}
	return offered
}

// before says whether a fix comes before another.
func (f *Fix) before(g *Fix) bool {
	const cent = 1e-6 // costs are not told apart by less
	return f.Unpriced == g.Unpriced && f.Cost < g.Cost-cent || !f.Unpriced && g.Unpriced
}

// Driven says whether a fix takes another pump, another tap or a higher tank.
func (f *Fix) Driven() bool {
	return FixesOf[f.Kind].Drives || f.Flow > 0 || f.And != nil && FixesOf[f.And.Kind].Drives
}

func (c *Change) unpriced() bool { return FixesOf[c.Kind].Unpriced }

// A trial is the search for fixes of one sheet.
type trial struct {
	s     *Sheet
	fixes []*Fix
	cut   bool // a search in it has ended at a bound of its own
	loose bool // of what is no matter of the pump nothing is asked: see watered

	head, flow     float64 // what duty found
	sought, within bool    // whether it has looked, and found something
}

// has says whether the sheet has a finding of one of the kinds.
func (t *trial) has(kinds ...FindingKind) bool {
	return slices.ContainsFunc(t.s.Findings, func(f Finding) bool { return slices.Contains(kinds, f.Kind) })
}

// pressed says whether the pressure is too much somewhere.
func (t *trial) pressed() bool {
	return slices.ContainsFunc(t.s.Findings, func(f Finding) bool { return Kinds[f.Kind].High })
}

// thirsty says whether some emitter lacks head.
func (t *trial) thirsty() bool {
	return slices.ContainsFunc(t.s.Findings, func(f Finding) bool { return Kinds[f.Kind].Low })
}

// try works the plan out with a change made to it, and returns whether the
// answer is yes.
func (t *trial) try(change func(p *plan.Plan)) (*plan.Plan, bool) {
	p := t.s.Plan.Clone()
	change(p)
	return p, solves(p, t.s.meter())
}

// supply names the pump, the height of the tank or the pressure of the tap
// that the plan needs.
func (t *trial) supply() {
	if !t.thirsty() || t.s.Wanted != nil {
		return
	}
	if t.s.Plan.Supply.Regulator > 0 && t.regulate() {
		return // a stronger supply is no help behind a regulator set too low
	}
	if t.s.Plan.Supply.Kind == plan.GravityTank {
		head, _, ok := t.duty()
		rise := design.Rise(t.s.Plan.Units, head-t.s.Layout.Network.Head)
		if !ok || rise <= 0 {
			return
		}
		if p, ok := t.try(func(p *plan.Plan) { p.Runs[0].Rise -= rise }); len(p.Check()) == 0 && (ok || assess(p, t.s.meter()).over() == 0) {
			t.add(Change{Kind: RaiseTank, Value: rise}, nil, ok, p)
		}
		return
	}
	d, p, ok := t.demanded()
	if d.least == 0 {
		return
	}
	// What the work may end at comes before the fix is on the list.
	var found []Finding
	if !ok {
		found = level(t.s.meter(), t.s.Plan, d.least).Findings
	}
	f := t.add(Change{Kind: NewPump, Value: d.least, Flow: d.flow, Most: d.most, Regulator: d.regulator}, nil, ok, p)
	if t.s.Plan.Supply.Kind == plan.Mains {
		f.Kind, f.Value = MorePressure, t.s.Layout.Network.Water.PressureHead(d.least)
	}
	for i := range found {
		if g := &found[i]; Kinds[g.Kind].High && (f.Breaks == nil || g.Limit < f.Breaks.Limit) {
			f.Breaks, f.Plan = g, nil
		}
	}
}

// add adds what was found.
func (t *trial) add(c Change, and *Change, solves bool, p *plan.Plan) *Fix {
	f := &Fix{Change: c, And: and, Solves: solves, Plan: p}
	t.fixes = append(t.fixes, f)
	return f
}

// solving says whether a fix was found that is enough.
func (t *trial) solving() bool {
	return slices.ContainsFunc(t.fixes, func(f *Fix) bool { return f.Solves })
}

// A move is a change of one thing, in steps from the least to the most.
type move struct {
	kind  FixKind
	steps []int // sizes of tubing, or numbers of zones
	do    func(p *plan.Plan, step int)
}

// last is the most that a move can do.
func (m *move) last() int { return m.steps[len(m.steps)-1] }

// moves are those that may help.
func (t *trial) moves() []move {
	p, h := t.s.Plan, t.s.Plan.Header
	var list []move
	add := func(kind FixKind, do func(p *plan.Plan, step int), steps ...int) {
		if len(steps) > 0 {
			list = append(list, move{kind, steps, do})
		}
	}
	// Tubing is widened wherever it is narrower.
	tubes := func(kind FixKind, row bool, each func(p *plan.Plan, widen func(tube *int, bore float64))) {
		add(kind, func(p *plan.Plan, size int) {
			each(p, func(tube *int, bore float64) {
				if layout.TubeOf(*tube, bore).Bore < catalogue.Tubes[size].Bore {
					*tube = size
				}
			})
		}, t.sizes(row, each)...)
	}
	if t.thirsty() || t.has(Uneven, FastLead) {
		tubes(WiderLead, false, func(p *plan.Plan, widen func(tube *int, bore float64)) {
			for i := range p.Runs {
				widen(&p.Runs[i].Tube, p.Runs[i].Bore)
			}
		})
		if h.Layout != plan.OneLine && len(p.Rows) > 1 {
			tubes(WiderHeader, false, func(p *plan.Plan, widen func(tube *int, bore float64)) {
				widen(&p.Header.Tube, p.Header.Bore)
			})
		}
	}
	if t.thirsty() || t.has(Uneven) {
		tubes(WiderRows, true, func(p *plan.Plan, widen func(tube *int, bore float64)) {
			for i := range p.Rows {
				widen(&p.Rows[i].Tube, p.Rows[i].Bore)
			}
		})
	}
	if h.Layout != plan.OneLine && h.Feed == plan.FeedEnd && len(p.Rows) > 2 {
		add(MiddleFeed, func(p *plan.Plan, _ int) { p.Header.Feed = plan.FeedMiddle }, 0)
	}
	// A second header ties the far ends of the rows.
	if h.Layout == plan.HeaderAndRows && len(p.Rows) > 1 && len(t.s.Zones) == 1 {
		add(CloseRing, func(p *plan.Plan, _ int) { p.Header.Layout = plan.Ring }, 0)
	}
	// Zones are of rows that stand together and draw about the same.
	if h.Layout == plan.HeaderAndRows && (t.thirsty() || t.has(Uneven, FastLead, OffCurve)) {
		var numbers []int
		for n := len(t.s.Zones) + 1; n <= min(len(p.Rows), plan.MaxZones); n++ {
			numbers = append(numbers, n)
		}
		add(MoreZones, split, numbers...)
	}
	return list
}

// sizes returns the tubes to be had that are wider than some part of the plan,
// narrowest first; each goes over the parts.
func (t *trial) sizes(row bool, each func(p *plan.Plan, widen func(tube *int, bore float64))) []int {
	narrowest := math.Inf(1)
	each(t.s.Plan, func(tube *int, bore float64) { narrowest = min(narrowest, layout.TubeOf(*tube, bore).Bore) })
	var sizes []int
	for i := range catalogue.Tubes {
		if c := &catalogue.Tubes[i]; t.s.Plan.Had(i) && c.Bore > narrowest && c.Row == row {
			sizes = append(sizes, i)
			for k := len(sizes) - 1; k > 0 && c.Bore < catalogue.Tubes[sizes[k-1]].Bore; k-- {
				sizes[k], sizes[k-1] = sizes[k-1], i
			}
		}
	}
	return sizes
}

// single tries a move alone, and keeps the least of it that is enough. The widest
// tubing loses least, so if that is not enough none is.
func (t *trial) single(m *move) {
	if m.kind != MoreZones && len(m.steps) > 1 {
		if _, ok := t.try(func(p *plan.Plan) { m.do(p, m.last()) }); !ok {
			return
		}
	}
	for _, step := range m.steps {
		if p, ok := t.try(func(p *plan.Plan) { m.do(p, step) }); ok {
			t.add(Change{Kind: m.kind, Index: step}, nil, true, p)
			return
		}
	}
}

// split puts a plan's rows into n zones, at most one a row.
func split(p *plan.Plan, n int) {
	demand := func(r *plan.Row) float64 {
		return float64(r.Plants*r.PerPlant) * p.Emitters[r.Emitter].Flow
	}
	total := 0.0
	for i := range p.Rows {
		total += demand(&p.Rows[i])
	}
	before, zone := 0.0, 0
	for i := range p.Rows {
		d := demand(&p.Rows[i])
		// By the middle of its draw, but no zone may be left without a row.
		want := int(float64(n) * (before + d/2) / total)
		zone = min(max(zone, want, n-len(p.Rows)+i), zone+1, n-1)
		if i == 0 {
			zone = 0
		}
		p.Rows[i].Zone = zone + 1
		before += d
	}
}

// regulator tries a pressure regulator where there is too much pressure.
func (t *trial) regulator() {
	if t.s.Wanted == nil && t.pressed() && !slices.ContainsFunc(t.fixes, func(f *Fix) bool { return f.Kind == AddRegulator }) {
		t.regulate()
	}
}

// bearable returns what a regulator may let through at the most, in Pa, as the
// plan stands: in tenths of a bar; 0 where there is not too much pressure, and
// behind a tank.
func (t *trial) bearable() float64 {
	c := t.s.Layout.Curve
	if c == nil || !t.pressed() {
		return 0
	}
	most, _ := c.Head(0)
	shut := most
	for i := range t.s.Findings {
		switch f := &t.s.Findings[i]; f.Kind {
		case OverRating:
			most = min(most, shut-f.Value+f.Limit)
		case AboveRange:
			for k := range t.s.Zones {
				most = min(most, t.s.Zones[k].Head-f.Value+f.Limit)
			}
		}
	}
	return max(0, math.Floor(t.s.Layout.Network.Water.PressureHead(most)/1e4)*1e4)
}

// regulate tries a regulator set to what the emitters need, and reports whether
// that solves it. A gravity tank's stands before the header, where the height
// of the tank is pressure already.
func (t *trial) regulate() bool {
	var head float64
	var ok bool
	if t.s.Plan.Supply.Kind == plan.GravityTank {
		rise := leadRise(t.s.Plan)
		head, _, ok = duty(t.s, rise, layout.Main)
		head -= rise
	} else {
		head, _, ok = t.duty()
	}
	if !ok {
		return false
	}
	set := numeric.RoundUp(t.s.Layout.Network.Water.PressureHead(head), 1e4)
	p, solves := t.try(func(p *plan.Plan) { p.Supply.Regulator = set })
	if solves {
		t.add(Change{Kind: AddRegulator, Value: set}, nil, true, p)
	}
	return solves
}

// leadRise returns how far the header stands above the supply, in m.
func leadRise(p *plan.Plan) float64 {
	rise := 0.0
	for i := range p.Runs {
		rise += p.Runs[i].Rise
	}
	return rise
}

// leastFouling is the least rise of a filter's loss in Pa that is asked to be
// read off gauges: half a division of a tenth of a bar (common practice, no
// source).
const leastFouling = 5e3

// filter tries to clean the filter sooner.
func (t *trial) filter() {
	f := t.s.Plan.Filter
	if t.has(Fouled) {
		worst := math.Inf(1)
		for i := range t.s.Zones {
			z := &t.s.Zones[i]
			if taken := z.Margin - z.Fouled; taken > 0 {
				worst = min(worst, z.Margin/taken)
			}
		}
		// Where the emitters get too little they draw less, and the filter
		// takes less than in proportion: the first guess may be too high.
		sooner := f.Fouling * worst * 0.95
		for range 4 {
			if sooner = printed(unit.Pressure, t.s.Plan.Units, sooner); sooner < leastFouling {
				return
			}
			if p, ok := t.try(func(p *plan.Plan) { p.Filter.Fouling = sooner }); ok {
				t.add(Change{Kind: CleanerFilter, Value: sooner}, nil, true, p)
				return
			}
			sooner *= 0.85
		}
	}
}

// emitters looks for emitters that make do with the pressure there is.
func (t *trial) emitters() {
	if !t.thirsty() {
		return
	}
	crit := &t.s.Zones[t.s.Critical]
	w := t.s.Layout.Network.Water
	worst := t.s.Layout.Plants[crit.Worst].Row
	e := t.s.Plan.Rows[worst].Emitter
	lowest := w.HeadOf(t.s.Plan.Emitters[e].Lowest)
	spare := max(t.s.Plan.Limits.Reserve, crit.Margin-crit.Fouled)
	wanted := math.Floor(w.PressureHead(lowest+crit.Margin-spare)/5e3) * 5e3
	if t.s.Plan.Emitters[e].Kind != plan.Compensating {
		return
	}
	lower := func(to float64) (*plan.Plan, bool) {
		return t.try(func(p *plan.Plan) {
			c := &p.Emitters[e]
			share := to / c.Lowest
			c.Lowest, c.Opens, c.Closes = to, c.Opens*share, c.Closes*share
		})
	}
	// The head that the page prints for it may be a little more.
	for ; wanted >= 1e4; wanted -= 5e3 {
		p, ok := lower(wanted)
		if !ok {
			return
		}
		_, high := t.s.said(w.HeadOf(wanted))
		if _, ok = lower(w.PressureHead(high)); ok {
			t.add(Change{Kind: LowerEmitters, Value: wanted}, nil, true, p)
			return
		}
	}
}

// unlike tries to water rows whose emitters differ each for its own time, or to
// give all plants the emitters of one row.
func (t *trial) unlike() {
	for _, m := range t.alike() {
		if n := len(t.fixes); m.kind == OwnZones || n == 0 || t.fixes[n-1].Kind != OneEmitter {
			t.single(&m)
		}
	}
}

// alike are the moves that part rows whose emitters differ, or make them alike.
func (t *trial) alike() (list []move) {
	if !t.has(Unlike, Uneven) {
		return nil
	}
	rows := t.s.Plan.Rows
	made := func(i int) [3]int { return [3]int{rows[i].Zone, rows[i].Emitter, rows[i].PerPlant} }
	var kinds []int // the first row of each, zone by zone
	zone := make([]int, len(rows))
	for i := range rows {
		k := slices.IndexFunc(kinds, func(j int) bool { return made(i) == made(j) })
		if k < 0 {
			k, kinds = len(kinds), append(kinds, i)
		}
		zone[i] = k + 1
	}
	if len(kinds) == len(t.s.Zones) {
		return nil
	}
	if t.s.Plan.Header.Layout == plan.HeaderAndRows && len(kinds) <= plan.MaxZones {
		list = append(list, move{OwnZones, []int{len(kinds)}, func(p *plan.Plan, _ int) {
			for i := range p.Rows {
				p.Rows[i].Zone = zone[i]
			}
		}})
	}
	for _, k := range kinds {
		list = append(list, move{OneEmitter, []int{k}, func(p *plan.Plan, k int) {
			for i := range p.Rows {
				p.Rows[i].Emitter, p.Rows[i].PerPlant = rows[k].Emitter, rows[k].PerPlant
			}
		}})
	}
	return list
}
