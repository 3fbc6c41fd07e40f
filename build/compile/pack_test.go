package compile

import (
	"bytes"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
)

// What the start function leaves in memory is what Go's linker wrote there and
// strip left: all but the programs byte for byte, and each program where its
// record says.
func TestUnpackingLeavesWhatGoWrote(t *testing.T) {
	root, err := Root()
	if err != nil {
		t.Fatal(err)
	}
	plain, err := wasm(root, "./wasm/cmd/planner", small...)
	if err != nil {
		t.Fatal(err)
	}
	smaller, err := Smaller(plain, false)
	if err != nil {
		t.Fatal(err)
	}
	unused := traps(t, smaller)
	want := memory(t, plain)
	wanted, err := readFunctions(want)
	if err != nil {
		t.Fatal(err)
	}
	if err := wanted.strip(image{{0, want}}, uint64(len(want)-len(wanted.table)), false, unused); err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(memory(t, smaller), bucketsOf(100)) {
		t.Error("the buckets are in the program")
	}
	if !bytes.Contains(want, powersOfTen()) || bytes.Contains(memory(t, smaller), powersOfTen()[:64]) {
		t.Error("the powers of ten are not in the program as Go compiles it, or in the smaller one")
	}
	got := loaded(t, root, smaller)[:len(want)]

	before, err := readFunctions(want)
	if err != nil {
		t.Fatal(err)
	}
	after, err := readFunctions(got)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(before.records, after.records) || len(before.records) < 1000 {
		t.Fatalf("%d records, want %d, or at other places", len(after.records), len(before.records))
	}
	programs := 0
	for _, r := range before.records {
		for word := range before.length(r) {
			if !before.holdsProgram(r, word) {
				continue
			}
			a, b := before.offset(r+4*word), after.offset(r+4*word)
			if a == 0 && b == 0 {
				continue
			}
			x, y := before.table[before.programs+a:][:endOfProgram(before.table[before.programs:], a)-a],
				after.table[after.programs+b:][:endOfProgram(after.table[after.programs:], b)-b]
			if a == 0 || b == 0 || !bytes.Equal(x, y) {
				t.Fatalf("word %d of the record at %d: program % x, want % x", word, r, y, x)
			}
			programs++
			after.setOffset(r+4*word, a)
		}
	}
	if programs < 5000 {
		t.Errorf("only %d programs", programs)
	}
	clear(before.table[before.programs:before.index])
	clear(after.table[after.programs:after.index])
	for i := range want {
		if want[i] != got[i] {
			t.Fatalf("memory differs at %d of %d, the index being at %d", i, len(want), len(want)-len(before.table)+before.index)
		}
	}
}

// traps reports which functions of a program, but for the last, which unpacks,
// do nothing but trap.
func traps(t *testing.T, program []byte) (all []bool) {
	t.Helper()
	sections, err := readSections(program[8:])
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sections {
		if s.id != codeSection {
			continue
		}
		bodies, err := codeOf(s.body)
		if err != nil {
			t.Fatal(err)
		}
		for _, code := range bodies[:len(bodies)-1] {
			all = append(all, len(code) == 2 && code[0].op == opUnreachable)
		}
	}
	return all
}

// loaded is the memory of a program that is loaded and not yet run.
func loaded(t *testing.T, root string, program []byte) []byte {
	t.Helper()
	dir := t.TempDir()
	in, out := filepath.Join(dir, "program.wasm"), filepath.Join(dir, "memory")
	if err := os.WriteFile(in, program, 0o644); err != nil {
		t.Fatal(err)
	}
	if text, err := exec.Command("node", filepath.Join(root, "build", "compile", "testdata", "memory.js"), in, out).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	m, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// Tables that are not as Go lays them out are not packed.
func TestOtherTablesAreNotPacked(t *testing.T) {
	whole := func() []byte {
		m := slices.Concat(tableOfOne(), make([]byte, 4000), bucketsOf(1))
		binary.LittleEndian.PutUint32(m[96:], firstSlot)
		binary.LittleEndian.PutUint32(m[96+8:], firstSlot+1)
		binary.LittleEndian.PutUint32(m[96+16:], firstSlot)
		return m
	}
	if _, err := pack(whole(), 64); err == nil {
		t.Error("columns that are longer than the buckets are taken")
	}
	for name, change := range map[string]func(m []byte){
		"another first function": func(m []byte) { m[96]++ },
		"another end":            func(m []byte) { m[96+8]++ },
		"another number":         func(m []byte) { m[96+16]++ },
		"another place":          func(m []byte) { m[96+4] += 4 },
	} {
		m := whole()
		if f, err := readFunctions(m); err != nil || !f.derivable() {
			t.Fatalf("derivable is false, %v", err)
		}
		change(m)
		if f, err := readFunctions(m); err == nil && f.derivable() {
			t.Errorf("%s is taken", name)
		}
	}
}
