package compile

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// withoutLines blanks, in place, the tables that say which line of which file
// each instruction came from. Only the text of a stack trace is made from
// them: it keeps the names of the functions and shows "?" for file and line.
// They are a fourteenth of the download.
//
// The tables are those of the package internal/abi and of runtime/symtab.go of
// the Go that go.mod names: a header, and for each function a record with
// offsets into a table of programs. An offset of 0 stands for no program.
//
// The error says that the tables are not as that Go lays them out. Nothing is
// changed then.
func withoutLines(memory []byte) error {
	changed := errors.New("the table of functions is not as this Go lays it out: see package build/compile")
	at := bytes.Index(memory, []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}) // magic, pad, quantum, pointer size
	if at < 0 {
		return changed
	}
	table := memory[at:]
	word := func(i int) int { return int(binary.LittleEndian.Uint64(table[8+8*i:])) }
	const header = 8 + 8*8
	if len(table) < header {
		return changed
	}
	functions, names, programs, records := word(0), word(3), word(6), word(7)
	files := word(5)
	if !(names == header && names < files && files < programs && programs < records && records+8*functions < len(table)) {
		return changed
	}
	keep := make([]bool, records-programs)
	u32 := func(at int) int { return int(binary.LittleEndian.Uint32(table[at:])) }
	var lines []int // where the records hold the offsets of what is blanked
	for i := range functions {
		f := records + u32(records+8*i+4)
		if f+44 > len(table) {
			return changed
		}
		used := []int{u32(f + 16)} // pcsp: the depth of the stack, which the collector needs
		for j := range u32(f + 28) {
			used = append(used, u32(f+44+4*j))
		}
		for _, offset := range used {
			if offset != 0 && !mark(keep, table[programs:records], offset) {
				return changed
			}
		}
		lines = append(lines, f+20, f+24, f+36) // pcfile, pcln, startLine
	}
	for _, f := range lines {
		clear(table[f : f+4])
	}
	for i, kept := range keep {
		if !kept {
			table[programs+i] = 0
		}
	}
	clear(table[files:programs])
	return nil
}

// mark marks the bytes of the program at offset, which is pairs of varints and
// ends where the first of a pair, but not of the first pair, is 0.
func mark(keep []bool, programs []byte, offset int) bool {
	if offset >= len(programs) {
		return false
	}
	end := offset
	for first := true; ; first = false {
		v, n := binary.Uvarint(programs[end:])
		if n <= 0 {
			return false
		}
		end += n
		if v == 0 && !first {
			break
		}
		if _, n = binary.Uvarint(programs[end:]); n <= 0 {
			return false
		}
		end += n
	}
	for i := offset; i < end; i++ {
		keep[i] = true
	}
	return true
}
