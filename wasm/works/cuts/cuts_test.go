package cuts

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
)

// Every metre of the layout is cut once, from rolls that hold it, and a joiner stands
// wherever a piece goes on on another roll.
func TestEveryPieceIsCutOnce(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for n := range 400 {
		p := plan.Default()
		p.Header.Layout, p.Header.Feed = r.IntN(3), r.IntN(2)
		plan.SectionNamed("runs").Resize(p, 1+r.IntN(plan.MaxRuns))
		for i := range p.Runs {
			p.Runs[i].Length, p.Runs[i].Tube = 0.1+100*r.Float64(), 1+r.IntN(4)
		}
		plan.SectionNamed("rows").Resize(p, 1+r.IntN(12))
		for i := range p.Rows {
			p.Rows[i].Plants, p.Rows[i].Spacing, p.Rows[i].Gap = 1+r.IntN(60), 0.1+r.Float64(), 2*r.Float64()
		}
		rolls := [...]float64{0, 10, 25, 50, 100}
		for i := range p.Prices.Rolls {
			p.Prices.Rolls[i] = rolls[(n+i)%len(rolls)]
		}
		l := layout.New(p)
		all := Of(l)
		if len(all) != len(l.Tubes) {
			t.Fatalf("%d cuttings of %d sizes", len(all), len(l.Tubes))
		}
		for tube := range all {
			c := &all[tube]
			want, pieces, joined := 0.0, 0, 0
			count := func(long float64) {
				want, pieces = want+long, pieces+1
				if c.Length > 0 {
					joined += max(0, int(math.Ceil(long/c.Length-1e-9))-1)
				}
			}
			for i := range l.Stretches {
				if l.Stretches[i].Tube == tube {
					count(l.Stretches[i].Length)
				}
			}
			for i := range l.Joints {
				if l.Joints[i].Stub() == tube {
					for range l.Joints[i].N {
						count(layout.Stub)
					}
				}
			}
			got := 0.0
			for i := range c.Pieces {
				got += c.Pieces[i].Length
			}
			if math.Abs(got-want) > 1e-9*want || len(c.Pieces) != pieces+joined || c.Joined != joined {
				t.Fatalf("tube %d: %g m in %d pieces with %d joiners, want %g in %d with %d", tube, got, len(c.Pieces), c.Joined, want, pieces+joined, joined)
			}
			if c.Length == 0 {
				if len(c.Rolls) > 0 {
					t.Error("what is sold by the metre has rolls")
				}
				continue
			}
			had := make([]int, len(c.Pieces))
			for _, roll := range c.Rolls {
				sum := roll.Left
				for _, i := range roll.Pieces {
					had[i]++
					sum += c.Pieces[i].Length
				}
				if sum > c.Length+mm*float64(len(roll.Pieces)) || roll.Left < 0 {
					t.Fatalf("a roll of %g m holds %g", c.Length, sum)
				}
			}
			for i, n := range had {
				if n != 1 {
					t.Fatalf("piece %d is cut %d times", i, n)
				}
			}
			if c.Least > len(c.Rolls) || float64(c.Least) < want/c.Length-1e-9 {
				t.Fatalf("%d rolls proved for %g m of %g", c.Least, want, c.Length)
			}
			if math.Abs(c.Left()-(float64(len(c.Rolls))*c.Length-want)) > mm*float64(len(c.Pieces)) {
				t.Fatalf("%g m are left over", c.Left())
			}
		}
	}
}
