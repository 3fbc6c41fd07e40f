package layout

import (
	"math"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// The slabs of the tunnel are 1 m by 0.2 m with three plants each, 0.333 m apart, so
// that one follows the other after 0.999 m: the middle of the first, and its second
// plant, stand 0.5 m from the header.
func TestBedsOfSlabs(t *testing.T) {
	l := New(plan.Default())
	beds := l.Beds()
	const end = 9*0.999 + 1 // of the tenth slab
	for i, y := range []float64{0.85, 1.95, 3.05, 4.15} {
		want := Bed{0, end, y - 0.1, y + 0.1}
		if got := beds[i]; !sameBed(got, want) {
			t.Errorf("row %d stands on %+v, want %+v", i+1, got, want)
		}
	}
	if free, before, ok := Walk(beds, 2); !ok || before != 1 || math.Abs(free-0.9) > 1e-9 {
		t.Errorf("between rows 2 and 3 %v is free, beside row %d, %v; want 0.9", free, before+1, ok)
	}
	if _, _, ok := Walk(beds, 0); ok {
		t.Error("there is a path before row 1")
	}
	if got := beds[3].Wall(9, 5); math.Abs(got-(9-end)) > 1e-9 {
		t.Errorf("row 4 is %v from a wall that it reaches beyond", got)
	}
	if got := (&Bed{0.5, 11, 1, 4.25}).Wall(12, 5); math.Abs(got-0.5) > 1e-9 {
		t.Errorf("%v from the nearest wall, want 0.5", got)
	}
	for _, c := range []struct {
		door float64
		rows [4]bool
	}{
		{0.8, [4]bool{}},                       // 2.1 to 2.9 of 5 m: rows 2 and 3 end at 2.05 and begin at 2.95
		{0.92, [4]bool{1: true, 2: true}},      // 2.04 to 2.96
		{3.2, [4]bool{true, true, true, true}}, // 0.9 to 4.1
		{3.0, [4]bool{1: true, 2: true}},       // 1.0 to 4.0
	} {
		for i := range beds {
			if got := beds[i].InDoor(c.door, 5); got != c.rows[i] {
				t.Errorf("row %d in the way of a door of %v m: %v", i+1, c.door, got)
			}
		}
	}
	far := beds[1]
	far.X0 += 0.92
	if far.InDoor(0.92, 5) {
		t.Error("a row that begins a door's width from the door stands in its way")
	}
}

// Buckets are 0.3 m across and stand alone; rows that follow each other in one
// line have no path between them, and one that stands beside both has one.
func TestBedsOfOneLine(t *testing.T) {
	p := plan.Default()
	for i := range p.Rows {
		r := &p.Rows[i]
		r.Medium, r.PerPiece, r.Plants, r.Spacing, r.First = plan.Bucket, 1, 4, 0.5, 0.25
	}
	p.Rows = p.Rows[:3]
	p.Rows[1].First, p.Rows[1].Gap = 2.25, 0
	p.Rows[2].Gap, p.Rows[2].Plants = 1, 8
	beds := New(p).Beds()
	if want := (Bed{0.1, 1.9, 0.7, 1}); !sameBed(beds[0], want) {
		t.Errorf("%+v, want %+v", beds[0], want)
	}
	if want := (Bed{2.1, 3.9, 0.7, 1}); !sameBed(beds[1], want) {
		t.Errorf("%+v, want %+v", beds[1], want)
	}
	if _, _, ok := Walk(beds, 1); ok {
		t.Error("a path lies between two rows of one line")
	}
	if free, _, ok := Walk(beds, 2); !ok || math.Abs(free-0.7) > 1e-9 {
		t.Errorf("%v is free before row 3, %v; want 0.7", free, ok)
	}
	p.Rows[1].First = 2.05 - 1e-9 // the sum of spacings is never quite round
	if _, _, ok := Walk(New(p).Beds(), 1); ok {
		t.Error("a path lies between two rows of one line that touch")
	}
	p.Rows[1].First = 1.5
	if free, before, ok := Walk(New(p).Beds(), 1); !ok || before != 0 || math.Abs(free+0.3) > 1e-9 {
		t.Errorf("buckets in the very same place have %v between them", free)
	}
}

// In one line that runs up a row and down the next, the second row's beds lie
// beside the first's.
func TestBedsOfALineThatTurns(t *testing.T) {
	p := plan.Default()
	p.Header.Layout = plan.OneLine
	beds := New(p).Beds()
	// Row 1 ends 0.2 m beyond its last plant; row 2 begins there, and its first slab
	// reaches as far beyond its first plant as a slab does.
	end := 0.167 + 29*0.333 + plan.Tail - 0.167 + (1-0.666)/2
	if want := (Bed{end - 9*0.999 - 1, end, 1.85, 2.05}); !sameBed(beds[1], want) {
		t.Errorf("%+v, want %+v", beds[1], want)
	}
	if _, before, ok := Walk(beds, 1); !ok || before != 0 {
		t.Error("no path between rows 1 and 2")
	}
}

// Of four plants, three to a slab, the fourth stands in a whole slab.
func TestReach(t *testing.T) {
	slab, pot := &catalogue.Media[plan.CocoSlab], &catalogue.Media[plan.Pot]
	for _, c := range []struct {
		m             *catalogue.Medium
		plants, each  int
		spacing       float64
		before, whole float64
	}{
		{slab, 4, 3, 0.4, 0.1, 2.2},
		{slab, 3, 3, 0.4, 0.1, 1},
		{slab, 1, 1, 0.4, 0.5, 1},
		{pot, 8, 1, 0.4, 0.125, 3.05},
		{pot, 6, 3, 0.4, 0, 2}, // plants far beyond the pots that they are said to share
	} {
		if before, whole := Reach(c.m, c.plants, c.each, c.spacing); math.Abs(before-c.before) > 1e-9 || math.Abs(whole-c.whole) > 1e-9 {
			t.Errorf("%d plants take %v, %v before the first, want %v and %v", c.plants, whole, before, c.whole, c.before)
		}
	}
}

func sameBed(a, b Bed) bool {
	const slack = 1e-9
	return math.Abs(a.X0-b.X0) < slack && math.Abs(a.X1-b.X1) < slack && math.Abs(a.Y0-b.Y0) < slack && math.Abs(a.Y1-b.Y1) < slack
}
