//go:build !js

// Package wasm holds no code of its own; its test holds what
// may import what of everything that computes.
package wasm

import (
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// floors are the folders under wasm/, from the ground up, each with the floors
// that its packages may import besides their own. Below is in reach, above is
// not; works and year stand side by side and do not know each other.
var floors = []struct{ name, below string }{
	{"ground", ""},
	{"trade", "ground"},
	{"grower", "ground trade"},
	{"works", "ground trade grower"},
	{"year", "ground trade grower"},
	{"shown", "ground trade grower works year"},
	{"cmd", "shown"},
}

// narrower holds the packages that import less than their floor lets them, and
// why: the whole list of what they may import.
var narrower = map[string]struct{ only, why string }{
	"ground/unit":     {"ground/words", "a quantity knows no formula and no source"},
	"ground/numeric":  {"", "mathematics knows no trade"},
	"ground/day":      {"ground/words", "a date knows nothing but how it is said"},
	"ground/words":    {"", "a text knows nothing of what it says"},
	"ground/work":     {"", "what counts work must not do any"},
	"trade/catalogue": {"ground/source ground/words", "what is on sale is data, and computes nothing"},
	"grower/plan":     {"ground/day ground/numeric ground/unit ground/words trade/catalogue trade/ends", "what a grower tells is checked against limits, not worked out"},
	"grower/carry":    {"ground/day ground/unit ground/words grower/plan", "a link and a file carry a plan, whatever is made of it"},
	"works/headroom":  {"grower/plan", "it asks whoever calls it whether a plan is well: so it works with any judge"},
	"year/ical":       {"ground/day", "a calendar file holds days, whatever they are for"},
	"cmd/planner":     {"shown/page", "the browser's program asks and answers as the page does, and no other way"},
}

// foreign is everything from outside that the calculation may import: each
// costs little in the download. Whatever else it wants has to be weighed first.
const foreign = "cmp errors iter maps math math/bits slices strconv strings sync/atomic unicode/utf16 unicode/utf8"

// heavy packages add 40 kB or more to the compressed download. They also come
// in through others: runtime/debug brings fmt.
const heavy = "fmt reflect encoding encoding/json regexp log os time bufio html text/template net/http runtime/debug math/big sort"

const module = "evenrow/wasm/"

func TestImports(t *testing.T) {
	all := packages(t)
	for pkg, deps := range all {
		floor, _, _ := strings.Cut(pkg, "/")
		at := slices.IndexFunc(floors, func(f struct{ name, below string }) bool { return f.name == floor })
		if at < 0 {
			t.Errorf("wasm/%s stands on no floor: they are the folders in the list here", pkg)
			continue
		}
		few, narrow := narrower[pkg]
		for _, dep := range deps {
			ours, ok := strings.CutPrefix(dep, module)
			below, _, _ := strings.Cut(ours, "/")
			switch {
			case ok && narrow && !slices.Contains(strings.Fields(few.only), ours):
				t.Errorf("wasm/%s may not import wasm/%s: %s", pkg, ours, few.why)
			case ok && below != floor && !slices.Contains(strings.Fields(floors[at].below), below):
				t.Errorf("wasm/%s may not import wasm/%s, which stands on a floor that it does not reach", pkg, ours)
			case !ok && dep == "syscall/js" && pkg == "cmd/planner":
				// the one package that knows the browser
			case !ok && !slices.Contains(strings.Fields(foreign), dep):
				t.Errorf("wasm/%s may not import %s", pkg, dep)
			}
		}
	}
	for pkg := range narrower {
		if all[pkg] == nil {
			t.Errorf("wasm/%s is named as an exception, and is not there", pkg)
		}
	}
}

// packages returns what each package under wasm/ imports, by its path there.
func packages(t *testing.T) map[string][]string {
	found := map[string][]string{}
	for _, line := range goList(t, "-f", `{{.ImportPath}} {{join .Imports " "}}`, "./...") {
		deps := strings.Fields(line)
		if pkg, ours := strings.CutPrefix(deps[0], module); ours { // else it is this folder, which holds only tests
			found[pkg] = deps[1:]
		}
	}
	if len(found) < 40 {
		t.Fatalf("go list names %d packages", len(found))
	}
	return found
}

func TestTheBrowserProgramLinksNothingHeavy(t *testing.T) {
	deps := goList(t, "-deps", "./cmd/planner")
	if !slices.Contains(deps, "syscall/js") {
		t.Fatalf("go list names only %v", deps)
	}
	for _, dep := range deps {
		if slices.Contains(strings.Fields(heavy), dep) {
			t.Errorf("the browser program may not link %s", dep)
		}
	}
}

// bulky functions are of packages that may be imported, but bring tables of
// every alphabet or much code with them: 2 kB and more in the download.
const bulky = "strings.NewReplacer strings.ToLower strings.ToUpper strings.ToTitle strings.Title strings.EqualFold strconv.Quote"

func TestNothingBulkyIsCalled(t *testing.T) {
	files := 0
	err := filepath.WalkDir(".", func(name string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return err
		}
		files++
		text, err := os.ReadFile(name)
		for _, call := range strings.Fields(bulky) {
			if strings.Contains(string(text), call+"(") {
				t.Errorf("wasm/%s calls %s", name, call)
			}
		}
		return err
	})
	if err != nil || files < 100 {
		t.Errorf("%d files looked at, %v", files, err)
	}
}

// stat looks at every source file: the test runner keeps a result until something
// that the test looked at has changed, and does not see what go list reads.
func stat(t *testing.T) {
	t.Helper()
	err := filepath.WalkDir(".", func(name string, _ fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(name, ".go") {
			_, err = os.Stat(name)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// goList returns the lines of go list, run for the browser.
func goList(t *testing.T, args ...string) []string {
	t.Helper()
	stat(t)
	cmd := exec.Command("go", append([]string{"list"}, args...)...)
	cmd.Env = append(cmd.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go %v: %v", cmd.Args, err)
	}
	return strings.Split(strings.TrimSpace(string(out)), "\n")
}
