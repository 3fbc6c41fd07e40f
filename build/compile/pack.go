package compile

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// Words of a record that are offsets of programs; those of its further
// programs follow behind its fixed part.
const (
	firstProgramWord = stackField / 4
	lastProgramWord  = lineField / 4
	fixedWords       = recordSize / 4
)

// A packing is how the table of functions is written in a program, and what
// has to be known to have it back in memory before the program starts; see
// unpack. It is written like this because what stands in columns compresses
// better than what stands in rows, and what follows from the rest need not be
// downloaded at all: together they are 45 kB.
//
//   - The index, which says of each function where its record is, and the
//     buckets, by which the runtime finds a function in the index, are left out.
//   - The records are written word by word instead of function by function, in
//     place of the buckets.
//   - Each function has its programs for itself, in the order of the records. In
//     the columns of their offsets stands 1 for a program and 0 for none.
//
// All places are addresses in memory.
type packing struct {
	count    int // of functions
	words    int // of the longest record, and so how many columns
	index    int
	records  int
	programs int
	buckets  int
}

// A bucket of the runtime covers 4096 instructions, of which a function has
// numbers for 16 buckets (runtime.findfuncbucket).
const (
	bucketSize         = 20
	bucketsForFunction = 1 << 16 / 4096
)

var errPacking = errors.New("the tables of functions lie otherwise than this Go lays them out: see package build/compile")

// pack writes the table of functions in memory, which begins at the address
// base, as a packing.
func pack(memory []byte, base int) (packing, error) {
	t, err := readFunctions(memory)
	if err != nil {
		return packing{}, err
	}
	if !t.derivable() {
		return packing{}, errPacking
	}
	buckets := bucketsOf(len(t.records))
	table := len(memory) - len(t.table)
	at := bytes.Index(t.table[t.end():], buckets)
	if at < 0 {
		return packing{}, errPacking
	}
	at += table + t.end()
	p := packing{
		count:    len(t.records),
		index:    base + table + t.index,
		records:  base + table + t.records[0],
		programs: base + table + t.programs,
		buckets:  base + at,
	}
	if p.index%8 != 0 { // to which records are aligned
		return packing{}, errPacking
	}
	programs, err := t.programsInOrder()
	if err != nil {
		return packing{}, err
	}
	columns := t.columns()
	p.words = len(columns) / 4 / p.count
	if len(columns) > len(buckets) || len(programs) > t.index-t.programs {
		return packing{}, errPacking
	}
	clear(memory[at : at+len(buckets)])
	copy(memory[at:], columns)
	clear(t.table[t.programs:t.end()])
	copy(t.table[t.programs:], programs)
	return p, nil
}

// derivable reports whether the index and the places of the records follow
// from the numbers of functions and from the records themselves.
func (t functions) derivable() bool {
	at := t.index + 8*(len(t.records)+1) // behind the index, which has an entry for the end
	for k, r := range t.records {
		if r != at || t.offset(t.index+8*k) != firstSlot+k || t.offset(r) != firstSlot+k {
			return false
		}
		at = t.behind(r)
	}
	return t.offset(t.index+8*len(t.records)) == firstSlot+len(t.records)
}

// length is how many words the record at r has.
func (t functions) length(r int) int {
	return fixedWords + t.offset(r+countField) + int(t.table[r+dataField])
}

// behind is where the record behind that at r begins.
func (t functions) behind(r int) int { return t.index + (r-t.index+4*t.length(r)+7)&^7 }

// end is where the records end.
func (t functions) end() int {
	r := t.records[len(t.records)-1]
	return r + 4*t.length(r)
}

// holdsProgram reports whether a word of the record at r is the offset of a
// program.
func (t functions) holdsProgram(r, word int) bool {
	return firstProgramWord <= word && word <= lastProgramWord || fixedWords <= word && word < fixedWords+t.offset(r+countField)
}

// programsInOrder are the programs of all records, one behind the other. The
// first is that for none.
func (t functions) programsInOrder() ([]byte, error) {
	all := t.table[t.programs:t.index]
	out := []byte{0}
	for _, r := range t.records {
		for word := range t.length(r) {
			if offset := t.offset(r + 4*word); offset != 0 && t.holdsProgram(r, word) {
				end := endOfProgram(all, offset)
				if end < 0 {
					return nil, errPacking
				}
				out = append(out, all[offset:end]...)
			}
		}
	}
	return out, nil
}

// columns are the words of all records, the first words first. Records that
// are shorter than others have zeros.
func (t functions) columns() []byte {
	words := 0
	for _, r := range t.records {
		words = max(words, t.length(r))
	}
	out := make([]byte, 4*words*len(t.records))
	for k, r := range t.records {
		for word := 1; word < t.length(r); word++ {
			v := t.offset(r + 4*word)
			if t.holdsProgram(r, word) {
				v = min(v, 1)
			}
			binary.LittleEndian.PutUint32(out[4*(word*len(t.records)+k):], uint32(v))
		}
	}
	return out
}

// bucketsOf are the buckets for a number of functions, up to the first for the
// last of them: where they end depends on how large that is.
func bucketsOf(count int) []byte {
	buckets := (count-1)*bucketsForFunction + 1
	b := make([]byte, buckets*bucketSize)
	for k := range buckets {
		binary.LittleEndian.PutUint32(b[k*bucketSize:], uint32(k/bucketsForFunction))
	}
	return b[:len(b)-bucketSize+4]
}
