package build

import (
	"html"
	"math"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/works/steps"
)

// plans differ in what drives the water and in how it is laid out.
func plans() map[string]*plan.Plan {
	all := map[string]*plan.Plan{}
	for name, change := range map[string]func(*plan.Plan){
		"a pump":               func(p *plan.Plan) {},
		"a pump, no regulator": func(p *plan.Plan) { p.Supply.Regulator = 0 },
		"a pump, no filter":    func(p *plan.Plan) { p.Filter.Present = 0 },
		"two zones":            func(p *plan.Plan) { p.Rows[2].Zone, p.Rows[3].Zone = 2, 2 },
		"a tap":                func(p *plan.Plan) { p.Supply.Kind, p.Supply.Static, p.Supply.TapFlow = plan.Mains, 3e5, 3e-4 },
		"a tank up high": func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
			p.Runs[0].Rise = -12
		},
		"one line":             func(p *plan.Plan) { p.Header.Layout = plan.OneLine },
		"a pump yet to be had": func(p *plan.Plan) { p.Supply.Kind = plan.PumpWanted },
	} {
		p := plan.Default()
		change(p)
		all[name] = p
	}
	return all
}

// What a step declares stands in sight, before what is done, and nothing else does.
func TestHazardsStandInPlace(t *testing.T) {
	met := care.Set(0)
	for name, p := range plans() {
		s := sheet.Bare(p)
		all := steps.Of(s.Layout, s.Parts)
		drawn := strings.Split(drawn(p, Steps), `<div class="step">`)[1:]
		if len(drawn) != len(all) {
			t.Fatalf("%s: %d steps are drawn, want %d", name, len(drawn), len(all))
		}
		for i := range all {
			here := name + ", " + steps.Keys[all[i].Kind]
			last := 0
			for _, c := range care.Catalogue {
				at := strings.Index(drawn[i], `<p class="hazard">`+strings.ReplaceAll(words.Say(c.Short), "'", "&#39;")+`</p>`)
				if (all[i].Hazards&c.Hazards != 0 && c.Applies(p)) != (at >= 0) {
					t.Errorf("%s: %s stands at %d", here, c.Name, at)
				}
				last = max(last, at)
			}
			met |= all[i].Hazards
			if first := strings.Index(drawn[i], "<p>"); first < last {
				t.Errorf("%s: something stands before a caution", here)
			}
			if strings.Contains(drawn[i], "<details") {
				t.Errorf("%s: something is folded away", here)
			}
		}
	}
	for h := range care.Hazard(care.Hazards) {
		if !met.Has(h) && h != care.Swelter { // which is of plants
			t.Errorf("no step here has %s", words.Say(care.Names[h]))
		}
	}
}

// While it looks for leaks, a pump never works against a shut end: the step comes after
// the emitters are in, and says so.
func TestAPumpIsNeverShut(t *testing.T) {
	for name, p := range plans() {
		s := sheet.Bare(p)
		at := map[steps.Kind]int{}
		for i, step := range steps.Of(s.Layout, s.Parts) {
			at[step.Kind] = i + 1
		}
		if at[steps.Emitters] == 0 || at[steps.Leaks] < at[steps.Emitters] || at[steps.Fill] < at[steps.Power] || at[steps.Flush] > at[steps.Emitters] {
			t.Errorf("%s: the order is %v", name, at)
		}
		said := drawn(p, Steps)
		if pump := at[steps.Power] > 0; pump != strings.Contains(said, "so that the pump never runs with every way out shut") {
			t.Errorf("%s: a pump %v", name, pump)
		}
	}
}

// The expected readings are those of the solver's own nodes.
func TestExpectedReadings(t *testing.T) {
	for name, p := range plans() {
		s := sheet.Bare(p)
		sc := part{scene.New(s, nil)}
		l := s.Layout
		said := drawn(p, Steps)
		if len(s.Zones) == 0 {
			t.Errorf("%s: no water", name)
			continue
		}
		if wanted := s.Wanted != nil; wanted != strings.Contains(said, "They are right once yours is bought") {
			t.Errorf("%s: a pump yet to be bought: %v", name, wanted)
		}
		bar := 1e3 * 9.80665 // Pa a m, to a percent
		for i := range s.Zones {
			z := &s.Zones[i]
			for _, r := range sc.expected(z) {
				var want float64
				switch r.where {
				case "At the end of the last row":
					last := l.Plants[len(l.Plants)-1]
					want = z.Solution.Head[last.Node] - l.Points[last.Node].Z // a few centimetres before it, where little flows
				case "At the header":
					tee := l.Tees[0]
					want = z.Solution.Head[tee] - l.Points[tee].Z
				case "Before the filter", "At the supply":
					switch p.Supply.Kind {
					case plan.PumpPoints:
						points := make([]pump.Point, len(p.Supply.Points))
						for k, q := range p.Supply.Points {
							points[k] = pump.Point{Flow: q.Flow, Head: q.Head}
						}
						c, _ := pump.ByPoints(points)
						want, _ = c.Head(z.Flow)
					case plan.Mains:
						c, _ := pump.Tap(l.Network.Water.HeadOf(p.Supply.Static), p.Supply.TapFlow)
						want, _ = c.Head(z.Flow)
					default:
						want = z.Head
					}
				case "After the filter":
					before := sc.expected(z)[0].pascal / l.Network.Water.PressureHead(1)
					k := l.Network.Links[l.FilterLink]
					want = before - (z.Solution.Head[k.From] - z.Solution.Head[k.To])
				case "After the regulator":
					want = l.Network.Water.HeadOf(p.Supply.Regulator)
				default:
					t.Errorf("%s: a reading %q", name, r.where)
				}
				if got := r.pascal / bar; math.Abs(got-want) > 0.02*math.Abs(want)+0.05 {
					t.Errorf("%s, zone %d, %s: %g m, want %g", name, z.Zone, r.where, got, want)
				}
				if text := sc.Amount(unit.Pressure, r.pascal); !strings.Contains(said, strings.ReplaceAll(text, "\u00a0", " ")) {
					t.Errorf("%s: %s is not said", name, text)
				}
			}
		}
	}
}

// A cup holds what its emitter gives in five minutes, and the band is as wide as the
// emitters differ.
func TestCups(t *testing.T) {
	for name, p := range plans() {
		s := sheet.Bare(p)
		sc := part{scene.New(s, nil)}
		said := drawn(p, Steps)
		for row := range p.Rows {
			least, most := math.Inf(1), 0.0
			for i := range s.Zones {
				z := &s.Zones[i]
				for _, plant := range s.Layout.Plants {
					if plant.Row == row && s.Layout.ZoneOf(row) == z.Zone {
						ml := z.Solution.Out[plant.Node] * 5 * 60 / float64(p.Rows[row].PerPlant)
						least, most = min(least, ml), max(most, ml)
					}
				}
			}
			cv := p.Emitters[p.Rows[row].Emitter].CV
			lo, hi := sc.cup(row)
			if math.Abs(lo/(least*(1-2*cv))-1) > 1e-6 || math.Abs(hi/(most*(1+2*cv))-1) > 1e-6 {
				t.Errorf("%s, row %d: %g to %g mL, want %g to %g", name, row+1, lo*1e6, hi*1e6, least*(1-2*cv)*1e6, most*(1+2*cv)*1e6)
			}
			if !strings.Contains(said, strings.ReplaceAll(sc.Amount(unit.Dose, lo), "\u00a0", " ")) {
				t.Errorf("%s, row %d: what a cup holds is not said", name, row+1)
			}
		}
	}
	// A plan whose pump is not known says so.
	p := plan.Default()
	p.Supply.Kind = plan.PumpPower
	if s := sheet.Bare(p); len(s.Zones) == 0 && !strings.Contains(drawn(p, Steps), "worked out as soon as the plan says what drives the water") {
		t.Error("nothing is said of a pump that is not known")
	}
}

// Every number of the steps is that of the list, and each part is led to once.
func TestNumbersAreThoseOfTheList(t *testing.T) {
	number := regexp.MustCompile(`id="take-(\d+)"[^>]*>(\d+)</span> (?:[^<]*? × |[\d.]+ m of )?([^<]*)`)
	for name, p := range plans() {
		s := sheet.Bare(p)
		had := map[string]bool{}
		for _, m := range number.FindAllStringSubmatch(drawn(p, Steps), -1) {
			if m[1] != m[2] || had[m[1]] {
				t.Errorf("%s: %q", name, m)
			}
			had[m[1]] = true
			n := 0
			for _, c := range m[1] {
				n = 10*n + int(c-'0')
			}
			if want := strings.ReplaceAll(s.Parts[n-1].Name, "\u00a0", " "); !strings.HasPrefix(html.UnescapeString(m[3]), want) {
				t.Errorf("%s: number %d is %q, in the list %q", name, n, m[3], want)
			}
		}
		if len(had) != len(s.Parts) {
			t.Errorf("%s: the steps lead to %d parts of %d", name, len(had), len(s.Parts))
		}
	}
}
