package compile

import (
	"encoding/binary"
	"slices"
	"testing"
)

// A function loses its first program, third and fourth, and its fourth data, sixth and
// seventh, as far as it has them, and nothing else.
func TestWhatNothingReadsIsTakenAway(t *testing.T) {
	for _, tt := range []struct {
		name             string
		programs, data   []uint32
		programs2, data2 []uint32
	}{
		{"both", []uint32{3, 1}, []uint32{10, 20, 30, 40, 50, 60}, []uint32{0, 1}, []uint32{10, 20, 30, none, 50, none}},
		{"all", []uint32{3, 1, 4, 5, 6}, []uint32{10, 20, 30, 40, 50, 60, 70, 80}, []uint32{0, 1, 0, 0, 6}, []uint32{10, 20, 30, none, 50, none, none, 80}},
		{"neither", nil, []uint32{10, 20, 30}, nil, []uint32{10, 20, 30}},
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
		f.withoutPoints(false)
		f.withoutArguments(false)
		if want := record(tt.programs2, tt.data2); !slices.Equal(f.table, want) {
			t.Errorf("%s: %v, want %v", tt.name, f.table, want)
		}
	}
}
