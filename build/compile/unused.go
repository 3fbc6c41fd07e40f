package compile

import (
	"encoding/binary"
	"slices"
	"strings"
)

// never names functions of the runtime that are linked because something asks
// at each step whether they are wanted, and that nothing in a browser's program
// can want. A name that ends in a dot or a parenthesis stands for all the methods of
// a type. A program that called one would stop there.
var never = []struct{ why, names string }{
	{"nothing starts the tracer", "runtime.traceAcquireEnabled runtime.traceRelease runtime.traceAdvance runtime.traceStack runtime.traceLocker. runtime.traceWriter. runtime.(*traceMap) runtime.(*traceStackTable) runtime.(*traceStringTable) runtime.(*traceTypeTable) runtime.(*traceRegionAlloc) runtime.traceReadCPU runtime.traceStopReadCPU"},
	{"nothing starts a profile", "runtime.saveblockevent runtime.saveBlockEventStack runtime.(*profBuf) runtime.tryRecordGoroutineProfile runtime.doRecordGoroutineProfile"},
	{"GODEBUG, which a browser does not have, asks for it", "runtime.schedtrace runtime.printScavTrace runtime.checkFinalizersAndCleanups runtime.startCheckmarks runtime.runCheckmark runtime.setCheckmark runtime.dumpTypesRec runtime.dumpStacksRec runtime.dumpScanStats"},
	{"there is no C", "runtime.printCgoTraceback runtime.printOneCgoTraceback runtime.callCgoSymbolizer runtime.expandCgoFrames runtime.cgoContextPCs runtime.cgocall runtime.oneNewExtraM"},
	{"there are no plugins, whose types would have to be compared", "runtime.typesEqual"},
	{"there is one thread", "runtime.newm runtime.handoffp runtime.mexit"},
	{"tests alone run in a bubble", "runtime.(*synctestBubble)"},
	{"nothing allocates arenas", "runtime.(*mspan).setUserArenaChunkToFault"},
}

// isNever reports whether a function is one of never.
func isNever(name string) bool {
	if name == "runtime.traceLocker.ok" { // which asks
		return false
	}
	for _, n := range never {
		for _, pattern := range strings.Fields(n.names) {
			if matches(name, pattern) {
				return true
			}
		}
	}
	return false
}

// matches reports whether a pattern of never stands for a name.
func matches(name, pattern string) bool {
	return name == pattern || strings.HasSuffix(pattern, ".") && strings.HasPrefix(name, pattern) ||
		strings.HasSuffix(pattern, ")") && strings.HasPrefix(name, pattern+".")
}

// unused reports of each function, by its place, whether it is one of never or
// only those could call it. What a program calls is in its code, and else its
// number or its address is somewhere in its code or in memory. A number that
// means something else keeps a function, and no harm is done.
func unused(code, imports, exports []byte, segments []segment, t functions) ([]bool, error) {
	names := t.functionNames()
	count := len(names)
	used, barred := make([]bool, count), make([]bool, count)
	for k, name := range names {
		barred[k] = isNever(name)
	}
	var next []int
	use := func(slot uint64) {
		if slot < firstSlot || slot >= uint64(firstSlot+count) {
			return
		}
		k := int(slot) - firstSlot
		if used[k] || barred[k] {
			return
		}
		used[k] = true
		next = append(next, k)
	}
	r := reader{rest: imports}
	imported := r.number() // Go imports nothing but functions
	callee := func(function uint64) uint64 { return function - imported + firstSlot }
	r = reader{rest: exports}
	for n := r.number(); n > 0 && !r.failed; n-- {
		r.take(r.number()) // its name
		if kind, at := r.byte(), r.number(); kind == 0 {
			use(callee(at))
		}
	}
	for _, s := range segments {
		forWords(s, t, use)
	}
	bodies, err := codeOf(code)
	if err != nil || r.failed || len(bodies) != count {
		return nil, errCode
	}
	for len(next) > 0 {
		k := next[len(next)-1]
		next = next[:len(next)-1]
		for _, i := range bodies[k] {
			switch i.op {
			case opCall:
				use(callee(i.arg))
			case opI64Const, opI32Const:
				use(i.arg)
				use(i.arg >> 16)
			}
		}
	}
	for k := range used {
		used[k] = !used[k]
	}
	return used, nil
}

// forWords calls use with whatever in a segment could be the number of a
// function, or the upper part of its address, but for what the table of
// functions says of all of them.
func forWords(s segment, t functions, use func(slot uint64)) {
	from, to := len(s.data), len(s.data)
	if &s.data[len(s.data)-1] == &t.table[len(t.table)-1] {
		from = len(s.data) - len(t.table) + t.index
		to = len(s.data) - len(t.table) + t.end()
	}
	for at := int(-s.offset & 3); at+4 <= len(s.data); at += 4 {
		if at >= from && at < to {
			continue
		}
		v := uint64(binary.LittleEndian.Uint32(s.data[at:]))
		use(v)
		if v&0xffff == 0 {
			use(v >> 16)
		}
	}
}

// functionNames are the names of all functions, by their places.
func (t functions) functionNames() []string {
	var names []string
	for _, r := range t.records {
		name := string(t.table[t.names+t.offset(r+nameField) : t.units])
		name, _, _ = strings.Cut(name, "\x00")
		names = append(names, name)
	}
	return names
}

// withoutPrograms takes away, in place, the programs and the data of functions that do
// not run.
func (t functions) withoutPrograms(unused []bool) {
	for k, r := range t.records {
		if unused[k] {
			for _, field := range t.dataFields(r) {
				t.setOffset(field, none)
			}
		}
		for word := range t.length(r) {
			if unused[k] && t.holdsProgram(r, word) {
				t.setOffset(r+4*word, 0)
			}
		}
	}
}

// trap is a function that is never called.
var trap = []instruction{plain(opUnreachable), plain(opEnd)}

// codeOf reads the functions of a code section.
func codeOf(section []byte) ([][]instruction, error) {
	var all [][]instruction
	_, err := shorterCode(section, func(_ int, locals []group, code []instruction) ([]group, []instruction) {
		all = append(all, slices.Clip(code))
		return locals, code
	})
	return all, err
}
