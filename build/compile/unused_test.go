package compile

import (
	"slices"
	"strings"
	"testing"
)

// What is said never to run is in the program as Go compiles it, or the list
// is one of another Go; it and what only it calls is not in the smaller one, and
// what is often called is.
func TestWhatNeverRunsIsTakenOut(t *testing.T) {
	root, err := Root()
	if err != nil {
		t.Fatal(err)
	}
	plain, err := wasm(root, "./wasm/cmd/planner", small...)
	if err != nil {
		t.Fatal(err)
	}
	names, err := namesOf(plain)
	if err != nil {
		t.Fatal(err)
	}
	smaller, err := Smaller(plain, false)
	if err != nil {
		t.Fatal(err)
	}
	unused := traps(t, smaller)
	if len(unused) != len(names) {
		t.Fatalf("%d functions, want %d", len(unused), len(names))
	}
	for _, n := range never {
		for _, pattern := range strings.Fields(n.names) {
			if !slices.ContainsFunc(names, func(name string) bool { return matches(name, pattern) }) {
				t.Errorf("the program has no %s", pattern)
			}
		}
	}
	taken := 0
	for k, name := range names {
		if unused[k] {
			taken++
		}
		if isNever(name) && !unused[k] {
			t.Errorf("%s is in the program", name)
		}
		if unused[k] && strings.HasPrefix(name, "evenrow/") {
			t.Errorf("%s is taken out", name)
		}
	}
	if taken < 150 || taken > len(names)/10 {
		t.Errorf("%d of %d functions are taken out", taken, len(names))
	}
	for name, want := range map[string]bool{
		"runtime.(*traceMap).put": true, // called by the tracer alone
		"runtime.traceLocker.ok":  false,
		"runtime.mallocgc":        false,
		"runtime.gopanic":         false,
		"runtime.traceback2":      false,
		"wasm_export_resume":      false,
		"main.main":               false,
	} {
		if k := slices.Index(names, name); k < 0 || unused[k] != want {
			t.Errorf("%s, at %d: taken out is not %v", name, k, want)
		}
	}
}

func TestNeverNames(t *testing.T) {
	for name, want := range map[string]bool{
		"runtime.traceLocker.GoStart":   true,
		"runtime.traceLocker.ok":        false,
		"runtime.traceLockInit":         false,
		"runtime.traceback1":            false,
		"runtime.(*traceMap).put":       true,
		"runtime.(*traceMapNode).put":   false,
		"runtime.newm":                  true,
		"runtime.newm1":                 false,
		"evenrow/wasm/works/layout.New": false,
	} {
		if isNever(name) != want {
			t.Errorf("isNever(%q) is %v", name, !want)
		}
	}
}
