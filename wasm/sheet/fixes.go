package sheet

import (
	"math"
	"slices"

	"evenrow/wasm/catalogue"
	"evenrow/wasm/layout"
	"evenrow/wasm/numeric"
	"evenrow/wasm/plan"
	"evenrow/wasm/unit"
)

// most is how many fixes are offered.
const most = 5

// fixes looks for single changes that turn the answer into a yes. Each is
// tried on a copy of the plan, which is worked out again. Where none is
// enough, the pump or the tap that the plan needs is named all the same.
func fixes(s *Sheet) []Fix {
	t := trial{s: s}
	t.supply()
	t.wider()
	t.middle()
	t.ring()
	t.zones()
	t.regulator()
	t.filter()
	t.emitters()
	t.unlike()
	solving := slices.ContainsFunc(t.fixes, func(f Fix) bool { return f.Solves })
	kept := t.fixes[:0]
	for _, f := range t.fixes {
		if f.Solves || !solving {
			kept = append(kept, f)
		}
	}
	return kept[:min(len(kept), most)]
}

// A trial is the search for fixes of one sheet.
type trial struct {
	s     *Sheet
	fixes []Fix

	head, flow     float64 // what duty found
	sought, within bool    // whether it has looked, and found something
}

// has says whether the sheet has a finding of one of the kinds.
func (t *trial) has(kinds ...FindingKind) bool {
	return slices.ContainsFunc(t.s.Findings, func(f Finding) bool { return slices.Contains(kinds, f.Kind) })
}

// thirsty says whether some emitter lacks head.
func (t *trial) thirsty() bool {
	return t.has(NeverOpen, Unsteady, BelowRange, ShortReserve, Fouled, TooHigh, Suction)
}

// try works the plan out with a change made to it, and returns whether the
// answer is yes.
func (t *trial) try(change func(p *plan.Plan)) (*plan.Plan, bool) {
	p := t.s.Plan.Clone()
	change(p)
	return p, solves(p)
}

// supply names the pump, the height of the tank or the pressure of the tap
// that the plan needs.
func (t *trial) supply() {
	if !t.thirsty() {
		return
	}
	if t.s.Plan.Supply.Regulator > 0 && t.regulate() {
		return // a stronger supply is no help behind a regulator set too low
	}
	if t.s.Plan.Supply.Kind == plan.GravityTank {
		head, _, ok := t.duty()
		rise := roundUp(head-t.s.Layout.Network.Head, 0.05)
		if !ok || rise <= 0 {
			return
		}
		if p, ok := t.try(func(p *plan.Plan) { p.Runs[0].Rise -= rise }); len(p.Check()) == 0 {
			t.fixes = append(t.fixes, Fix{Change{Kind: RaiseTank, Value: rise}, ok, p})
		}
		return
	}
	d, p, ok := t.demanded()
	if d.least == 0 {
		return
	}
	f := Fix{Change{Kind: NewPump, Value: d.least, Flow: d.flow, Most: d.most, Regulator: d.regulator}, ok, p}
	if t.s.Plan.Supply.Kind == plan.Mains {
		f.Kind, f.Value = MorePressure, t.s.Layout.Network.Water.PressureHead(d.least)
	}
	t.fixes = append(t.fixes, f)
}

// wider tries the next sizes of tubing for the lead, the header and the rows.
func (t *trial) wider() {
	p := t.s.Plan
	if t.thirsty() || t.has(Uneven, FastLead) {
		t.widen(WiderLead, false, func(p *plan.Plan, widen func(tube *int, bore float64)) {
			for i := range p.Runs {
				widen(&p.Runs[i].Tube, p.Runs[i].Bore)
			}
		})
		if p.Header.Layout != plan.OneLine && len(p.Rows) > 1 {
			t.widen(WiderHeader, false, func(p *plan.Plan, widen func(tube *int, bore float64)) {
				widen(&p.Header.Tube, p.Header.Bore)
			})
		}
	}
	if t.thirsty() || t.has(Uneven) {
		t.widen(WiderRows, true, func(p *plan.Plan, widen func(tube *int, bore float64)) {
			for i := range p.Rows {
				widen(&p.Rows[i].Tube, p.Rows[i].Bore)
			}
		})
	}
}

// widen tries the wider tubes of the catalogue, of the trade's family that the
// plan's units belong to, wherever a part of the plan is narrower; each goes
// over the parts. The widest loses least, so if that is not enough none is;
// else the narrowest that is enough is kept.
func (t *trial) widen(kind FixKind, row bool, each func(p *plan.Plan, widen func(tube *int, bore float64))) {
	narrowest := math.Inf(1)
	each(t.s.Plan, func(tube *int, bore float64) { narrowest = min(narrowest, layout.TubeOf(*tube, bore).Bore) })
	var sizes []int
	for i := range catalogue.Tubes {
		c := &catalogue.Tubes[i]
		if i != catalogue.Custom && c.Bore > narrowest && c.Row == row && c.Metric() == (t.s.Plan.Units == unit.Metric) {
			sizes = append(sizes, i)
		}
	}
	numeric.Sort(len(sizes), func(i, j int) bool {
		return catalogue.Tubes[sizes[i]].Bore < catalogue.Tubes[sizes[j]].Bore
	}, func(i, j int) { sizes[i], sizes[j] = sizes[j], sizes[i] })
	if len(sizes) == 0 {
		return
	}
	wider := func(size int) (*plan.Plan, bool) {
		return t.try(func(p *plan.Plan) {
			each(p, func(tube *int, bore float64) {
				if layout.TubeOf(*tube, bore).Bore < catalogue.Tubes[size].Bore {
					*tube = size
				}
			})
		})
	}
	if _, ok := wider(sizes[len(sizes)-1]); !ok {
		return
	}
	for _, size := range sizes {
		if p, ok := wider(size); ok {
			t.fixes = append(t.fixes, Fix{Change{Kind: kind, Index: size}, true, p})
			return
		}
	}
}

// middle tries to feed the header in its middle.
func (t *trial) middle() {
	h := t.s.Plan.Header
	if h.Layout == plan.OneLine || h.Feed != plan.FeedEnd || len(t.s.Plan.Rows) < 3 {
		return
	}
	if p, ok := t.try(func(p *plan.Plan) { p.Header.Feed = plan.FeedMiddle }); ok {
		t.fixes = append(t.fixes, Fix{Change{Kind: MiddleFeed}, true, p})
	}
}

// ring tries to tie the far ends of the rows with a second header.
func (t *trial) ring() {
	if t.s.Plan.Header.Layout != plan.HeaderAndRows || len(t.s.Plan.Rows) < 2 || len(t.s.Zones) > 1 {
		return
	}
	if p, ok := t.try(func(p *plan.Plan) { p.Header.Layout = plan.Ring }); ok {
		t.fixes = append(t.fixes, Fix{Change{Kind: CloseRing}, true, p})
	}
}

// zones tries to water the rows in more zones, of rows that stand together and
// draw about the same.
func (t *trial) zones() {
	p := t.s.Plan
	if p.Header.Layout != plan.HeaderAndRows || !(t.thirsty() || t.has(Uneven, FastLead, OffCurve)) {
		return
	}
	most := min(len(p.Rows), plan.MaxZones)
	for n := len(t.s.Zones) + 1; n <= most; n++ {
		if p, ok := t.try(func(p *plan.Plan) { split(p, n) }); ok {
			t.fixes = append(t.fixes, Fix{Change{Kind: MoreZones, Index: n}, true, p})
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
	if t.has(AboveRange, OverRating) && !slices.ContainsFunc(t.fixes, func(f Fix) bool { return f.Kind == AddRegulator }) {
		t.regulate()
	}
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
	set := roundUp(t.s.Layout.Network.Water.PressureHead(head), 1e4)
	p, solves := t.try(func(p *plan.Plan) { p.Supply.Regulator = set })
	if solves {
		t.fixes = append(t.fixes, Fix{Change{Kind: AddRegulator, Value: set}, true, p})
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
			if sooner < leastFouling {
				return
			}
			if p, ok := t.try(func(p *plan.Plan) { p.Filter.Fouling = sooner }); ok {
				t.fixes = append(t.fixes, Fix{Change{Kind: CleanerFilter, Value: sooner}, true, p})
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
	if wanted < 1e4 || t.s.Plan.Emitters[e].Kind != plan.Compensating {
		return
	}
	share := wanted / t.s.Plan.Emitters[e].Lowest
	if p, ok := t.try(func(p *plan.Plan) {
		c := &p.Emitters[e]
		c.Lowest, c.Opens, c.Closes = wanted, c.Opens*share, c.Closes*share
	}); ok {
		t.fixes = append(t.fixes, Fix{Change{Kind: LowerEmitters, Value: wanted}, true, p})
	}
}

// roundUp returns the least multiple of step that is at least x.
func roundUp(x, step float64) float64 { return math.Ceil(x/step-1e-9) * step }

// unlike tries to water rows whose emitters differ each for its own time, or to
// give all plants the emitters of one row.
func (t *trial) unlike() {
	if !t.has(Unlike) {
		return
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
	if t.s.Plan.Header.Layout == plan.HeaderAndRows && len(kinds) <= plan.MaxZones {
		if p, ok := t.try(func(p *plan.Plan) {
			for i := range p.Rows {
				p.Rows[i].Zone = zone[i]
			}
		}); ok {
			t.fixes = append(t.fixes, Fix{Change: Change{Kind: OwnZones, Index: len(kinds)}, Solves: true, Plan: p})
		}
	}
	for _, k := range kinds {
		if p, ok := t.try(func(p *plan.Plan) {
			for i := range p.Rows {
				p.Rows[i].Emitter, p.Rows[i].PerPlant = rows[k].Emitter, rows[k].PerPlant
			}
		}); ok {
			t.fixes = append(t.fixes, Fix{Change: Change{Kind: OneEmitter, Index: k}, Solves: true, Plan: p})
			return
		}
	}
}
