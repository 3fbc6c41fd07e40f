package build

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/parts"
	"evenrow/wasm/works/steps"
)

// A reading is what a gauge is expected to show.
type reading struct {
	where  words.Text
	pascal float64
}

// expected are the readings of the gauges on the list while a zone is watered, in the
// order of the water.
func (sc part) expected(z *sheet.ZoneResult) []reading {
	l, head := sc.S.Layout, z.Solution.Head
	over := func(node int) float64 { return head[node] - l.Points[node].Z }
	var all []reading
	add := func(where words.Text, m float64) {
		all = append(all, reading{where, l.Network.Water.PressureHead(m)})
	}
	tank, hose := l.Plan.Supply.Kind == plan.GravityTank, sc.listed(parts.AClearHose)
	before := 0
	for i := range l.Stretches {
		if k := l.Stretches[i].Kind; k == layout.Source || k == layout.Devices {
			before = l.Network.Links[l.Stretches[i].Links[0]].To
		}
	}
	if sc.listed(parts.AGauge) {
		switch {
		case tank:
			add("At the header", over(l.Feed))
		case l.FilterLink >= 0:
			after, ahead := l.Network.Links[l.FilterLink].To, 0.0
			if l.Curve != nil && l.Plan.Supply.Regulator > 0 {
				// The regulator stands behind both, and the layout has it before them.
				own := l.Plan.Supply
				own.Regulator = 0
				gives, _ := layout.Drive(&own, l.Network.Water).Head(z.Solution.Total)
				lets, _ := l.Curve.Head(z.Solution.Total)
				ahead = gives - lets
			}
			add("Before the filter", over(before)+ahead)
			add("After the filter", over(after)+ahead)
		case l.Plan.Supply.Regulator > 0:
			add("After the regulator", over(before))
		default:
			add("At the supply", over(before))
		}
	}
	last := len(l.Plan.Rows) - 1
	if end := l.Ends[last]; end >= 0 && z.Zone == l.ZoneOf(last) && (hose || sc.listed(parts.AGauge)) {
		add("At the end of the last row", over(end))
	}
	return all
}

// gauges says what the gauges are expected to show.
func (sc part) gauges() {
	if !sc.solved() {
		return
	}
	sc.Table(words.Say("What the gauges are expected to show"), words.Say("Gauge"), block.Figures(words.Say("Reads about"))).Rows(func(t *block.Table) {
		for i := range sc.S.Zones {
			z := &sc.S.Zones[i]
			for _, r := range sc.expected(z) {
				where := words.Say(r.where)
				if len(sc.S.Zones) > 1 {
					where = words.Say("{gauge}, zone {n}", where, words.N(z.Zone))
				}
				t.Row(where, words.Say("{pressure}, {head} of water", sc.Amount(unit.Pressure, r.pascal), sc.Amount(unit.Head, r.pascal/sc.Weight)))
			}
		}
	})
}

// solved says whether it is known what the water does, and if not, that it is not.
func (sc part) solved() bool {
	switch {
	case len(sc.S.Zones) == 0:
		sc.Say("p", "What to expect is worked out as soon as the plan says what drives the water. Note what you find: it is what to compare with later.")
		return false
	case sc.S.Wanted != nil:
		sc.Say("p", "These figures are for the least pump that does. They are right once yours is bought and its curve stands in the plan.")
	}
	return true
}

// cup is what a cup below one emitter of a row holds after the test, in m³, from the
// least to the most.
func (sc part) cup(row int) (least, most float64) {
	r, f := &sc.S.Plan.Rows[row], &sc.S.Rows[row]
	each := float64(steps.CupTime) / float64(max(1, r.PerPlant))
	off := steps.Spread * sc.S.Plan.Emitters[r.Emitter].CV
	return max(0, f.LeastFlow*each*(1-off)), f.MostFlow * each * (1 + off)
}

// cups says how much water to expect in a cup.
func (sc part) cups() {
	if !sc.solved() {
		return
	}
	sc.Table(words.Say("What a cup is expected to hold after {n} minutes", words.N(steps.CupTime/60)), words.Say("Rows"), block.Figures(words.Say("At least")), block.Figures(words.Say("At most"))).Rows(func(t *block.Table) {
		had := make([]bool, len(sc.S.Rows))
		in := func(row int) (string, string) {
			least, most := sc.cup(row)
			return sc.Amount(unit.Dose, least), sc.Amount(unit.Dose, most)
		}
		for r := range sc.S.Rows {
			if had[r] || sc.S.Rows[r].Plants == 0 {
				continue
			}
			least, most := in(r)
			var rows []int
			for k := r; k < len(sc.S.Rows); k++ {
				if l, m := in(k); l == least && m == most && sc.S.Rows[k].Plants > 0 {
					had[k] = true
					rows = append(rows, k)
				}
			}
			t.Row(wording.RowsBegin(rows), least, most)
		}
	})
}
