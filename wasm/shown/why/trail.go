package why

import (
	"strconv"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/layout"
)

// A spot is one node on the water's way to an emitter.
type spot struct {
	along float64 // 0 to 1 within its step
	head  float64 // m, total head
	z     float64 // m, height of the tubing
}

// A step is a stretch of the water's way as a person would name it.
type step struct {
	kind   layout.StretchKind
	index  int
	links  []int
	length float64 // m
	spots  []spot  // without the one where it starts
}

// trail returns the water's way from the source to a plant, step by step, and
// the spot where it starts. It is empty when no way is found.
func (sc part) trail(z *sheet.ZoneResult, plant int) (start spot, steps []step) {
	l := sc.S.Layout
	if l == nil || z == nil || z.Solution == nil || plant < 0 || plant >= len(l.Plants) {
		return
	}
	n := &l.Network
	start = spot{0, z.Solution.Head[0], n.Nodes[0].Z}
	for _, hop := range l.Way(l.Plants[plant].Node, z.Solution.Flow) {
		link := &n.Links[hop.Link]
		st := &l.Stretches[l.StretchOf(hop.Link)]
		kind, index := st.Kind, st.Index
		switch {
		case kind == layout.HeaderOf, kind == layout.FarOf:
			index = 0 // the whole header is one step
		case sc.S.Plan.Header.Layout == plan.OneLine && kind == layout.Between:
			kind, index = layout.RowOf, 0
		case sc.S.Plan.Header.Layout == plan.OneLine && kind == layout.RowOf:
			index = 0
		}
		if len(steps) == 0 || steps[len(steps)-1].kind != kind || steps[len(steps)-1].index != index {
			steps = append(steps, step{kind: kind, index: index})
		}
		s := &steps[len(steps)-1]
		if link.Law == nil {
			s.length += link.Length
		}
		s.links = append(s.links, hop.Link)
		s.spots = append(s.spots, spot{s.length, z.Solution.Head[hop.To], n.Nodes[hop.To].Z})
	}
	for i := range steps {
		s := &steps[i]
		for j := range s.spots {
			if s.length > 0 {
				s.spots[j].along /= s.length
			} else {
				s.spots[j].along = float64(j+1) / float64(len(s.spots))
			}
		}
	}
	return start, steps
}

// stepName names a step of a trail.
func (sc part) stepName(s *step) string {
	switch s.kind {
	case layout.Source:
		if sc.Regulated() {
			return sc.SourceName() + ", regulator"
		}
		if sc.S.Layout.Curve == nil {
			return "regulator" // of a tank
		}
		return sc.SourceName()
	case layout.RunOf:
		return sc.runName(s.index)
	case layout.Filter:
		return "filter"
	case layout.HeaderOf:
		return "header"
	case layout.Devices:
		return "devices"
	case layout.FarOf:
		return "far header"
	}
	if sc.S.Plan.Header.Layout == plan.OneLine {
		return "line"
	}
	return "row " + strconv.Itoa(s.index+1)
}

func (sc part) runName(i int) string {
	if len(sc.S.Plan.Runs) < 2 {
		return "supply line"
	}
	return "run " + strconv.Itoa(i+1)
}
