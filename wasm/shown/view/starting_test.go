package view

import (
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// startOf is the words of how a plan starts and stops.
func startOf(t *testing.T, p *plan.Plan) string {
	t.Helper()
	if errs := p.Check(); len(errs) > 0 {
		t.Fatal(errs[0])
	}
	s := sheet.Answer(p)
	s.Explore(sheet.Starting)
	all := ""
	for _, f := range Explored(s, sheet.Starting, nil) {
		whole(t, f.ID, f.HTML)
		all += f.HTML
	}
	return all
}

func TestStartingSays(t *testing.T) {
	flushes := func(times float64) *plan.Plan {
		p := plan.Default()
		e := &p.Emitters[0]
		e.Flushes, e.Gush, e.Regulates = plan.WhenLow, times*e.Flow, 0.9e5
		return p
	}
	checked := plan.Default()
	checked.Runs[0].Checks = 1
	above := plan.Default()
	above.Runs[0].Rise, above.Emitters[0].Closes = -2, 0
	weak := plan.Examples()[1].Plan
	weak.Supply.ShutOff, weak.Supply.MaxFlow = 8, 5.0/6e4
	high := plan.Default()
	high.Supply.Kind, high.Runs[0].Rise, high.Supply.Regulator = plan.GravityTank, -8, 0
	high.Rows[0].Height = 9
	for name, tt := range map[string]struct {
		plan    *plan.Plan
		say     []string
		without string
	}{
		"a good plan":           {plan.Default(), []string{"at the end of every row", "one after another: first", "Nothing runs out", "No check valve"}, "two ways"},
		"a ring":                {planOf(t, "ring"), []string{"at the end of every row after 44\u00a0s, in row 6 last. All is full after 55\u00a0s."}, ""},
		"a tank on a slope":     {slope(t), []string{"No plant gets more of it than"}, "Most of it"},
		"a check valve":         {checked, []string{"Nothing runs out"}, "No check valve"},
		"the wrong pump":        {plan.Examples()[1].Plan, []string{"No emitter opens by itself", "two ways", "Once all are open, all 120 emitters stay open"}, "one after another: first"},
		"a weak pump":           {weak, []string{"when the pressure builds slowly", "Letting the rows in one after another"}, "does not get there"},
		"a weak flush":          {flushes(2), []string{"The supply gets past that"}, "for ever"},
		"a strong flush":        {flushes(60), []string{"flush on for ever", "would stop at"}, "gets past that:"},
		"open from the first":   {low(), []string{"drip as soon as the water is there"}, "−"},
		"emitters below a tank": {tall(), []string{"would with the water in the tank 7.", "a lower level would do"}, "when the supply holds"},
		"a tank above":          {above, []string{"breaks the siphon"}, ""},
		"a row too high":        {high, []string{"never reaches the end of 1 of 4 rows", "never"}, ""},
		"a row up the hill":     {hilly(), []string{"runs out of the lines", "would hold it"}, "Nothing runs out"},
	} {
		got := startOf(t, tt.plan)
		for _, want := range tt.say {
			if !strings.Contains(got, want) {
				t.Errorf("%s: does not say %q:\n%s", name, want, got)
			}
		}
		if tt.without != "" && strings.Contains(got, tt.without) {
			t.Errorf("%s: says %q", name, tt.without)
		}
	}
}

// hilly is a plan whose rows rise more than its emitters hold.
func hilly() *plan.Plan {
	p := plan.Default()
	p.Emitters[0].Closes = 0.02e5
	for i := range p.Rows {
		p.Rows[i].Slope = 0.1
	}
	p.Runs[0].Checks = 1
	return p
}

// low is a plan whose emitters open at any pressure, below the water that its
// pump draws from.
func low() *plan.Plan {
	p := plan.Default()
	p.Runs[0].Rise, p.Emitters[0].Opens, p.Emitters[0].Closes = -1.5, 0, 0
	return p
}

// tall is a tank that stands twice as high as its emitters need to open.
func tall() *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Runs[0].Rise, p.Supply.Regulator = plan.GravityTank, -15, 0
	return p
}

// slope is a tank above rows that rise a little, with emitters that do not shut.
func slope(t *testing.T) *plan.Plan {
	p := planOf(t, "balcony")
	p.Rows[0].Slope = 0.01
	return p
}

func TestStartingOfRandomPlansIsFinite(t *testing.T) {
	wrong := regexp.MustCompile(`NaN|Inf|\bnone\b [a-z]|%!|e\+\d`)
	for seed := range uint64(25) {
		r := rand.New(rand.NewPCG(seed, 15))
		p := plan.Examples()[r.IntN(5)].Plan
		p.Units = unit.System(r.IntN(2))
		p.Supply.ShutOff = 2 + 40*r.Float64()
		p.Header.Layout = r.IntN(3)
		e := &p.Emitters[0]
		e.Flushes, e.Regulates, e.Closes = r.IntN(2), e.Lowest*r.Float64(), e.Closes*r.Float64()
		e.Regulates = max(e.Regulates, 1e3)
		for i := range p.Rows {
			w := &p.Rows[i]
			w.Slope, w.Height, w.Zone = 0.2*r.Float64()-0.1, 6*r.Float64()-3, 1+r.IntN(5)
			w.Gap *= float64(r.IntN(2))
		}
		if len(p.Check()) > 0 {
			continue
		}
		if got := startOf(t, p); wrong.MatchString(got) {
			t.Errorf("seed %d: %s", seed, wrong.FindString(got))
		}
	}
}

// Where it is given up to follow the water, no picture and no time is made of
// that, and what else is known of each row stands in the table all the same.
func TestAFillingThatIsGivenUp(t *testing.T) {
	for _, e := range plan.Examples() {
		s := sheet.Answer(e.Plan)
		s.Explore(sheet.Starting)
		if s.Startup == nil {
			continue
		}
		told := Explored(s, sheet.Starting, nil)[0].HTML
		for i := range s.Startup.Zones {
			z := &s.Startup.Zones[i]
			z.Rows, z.Filled = nil, math.Inf(1)
		}
		got := Explored(s, sheet.Starting, nil)[0].HTML
		if strings.Contains(got, "from when the water comes to its start") || strings.Contains(got, "never") || !strings.Contains(got, "How the lines fill could not be worked out.") {
			t.Errorf("%s: %s", e.Key, got)
		}
		if rows := strings.Count(told, "<tr>"); strings.Count(got, "<tr>") != rows {
			t.Errorf("%s: %d rows in the table, want %d", e.Key, strings.Count(got, "<tr>"), rows)
		}
	}
}
