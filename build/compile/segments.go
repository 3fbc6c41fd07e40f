package compile

import (
	"cmp"
	"encoding/binary"
	"errors"
	"slices"
)

// gap is the longest run of zeros, in bytes, that joined data segments may
// hold between them. It is longer than any run inside the table of functions.
const gap = 4096

var errSegments = errors.New("the data section of the WebAssembly program is not as Go writes it")

// A segment is one active data segment of memory 0.
type segment struct {
	offset uint64
	data   []byte
}

// Smaller returns the program without what only makes the download longer. It
// does the same, but for the text of a stack trace, in which lines and arguments
// are missing, and, unless named is set, of a function's name all but its package.
//
// Go's linker begins a new data segment at every short run of zeros, more than
// fifty thousand in ours, and the heads of the segments compress badly while
// zeros compress to nothing: joined, the program is some 50 kB smaller.
//
// The error says what is not as this Go writes it.
func Smaller(program []byte, named bool) ([]byte, error) {
	if len(program) < 8 || string(program[:4]) != "\x00asm" {
		return nil, errors.New("not a WebAssembly program")
	}
	sections, err := readSections(program[8:])
	if err != nil {
		return nil, err
	}
	of := map[byte]*section{}
	for i := range sections {
		of[sections[i].id] = &sections[i]
	}
	if of[codeSection] == nil || of[dataSection] == nil || of[importSection] == nil || of[exportSection] == nil {
		return nil, errors.New("a section of the WebAssembly program is missing")
	}
	segments, err := readSegments(of[dataSection].body)
	if err != nil || len(segments) == 0 {
		return nil, cmp.Or(err, errSegments)
	}
	segments = join(segments)
	table := largest(segments)
	t, err := readFunctions(table.data)
	if err != nil {
		return nil, err
	}
	unused, err := unused(of[codeSection].body, of[importSection].body, of[exportSection].body, segments, t)
	if err != nil {
		return nil, err
	}
	if err := t.strip(segments, table.offset+uint64(len(table.data)-len(t.table)), named, unused); err != nil {
		return nil, err
	}
	p, err := pack(table.data, int(table.offset))
	if err != nil {
		return nil, err
	}
	powers := withoutPowers(segments)
	of[dataSection].body = writeSegments(split(segments))
	of[codeSection].body, err = shorterCode(of[codeSection].body, func(slot int, locals []group, code []instruction) ([]group, []instruction) {
		if unused[slot-firstSlot] {
			return nil, trap
		}
		return shorter(slot, locals, code)
	})
	if err != nil {
		return nil, err
	}
	if sections, err = withStart(sections, p, powers); err != nil {
		return nil, err
	}
	out := slices.Clone(program[:8])
	for _, s := range sections {
		out = append(out, s.id)
		out = binary.AppendUvarint(out, uint64(len(s.body)))
		out = append(out, s.body...)
	}
	return out, nil
}

// shorter is a function with what Go writes in many ways written in one.
func shorter(slot int, locals []group, code []instruction) ([]group, []instruction) {
	return withOwnNumber(slot, locals, withoutExit(withoutJumps(code)))
}

// largest is the segment that holds the table of functions.
func largest(segments []segment) segment {
	return slices.MaxFunc(segments, func(a, b segment) int { return cmp.Compare(len(a.data), len(b.data)) })
}

// strip takes what only a stack trace shows out of the table of functions, and
// what it says of functions that are not used; and out of memory what only that, or
// package reflect, has read. at is the table's address.
func (t functions) strip(m image, at uint64, named bool, unused []bool) error {
	before, reflects, hashed := t.data(), t.has("reflect.(*rtype)", unused), t.has("runtime.typehash\x00", unused)
	t.withoutPrograms(unused)
	t.withoutPoints(named)
	if err := t.withoutLines(); err != nil {
		return err
	}
	t.withoutArguments(named)
	if err := withoutData(m, at, before, t.data()); err != nil {
		return err
	}
	if named {
		return nil
	}
	t.withoutNames()
	if reflects {
		return nil
	}
	return withoutTypes(m, at, hashed)
}

// readSegments reads a data section. Every segment must be one of memory 0 at
// a constant, positive offset.
func readSegments(body []byte) ([]segment, error) {
	next := func() uint64 {
		v, n := binary.Uvarint(body)
		if n <= 0 {
			body = nil
			return 0
		}
		body = body[n:]
		return v
	}
	segments := make([]segment, 0, next())
	for range cap(segments) {
		if len(body) < 3 || body[0] != 0 || body[1] != 0x41 { // flag 0, i32.const
			return nil, errSegments
		}
		body = body[2:]
		// The offset is signed; a positive one reads the same unsigned.
		offset := next()
		if len(body) == 0 || body[0] != 0x0b { // end
			return nil, errSegments
		}
		body = body[1:]
		size := next()
		if uint64(len(body)) < size || offset > 1<<31 {
			return nil, errSegments
		}
		segments = append(segments, segment{offset, body[:size]})
		body = body[size:]
	}
	if len(body) != 0 {
		return nil, errSegments
	}
	return segments, nil
}

// join joins segments that lie within gap of each other.
func join(segments []segment) []segment {
	slices.SortStableFunc(segments, func(a, b segment) int { return cmp.Compare(a.offset, b.offset) })
	var joined []segment
	for _, s := range segments {
		if len(joined) > 0 {
			last := &joined[len(joined)-1]
			end := last.offset + uint64(len(last.data))
			if s.offset >= end && s.offset-end <= gap {
				last.data = append(last.data, make([]byte, s.offset-end)...)
				last.data = append(last.data, s.data...)
				continue
			}
		}
		joined = append(joined, segment{s.offset, slices.Clone(s.data)})
	}
	return joined
}

// split leaves out the runs of zeros that are longer than gap: memory is zero
// at first.
func split(segments []segment) []segment {
	var out []segment
	for _, s := range segments {
		from := 0 // where the segment that is being made begins
		for at := 0; at < len(s.data); {
			zeros := 0
			for at+zeros < len(s.data) && s.data[at+zeros] == 0 {
				zeros++
			}
			if zeros > gap {
				if at > from {
					out = append(out, segment{s.offset + uint64(from), s.data[from:at]})
				}
				from = at + zeros
			}
			at += zeros + 1
		}
		if from < len(s.data) {
			out = append(out, segment{s.offset + uint64(from), s.data[from:]})
		}
	}
	return out
}

func writeSegments(segments []segment) []byte {
	out := binary.AppendUvarint(nil, uint64(len(segments)))
	for _, s := range segments {
		out = append(out, 0, 0x41)
		out = appendSigned(out, s.offset)
		out = append(out, 0x0b)
		out = binary.AppendUvarint(out, uint64(len(s.data)))
		out = append(out, s.data...)
	}
	return out
}

// appendSigned appends a positive number as a signed LEB128: one more byte
// where the top bit would read as a sign.
func appendSigned(out []byte, v uint64) []byte {
	for {
		b := byte(v & 0x7f)
		v >>= 7
		if v == 0 && b&0x40 == 0 {
			return append(out, b)
		}
		out = append(out, b|0x80)
	}
}
