package cuts

import (
	"math"
	"strconv"

	"evenrow/wasm/works/layout"
)

// A Piece is one length of tubing between two fittings, or a part of one that is
// longer than a roll.
type Piece struct {
	Stretch int     // index into Layout.Stretches; -1 for a stub, which belongs to none
	Joint   int     // index into Layout.Joints, of a stub: at which it stands; else -1
	Number  int     // among the pieces of its tubing, from 1, in order of flow
	Part    int     // from 1, of a piece that is longer than a roll; 0 for a whole one
	Length  float64 // m, from the middle of one fitting to that of the next
}

// A Roll is what is cut from one roll.
type Roll struct {
	Pieces []int   // indices into Cutting.Pieces, the longest first
	Left   float64 // m
}

// A Cutting is how one size of tubing is cut.
type Cutting struct {
	Tube   int     // index into Layout.Tubes
	Length float64 // m of a roll; 0 where it is sold by the metre, and there are no Rolls
	Pieces []Piece // in order of flow
	Rolls  []Roll  // those with least left over first
	Least  int     // no fewer rolls do, which is proved; less than len(Rolls) where the search was ended
	Joined int     // joiners, where pieces are longer than a roll
}

// Letter stands for a size of tubing.
func (c *Cutting) Letter() string { return string(rune('A' + c.Tube)) }

// Whole is the name of a piece, or of that which it is a part of: the letter of its
// tubing and its number.
func (c *Cutting) Whole(p *Piece) string { return c.Letter() + strconv.Itoa(p.Number) }

// Name is what is written on a piece: behind a point which part it is.
func (c *Cutting) Name(p *Piece) string {
	if p.Part > 0 {
		return c.Whole(p) + "." + strconv.Itoa(p.Part)
	}
	return c.Whole(p)
}

// Left is what is over of all rolls, in m.
func (c *Cutting) Left() (left float64) {
	for i := range c.Rolls {
		left += c.Rolls[i].Left
	}
	return left
}

// steps is how many steps a search for the fewest rolls of one size may take: about
// a millisecond or two in a browser.
const steps = 30_000

// mm is what lengths are rounded up to before they are cut, in m: what a tape measure
// shows.
const mm = 1e-3

// Of cuts the tubing of the layout of a plan that was checked, from rolls as it says they
// are sold.
func Of(l *layout.Layout) []Cutting {
	var all []Cutting
	for tube := range l.Tubes {
		c := Cutting{Tube: tube, Length: l.Plan.Prices.Rolls[l.Tubes[tube].Entry]}
		number := 0
		for i := range l.Stretches {
			s := &l.Stretches[i]
			if s.Tube == tube {
				number++
				c.add(Piece{Stretch: i, Joint: -1, Number: number, Length: s.Length})
			}
			for k := range l.Joints {
				if j := &l.Joints[k]; j.Stretch == i && j.Stub() == tube {
					for range j.N {
						number++
						c.add(Piece{Stretch: -1, Joint: k, Number: number, Length: layout.Stub})
					}
				}
			}
		}
		if c.Length > 0 {
			c.cut()
		}
		all = append(all, c)
	}
	return all
}

// add notes a piece, in parts where it is longer than a roll.
func (c *Cutting) add(p Piece) {
	if c.Length <= 0 || whole(p.Length) <= whole(c.Length) {
		c.Pieces = append(c.Pieces, p)
		return
	}
	for left := p.Length; whole(left) > 0; left -= c.Length {
		p.Part++
		p.Length = min(left, c.Length)
		c.Pieces = append(c.Pieces, p)
	}
	c.Joined += p.Part - 1
}

// cut shares the pieces out over rolls.
func (c *Cutting) cut() {
	long := make([]int, len(c.Pieces))
	for i := range long {
		long[i] = max(1, whole(c.Pieces[i].Length))
	}
	rolls, least := Fewest(long, whole(c.Length), steps)
	c.Least = least
	for _, of := range rolls {
		r := Roll{Pieces: of, Left: c.Length}
		for _, i := range of {
			r.Left -= c.Pieces[i].Length
		}
		r.Left = max(0, r.Left)
		at := len(c.Rolls)
		for at > 0 && c.Rolls[at-1].Left > r.Left {
			at--
		}
		c.Rolls = append(c.Rolls, Roll{})
		copy(c.Rolls[at+1:], c.Rolls[at:])
		c.Rolls[at] = r
	}
}

// whole is a length in whole millimetres, rounded up but for what is less than a
// rounding of its figures.
func whole(m float64) int { return int(math.Ceil(m/mm - 1e-6)) }
