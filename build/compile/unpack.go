package compile

import (
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
//	write the powers of ten, if there are any
//	for number := 0; number < (count-1)*bucketsForFunction+1; number++ {
//		word(buckets + number*bucketSize) = number / bucketsForFunction
//	}
func (p packing) unpack(powers int) (locals []group, code []instruction) {
	const (
		number = iota // the local variables
		record
		program
		further
		words
		at
		value
		wide // from here of 64 bits
		carry
		variables
	)
	var a assembler
	column := func(at func()) { // the word of the function in the column that at pushes
		at()
		a.push(p.count)
		a.do(times)
		a.get(number)
		a.do(add)
		a.push(4)
		a.do(times)
		a.memory(load, 2, p.buckets)
	}
	goOver := func() { // a number of the program
		a.loop()
		a.get(program)
		a.step(program, 1)
		a.memory(loadByte, 0, 0)
		a.push(0x80)
		a.do(orEqual)
		a.again()
	}

	a.push(p.records)
	a.set(record)
	a.push(p.programs + 1)
	a.set(program)
	a.loop() // over functions
	a.timesOf(number, 8)
	a.get(number)
	a.push(firstSlot)
	a.do(add)
	a.memory(store, 2, p.index)
	a.timesOf(number, 8)
	a.get(record)
	a.push(p.index)
	a.do(opI32Sub)
	a.memory(store, 2, p.index+4)
	column(func() { a.push(countField / 4) })
	a.push(fixedWords)
	a.do(add)
	a.set(further)
	column(func() { a.push(dataField / 4) })
	a.push(24)
	a.do(shift)
	a.get(further)
	a.do(add)
	a.set(words)
	a.push(1)
	a.set(at)
	a.loop() // over words
	column(func() { a.get(at) })
	a.set(value)
	a.emit(with(opBlock, noValue)) // unless it is that of a program
	a.get(value)
	a.do(equalZero)
	a.emit(with(opBrIf, 0))
	a.get(at)
	a.push(firstProgramWord)
	a.do(orEqual)
	a.get(at)
	a.push(lastProgramWord + 1)
	a.do(less)
	a.do(and)
	a.get(at)
	a.push(fixedWords)
	a.do(orEqual)
	a.get(at)
	a.get(further)
	a.do(less)
	a.do(and)
	a.do(or)
	a.do(equalZero)
	a.emit(with(opBrIf, 0))
	a.get(program)
	a.push(p.programs)
	a.do(opI32Sub)
	a.set(value)
	goOver()
	a.loop() // over pairs
	goOver()
	a.emit(with(opBlock, noValue))
	a.get(program)
	a.memory(loadByte, 0, 0)
	a.do(equalZero)
	a.emit(with(opBrIf, 0))
	goOver()
	a.emit(with(opBr, 1), plain(opEnd), plain(opEnd))
	a.step(program, 1)
	a.do(opEnd)
	a.get(record)
	a.timesOf(at, 4)
	a.do(add)
	a.get(value)
	a.memory(store, 2, 0)
	a.step(at, 1)
	a.get(at)
	a.get(words)
	a.do(less)
	a.again()
	a.get(record)
	a.get(number)
	a.push(firstSlot)
	a.do(add)
	a.memory(store, 2, 0)
	a.get(record)
	a.timesOf(words, 4)
	a.do(add)
	a.push(7)
	a.do(add)
	a.push(3)
	a.do(shift)
	a.push(8)
	a.do(times)
	a.set(record)
	a.step(number, 1)
	a.get(number)
	a.push(p.count)
	a.do(less)
	a.again()

	a.push(p.index + 8*p.count)
	a.push(firstSlot + p.count)
	a.memory(store, 2, 0)
	a.clear(p.buckets, 4*p.words*p.count)
	if powers != 0 {
		p.powersOfTen(&a, powers, number, at, wide, carry)
	}
	a.push(0)
	a.set(number)
	a.loop() // over buckets
	a.timesOf(number, bucketSize)
	a.get(number)
	a.push(4) // 16 for each function
	a.do(shift)
	a.memory(store, 2, p.buckets)
	a.step(number, 1)
	a.get(number)
	a.push((p.count-1)*bucketsForFunction + 1)
	a.do(less)
	a.again()
	a.do(opEnd)
	return []group{{wide, typeI32}, {variables - wide, typeI64}}, slices.Clip(a.code)
}
