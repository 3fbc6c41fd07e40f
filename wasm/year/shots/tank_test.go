package shots

import "testing"

// Litres of a day, typical, hot and record-hot: 100, 150 and 180.
func TestHowOftenATankIsFilled(t *testing.T) {
	for tank, want := range map[float64]Refill{
		0: {NoTank, 0, 0, false, 180}, 99: {MoreThanOnce, 0, 0, false, 180}, 100: {TwiceWhenHot, 0, 0, false, 180}, 149: {TwiceWhenHot, 0, 0, false, 180},
		150: {EveryDays, 1, 1, false, 180}, 180: {EveryDays, 1, 1, true, 180}, 1000: {EveryDays, 10, 6, true, 180}, 1499: {EveryDays, 14, 9, true, 180}, 1500: {Seldom, 0, 0, true, 180},
	} {
		if got := RefillOf(tank, [Skies]float64{Typical: 100, Hot: 150, Record: 180}); got != want {
			t.Errorf("%g L: %+v, want %+v", tank, got, want)
		}
	}
	if got := RefillOf(100, [Skies]float64{}); got.Filling != NoTank {
		t.Errorf("nothing is taken: %+v", got)
	}
}

func TestThirstiestLine(t *testing.T) {
	line := func(given float64) Line {
		l := Line{}
		l.Sets[Hot].Zones = []Setting{{Beds: []Fare{{Bed: &Bed{Plants: 10}, Given: given, Drain: 0.5}}}}
		return l
	}
	c := &Card{Peak: 1, Lines: []Line{line(3), line(3), line(4), line(4)}}
	if got := c.Thirstiest(); got != &c.Lines[2] {
		t.Errorf("%+v", got)
	}
	if given, drained := c.Lines[2].Given(); given[Hot] != 40 || drained[Hot] != 20 || given[Dull] != 0 {
		t.Error(given, drained)
	}
	c.Lines[2], c.Lines[3] = line(3), line(2)
	if got := c.Thirstiest(); got != &c.Lines[1] {
		t.Error("of equal lines it is that of greatest need")
	}
}
