package layout

import (
	"math"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// A Bed is the ground that the medium of a row stands on, in m, as X and Y of
// points are.
type Bed struct{ X0, X1, Y0, Y1 float64 }

// Beds returns the ground of each row's medium, by row. Its pieces lie along the
// row, with the plants of each in its middle, and across in the middle of the row.
func (l *Layout) Beds() []Bed {
	beds := make([]Bed, len(l.Plan.Rows))
	next := 0
	for i := range beds {
		r, b := &l.Plan.Rows[i], &beds[i]
		m := &catalogue.Media[r.Medium]
		before, whole := Reach(m, r.Plants, r.PerPiece, r.Spacing)
		first, last := l.Plants[next].At.X, l.Plants[next+r.Plants-1].At.X
		if next += r.Plants; last < first || last == first && i%2 == 1 && l.Plan.Header.Layout == plan.OneLine {
			b.X1 = first + before
			b.X0 = b.X1 - whole
		} else {
			b.X0 = first - before
			b.X1 = b.X0 + whole
		}
		b.Y0, b.Y1 = l.across[i]-m.Width/2, l.across[i]+m.Width/2
	}
	return beds
}

// Reach returns the length in m along a row that its medium takes, and how much of
// it lies before the first plant: so many plants, so many to a piece at most, with
// a spacing in m. The last piece is whole, however few plants stand in it.
func Reach(m *catalogue.Medium, plants, perPiece int, spacing float64) (before, whole float64) {
	before = max(0, m.Length-float64(perPiece-1)*spacing) / 2
	pieces := (plants + perPiece - 1) / perPiece
	return before, max(float64((pieces-1)*perPiece)*spacing+m.Length, float64(plants-1)*spacing)
}

// Along says whether two beds share a stretch of the length of the place: with
// another row between them or not, somebody who walks there has both beside him.
func (b *Bed) Along(c *Bed) bool { return b.X0 < c.X1-slack && c.X0 < b.X1-slack }

// slack is the rounding of sums of spacings, in m.
const slack = 1e-6

// Walk returns the free strip in m between a row and the nearest row before it,
// from medium to medium, and which row that is, from 0; negative where media stand
// in one another. Rows that follow each other in one line have none between them:
// then, and for the first row, the result is not ok.
func Walk(beds []Bed, row int) (free float64, before int, ok bool) {
	free = math.Inf(1)
	for j := range row {
		if b := &beds[j]; b.Along(&beds[row]) && beds[row].Y0-b.Y1 < free {
			free, before, ok = beds[row].Y0-b.Y1, j, true
		}
	}
	return free, before, ok
}

// Wall returns how near in m a bed comes to the nearest wall of a place; negative
// where it reaches beyond one.
func (b *Bed) Wall(length, width float64) float64 {
	return min(b.X0, length-b.X1, b.Y0, width-b.Y1)
}

// InDoor says whether a bed stands in the way in through a door in the middle of
// the near end, which takes as much free ground as the door is wide (common
// practice, no source).
func (b *Bed) InDoor(door, width float64) bool {
	return b.X0 < door-slack && b.Y0 < (width+door)/2-slack && b.Y1 > (width-door)/2+slack
}
