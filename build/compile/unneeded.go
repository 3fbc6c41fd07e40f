package compile

import (
	"maps"
	"slices"
)

// Places among the programs of a function, and among its data
// (internal/abi.PCDATA_UnsafePoint, FUNCDATA_ArgInfo and so on).
const (
	unsafeProgram   = 0
	inlinedProgram  = 2
	livenessProgram = 3
	inlinedData     = 3
	argumentsData   = 5
	livenessData    = 6
)

// none as an offset stands for no data; for a program it is 0.
const none = 1<<32 - 1

// withoutArguments takes away, in place, what says where the arguments of each
// function lie and which of them still do, and, unless named is set, what was copied
// into it. Only the text of a stack trace is made from it: it shows "view.(...)" where it
// showed "view.(0x1, 0x2)", and one function where it showed several.
func (t functions) withoutArguments(named bool) {
	for _, r := range t.records {
		fields := t.dataFields(r)
		for _, data := range []int{inlinedData, argumentsData, livenessData} {
			if data < len(fields) && !(named && data == inlinedData) {
				t.setOffset(fields[data], none)
			}
		}
	}
}

// withoutPoints takes away, in place, the programs that say at which instructions a
// function must not be interrupted by a signal, as WebAssembly has none, and those that
// belong to what withoutArguments takes.
func (t functions) withoutPoints(named bool) {
	for _, r := range t.records {
		fields := t.programFields(r)
		for _, program := range []int{unsafeProgram, inlinedProgram, livenessProgram} {
			if program < len(fields) && !(named && program == inlinedProgram) {
				t.setOffset(fields[program], 0)
			}
		}
	}
}

// data are where the data of all functions begin, by their offsets.
func (t functions) data() map[int]bool {
	all := map[int]bool{}
	for _, r := range t.records {
		for _, field := range t.dataFields(r) {
			if offset := t.offset(field); offset != none {
				all[offset] = true
			}
		}
	}
	return all
}

// withoutData blanks, in memory, the data of functions that begin where some began
// before and none begins now: each reaches to the next. The last stays, because only
// the linker knows its end.
func withoutData(m image, table uint64, before, now map[int]bool) error {
	module := m.module(table)
	base := m.word(module + moduleData)
	if module == 0 || base == 0 {
		return errTypes
	}
	starts := slices.Sorted(maps.Keys(before))
	for i, start := range starts[:max(0, len(starts)-1)] {
		if now[start] {
			continue
		}
		data, n := m.at(base+uint64(start)), starts[i+1]-start
		if n > len(data) {
			return errTypes
		}
		clear(data[:n])
	}
	return nil
}
