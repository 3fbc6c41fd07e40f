package compile

import (
	"bytes"
	"testing"
)

// The parts are the whole program, but for what stands between them, and each
// function is in the part of its package.
func TestPartsAreTheProgram(t *testing.T) {
	root, err := Root()
	if err != nil {
		t.Fatal(err)
	}
	plain, err := wasm(root, "./wasm/cmd/planner", small...)
	if err != nil {
		t.Fatal(err)
	}
	parts, err := partsOf(plain)
	if err != nil {
		t.Fatal(err)
	}
	smaller, err := Smaller(plain, false)
	if err != nil {
		t.Fatal(err)
	}
	all, of := 0, map[string]int{}
	for _, p := range parts {
		all += len(p.Content)
		of[p.Group] += len(p.Content)
		if p.Name == "strings, types, tables" && !bytes.Contains(p.Content, []byte("litres")) {
			t.Error("the data holds no text")
		}
	}
	// The head of each section and function is of some bytes.
	if between := len(smaller) - all; between < 0 || between > 20_000 {
		t.Errorf("the parts are of %d bytes, the program of %d", all, len(smaller))
	}
	for _, group := range []string{"ground", "trade", "grower", "works", "year", "shown", "cmd", "runtime", "library", "data", "made by the compiler"} {
		if of[group] < 5000 {
			t.Errorf("%s is of %d bytes", group, of[group])
		}
	}
	if len(of) != 11 {
		t.Errorf("groups %v", of)
	}
}

func TestGroupOf(t *testing.T) {
	for name, want := range map[string][2]string{
		"evenrow/wasm/works/network.(*Solver).Solve": {"works", "network"},
		"main.main":                           {"cmd", "planner"},
		"internal/runtime/maps.(*Map).Delete": {"runtime", "internal/runtime/maps"},
		"slices.SortFunc[go.shape.[]evenrow/wasm/works/layout.Plant]": {"library", "slices"},
		"type:.eq.evenrow/wasm/grower/plan.Month":                     {"made by the compiler", "comparisons"},
		"type:.hash.[2]string":                                        {"made by the compiler", "comparisons"},
		"_rt0_wasm_js":                                                {"runtime", "without a package"},
	} {
		group, pkg := groupOf(name)
		if group != want[0] || pkg != want[1] {
			t.Errorf("groupOf(%q) is %q, %q", name, group, pkg)
		}
	}
}
