package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// of returns the keys of the mutants of a file, without the file's name.
func of(t *testing.T, source string) []string {
	t.Helper()
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "a.go"), []byte("package a\n\n"+source), 0o644); err != nil {
		t.Fatal(err)
	}
	p, err := parse(listed{ImportPath: "a", Dir: folder, GoFiles: []string{"a.go"}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	var keys []string
	mutants, _ := mutate(p, folder)
	for _, m := range mutants {
		keys = append(keys, strings.TrimPrefix(m.key(), "a.go "))
	}
	return keys
}

func TestKindsOfMutants(t *testing.T) {
	tests := []struct{ name, source, want string }{
		{"a comparison", "func f(a, b int) bool { return a < b }", "f: `a < b` to `a <= b`\nf: `a < b` to `a >= b`"},
		{"equality", "func f(a, b string) bool { return a == b }", "f: `a == b` to `a != b`"},
		{"a condition is its own contrary", "func f(a, b int) { if a >= b { return }; f(b, a) }",
			"f: `a >= b` to `a > b`\nf: `a >= b` to `false`\nf: `a >= b` to `true`\nf: without `return`\nf: without `f(b, a)`"},
		{"a loop is not made to run for ever", "func f(n int) { for n != 0 { n-- } }", "f: `n != 0` to `false`\nf: `0` to `1`\nf: without `n--`"},
		{"a case", "func f(ok bool) { switch { case ok: f(ok) } }", "f: `ok` to `false`\nf: `ok` to `true`\nf: without `f(ok)`"},
		{"and, or, not", "func f(a, b bool) bool { return a && !b }", "f: `a && !b` to `a || !b`\nf: `!b` to `b`\nf: `return a && !b` to `return !(a && !b)`"},
		{"arithmetic", "func f(a, b float64) float64 { return a*b - -a }",
			"f: `a*b - -a` to `a*b + -a`\nf: `a * b` to `a / b`\nf: `-a` to `a`\nf: `return a*b - -a` to `return of nothing`"},
		{"words are not added up", `func f(a string) string { return a + "b" }`, ""},
		{"numbers", "func f(a float64) float64 { return max(a, 2, 0.5, 1e-3) }",
			"f: `2` to `3`\nf: `0.5` to `1.0`\nf: `1e-3` to `0.002`\nf: `return max(a, 2, 0.5, 1e-3)` to `return of nothing`"},
		{"a constant is changed where it is declared", "const c = 0.25\nfunc f(a float64) { f(a * c); f(c) }",
			"f: without `f(a * c)`\nf: `a * c` to `a / c`\nc: `0.25` to `0.5`\nf: without `f(c)`"},
		{"what does not fit is no mutant", "func f() byte { return 255 }", ""},
		{"kinds are only names", "const (\n\tone = iota\n\ttwo\n)\nvar x = two", ""},
		{"sizes of arrays stay", "var x [3]int\nvar y = [2]bool{1: true}", "y: `true` to `false`"},
		{"room that is set aside stays", "var x = make([]int, 1, 9)", "x: `1` to `2`"},
		{"statements", "func f(a []int) { for i := range a { if i > 3 { break }; a[i] += 2; a[0] = i } }",
			"f: `i > 3` to `i >= 3`\nf: `i > 3` to `false`\nf: `i > 3` to `true`\nf: `3` to `4`\nf: without `break`\n" +
				"f: `a[i] += 2` to `a[i] -= 2`\nf: without `a[i] += 2`\nf: `2` to `3`\nf: without `a[0] = i`\nf: `0` to `1`"},
		{"panics stay", `func f(n int) { panic(n + 1) }`, ""},
		{"methods have the name of their type", "type T struct{}\nfunc (t *T) f() bool { return true }", "T.f: `true` to `false`"},
		{"what reads alike is counted", "func f(a int) { f(a); f(a) }", "f: without `f(a)`\nf: without `f(a)` (2)"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, want := of(t, tt.source), strings.Split(tt.want, "\n")
			if tt.want == "" {
				want = nil
			}
			slices.Sort(got)
			slices.Sort(want)
			if !slices.Equal(got, want) {
				t.Errorf("%s\ngot\n\t%s\nwant\n\t%s", tt.source, strings.Join(got, "\n\t"), strings.Join(want, "\n\t"))
			}
		})
	}
}

const tiny = "build/mutants/testdata/tiny/tiny.go "

// The whole way, on a package whose test leaves some places open.
func TestTinyPackageAtOnce(t *testing.T) {
	root, err := moduleRoot()
	if err != nil {
		t.Fatal(err)
	}
	known := equivalents{
		tiny + "Clamp: `v < lo` to `v <= lo`":     "an end that is put in its own place is the same",
		tiny + "Clamp: `v > hi` to `true`":        "wrong: a test kills it",
		tiny + "Clamp: `v > hi` to `v >= higher`": "wrong: there is none",
		"wasm/elsewhere.go f: `a` to `b`":         "of another package",
	}
	var out strings.Builder
	err = judge([]string{filepath.Join(root, "build/mutants/testdata/tiny")}, root, known, way{workers: 2, patience: 1}, &out)
	survivors, scores, _ := strings.Cut(out.String(), "\n\n")
	want := []string{
		tiny + "Cost: `pieces > many` to `pieces >= many`  (line 9, survived)",
		tiny + "many: `10` to `11`  (line 5, survived)",
		tiny + "Clamp: `v > hi` to `v >= hi`  (line 20, survived)",
		tiny + "Unseen: `a && b` to `a || b`  (line 37, not reached by any test)",
		tiny + "Unseen: `return a && b` to `return !(a && b)`  (line 37, not reached by any test)",
	}
	got := strings.Split(survivors, "\n")
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("survivors\n\t%s\nwant\n\t%s", strings.Join(got, "\n\t"), strings.Join(want, "\n\t"))
	}
	// Without n /= 2 nothing ends; with n *= 2 it ends when n has no bits left.
	if !strings.Contains(scores, "26 killed of    31,  83.9 %;   1 ran without end,   1 listed as equivalent") {
		t.Errorf("scores:\n%s", scores)
	}
	wrong := []string{
		"listed as equivalent, but killed: " + tiny + "Clamp: `v > hi` to `true`",
		"listed as equivalent, and no mutant: " + tiny + "Clamp: `v > hi` to `v >= higher`",
		"83.9 % are killed, and 85 % should be",
	}
	if err == nil || err.Error() != strings.Join(wrong, "\n") {
		t.Errorf("got\n%v\nwant\n%s", err, strings.Join(wrong, "\n"))
	}
}

// A list of mutants runs none of them, and says what is wrong with the list of
// equivalent ones.
func TestListRunsNothing(t *testing.T) {
	root, err := moduleRoot()
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	err = judge([]string{filepath.Join(root, "build/mutants/testdata/tiny")}, root, equivalents{tiny + "Clamp: `v` to `w`": "none"}, way{sampling: sampling{most: 4, seed: 1}, list: true}, &out)
	if n := strings.Count(out.String(), "\n"+tiny) + 1; n != 4 || strings.Contains(out.String(), "killed") {
		t.Errorf("%d mutants:\n%s", n, out.String())
	}
	if err == nil || err.Error() != "listed as equivalent, and no mutant: "+tiny+"Clamp: `v` to `w`" {
		t.Errorf("got %v", err)
	}
}

func TestSamplesAreTheSameForASeed(t *testing.T) {
	a, b, c := sampling{20, 1}.of(100), sampling{20, 1}.of(100), sampling{20, 2}.of(100)
	same := func(x, y map[int]bool) bool {
		for i := range 100 {
			if x[i] != y[i] {
				return false
			}
		}
		return true
	}
	if len(a) != 20 || !same(a, b) || same(a, c) {
		t.Errorf("samples of seeds 1, 1 and 2: %v, %v, %v", a, b, c)
	}
	if all := (sampling{}).of(7); len(all) != 7 {
		t.Errorf("of 7 mutants, all are %d", len(all))
	}
}

// What the list says of a file that a run looks at is held by that run; that
// it can be read, and that its files are there, here.
func TestListOfEquivalents(t *testing.T) {
	list, err := readEquivalents(equivalent)
	if err != nil {
		t.Fatal(err)
	}
	for key := range list {
		file, _, _ := strings.Cut(key, " ")
		if _, err := os.Stat(filepath.Join("../..", file)); err != nil {
			t.Errorf("equivalent.txt: %v", err)
		}
	}
	for text, want := range map[string]string{
		"a.go f: x\nb.go g: y\n\tno":  "equivalent.txt:2: the mutant before has no reason",
		"\tno":                        "equivalent.txt:1: a reason without a mutant",
		"a.go f: x\n":                 "equivalent.txt: the last mutant has no reason",
		"a f: x\n\tno\na f: x\n\tyes": "equivalent.txt:3: stands there twice",
	} {
		if _, err := readEquivalents(text); err == nil || err.Error() != want {
			t.Errorf("%q: got %v, want %s", text, err, want)
		}
	}
}
