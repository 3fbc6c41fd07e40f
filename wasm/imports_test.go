//go:build !js

// Package wasm holds no code of its own; its test holds the import graph of
// everything that computes.
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

// imports is the whole import graph under wasm/: a package may import only
// what its line names. A new line here is a design decision; say why in the
// commit.
var imports = map[string]string{
	"unit":         "",
	"numeric":      "",
	"day":          "",
	"source":       "",
	"formula":      "source unit",
	"water":        "formula numeric source unit",
	"pipe":         "formula numeric source unit water",
	"emitter":      "formula numeric source unit water",
	"pump":         "formula numeric source unit water",
	"filter":       "formula numeric source unit water",
	"sun":          "day formula numeric source unit",
	"evenness":     "formula numeric source unit",
	"dose":         "formula source unit",
	"evapo":        "formula numeric source sun unit",
	"climate":      "day formula source unit",
	"chlorine":     "formula source unit",
	"medium":       "formula source unit",
	"method":       "catalogue chance chlorine climate demand design dose drain emitter evapo evenness fault filter flush formula layout medium network parts pipe pump season sheet shots source startup sun surge unit view water",
	"method/check": "formula method pipe pump source unit water",
	"catalogue":    "source",
	"work":         "",
	"network":      "emitter formula numeric pipe source unit water work",
	"plan":         "catalogue day numeric unit",
	"ical":         "day",
	"season":       "catalogue day formula ical numeric plan source unit",
	"shots":        "catalogue day dose formula plan season source unit",
	"drain":        "day dose formula source unit",
	"demand":       "catalogue climate day evapo formula plan season source unit",
	"carry":        "day plan unit",
	"layout":       "catalogue emitter filter formula network numeric pipe plan pump source unit water work",
	"parts":        "catalogue formula layout plan source unit",
	"flush":        "emitter formula layout network pipe source unit",
	"headroom":     "plan",
	"design":       "catalogue emitter evenness flush formula layout network numeric pipe plan pump source unit water work",
	"fault":        "emitter filter flush formula layout network numeric pipe plan pump source unit",
	"chance":       "evenness formula layout network numeric source unit",
	"surge":        "catalogue formula layout network pipe source unit water",
	"startup":      "emitter formula layout network numeric pipe plan source surge unit water work",
	"sheet":        "catalogue chance climate day demand design dose emitter evenness fault filter flush formula headroom layout network numeric parts pipe plan pump season shots source startup sun surge unit water work",
	"view":         "catalogue chance climate day demand design dose drain emitter evapo evenness fault filter flush formula headroom layout network parts pipe plan pump season sheet shots source startup sun surge unit water",
	"page":         "carry day drain ical plan season sheet unit view",
	"cmd/planner":  "page",
}

// foreign is everything from outside that the calculation may import: each
// costs little in the download. Whatever else it wants has to be weighed first.
const foreign = "cmp errors iter maps math math/bits slices strconv strings sync/atomic unicode/utf16 unicode/utf8"

// heavy packages add 40 kB or more to the compressed download. They also come
// in through others: runtime/debug brings fmt.
const heavy = "fmt reflect encoding encoding/json regexp log os time bufio html text/template net/http runtime/debug math/big sort"

const module = "evenrow/wasm/"

func TestImports(t *testing.T) {
	found := map[string]bool{}
	for _, line := range goList(t, "-f", `{{.ImportPath}} {{join .Imports " "}}`, "./...") {
		deps := strings.Fields(line)
		if deps[0] == strings.TrimSuffix(module, "/") {
			continue // this folder, which holds only tests
		}
		pkg := strings.TrimPrefix(deps[0], module)
		found[pkg] = true
		allowed, ok := imports[pkg]
		if !ok {
			t.Errorf("wasm/%s has no line in the import graph", pkg)
		}
		for _, dep := range deps[1:] {
			ours, ok := strings.CutPrefix(dep, module)
			switch {
			case ok && !slices.Contains(strings.Fields(allowed), ours):
				t.Errorf("wasm/%s may not import wasm/%s", pkg, ours)
			case !ok && dep == "syscall/js" && pkg == "cmd/planner":
				// the one package that knows the browser
			case !ok && !slices.Contains(strings.Fields(foreign), dep):
				t.Errorf("wasm/%s may not import %s", pkg, dep)
			}
		}
	}
	for pkg := range imports {
		if !found[pkg] {
			t.Errorf("the import graph has a line for wasm/%s, which is not there", pkg)
		}
	}
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
const bulky = "strings.NewReplacer strings.ToLower strings.ToUpper strings.ToTitle strings.Title strings.EqualFold"

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
	if err != nil || files < len(imports) {
		t.Errorf("%d files looked at, %v", files, err)
	}
}

// The graph must have no way round: each package's line names only packages
// whose own lines do not lead back to it.
func TestTheGraphHasNoWayBack(t *testing.T) {
	var visit func(pkg string, way []string)
	visit = func(pkg string, way []string) {
		if slices.Contains(way, pkg) {
			t.Fatalf("the import graph goes round: %s", strings.Join(append(way, pkg), ", "))
		}
		for _, dep := range strings.Fields(imports[pkg]) {
			if _, ok := imports[dep]; !ok {
				t.Errorf("the line of %s names %s, which has none", pkg, dep)
			}
			visit(dep, append(slices.Clone(way), pkg))
		}
	}
	for pkg := range imports {
		visit(pkg, nil)
	}
}

// goList returns the lines of go list, run for the browser. It looks at every
// source file itself first: the test runner keeps a result until something
// that the test looked at has changed, and does not see what go list reads.
func goList(t *testing.T, args ...string) []string {
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
	cmd := exec.Command("go", append([]string{"list"}, args...)...)
	cmd.Env = append(cmd.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go %v: %v", cmd.Args, err)
	}
	return strings.Split(strings.TrimSpace(string(out)), "\n")
}
