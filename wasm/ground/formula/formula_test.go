package formula

import (
	"errors"
	"math"
	"strings"
	"testing"

	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

var speed = Formula{
	Name:   "velocity",
	Title:  "Mean velocity in a bore",
	Text:   "v = 4 Q/(π D²)",
	Result: Symbol{Letter: "v", Meaning: "mean velocity", Kind: unit.Speed},
	In: []Symbol{
		{Name: "flow", Letter: "Q", Meaning: "flow", Kind: unit.Flow, Max: 0.01},
		{Name: "bore", Letter: "D", Meaning: "bore of the tubing", Kind: unit.Bore, Min: 0.001, Max: 0.1},
	},
	Source: source.Ref{Work: "geometry", Standing: source.Derived},
	Eval:   func(in []float64) float64 { return 4 * in[0] / (math.Pi * in[1] * in[1]) },
}

var mean = Formula{
	Name:    "mean",
	Title:   "Mean",
	Text:    "m = Σq/n",
	Result:  Symbol{Letter: "m", Meaning: "mean flow", Kind: unit.EmitterFlow},
	In:      []Symbol{{Name: "flow", Letter: "q", Meaning: "flow of an emitter", Kind: unit.EmitterFlow, Max: 1e-3}},
	Repeats: true,
	Source:  source.Ref{Standing: source.Practice},
	Eval: func(in []float64) float64 {
		s := 0.0
		for _, v := range in {
			s += v
		}
		return s / float64(len(in))
	},
}

var sticky = Formula{
	Name:   "viscosity",
	Title:  "Viscosity of twice the strength",
	Text:   "η = 2 μ",
	Result: Symbol{Letter: "η", Meaning: "result", Unit: "Pa s"},
	In:     []Symbol{{Name: "mu", Letter: "μ", Meaning: "viscosity", Unit: "Pa s", Max: 1}},
	Eval:   func(in []float64) float64 { return 2 * in[0] },
}

func TestRead(t *testing.T) {
	tests := []struct {
		name   string
		f      *Formula
		values map[string]string
		sys    unit.System
		want   float64
	}{
		{"with units", &speed, map[string]string{"flow": "20 L/min", "bore": "13.6 mm"}, unit.Metric, 2.2947},
		{"numbers in the units of the page", &speed, map[string]string{"flow": "20", "bore": "13,6"}, unit.Metric, 2.2947},
		{"numbers in US units", &speed, map[string]string{"flow": "5.283441", "bore": "0.5354331"}, unit.US, 2.2947},
		{"units of the other system", &speed, map[string]string{"flow": "5.283441 gal/min", "bore": "0.5354331 in"}, unit.Metric, 2.2947},
		{"a list", &mean, map[string]string{"flow": "2; 3 L/h;4"}, unit.Metric, 3 / 3.6e6},
		{"a unit of its own", &sticky, map[string]string{"mu": "0.001 Pa s"}, unit.US, 0.002},
		{"a unit of its own left out", &sticky, map[string]string{"mu": "0.001"}, unit.Metric, 0.002},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			w, err := tt.f.Read(tt.values, tt.sys)
			if err != nil || math.Abs(w.Result-tt.want) > 1e-4*tt.want {
				t.Errorf("%s of %v = %.6g, %v, want %g", tt.f.Name, tt.values, w.Result, err, tt.want)
			}
		})
	}
}

func TestReadSaysAllThatIsWrong(t *testing.T) {
	tests := []struct {
		name   string
		f      *Formula
		values map[string]string
		want   []string
	}{
		{"both out of range", &speed, map[string]string{"flow": "700 L/min", "bore": "0.2 mm"}, []string{
			"flow must be from 0 to 600 L/min, and is 700 L/min",
			"bore of the tubing must be from 1 to 100 mm, and is 0.2 mm",
		}},
		{"missing and unknown", &speed, map[string]string{"width": "3", "flow": "1", "area": "2"}, []string{
			"bore (bore of the tubing) is missing",
			"area is no symbol of velocity",
			"width is no symbol of velocity",
		}},
		{"no quantity", &speed, map[string]string{"flow": "much", "bore": "3 L"}, []string{
			"flow must be a number, such as 12.5",
			`bore of the tubing must be in mm or in, not in "L"`,
		}},
		{"the second of a list", &mean, map[string]string{"flow": "2; -1; 3"}, []string{
			"flow of an emitter must be from 0 to 3600 L/h, and is -1 L/h",
		}},
		{"a list of one", &mean, map[string]string{"flow": "2"}, []string{"mean takes at least 2 values, and got 1"}},
		{"no number for a unit of its own", &sticky, map[string]string{"mu": "thin"}, []string{"viscosity must be a number, such as 12.5"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := tt.f.Read(tt.values, unit.Metric)
			if want := strings.Join(tt.want, "\n"); err == nil || err.Error() != want {
				t.Errorf("got\n%v\nwant\n%s", err, want)
			}
		})
	}
}

func TestEvaluateRefusesWhatIsNoNumber(t *testing.T) {
	_, err := speed.Evaluate([]float64{math.NaN(), 0.01}, unit.Metric)
	var out *RangeError
	if !errors.As(err, &out) || out.Symbol.Name != "flow" || err.Error() != "flow must be from 0 to 600 L/min, and is no number" {
		t.Errorf("got %v", err)
	}
	if _, err := speed.Evaluate([]float64{1}, unit.Metric); err == nil || err.Error() != "velocity takes 2 values, and got 1" {
		t.Errorf("got %v", err)
	}
}

func TestEvaluateKeepsItsOwnValues(t *testing.T) {
	in := []float64{1e-4, 0.01}
	w, err := speed.Evaluate(in, unit.Metric)
	in[0] = 0
	if err != nil || w.In[0] != 1e-4 {
		t.Errorf("the working holds %v after its caller changed a value, %v", w.In, err)
	}
}

func TestWorkingText(t *testing.T) {
	w := Of(&speed, 20.0/6e4, 0.0136)
	want := `Mean velocity in a bore: v = 4 Q/(π D²)
  Q = 20 L/min, flow
  D = 13.6 mm, bore of the tubing
  v = 2.295 m/s, mean velocity
  geometry (derived)
`
	if got := w.Text(unit.Metric); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	if a := w.Answer(unit.US); a.Value != "7.528 ft/s" {
		t.Errorf("in US units the answer is %s", a.Value)
	}
	if a := Of(&sticky, 0.001).Answer(unit.Metric); a.Value != "0.002 Pa s" {
		t.Errorf("with a unit of its own the answer is %s", a.Value)
	}
}
