package compile

import (
	"encoding/binary"
	"errors"
)

// Sections of a program (WebAssembly Core Specification, section 5.5).
const (
	typeSection     = 1
	importSection   = 2
	functionSection = 3
	exportSection   = 7
	startSection    = 8
	elementSection  = 9
	codeSection     = 10
	dataSection     = 11
)

// Instructions that are looked for or written (section 5.4).
const (
	opUnreachable = 0x00
	opBlock       = 0x02
	opLoop        = 0x03
	opIf          = 0x04
	opElse        = 0x05
	opEnd         = 0x0b
	opBr          = 0x0c
	opBrIf        = 0x0d
	opBrTable     = 0x0e
	opReturn      = 0x0f
	opCall        = 0x10
	opLocalGet    = 0x20
	opLocalSet    = 0x21
	opLocalTee    = 0x22
	opGlobalGet   = 0x23
	opGlobalSet   = 0x24
	opI64Store    = 0x37
	opI32Const    = 0x41
	opI64Const    = 0x42
	opI32Sub      = 0x6b
	opI64Add      = 0x7c
)

const (
	noValue = 0x40 // the type of a block that leaves nothing
	typeI32 = 0x7f
	typeI64 = 0x7e
)

var errCode = errors.New("the code of the WebAssembly program is not as Go writes it: see package build/compile")

// An instruction is one of a function, with what follows it.
type instruction struct {
	op  byte
	arg uint64 // the first number that follows, unless it is a float; of a negative one, its bits
	raw []byte // as it is written
}

// with is an instruction with one number that is not signed behind it.
func with(op byte, arg uint64) instruction {
	return instruction{op, arg, binary.AppendUvarint([]byte{op}, arg)}
}

// constant pushes a number that is not negative.
func constant(op byte, v uint64) instruction {
	return instruction{op, v, appendSigned([]byte{op}, v)}
}

// plain is an instruction with nothing behind it.
func plain(op byte) instruction { return instruction{op: op, raw: []byte{op}} }

// A reader takes a program apart. Once it has failed it returns zeros.
type reader struct {
	rest   []byte
	failed bool
}

func (r *reader) take(n uint64) []byte {
	if r.failed || n > uint64(len(r.rest)) {
		r.failed, r.rest = true, nil
		return nil
	}
	taken := r.rest[:n]
	r.rest = r.rest[n:]
	return taken
}

func (r *reader) byte() byte {
	if b := r.take(1); b != nil {
		return b[0]
	}
	return 0
}

// number reads a LEB128. Of a negative one it returns the bits that are
// written, without those that its sign would add.
func (r *reader) number() uint64 {
	var v uint64
	for shift := 0; ; shift += 7 {
		b := r.byte()
		v |= uint64(b&0x7f) << shift
		if b < 0x80 {
			return v
		}
	}
}

// instructions reads the code of a function, behind its locals.
func instructions(code []byte) ([]instruction, error) {
	r := reader{rest: code}
	var list []instruction
	for len(r.rest) > 0 {
		start := r.rest
		i := instruction{op: r.byte()}
		switch op := i.op; {
		case op == opBlock, op == opLoop, op == opIf:
			i.arg = uint64(r.byte()) // Go names no type by its number
		case op == opBr, op == opBrIf, op == opCall, opLocalGet <= op && op <= 0x26, op == opI32Const, op == opI64Const, op == 0x3f, op == 0x40:
			i.arg = r.number() // labels, functions, variables, constants, memories
		case op == opBrTable:
			i.arg = r.number()
			for n := i.arg + 1; n > 0 && !r.failed; n-- {
				r.number()
			}
		case op == 0x11, 0x28 <= op && op <= 0x3e: // a call through a table; loads and stores
			i.arg = r.number()
			r.number()
		case op == 0x43:
			r.take(4)
		case op == 0x44:
			r.take(8)
		case op == 0xfc:
			switch i.arg = r.number(); i.arg {
			case 0, 1, 2, 3, 4, 5, 6, 7: // conversions
			case 10: // a copy names two memories
				r.take(2)
			case 11: // a fill names one
				r.take(1)
			default:
				return nil, errCode
			}
		case op == opUnreachable, op == 0x01, op == opElse, op == opEnd, op == opReturn, op == 0x1a, op == 0x1b, 0x45 <= op && op <= 0xc4:
		default:
			return nil, errCode
		}
		if r.failed {
			return nil, errCode
		}
		i.raw = start[:len(start)-len(r.rest)]
		list = append(list, i)
	}
	return list, nil
}

// labels are those of a table of branches. The last is for every number that
// is too large for the others.
func (i instruction) labels() []uint64 {
	r := reader{rest: i.raw[1:]}
	list := make([]uint64, r.number()+1)
	for k := range list {
		list[k] = r.number()
	}
	return list
}

// A group of locals has one type.
type group struct {
	count uint64
	kind  byte
}

// readLocals reads what a function's body begins with.
func readLocals(r *reader) []group {
	var list []group
	for n := r.number(); n > 0 && !r.failed; n-- {
		list = append(list, group{r.number(), r.byte()})
	}
	return list
}

// shorterCode applies shorter to every function of a code section, with the
// place that it has in the table of functions.
func shorterCode(section []byte, shorter func(slot int, locals []group, code []instruction) ([]group, []instruction)) ([]byte, error) {
	r := reader{rest: section}
	count := r.number()
	out := binary.AppendUvarint(nil, count)
	for k := range count {
		body := reader{rest: r.take(r.number())}
		locals := readLocals(&body)
		code, err := instructions(body.rest)
		if err != nil || body.failed || r.failed {
			return nil, errCode
		}
		locals, code = shorter(firstSlot+int(k), locals, code)
		out = appendFunction(out, locals, code)
	}
	if r.failed || len(r.rest) > 0 {
		return nil, errCode
	}
	return out, nil
}

// appendFunction appends the body of a function, with its size.
func appendFunction(out []byte, locals []group, code []instruction) []byte {
	body := binary.AppendUvarint(nil, uint64(len(locals)))
	for _, g := range locals {
		body = append(binary.AppendUvarint(body, g.count), g.kind)
	}
	for _, i := range code {
		body = append(body, i.raw...)
	}
	return append(binary.AppendUvarint(out, uint64(len(body))), body...)
}
