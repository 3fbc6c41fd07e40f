package sheet

import "math"

// A Worth is what a far header does for the weakest emitter.
type Worth uint8

const (
	WorthNothing Worth = iota // it has as much pressure without it
	WorthLess                 // it has less with it
	WorthMore
	Worths = iota // how many there are
)

// A Gain is what a far header comes to, beside the same plan without one.
type Gain struct {
	Worth    Worth
	Head     float64 // m that the weakest emitter has more with it; negative where it has less
	Plants   int     // that every row may have more with it; negative for fewer, and 0 too where that is not Compared
	Compared bool    // the longest rows of both are known as far as Plants tells
	Only     int     // the side with which alone the answer is Yes; -1 where it is or is not with either
}

// sameHead is a head in m by which emitters are not told apart here: half of the
// last digit that is shown of metres.
const sameHead = 0.05

// Gain returns what the far header of a comparison comes to.
func (l *Loop) Gain() Gain {
	with, without := &l.Side[Tied], &l.Side[Untied]
	g := Gain{Head: with.Zone.Margin - without.Zone.Margin, Only: -1}
	switch {
	case math.Abs(g.Head) < sameHead:
		g.Worth = WorthNothing
	case g.Head < 0:
		g.Worth = WorthLess
	default:
		g.Worth = WorthMore
	}
	// Where the longer of the two was not looked for to its end, it may be longer yet.
	more := with.Longer - without.Longer
	if end := more >= 0 && with.Bounded || more <= 0 && without.Bounded; with.Sought && without.Sought && !end {
		g.Plants, g.Compared = more, true
	}
	switch {
	case with.Verdict == Yes && without.Verdict != Yes:
		g.Only = Tied
	case without.Verdict == Yes && with.Verdict != Yes:
		g.Only = Untied
	}
	return g
}
