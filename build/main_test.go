package main

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"evenrow/build/site"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/method"
)

// call runs a command line and returns what it prints.
func call(input string, args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = dispatch(args, stdio{strings.NewReader(input), &o, &e})
	return code, o.String(), e.String()
}

func TestWrongUse(t *testing.T) {
	for _, tt := range []struct {
		args []string
		want string
	}{
		{[]string{"sovle"}, "there is no command sovle\n"},
		{[]string{"site", "x"}, `site does not take "x"`},
		{[]string{"serve", "-prot", "1"}, "flag provided but not defined: -prot"},
		{[]string{"solve", "a", "b"}, `solve does not take "b"`},
		{[]string{"formula", "lenght"}, "there is no formula lenght"},
		{[]string{"formula", "velocity", "2"}, `"2" must be name=value`},
		{[]string{"formula", "velocity", "=2"}, `"=2" has no name before the equals sign`},
	} {
		code, out, errs := call("", tt.args...)
		if code != 2 || out != "" || !strings.HasPrefix(errs, tt.want) {
			t.Errorf("%q: code %d, out %q, errors\n%s\nwant code 2 and %s", tt.args, code, out, errs, tt.want)
		}
	}
}

func TestHelpNamesEveryCommand(t *testing.T) {
	code, out, _ := call("")
	for _, c := range commands {
		if !strings.Contains(out, "  "+c.name) {
			t.Errorf("help does not name %s", c.name)
		}
	}
	if code != 0 {
		t.Errorf("help ends with code %d", code)
	}
}

func TestFormula(t *testing.T) {
	code, list, _ := call("", "formula")
	if code != 0 || !strings.Contains(list, "friction-factor") {
		t.Errorf("list, code %d:\n%s", code, list)
	}
	code, about, _ := call("", "formula", "velocity")
	if code != 0 || !strings.Contains(about, "Source: ") || !strings.Contains(about, "gives v: ") {
		t.Errorf("velocity, code %d:\n%s", code, about)
	}
	// One argument or several: a shell may have split value and unit.
	_, whole, _ := call("", "formula", "velocity", "flow=4 L/min", "bore=13.6 mm")
	code, split, errs := call("", "formula", "velocity", "flow=4", "L/min", "bore=13.6", "mm")
	if code != 0 || split != whole || !strings.Contains(whole, "v = 0.4589 m/s") {
		t.Errorf("code %d, %s\n%s\nand\n%s", code, errs, whole, split)
	}
	// Everything that is wrong, at once.
	code, _, errs = call("", "formula", "velocity", "flow=much", "width=2")
	if code != 1 || strings.Count(errs, "\n") != 3 || !strings.Contains(errs, "bore (") || !strings.Contains(errs, "width is no symbol of velocity") {
		t.Errorf("code %d:\n%s", code, errs)
	}
}

// Every command explains itself where it is asked, and says so to those who
// call it wrongly.
func TestEveryCommandHasHelp(t *testing.T) {
	for _, c := range commands {
		for _, args := range [][]string{{c.name, "-h"}, {c.name, "--help"}, {"help", c.name}} {
			code, out, errs := call("", args...)
			if code != 0 || errs != "" || !strings.HasPrefix(out, "Usage: go run ./build "+strings.TrimSpace(c.name+" "+c.args)+"\n") ||
				!strings.Contains(out, c.about) || len(c.about) < 60 {
				t.Errorf("%q: code %d\n%s%s", args, code, out, errs)
			}
			for _, flag := range regexp.MustCompile(`\[(-[a-z]+)`).FindAllStringSubmatch(c.args, -1) {
				if !strings.Contains(out, "\n  "+flag[1]) {
					t.Errorf("the help of %s does not explain %s", c.name, flag[1])
				}
			}
		}
		if code, out, errs := call("", c.name, "-no-such-flag"); code != 2 || out != "" || !strings.Contains(errs, "Usage: ") {
			t.Errorf("%s with a flag that is none: code %d, %q, %q", c.name, code, out, errs)
		}
	}
}

// The value as JSON is the one that the calculation has, to the last digit.
func TestFormulaAsJSON(t *testing.T) {
	type object struct {
		Name, Equation, Symbol, Unit, Source string
		Value                                *float64
		Inputs                               []struct {
			Name, Symbol, Unit string
			Value              *float64
			Min, Max           float64
		}
	}
	code, out, errs := call("", "formula", "-json", "velocity", "flow=4 L/min", "bore=13.6 mm")
	var v object
	if err := json.Unmarshal([]byte(out), &v); code != 0 || err != nil || v.Value == nil {
		t.Fatalf("code %d, %v, %s\n%s", code, err, errs, out)
	}
	// v = 4 Q/(π D²), in full: by the definition of the bore's area.
	if want := 4 * (4 / 6e4) / (math.Pi * 0.0136 * 0.0136); math.Abs(*v.Value-want) > 1e-15*want || v.Unit != "m/s" || v.Symbol != "v" || v.Source == "" || v.Equation == "" {
		t.Errorf("%+v, %.17g", v, *v.Value)
	}
	if len(v.Inputs) != 2 || v.Inputs[0].Unit != "m³/s" || v.Inputs[1].Name != "bore" || v.Inputs[1].Symbol != "D" || *v.Inputs[1].Value != 0.0136 {
		t.Errorf("%+v", v.Inputs)
	}
	if _, late, _ := call("", "formula", "velocity", "flow=4 L/min", "bore=13.6 mm", "-json"); late != out {
		t.Error("-json after the name gives something else")
	}
	// Every formula is declared so, and each unit is named.
	for _, f := range method.All() {
		code, out, _ := call("", "formula", "-json", f.Name)
		var v object
		if err := json.Unmarshal([]byte(out), &v); code != 0 || err != nil || v.Value != nil || len(v.Inputs) != len(f.In) || v.Unit == "" || strings.Count(out, "\n{") > 0 {
			t.Errorf("%s: code %d, %v\n%s", f.Name, code, err, out)
		}
		for _, in := range v.Inputs {
			if in.Unit == "" || in.Symbol == "" || !(in.Min < in.Max) {
				t.Errorf("%s: %+v", f.Name, in)
			}
		}
	}
	// Several values of one symbol.
	if code, out, errs = call("", "formula", "-json", "nothing-like-it"); code != 2 || out != "" {
		t.Errorf("code %d, %q, %q", code, out, errs)
	}
	if code, _, errs = call("", "formula", "-json", "velocity", "flow=much", "bore=1"); code != 1 || !strings.Contains(errs, "must be") {
		t.Errorf("code %d, %q", code, errs)
	}
	if code, _, _ = call("", "formula", "-json"); code != 2 {
		t.Errorf("-json alone: code %d", code)
	}
}

func TestExample(t *testing.T) {
	code, list, _ := call("", "example")
	for _, e := range plan.Examples() {
		if code != 0 || !strings.Contains(list, e.Key) || !strings.Contains(list, e.Title) {
			t.Errorf("code %d, the list lacks %s:\n%s", code, e.Key, list)
		}
		name := filepath.Join(t.TempDir(), "plan.json")
		_, alone, _ := call("", "example", e.Key)
		if code, out, _ := call("", "example", e.Key, "-"); code != 0 || out == "" || out != alone {
			os.Remove("-")
			t.Errorf("to standard output: code %d, %.40q", code, out)
		}
		if code, out, errs := call("", "example", e.Key, name); code != 0 || out+errs != "" {
			t.Errorf("%s: code %d, %q, %q", e.Key, code, out, errs)
		}
		if _, out, _ := call("", "link", name); strings.TrimSpace(out) != "#"+carry.Link(e.Plan) {
			t.Errorf("the file of %s is the plan %s", e.Key, out)
		}
		if code, _, _ := call("", "example", e.Key, name); code != 0 {
			t.Errorf("%s a second time: code %d", e.Key, code)
		}
		if err := os.WriteFile(name, []byte("{}"), 0o666); err != nil {
			t.Fatal(err)
		}
		if code, _, errs := call("", "example", e.Key, name); code != 1 || !strings.Contains(errs, "is there already") {
			t.Errorf("over another file: code %d, %q", code, errs)
		}
	}
	if code, _, errs := call("", "example", "balcon"); code != 2 || !strings.Contains(errs, "there are millrace, ") {
		t.Errorf("code %d, %q", code, errs)
	}
}

// A folder that site has written is served as it is, one that edge has written
// with its plan pages, and of any other it is said what is missing.
func TestServedFolders(t *testing.T) {
	static := t.TempDir()
	if err := write(static, site.Files{"index.html": []byte("the page"), "assets/a.js": []byte("1")}); err != nil {
		t.Fatal(err)
	}
	files, shell, err := answered(static)
	if err != nil || shell != nil || len(files) != 2 || string(files["index.html"]) != "the page" || string(files["assets/a.js"]) != "1" {
		t.Errorf("a static site: %v, %v, %v", files, shell, err)
	}
	edge := t.TempDir()
	if err := write(edge, site.Files{"site/index.html": []byte("the page"), shellFile: []byte(`{"Plan": "a frame"}`)}); err != nil {
		t.Fatal(err)
	}
	if files, shell, err = answered(edge); err != nil || shell == nil || shell.Plan != "a frame" || len(files) != 1 {
		t.Errorf("a site for an edge: %v, %v, %v", files, shell, err)
	}
	for _, none := range []string{t.TempDir(), filepath.Join(t.TempDir(), "none")} {
		if code, _, errs := call("", "serve", "-from", none); code != 1 || !strings.Contains(errs, "is no finished site: it has neither index.html") {
			t.Errorf("no site: code %d, %q", code, errs)
		}
	}
}

// A link as an argument is longer than any name of a file may be.
func TestLongLink(t *testing.T) {
	p := plan.Default()
	p.Rows = nil
	for i := range 30 {
		p.Rows = append(p.Rows, plan.Default().Rows[0])
		p.Rows[i].Spacing = 0.3 + float64(i)/1000
	}
	long := carry.Link(p)
	if len(long) < 300 {
		t.Fatalf("the link has %d characters, which a file's name may have", len(long))
	}
	for _, arg := range []string{"#" + long, long, "https://example.test/evenrow/#" + long, "https://example.test/evenrow/plan?" + long} {
		if code, out, errs := call("", "link", arg); code != 0 || strings.TrimSpace(out) != strings.TrimSpace(string(carry.JSON(p))) {
			t.Errorf("code %d, %.80q", code, errs)
		}
	}
}

func TestSolve(t *testing.T) {
	file := string(carry.JSON(plan.Default()))
	code, out, errs := call(file, "solve")
	var d struct {
		Verdict string
		Zones   []struct {
			Plants []struct{ Row int }
		}
	}
	if err := json.Unmarshal([]byte(out), &d); code != 0 || err != nil || d.Verdict != "yes" || len(d.Zones) != 1 || len(d.Zones[0].Plants) != 120 {
		t.Errorf("code %d, %v, %s: verdict %q, %d zones", code, err, errs, d.Verdict, len(d.Zones))
	}
	name := filepath.Join(t.TempDir(), "plan.json")
	if err := os.WriteFile(name, []byte(file), 0o666); err != nil {
		t.Fatal(err)
	}
	if _, again, _ := call("", "solve", name); again != out {
		t.Error("the same plan from a file gives another answer")
	}
	code, out, errs = call(strings.Replace(file, `"length": 12`, `"length": -12`, 1), "solve")
	if code != 1 || out != "" || !strings.Contains(errs, "must be from ") {
		t.Errorf("a length below 0: code %d, %q, %q", code, out, errs)
	}
	if code, _, errs = call("", "solve", "no/such.json"); code != 1 || !strings.Contains(errs, "no/such.json") {
		t.Errorf("no such file: code %d, %q", code, errs)
	}
}

func TestLinkAndBack(t *testing.T) {
	for _, e := range plan.Examples() {
		file := string(carry.JSON(e.Plan))
		code, link, errs := call(file, "link")
		if code != 0 || !strings.HasPrefix(link, "#") {
			t.Fatalf("%s: code %d, %q, %s", e.Key, code, link, errs)
		}
		for _, form := range []string{link, "https://example.test/evenrow/" + link} {
			if _, back, errs := call(form, "link"); strings.TrimSpace(back) != strings.TrimSpace(file) {
				t.Errorf("%s comes back as\n%s%s\nwant\n%s", e.Key, back, errs, file)
			}
		}
		if _, back, _ := call("", "link", strings.TrimSpace(link)); strings.TrimSpace(back) != strings.TrimSpace(file) {
			t.Errorf("%s as an argument comes back as\n%s", e.Key, back)
		}
	}
	if code, _, errs := call("#1xx", "link"); code != 1 || errs == "" {
		t.Errorf("a damaged link: code %d, %q", code, errs)
	}
}

// A build replaces an earlier build, whole, and touches no other folder.
func TestWrite(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	if err := write(out, site.Files{"index.html": []byte("1"), "assets/old.js": []byte("1")}); err != nil {
		t.Fatal(err)
	}
	if err := write(out, site.Files{"index.html": []byte("2")}); err != nil {
		t.Fatal(err)
	}
	if b, err := os.ReadFile(filepath.Join(out, "index.html")); err != nil || string(b) != "2" {
		t.Errorf("index.html holds %q, %v", b, err)
	}
	if _, err := os.Stat(filepath.Join(out, "assets")); !os.IsNotExist(err) {
		t.Errorf("what the earlier build left is still there: %v", err)
	}
	other := t.TempDir()
	keep := filepath.Join(other, "keep.txt")
	if err := os.WriteFile(keep, nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if err := write(other, site.Files{"index.html": nil}); err == nil || !strings.Contains(err.Error(), "name another folder") {
		t.Errorf("a folder with other files: %v", err)
	}
	if _, err := os.Stat(keep); err != nil {
		t.Errorf("a file that is no build is gone: %v", err)
	}
}
