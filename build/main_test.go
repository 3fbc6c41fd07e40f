package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"evenrow/build/site"
	"evenrow/wasm/carry"
	"evenrow/wasm/plan"
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
