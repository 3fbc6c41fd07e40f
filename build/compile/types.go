package compile

import (
	"bytes"
	"encoding/binary"
	"errors"
	"strings"
	"unicode/utf8"
)

// The head of a type (internal/abi.Type), and what follows it where the type is a
// structure (internal/abi.StructType): in bytes from its beginning.
const (
	typeSize      = 0
	typePointers  = 8
	typeHash      = 16
	typeFlags     = 20
	typeAlign     = 21
	typeKind      = 23
	typeEqual     = 24 // the function that compares two values; 0 for none
	typeName      = 40 // offset from the first type
	typeToThis    = 44 // likewise
	typeEnd       = 48
	structPackage = 48
	structFields  = 56 // address, length, capacity
	structEnd     = 80
	fieldSize     = 24
	uncommonSize  = 16
	methodSize    = 16

	interfaceMethodSize = 8
)

// behindHead is how much a type of each kind has behind its head, in bytes, before what
// it has where it has methods.
var behindHead = [lastKind + 1]uint64{17: 24, 18: 16, 19: 8, interfaceKind: 32, 21: 64, 22: 8, 23: 8, structKind: 32}

// Flags and kinds of types (internal/abi).
const (
	flagUncommon = 1 << 0
	flagStar     = 1 << 1 // the name has a star in front that is not the type's
	flagOnDemand = 1 << 4 // the collector goes by the fields
	structKind   = 25

	interfaceKind = 20
	lastKind      = 26
)

// Places of addresses in what the linker tells the runtime of the program
// (runtime.moduledata).
const (
	moduleTable     = 0 // of functions
	moduleTypes     = 296
	moduleTypesEnd  = 304
	moduleData      = 320 // of functions
	moduleTypelinks = 360 // address, length, capacity
)

var errTypes = errors.New("the types lie otherwise than this Go lays them out: see package build/compile")

// withoutTypes blanks, in place, what is said of types that only package reflect reads,
// and the text of a panic: their names, the fields of structures, the types that point
// at them and the list of all. What the collector, maps, assertions and finalizers go by
// stays. It is a thirtieth of the download.
//
// table is the address of the table of functions. hashed says that a value of a type that
// can be compared may be a key in a map of anything, which goes by the fields.
func withoutTypes(m image, table uint64, hashed bool) error {
	module := m.module(table)
	first, end := m.word(module+moduleTypes), m.word(module+moduleTypesEnd)
	if module == 0 || first == 0 || end <= first || m.at(end-1) == nil {
		return errTypes
	}
	t := types{image: m, first: first, end: end, kept: map[uint64]bool{}}
	var all []uint64
	for at := (first + 7) &^ 7; at+typeEnd <= end; at += 8 {
		if t.isType(at) {
			all = append(all, at)
			t.keepMethods(at)
		}
	}
	structures := 0
	for _, at := range all {
		head := t.at(at)
		t.clearName(uint64(t.short(at + typeName)))
		clear(head[typeName:typeEnd])
		head[typeFlags] &^= flagStar
		if head[typeKind] != structKind || head[typeFlags]&flagOnDemand != 0 || hashed && t.word(at+typeEqual) != 0 {
			continue
		}
		if n, whole := t.fields(at); whole {
			fields := t.word(at + structFields)
			for i := range n {
				t.clearName(t.word(fields+i*fieldSize) - first)
			}
			clear(t.at(fields)[:n*fieldSize])
			clear(head[structPackage:structEnd])
			structures++
		}
	}
	if structures == 0 {
		return errTypes
	}
	list := t.at(t.word(module + moduleTypelinks))
	if n := 4 * t.word(module+moduleTypelinks+8); n <= uint64(len(list)) {
		clear(list[:n])
	}
	return nil
}

// has reports whether a function is in the program, and may run, whose name begins so.
func (t functions) has(name string, unused []bool) bool {
	for k, r := range t.records {
		if !unused[k] && strings.HasPrefix(string(t.table[t.names+t.offset(r+nameField):t.units]), name) {
			return true
		}
	}
	return false
}

// An image is the memory of a program, as its data fill it.
type image []segment

// at returns what is in memory from an address to the end of its segment; nil where
// there is nothing.
func (m image) at(address uint64) []byte {
	for _, s := range m {
		if s.offset <= address && address < s.offset+uint64(len(s.data)) {
			return s.data[address-s.offset:]
		}
	}
	return nil
}

// word is that at an address; 0 where there is none. Memory between segments is zero, and
// the linker ends one in the middle of a word where many zeros follow.
func (m image) word(address uint64) uint64 {
	if b := m.at(address); len(b) >= 8 {
		return binary.LittleEndian.Uint64(b)
	}
	var word uint64
	for i := range uint64(8) {
		if b := m.at(address + i); len(b) > 0 {
			word |= uint64(b[0]) << (8 * i)
		}
	}
	return word
}

func (m image) short(address uint64) uint32 {
	if b := m.at(address); len(b) >= 4 {
		return binary.LittleEndian.Uint32(b)
	}
	return 0
}

// module is the address of what begins with that of the table of functions, and goes on
// with that of the names in it; 0 where there is none. A segment may begin behind zeros
// that it begins with.
func (m image) module(table uint64) uint64 {
	var want []byte
	for _, word := range []uint64{table, table + 8 + 8*8} {
		want = binary.LittleEndian.AppendUint64(want, word)
	}
	seen := bytes.TrimLeft(want, "\x00")
	for _, s := range m {
		if at := bytes.Index(s.data, seen); at >= 0 {
			return s.offset + uint64(at) - uint64(len(want)-len(seen)) + moduleTable
		}
	}
	return 0
}

// types are those in memory from first to end, among their names and other data.
type types struct {
	image
	first, end uint64
	kept       map[uint64]bool // names of methods, by their offset from first
}

// keepMethods keeps the names of a type's methods: an assertion looks for them.
func (t types) keepMethods(at uint64) {
	head := t.at(at)
	if head[typeKind] == interfaceKind {
		list := t.word(at + structFields)
		for i := range t.word(at + structFields + 8) {
			t.kept[uint64(t.short(list+i*interfaceMethodSize))] = true
		}
	}
	if head[typeFlags]&flagUncommon == 0 {
		return
	}
	more := at + typeEnd + behindHead[head[typeKind]]
	methods := more + uint64(t.short(more+8))
	for i := range uint64(t.short(more+4) & 0xffff) {
		t.kept[uint64(t.short(methods+i*methodSize))] = true
	}
}

// clearName blanks a name that no method has.
func (t types) clearName(offset uint64) {
	if offset >= t.end-t.first || t.kept[offset] {
		return
	}
	if name := t.at(t.first + offset); len(name) > 2 && name[1] < 0x80 && len(name) >= 2+int(name[1]) {
		clear(name[:2+name[1]])
	}
}

// isType tells a type from what else lies there: each of its parts is one that a type
// may have, and it has a name that can be read.
func (t types) isType(at uint64) bool {
	head := t.at(at)
	if len(head) < typeEnd {
		return false
	}
	size, pointers := t.word(at+typeSize), t.word(at+typePointers)
	kind, align := head[typeKind], head[typeAlign]
	if size >= 1<<32 || pointers > size || kind == 0 || kind > lastKind || align == 0 || align > 8 || align&(align-1) != 0 || head[typeAlign+1] != align ||
		head[typeFlags] >= flagOnDemand<<1 || t.short(at+typeHash) == 0 {
		return false
	}
	name := uint64(t.short(at + typeName))
	if name == 0 || name >= t.end-t.first {
		return false
	}
	text := t.at(t.first + name)
	n := nameLength(text)
	return n > 0 && (head[typeFlags]&flagStar == 0 || text[2] == '*')
}

// nameLength is the length of the text of a name that a type may have: a byte of flags,
// that length in a byte, and the text. 0 is for any other, and for those that are longer.
func nameLength(name []byte) int {
	if len(name) < 3 || name[0] > 1 || name[1] == 0 || name[1] >= 0x80 || len(name) < 2+int(name[1]) {
		return 0
	}
	text := name[2 : 2+int(name[1])]
	for _, b := range text {
		if b < ' ' {
			return 0
		}
	}
	if !utf8.Valid(text) {
		return 0
	}
	return len(text)
}

// fields are how many a structure has, which must lie right behind it.
func (t types) fields(at uint64) (n uint64, whole bool) {
	behind := at + structEnd
	if t.at(at)[typeFlags]&flagUncommon != 0 {
		behind += uncommonSize
	}
	n = t.word(at + structFields + 8)
	return n, n > 0 && t.word(at+structFields) == behind && t.word(at+structFields+16) == n && behind+n*fieldSize <= t.end
}
