package layout

import (
	"math"
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/network"
)

// near says whether two lengths are equal to a hundredth of a millimetre.
func near(a, b float64) bool { return math.Abs(a-b) < 1e-5 }

func nearPoint(a, b Point) bool { return near(a.X, b.X) && near(a.Y, b.Y) && near(a.Z, b.Z) }

// sum adds a quantity of the links of a list.
func (l *Layout) sum(links []int, of func(*network.Link) float64) float64 {
	total := 0.0
	for _, k := range links {
		total += of(&l.Network.Links[k])
	}
	return total
}

func length(k *network.Link) float64 { return k.Length }

// Counted by hand from the plan: the source, the pump, the filter and the
// lead's end, which is row 1's tee; tees of rows 2 to 4; four rows of 30
// plants and an end.
func TestMillraceCountedByHand(t *testing.T) {
	l := New(plan.Default())
	if got, want := len(l.Points), 1+1+1+1+3+4*31; got != want {
		t.Errorf("%d nodes, want %d", got, want)
	}
	if len(l.Plants) != 120 {
		t.Errorf("%d plants, want 120", len(l.Plants))
	}
	if got := l.Tees; !slices.Equal(got, []int{3, 4, 5, 6}) {
		t.Errorf("tees %v, want 3 to 6", got)
	}
	if got := l.Ends; !slices.Equal(got, []int{37, 68, 99, 130}) {
		t.Errorf("ends %v", got)
	}
	if !slices.Equal(l.Zones, []int{1}) {
		t.Errorf("zones %v, want 1", l.Zones)
	}
	for _, tt := range []struct {
		what string
		node int
		want Point
	}{
		{"the source", 0, Point{-9, 0.85, 0}},
		{"the pump's outlet", 1, Point{-8.5, 0.85, 0}},
		{"the filter's outlet", 2, Point{-8, 0.85, 0}},
		{"row 1's tee", l.Tees[0], Point{0, 0.85, 0.4}},
		{"row 4's tee", l.Tees[3], Point{0, 4.15, 0.4}},
		{"row 3's fifth plant", l.Plants[64].Node, Point{0.167 + 4*0.333, 3.05, 0.4}},
		{"row 4's end", l.Ends[3], Point{10.024, 4.15, 0.4}},
	} {
		if got := l.Points[tt.node]; !nearPoint(got, tt.want) {
			t.Errorf("%s is at %v, want %v", tt.what, got, tt.want)
		}
	}
	if p := l.Plants[64]; p.Row != 2 || p.Number != 5 {
		t.Errorf("plant 64 is %+v, want row 3's fifth", p)
	}
	if got := l.sum(l.Path(l.Ends[3]), length); !near(got, 8+3.3+10.024) {
		t.Errorf("%g m to the end of row 4, want 21.324", got)
	}
}

func TestMillraceStretches(t *testing.T) {
	l := New(plan.Default())
	type stretch struct {
		kind  StretchKind
		index int
		links int
		m     float64
		rank  int
	}
	want := []stretch{
		{Source, 0, 1, 0, Lead}, {Filter, 0, 1, 0, Lead}, {RunOf, 0, 1, 8, Lead},
		{HeaderOf, 1, 1, 1.1, Main}, {HeaderOf, 2, 1, 1.1, Main}, {HeaderOf, 3, 1, 1.1, Main},
		{RowOf, 0, 31, 10.024, Lateral}, {RowOf, 1, 31, 10.024, Lateral},
		{RowOf, 2, 31, 10.024, Lateral}, {RowOf, 3, 31, 10.024, Lateral},
	}
	if len(l.Stretches) != len(want) {
		t.Fatalf("%d stretches, want %d", len(l.Stretches), len(want))
	}
	for i, w := range want {
		s := &l.Stretches[i]
		if s.Kind != w.kind || s.Index != w.index || len(s.Links) != w.links || !near(s.Length, w.m) || s.Rank() != w.rank {
			t.Errorf("stretch %d is %+v, want %+v", i, *s, w)
		}
	}
}

// joined is the loss coefficient of parts and of tees for gauges with threads of 3/4 in, of
// which 16.5 mm is free, on the velocity in tubing of a bore in m: each a contraction and an
// expansion where that is wider, besides 0.08 for a part, a threaded union, and 0.9 straight
// through a tee (Munson, table 8.2, from memory).
func joined(bore float64, parts, tees int) float64 {
	r := bore / 0.0165
	area := r * r * r * r
	k := (0.08*float64(parts) + 0.9*float64(tees)) * area
	if bore > 0.0165 {
		k += float64(parts+tees) * (pipe.Contraction(1/(r*r)) + pipe.Expansion(0.0165, bore)) * area
	}
	return k
}

// The loss coefficients of each link, from those of the parts on it.
func TestMillraceCoefficients(t *testing.T) {
	l := New(plan.Default())
	in16 := inserted(1)
	for _, tt := range []struct {
		what string
		link int
		want float64
	}{
		{"lead: two elbows, a valve, compression fittings; from the pump, through two tees of gauges, a reducer, a nipple and an adapter with threads of 3/4 in", 2,
			2*1.5 + 0.05 + joined(0.0204, 3, 2)},
		{"header to row 2: straight through row 1's tee", 3, 0.9},
		{"header to row 4", 5, 0.9},
		{"row 1's first link: out of the tee's branch, an insert", 6, 2 + in16},
		{"row 1's second link", 7, 0},
		{"row 4's last link", 129, 0},
	} {
		if got := l.Network.Links[tt.link].K; !near(got, tt.want) {
			t.Errorf("%s: K %g, want %g", tt.what, got, tt.want)
		}
	}
	// Standard barb: 18.91 D^-1.87, D in mm; from memory, as in package pipe.
	want := 18.91 * math.Pow(13.6, -1.87)
	if got := l.Network.Links[7].Extra; math.Abs(got-want) > 1e-9 {
		t.Errorf("barb stands for %g m, want %g", got, want)
	}
	if got := l.Network.Links[36].Extra; got != 0 {
		t.Errorf("the tail has no barb, but %g m", got)
	}
}

// A throat of three quarters has 0.5625 of the area: between the tabulated
// contractions of 0.681 at 0.5 and 0.712 at 0.6 (as in package pipe). It is the
// same for every size that takes barbs or inserts; a compression fitting leaves
// the bore free.
func TestInsert(t *testing.T) {
	cc := 0.681 + 0.625*(0.712-0.681)
	k := (1/cc-1)*(1/cc-1) + (1-0.5625)*(1-0.5625)
	for entry := range catalogue.Tubes {
		want := k / (0.5625 * 0.5625)
		if strings.Contains(string(catalogue.Tubes[entry].Name), "SDR") {
			want = 0
		}
		if got := inserted(entry); math.Abs(got-want) > 1e-12 {
			t.Errorf("insert in %s loses %g, want %g", catalogue.Tubes[entry].Name, got, want)
		}
	}
}

// inserted is the coefficient of a fitting in tubing of the catalogue.
func inserted(entry int) float64 {
	t := TubeOf(entry, 0.02)
	return insert(&t)
}

// Every node but the source is reached by one link, the one before it in
// number, from a node before it; further links only tie the rows' ends into
// rings. Every link belongs to one stretch.
func TestTree(t *testing.T) {
	forRandom(t, func(t *testing.T, seed uint64, l *Layout) {
		n, ties := len(l.Points), 0
		if rows := len(l.Plan.Rows); l.Plan.Header.Layout == plan.Ring {
			ties = rows - 1
		}
		if len(l.Network.Nodes) != n || len(l.Network.Links) != n-1+ties {
			t.Fatalf("%d points, %d nodes, %d links, %d ties", n, len(l.Network.Nodes), len(l.Network.Links), ties)
		}
		for i, k := range l.Network.Links[n-1:] {
			if k.From != l.Ends[i] || k.To != l.Ends[i+1] {
				t.Fatalf("tie %d goes from %d to %d, rows end at %v", i, k.From, k.To, l.Ends)
			}
		}
		for i, k := range l.Network.Links[:n-1] {
			if k.To != i+1 || k.From < 0 || k.From >= k.To {
				t.Fatalf("link %d goes from %d to %d", i, k.From, k.To)
			}
		}
		next := 0
		for i := range l.Stretches {
			s := &l.Stretches[i]
			for j, k := range s.Links {
				if k != next || l.StretchOf(k) != i {
					t.Fatalf("link %d is number %d of stretch %d, and belongs to %d", k, j, i, l.StretchOf(k))
				}
				if j > 0 && l.Network.Links[k].From != l.Network.Links[k-1].To {
					t.Fatalf("stretch %d is broken before link %d", i, k)
				}
				next++
			}
			if got := l.sum(s.Links, length); !near(got, s.Length) {
				t.Fatalf("stretch %d is %g m of links, but %g m", i, got, s.Length)
			}
		}
		if next != len(l.Network.Links) {
			t.Fatalf("stretches have %d of %d links", next, len(l.Network.Links))
		}
		for i, pt := range l.Points {
			if pt.Z != l.Network.Nodes[i].Z {
				t.Fatalf("node %d is at heights %g and %g", i, pt.Z, l.Network.Nodes[i].Z)
			}
		}
	})
}

// The length of the way to each row's end, added up from the plan alone.
func TestPathLengths(t *testing.T) {
	forRandom(t, func(t *testing.T, seed uint64, l *Layout) {
		p := l.Plan
		lead := 0.0
		for _, r := range p.Runs {
			lead += r.Length
		}
		header := 0.0
		for _, r := range p.Rows[1:] {
			header += r.Gap
		}
		along, line := 0.0, lead
		for i := range p.Rows {
			r := &p.Rows[i]
			if i > 0 {
				along += r.Gap
				line += r.Gap
			}
			line += r.Length()
			row, node := r.Length(), l.Ends[i]
			if p.Header.Layout == plan.Ring && len(p.Rows) > 1 {
				for k := range p.Rows { // all rows go on to where the longest ends
					row = max(row, p.Rows[k].Length())
				}
			}
			want := lead + along + row
			switch {
			case p.Header.Layout == plan.OneLine:
				if (node == -1) != (i < len(p.Rows)-1) {
					t.Fatalf("row %d of one line ends in node %d", i+1, node)
				}
				want = line
				if node == -1 {
					continue
				}
			case p.Header.Feed == plan.FeedMiddle:
				want = lead + math.Abs(along-header/2) + row
			}
			path := l.Path(node)
			if got := l.sum(path, length); !(math.Abs(got-want) < together) {
				t.Fatalf("%g m to the end of row %d, want %g", got, i+1, want)
			}
			at := 0
			for _, k := range path {
				if l.Network.Links[k].From != at {
					t.Fatalf("path to node %d is broken at link %d", node, k)
				}
				at = l.Network.Links[k].To
			}
			if at != node {
				t.Fatalf("path to node %d ends at %d", node, at)
			}
		}
		if len(l.Path(0)) != 0 {
			t.Fatal("a path leads from the source to itself")
		}
	})
}
