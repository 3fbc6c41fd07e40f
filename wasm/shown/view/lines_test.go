package view

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/climate"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/year/shots"
)

// amiss counts again, from the numbers that a part speaks of, whether there is
// something to do about it. What is not here is only to be read.
var amiss = map[string]func(s *sheet.Sheet) bool{
	"rests":    func(s *sheet.Sheet) bool { return s.Verdict != sheet.Cannot && len(s.Rest.Turns) > 0 },
	"findings": func(s *sheet.Sheet) bool { return len(s.Findings) > 0 },
	"designs": func(s *sheet.Sheet) bool {
		best := s.Designs.Best
		return len(best) == 0 || s.Wanted == nil && (s.Verdict != sheet.Yes && best[0].Present || best[0].Regulator > 0)
	},
	"speeds": func(s *sheet.Sheet) bool {
		for i := range s.Layout.Stretches {
			st := &s.Layout.Stretches[i]
			if st.Kind == layout.RowOf || st.Kind == layout.Between {
				continue
			}
			for _, z := range s.Zones {
				for _, k := range st.Links {
					// Within a rounding of the figure itself.
					link := &s.Layout.Network.Links[k]
					if link.Law == nil && math.Abs(z.Solution.Flow[k])/(math.Pi/4*link.Bore*link.Bore) > s.Plan.Limits.Speed*(1+1e-9) {
						return true
					}
				}
			}
		}
		return false
	},
	"cannot": func(s *sheet.Sheet) bool {
		if !s.Shots.Ready() {
			return false
		}
		return len(s.Shots.Empty) > 0 || slices.ContainsFunc(s.Shots.Limits, func(l shots.Limit) bool {
			switch l.Kind {
			case shots.FewValves, shots.OneValve, shots.Pins, shots.NoRoom, shots.LateRound, shots.Gaps:
				return true
			}
			return false
		})
	},
	"tank": func(s *sheet.Sheet) bool {
		tank := s.Plan.Supply.Tank
		if !s.Shots.Ready() || s.Plan.Supply.Kind == plan.Mains || s.Verdict == sheet.No || tank == 0 {
			return false
		}
		hot, record, typical := 0.0, 0.0, 0.0 // of the line that takes most
		for i := range s.Shots.Lines {
			if given, _ := s.Shots.Lines[i].Given(); given[shots.Hot] > hot {
				typical, hot, record = given[shots.Typical], given[shots.Hot], given[shots.Record]
			}
		}
		return tank < record && tank < 15*typical
	},
	"flush": func(s *sheet.Sheet) bool {
		return s.Flush != nil && slices.ContainsFunc(s.Flush.Ends, func(e flush.End) bool { return max(e.Speed, e.Alone) < 0.3 })
	},
	"faults": func(s *sheet.Sheet) bool {
		if s.Faults == nil {
			return false
		}
		for _, z := range s.Zones {
			if z.Margin < 0 || z.Fouled < 0 || z.Open < z.Emitters || z.Above > 0 {
				return true
			}
		}
		return false
	},
	"evenness": func(s *sheet.Sheet) bool {
		return slices.ContainsFunc(s.Zones, func(z sheet.ZoneResult) bool { return z.Open > 0 && z.Even.EU < s.Plan.Limits.Evenness })
	},
	"zones": func(s *sheet.Sheet) bool {
		return s.Verdict != sheet.Yes && s.Zoning != nil && s.Zoning.Plan != nil
	},
	"starting": func(s *sheet.Sheet) bool {
		if s.Startup == nil {
			return false
		}
		for i := range s.Startup.Zones {
			if z := &s.Startup.Zones[i]; math.IsInf(z.Filled, 1) || z.Flood != nil && z.Flood.Stuck > 0 {
				return true
			}
		}
		return false
	},
	"surge": func(s *sheet.Sheet) bool {
		for i := range s.Surge {
			if b := &s.Surge[i]; b.Rest+b.Rise > b.Carries || b.Rest > b.Carries {
				return true
			}
		}
		return false
	},
}

// plansForLines are the examples, and a plan for each thing that can be amiss.
func plansForLines(t *testing.T) map[string]*plan.Plan {
	all := map[string]*plan.Plan{}
	for _, e := range plan.Examples() {
		all[e.Key] = e.Plan
	}
	with := func(name string, change func(*plan.Plan)) {
		p := plan.Default()
		change(p)
		if errs := p.Check(); len(errs) > 0 {
			t.Fatalf("%s: %v", name, errs[0])
		}
		all[name] = p
	}
	with("a low limit of speed", func(p *plan.Plan) { p.Limits.Speed, p.Runs[0].Tube = 0.3, 1 })
	with("a high limit of evenness", func(p *plan.Plan) { p.Limits.Evenness = 0.99 })
	with("a dial", func(p *plan.Plan) { p.Timer.Kind = plan.Dial })
	with("a small tank", func(p *plan.Plan) { p.Supply.Tank = 0.05 })
	with("a large tank", func(p *plan.Plan) { p.Supply.Tank = 9 })
	with("a filter that is cleaned late", func(p *plan.Plan) { p.Filter.Fouling = 3e5 })
	with("no regulator", func(p *plan.Plan) { p.Supply.Regulator = 0 })
	with("a flush that never ends", func(p *plan.Plan) {
		e := &p.Emitters[0]
		e.Flushes, e.Gush, e.Regulates = plan.WhenLow, 60*e.Flow, 0.9e5
	})
	with("too high", func(p *plan.Plan) { p.Runs[0].Rise = 25 })
	with("a pump yet to buy", func(p *plan.Plan) { p.Supply.Kind = plan.PumpWanted })
	return all
}

// What a line says is counted again: a part stands open where something is to be
// done about it, and only there, and each is found both ways. Its line says
// something wherever something was worked out.
func TestWhatIsRightIsFolded(t *testing.T) {
	open, shut := map[string]bool{}, map[string]bool{}
	plans := plansForLines(t)
	for name, p := range plans {
		s := sheet.Answer(p)
		var done [sheet.Explorations]bool
		for which := range sheet.Exploration(sheet.Explorations) {
			s.Explore(which)
			done[which] = true
		}
		for i := range Jobs {
			screen := &Screen{Job: &Jobs[i], Sheet: s, Done: done, Bare: true}
			html := screen.Whole().HTML
			for k := range Jobs[i].Sections {
				section := &Jobs[i].Sections[k]
				_, fold, folded := strings.Cut(html, `<details class="fold" id="d-`+section.ID+`"`)
				if !folded {
					continue
				}
				tag, _, _ := strings.Cut(fold, ">")
				_, said, _ := strings.Cut(fold, `<span class="fold__is">`)
				said, _, _ = strings.Cut(said, "<")
				is := strings.Contains(tag, " open")
				want := amiss[section.ID] != nil && amiss[section.ID](s)
				if is != want {
					t.Errorf("%s, %s: it stands open: %v, want %v: %s", name, section.ID, is, want, said)
				}
				if is {
					open[section.ID] = true
				} else {
					shut[section.ID] = true
				}
				if said == "" && name == "default" {
					t.Errorf("%s, %s: its line says nothing", name, section.ID)
				}
			}
			// The gravest first, and else as they are listed.
			rank := func(id string) int {
				return slices.IndexFunc(Jobs[i].Sections, func(s Section) bool { return s.ID == id })
			}
			last := [2]int{int(sheet.Verdicts), -1}
			for _, id := range screen.Order() {
				if id == "cautions" {
					continue
				}
				section := &Jobs[i].Sections[rank(id)]
				if section.Open {
					continue
				}
				now := [2]int{int(screen.grade(section)), rank(id)}
				if now[0] > last[0] || now[0] == last[0] && now[1] < last[1] {
					t.Errorf("%s, %s: %s stands below what is less grave", name, Jobs[i].ID, id)
				}
				last = now
			}
		}
	}
	for id := range amiss {
		if !open[id] || !shut[id] {
			t.Errorf("%s: seen open %v, shut %v; both are wanted", id, open[id], shut[id])
		}
	}
}

// The figures that lines say are found again, each by code of its own, from the flows, the
// heads and the days that they speak of.
func TestWhatALineSays(t *testing.T) {
	for _, e := range plan.Examples() {
		s := sheet.Work(e.Plan)
		var done [sheet.Explorations]bool
		for which := range done {
			done[which] = true
		}
		said := map[string]string{}
		for i := range Jobs {
			html := (&Screen{Job: &Jobs[i], Sheet: s, Done: done, Bare: true}).Whole().HTML
			for k := range Jobs[i].Sections {
				id := Jobs[i].Sections[k].ID
				if _, fold, ok := strings.Cut(html, `id="d-`+id+`"`); ok {
					_, line, _ := strings.Cut(fold, `<span class="fold__is">`)
					line, _, _ = strings.Cut(line, "<")
					said[id] = strings.ReplaceAll(line, "\u00a0", " ")
				}
			}
		}
		sc := scene.New(s, nil)
		want := func(id, format string, kind unit.Kind, values ...float64) {
			args := make([]any, len(values))
			for i, v := range values {
				args[i] = strings.ReplaceAll(sc.Amount(kind, v), "\u00a0", " ")
			}
			if w := fmt.Sprintf(format, args...); !strings.Contains(said[id], w) {
				t.Errorf("%s, %s: %q, want %q", e.Key, id, said[id], w)
			}
		}
		fastest := 0.0
		for i := range s.Layout.Stretches {
			st := &s.Layout.Stretches[i]
			for _, k := range st.Links {
				link := &s.Layout.Network.Links[k]
				for _, z := range s.Zones {
					if st.Kind != layout.RowOf && st.Kind != layout.Between && link.Law == nil {
						fastest = max(fastest, math.Abs(z.Solution.Flow[k])/(math.Pi/4*link.Bore*link.Bore))
					}
				}
			}
		}
		if fastest > 0 {
			want("speeds", "%s", unit.Speed, fastest)
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		flows := map[int][]float64{}
		for i := range s.Layout.Plants {
			p := &s.Layout.Plants[i]
			for _, z := range s.Zones {
				if z.Zone == s.Layout.ZoneOf(p.Row) {
					h := z.Solution.Head[p.Node] - s.Layout.Points[p.Node].Z
					lo, hi = min(lo, h), max(hi, h)
					flows[z.Zone] = append(flows[z.Zone], z.Solution.Out[p.Node])
				}
			}
		}
		want("along", "%s to %s", unit.Head, lo, hi)
		// EU by Karmeli and Keller, where all emitters are alike: 1 - 1.27 CV/sqrt(n) times least over mean.
		if !s.Zones[0].Mixed && s.Zones[0].Open > 0 {
			eu := 1.0
			for _, z := range s.Zones {
				least, sum := math.Inf(1), 0.0
				for _, q := range flows[z.Zone] {
					least, sum = min(least, q), sum+q
				}
				eu = min(eu, (1-1.27*z.CV/math.Sqrt(z.PerPlant))*least/(sum/float64(len(flows[z.Zone]))))
			}
			want("evenness", "%s", unit.Share, eu)
		}
		most := 0.0
		for i := range s.Demand.Plantings {
			g := &s.Demand.Plantings[i]
			for d := g.From; d < g.To; d++ {
				most = max(most, s.Demand.Use(i, d)[climate.Typical])
			}
		}
		want("weather", "at most %s a plant", unit.PlantWater, most)
		holes, plants := 0, len(s.Layout.Plants)
		for i := range e.Plan.Rows {
			holes += e.Plan.Rows[i].Plants * e.Plan.Rows[i].PerPlant
		}
		for id, n := range map[string]int{"marks": holes, "rows": plants, "counts": len(s.Parts), "tasks": len(s.Season.Tasks)} {
			if !regexp.MustCompile(`(^|\D)` + strconv.Itoa(n) + `(\D|$)`).MatchString(said[id]) {
				t.Errorf("%s, %s: %q, want %d", e.Key, id, said[id], n)
			}
		}
	}
}
