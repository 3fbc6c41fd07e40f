package compile

import (
	"bytes"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
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

func TestSplitKeepsMemory(t *testing.T) {
	zeros := make([]byte, gap+1)
	long := slices.Concat(zeros, []byte("one"), zeros[1:], []byte("still one"), zeros, []byte("two"), zeros)
	segments := split([]segment{{64, long}, {1 << 20, []byte("three")}, {1 << 21, zeros}})
	if len(segments) != 3 || len(segments[1].data) != 3 {
		t.Errorf("%d segments, want 3", len(segments))
	}
	got, want := memory(t, program(segments...)), memory(t, program(segment{64, long}, segment{1 << 20, []byte("three")}))
	if !bytes.Equal(got, want) {
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
		if _, err := Smaller(p, false); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// The smaller program runs, collects garbage, grows its stack, and recovers
// from a panic, also where the runtime reads the name of a function: where a
// method is called through a nil pointer and where package reflect makes a
// function. A stack trace names functions, or packages alone.
func TestSmallerRuns(t *testing.T) {
	dir := t.TempDir()
	source := `package main

import (
	"reflect"
	"runtime"
)

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

func (l list) first() byte { return l.data[0] }

var something interface{ first() byte }

func blame(v []int) int { return v[len(v)] }

func recovered(f func()) {
	defer func() { println("recovered:", recover().(error).Error()) }()
	f()
}

type pair[T any] struct{ left, right T }

//go:noinline
func (p *pair[T]) sum(add func(a, b T) T) T { return add(p.left, p.right) }

func main() {
	n := 0
	for range 20 {
		for l := deep(10000); l != nil; l = l.next {
			n++
		}
	}
	println("counted", n)
	made := reflect.MakeFunc(reflect.TypeFor[func(*list) *list](), func(args []reflect.Value) []reflect.Value {
		deep(10000)
		return args
	}).Interface().(func(*list) *list)
	println("made", made(&list{data: [100]byte{7}}).first())
	println("goroutines", runtime.NumGoroutine())
	recovered(func() { blame(nil) })
	recovered(func() {
		something = (*list)(nil)
		something.first()
	})
	p := pair[list]{}
	p.sum(func(a, b list) list {
		blame(nil)
		return a
	})
}
`
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("main.go", source)
	write("go.mod", "module probe/of\n\ngo 1.26\n")
	before, err := wasm(dir, ".")
	if err != nil {
		t.Fatal(err)
	}
	goroot, err := run(dir, nil, "env", "GOROOT")
	if err != nil {
		t.Fatal(err)
	}
	for _, named := range []bool{true, false} {
		after, err := Smaller(before, named)
		if err != nil {
			t.Fatal(err)
		}
		write("smaller.wasm", string(after))
		out, _ := exec.Command("node", filepath.Join(goroot, "lib", "wasm", "wasm_exec_node.js"), filepath.Join(dir, "smaller.wasm")).CombinedOutput()
		text := string(out)
		for _, want := range []string{
			"counted 200000\n", "made 7\n", "goroutines 1\n",
			"recovered: runtime error: index out of range [0] with length 0\n",
			"recovered: value method main.list.first called using nil *list pointer\n",
			"panic: runtime error: index out of range [0] with length 0\n\ngoroutine 1 [running]:\nmain.",
		} {
			if !strings.Contains(text, want) {
				t.Errorf("named %v: no %q in\n%s", named, want, text)
			}
		}
		for _, name := range []string{"main.blame(", "main.(*pair[", "main.main("} {
			if strings.Contains(text, name) != named {
				t.Errorf("named %v, but %q in\n%s", named, name, text)
			}
		}
		if trace := text[strings.LastIndex(text, "[running]:")+1:]; !named && strings.Count(trace, "main.(") < 3 {
			t.Errorf("the packages of the functions are missing in\n%s", text)
		}
	}
}

func TestNeededNames(t *testing.T) {
	for _, c := range []struct {
		name string
		id   byte
		want bool
	}{
		{"main.(*list).first", 23, true},
		{"main.(*list).first", 0, false},
		{"type:.eq.main.list", 23, false},
		{"reflect.makeFuncStub", 0, true},
		{"reflect.methodValueCall", 0, true},
		{"reflect.MakeFunc", 0, false},
	} {
		if needed(c.name, c.id) != c.want {
			t.Errorf("needed(%q, %d) is %v", c.name, c.id, !c.want)
		}
	}
}

func TestPackageOf(t *testing.T) {
	for name, want := range map[string]string{
		"runtime.gopanic": "runtime.",
		"evenrow/wasm/shown/view.(*form).row.func1": "evenrow/wasm/shown/view.",
		"slices.SortFunc[go.shape.[]a/b.T,x]":       "slices.",
		"type:.eq.evenrow/wasm/grower/plan.Month":   "type:.eq.evenrow/wasm/grower/plan.",
		"internal/runtime/maps.(*Map).Delete":       "internal/runtime/maps.",
		"example.org/v2.3/x.(*T[a/b.C]).String":     "example.org/v2.3/x.",
		"_rt0_wasm_js":                              "",
		"":                                          "",
	} {
		if got := packageOf(name); got != want {
			t.Errorf("packageOf(%q) is %q, want %q", name, got, want)
		}
	}
}
