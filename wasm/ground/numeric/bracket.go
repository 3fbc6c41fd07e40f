package numeric

// A Bracket holds a root between two points: the values at Lo and Hi have
// opposite signs. That at Hi may be unknown at first, and is then NaN.
type Bracket struct {
	Lo, Hi     float64
	AtLo, AtHi float64 // the values there, or less: see Narrow
	moved      int     // which end was moved last: -1 Lo, 1 Hi, 0 none yet
}

// Secant returns where the straight line between the two ends is zero.
func (b *Bracket) Secant() float64 {
	return b.Lo + (b.Hi-b.Lo)*b.AtLo/(b.AtLo-b.AtHi)
}

// Narrow moves the end with the sign of the value at x, which lies between the
// two and is no root, to x. The value at an end that stays twice running is halved, so that
// secants do not creep up from one side (the Illinois rule).
func (b *Bracket) Narrow(x, value float64) {
	if (value < 0) == (b.AtLo < 0) {
		b.Lo, b.AtLo = x, value
		if b.moved < 0 {
			b.AtHi /= 2
		}
		b.moved = -1
		return
	}
	b.Hi, b.AtHi = x, value
	if b.moved > 0 {
		b.AtLo /= 2
	}
	b.moved = 1
}

func (b *Bracket) middle() float64 { return b.Lo + (b.Hi-b.Lo)/2 }
