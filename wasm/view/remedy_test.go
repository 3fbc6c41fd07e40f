package view

import (
	"html"
	"regexp"
	"strconv"
	"testing"

	"evenrow/wasm/plan"
	"evenrow/wasm/sheet"
	"evenrow/wasm/unit"
	"evenrow/wasm/water"
)

// inTheAnswer finds numbers in what the answer says.
func inTheAnswer(t *testing.T, p *plan.Plan, pattern string) (numbers []float64) {
	t.Helper()
	text := html.UnescapeString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(said(t, sheet.Answer(p), "answer"), ""))
	found := regexp.MustCompile(pattern).FindStringSubmatch(text)
	if found == nil {
		t.Fatalf("%s is not in: %s", pattern, text)
	}
	for _, f := range found[1:] {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil {
			t.Fatal(err)
		}
		numbers = append(numbers, v)
	}
	return numbers
}

// A pump bought by the figures that the page prints, whichever of the two for a
// pressure is read, is one that makes the answer Yes: bought as exactly as that,
// in either system, by what it gives at the flow and with everything shut.
func TestThePumpAsItIsPrinted(t *testing.T) {
	for _, sys := range []unit.System{unit.Metric, unit.US} {
		for _, kind := range []int{plan.PumpTwo, plan.Mains} {
			p := planOf(t, "wrong-pump")
			p.Units, p.Supply.Kind = sys, kind
			p.Supply.ShutOff, p.Supply.MaxFlow = 6, 30.0/6e4
			p.Supply.Static, p.Supply.TapFlow = 0.6e5, 30.0/6e4
			const amount = `([\d.]+)\x{a0}(?:bar|psi) \(([\d.]+)\x{a0}(?:m|ft)\)`
			v := inTheAnswer(t, p, `(?:gives|keeps) at least `+amount+` (?:while it gives|at) ([\d.]+)\x{a0}(?:L|gal)/min, and at most `+amount+` with every(?:thing shut| tap closed)\.`)
			pressure, head, flow := unit.Of(unit.Pressure, sys), unit.Of(unit.Head, sys), unit.Of(unit.Flow, sys).ToInner(v[2])
			density := water.At(p.Place.Water).Density
			metres := func(pascals float64) float64 { return pascals / density / water.Gravity }
			for _, low := range []float64{metres(pressure.ToInner(v[0])), head.ToInner(v[1])} {
				for _, top := range []float64{metres(pressure.ToInner(v[3])), head.ToInner(v[4])} {
					for _, end := range []float64{low, top - 1e-3} {
						q := p.Clone()
						q.Supply.Kind = plan.PumpPoints
						q.Supply.Points = []plan.Point{{Head: top}, {Flow: flow, Head: end}}
						if s := sheet.Answer(q); s.Verdict != sheet.Yes {
							t.Errorf("system %d, supply %d: %g m at %g L/min and %g m shut: %+v", sys, kind, end, flow*6e4, top, s.Findings[0])
						}
					}
				}
			}
		}
	}
}
