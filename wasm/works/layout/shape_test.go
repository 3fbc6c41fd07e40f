package layout

import (
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
)

// Each plant is where a tape measure would find it, and its emitters are in
// the network.
func TestPlants(t *testing.T) {
	forRandom(t, func(t *testing.T, seed uint64, l *Layout) {
		p := l.Plan
		base := 0.0
		for _, r := range p.Runs {
			base += r.Rise
		}
		i := 0
		x, dir, y := 0.0, 1.0, 0.0
		for n := range p.Rows {
			r := &p.Rows[n]
			y += r.Gap
			if p.Header.Layout != plan.OneLine {
				x, dir = 0, 1
			}
			for k := range r.Plants {
				along := r.First + float64(k)*r.Spacing
				want := Point{x + dir*along, y, base + r.Height + along*r.Slope}
				got := l.Plants[i]
				if got.Row != n || got.Number != k+1 || got.At != l.Points[got.Node] || !nearPoint(got.At, want) {
					t.Fatalf("plant %d of row %d is %+v, want it at %v", k+1, n+1, got, want)
				}
				node := l.Network.Nodes[got.Node]
				if node.Emitter != r.Emitter || node.Count != float64(r.PerPlant) {
					t.Fatalf("plant %d of row %d has %g of emitter %d", k+1, n+1, node.Count, node.Emitter)
				}
				i++
			}
			x += dir * r.Length()
			dir = -dir
		}
		if i != len(l.Plants) {
			t.Fatalf("%d plants, want %d", len(l.Plants), i)
		}
	})
}

func TestMiddleFeedIsSymmetric(t *testing.T) {
	for rows := 2; rows <= 9; rows++ {
		p := plan.Default()
		p.Header.Feed = plan.FeedMiddle
		plan.SectionNamed("rows").Resize(p, rows)
		l := New(p)
		wantNodes := 4 + rows*31 + rows - rows%2 // an odd number has a tee in the middle
		if len(l.Points) != wantNodes {
			t.Errorf("%d rows: %d nodes, want %d", rows, len(l.Points), wantNodes)
		}
		for i := range rows / 2 {
			j := rows - 1 - i
			a, b := l.Path(l.Ends[i]), l.Path(l.Ends[j])
			if len(a) != len(b) {
				t.Fatalf("%d rows: %d links to row %d, %d to row %d", rows, len(a), i+1, len(b), j+1)
			}
			for k := range a {
				c, d := l.Network.Links[a[k]], l.Network.Links[b[k]]
				if !near(c.Length, d.Length) || c.K != d.K || c.Extra != d.Extra || c.Bore != d.Bore {
					t.Errorf("%d rows: link %d on the way to row %d is %+v, to row %d %+v", rows, k, i+1, c, j+1, d)
				}
			}
		}
	}
}

// The lead's water turns in the tee at the middle.
func TestMiddleFeedCostsATurn(t *testing.T) {
	p := plan.Default()
	end := New(p).Network.Links[2].K
	p.Header.Feed = plan.FeedMiddle
	if got := New(p).Network.Links[2].K; !near(got, end+2) {
		t.Errorf("lead fed in the middle has K %g, at the end %g; want 2 more", got, end)
	}
}

// Out of a tee in the middle the water has turned already; past a row's tee it
// goes straight through, also where the two stand side by side.
func TestPiecesPayForTheTeeBefore(t *testing.T) {
	for _, tt := range []struct {
		rows int
		want float64 // of the first piece from the middle
	}{{4, inserted(2)}, {5, 0.9 + inserted(2)}} {
		p := plan.Default()
		p.Runs[0].Tube, p.Header.Tube = 2, 2
		p.Header.Feed = plan.FeedMiddle
		plan.SectionNamed("rows").Resize(p, tt.rows)
		l := New(p)
		for _, s := range l.Stretches {
			if s.Kind != HeaderOf {
				continue
			}
			want := 0.9 + inserted(2)
			if l.Network.Links[s.Links[0]].From == l.Feed {
				want = tt.want
			}
			if k := l.Network.Links[s.Links[0]].K; !near(k, want) {
				t.Errorf("%d rows: the header to row %d has K %g, want %g", tt.rows, s.Index+1, k, want)
			}
		}
	}
}

// Every fitting of a run, and the way in from a tank on the first alone.
func TestRunCoefficients(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator, p.Runs[0].Tube = plan.GravityTank, 0, 2
	plan.SectionNamed("runs").Resize(p, 2)
	r := &p.Runs[1]
	r.Elbows, r.Tees, r.Valves, r.Checks = 1, 2, 3, 4
	l := New(p)
	in := inserted(2)
	if k, want := l.Network.Links[1].K, 0.5+2*1.5+0.05+5*in+joined(0.0176, 2, 0); !near(k, want) {
		t.Errorf("run 1 has K %g, want %g", k, want)
	}
	if k, want := l.Network.Links[2].K, 1*1.5+2*0.9+3*0.05+4*2.5+12*in; !near(k, want) {
		t.Errorf("run 2 has K %g, want %g", k, want)
	}
}

// Each of a plant's emitters has a barb in the tubing.
func TestBarbsOfSeveralEmitters(t *testing.T) {
	p := plan.Default()
	one := New(p).Network.Links[6].Extra
	p.Rows[0].PerPlant = 3
	l := New(p)
	if got := l.Network.Links[6].Extra; !near(got, 3*one) || !(one > 0) {
		t.Errorf("three barbs stand for %g m, one for %g", got, one)
	}
	p.Emitters[0].Barb = plan.BarbLarge
	if got := New(p).Network.Links[6].Extra; !(got > l.Network.Links[6].Extra) {
		t.Errorf("large barbs stand for %g m, standard ones for %g", got, l.Network.Links[6].Extra)
	}
}

func TestOneLineTurnsBack(t *testing.T) {
	p := plan.Default()
	p.Header.Layout = plan.OneLine
	l := New(p)
	if got := l.Points[l.Ends[3]]; !nearPoint(got, Point{0, 4.15, 0.4}) {
		t.Errorf("the line's end is at %v, want it back at the lead's side, across from row 4", got)
	}
	if x := l.Points[l.Tees[1]].X; !near(x, 10.024) {
		t.Errorf("row 2 starts at %g m, want the far end, 10.024", x)
	}
	first, last := l.Plants[30].At.X, l.Plants[59].At.X
	if !near(first, 10.024-0.167) || !near(last, 10.024-0.167-29*0.333) {
		t.Errorf("row 2 goes from %g to %g m", first, last)
	}
	var between []int
	for _, s := range l.Stretches {
		if s.Kind == Between {
			between = append(between, s.Index)
			k := l.Network.Links[s.Links[0]]
			if len(s.Links) != 1 || !near(k.Length, 1.1) || !near(k.K, 2*(1.5+inserted(1))) {
				t.Errorf("piece to row %d is %+v, want 1.1 m with two elbows", s.Index+1, k)
			}
		}
	}
	if !slices.Equal(between, []int{1, 2, 3}) {
		t.Errorf("pieces lead to rows %v, want 1, 2 and 3 from 0", between)
	}
}

// On a field that rises by 2 % away from the lead, row 2 of a line falls along
// the water from where row 1 ended, and the piece between stays level. Where
// the plan says otherwise, that piece climbs.
func TestOneLineHeights(t *testing.T) {
	p := plan.Default()
	p.Header.Layout = plan.OneLine
	plan.SectionNamed("rows").Resize(p, 2)
	p.Rows[0].Slope, p.Rows[1].Slope = 0.02, -0.02
	p.Rows[1].Height = 0.02 * 10.024
	l := New(p)
	end := l.Network.Links[l.Tees[1]-1].From
	if a, b := l.Points[end].Z, l.Points[l.Tees[1]].Z; !near(a, b) || !near(a, 0.4+0.20048) {
		t.Errorf("row 1 ends at %g m and row 2 starts at %g m", a, b)
	}
	if z := l.Points[l.Ends[1]].Z; !near(z, 0.4) {
		t.Errorf("the line ends at %g m, want 0.4", z)
	}
	p.Rows[1].Height = 1
	l = New(p)
	if z, k := l.Points[l.Tees[1]].Z, l.Network.Links[l.Tees[1]-1]; !near(z, 1.4) || !near(k.Length, 1.1) {
		t.Errorf("row 2 starts at %g m after %g m, want 1.4 after 1.1", z, k.Length)
	}
}

func TestRiseAndSlope(t *testing.T) {
	p := plan.Default()
	plan.SectionNamed("runs").Resize(p, 2)
	p.Runs[0].Rise, p.Runs[1].Rise = 3, -0.5
	p.Rows[1].Height = -0.3
	p.Rows[1].Slope = 0.1
	l := New(p)
	for _, tt := range []struct {
		what string
		node int
		want float64
	}{
		{"the source", 0, 0},
		{"the filter's outlet", 2, 0},
		{"the end of run 1", 3, 3},
		{"the header", l.Tees[0], 2.5},
		{"row 2's tee", l.Tees[1], 2.5},
		{"row 2's first plant", l.Plants[30].Node, 2.5 - 0.3 + 0.1*0.167},
		{"row 2's end", l.Ends[1], 2.5 - 0.3 + 0.1*10.024},
		{"row 1's end", l.Ends[0], 2.5},
	} {
		if got := l.Network.Nodes[tt.node].Z; !near(got, tt.want) {
			t.Errorf("%s is at %g m, want %g", tt.what, got, tt.want)
		}
	}
}

// One row alone has no header: the lead goes straight on into it.
func TestOneRowHasNoHeader(t *testing.T) {
	for _, feed := range []int{plan.FeedEnd, plan.FeedMiddle} {
		p := plan.Default()
		p.Header.Feed = feed
		plan.SectionNamed("rows").Resize(p, 1)
		l := New(p)
		if l.Tees[0] != l.Feed || len(l.Points) != 4+31 {
			t.Errorf("feed %d: tee %d, lead's end %d, %d nodes", feed, l.Tees[0], l.Feed, len(l.Points))
		}
		for _, j := range l.Joints {
			if j.Kind == RowTee || j.Kind == EntryTee || j.Kind == HeaderCap {
				t.Errorf("feed %d: there is a fitting of a header: %+v", feed, j)
			}
		}
		if k := l.Network.Links[3].K; !near(k, inserted(1)) {
			t.Errorf("feed %d: the row begins with K %g", feed, k)
		}
	}
}
