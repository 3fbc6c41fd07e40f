package method_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/method"
	"evenrow/wasm/shown/method/check"
)

var name = regexp.MustCompile(`^[a-z]+(-[a-z0-9]+)*$`)

func TestEveryFormulaIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range method.All() {
		if seen[f.Name] {
			t.Errorf("two formulas are named %s", f.Name)
		}
		seen[f.Name] = true
		if !name.MatchString(f.Name) {
			t.Errorf("%q is no name that can be typed", f.Name)
		}
		if f.Title == "" || f.Text == "" || f.Eval == nil || f.Source.String() == "" || f.Result.Letter == "" || f.Result.Meaning == "" || len(f.In) == 0 {
			t.Errorf("%s lacks something", f.Name)
		}
		if !strings.HasPrefix(f.Text, f.Result.Letter) && !strings.Contains(f.Text, f.Result.Letter) {
			t.Errorf("%s does not name its result %s: %s", f.Name, f.Result.Letter, f.Text)
		}
		if f.Note != "" && !strings.HasSuffix(f.Note, ".") {
			t.Errorf("the note of %s is no sentence: %s", f.Name, f.Note)
		}
		symbols := map[string]bool{}
		for _, s := range f.In {
			if symbols[s.Name] || symbols[s.Letter] {
				t.Errorf("%s has two symbols %s or %s", f.Name, s.Name, s.Letter)
			}
			symbols[s.Name], symbols[s.Letter] = true, true
			if !name.MatchString(s.Name) || s.Letter == "" || s.Meaning == "" || !(s.Min < s.Max) {
				t.Errorf("%s: the symbol %+v lacks something", f.Name, s)
			}
			if s.Unit != "" && s.Kind != unit.None {
				t.Errorf("%s: the symbol %s has two units", f.Name, s.Name)
			}
		}
		if method.Find(f.Name) != f {
			t.Errorf("%s is not found", f.Name)
		}
	}
	if method.Find("no-such") != nil {
		t.Error("a formula that does not exist was found")
	}
}

// At every corner of its range a formula must give a number: the ranges are
// what stands between a person's typing and a NaN on the page.
func TestEveryFormulaGivesANumberAtEveryCorner(t *testing.T) {
	for _, f := range method.All() {
		n := len(f.In)
		for corner := range 1 << n {
			in := make([]float64, n)
			for i, s := range f.In {
				in[i] = s.Min
				if corner>>i&1 == 1 {
					in[i] = s.Max
				}
			}
			if f.Repeats {
				in = append(in, in[n-1], f.In[n-1].Min)
			}
			w, err := f.Evaluate(in, unit.Metric)
			if err != nil || math.IsNaN(w.Result) || math.IsInf(w.Result, 0) {
				t.Errorf("%s(%v) = %g, %v", f.Name, in, w.Result, err)
			}
		}
	}
}

func TestJustOutsideItsRangeAFormulaRefuses(t *testing.T) {
	for _, f := range method.All() {
		in := make([]float64, len(f.In))
		for i, s := range f.In {
			in[i] = (s.Min + s.Max) / 2
		}
		if f.Repeats {
			in = append(in, in[len(in)-1])
		}
		for i, s := range f.In {
			for _, out := range []float64{math.Nextafter(s.Min, math.Inf(-1)), math.Nextafter(s.Max, math.Inf(1))} {
				bad := append([]float64(nil), in...)
				bad[i] = out
				if _, err := f.Evaluate(bad, unit.Metric); err == nil || !strings.HasPrefix(err.Error(), s.Meaning+" must be from ") {
					t.Errorf("%s with %s = %g: %v", f.Name, s.Name, out, err)
				}
			}
		}
	}
}

// A formula that is declared stands in the list of its package.
func TestEveryFormulaIsListed(t *testing.T) {
	files, err := filepath.Glob("../../*/*/*.go")
	if err != nil {
		t.Fatal(err)
	}
	declared := regexp.MustCompile(`(?m)^var (\w+) = &formula\.Formula\{`)
	listed := regexp.MustCompile(`(?s)var Formulas = \[\]\*formula\.Formula\{(.*?)\}`)
	lists := map[string]string{} // by folder
	text := map[string]string{}
	for _, name := range files {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		text[name] = string(b)
		for _, m := range listed.FindAllStringSubmatch(string(b), -1) {
			lists[filepath.Dir(name)] += m[1]
		}
	}
	found := 0
	for name, content := range text {
		for _, m := range declared.FindAllStringSubmatch(content, -1) {
			found++
			if !regexp.MustCompile(`\b` + m[1] + `\b`).MatchString(lists[filepath.Dir(name)]) {
				t.Errorf("%s declares %s, which is not in Formulas of its package", name, m[1])
			}
		}
	}
	if found < len(method.All()) {
		t.Errorf("%d declarations were found, and there are %d formulas", found, len(method.All()))
	}
}

// A formula without a published value must at least be named here, so that a
// new one does not go unchecked unnoticed.
func TestFormulasHaveCheckValues(t *testing.T) {
	tested := map[string]string{ // by tests of their own packages
		"flow-at-velocity":    "pipe: flushing flows",
		"velocity":            "pipe: all-head is the sum of its parts",
		"friction-head":       "pipe: all-head is the sum of its parts",
		"local-head":          "pipe: all-head is the sum of its parts",
		"insert":              "pipe: figures",
		"barb-small":          "pipe: figures",
		"barb-standard":       "pipe: figures",
		"barb-large":          "pipe: figures",
		"row-head":            "pipe: the plain pipe's loss times F",
		"celerity":            "through plastic-surge",
		"slow-surge":          "pipe: slow surge",
		"compensating-flow":   "emitter: open",
		"emitter-coefficient": "emitter: the curve is returned",
		"emitter-exponent":    "emitter: the curve is returned",
		"pump-head":           "pump: by two",
		"tap-head":            "pump: by two",
		"speed-flow":          "pump: speed agrees with similarity",
		"speed-head":          "pump: speed agrees with similarity",
		"filter-head":         "filter: loss",
		"filter-opening":      "filter: mesh for a passage",
		"total-variation":     "evenness: total CV",
	}
	checked := map[string]bool{}
	for _, r := range check.Rows {
		for _, p := range r.Parts {
			checked[p.Formula] = true
		}
	}
	for _, f := range method.All() {
		if !checked[f.Name] && tested[f.Name] == "" {
			t.Errorf("%s has no check value", f.Name)
		}
		if checked[f.Name] && tested[f.Name] != "" {
			t.Errorf("%s has a check value now: drop its line", f.Name)
		}
	}
}

func ExampleFind() {
	w, err := method.Find("tubing-head").Read(map[string]string{
		"flow": "80 L/h", "length": "10 m", "bore": "13.6 mm", "roughness": "0.007 mm", "viscosity": "1.003",
	}, unit.Metric)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(w.Text(unit.Metric))
	// Output:
	// Head lost in tubing at a flow: h = f (L/D) v²/(2g), v = 4 Q/(π D²), f of friction-factor at Re = v D/ν and ε/D
	//   Q = 1.333 L/min, flow
	//   L = 10 m, length of the tubing
	//   D = 13.6 mm, bore of the tubing
	//   ε = 0.007 mm, roughness of the wall
	//   ν = 1.003 mm²/s, kinematic viscosity of the water
	//   h = 0.02835 m, head lost
	//   Munson, Young and Okiishi, Fundamentals of Fluid Mechanics, equation of Darcy and Weisbach, example 8.8 as retyped
}
