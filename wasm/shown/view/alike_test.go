package view

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/catalogue"
)

// mixed returns random plans of all layouts and supplies whose rows have
// emitters of up to three kinds, one to three at a plant, in up to three zones.
func mixed(n int) []*plan.Plan {
	r := rand.New(rand.NewPCG(4, 18))
	var plans []*plan.Plan
	examples := plan.Examples()
	for len(plans) < n {
		p := examples[r.IntN(len(examples))].Plan.Clone()
		p.Header.Layout, p.Header.Feed = r.IntN(3), r.IntN(2)
		p.Header.Tube, p.Runs[0].Tube = 1+r.IntN(6), 1+r.IntN(6)
		p.Runs[0].Rise += r.Float64()
		p.Limits.Reserve, p.Limits.Evenness = 0, 0.5+0.45*r.Float64()
		p.Place.Length, p.Place.Width = 90, 90
		switch r.IntN(4) {
		case 0:
			p.Supply.Kind, p.Supply.Regulator = plan.PumpTwo, 0
			p.Supply.ShutOff, p.Supply.MaxFlow = 12+20*r.Float64(), (20+200*r.Float64())/6e4
		case 1:
			p.Supply.Kind, p.Supply.Regulator = plan.Mains, 2e5
			p.Supply.Static, p.Supply.TapFlow = (2+3*r.Float64())*1e5, (10+60*r.Float64())/6e4
		case 2:
			p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
			p.Runs[0].Rise = -1 - 14*r.Float64()
		}
		kinds := 1 + r.IntN(3)
		for len(p.Emitters) < kinds {
			e := p.Emitters[0]
			e.Flow *= []float64{0.5, 0.9, 1.05, 2, 4}[r.IntN(5)]
			e.CV = []float64{0, 0.005, 0.03, 0.07}[r.IntN(4)]
			p.Emitters = append(p.Emitters, e)
		}
		if r.IntN(2) == 0 {
			for i := range p.Emitters {
				p.Emitters[i].CV = 0
			}
		}
		zones, per := 1+r.IntN(3), 1+r.IntN(3)
		shaken := r.IntN(3) == 0
		for i := range p.Rows {
			row := &p.Rows[i]
			row.Plants = 1 + r.IntN(20)
			row.Zone = 1 + r.IntN(zones)
			row.Emitter = r.IntN(kinds)
			if zones > 1 && r.IntN(2) == 0 {
				row.Emitter = row.Zone % kinds
			}
			row.PerPlant = 1
			if shaken {
				row.PerPlant = 1 + r.IntN(per)
				row.Slope = 0.05 * (r.Float64() - 0.5)
			}
		}
		if len(p.Check()) == 0 {
			plans = append(plans, p)
		}
	}
	return plans
}

// sameWater is the default plan with emitters of 8 L/h in row 2, and a tank
// that is large enough.
func eightInRowTwo() *plan.Plan {
	p := plan.Default()
	p.Supply.Tank = 2
	p.Emitters = append(p.Emitters, p.Emitters[0])
	p.Emitters[1].Flow *= 4
	p.Rows[1].Emitter = 1
	return p
}

// Flows of 2 and 8 L/h are not the same water: the headline says so, no measure
// of the plants reads 100 %, and nobody is said to get a flow that nobody gets.
func TestEmittersThatDiffer(t *testing.T) {
	p := eightInRowTwo()
	s := sheet.Answer(p)
	told := map[string]string{}
	for _, f := range Told(s, nil) {
		told[f.ID] = strings.ReplaceAll(f.HTML, "\u00a0", " ")
	}
	if s.Verdict != sheet.Nearly || !strings.Contains(told["answer"], "different shares of what they need") {
		t.Errorf("the answer is %s", told["answer"])
	}
	// 120 plants, 90 of them with 2 L/h and 30 with 8: the mean is 3.5, DU 2/3.5,
	// CU 1 - (90 × 1.5 + 30 × 4.5)/(120 × 3.5), all by hand.
	for _, want := range []string{"<td class=\"n\">57.1 %</td><td class=\"n\">100 %</td>", "<td class=\"n\">35.7 %</td><td class=\"n\">100 %</td>",
		"Least</dt><dd>2.0 L/h", "30 min"} {
		if !strings.Contains(told["evenness"], want) {
			t.Errorf("no %q in %.1500s", want, told["evenness"])
		}
	}
	if strings.Contains(told["evenness"], "17.1") {
		t.Error("17.1 min is the time at the mean flow, which nobody gets")
	}
	for _, want := range []string{"Row 2 gets 8.0 L/h a plant and row 3 2.0 L/h", "4.1 times its need"} {
		if !strings.Contains(told["answer"], want) {
			t.Errorf("no %q in %s", want, told["answer"])
		}
	}
	// What helps is Yes by itself, one by the same emitters, one by zones.
	kinds := map[sheet.FixKind]bool{}
	for _, f := range s.Fixes {
		kinds[f.Kind] = true
		if sheet.Answer(f.Plan).Verdict != sheet.Yes {
			t.Errorf("fix %d does not help", f.Kind)
		}
	}
	if !kinds[sheet.OneEmitter] || !kinds[sheet.OwnZones] {
		t.Errorf("fixes %v", kinds)
	}

	// The chance of emitters that differ is told against their make, and says so.
	s.Explore(sheet.Chancing)
	if got := Explored(s, sheet.Chancing, nil)[0].HTML; !strings.Contains(got, "each plant is held against what its own are made to give") {
		t.Errorf("the chance is said to be of all plants' mean: %.400s", got)
	}
	same := sheet.Work(plan.Default())
	if got := Explored(same, sheet.Chancing, nil)[0].HTML; strings.Contains(got, "held against") {
		t.Errorf("emitters of one kind: %.400s", got)
	}

	two := plan.Default()
	two.Rows[1].PerPlant = 2
	if got := answer.Announce(sheet.Answer(two)); !strings.HasPrefix(got, "Nearly. Every emitter opens, but rows") {
		t.Errorf("two emitters a plant in one row: %s", got)
	}
	zones := eightInRowTwo()
	zones.Rows[1].Zone = 2
	if got := answer.Announce(sheet.Answer(zones)); got != "Yes, if what is assumed is so. All 120 emitters open, and every plant of a zone gets nearly the same water." {
		t.Errorf("zones at different flows: %s", got)
	}
}

// Where a crop takes up twice as much, twice the water is what it needs; and
// four times is not.
func TestAThirstierCropGetsMore(t *testing.T) {
	p := plan.Default()
	needs := sheet.Answer(eightInRowTwo()).Water // as if planted as in the default plan
	// Cucumbers half as far apart have half of the floor, and take up half.
	last := &p.Rows[3]
	last.Spacing /= 2
	p.Emitters = append(p.Emitters, p.Emitters[0])
	p.Emitters[1].Flow /= 2
	last.Emitter = 1
	s := sheet.Answer(p)
	if r := s.Water[3].Need / needs[3].Need; math.Abs(r-0.5) > 0.1 {
		t.Fatalf("plants on half of the floor take up %.2f of it", r)
	}
	if got := answer.Announce(s); got != "Yes, if what is assumed is so. All 120 emitters open. Plants get different amounts of water, each row about in proportion to what its crop needs." {
		t.Error(got)
	}
	p.Emitters[1].Flow /= 2
	if got := answer.Announce(sheet.Answer(p)); !strings.HasPrefix(got, "Nearly.") {
		t.Error(got)
	}
}

// Lettuce and tomatoes that share a zone's even flow do not get what they need,
// also where rows of another zone do: not each row has its share.
func TestOneZoneAsNeededDoesNotSpeakForAnother(t *testing.T) {
	p := plan.Default()
	p.Supply.Tank = 2
	p.Emitters = append(p.Emitters, p.Emitters[0])
	p.Emitters[1].Flow /= 2
	p.Rows[3].Spacing /= 2
	p.Rows[3].Emitter = 1
	p.Rows[0].Zone, p.Rows[1].Zone = 2, 2
	if got := answer.Announce(sheet.Answer(p)); !strings.Contains(got, "each row about in proportion") {
		t.Errorf("tomatoes alone in zone 2: %s", got)
	}
	p.Rows[1].Crop = slices.IndexFunc(catalogue.Crops[:], func(c catalogue.Crop) bool { return c.Name == "lettuce" })
	if got := answer.Announce(sheet.Answer(p)); got != "Yes, if what is assumed is so. All 120 emitters open, but not every plant gets the same water." {
		t.Errorf("lettuce and tomatoes in zone 2: %s", got)
	}
}

// Of several zones, evenness is that of the one whose plants are least alike,
// also where the weakest emitter stands in another: in the answer, and under
// Evenness.
func TestTheZoneThatIsLeastAlike(t *testing.T) {
	p := plan.Default()
	p.Supply.Tank = 2
	p.Emitters = append(p.Emitters, p.Emitters[0])
	p.Emitters[1].Flow *= 4
	for i := range p.Rows {
		p.Rows[i].Zone = 1 + i/2
		p.Rows[i].Emitter = i / 2
	}
	p.Rows[0].PerPlant = 2
	s := sheet.Answer(p)
	if s.Zones[s.Critical].Zone != 2 {
		t.Fatal("the weakest emitter stands in zone 1")
	}
	// 4 and 2 L/h: two thirds of the mean, less 1.27 times 3 % of it, by hand.
	for id, want := range map[string]string{"answer": "Plants alike (EU)</dt><dd>64.1 % <small>zone 1; your limit is 90 %", "evenness": "in zone 1, where they are least alike"} {
		if got := strings.ReplaceAll(said(t, s, id), "\u00a0", " "); !strings.Contains(got, want) {
			t.Errorf("%s: no %q in %.900s", id, want, got)
		}
	}
	if got := said(t, s, "evenness"); strings.Contains(got, "the same emitters") {
		t.Errorf("emitters are said to be the same: %.300s", got)
	}
}

// Where nothing grows in rows of 2 and 8 L/h, there is no need to compare them
// with, and they are judged by their flows: 2/3.5, less 1.27 times 3 % of it.
func TestEmittersThatDifferWhereNothingGrows(t *testing.T) {
	p := eightInRowTwo()
	p.Season.After = -40
	s := sheet.Answer(p)
	if got := said(t, s, "answer"); s.Verdict != sheet.Nearly || !strings.Contains(got, "not evenly enough") || !strings.Contains(got, "The evenness (EU) is 55\u00a0%, and your limit is 90\u00a0%.") {
		t.Errorf("verdict %d: %s", s.Verdict, got)
	}
	has := func(k sheet.FixKind) bool {
		return slices.ContainsFunc(s.Fixes, func(f sheet.Fix) bool { return f.Kind == k && f.Solves })
	}
	if !has(sheet.OwnZones) || !has(sheet.OneEmitter) {
		t.Errorf("fixes %+v", s.Fixes)
	}
}
