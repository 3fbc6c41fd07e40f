package compile

import "encoding/binary"

// Instructions that only the function that unpacks needs. What compares and
// shifts takes numbers for unsigned.
const (
	load      = 0x28
	load64    = 0x29
	loadByte  = 0x2d
	loadWide  = 0x35 // a word, as 64 bits
	store     = 0x36
	store64   = 0x37
	storeWide = 0x3e // of 64 bits the lower word
	equalZero = 0x45
	less      = 0x49
	orEqual   = 0x4f // greater or equal
	add       = 0x6a
	times     = 0x6c
	and       = 0x71
	or        = 0x72
	shift     = 0x76

	zeros64 = 0x79 // leading ones
	add64   = 0x7c
	sub64   = 0x7d
	times64 = 0x7e
	by64    = 0x80
	rest64  = 0x82
	or64    = 0x84
	left64  = 0x86
	right64 = 0x88
)

// An assembler writes the code of a function.
type assembler struct {
	code []instruction
}

func (a *assembler) emit(list ...instruction) { a.code = append(a.code, list...) }

func (a *assembler) do(op byte) { a.emit(plain(op)) }

func (a *assembler) get(local uint64) { a.emit(with(opLocalGet, local)) }

func (a *assembler) set(local uint64) { a.emit(with(opLocalSet, local)) }

func (a *assembler) push(v int) { a.emit(constant(opI32Const, uint64(v))) }

func (a *assembler) push64(v int) { a.emit(constant(opI64Const, uint64(v))) }

// memory loads or stores at an address on the stack and an offset. A power of 2
// tells how the sum is aligned.
func (a *assembler) memory(op, align byte, offset int) {
	i := with(op, uint64(align))
	i.raw = binary.AppendUvarint(i.raw, uint64(offset))
	a.emit(i)
}

// step adds to a local.
func (a *assembler) step(local uint64, by int) {
	a.get(local)
	a.push(by)
	a.do(add)
	a.set(local)
}

// back subtracts from a local.
func (a *assembler) back(local uint64, by int) {
	a.get(local)
	a.push(by)
	a.do(opI32Sub)
	a.set(local)
}

// timesOf pushes a multiple of a local.
func (a *assembler) timesOf(local uint64, by int) {
	a.get(local)
	a.push(by)
	a.do(times)
}

// loop begins what is done again as long as again finds other than zero.
func (a *assembler) loop() { a.emit(with(opLoop, noValue)) }

func (a *assembler) again() { a.emit(with(opBrIf, 0), plain(opEnd)) }

// clear sets bytes of memory to zero.
func (a *assembler) clear(address, size int) {
	a.push(address)
	a.push(0)
	a.push(size)
	a.emit(instruction{0xfc, 11, []byte{0xfc, 11, 0}})
}
