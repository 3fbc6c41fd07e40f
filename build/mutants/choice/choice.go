// Package choice is what a package with all its mutants in it asks: which of
// them is to run. Only copies that build/mutants makes import it.
//
// The mutant's number stands in the environment variable MUTANT; without it
// everything is as it was written. Where MUTANTS_REACHED names a file, the
// number of each mutant whose place is reached is added to it as a line.
package choice

import (
	"os"
	"strconv"
	"sync/atomic"
)

var (
	chosen, _ = strconv.Atoi(os.Getenv("MUTANT")) // 0 is none
	reached   = record(os.Getenv("MUTANTS_REACHED"))
)

// A list is the mutants that were reached.
type list struct {
	seen [1 << 16]atomic.Bool // by mutant; a package has some thousand
	file *os.File
}

func record(name string) *list {
	if name == "" {
		return nil
	}
	file, err := os.OpenFile(name, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		panic(err)
	}
	return &list{file: file}
}

func (l *list) add(id int) {
	if !l.seen[id].Load() && !l.seen[id].Swap(true) {
		if _, err := l.file.WriteString(strconv.Itoa(id) + "\n"); err != nil {
			panic(err)
		}
	}
}

// On reports whether mutant id is the one to run.
func On(id int) bool {
	if reached != nil {
		reached.add(id)
	}
	return chosen == id
}

// None reports whether the mutant to run is none of those from first to last.
func None(first, last int) bool { return chosen < first || chosen > last }

type integer interface {
	~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64 | ~uintptr
}

type number interface {
	integer | ~float32 | ~float64
}

// Value returns v, or in the mutant changed.
func Value[T any](id int, v, changed T) T {
	if On(id) {
		return changed
	}
	return v
}

// Zero returns v, or in the mutant nothing.
func Zero[T any](id int, v T) T {
	if On(id) {
		var zero T
		return zero
	}
	return v
}

// Neg returns -v, or in the mutant v.
func Neg[T number](id int, v T) T {
	if On(id) {
		return v
	}
	return -v
}

// Add returns a + b, or in the mutant a - b.
func Add[T number](id int, a, b T) T {
	if On(id) {
		return a - b
	}
	return a + b
}

// Sub returns a - b, or in the mutant a + b.
func Sub[T number](id int, a, b T) T {
	if On(id) {
		return a + b
	}
	return a - b
}

// Mul returns a * b, or in the mutant a / b.
func Mul[T number](id int, a, b T) T {
	if On(id) {
		return a / b
	}
	return a * b
}

// Quo returns a / b, or in the mutant a * b.
func Quo[T number](id int, a, b T) T {
	if On(id) {
		return a * b
	}
	return a / b
}

// Rem returns a % b, or in the mutant a * b.
func Rem[T integer](id int, a, b T) T {
	if On(id) {
		return a * b
	}
	return a % b
}

// And returns a & b, or in the mutant a | b.
func And[T integer](id int, a, b T) T {
	if On(id) {
		return a | b
	}
	return a & b
}

// Or returns a | b, or in the mutant a & b.
func Or[T integer](id int, a, b T) T {
	if On(id) {
		return a & b
	}
	return a | b
}

// Xor returns a ^ b, or in the mutant a & b.
func Xor[T integer](id int, a, b T) T {
	if On(id) {
		return a & b
	}
	return a ^ b
}

// AndNot returns a &^ b, or in the mutant a & b.
func AndNot[T integer](id int, a, b T) T {
	if On(id) {
		return a & b
	}
	return a &^ b
}

// Shl returns a << n, or in the mutant a >> n.
func Shl[T, N integer](id int, a T, n N) T {
	if On(id) {
		return a >> n
	}
	return a << n
}

// Shr returns a >> n, or in the mutant a << n.
func Shr[T, N integer](id int, a T, n N) T {
	if On(id) {
		return a << n
	}
	return a >> n
}
