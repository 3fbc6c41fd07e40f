package compile

import (
	"bytes"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// memory lays segments out, in the order of the program, as an engine does.
func memory(t *testing.T, program []byte) []byte {
	t.Helper()
	for rest := program[8:]; len(rest) > 0; {
		size, n := binary.Uvarint(rest[1:])
		body := rest[1+n : 1+n+int(size)]
		if rest[0] != dataSection {
			rest = rest[1+n+int(size):]
			continue
		}
		segments, err := readSegments(body)
		if err != nil {
			t.Fatal(err)
		}
		var m []byte
		for _, s := range segments {
			if end := int(s.offset) + len(s.data); end > len(m) {
				m = append(m, make([]byte, end-len(m))...)
			}
			copy(m[s.offset:], s.data)
		}
		return m
	}
	t.Fatal("no data section")
	return nil
}

// program returns a WebAssembly program of a memory and the given segments.
func program(segments ...segment) []byte {
	p := []byte("\x00asm\x01\x00\x00\x00")
	p = append(p, 5, 3, 1, 0, 1) // one memory of one page
	body := writeSegments(segments)
	p = append(p, dataSection)
	p = binary.AppendUvarint(p, uint64(len(body)))
	return append(p, body...)
}

func TestJoinKeepsMemory(t *testing.T) {
	p := program(
		segment{64, []byte("first")},
		segment{64 + 5 + gap, []byte("within the gap")},
		segment{4*gap - 1, []byte("far, at an offset whose top bit reads as a sign")},
		segment{16, []byte("before all")},
	)
	segments, err := readSegments(writeSegments(join([]segment{
		{64, []byte("first")},
		{64 + 5 + gap, []byte("within the gap")},
		{4*gap - 1, []byte("far, at an offset whose top bit reads as a sign")},
		{16, []byte("before all")},
	})))
	if err != nil {
		t.Fatal(err)
	}
	if len(segments) != 2 {
		t.Errorf("%d segments, want 2", len(segments))
	}
	if !bytes.Equal(memory(t, program(segments...)), memory(t, p)) {
		t.Error("memory differs")
	}
}

func TestSmallerRefuses(t *testing.T) {
	passive := program(segment{0, []byte("x")})
	passive[bytes.LastIndex(passive, []byte{0, 0x41})] = 1
	for name, p := range map[string][]byte{
		"nothing":               nil,
		"cut short":             program(segment{0, []byte("x")})[:14],
		"passive":               passive,
		"no offset":             append([]byte("\x00asm\x01\x00\x00\x00"), dataSection, 2, 1, 0),
		"not a module":          []byte("MZ\x00\x00\x00\x00\x00\x00\x00"),
		"no table of functions": program(segment{0, []byte("x")}),
	} {
		if _, err := Smaller(p); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// The smaller program runs, collects garbage, grows its stack and reports a
// panic by the names of the functions.
func TestSmallerRuns(t *testing.T) {
	dir := t.TempDir()
	source := `package main

import "runtime"

type list struct {
	next *list
	data [100]byte
}

func deep(n int) *list {
	if n == 0 {
		runtime.GC()
		return nil
	}
	return &list{next: deep(n - 1)}
}

func blame(v []int) int { return v[len(v)] }

func main() {
	n := 0
	for range 20 {
		for l := deep(10000); l != nil; l = l.next {
			n++
		}
	}
	println("counted", n)
	func() {
		defer func() { println("recovered", recover() != nil) }()
		blame(nil)
	}()
	blame(nil)
}
`
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("main.go", source)
	write("go.mod", "module probe\n\ngo 1.26\n")
	if _, err := run(dir, []string{"GOOS=js", "GOARCH=wasm", "GOFLAGS="}, "build", "-ldflags=-s -w", "-o", "probe.wasm", "."); err != nil {
		t.Fatal(err)
	}
	before, err := os.ReadFile(filepath.Join(dir, "probe.wasm"))
	if err != nil {
		t.Fatal(err)
	}
	after, err := Smaller(before)
	if err != nil {
		t.Fatal(err)
	}
	write("smaller.wasm", string(after))
	goroot, err := run(dir, nil, "env", "GOROOT")
	if err != nil {
		t.Fatal(err)
	}
	out, _ := exec.Command("node", filepath.Join(goroot, "lib", "wasm", "wasm_exec_node.js"), filepath.Join(dir, "smaller.wasm")).CombinedOutput()
	for _, want := range []string{"counted 200000", "recovered true", "index out of range", "main.blame"} {
		if !strings.Contains(string(out), want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
}
