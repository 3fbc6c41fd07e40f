package flush

import (
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
)

func TestVerdicts(t *testing.T) {
	p := plan.Default()
	l := layout.New(p)
	for _, c := range []struct {
		name    string
		ends    []End
		rings   int // layout of the header
		want    Verdict
		told    int
		slowest int
	}{
		{"all fast", []End{{Speed: 0.4, Alone: 0.4}, {Speed: 0.3, Alone: 0.3}}, plan.HeaderAndRows, Clean, 1, 1},
		{"fast alone", []End{{Speed: 0.2, Alone: 0.4}, {Speed: 0.25, Alone: 0.35}}, plan.HeaderAndRows, CleanShut, 0, 0},
		{"one is slow also alone", []End{{Speed: 0.1, Alone: 0.4}, {Speed: 0.2, Alone: 0.25}}, plan.HeaderAndRows, WeakShut, 1, 0},
		{"of one line", []End{{Speed: 0.2, Alone: 0.2}}, plan.OneLine, Weak, 0, 0},
		{"no water comes", []End{{Speed: 0.4, Alone: 0.4}, {Speed: 0, Alone: 0}}, plan.HeaderAndRows, Dry, 1, 1},
		{"rows of a ring", []End{{Place: RowInto, Speed: 0.1, Alone: 0.1}}, plan.Ring, Shared, 0, 0},
	} {
		p.Header.Layout = c.rings
		f := &Flush{Ends: c.ends, Slowest: c.slowest}
		for _, e := range c.ends {
			if e.Speed < Wanted {
				f.Slow++
			}
			if e.Alone < Wanted {
				f.Stuck++
			}
		}
		if f.Judge(l); f.Verdict != c.want || f.Told != c.told {
			t.Errorf("%s: verdict %d of end %d, want %d of %d", c.name, f.Verdict, f.Told, c.want, c.told)
		}
	}
}

// What an end draws beyond the last point of a curve that was typed is a guess.
func TestBeyondTheCurve(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind = plan.PumpPoints
	last := p.Supply.Points[len(p.Supply.Points)-1].Flow
	l := layout.New(p)
	for flow, guess := range map[float64]float64{last: 0, last * 1.01: last} {
		f := &Flush{Ends: []End{{Flow: last / 2}, {Flow: flow}}}
		if f.Judge(l); f.Guess != guess || f.Draws != flow {
			t.Errorf("%g of %g m³/s: %g, draws %g", flow, last, f.Guess, f.Draws)
		}
	}
	p.Supply.Kind = plan.PumpTwo // a straight law has no last point
	f := &Flush{Ends: []End{{Flow: 2 * last}}}
	if f.Judge(layout.New(p)); f.Guess != 0 {
		t.Errorf("%g", f.Guess)
	}
}
