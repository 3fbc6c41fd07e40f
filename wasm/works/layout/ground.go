package layout

import (
	"math"

	"evenrow/wasm/trade/catalogue"
)

// A Bed is the ground that the medium of a row stands on, in m, as X and Y of
// points are.
type Bed struct{ X0, X1, Y0, Y1 float64 }

// Beds returns the ground of each row's medium, by row. Its pieces lie along the
// row, with the plants of each in its middle, and across in the middle of the row.
func (l *Layout) Beds() []Bed {
	beds := make([]Bed, len(l.Plan.Rows))
	for i := range beds {
		beds[i] = Bed{X0: math.Inf(1), X1: math.Inf(-1)}
	}
	for i := range l.Plants {
		b, x := &beds[l.Plants[i].Row], l.Plants[i].At.X
		b.X0, b.X1 = min(b.X0, x), max(b.X1, x)
	}
	for i := range beds {
		r, m := &l.Plan.Rows[i], &catalogue.Media[l.Plan.Rows[i].Medium]
		beyond := Beyond(m, r.PerPiece, r.Spacing)
		beds[i].X0 -= beyond
		beds[i].X1 += beyond
		beds[i].Y0, beds[i].Y1 = l.across[i]-m.Width/2, l.across[i]+m.Width/2
	}
	return beds
}

// Beyond returns how far in m a piece of a medium reaches beyond the first and the
// last of so many plants that stand in it with a spacing in m; not less than 0.
func Beyond(m *catalogue.Medium, plants int, spacing float64) float64 {
	return max(0, m.Length-float64(plants-1)*spacing) / 2
}

// Along says whether two beds share a stretch of the length of the place: with
// another row between them or not, somebody who walks there has both beside him.
func (b *Bed) Along(c *Bed) bool { return b.X0 < c.X1 && c.X0 < b.X1 }

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
	const slack = 1e-6
	return b.X0 < door-slack && b.Y0 < (width+door)/2-slack && b.Y1 > (width-door)/2+slack
}
