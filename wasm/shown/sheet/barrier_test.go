package sheet

import (
	"testing"

	"evenrow/wasm/works/design"
	"evenrow/wasm/works/limit"
)

// Why none serves, by hand: each reason alone, and before each that comes later.
func TestBarrier(t *testing.T) {
	failing := func(n ...int) (f [limit.Limits]int) {
		copy(f[:], n)
		return f
	}
	speed := limit.Speed.Alone()
	for _, tt := range []struct {
		what string
		d    Designs
		want Barrier
		most limit.Limit // asked of OneOrAnother only
	}{
		{"all have other emitters", Designs{Unequal: 3, Unlike: 3}, OtherEmitters, 0},
		{"so has one of three", Designs{Result: design.Result{Counted: 9}, Unequal: 3, Unlike: 1}, AllUnequal, 0},
		{"all have, and the search was cut", Designs{Result: design.Result{Cut: true}, Unequal: 1, Unlike: 1}, OtherEmitters, 0},
		{"all have, and each is too fast", Designs{Result: design.Result{Forbids: speed}, Unequal: 1, Unlike: 1}, OtherEmitters, 0},
		{"cut", Designs{Result: design.Result{Cut: true, Counted: 5}}, CutShort, 0},
		{"cut before the first", Designs{Result: design.Result{Cut: true}}, CutShort, 0},
		{"cut, and each so far too fast", Designs{Result: design.Result{Cut: true, Counted: 5, Forbids: speed}}, CutShort, 0},
		{"cut, and each so far no Yes", Designs{Result: design.Result{Cut: true, Counted: 5}, Unequal: 5, Unlike: 4}, CutShort, 0},
		{"each too fast", Designs{Result: design.Result{Counted: 5, Forbids: speed, Failures: failing(4, 5)}}, Forbidden, 0},
		{"a row outside the place, nothing looked at", Designs{Result: design.Result{Forbids: limit.Place.Alone()}}, Forbidden, 0},
		{"each too fast, and one no Yes", Designs{Result: design.Result{Counted: 5, Forbids: speed}, Unequal: 1}, Forbidden, 0},
		{"nothing to look at", Designs{}, NoneCompared, 0},
		{"nothing to look at, and none a Yes", Designs{Unequal: 1}, NoneCompared, 0},
		{"none a Yes", Designs{Result: design.Result{Counted: 5, Failures: failing(1, 2)}, Unequal: 2}, AllUnequal, 0},
		{"most are too fast", Designs{Result: design.Result{Counted: 9, Failures: failing(2, 5, 4)}}, OneOrAnother, limit.Speed},
		{"as many out of reach as too fast", Designs{Result: design.Result{Counted: 9, Failures: failing(5, 5, 4)}}, OneOrAnother, limit.Reach},
		{"as many too fast as uneven", Designs{Result: design.Result{Counted: 9, Failures: failing(4, 5, 5)}}, OneOrAnother, limit.Speed},
		{"most at the end of the list", Designs{Result: design.Result{Counted: 9, Failures: failing(1, 2, 3, 4, 5, 6, 7)}}, OneOrAnother, limit.Place},
	} {
		why, most := tt.d.Barrier()
		if why != tt.want || why == OneOrAnother && most != tt.most {
			t.Errorf("%s: %d and %d, want %d and %d", tt.what, why, most, tt.want, tt.most)
		}
	}
	if limit.Limits != 7 {
		t.Error("the last limit is another: see the last row")
	}
}

// What a design takes of the supply, by hand. A head below 0 is water that falls:
// it needs no pump, and where the supply carries it that is not told.
func TestWhatADesignTakesOfTheSupply(t *testing.T) {
	for _, tt := range []struct {
		present           bool
		regulator, head   float64
		carried, byItself bool
	}{
		{true, 0, 8, true, false},
		{true, 0, -2, true, false},
		{false, 1e5, 8, true, false},
		{false, 1e5, -2, true, false},
		{true, 1e5, -2, true, false},
		{false, 0, 8, false, false},
		{false, 0, 0.01, false, false},
		{false, 0, -0.01, false, true},
		{false, 0, -2, false, true},
	} {
		b := Best{Design: design.Design{Present: tt.present, Head: tt.head}, Regulator: tt.regulator}
		if b.Carried() != tt.carried || b.ByItself() != tt.byItself {
			t.Errorf("%+v: carried %t, by itself %t", tt, b.Carried(), b.ByItself())
		}
	}
}

// Something cheaper may have been missed where either search ended early.
func TestAllCompared(t *testing.T) {
	for _, tt := range []struct{ cut, untried, want bool }{{false, false, true}, {true, false, false}, {false, true, false}, {true, true, false}} {
		s := &Sheet{Untried: tt.untried, Designs: &Designs{Result: design.Result{Cut: tt.cut}}}
		if got := s.AllCompared(); got != tt.want {
			t.Errorf("designs cut %t, fixes %t: all compared: %t", tt.cut, tt.untried, got)
		}
	}
}
