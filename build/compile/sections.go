package compile

import (
	"encoding/binary"
	"errors"
	"slices"
)

// A section of a program, by its number.
type section struct {
	id   byte
	body []byte
}

// readSections reads what stands behind the head of a program.
func readSections(program []byte) ([]section, error) {
	r := reader{rest: program}
	var list []section
	for len(r.rest) > 0 {
		s := section{id: r.byte()}
		s.body = r.take(r.number())
		list = append(list, s)
	}
	if r.failed {
		return nil, errors.New("a section of the WebAssembly program is cut short")
	}
	return list, nil
}

// withStart adds the function that unpacks, as the last of all, and has it run
// when the program is loaded.
func withStart(sections []section, p packing, powers int) ([]section, error) {
	broken := errors.New("the sections of the WebAssembly program are not as Go writes them")
	counts := map[byte]uint64{}
	at := map[byte]int{}
	for i, s := range sections {
		r := reader{rest: s.body}
		counts[s.id] = r.number()
		if s.id == startSection || r.failed && s.id != 0 {
			return nil, broken
		}
		at[s.id] = i
	}
	for _, id := range []byte{typeSection, importSection, functionSection, elementSection, codeSection} {
		if _, ok := at[id]; !ok {
			return nil, broken
		}
	}
	if counts[functionSection] != counts[codeSection] || counts[codeSection] != uint64(p.count) {
		return nil, broken
	}
	// add appends an entry to a section.
	add := func(id byte, entry []byte) {
		r := reader{rest: sections[at[id]].body}
		body := binary.AppendUvarint(nil, r.number()+1)
		sections[at[id]].body = slices.Concat(body, r.rest, entry)
	}
	add(typeSection, []byte{0x60, 0, 0}) // a function of nothing that returns nothing
	add(functionSection, binary.AppendUvarint(nil, counts[typeSection]))
	locals, code := p.unpack(powers)
	add(codeSection, appendFunction(nil, locals, code))
	// Go imports nothing but functions.
	start := section{startSection, binary.AppendUvarint(nil, counts[importSection]+counts[functionSection])}
	return slices.Insert(sections, at[elementSection], start), nil
}
