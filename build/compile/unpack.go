package compile

import (
	"encoding/binary"
	"slices"
)

// unpack is a function that has the table of functions back in memory as Go
// laid it out, but for the places of programs. It runs before the program
// does and takes a millisecond. In Go, with memory as words and bytes:
//
//	record, program := records, programs+1
//	for number := 0; number < count; number++ {
//		word(index + 8*number) = firstSlot + number
//		word(index + 8*number + 4) = record - index
//		further = fixedWords + column(countField/4, number)
//		words = further + column(dataField/4, number)>>24
//		for at := 1; at < words; at++ {
//			value = column(at, number)
//			if value != 0 && (firstProgramWord <= at && at <= lastProgramWord || fixedWords <= at && at < further) {
//				value = program - programs
//				go over the program
//			}
//			word(record + 4*at) = value
//		}
//		word(record) = firstSlot + number
//		record = (record + 4*words + 7) &^ 7
//	}
//	word(index + 8*count) = firstSlot + count
//	fill(buckets, 4*columns*count, 0)
//	for number := 0; number < (count-1)*bucketsForFunction+1; number++ {
//		word(buckets + number*bucketSize) = number / bucketsForFunction
//	}
func (p packing) unpack() (locals []group, code []instruction) {
	const (
		number = iota // the local variables
		record
		program
		further
		words
		at
		value
		variables
	)
	const (
		load      = 0x28
		loadByte  = 0x2d
		store     = 0x36
		equalZero = 0x45
		less      = 0x49 // unsigned, as all of these
		orEqual   = 0x4f // greater or equal
		add       = 0x6a
		times     = 0x6c
		and       = 0x71
		or        = 0x72
		shift     = 0x76
	)
	emit := func(list ...instruction) { code = append(code, list...) }
	get := func(v uint64) { emit(with(opLocalGet, v)) }
	set := func(v uint64) { emit(with(opLocalSet, v)) }
	push := func(v int) { emit(constant(opI32Const, uint64(v))) }
	do := func(op byte) { emit(plain(op)) }
	memory := func(op, align byte, offset int) {
		i := with(op, uint64(align))
		i.raw = binary.AppendUvarint(i.raw, uint64(offset))
		emit(i)
	}
	step := func(v uint64, by int) { get(v); push(by); do(add); set(v) }
	timesOf := func(v uint64, by int) { get(v); push(by); do(times) }
	loop := func() { emit(with(opLoop, noValue)) }
	again := func() { emit(with(opBrIf, 0), plain(opEnd)) }
	column := func(at func()) { // the word of the function in the column that at pushes
		at()
		push(p.count)
		do(times)
		get(number)
		do(add)
		push(4)
		do(times)
		memory(load, 2, p.buckets)
	}
	goOver := func() { // a number of the program
		loop()
		get(program)
		step(program, 1)
		memory(loadByte, 0, 0)
		push(0x80)
		do(orEqual)
		again()
	}

	push(p.records)
	set(record)
	push(p.programs + 1)
	set(program)
	loop() // over functions
	timesOf(number, 8)
	get(number)
	push(firstSlot)
	do(add)
	memory(store, 2, p.index)
	timesOf(number, 8)
	get(record)
	push(p.index)
	do(opI32Sub)
	memory(store, 2, p.index+4)
	column(func() { push(countField / 4) })
	push(fixedWords)
	do(add)
	set(further)
	column(func() { push(dataField / 4) })
	push(24)
	do(shift)
	get(further)
	do(add)
	set(words)
	push(1)
	set(at)
	loop() // over words
	column(func() { get(at) })
	set(value)
	emit(with(opBlock, noValue)) // unless it is that of a program
	get(value)
	do(equalZero)
	emit(with(opBrIf, 0))
	get(at)
	push(firstProgramWord)
	do(orEqual)
	get(at)
	push(lastProgramWord + 1)
	do(less)
	do(and)
	get(at)
	push(fixedWords)
	do(orEqual)
	get(at)
	get(further)
	do(less)
	do(and)
	do(or)
	do(equalZero)
	emit(with(opBrIf, 0))
	get(program)
	push(p.programs)
	do(opI32Sub)
	set(value)
	goOver()
	loop() // over pairs
	goOver()
	emit(with(opBlock, noValue))
	get(program)
	memory(loadByte, 0, 0)
	do(equalZero)
	emit(with(opBrIf, 0))
	goOver()
	emit(with(opBr, 1), plain(opEnd), plain(opEnd))
	step(program, 1)
	do(opEnd)
	get(record)
	timesOf(at, 4)
	do(add)
	get(value)
	memory(store, 2, 0)
	step(at, 1)
	get(at)
	get(words)
	do(less)
	again()
	get(record)
	get(number)
	push(firstSlot)
	do(add)
	memory(store, 2, 0)
	get(record)
	timesOf(words, 4)
	do(add)
	push(7)
	do(add)
	push(3)
	do(shift)
	push(8)
	do(times)
	set(record)
	step(number, 1)
	get(number)
	push(p.count)
	do(less)
	again()

	push(p.index + 8*p.count)
	push(firstSlot + p.count)
	memory(store, 2, 0)
	push(p.buckets)
	push(0)
	push(4 * p.words * p.count)
	emit(instruction{0xfc, 11, []byte{0xfc, 11, 0}}) // fill
	push(0)
	set(number)
	loop() // over buckets
	timesOf(number, bucketSize)
	get(number)
	push(4) // 16 for each function
	do(shift)
	memory(store, 2, p.buckets)
	step(number, 1)
	get(number)
	push((p.count-1)*bucketsForFunction + 1)
	do(less)
	again()
	do(opEnd)
	return []group{{variables, typeI32}}, slices.Clip(code)
}
