package sheet

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
)

// The tunnel's slabs are 0.2 m across, its rows 1.1 m apart, the first 0.85 m from
// the side wall and its slabs at the very end of the place: 0.9 m is free between
// them, 0.75 m beside them, and nothing at the near end. A door in the middle of
// the 5 m meets rows 2 and 3 from 0.9 m on.
func TestGroundThatIsToBeFree(t *testing.T) {
	find := func(place func(*plan.Place), k FindingKind) (Finding, bool) {
		p := plan.Default()
		place(&p.Place)
		s := Answer(p)
		if s.Verdict != Yes {
			t.Errorf("paths and walls take no water, and the verdict is %v", s.Verdict)
		}
		i := slices.IndexFunc(s.Findings, func(f Finding) bool { return f.Kind == k })
		if i < 0 {
			return Finding{}, false
		}
		return s.Findings[i], true
	}
	for _, c := range []struct {
		kind  FindingKind
		place func(*plan.Place)
		count int // 0 where it is not found
		value float64
	}{
		{NarrowPath, func(p *plan.Place) {}, 0, 0},
		{NarrowPath, func(p *plan.Place) { p.Path = 0.9 }, 0, 0},
		{NarrowPath, func(p *plan.Place) { p.Path = 0.91 }, 3, 0.9},
		{NearWall, func(p *plan.Place) {}, 0, 0},
		{NearWall, func(p *plan.Place) { p.Margin = 0.01 }, 4, 0},
		{NearWall, func(p *plan.Place) { p.Length = 9.85 }, 0, 0}, // nobody asked
		{InTheDoor, func(p *plan.Place) { p.Door = 0.9 }, 0, 0},
		{InTheDoor, func(p *plan.Place) { p.Door = 0.91 }, 2, 0},
	} {
		f, found := find(c.place, c.kind)
		if found != (c.count > 0) || f.Count != c.count || math.Abs(f.Value-c.value) > 1e-9 {
			t.Errorf("%v: %+v, want %d of %v", c.kind, f, c.count, c.value)
		}
	}
}
