// Package tiny is what the test of the mutants makes mutants of. What its own
// test leaves open is on purpose.
package tiny

const many = 10

// Cost is 3 a piece, and 2 less in all for more than ten.
func Cost(pieces int) int {
	if pieces > many {
		return pieces*3 - 2
	}
	return pieces * 3
}

// Clamp returns v, or the nearer end.
func Clamp(v, lo, hi float64) float64 {
	if v < lo {
		v = lo
	}
	if v > hi {
		v = hi
	}
	return v
}

// Halvings returns how often n can be halved.
func Halvings(n int) int {
	times := 0
	for n > 1 {
		n /= 2
		times++
	}
	return times
}

// Unseen is called by no test.
func Unseen(a, b bool) bool { return a && b }
