package shots

import (
	"reflect"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/year/season"
)

// By hand: three lines of a fortnight each, from day 100 on, and four more days.
// A row is empty from the day on which its plants go, where that lies in the line
// before, until the day on which others come.
func TestWhenARowIsEmpty(t *testing.T) {
	watered := []Setting{{}}
	lines := func(bare [3][]int) *Card {
		c := &Card{Lines: make([]Line, 3)}
		for i := range c.Lines {
			c.Lines[i].From, c.Lines[i].Days, c.Lines[i].Bare = day.Day(100+14*i), 14, bare[i]
			c.Lines[i].Sets[Typical].Zones = watered
		}
		return c
	}
	// stands is a planting in a row from one day to the other.
	stands := func(row int, from, to day.Day) season.Planting {
		g := season.Planting{Rows: []int{row}}
		g.Dates[season.Slab], g.Dates[season.End] = from, to
		return g
	}
	for _, c := range []struct {
		name      string
		bare      [3][]int
		plantings []season.Planting
		want      []Empty
	}{
		{"never", [3][]int{}, []season.Planting{stands(0, 100, 142)}, nil},
		{"cleared in the line before, for good", [3][]int{1: {0}, 2: {0}}, []season.Planting{stands(0, 100, 110)}, []Empty{{Rows: []int{0}, From: 110}}},
		{"on the first day of the line before", [3][]int{1: {0}, 2: {0}}, []season.Planting{stands(0, 90, 100)}, []Empty{{Rows: []int{0}, From: 100}}},
		{"on the day on which the line begins", [3][]int{1: {0}, 2: {0}}, []season.Planting{stands(0, 100, 114)}, []Empty{{Rows: []int{0}, From: 114}}},
		{"another row's day does not count", [3][]int{1: {0}, 2: {0}}, []season.Planting{stands(1, 100, 110)}, []Empty{{Rows: []int{0}, From: 114}}},
		{"nor does one of long before", [3][]int{2: {0}}, []season.Planting{stands(0, 90, 113)}, []Empty{{Rows: []int{0}, From: 128}}},
		{"planted in the next line", [3][]int{1: {0}}, []season.Planting{stands(0, 100, 110), stands(0, 130, 170)}, []Empty{{Rows: []int{0}, From: 110, To: 130}}},
		{"on that line's first day", [3][]int{1: {0}}, []season.Planting{stands(0, 128, 170)}, []Empty{{Rows: []int{0}, From: 114, To: 128}}},
		{"on its last", [3][]int{1: {0}}, []season.Planting{stands(0, 141, 170)}, []Empty{{Rows: []int{0}, From: 114, To: 141}}},
		{"not in it: then from its first day on", [3][]int{1: {0}}, []season.Planting{stands(0, 142, 170)}, []Empty{{Rows: []int{0}, From: 114, To: 128}}},
		{"only the first time is told", [3][]int{0: {0}, 2: {0}}, []season.Planting{stands(0, 116, 120)}, []Empty{{Rows: []int{0}, From: 100, To: 116}}},
		{"rows with the same days stand together", [3][]int{0: {0, 1, 2, 3}, 1: {2}}, []season.Planting{stands(0, 116, 150), stands(1, 117, 150), stands(2, 130, 150), stands(3, 116, 150)},
			[]Empty{{Rows: []int{0, 3}, From: 100, To: 116}, {Rows: []int{1}, From: 100, To: 117}, {Rows: []int{2}, From: 100, To: 130}}},
		{"as do those that end on one day, by both their days", [3][]int{0: {0}, 1: {0, 1}}, []season.Planting{stands(0, 130, 150), stands(1, 100, 110), stands(1, 130, 150)},
			[]Empty{{Rows: []int{0}, From: 100, To: 130}, {Rows: []int{1}, From: 110, To: 130}}},
	} {
		y := &Year{Flows: make([]Flow, 4), Season: &season.Season{Plantings: c.plantings}}
		if got := y.empty(lines(c.bare)); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
	// A line whose plants get nothing waters nothing.
	still := lines([3][]int{{0}, {0}, {0}})
	for i := range still.Lines {
		still.Lines[i].Sets[Typical].Zones = nil
	}
	if got := (&Year{Flows: make([]Flow, 1), Season: &season.Season{}}).empty(still); got != nil {
		t.Errorf("rows that nobody waters: %+v", got)
	}
}

// A bed shares a valve once more than a twentieth beyond what is wanted drains
// from it, and as many beds as there are zones can have one each.
func TestWhatCountsAsSharing(t *testing.T) {
	p := plan.Default()
	lead := Fare{Bed: &Bed{Rows: []int{0}}, Drain: p.Timer.Drain}
	card := func(beds ...Fare) *Card {
		c := &Card{Lines: make([]Line, 1)}
		c.Lines[0].Sets[Typical].Zones = []Setting{{Beds: append([]Fare{lead}, beds...)}}
		return c
	}
	other := func(row int, drain float64) Fare { return Fare{Bed: &Bed{Rows: []int{row}}, Drain: drain} }
	for over, shares := range map[float64]bool{0.049: false, 0.051: true, 0.09: true} {
		if got := card(other(1, p.Timer.Drain+over)).sharing(p); (got != nil) != shares {
			t.Errorf("%g more drains than is wanted: %+v", over, got)
		}
	}
	// The one that drains most, wherever it stands.
	for _, drains := range [][]float64{{0.6, 0.4, 0.5}, {0.4, 0.6, 0.5}, {0.4, 0.5, 0.6}} {
		c := card(other(1, drains[0]), other(2, drains[1]), other(3, drains[2]))
		if s := c.sharing(p); s.Drain != 0.6 || s.Valves != 4 {
			t.Errorf("of %v: %+v", drains, s)
		}
	}
	for _, c := range []struct {
		layout, beds int
		want         Cure
	}{
		{plan.HeaderAndRows, plan.MaxZones, OwnZone}, {plan.HeaderAndRows, plan.MaxZones + 1, GroupAlike}, {plan.OneLine, 2, NeedsHeader},
	} {
		q := *p
		q.Header.Layout = c.layout
		var beds []Fare
		for r := 1; r < c.beds; r++ {
			beds = append(beds, other(r, 0.5))
		}
		if s := card(beds...).sharing(&q); s.Cure != c.want || s.Valves != c.beds {
			t.Errorf("layout %d, %d beds: %+v, want cure %d", c.layout, c.beds, s, c.want)
		}
	}
}
