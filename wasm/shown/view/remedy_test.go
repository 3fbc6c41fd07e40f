package view

import (
	"html"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/layout"
)

// inTheAnswer finds numbers in what the answer says.
func inTheAnswer(t *testing.T, p *plan.Plan, pattern string) (numbers []float64) {
	t.Helper()
	s := sheet.Answer(p)
	text := html.UnescapeString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(said(t, s, "answer")+said(t, s, "helps"), ""))
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

// What helps is said with its cost, two changes as a sentence each with one link,
// and what has no price last.
func TestWhatHelpsInWords(t *testing.T) {
	fast := plan.Default()
	fast.Limits.Speed = 0.3
	fast.Runs[0].Tube, fast.Header.Tube, fast.Header.Layout = 1, 1, plan.Ring
	for i := range fast.Rows {
		fast.Rows[i].PerPlant = 2
	}
	short := plan.Default()
	short.Supply.Regulator, short.Runs[0].Length, short.Runs[0].Tube, short.Runs[0].Rise = 0, 80, 2, 15
	weak := planOf(t, "wrong-pump")
	weak.Supply.Regulator = 2e5
	tight := planOf(t, "wrong-pump")
	tight.Supply.Regulator = 3e5 // more than its rows may carry in the sun
	for _, tt := range []struct {
		p    *plan.Plan
		want string
	}{
		{fast, `Do both: Lay the supply line in \d+ mm( PE)? tubing\. Make the header of \d+ mm( PE)? tubing\. With both, the answer is Yes\. It costs \d+\.\d\d more than your plan\. Open the plan with both`},
		{short, `Cheapest first, at the prices under Prices; what they do not cover comes last\.`},
		{planOf(t, "long-field"), `Split the rows into 2 zones, and water one after another\. With it, the answer is Yes\. It costs 146\.00 more than your plan\.`},
		{planOf(t, "wrong-pump"), `every(thing shut)\. With it, the answer is Yes\. Its price is not in the plan\. Open the plan with such a pump`},
		{weak, `at 4\.00.L/min, before the regulator that you have\. With it`},
		{tight, `at 4\.00.L/min, and set the regulator to 1\.\d\d.bar \(1\d\.\d.m\)\. With it`},
	} {
		html := Explored(sheet.Answer(tt.p), sheet.Helping, func(*plan.Plan) string { return "#1x" })[0].HTML
		text := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(html, "")
		if !regexp.MustCompile(tt.want).MatchString(text) {
			t.Errorf("%s: not said: %s\nin %s", tt.p.Name, tt.want, text)
		}
	}
	for key, want := range map[string]bool{"long-field": true, "ring": false} {
		s := sheet.Answer(planOf(t, key))
		s.Explore(sheet.Searching)
		if strings.Contains(said(t, s, "designs"), "Each row flushes clean with the other rows shut.") != want {
			t.Errorf("%s: that its designs flush is said: %t, want %t", key, !want, want)
		}
	}
}

// A pump or a tap that would burst the tubing, or press the emitters above
// their range, is not said to help: the answer says what it breaks.
func TestNoPumpThatBurstsTheTubing(t *testing.T) {
	// One line of small tubing through all rows: what its end wants, its
	// beginning cannot carry.
	long := planOf(t, "ring")
	long.Header.Layout = plan.OneLine
	long.Supply.Kind, long.Supply.ShutOff, long.Supply.MaxFlow = plan.PumpTwo, 24, 15.0/6e4
	for i := range long.Rows {
		long.Rows[i].Plants, long.Rows[i].PerPlant = 75, 2
	}
	long.Place.Length, long.Place.Width = 40, 12
	tap := long.Clone()
	tap.Supply.Kind, tap.Supply.Static, tap.Supply.TapFlow = plan.Mains, 2e5, 15.0/6e4
	high := long.Clone()
	for i := range high.Emitters {
		high.Emitters[i].Highest = 2e5
	}
	for _, tt := range []struct {
		p    *plan.Plan
		want string
	}{
		{long, `No pump alone can do it: it would have to give [\d.]+.bar \([\d.]+.m\) at [\d.]+.L/min, and the weakest tubing may carry 2\.44.bar \(24\.9.m\) in the sun\.`},
		{tap, `No tap alone can do it: it would have to give [\d.]+.bar \([\d.]+.m\) at [\d.]+.L/min, and the weakest tubing may carry 2\.44.bar \(24\.9.m\) in the sun\.`},
		{high, `No pump alone can do it: it would have to give [\d.]+.bar \([\d.]+.m\) at [\d.]+.L/min, and the emitters are made for 2\.00.bar \(20\.4.m\) at most\.`},
		{planOf(t, "wrong-pump"), `Use a pump that gives`},
	} {
		text := html.UnescapeString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(said(t, sheet.Answer(tt.p), "helps"), ""))
		if !regexp.MustCompile(tt.want).MatchString(text) {
			t.Errorf("%s: not said: %s\nin %s", tt.p.Name, tt.want, text)
		}
		if strings.Contains(tt.want, "alone") && strings.Contains(text, "is not enough by itself") {
			t.Errorf("%s: it is said to help: %s", tt.p.Name, text)
		}
	}
}

// Where rows that are watered together have different emitters, no tubing mends
// that: the designs say so, and blame no supply for it. Where the tubing is to
// blame they say so.
func TestNoDesignMendsUnlikeEmitters(t *testing.T) {
	// A loop, whose rows no zones part, one row of which has two emitters a plant.
	p := plan.Default()
	p.Header.Layout = plan.Ring
	p.Rows[2].PerPlant = 2
	for _, tt := range []struct {
		p      *plan.Plan
		unlike bool
	}{{p, true}, {planOf(t, "wrong-pump"), false}} {
		s := sheet.Answer(tt.p)
		s.Explore(sheet.Searching)
		text := said(t, s, "designs")
		const why = "No tubing changes that rows watered together have different emitters: see What helps"
		if strings.Contains(text, why) != tt.unlike || tt.unlike && strings.Contains(text, "most often") {
			t.Errorf("%s: %s", tt.p.Name, text)
		}
	}
}

// The designs call a pump too weak only where its curve is below what is wanted,
// and one that is too strong so.
func TestDesignsSayWhetherThePumpIsTooWeak(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 31))
	weak, strong := 0, 0
	for n := range 40 {
		p := plan.Default()
		p.Supply.Kind, p.Supply.Regulator = plan.PumpTwo, 0
		if n%3 == 0 {
			p.Supply.Regulator = (0.5 + 2*r.Float64()) * 1e5
		}
		p.Supply.ShutOff, p.Supply.MaxFlow = 8+30*r.Float64(), (4+30*r.Float64())/6e4
		p.Limits.Speed = 0.3 + r.Float64()
		if n == 0 {
			p = plan.Default()
			p.Supply.Regulator = 0
		}
		s := sheet.Answer(p)
		s.Explore(sheet.Searching)
		text := said(t, s, "designs")
		q := p.Clone()
		q.Supply.Regulator = 0
		curve := layout.New(q).Curve
		below := 0
		for _, b := range s.Designs.Best {
			if h, _ := curve.Head(b.Flow); !b.Present && h < b.Head {
				below++
			}
		}
		if got := strings.Count(text, "more than the pump that you have gives"); got > below {
			t.Errorf("plan %d, %+v: said %d times, true of %d: %s", n, p.Supply, got, below, text)
		}
		if below > 0 && strings.Contains(text, "more than the pump that you have gives") {
			weak++
		}
		if strings.Contains(text, "too strong") {
			strong++
			b := s.Designs.Best[0]
			if s.Verdict == sheet.Yes || b.Take.Supply.Regulator != b.Regulator || sheet.Answer(b.Take).Verdict != sheet.Yes {
				t.Errorf("plan %d: a regulator set to %g does not make it fit", n, b.Regulator)
			}
		}
		if n == 0 && !strings.Contains(text, "Your pump is too strong for any of them as it stands. Behind a regulator set to 1.30") {
			t.Error(text)
		}
	}
	if weak < 3 || strong < 5 {
		t.Errorf("%d plans of weak pumps, %d of strong ones", weak, strong)
	}
}

// What helps and the designs name the same least cost for a tank, too.
func TestATankInTheAnswerAndTheDesigns(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
	p.Runs[0].Rise, p.Limits.Speed, p.Runs[0].Tube, p.Header.Tube = -1, 0.4, 1, 1
	for i := range p.Rows {
		p.Rows[i].Plants = 25
	}
	s := sheet.Answer(p)
	s.Explore(sheet.Searching)
	if len(s.Fixes) == 0 || !s.Fixes[0].Solves || len(s.Designs.Best) == 0 {
		t.Fatalf("%+v", s.Fixes)
	}
	for i := range s.Fixes {
		f := &s.Fixes[i]
		if least := s.Designs.Best[0].Cost - s.Designs.Now; f.Kind != sheet.OneEmitter && f.Kind != sheet.LowerEmitters && f.Cost < least-0.005 {
			t.Errorf("%+v costs %g more, and the cheapest design %g", f.Change, f.Cost, least)
		}
	}
}

// The answer and the designs raise a tank by the same, for the same tubing.
func TestTheTankIsRaisedByTheSame(t *testing.T) {
	for _, sys := range []unit.System{unit.Metric, unit.US} {
		p := planOf(t, "balcony")
		p.Units, p.Runs[0].Rise = sys, 0.3
		s := sheet.Answer(p)
		s.Explore(sheet.Searching)
		by := regexp.MustCompile(`Raise the tank by ([\d.]+\x{a0}(?:m|ft))\.`)
		answer, designs := by.FindStringSubmatch(said(t, s, "helps")), by.FindStringSubmatch(said(t, s, "designs"))
		if answer == nil || designs == nil || answer[1] != designs[1] {
			t.Errorf("system %d: the answer says %q, the designs %q", sys, answer, designs)
		}
	}
}
