package scene

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/parts"
)

// Where parts stand that have no place of their own in the list.
const (
	nowhere   = iota // or at home
	atSource         // what drives the water
	atFilter         // or, without one, at what drives the water
	atGauges         // there, and at the end of the last row
	alongAll         // along all rows
	byEmitter        // along those with its emitter
	byMedium         // along those with its medium
)

var stands = [parts.Items]int{
	parts.ATube:            nowhere,
	parts.AJoint:           nowhere,
	parts.AConnector:       atSource,
	parts.AClamp:           nowhere,
	parts.AnEmitter:        byEmitter,
	parts.AMicroTubing:     alongAll,
	parts.AMicroConnector:  alongAll,
	parts.AStake:           alongAll,
	parts.AHolePlug:        nowhere,
	parts.ATank:            atSource,
	parts.ATankStand:       atSource,
	parts.ATankOutlet:      atSource,
	parts.AFloatValve:      atSource,
	parts.ABackflow:        atSource,
	parts.ATimerValve:      atSource,
	parts.APump:            atSource,
	parts.AFilter:          atFilter,
	parts.ARegulator:       atFilter,
	parts.AGauge:           atGauges,
	parts.AGaugeTee:        atGauges,
	parts.AClearHose:       nowhere,
	parts.AProtectedOutlet: atSource,
	parts.APlugCover:       atSource,
	parts.APumpTimer:       atSource,
	parts.ACordHook:        atSource,
	parts.AMedium:          byMedium,
	parts.AFilling:         nowhere,
	parts.ASowingPlug:      alongAll,
	parts.ARaisingBlock:    nowhere,
	parts.ADrainTray:       alongAll,
	parts.ADrainCan:        nowhere,
	parts.AnECMeter:        nowhere,
	parts.APHMeter:         nowhere,
	parts.AnECFluid:        nowhere,
	parts.APHFluid:         nowhere,
	parts.APunch:           nowhere,
	parts.ACutter:          nowhere,
	parts.AThreadTape:      nowhere,
	parts.AWasher:          nowhere,
	parts.AClampDriver:     nowhere,
	parts.ATapeMeasure:     nowhere,
	parts.AMarker:          nowhere,
	parts.ATestCups:        nowhere,
	parts.AMeasuringJug:    nowhere,
	parts.AKitchenTimer:    nowhere,
}

// Spots are the places of a line of the list on the plan view: nodes of the layout, each
// once, or stretches; both empty for what stands nowhere in particular.
func (sc *Scene) Spots(line int) (nodes, stretches []int) {
	n, l := &sc.S.Parts[line], sc.S.Layout
	if len(n.Nodes) > 0 || len(n.Stretches) > 0 {
		for _, at := range n.Nodes {
			if !slices.Contains(nodes, at) {
				nodes = append(nodes, at)
			}
		}
		return nodes, n.Stretches
	}
	filter := 0
	if l.FilterLink >= 0 {
		filter = l.Network.Links[l.FilterLink].To
	}
	if l.Plan.Supply.Kind == plan.GravityTank && n.Item != parts.AFilter {
		filter = l.Feed
	}
	where := stands[n.Item]
	switch where {
	case nowhere:
		return nil, nil
	case atSource:
		return []int{0}, nil
	case atFilter:
		return []int{filter}, nil
	case atGauges:
		nodes = []int{filter}
		if end := l.Ends[len(l.Ends)-1]; end >= 0 && n.Count > 1 {
			nodes = append(nodes, end)
		}
		return nodes, nil
	}
	for i := range l.Stretches {
		st := &l.Stretches[i]
		if st.Kind != layout.RowOf {
			continue
		}
		r := &l.Plan.Rows[st.Index]
		if where == alongAll || where == byEmitter && n.Size == strconv.Itoa(r.Emitter) || where == byMedium && n.Size == strconv.Itoa(r.Medium) {
			stretches = append(stretches, i)
		}
	}
	return nil, stretches
}

// Number writes the number of a line of the list, from 1: a button that lights up its
// places on the plan view, where there is a script for it and it has some. id is what
// the plan view leads to; empty for a number that it does not.
func (sc *Scene) Number(line int, id string) {
	nodes, stretches := sc.Spots(line)
	name, n := sc.S.Parts[line].Name, len(nodes)+len(stretches)
	button := n > 0 && sc.Link != nil && !sc.Still
	if button {
		sc.HTML(`<button type="button" data-do="where" aria-pressed="false"`).Attr("data-line", words.N(line+1)).
			Attr("data-said", words.Say("{part}: {n} {n|place|places}", name, words.N(n))).
			Attr("aria-label", words.Say("{number}: show where, {part}", words.N(line+1), name))
	} else {
		sc.HTML(`<span`)
	}
	if id != "" {
		sc.Attr("id", id)
		if !button {
			sc.HTML(` tabindex="-1"`)
		}
	}
	sc.HTML(` class="number">`).Num(line + 1)
	if button {
		sc.HTML(`</button> `)
		return
	}
	sc.HTML(`</span> `)
}
