package startup

import (
	"math"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
)

var never, none = math.Inf(1), math.NaN()

func TestRowsThatFill(t *testing.T) {
	for _, c := range []struct {
		rows      []Row
		filled    float64
		last      int
		unfilled  int
		waterless bool
		on        bool
	}{
		{[]Row{{0, 1, 5}, {1, 2, 9}, {2, 3, 9}}, 9, 1, 0, false, false},
		{[]Row{{0, 1, 5}, {1, 2, 9}}, 10.1, 1, 0, false, true},
		{[]Row{{0, 1, 5}, {1, 2, never}, {2, never, never}}, never, 1, 2, false, false},
		{[]Row{{0, never, never}, {1, never, never}}, never, 0, 2, true, false},
	} {
		z := Zone{Rows: c.rows, Filled: c.filled}
		if z.LastRow().Row != c.last || z.NeverFull() != c.unfilled || z.Waterless() != c.waterless || z.FillsOn() != c.on {
			t.Errorf("%v: row %d last, %d never, waterless %t, fills on %t", c.rows, z.LastRow().Row, z.NeverFull(), z.Waterless(), z.FillsOn())
		}
	}
	if (&Zone{}).Waterless() {
		t.Error("where the filling was given up nothing is known of the water")
	}
}

// Heads at which emitters open, 0 for those that always are and infinite for
// those that never do.
func TestOrdersOfOpening(t *testing.T) {
	for _, c := range []struct {
		name        string
		opens       []float64
		held        int
		want        Order
		first, last int
		shut        int
	}{
		{"none", []float64{none, none}, 0, Nobody, -1, -1, 0},
		{"none opens", []float64{never, none, never}, 0, NoneOpens, -1, -1, 2},
		{"none by itself", []float64{never, never}, 1, NoneByItself, -1, -1, 2},
		{"drippers", []float64{0, none, 0, never}, 3, AtOnce, 0, 2, 1},
		{"under a tank", []float64{-2, -1}, 2, Sooner, 0, 1, 0},
		{"together", []float64{3, none, 3}, 2, Together, 0, 2, 0},
		{"together but one", []float64{3, never, 3}, 2, OneByOne, 0, 2, 1},
		{"some drip", []float64{4, 0, 5, 0}, 4, SomeAtOnce, 1, 2, 0},
		{"one by one", []float64{4, 3, 5, 5}, 4, OneByOne, 1, 3, 0},
		{"some under the tank", []float64{-1, 2}, 2, OneByOne, 0, 1, 0},
	} {
		z := Zone{Opens: c.opens, States: States{Held: c.held}}
		o := z.Opening(All)
		if o.Order != c.want || o.First != c.first || o.Last != c.last || o.Shut != c.shut {
			t.Errorf("%s: %+v, want order %d", c.name, o, c.want)
		}
		if c.first < 0 != math.IsNaN(o.Least) || c.first >= 0 && (o.Least != c.opens[c.first] || o.Most != c.opens[c.last]) {
			t.Errorf("%s: from %g to %g m", c.name, o.Least, o.Most)
		}
	}
	z := Zone{Opens: []float64{1, 2, 3, 4}}
	if o := z.Opening(func(i int) bool { return i == 1 || i == 2 }); o.Plants != 2 || o.Least != 2 || o.Most != 3 {
		t.Errorf("of two plants: %+v", o)
	}
	s := Startup{Zones: []Zone{{Opens: []float64{0, never, 4}}, {Opens: []float64{-1, 2, none}}}}
	if lo, hi := s.Heads(); lo != 2 || hi != 4 {
		t.Errorf("from %g to %g m", lo, hi)
	}
}

func TestRoutes(t *testing.T) {
	for turn, want := range map[int]Route{10: ByRows, 9: ByRowsPart, 4: ByRowsPart, 3: ByMorePower, 0: ByMorePower} {
		if got := (&States{Few: 3, Held: 10, InTurn: turn}).Route(); got != want {
			t.Errorf("%d in turn: %d", turn, got)
		}
	}
}

func TestWhyNothingRunsOut(t *testing.T) {
	p := plan.Default() // emitters that compensate
	dry, wet := []Row{{0, never, never}}, []Row{{0, 1, 2}}
	for _, c := range []struct {
		name   string
		z      Zone
		simple bool // emitters that do not compensate
		want   Stay
	}{
		{"something does", Zone{Rows: wet, Drain: Drain{Most: 0}}, false, RunsOut},
		{"no water", Zone{Rows: dry, Drain: Drain{Most: -1}}, false, NoWater},
		{"all shut", Zone{Rows: wet, Drain: Drain{Most: -1}}, false, NoneOpen},
		{"closing heads", Zone{Zone: 1, Rows: wet, Drain: Drain{Most: -1}, States: States{Opened: 1}}, false, HeldBack},
		{"closing heads of another zone", Zone{Zone: 2, Rows: wet, Drain: Drain{Most: -1}, States: States{Opened: 1}}, false, NoneHigher},
		{"level", Zone{Zone: 1, Rows: wet, Drain: Drain{Most: -1}, States: States{Opened: 1}}, true, NoneHigher},
	} {
		q := p.Clone()
		if c.simple {
			q.Emitters[0].Kind, q.Emitters[0].Nominal, q.Emitters[0].Exponent = plan.NonCompensating, 1e5, 0.5
		}
		if got := c.z.stay(layout.New(q)); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
}

func TestAfterAllZones(t *testing.T) {
	s := Startup{Zones: []Zone{{Drain: Drain{Back: 2, Level: 3}}, {Drain: Drain{Back: 1, Level: 4, Siphon: true}}}}
	if siphon, back, level := s.After(); !siphon || back != 2 || level != 7 {
		t.Error(siphon, back, level)
	}
}
