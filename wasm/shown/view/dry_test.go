package view

import (
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/layout"
)

// plain gives a plan emitters that do not compensate.
func plain(p *plan.Plan) *plan.Plan {
	e := &p.Emitters[0]
	e.Kind, e.Nominal, e.Exponent = plan.NonCompensating, 1e5, 0.5
	return p
}

// lowTank is the long field below a tank whose water stands lower than the
// field: its rows climb from the header.
func lowTank() *plan.Plan {
	p := plain(plan.Examples()[3].Plan)
	p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
	return p
}

// Where the water never comes, the answer, the start and the stop say so alike:
// no emitter opens, all stay shut, and nothing runs out. A tank 12 m up waters
// the same rows, and what stands in them above the lowest plants runs out.
func TestDryLinesInWords(t *testing.T) {
	p := lowTank()
	s := sheet.Work(p)
	for _, c := range []struct{ id, want string }{
		{"answer", "No emitter opens, and no plant gets water."},
		{"starting", "never reaches the end of 12 of 12 rows. No emitter opens.<"},
		{"starting", `<td class="n">never</td><td class="n">never</td><td class="n">–</td><td class="n">–</td><td class="n">130</td>`},
		{"stopping", "No water comes to the rows, so nothing runs out."},
	} {
		if got := said(t, s, c.id); !strings.Contains(got, c.want) {
			t.Errorf("%s does not say %q:\n%.1500s", c.id, c.want, got)
		}
	}
	if d := &s.Startup.Zones[0].Drain; d.Volume != 0 || d.Back != 0 || d.Level != 0 {
		t.Errorf("%+v", d)
	}
	p.Runs[0].Rise = -12
	s = sheet.Work(p)
	for _, c := range []struct{ id, want string }{
		{"starting", "is at the end of every row after"},
		{"starting", "drip as soon as the water is there, the nearest first.<"},
		{"stopping", "runs out of the lines, through the emitters of"},
	} {
		if got := said(t, s, c.id); !strings.Contains(got, c.want) {
			t.Errorf("the tank up high: %s does not say %q:\n%.1500s", c.id, c.want, got)
		}
	}
}

// A pump of 1 m below rows that stand 2 m higher, at the end of 8 m of lead,
// fills the half of it, and the half runs back.
func TestHalfAFullLeadRunsBack(t *testing.T) {
	p := plain(plan.Default())
	p.Supply.Kind, p.Supply.ShutOff, p.Supply.Regulator = plan.PumpTwo, 1, 0
	p.Runs[0].Rise = 2
	s := sheet.Work(p)
	d := &s.Startup.Zones[0].Drain
	if want := pipe.Volume(4, 0.0204); math.Abs(d.Back-want) > 1e-6*want || d.Volume != 0 {
		t.Errorf("%g m³ run back and %g out, want %g and none", d.Back, d.Volume, want)
	}
}

// In random plans of all supplies the start's table has those plants shut that
// the answer has, and what runs out and back was below the water's level: for
// rows, at the heads of the answer.
func TestStartAndStopAgreeWithTheAnswer(t *testing.T) {
	none, some, all := 0, 0, 0
	for seed := range uint64(250) {
		r := rand.New(rand.NewPCG(seed, 77))
		examples := plan.Examples()
		p := plain(examples[r.IntN(len(examples))].Plan)
		p.Supply.Kind, p.Supply.Regulator = []int{plan.PumpTwo, plan.GravityTank, plan.Mains}[r.IntN(3)], 0
		p.Supply.ShutOff, p.Supply.Static = 1+2*r.Float64(), 1e4+3e4*r.Float64()
		p.Supply.Devices = float64(r.IntN(2)) * 2e4 * r.Float64()
		p.Runs[0].Rise = 4*r.Float64() - 2.5
		plan.SectionNamed("rows").Resize(p, 1+r.IntN(5))
		for i := range p.Rows {
			w := &p.Rows[i]
			w.Plants, w.PerPiece, w.Zone = 1+r.IntN(20), 1, 1+r.IntN(2)
			w.Height, w.Slope = 2*r.Float64()-1, 0.2*r.Float64()
		}
		p.Header.Layout = plan.HeaderAndRows
		if len(p.Check()) > 0 {
			continue
		}
		s := sheet.Answer(p)
		s.Explore(sheet.Starting)
		if s.Startup == nil {
			t.Fatalf("seed %d: no start", seed)
		}
		l := s.Layout
		blocked := false
		for _, f := range s.Findings {
			blocked = blocked || f.Kind == sheet.TooHigh
		}
		for i := range s.Zones {
			z, u := &s.Zones[i], &s.Startup.Zones[i]
			shut := 0
			for j, h := range u.Opens {
				if !math.IsNaN(h) && math.IsInf(h, 1) {
					shut += int(l.Network.Nodes[l.Plants[j].Node].Count)
				}
			}
			// Beyond a height that the water never gets over the answer, which is No
			// for all, does not count.
			want := z.Emitters - z.Open
			if shut < want || shut > want && !blocked || u.States.Opened != z.Emitters-shut {
				t.Errorf("seed %d, zone %d: %d stay shut and %d are open, the answer has %d of %d open", seed, z.Zone, shut, u.States.Opened, z.Open, z.Emitters)
			}
			// What lies below the levels, counted here apart.
			below := 0.0
			for j := range l.Stretches {
				st := &l.Stretches[j]
				for x, k := range st.Links {
					link := &l.Network.Links[k]
					lo, hi := l.Points[link.From].Z, l.Points[link.To].Z
					level := max(z.Solution.Head[link.From], z.Solution.Head[link.To])
					if st.Kind != layout.RowOf || x == 0 && hi < lo { // or a row that falls from the header
						level = max(level, l.Still(st))
					}
					if link.Law != nil || level < min(lo, hi) {
						continue
					}
					share := 1.0
					if level < max(lo, hi) {
						share = (level - min(lo, hi)) / math.Abs(hi-lo)
					}
					below += share * pipe.Volume(link.Length, link.Bore)
				}
			}
			if d := &u.Drain; d.Volume+d.Back > below*(1+1e-4)+1e-12 {
				t.Errorf("seed %d, zone %d: %g m³ run out and %g back of %g below the water", seed, z.Zone, d.Volume, d.Back, below)
			}
			switch shut {
			case 0:
				all++
			case z.Emitters:
				none++
			default:
				some++
			}
		}
	}
	if none < 20 || some < 20 || all < 20 {
		t.Errorf("none opened in %d zones, some in %d, all in %d: too little was tried", none, some, all)
	}
}

// A pump of 20 m, and a lead over 22 m: the water never gets over, so nothing
// opens and nothing runs out of the rows, which would run if they were full.
func TestBeyondAHeightNothingOpens(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind, p.Supply.ShutOff, p.Supply.Regulator = plan.PumpTwo, 20, 0
	down := p.Runs[0]
	p.Runs[0].Rise, down.Rise = 22, -21.6
	p.Runs = append(p.Runs, down)
	s := sheet.Work(p)
	if got := said(t, s, "answer"); !strings.Contains(got, "does not get over the highest point") {
		t.Errorf("the answer: %.500s", got)
	}
	if got := said(t, s, "starting"); !strings.Contains(got, "never reaches the end of 4 of 4 rows. No emitter opens.<") {
		t.Errorf("the start: %.500s", got)
	}
	if got := said(t, s, "stopping"); !strings.Contains(got, "No water comes to the rows, so nothing runs out.") {
		t.Errorf("the stop: %.500s", got)
	}
	// Of the lead that climbs 22 m in 8 m of tubing, 20/22 fill and run back.
	if got, want := s.Startup.Zones[0].Drain.Back, pipe.Volume(8, 0.0204)*20/22; math.Abs(got-want) > 1e-6*want {
		t.Errorf("%g m³ run back, want %g", got, want)
	}
}

// Lines to which no water comes hold none, are never full, and are not cleaned
// by wider tubing: the stop, the flush and the answer say that none comes. The
// balcony's tank stands 1.6 m up; 0.3 m below its line, no water comes.
func TestNoWaterComesIsSaid(t *testing.T) {
	var p *plan.Plan
	for _, e := range plan.Examples() {
		if e.Key == "balcony" {
			p = e.Plan
		}
	}
	for _, c := range []struct {
		rise    float64
		id      string
		say, no []string
	}{
		{0.3, "stopping", []string{"No water comes to the row", ">–<", ">never<"}, []string{"at once", "1.0\u00a0L"}},
		{0.3, "flush", []string{"No water comes to the line"}, []string{"wider tubing", "clean filter"}},
		{-1.6, "stopping", nil, []string{"No water comes", ">never<"}},
		{-1.6, "flush", nil, []string{"No water comes"}},
	} {
		p.Runs[0].Rise = c.rise
		got := said(t, sheet.Work(p), c.id)
		for _, want := range c.say {
			if !strings.Contains(got, want) {
				t.Errorf("rise %g: %s does not say %q:\n%.1500s", c.rise, c.id, want, got)
			}
		}
		for _, not := range c.no {
			if strings.Contains(got, not) {
				t.Errorf("rise %g: %s says %q", c.rise, c.id, not)
			}
		}
	}
}

// Where the emitters are alike, Evenness has no table of the rows to point to:
// it is the spread of manufacture that keeps the plants' water apart, or the
// least watered plant.
func TestWhyPlantsOfOneEmitterDiffer(t *testing.T) {
	p := plan.Default()
	p.Emitters[0].CV, p.Limits.Evenness = 0.1, 0.8
	s := sheet.Work(p)
	if s.Sameness != sheet.Differs || s.Water != nil || s.Verdict != sheet.Yes {
		t.Fatalf("%v %v %v", s.Sameness, s.Water, s.Verdict)
	}
	got := said(t, s, "answer")
	if strings.Contains(got, "stands under Evenness") || !strings.Contains(got, "spread of manufacture") {
		t.Errorf("%.900s", got)
	}
	s.Zones[0].Least = 0.8 * s.Zones[0].Alike.Mean
	if got := said(t, s, "answer"); !strings.Contains(got, "The plant with least water gets 80\u00a0% of the mean.") {
		t.Errorf("%.900s", got)
	}
}

// Of tanks that stand too low for some rows of plain emitters, in all layouts,
// the answer and the start say alike how many plants stay dry: the same number,
// or the answer that it is at least so many, where air keeps the water from
// passing a height.
func TestTheAnswerAndTheStartAgreeOnWhatStaysDry(t *testing.T) {
	r := rand.New(rand.NewPCG(71, 8))
	counted := regexp.MustCompile(`^(At least )?(\d+) of \d+ emitters stay shut`)
	same, least, over := 0, 0, 0
	for n := range 200 {
		p := plan.Default()
		p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 0
		e := &p.Emitters[0]
		e.Kind, e.Exponent, e.Nominal, e.Lowest = plan.NonCompensating, 0.5, 1e4, 1e3
		p.Runs[0].Rise = 1.5*r.Float64() - 1
		p.Header.Layout = n % 3
		for i := range p.Rows {
			p.Rows[i].Slope, p.Rows[i].Height = 0.3*(r.Float64()-0.5), 0.5*(r.Float64()-0.5)
			if n%6 == 0 {
				p.Rows[i].Zone = 1 + i%2
			}
		}
		s := sheet.Answer(p)
		s.Explore(sheet.Starting)
		dry := 0
		for i := range s.Startup.Zones {
			for _, h := range s.Startup.Zones[i].Opens {
				if math.IsInf(h, 1) {
					dry++
				}
			}
		}
		_, says, _ := strings.Cut(answer.Announce(s), ". ")
		m := counted.FindStringSubmatch(says)
		switch {
		case m == nil:
			if strings.HasPrefix(says, "The water does not get over") || strings.HasPrefix(says, "A part of the line lies too high and draws air") {
				over++
			} else if got := strings.HasPrefix(says, "No emitter opens"); got != (dry == 120) || !got && dry > 0 {
				t.Errorf("plan %d: %s, and %d of 120 stay shut at the start", n, says, dry)
			}
		case m[1] != "":
			least++
			if at, _ := strconv.Atoi(m[2]); dry < at {
				t.Errorf("plan %d: %s, and %d at the start", n, says, dry)
			}
		default:
			same++
			if m[2] != strconv.Itoa(dry) {
				t.Errorf("plan %d: %s, and %d at the start", n, says, dry)
			}
		}
	}
	if t.Logf("%d the same, %d at least, %d that do not get over", same, least, over); same < 20 || least < 20 {
		t.Error("too few of a kind")
	}
}
