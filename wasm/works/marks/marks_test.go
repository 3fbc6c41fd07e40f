package marks

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
)

// Each plant of the layout, measured along its row from where the water comes in, has
// its mark, and each row stands in one group.
func TestMarksAreWhereThePlantsAre(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	shared := 0
	for range 300 {
		p := plan.Default()
		p.Header.Layout = r.IntN(3)
		plan.SectionNamed("rows").Resize(p, 1+r.IntN(9))
		for i := range p.Rows {
			p.Rows[i].Plants, p.Rows[i].PerPlant = 1+r.IntN(4), 1+r.IntN(2)
			p.Rows[i].Spacing, p.Rows[i].First = 0.2+0.1*float64(r.IntN(3)), 0.1*float64(r.IntN(3))
		}
		l := layout.New(p)
		var rows []int
		for _, g := range Of(p) {
			rows = append(rows, g.Rows...)
			if len(g.Rows) > 1 {
				shared++
			}
			for _, row := range g.Rows {
				n := 0
				for i := range l.Plants {
					at := &l.Plants[i]
					if at.Row != row {
						continue
					}
					long := math.Abs(at.At.X - l.Points[l.Tees[row]].X)
					if want := g.At(n); p.Header.Layout != plan.OneLine && math.Abs(long-want) > 1e-9 {
						t.Fatalf("row %d, plant %d stands at %g, and is marked at %g", row, n, long, want)
					}
					n++
				}
				if n != g.Plants || g.PerPlant != p.Rows[row].PerPlant {
					t.Fatalf("row %d has %d marks of %d, want %d of %d", row, g.Plants, g.PerPlant, n, p.Rows[row].PerPlant)
				}
				if math.Abs(g.Last()-g.At(n-1)) > 0 {
					t.Fatal("the last mark is not the last")
				}
			}
		}
		slices.Sort(rows)
		for i, row := range rows {
			if i != row || len(rows) != len(p.Rows) {
				t.Fatalf("rows %v are marked, of %d", rows, len(p.Rows))
			}
		}
	}
	if shared == 0 {
		t.Error("no rows were alike")
	}
}

// A lath holds whole spacings, and one more would be too long.
func TestStick(t *testing.T) {
	for _, c := range []struct {
		spacing float64
		want    int
	}{{0.25, 10}, {0.333, 7}, {0.5, 5}, {1.25, 2}, {1.3, 0}, {3, 0}} {
		if got := Stick(c.spacing); got != c.want {
			t.Errorf("%d spaces of %g m, want %d", got, c.spacing, c.want)
		}
	}
}
