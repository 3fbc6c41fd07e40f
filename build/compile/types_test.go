package compile

import (
	"bytes"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// A program that asks at run time what its values are: by assertions and switches,
// known and found out; as keys of a map; with a finalizer; and, where it is large enough
// for that, the collector by its fields.
const asking = `package main

import "runtime"

type namer interface{ Name() string }

type tree struct {
	Kind  string
	leaf  any
	inner *tree
}

func (t tree) Name() string { return t.Kind }

type pair struct {
	left  any
	Right string
}

// cannot be compared, and so be no key
type list struct{ unlike []int }

type large [20000]struct {
	at *int
	n  int
}

//go:noinline
func what(v any) string {
	switch v := v.(type) {
	case int:
		return "int"
	case *tree:
		return "*tree " + v.Name()
	case pair:
		return "pair " + v.Right
	case *list:
		return "list"
	case namer:
		return "namer " + v.Name()
	}
	return "other"
}

func fails(f func()) {
	defer func() { println(recover().(error).Error() != "") }()
	f()
}

func main() {
	println(what(&list{[]int{3}}), what(3), what(&tree{Kind: "oak"}), what(pair{1, "b"}), what(tree{Kind: "elm"}), what("x"))
	m := map[any]int{1: 1, "a": 2, pair{1, "b"}: 3, pair{1, "c"}: 4, tree{Kind: "elm"}: 5, [2]string{"p", "q"}: 6}
	println(len(m), m[1], m["a"], m[pair{1, "b"}], m[pair{1, "c"}], m[pair{2, "b"}], m[tree{Kind: "elm"}], m[[2]string{"p", "q"}])
	var v any = 3
	fails(func() { println(v.(namer).Name()) })
	fails(func() { println(v.(string)) })
	fails(func() { println(m[pair{[]int{1}, ""}]) })
	held := new(large)
	for i := range held {
		held[i].at = new(int)
		*held[i].at = i
	}
	for range 3 {
		runtime.GC()
	}
	sum := 0
	for i := range held {
		sum += *held[i].at
	}
	println(sum)
	done := make(chan string)
	runtime.SetFinalizer(&tree{Kind: "ash", leaf: new(large)}, func(t *tree) { done <- t.Kind })
	runtime.GC()
	println(<-done)
}
`

// What is left of types is enough for all that a program asks of its values, and their
// names are gone.
func TestTypesThatAreAskedFor(t *testing.T) {
	dir := t.TempDir()
	write := func(name string, content []byte) {
		if err := os.WriteFile(filepath.Join(dir, name), content, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("main.go", []byte(asking))
	write("go.mod", []byte("module probe\n\ngo 1.26\n"))
	plain, err := wasm(dir, ".")
	if err != nil {
		t.Fatal(err)
	}
	smaller, err := Smaller(plain, false)
	if err != nil {
		t.Fatal(err)
	}
	goroot, err := run(dir, nil, "env", "GOROOT")
	if err != nil {
		t.Fatal(err)
	}
	said := func(program []byte) string {
		write("program.wasm", program)
		out, err := exec.Command("node", filepath.Join(goroot, "lib", "wasm", "wasm_exec_node.js"), filepath.Join(dir, "program.wasm")).CombinedOutput()
		if err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		return string(out)
	}
	want := "list int *tree oak pair b namer elm other\n6 1 2 3 4 0 5 6\ntrue\ntrue\ntrue\n199990000\nash\n"
	if got := said(plain); got != want {
		t.Fatalf("as Go compiles it, it says\n%s\nwant\n%s", got, want)
	}
	if got := said(smaller); got != want {
		t.Errorf("smaller, it says\n%s\nwant\n%s", got, want)
	}
	for _, name := range []string{"*main.large", "*main.namer", "unlike"} {
		if !bytes.Contains(memory(t, plain), []byte(name)) || bytes.Contains(memory(t, smaller), []byte(name)) {
			t.Errorf("%q is not in the plain program, or still in the smaller one", name)
		}
	}
}

func TestNameLength(t *testing.T) {
	for name, want := range map[string]int{
		"\x00\x03int": 3, "\x01\x04*A.B": 4, "\x00\x03in": 0, "\x02\x03int": 0, "\x00\x00int": 0, "\x00\x03i\x01t": 0, "\x00\x03i\xfft": 0, "": 0,
	} {
		if got := nameLength([]byte(name)); got != want {
			t.Errorf("%q: %d, want %d", name, got, want)
		}
	}
}

// The linker leaves zeros out between segments, wherever they stand: at the beginning of
// what is looked for, when the table's address ends in zeros, and within a word.
func TestWordsAndTheModuleAtTheEdgeOfASegment(t *testing.T) {
	const table, at = 0x79600, 0x2000
	whole := make([]byte, 64)
	binary.LittleEndian.PutUint64(whole, table)
	binary.LittleEndian.PutUint64(whole[8:], table+72)
	binary.LittleEndian.PutUint64(whole[16:], 0x1234)
	m := image{{offset: 8, data: make([]byte, 100)}, {offset: at + 1, data: whole[1:18]}}
	if got := m.module(table); got != at {
		t.Errorf("the module is at %x, want %x", got, at)
	}
	for i, want := range []uint64{table, table + 72, 0x1234, 0} {
		if got := m.word(at + 8*uint64(i)); got != want {
			t.Errorf("word %d is %x, want %x", i, got, want)
		}
	}
	if got := m.module(table + 8); got != 0 {
		t.Errorf("a module of another table, at %x", got)
	}
}
