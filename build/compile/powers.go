package compile

import (
	"bytes"
	"encoding/binary"
	"math/big"
)

// The powers of ten from lowest to highest that Go's library reads and writes
// decimal fractions by, as it keeps them (internal/strconv/pow10gen.go): the
// first 128 bits of each, the upper 64 first. They compress to nothing less, and
// are worked out when the program is loaded instead: 11 kB less to download.
const (
	lowestPower  = -348
	highestPower = 347
	powerSize    = 16
)

// powersOfTen are the powers as they lie in memory.
func powersOfTen() []byte {
	var out []byte
	for e := lowestPower; e <= highestPower; e++ {
		// 1408 zeros behind the point are enough for 128 bits of the lowest.
		x := new(big.Int).Lsh(big.NewInt(1), pointBits)
		if e >= 0 {
			x.Mul(x, new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(e)), nil))
		} else {
			x.Quo(x, new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(-e)), nil))
		}
		x.Rsh(x, uint(x.BitLen()-128))
		lower := new(big.Int).And(x, new(big.Int).SetUint64(1<<64-1))
		out = binary.LittleEndian.AppendUint64(out, x.Rsh(x, 64).Uint64())
		out = binary.LittleEndian.AppendUint64(out, lower.Uint64())
	}
	return out
}

// A power is worked out as words, the lowest first, of which so many stand
// behind the point.
const (
	pointWords = 44
	pointBits  = 32 * pointWords
	powerWords = 84 // of the highest, 81 are not zero
)

// withoutPowers takes the powers out of memory and returns their address, or 0
// where there are none.
func withoutPowers(segments []segment) int {
	powers := powersOfTen()
	for _, s := range segments {
		if at := bytes.Index(s.data, powers); at >= 0 {
			clear(s.data[at : at+len(powers)])
			return int(s.offset) + at
		}
	}
	return 0
}

// powersOfTen writes the powers to an address. It needs two local variables of
// 32 bits and two of 64, and the room for the buckets, which it leaves zero.
// In Go, with x as the words of a number:
//
//	x = 1 << pointBits
//	for range highestPower {
//		x *= 10
//	}
//	for each power, from the highest down {
//		write the upper 128 bits of x
//		x /= 10
//	}
func (p packing) powersOfTen(a *assembler, address int, count, at, v, carry uint64) {
	words := p.buckets
	// word pushes the word at at, as 64 bits.
	word := func() {
		a.get(at)
		a.memory(loadWide, 2, words)
	}
	a.push(words + 4*pointWords)
	a.push(1)
	a.memory(store, 2, 0)

	a.push(highestPower)
	a.set(count)
	a.loop()
	a.push(0)
	a.set(at)
	a.push64(0)
	a.set(carry)
	a.loop() // over words, from the lowest
	a.get(at)
	word()
	a.push64(10)
	a.do(times64)
	a.get(carry)
	a.do(add64)
	a.emit(with(opLocalTee, v))
	a.memory(storeWide, 2, words)
	a.get(v)
	a.push64(32)
	a.do(right64)
	a.set(carry)
	a.step(at, 4)
	a.get(at)
	a.push(4 * powerWords)
	a.do(less)
	a.again()
	a.back(count, 1)
	a.get(count)
	a.again()

	a.push(powerSize * (highestPower - lowestPower + 1))
	a.set(count) // what is still to be written, in bytes
	a.loop()
	a.back(count, powerSize)
	a.push(4 * powerWords)
	a.set(at)
	a.loop() // to the highest word that is not zero
	a.back(at, 4)
	a.get(at)
	a.memory(load, 2, words)
	a.do(equalZero)
	a.again()
	// bits pushes the 64 bits below those that the highest word begins with,
	// moved up by the zeros before them: of two numbers, one behind the other.
	bits := func(below int) {
		a.get(at)
		a.memory(load64, 2, words-4-below)
		a.get(carry)
		a.do(left64)
		a.get(at)
		a.memory(load64, 2, words-12-below)
		a.push64(1)
		a.do(right64)
		a.push64(63)
		a.get(carry)
		a.do(sub64)
		a.do(right64)
		a.do(or64)
	}
	a.get(at)
	a.memory(load64, 2, words-4)
	a.do(zeros64)
	a.set(carry)
	a.get(count)
	bits(0)
	a.memory(store64, 3, address)
	a.get(count)
	bits(8)
	a.memory(store64, 3, address+8)

	a.push(4 * powerWords)
	a.set(at)
	a.push64(0)
	a.set(carry)
	a.loop() // over words, from the highest
	a.back(at, 4)
	a.get(carry)
	a.push64(32)
	a.do(left64)
	word()
	a.do(or64)
	a.set(v)
	a.get(at)
	a.get(v)
	a.push64(10)
	a.do(by64)
	a.memory(storeWide, 2, words)
	a.get(v)
	a.push64(10)
	a.do(rest64)
	a.set(carry)
	a.get(at)
	a.again()
	a.get(count)
	a.again()
	a.clear(words, 4*powerWords)
}
