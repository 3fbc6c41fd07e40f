package compile

import (
	"encoding/binary"
	"slices"
	"testing"
)

// A function with two programs and six data loses its first program and its
// sixth data, and nothing else; one with neither is left alone.
func TestWhatNothingReadsIsTakenAway(t *testing.T) {
	for _, tt := range []struct {
		name             string
		programs, data   []uint32
		programs2, data2 []uint32
	}{
		{"both", []uint32{3, 1}, []uint32{10, 20, 30, 40, 50, 60}, []uint32{0, 1}, []uint32{10, 20, 30, 40, 50, none}},
		{"more data", []uint32{3}, []uint32{10, 20, 30, 40, 50, 60, 70}, []uint32{0}, []uint32{10, 20, 30, 40, 50, none, 70}},
		{"neither", nil, []uint32{10, 20, 30, 40, 50}, nil, []uint32{10, 20, 30, 40, 50}},
	} {
		record := func(programs, data []uint32) []byte {
			r := make([]byte, recordSize)
			binary.LittleEndian.PutUint32(r[countField:], uint32(len(programs)))
			r[dataField] = byte(len(data))
			for _, v := range append(slices.Clone(programs), data...) {
				r = binary.LittleEndian.AppendUint32(r, v)
			}
			return r
		}
		f := functions{table: record(tt.programs, tt.data), records: []int{0}}
		f.withoutUnsafePoints()
		f.withoutArguments()
		if want := record(tt.programs2, tt.data2); !slices.Equal(f.table, want) {
			t.Errorf("%s: %v, want %v", tt.name, f.table, want)
		}
	}
}
