package view

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// Where fittings take more than is to spare, or than is missing, the budget
// says that the answer hangs on them; where they do not, it says nothing.
func TestBudgetSaysWhatTheAnswerHangsOn(t *testing.T) {
	const says = "so the answer hangs on their coefficients"
	short := planOf(t, "ring")
	short.Limits.Reserve = 1.4
	wide := planOf(t, "ring")
	wide.Limits.Reserve = 0
	tank := plan.Default()
	tank.Supply.Kind, tank.Runs[0].Rise, tank.Supply.Regulator = plan.GravityTank, -13, 1.2e5
	for _, tt := range []struct {
		what string
		plan *plan.Plan
		want string // "" for nothing
	}{
		{"the ring, with little to spare", planOf(t, "ring"), "Fittings take 0.09\u00a0bar (0.9\u00a0m), more than the 0.005\u00a0bar (0.05\u00a0m) beyond the safety margin, "},
		{"the ring, a little short", short, "more than the 0.03\u00a0bar (0.4\u00a0m) that is missing, "},
		{"the ring, with more to spare than fittings take", wide, ""},
		{"the first example", plan.Default(), ""},
		{"a tank's regulator, which is no fitting", tank, ""},
		{"a pump that is far too weak", planOf(t, "wrong-pump"), ""},
		{"a field that is far short", planOf(t, "long-field"), ""},
	} {
		got := ""
		for _, f := range Everything(sheet.Answer(tt.plan), func(*plan.Plan) string { return "#plan" }) {
			if f.ID == "budget" {
				got = f.HTML
			}
		}
		if got == "" {
			t.Errorf("%s: no budget", tt.what)
		}
		if tt.want == "" && strings.Contains(got, says) || tt.want != "" && !strings.Contains(got, tt.want+says) {
			t.Errorf("%s: want %q in %s", tt.what, tt.want, got)
		}
	}
}

// A tank's regulator has a line of its own: by hand, 13 m of water at 20 °C less
// the 12.259 m of 1.2 bar.
func TestATanksRegulatorHasALineOfItsOwn(t *testing.T) {
	const line = `Taken by the regulator</th><td[^>]*>0\.07\x{a0}bar</td><td[^>]*>0\.7\x{a0}m<`
	p := plan.Default()
	p.Supply.Kind, p.Runs[0].Rise, p.Supply.Regulator = plan.GravityTank, -13, 1.2e5
	if html := said(t, sheet.Answer(p), "budget"); !regexp.MustCompile(line).MatchString(html) {
		t.Errorf("want %s in %s", line, html)
	}
	if html := said(t, sheet.Answer(plan.Default()), "budget"); strings.Contains(html, "Taken by") {
		t.Error("a pump's regulator takes nothing from its own pressure")
	}
}

// What is said of a regulator's pressure is said behind it, and on which side it
// errs only where something stands before it.
func TestTheRegulatorsPressureIsNotThePumps(t *testing.T) {
	const safe = "Counted as if the regulator stood before the filter: the safe side."
	alone, bare := plan.Default(), plan.Default()
	alone.Supply.Regulator = 0
	bare.Filter.Present = 0
	devices := plan.Default()
	devices.Filter.Present, devices.Supply.Devices = 0, 0.1e5
	for _, tt := range []struct {
		what               string
		plan               *plan.Plan
		total, step, gives string
		safe               bool
	}{
		{"a regulator and a filter", plan.Default(), "Given behind the regulator", "Pump, regulator", "what the pump with its regulator gives", true},
		{"a regulator alone", bare, "Given behind the regulator", "Pump, regulator", "what the pump with its regulator gives", false},
		{"a regulator and devices", devices, "Given behind the regulator", "Pump, regulator", "what the pump with its regulator gives", true},
		{"no regulator", alone, "Given by the pump", "Pump", "what the pump gives", false},
	} {
		s := sheet.Answer(tt.plan)
		for id, want := range map[string]string{"budget": ">" + tt.total + "<", "pump": tt.gives, "pressure": ">" + tt.step + "<"} {
			if html := said(t, s, id); !strings.Contains(html, want) {
				t.Errorf("%s: want %s in %s", tt.what, want, html)
			}
		}
		for _, id := range []string{"budget", "pump"} {
			if strings.Contains(said(t, s, id), safe) != tt.safe {
				t.Errorf("%s: %s", tt.what, said(t, s, id))
			}
		}
	}
}

// What a design or a remedy costs more or less is the difference of the costs
// that stand beside it, to the hundredth.
func TestCostsAddUp(t *testing.T) {
	costs := regexp.MustCompile(`It costs ([\d.]+), ([\d.]+) (more|less) than your plan`)
	seen := 0
	for name, s := range sheets() {
		if s.Designs == nil {
			continue
		}
		now := math.Round(100 * s.Designs.Now)
		for _, f := range Everything(s, func(*plan.Plan) string { return "#x" }) {
			for _, m := range costs.FindAllStringSubmatch(anyTag.ReplaceAllString(f.HTML, ""), -1) {
				seen++
				cost, _ := strconv.ParseFloat(m[1], 64)
				more, _ := strconv.ParseFloat(m[2], 64)
				if m[3] == "less" {
					more = -more
				}
				if math.Abs(100*(cost-more)-now) > 1e-6 {
					t.Errorf("%s, %s: %q, and the plan costs %g", name, f.ID, m[0], now/100)
				}
			}
		}
	}
	if seen < 10 {
		t.Errorf("only %d costs were seen", seen)
	}
}
