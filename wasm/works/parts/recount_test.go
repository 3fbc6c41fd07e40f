package parts

import (
	"maps"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/chain"
	"evenrow/wasm/works/layout"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-5 }

// lowSet is what a regulator may be set to in Pa, and water stands 1.5 m high by.
const lowSet = 1.5e4

// randomPlan returns a plan with many layouts, sizes and numbers of things.
func randomPlan(seed uint64) *plan.Plan {
	rnd := rand.New(rand.NewPCG(seed, 2))
	p := plan.Default()
	soft, all := []int{0, 1, 2, 10}, []int{0, 1, 2, 3, 4, 10, 15}
	size := func(t *int, bore *float64, of []int) {
		*t, *bore = of[rnd.IntN(len(of))], 0.01+0.001*float64(rnd.IntN(3))
	}
	p.Supply.Kind = rnd.IntN(5)
	p.Supply.Regulator = [...]float64{0, lowSet, 1e5, 1e5}[rnd.IntN(4)]
	p.Supply.Fill = rnd.IntN(2)
	p.Filter.Present = rnd.IntN(2)
	plan.SectionNamed("runs").Resize(p, 1+rnd.IntN(plan.MaxRuns))
	for i := range p.Runs {
		r := &p.Runs[i]
		r.Length = 0.1 + 20*rnd.Float64()
		if p.Supply.Kind == plan.GravityTank {
			r.Rise = -3*rnd.Float64() + 0.5
		}
		r.Elbows, r.Tees, r.Valves, r.Checks = rnd.IntN(4), rnd.IntN(3), rnd.IntN(3), rnd.IntN(2)
		size(&r.Tube, &r.Bore, all)
	}
	p.Header.Layout, p.Header.Feed = rnd.IntN(3), rnd.IntN(2)
	size(&p.Header.Tube, &p.Header.Bore, all)
	plan.SectionNamed("emitters").Resize(p, 1+rnd.IntN(plan.MaxEmitters))
	for i := range p.Emitters {
		p.Emitters[i].Flow = float64(i+1) / 3.6e6
		p.Emitters[i].Barb = rnd.IntN(3)
		p.Emitters[i].Micro = 0.3 * float64(rnd.IntN(3))
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
	threads  map[[3]int]int // where a thread stands between two kinds of tubing: its entries, and whether a joiner is all that is there

	gauges, hoses, threaded int                 // gauges, clear hoses, and tees of gauges between threads
	tees                    map[layout.Tube]int // of gauges, in tubing
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
// with an adapter.
func (y *tally) meet(noun string, a, b int) {
	kinds := map[int]string{1: "mm", 2: "mm", 3: "SDR", 4: "SDR", 10: "in", 15: "SIDR"}
	soft := func(kind string) bool { return kind == "mm" || kind == "in" }
	measured := a == catalogue.Custom && (b == a || soft(kinds[b])) || b == catalogue.Custom && soft(kinds[a])
	if !measured && kinds[a] != kinds[b] {
		if noun == "Joiner" {
			y.threads[[3]int{a, b, 0}]++
			return
		}
		y.threads[[3]int{a, b, 1}]++
	}
	y.fittings[noun]++
}

// gauge notes the gauges: at the supply, before and after a filter, and at the end of
// the last row. A tank has one at its header instead of at the supply, and where its
// water stands no higher than an arm holds a hose, that hose; below its own level
// nothing shows.
func (y *tally) gauge(p *plan.Plan) {
	last := p.Rows[len(p.Rows)-1]
	lead := p.Runs[len(p.Runs)-1]
	far := layout.TubeOf(last.Tube, last.Bore)
	if p.Supply.Kind != plan.GravityTank {
		y.threaded = 1
		if p.Filter.Present != 0 {
			y.threaded = 2
		}
		// Behind a regulator that lets through no more than an arm's height of water, a hose
		// stands in for what is there.
		if p.Supply.Regulator == lowSet && !p.Supply.Sought() {
			y.hoses = 1
			if y.threaded == 1 {
				y.threaded = 0
			}
			y.gauges = y.threaded
			return
		}
		y.gauges = y.threaded + 1
		y.tees[far]++
		y.barbs[far] += 2
		return
	}
	level, least := 0.0, 0.0
	for _, r := range p.Runs {
		level += r.Rise
		least = min(least, level)
	}
	switch {
	case least == 0:
	case least >= -2.5:
		y.hoses = 1
	default:
		y.gauges = 2
		for _, t := range []layout.Tube{layout.TubeOf(lead.Tube, lead.Bore), far} {
			y.tees[t]++
			y.barbs[t] += 2
		}
	}
}

// around is the clamp of tubing by its entry, in shops of either kind: by a table of the
// trade, whose middle is nearest; PE pipe on inserts takes two.
func around(sys unit.System, entry int) (size string, each int) {
	switch entry {
	case 1:
		return [...]string{"12-20 mm", "SAE 6"}[sys], 1
	case 2:
		return [...]string{"16-27 mm", "SAE 10"}[sys], 1
	case 10:
		return [...]string{"12-20 mm", "SAE 8"}[sys], 1
	case 15:
		return [...]string{"25-40 mm", "SAE 16"}[sys], 2
	case catalogue.Custom:
		return "measured", 1
	}
	return "", 0
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
	y := &tally{map[string]int{}, map[layout.Tube]int{}, map[layout.Tube]float64{}, &p.Prices, map[[3]int]int{}, 0, 0, 0, map[layout.Tube]int{}}
	y.gauge(p)
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
	seen := map[Item]int{}
	for seed := range uint64(500) {
		p := randomPlan(seed)
		p.Units = unit.System(seed % unit.Systems)
		l := layout.New(p)
		lines := Count(l, 0, 0)
		want := walk(p)

		fittings, got, length := map[string]int{}, map[Item]int{}, map[Item]float64{}
		clamps := map[string]int{} // by the size of the trade
		tees := map[string]int{}   // of gauges, by what they are cut into
		for _, line := range lines {
			seen[line.Item]++
			got[line.Item] += line.Count - line.Spare
			length[line.Item] += line.Length
			switch {
			case line.Item == AClamp:
				size := "measured"
				if _, named, ok := strings.Cut(line.Name, "clamp, "); ok {
					size, _, _ = strings.Cut(named, ",")
				}
				if line.Spare == 0 {
					t.Errorf("no clamp to spare: %+v", line)
				}
				clamps[size] += line.Count - line.Spare
			case line.Item == AGaugeTee:
				tees[line.Size] += line.Count
			case line.Group == Fittings && line.Item != AConnector:
				_, noun, _ := strings.Cut(line.Name[:strings.Index(line.Name, ",")], " ") // after how it holds
				fittings[unit.Capital(strings.TrimSuffix(noun, " that opens"))] += line.Count
			}
		}
		for noun, n := range want.fittings {
			if fittings[noun] != n {
				t.Errorf("%d of %s, want %d", fittings[noun], noun, n)
			}
		}
		// Parts of chains: as many as the search has found, at each place where they are needed.
		chains, needed, parts := chain.Of(p), 0, 0
		for pair, n := range want.threads {
			found, ok := chains.Between(pair[0], pair[1], pair[2] == 1)
			if !ok {
				t.Errorf("tubing %v meets without a thread", pair)
			}
			needed += n * len(found.Gap.Steps)
		}
		for _, line := range lines {
			if line.Item == AConnector {
				parts += line.Count
			}
		}
		if needed += chains.Supply.Parts() + chains.Header.Parts(); parts != needed {
			t.Errorf("%d parts of chains, want %d", parts, needed)
		}
		if len(fittings) > len(want.fittings) {
			t.Errorf("fittings %v, want %v", fittings, want.fittings)
		}
		clamped := map[string]int{}
		for tube, n := range want.barbs {
			if size, each := around(p.Units, tube.Entry); each > 0 {
				clamped[size] += n * each
			}
		}
		if !maps.Equal(clamps, clamped) {
			t.Errorf("clamps %v, want %v", clamps, clamped)
		}
		for i, tube := range l.Tubes {
			if got := lines[i]; got.Group != Tubing || got.Count != 0 || !near(got.Length, want.metres[tube]) {
				t.Errorf("%g m of %+v, want %g", got.Length, tube, want.metres[tube])
			}
		}
		for _, n := range want.tees {
			want.threaded += n // all tees together
		}
		if got[AGauge] != want.gauges || got[AGaugeTee] != want.threaded || got[AClearHose] != want.hoses || got[AGauge] != got[AGaugeTee] {
			t.Errorf("%d gauges on %d tees, %d hoses, want %d, %d, %d", got[AGauge], got[AGaugeTee], got[AClearHose], want.gauges, want.threaded, want.hoses)
		}
		for i, tube := range l.Tubes {
			if size := strconv.Itoa(tube.Entry); tube.Entry != catalogue.Custom && tees[size] != want.tees[tube] {
				t.Errorf("%d tees of gauges in tubing %d, want %d", tees[size], i, want.tees[tube])
			}
		}

		emitters, slabs, blocks, plants := 0, 0, 0, 0
		threads, micro, crops, barbs, filled := 0.0, 0, map[string]bool{}, map[int]bool{}, 0
		for _, r := range p.Rows {
			crops[p.CropName(r.Crop)] = true
			e := &p.Emitters[r.Emitter]
			barbs[e.Barb] = true
			if r.Medium == plan.Bucket || r.Medium == plan.Pot {
				filled = 1
			}
			for range r.Plants {
				plants++
				for range r.PerPlant {
					emitters++
					if e.Micro > 0 {
						micro++
						threads += e.Micro
					}
				}
				if catalogue.Crops[r.Crop].Of(catalogue.InBlock) > 0 {
					blocks++
				}
			}
			for left := r.Plants; left > 0; left -= r.PerPiece {
				slabs++
			}
		}
		if !near(length[AMicroTubing], threads) {
			t.Errorf("%g m of micro tubing, want %g", length[AMicroTubing], threads)
		}
		yes := func(b bool) int {
			if b {
				return 1
			}
			return 0
		}
		tank, tap := yes(p.Supply.Kind != plan.Mains), yes(p.Supply.Kind == plan.Mains)
		high := yes(p.Supply.Kind == plan.GravityTank)
		pump := tank - high
		for item, n := range map[Item]int{
			AnEmitter: emitters, AMicroConnector: micro, AStake: emitters,
			AMedium: slabs, ADrainTray: slabs, AFilling: filled, ASowingPlug: plants, ARaisingBlock: blocks,
			ADrainCan: len(crops), AnECMeter: 1, AnECFluid: 1, APHMeter: 1, APHFluid: 2,
			ATank: tank, ATankStand: tank, AFloatValve: tank * p.Supply.Fill, ATankOutlet: high, ATimerValve: high + tap, ABackflow: tap,
			APump: pump, AProtectedOutlet: pump, APlugCover: pump, ACordHook: pump, APumpTimer: pump,
			AFilter: p.Filter.Present, ARegulator: yes(p.Supply.Regulator > 0 && !p.Supply.Sought()),
			APunch: len(barbs), ACutter: 1, ATapeMeasure: 1, AMarker: 1, AThreadTape: 1, AMeasuringJug: 1, AKitchenTimer: 1,
			ATestCups: min(emitters, 20), AClampDriver: yes(len(clamped) > 0),
		} {
			if got[item] != n {
				t.Errorf("%d of %s, want %d", got[item], Kinds[item].Key, n)
			}
		}
		check(t, l, lines)
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
	for _, item := range []Item{AClearHose, AGauge, AMicroTubing, AFloatValve, AFilling, ARaisingBlock} {
		if seen[item] < 20 {
			t.Errorf("%s is on %d of the lists", Kinds[item].Key, seen[item])
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
		if line.Group == Fittings && line.Item != AConnector && len(line.Nodes) == 0 || line.Item == ATube && len(line.Stretches) == 0 {
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
