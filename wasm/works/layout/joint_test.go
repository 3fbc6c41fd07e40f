package layout

import (
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// Every piece of tubing has two ends, and each is on a barb. The pieces are
// counted from the plan: a fitting in a run cuts it in two, a valve at a row
// cuts the row.
func TestEveryEndIsOnABarb(t *testing.T) {
	forRandom(t, func(t *testing.T, seed uint64, l *Layout) {
		p := l.Plan
		ends := map[Tube]int{}
		pieces := func(entry int, bore float64, n int) { ends[TubeOf(entry, bore)] += 2 * n }
		for _, r := range p.Runs {
			pieces(r.Tube, r.Bore, 1+r.Elbows+r.Tees+r.Valves+r.Checks)
		}
		rows := len(p.Rows)
		headed := rows > 1 && p.Header.Layout != plan.OneLine
		for i, r := range p.Rows {
			n := 1
			if headed && len(l.Zones) > 1 {
				n = 2
			}
			if i > 0 && p.Header.Layout == plan.OneLine {
				n = 2
			}
			pieces(r.Tube, r.Bore, n)
		}
		if headed {
			h := rows - 1 + 1 // between the tees, and a stub
			last := p.Runs[len(p.Runs)-1]
			if p.Header.Feed == plan.FeedMiddle {
				h += 2 // cut once more, and a stub at the other end
			} else if TubeOf(last.Tube, last.Bore) != TubeOf(p.Header.Tube, p.Header.Bore) {
				h++
			}
			if p.Header.Layout == plan.Ring {
				h += rows - 1 + 2 // between the far tees, and a stub at each end
			}
			pieces(p.Header.Tube, p.Header.Bore, h)
		}
		barbs := map[Tube]int{}
		for i := range l.Joints {
			j := &l.Joints[i]
			n := 0
			for _, tube := range j.Ends {
				if tube != NoTube {
					barbs[l.Tubes[tube]] += j.N
					n += j.N
				}
			}
			if n != j.Barbs() {
				t.Fatalf("joint %+v has %d barbs, Barbs says %d", *j, n, j.Barbs())
			}
		}
		if len(barbs) != len(ends) || len(barbs) != len(l.Tubes) {
			t.Fatalf("barbs of %d sizes, tubing of %d, %d in use", len(barbs), len(ends), len(l.Tubes))
		}
		for tube, n := range ends {
			if barbs[tube] != n {
				t.Fatalf("%d ends of %+v, %d barbs", n, tube, barbs[tube])
			}
		}
	})
}

// A joint stands on its stretch or where it begins.
func TestJointsStandOnTheirStretch(t *testing.T) {
	forRandom(t, func(t *testing.T, seed uint64, l *Layout) {
		for _, j := range l.Joints {
			s := l.Stretches[j.Stretch]
			from := l.Network.Links[s.Links[0]].From
			to := l.Network.Links[s.Links[len(s.Links)-1]].To
			if s.Kind == Source || s.Kind == Filter || j.Node != from && j.Node != to {
				t.Fatalf("joint %+v is not at an end of %+v", j, s)
			}
		}
	})
}

func TestLeadOfAnotherSizeNeedsAJoiner(t *testing.T) {
	p := plan.Default()
	count := func() (n int) {
		for _, j := range New(p).Joints {
			if j.Kind == HeaderJoiner {
				n++
			}
		}
		return n
	}
	if n := count(); n != 0 {
		t.Errorf("%d joiners between lead and header of one size", n)
	}
	p.Runs[0].Tube = 4
	if n := count(); n != 1 {
		t.Errorf("%d joiners from a lead of 32 mm to a header of 25 mm, want 1", n)
	}
	p.Header.Tube, p.Header.Bore = catalogue.Custom, catalogue.Tubes[4].Bore
	if n := count(); n != 1 {
		t.Errorf("%d joiners to a header measured to the same bore, want 1: its outside may differ", n)
	}
	p.Header.Feed = plan.FeedMiddle
	if n := count(); n != 0 {
		t.Errorf("%d joiners at a tee in the middle, want none: its branch takes the lead", n)
	}
}

func TestStubs(t *testing.T) {
	p := plan.Default()
	p.Runs[0].Tube = 4
	count := func() (n int) {
		l := New(p)
		for i := range l.Joints {
			if s := l.Joints[i].Stub(); s != NoTube {
				if l.Tubes[s].Entry != p.Header.Tube {
					t.Errorf("stub of %+v", l.Tubes[s])
				}
				n++
			}
		}
		return n
	}
	if n := count(); n != 2 {
		t.Errorf("%d stubs, want one at the joiner and one at the header's end", n)
	}
	p.Header.Feed = plan.FeedMiddle
	if n := count(); n != 2 {
		t.Errorf("%d stubs fed in the middle, want one at each end", n)
	}
	p.Header.Layout = plan.OneLine
	if n := count(); n != 0 {
		t.Errorf("%d stubs without a header", n)
	}
}
