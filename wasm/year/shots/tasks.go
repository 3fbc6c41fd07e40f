package shots

import (
	"evenrow/wasm/year/season"
)

// Tasks are the changes of the timer, in a plan of so many zones: one on each day
// from which it is set to something else than before. A card that is not
// [Card.Ready] has none.
func (c *Card) Tasks(zones int) (list []season.Task) {
	if !c.Ready() {
		return nil
	}
	for i, s := range c.Spans(0) {
		l, before := &c.Lines[s.First], (*Line)(nil)
		if i > 0 {
			before = &c.Lines[s.First-1]
		}
		t := &season.Timing{}
		for zone := 1; zone <= zones; zone++ {
			if before != nil && before.alike(l, zone) {
				continue
			}
			z := season.ZoneTiming{Dull: l.Sets[Dull].Zone(zone).Told(), Typical: l.Sets[Typical].Zone(zone).Told(), Hot: l.Sets[Hot].Zone(zone).Told()}
			if zones > 1 {
				z.Zone = zone
			}
			if before == nil && len(z.Hot.At) == 0 {
				continue // not yet
			}
			t.Zones = append(t.Zones, z)
		}
		if len(t.Zones) > 0 {
			list = append(list, season.Task{Kind: season.Resetting, Day: s.From, Days: 1, Times: 1, Planting: -1, Number: len(list), Timer: t})
		}
	}
	return list
}

// Told is a setting as a task has it; that of none is off.
func (s *Setting) Told() (t season.Shots) {
	if s == nil {
		return t
	}
	for _, shot := range s.Shots {
		t.At = append(t.At, shot.At)
	}
	t.Many, t.Few, t.Long, t.Short = s.Lengths()
	t.Off = s.Off
	return t
}
