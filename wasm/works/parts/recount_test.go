package parts

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/layout"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-5 }

// randomPlan returns a plan with many layouts, sizes and numbers of things.
func randomPlan(seed uint64) *plan.Plan {
	rnd := rand.New(rand.NewPCG(seed, 2))
	p := plan.Default()
	soft, all := []int{0, 1, 2, 10}, []int{0, 1, 2, 3, 4, 10, 15}
	size := func(t *int, bore *float64, of []int) {
		*t, *bore = of[rnd.IntN(len(of))], 0.01+0.001*float64(rnd.IntN(3))
	}
	p.Supply.Kind = rnd.IntN(5)
	p.Supply.Regulator = float64(rnd.IntN(2)) * 1e5
	p.Filter.Present = rnd.IntN(2)
	plan.SectionNamed("runs").Resize(p, 1+rnd.IntN(plan.MaxRuns))
	for i := range p.Runs {
		r := &p.Runs[i]
		r.Length = 0.1 + 20*rnd.Float64()
		r.Elbows, r.Tees, r.Valves, r.Checks = rnd.IntN(4), rnd.IntN(3), rnd.IntN(3), rnd.IntN(2)
		size(&r.Tube, &r.Bore, all)
	}
	p.Header.Layout, p.Header.Feed = rnd.IntN(3), rnd.IntN(2)
	size(&p.Header.Tube, &p.Header.Bore, all)
	plan.SectionNamed("emitters").Resize(p, 1+rnd.IntN(plan.MaxEmitters))
	for i := range p.Emitters {
		p.Emitters[i].Flow = float64(i+1) / 3.6e6
		p.Emitters[i].Barb = rnd.IntN(3)
	}
	plan.SectionNamed("rows").Resize(p, 1+rnd.IntN(12))
	for i := range p.Rows {
		r := &p.Rows[i]
		r.Crop, r.Medium = rnd.IntN(len(catalogue.Crops)), rnd.IntN(5)
		r.Plants = 1 + rnd.IntN(60)
		r.PerPiece = 1 + rnd.IntN(r.Plants)
		r.Emitter, r.PerPlant = rnd.IntN(len(p.Emitters)), 1+rnd.IntN(4)
		r.Gap, r.First, r.Spacing = 2*rnd.Float64(), rnd.Float64(), 0.1+rnd.Float64()
		r.Zone = 1 + rnd.IntN(2)
		size(&r.Tube, &r.Bore, soft)
	}
	for i := range p.Prices.Rolls {
		p.Prices.Rolls[i] = [...]float64{0, 8, 25, 50}[rnd.IntN(4)]
	}
	return p
}

// A tally is what a person would count while walking along the plan with a
// notebook, stroke by stroke: every piece of tubing with what is at either end.
type tally struct {
	fittings map[string]int // by noun
	barbs    map[layout.Tube]int
	metres   map[layout.Tube]float64
	rolls    *plan.Prices
}

// piece notes a length of tubing: both of its ends are held by fittings, and where it
// goes on on another roll a joiner holds two more.
func (y *tally) piece(entry int, bore, metres float64) {
	t := layout.TubeOf(entry, bore)
	y.barbs[t] += 2
	y.metres[t] += metres
	if roll := y.rolls.Rolls[entry]; roll > 0 {
		for left := metres - roll; left > 1e-9; left -= roll {
			y.barbs[t] += 2
			y.fittings["Joiner"]++
		}
	}
}

// meet notes a fitting between tubing of two sizes. Soft tubing takes barbs,
// PE pipe by its SDR compression fittings, PE pipe by its SIDR inserts, and
// those of millimetres and of inches do not mix: a thread stands between them,
// with an adapter, and what would be a joiner is an adapter too.
func (y *tally) meet(noun string, a, b int) {
	kinds := map[int]string{1: "mm", 2: "mm", 3: "SDR", 4: "SDR", 10: "in", 15: "SIDR"}
	soft := func(kind string) bool { return kind == "mm" || kind == "in" }
	measured := a == catalogue.Custom && (b == a || soft(kinds[b])) || b == catalogue.Custom && soft(kinds[a])
	if !measured && kinds[a] != kinds[b] {
		if noun == "Joiner" {
			noun = "Adapter"
		}
		y.fittings["Adapter"]++
	}
	y.fittings[noun]++
}

// inRun counts the fittings in a run, by noun.
func inRun(r *plan.Run) map[string]int {
	return map[string]int{"Elbow": r.Elbows, "Tee": r.Tees, "Ball valve": r.Valves, "Check valve": r.Checks}
}

// Who walks along a plan knows every fitting of a run: one that this file does
// not count is counted by nobody a second time.
func TestTheWalkKnowsEveryFittingOfARun(t *testing.T) {
	walked := inRun(&plan.Run{})
	for i := range layout.Fittings {
		f := &layout.Fittings[i]
		noun := unit.Capital(string(f.Noun.Name))
		if _, ok := walked[noun]; f.PerRun != nil && !ok {
			t.Errorf("%s stands in runs, and is not in inRun here; randomPlan needs some, too", noun)
		}
	}
}

// walk makes the tally from the plan alone.
func walk(p *plan.Plan) *tally {
	y := &tally{map[string]int{}, map[layout.Tube]int{}, map[layout.Tube]float64{}, &p.Prices}
	y.fittings["Adapter"]++
	for i, r := range p.Runs {
		if i > 0 {
			y.meet("Joiner", p.Runs[i-1].Tube, r.Tube)
		}
		y.piece(r.Tube, r.Bore, r.Length)
		for noun, n := range inRun(&r) {
			for range n { // each cuts the run
				y.fittings[noun]++
				y.piece(r.Tube, r.Bore, 0)
			}
		}
	}
	last := p.Runs[len(p.Runs)-1]
	if p.Supply.Kind == plan.GravityTank && p.Supply.Regulator > 0 {
		y.fittings["Adapter"] += 2 // at either side of it, in the lead
		y.piece(last.Tube, last.Bore, 0)
	}
	zones := map[int]bool{}
	for _, r := range p.Rows {
		zones[r.Zone] = true
	}
	if p.Header.Layout == plan.OneLine || len(p.Rows) == 1 {
		y.meet("Joiner", last.Tube, p.Rows[0].Tube)
		for i, r := range p.Rows {
			if i > 0 {
				y.meet("Elbow", p.Rows[i-1].Tube, r.Tube)
				y.fittings["Elbow"]++
				y.piece(r.Tube, r.Bore, r.Gap)
			}
			y.piece(r.Tube, r.Bore, r.Length())
		}
		y.fittings["End cap"]++
		return y
	}
	if p.Header.Feed == plan.FeedMiddle {
		y.meet("Tee", p.Header.Tube, last.Tube)
		y.piece(p.Header.Tube, p.Header.Bore, 0) // cut by that tee
		y.fittings["End cap"]++                  // the end beside row 1
		y.piece(p.Header.Tube, p.Header.Bore, layout.Stub)
	} else if layout.TubeOf(last.Tube, last.Bore) != layout.TubeOf(p.Header.Tube, p.Header.Bore) {
		y.meet("Joiner", last.Tube, p.Header.Tube)
		y.piece(p.Header.Tube, p.Header.Bore, layout.Stub)
	}
	for i, r := range p.Rows {
		y.meet("Tee", p.Header.Tube, r.Tube)
		if i > 0 {
			y.piece(p.Header.Tube, p.Header.Bore, r.Gap)
		}
		if len(zones) > 1 && p.Header.Layout == plan.HeaderAndRows {
			y.fittings["Zone valve"]++
			y.piece(r.Tube, r.Bore, 0)
		}
		if p.Header.Layout != plan.Ring {
			y.piece(r.Tube, r.Bore, r.Length())
			y.fittings["End cap"]++
			continue
		}
		longest := 0.0
		for k := range p.Rows {
			longest = max(longest, p.Rows[k].Length())
		}
		y.piece(r.Tube, r.Bore, longest)
		y.meet("Tee", p.Header.Tube, r.Tube)
		if i > 0 {
			y.piece(p.Header.Tube, p.Header.Bore, r.Gap)
		}
		if i == 0 || i == len(p.Rows)-1 {
			y.fittings["End cap"]++
			y.piece(p.Header.Tube, p.Header.Bore, layout.Stub)
		}
	}
	y.fittings["End cap"]++ // the end beside the last row
	y.piece(p.Header.Tube, p.Header.Bore, layout.Stub)
	return y
}

func TestRecount(t *testing.T) {
	for seed := range uint64(500) {
		p := randomPlan(seed)
		l := layout.New(p)
		lines := Count(l, 0, 0)
		want := walk(p)

		fittings, clamps := map[string]int{}, 0
		sum := func(g Group) (n int) {
			for _, line := range lines {
				if line.Group == g {
					n += line.Count - line.Spare
				}
			}
			return n
		}
		for _, line := range lines {
			switch {
			case strings.HasPrefix(line.Name, "Hose clamp"):
				clamps += line.Count - line.Spare
			case line.Group == Fittings && line.Item != AConnector:
				_, noun, _ := strings.Cut(line.Name[:strings.Index(line.Name, ",")], " ") // after how it holds
				fittings[unit.Capital(strings.TrimSuffix(strings.TrimSuffix(noun, " to thread"), " that opens"))] += line.Count
			}
		}
		for noun, n := range want.fittings {
			if fittings[noun] != n {
				t.Errorf("%d of %s, want %d", fittings[noun], noun, n)
			}
		}
		if len(fittings) > len(want.fittings) {
			t.Errorf("fittings %v, want %v", fittings, want.fittings)
		}
		barbs := 0
		for tube, n := range want.barbs {
			n *= map[int]int{0: 1, 1: 1, 2: 1, 10: 1, 15: 2}[tube.Entry] // clamps; none on compression fittings
			barbs += n
			if n == 0 {
				continue
			}
			if line := find(lines, clampFor(tube, 0)); line.Count-line.Spare < n {
				t.Errorf("%d clamps for %+v, want %d", line.Count-line.Spare, tube, n)
			}
		}
		if clamps != barbs {
			t.Errorf("%d clamps, want %d", clamps, barbs)
		}
		for i, tube := range l.Tubes {
			if got := lines[i]; got.Group != Tubing || got.Count != 0 || !near(got.Length, want.metres[tube]) {
				t.Errorf("%g m of %+v, want %g", got.Length, tube, want.metres[tube])
			}
		}

		emitters, slabs, blocks, plants := 0, 0, 0, 0
		for _, r := range p.Rows {
			for range r.Plants {
				plants++
				emitters += r.PerPlant
				if catalogue.Crops[r.Crop].Of(catalogue.InBlock) > 0 {
					blocks++
				}
			}
			for left := r.Plants; left > 0; left -= r.PerPiece {
				slabs++
			}
		}
		fills := 0
		for _, line := range lines {
			if strings.HasPrefix(line.Name, "Coco or other loose") {
				fills++
			}
		}
		// Emitters and stakes, spares aside.
		if got := sum(EmittersGroup); got != 2*emitters {
			t.Errorf("%d emitters and stakes, want %d of each", got, emitters)
		}
		if got := sum(Growing); got != slabs+fills+plants+blocks {
			t.Errorf("%d for growing, want %d pieces, %d fillings, %d plugs, %d blocks", got, slabs, fills, plants, blocks)
		}
		check(t, l, lines)
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

// check holds for every list: no line twice, none empty, groups in order,
// places that exist.
func check(t *testing.T, l *layout.Layout, lines []Line) {
	t.Helper()
	names, keys := map[string]bool{}, map[string]bool{}
	for i, line := range lines {
		if names[line.Name] || keys[line.Key()] {
			t.Errorf("%q, %q is listed twice", line.Name, line.Key())
		}
		names[line.Name], keys[line.Key()] = true, true
		if i > 0 && line.Group < lines[i-1].Group {
			t.Errorf("%q is out of its group", line.Name)
		}
		if line.Name == "" || line.Why == "" || line.Spare > line.Count || (line.Count > 0) == (line.Length > 0) {
			t.Errorf("%+v", line)
		}
		if line.Group == Fittings && line.Item != AConnector && len(line.Nodes) == 0 || line.Group == Tubing && len(line.Stretches) == 0 {
			t.Errorf("%q stands nowhere", line.Name)
		}
		for _, n := range line.Nodes {
			if n < 0 || n >= len(l.Points) {
				t.Errorf("%q stands at node %d of %d", line.Name, n, len(l.Points))
			}
		}
		for _, s := range line.Stretches {
			if s < 0 || s >= len(l.Stretches) || l.Stretches[s].Tube == layout.NoTube {
				t.Errorf("%q stands in stretch %d", line.Name, s)
			}
		}
	}
}

func TestSpares(t *testing.T) {
	for _, tt := range []struct{ things, want int }{{1, 2}, {8, 2}, {40, 2}, {41, 3}, {60, 3}, {61, 4}, {120, 6}} {
		if got := spares(tt.things, emitterSpare, leastSpare); got != tt.want {
			t.Errorf("%d to spare for %d emitters, want %d", got, tt.things, tt.want)
		}
	}
}
