package compile

import (
	"encoding/binary"
	"errors"
)

// withoutLines blanks, in place, the tables that say which line of which file
// each instruction came from. Only the text of a stack trace is made from
// them: it shows "?" for file and line. They are a fourteenth of the download.
//
// The error says that the tables are not as this Go lays them out.
func (t functions) withoutLines() error {
	keep := make([]bool, t.index-t.programs)
	for _, r := range t.records {
		for _, field := range append(t.programFields(r), r+stackField) {
			if offset := t.offset(field); offset != 0 && !mark(keep, t.table[t.programs:t.index], offset) {
				return errors.New("a program in the table of functions has no end: see package build/compile")
			}
		}
	}
	for _, r := range t.records {
		for _, field := range []int{fileField, lineField, unitField, startLineField} {
			t.setOffset(r+field, 0)
		}
	}
	for i, kept := range keep {
		if !kept {
			t.table[t.programs+i] = 0
		}
	}
	clear(t.table[t.units:t.programs])
	return nil
}

// mark marks the bytes of the program at offset.
func mark(keep []bool, programs []byte, offset int) bool {
	end := endOfProgram(programs, offset)
	for i := offset; i < end; i++ {
		keep[i] = true
	}
	return end >= 0
}

// endOfProgram returns where the program at offset ends, or -1. It is pairs of
// varints and ends where the first of a pair, but not of the first pair, is 0.
func endOfProgram(programs []byte, offset int) int {
	if offset >= len(programs) {
		return -1
	}
	end := offset
	for first := true; ; first = false {
		v, n := binary.Uvarint(programs[end:])
		if n <= 0 {
			return -1
		}
		end += n
		if v == 0 && !first {
			return end
		}
		if _, n = binary.Uvarint(programs[end:]); n <= 0 {
			return -1
		}
		end += n
	}
}
