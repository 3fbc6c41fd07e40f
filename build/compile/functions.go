package compile

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// functions is the linker's table of all functions, in the memory of a
// program: a header, and for each function a record with offsets into tables
// of names and of small programs. It is laid out as in package internal/abi
// and runtime/symtab.go of the Go that go.mod names.
//
// A program maps the instructions of a function to numbers. An offset of 0
// stands for no name and for no program.
type functions struct {
	table []byte

	// Where parts begin in table. Each ends where the next begins.
	names    int // of functions, each ended by a 0
	units    int // which of the files belong to which package
	files    int // names of files, each ended by a 0
	programs int
	index    int // of the records, and then the records

	records []int // where each record begins in table
}

// Fields of a record, in bytes from its beginning. Each is of four bytes, but
// for the last three. The tables of programs and of data stand behind it.
const (
	nameField      = 4
	stackField     = 16 // program: the depth of the stack, which the collector needs
	fileField      = 20 // program
	lineField      = 24 // program
	countField     = 28 // how many further programs there are
	unitField      = 32
	startLineField = 36
	idField        = 40 // one byte: which function the runtime knows this for
	dataField      = 43 // one byte: how many data there are
	recordSize     = 44
)

// readFunctions finds the table. The error says that it is not as that Go lays
// it out.
func readFunctions(memory []byte) (functions, error) {
	changed := errors.New("the table of functions is not as this Go lays it out: see package build/compile")
	at := bytes.Index(memory, []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}) // magic, pad, quantum, pointer size
	if at < 0 {
		return functions{}, changed
	}
	table := memory[at:]
	const header = 8 + 8*8
	if len(table) < header {
		return functions{}, changed
	}
	word := func(i int) int { return int(binary.LittleEndian.Uint64(table[8+8*i:])) }
	t := functions{table: table, names: word(3), units: word(4), files: word(5), programs: word(6), index: word(7)}
	count := word(0)
	if !(t.names == header && t.names < t.units && t.units <= t.files && t.files < t.programs && t.programs < t.index &&
		count > 0 && t.index < len(table) && count <= (len(table)-t.index)/8) {
		return functions{}, changed
	}
	for i := range count {
		r := t.index + t.offset(t.index+8*i+4)
		if r+recordSize > len(table) || r+recordSize+4*(t.offset(r+countField)+int(table[r+dataField])) > len(table) ||
			t.offset(r+nameField) >= t.units-t.names {
			return functions{}, changed
		}
		t.records = append(t.records, r)
	}
	if table[t.units-1] != 0 {
		return functions{}, changed // the last name has no end
	}
	return t, nil
}

// offset reads the four bytes at a place of the table.
func (t functions) offset(at int) int { return int(binary.LittleEndian.Uint32(t.table[at:])) }

// programFields are the places of the offsets of the further programs of the
// record at r.
func (t functions) programFields(r int) []int {
	fields := make([]int, t.offset(r+countField))
	for i := range fields {
		fields[i] = r + recordSize + 4*i
	}
	return fields
}

// dataFields are the places of the offsets of the data of the record at r.
func (t functions) dataFields(r int) []int {
	fields := make([]int, t.table[r+dataField])
	for i := range fields {
		fields[i] = r + recordSize + 4*(t.offset(r+countField)+i)
	}
	return fields
}

// setOffset writes the four bytes at a place of the table.
func (t functions) setOffset(at, offset int) {
	binary.LittleEndian.PutUint32(t.table[at:], uint32(offset))
}
