package steps

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"evenrow/wasm/grower/care"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/parts"
)

// randomPlan returns a plan with many layouts, sizes and numbers of things.
func randomPlan(seed uint64) *plan.Plan {
	rnd := rand.New(rand.NewPCG(seed, 7))
	p := plan.Default()
	soft, all := []int{0, 1, 2, 10}, []int{0, 1, 2, 3, 4, 10, 15}
	p.Supply.Kind = rnd.IntN(5)
	p.Supply.Regulator = float64(rnd.IntN(2)) * 1e5
	p.Filter.Present = rnd.IntN(2)
	plan.SectionNamed("runs").Resize(p, 1+rnd.IntN(plan.MaxRuns))
	for i := range p.Runs {
		r := &p.Runs[i]
		r.Length, r.Rise = 0.1+20*rnd.Float64(), 0.5-rnd.Float64()
		r.Elbows, r.Tees, r.Valves, r.Checks = rnd.IntN(4), rnd.IntN(3), rnd.IntN(3), rnd.IntN(2)
		r.Tube = all[rnd.IntN(len(all))]
	}
	p.Header.Layout, p.Header.Feed, p.Header.Tube = rnd.IntN(3), rnd.IntN(2), all[rnd.IntN(len(all))]
	plan.SectionNamed("emitters").Resize(p, 1+rnd.IntN(plan.MaxEmitters))
	for i := range p.Emitters {
		p.Emitters[i].Barb, p.Emitters[i].Flow = rnd.IntN(3), float64(i+1)/3.6e6
	}
	plan.SectionNamed("rows").Resize(p, 1+rnd.IntN(10))
	for i := range p.Rows {
		r := &p.Rows[i]
		r.Crop, r.Medium, r.Plants = rnd.IntN(len(catalogue.Crops)), rnd.IntN(5), 1+rnd.IntN(60)
		r.PerPiece, r.Emitter, r.PerPlant = 1+rnd.IntN(r.Plants), rnd.IntN(len(p.Emitters)), 1+rnd.IntN(4)
		r.Gap, r.First, r.Spacing, r.Zone = 2*rnd.Float64(), rnd.Float64(), 0.1+rnd.Float64(), 1+rnd.IntN(2)
		r.Tube = soft[rnd.IntN(len(soft))]
	}
	for i := range p.Prices.Rolls {
		p.Prices.Rolls[i] = [...]float64{0, 8, 25, 50}[rnd.IntN(4)]
	}
	return p
}

// walked is what somebody notes who walks along the plan: metres of tubing of each step,
// and how many elbows, valves, tees and caps each step fits.
func walked(p *plan.Plan) (metres map[Kind]float64, fitted map[Kind]map[string]int) {
	metres, fitted = map[Kind]float64{}, map[Kind]map[string]int{Lead: {}, Header: {}, Rows: {}, Flush: {}}
	for _, r := range p.Runs {
		metres[Lead] += r.Length
		fitted[Lead]["elbow"] += r.Elbows
		fitted[Lead]["tee"] += r.Tees
		fitted[Lead]["ball valve"] += r.Valves
		fitted[Lead]["check valve"] += r.Checks
	}
	zones, longest := map[int]bool{}, 0.0
	for i, r := range p.Rows {
		zones[r.Zone] = true
		longest = max(longest, r.Length())
		if i > 0 {
			metres[Header] += r.Gap
		}
	}
	if p.Header.Layout == plan.OneLine || len(p.Rows) == 1 {
		metres[Rows], metres[Header] = metres[Header], 0
		for _, r := range p.Rows {
			metres[Rows] += r.Length()
		}
		fitted[Rows]["elbow"] = 2 * (len(p.Rows) - 1)
		fitted[Rows]["end cap"] = 1
		return metres, fitted
	}
	n := len(p.Rows)
	fitted[Header]["tee"], fitted[Rows]["end cap"] = n, 1
	metres[Header] += layout.Stub
	last := p.Runs[len(p.Runs)-1]
	switch {
	case p.Header.Feed == plan.FeedMiddle:
		fitted[Header]["tee"]++
		fitted[Rows]["end cap"]++
		metres[Header] += layout.Stub
	case layout.TubeOf(last.Tube, last.Bore) != layout.TubeOf(p.Header.Tube, p.Header.Bore):
		metres[Header] += layout.Stub
	}
	if p.Header.Layout == plan.Ring {
		for i, r := range p.Rows {
			if i > 0 {
				metres[Header] += r.Gap
			}
			metres[Rows] += longest
		}
		fitted[Header]["tee"] += n
		fitted[Rows]["end cap"] += 2
		metres[Header] += 2 * layout.Stub
		return metres, fitted
	}
	for _, r := range p.Rows {
		metres[Rows] += r.Length()
	}
	fitted[Rows]["end cap"] += n
	if len(zones) > 1 {
		fitted[Rows]["zone valve"] = n
	}
	return metres, fitted
}

// Nothing is in the steps that the list lacks, and the reverse, piece by piece; and each
// step has what somebody notes who walks along the plan.
func TestStepsAndListAgree(t *testing.T) {
	for seed := range uint64(500) {
		p := randomPlan(seed)
		l := layout.New(p)
		list := parts.Count(l, 2e5, 3e5)
		all := Of(l, list)
		count, spare, length, used := make([]int, len(list)), make([]int, len(list)), make([]float64, len(list)), make([]int, len(list))
		metres, fitted := map[Kind]float64{}, map[Kind]map[string]int{}
		for i := range all {
			s := &all[i]
			if i > 0 && s.Kind <= all[i-1].Kind {
				t.Errorf("%s follows %s", Keys[s.Kind], Keys[all[i-1].Kind])
			}
			fitted[s.Kind] = map[string]int{}
			for k, u := range s.Takes {
				n := &list[u.Line]
				if k > 0 && u.Line <= s.Takes[k-1].Line {
					t.Errorf("%s takes %s twice, or out of order", Keys[s.Kind], n.Name)
				}
				if u.Count+u.Spare == 0 && u.Length == 0 {
					t.Errorf("%s takes nothing of %s", Keys[s.Kind], n.Name)
				}
				count[u.Line] += u.Count
				spare[u.Line] += u.Spare
				length[u.Line] += u.Length
				metres[s.Kind] += u.Length
				for _, noun := range []string{"elbow", "tee", "ball valve", "check valve", "zone valve", "end cap"} {
					if n.Item == parts.AJoint && strings.Contains(n.Name, " "+noun) {
						fitted[s.Kind][noun] += u.Count
					}
				}
			}
			for _, k := range s.Tools {
				used[k]++
			}
		}
		for i := range list {
			n := &list[i]
			switch {
			case n.Group == parts.Tools:
				if used[i] == 0 || count[i]+spare[i] > 0 {
					t.Errorf("the tool %s is used in %d steps, and %d taken", n.Name, used[i], count[i]+spare[i])
				}
			case used[i] > 0:
				t.Errorf("%s is a tool, and no line of the tools", n.Name)
			case count[i]+spare[i] != n.Count || spare[i] != n.Spare || math.Abs(length[i]-n.Length) > 1e-9:
				t.Errorf("%s: the steps take %d, %d to spare, %g m; the list has %d, %d to spare, %g m", n.Name, count[i], spare[i], length[i], n.Count, n.Spare, n.Length)
			}
		}
		wantMetres, wantFitted := walked(p)
		for k := range Kind(Kinds) {
			if math.Abs(metres[k]-wantMetres[k]) > 1e-6 {
				t.Errorf("%s takes %g m of tubing, want %g", Keys[k], metres[k], wantMetres[k])
			}
			for _, noun := range []string{"elbow", "tee", "ball valve", "check valve", "zone valve", "end cap"} {
				if got, want := fitted[k][noun], wantFitted[k][noun]; got != want {
					t.Errorf("%s fits %d of %s, want %d", Keys[k], got, noun, want)
				}
			}
		}
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

// A step is there only where its plan has it, and what can hurt is said only where it is.
func TestWhichSteps(t *testing.T) {
	said := func(change func(*plan.Plan)) string {
		p := plan.Default()
		change(p)
		l := layout.New(p)
		var b strings.Builder
		for _, s := range Of(l, parts.Count(l, 2e5, 3e5)) {
			fmt.Fprintf(&b, "%s", Keys[s.Kind])
			if s.Hazards.Has(care.Current) {
				b.WriteString("*")
			}
			b.WriteString(" ")
		}
		return b.String()
	}
	for _, c := range []struct {
		name   string
		change func(*plan.Plan)
		want   string // with * where current can hurt
	}{
		{"the example", func(p *plan.Plan) {}, "place supply* filter lead header rows media power* fill* flush* emitters* leaks* gauges* cups* plants "},
		{"a tap", func(p *plan.Plan) { p.Supply.Kind = plan.Mains; p.Supply.Static = 3e5 }, "place supply filter lead header rows media fill flush emitters leaks gauges cups plants "},
		{"a tank that stands too low for a gauge, no filter, one line", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Regulator, p.Filter.Present, p.Header.Layout = plan.GravityTank, 0, 0, plan.OneLine
		}, "place supply lead rows media fill flush emitters leaks cups plants "},
	} {
		if got := said(c.change); got != c.want {
			t.Errorf("%s:\n%s\n%s", c.name, got, c.want)
		}
	}
}

func TestTimesAreRough(t *testing.T) {
	for minutes, want := range map[float64]int{0: 5, 7: 5, 8: 10, 58: 60, 70: 75, 100: 105, 190: 180, 200: 210} {
		if got := about(minutes); got != want {
			t.Errorf("%g min are about %d, want %d", minutes, got, want)
		}
	}
	// More plants take longer.
	p := plan.Default()
	small := layout.New(p)
	few := Of(small, parts.Count(small, 0, 0))
	for i := range p.Rows {
		p.Rows[i].Plants *= 3
	}
	large := layout.New(p)
	many := Of(large, parts.Count(large, 0, 0))
	for i := range few {
		if few[i].Kind == Emitters && few[i].Minutes >= many[i].Minutes {
			t.Errorf("%d min for %d emitters, and %d for three times as many", few[i].Minutes, len(small.Plants), many[i].Minutes)
		}
	}
}
