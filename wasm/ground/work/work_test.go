package work

import (
	"math"
	"testing"
)

func TestAMeterLetsThroughWhatItHasAndNoMore(t *testing.T) {
	for units := range 20 {
		m, done := New(units, nil), 0
		whole := m.Within(func() {
			for range 10 {
				m.Spend(1)
				done++
			}
		})
		if want := min(units, 10); done != want || whole != (want == 10) {
			t.Errorf("of %d units %d were done, to the end: %v", units, done, whole)
		}
		if whole && m.Left() != units-10 {
			t.Errorf("%d left of %d", m.Left(), units)
		}
	}
	// What is spent stays so.
	m := New(1, nil)
	m.Within(func() { m.Spend(2) })
	if m.Within(func() { m.Spend(0) }) {
		t.Error("a meter that is spent lets more through")
	}
}

func TestNoMeterLetsEverythingThrough(t *testing.T) {
	var m *Meter
	done := false
	if !m.Within(func() { m.Spend(math.MaxInt); m.Spend(math.MaxInt); done = true }) || !done || m.Gone() {
		t.Error("no meter, and not everything was done")
	}
}

// Whoever leaves is noticed within as many units as lie between two questions,
// and is not asked after every unit.
func TestAMeterEndsWhenNobodyWaits(t *testing.T) {
	asked, leaves := 0, 5
	m, done := New(math.MaxInt, func() bool { asked++; return asked > leaves }), 0
	if m.Within(func() {
		for {
			m.Spend(10)
			done += 10
		}
	}) || !m.Gone() {
		t.Error("it went on")
	}
	if most := (leaves + 1) * often; done > most || done < most/2 || asked != leaves+1 {
		t.Errorf("%d units done and %d questions", done, asked)
	}
	if m.Within(func() { m.Spend(1) }) || asked != leaves+1 {
		t.Error("who has left is asked again")
	}
}

// A fault is none of the meter's business, nor is the end of another meter.
func TestAMeterPassesFaultsOn(t *testing.T) {
	m, other := New(10, nil), New(0, nil)
	for _, fault := range []any{"fault", other} {
		func() {
			defer func() {
				if got := recover(); got != fault {
					t.Errorf("%v became %v", fault, got)
				}
			}()
			m.Within(func() { panic(fault) })
			t.Errorf("%v was swallowed", fault)
		}()
	}
	if !other.Within(func() { m.Within(func() {}) }) || other.Within(func() { m.Within(func() { other.Spend(1) }) }) {
		t.Error("one within the other")
	}
}
