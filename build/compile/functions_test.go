package compile

import (
	"encoding/binary"
	"slices"
	"testing"
)

// tableOfOne returns a table of one function, main.f, with no programs but one
// of the stack.
func tableOfOne() []byte {
	const names, units, files, programs, index = 72, 80, 84, 88, 96
	t := make([]byte, index+16+recordSize)
	copy(t, []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8})
	for i, v := range []uint64{1, 1, 0, names, units, files, programs, index} {
		binary.LittleEndian.PutUint64(t[8+8*i:], v)
	}
	copy(t[names:], "\x00main.f\x00")
	copy(t[files:], "f.go")
	copy(t[programs:], []byte{0, 2, 1, 0})
	t[index+4] = 16            // the record
	t[index+16+nameField] = 1  // main.f
	t[index+16+stackField] = 1 // 2, 1, and the end
	t[index+16+startLineField] = 9
	t[index+16+lineField] = 1           // the same program
	t[programs+4], t[programs+5] = 7, 7 // of no use
	return t
}

func TestTableOfOne(t *testing.T) {
	m := tableOfOne()
	f, err := readFunctions(append([]byte("before"), m...))
	if err != nil || len(f.records) != 1 {
		t.Fatal(f.records, err)
	}
	if err := f.withoutLines(); err != nil {
		t.Fatal(err)
	}
	f.withoutNames()
	want := tableOfOne()
	copy(want[72:], "\x00main.\x00\x00")
	clear(want[84:88])
	clear(want[92:96])
	want[88] = 0
	want[96+16+startLineField], want[96+16+lineField] = 0, 0
	if !slices.Equal(f.table, want) {
		t.Errorf("%q\nwant\n%q", f.table, want)
	}
}

func TestBrokenTablesAreRefused(t *testing.T) {
	if _, err := readFunctions(tableOfOne()); err != nil {
		t.Fatal(err)
	}
	for at := 8; at < 72; at += 8 {
		if at == 16 || at == 24 {
			continue // how many files, and a word that is no longer used
		}
		for _, v := range []uint64{0, 1 << 20, 1 << 63, 1<<64 - 1} {
			m := tableOfOne()
			binary.LittleEndian.PutUint64(m[at:], v)
			if _, err := readFunctions(m); err == nil {
				t.Errorf("%d at %d of the header is taken", v, at)
			}
		}
	}
	const record = 96 + 16
	for _, at := range []int{96 + 4, record + nameField, record + countField} {
		m := tableOfOne()
		binary.LittleEndian.PutUint32(m[at:], 1<<32-1)
		if _, err := readFunctions(m); err == nil {
			t.Errorf("an offset at %d that leads out of the table is taken", at)
		}
	}
	m := tableOfOne()
	m[79] = 'x'
	if _, err := readFunctions(m); err == nil {
		t.Error("a name without an end is taken")
	}
	m = tableOfOne()
	m[record+stackField] = 200
	if f, err := readFunctions(m); err != nil || f.withoutLines() == nil {
		t.Errorf("a program outside the table is taken: %v", err)
	}
	for n := range m {
		readFunctions(m[:n]) // does not panic
	}
}
