package sheet

import (
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
)

// A Spot is one node on the water's way to an emitter.
type Spot struct {
	Along float64 // 0 to 1 within its step
	Head  float64 // m, total head
	Z     float64 // m, height of the tubing
}

// A Step is a stretch of the water's way as a person would name it: the whole
// header is one, and so is a line that goes up one row and down the next.
type Step struct {
	Kind   layout.StretchKind
	Index  int
	Links  []int
	Length float64 // m, of tubing
	Spots  []Spot  // without the one where it starts
}

// End is the spot where a step ends.
func (s *Step) End() *Spot { return &s.Spots[len(s.Spots)-1] }

// A Trail is the water's way from the source to a plant.
type Trail struct {
	Start Spot
	Steps []Step
}

// End is the spot where the trail ends: that of the plant.
func (t *Trail) End() *Spot { return t.Steps[len(t.Steps)-1].End() }

// Trail returns the water's way to a plant of a zone, an index into
// Layout.Plants; nil where there is none.
func (s *Sheet) Trail(z *ZoneResult, plant int) *Trail {
	l := s.Layout
	if l == nil || z == nil || z.Solution == nil || plant < 0 || plant >= len(l.Plants) {
		return nil
	}
	n := &l.Network
	t := &Trail{Start: Spot{0, z.Solution.Head[0], n.Nodes[0].Z}}
	for _, hop := range l.Way(l.Plants[plant].Node, z.Solution.Flow) {
		kind, index := stepOf(l, hop.Link)
		if last := len(t.Steps) - 1; last < 0 || t.Steps[last].Kind != kind || t.Steps[last].Index != index {
			t.Steps = append(t.Steps, Step{Kind: kind, Index: index})
		}
		step := &t.Steps[len(t.Steps)-1]
		if link := &n.Links[hop.Link]; link.Law == nil {
			step.Length += link.Length
		}
		step.Links = append(step.Links, hop.Link)
		step.Spots = append(step.Spots, Spot{step.Length, z.Solution.Head[hop.To], n.Nodes[hop.To].Z})
	}
	if len(t.Steps) == 0 {
		return nil
	}
	for i := range t.Steps {
		t.Steps[i].share()
	}
	return t
}

// stepOf is the step that a link belongs to.
func stepOf(l *layout.Layout, link int) (layout.StretchKind, int) {
	st := &l.Stretches[l.StretchOf(link)]
	line := l.Plan.Header.Layout == plan.OneLine
	switch {
	case st.Kind == layout.HeaderOf, st.Kind == layout.FarOf:
		return st.Kind, 0
	case line && (st.Kind == layout.Between || st.Kind == layout.RowOf):
		return layout.RowOf, 0
	}
	return st.Kind, st.Index
}

// share turns the spots' metres within the step to shares of it; what has no
// length has them evenly.
func (s *Step) share() {
	for i := range s.Spots {
		if s.Length > 0 {
			s.Spots[i].Along /= s.Length
		} else {
			s.Spots[i].Along = float64(i+1) / float64(len(s.Spots))
		}
	}
}
