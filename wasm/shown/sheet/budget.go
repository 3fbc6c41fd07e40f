package sheet

import (
	"math"

	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// budget follows the water from the source to the zone's worst emitter and
// says what its head is spent on. The heads of all lines add up to the head
// that the source gives.
func budget(l *layout.Layout, n *network.Network, z *ZoneResult) []Loss {
	runs := make([]float64, len(l.Plan.Runs))
	var devices, regulator, inFilter, header, row, fittings float64
	node := l.Plants[z.Worst].Node
	for _, hop := range l.Way(node, z.Solution.Flow) {
		link := &n.Links[hop.Link]
		lost := z.Solution.Head[hop.From] - z.Solution.Head[hop.To]
		st := &l.Stretches[l.StretchOf(hop.Link)]
		if link.Law == nil {
			at := atFittings(link, lost, math.Abs(z.Solution.Flow[hop.Link]))
			fittings += at
			lost -= at
		}
		switch st.Kind {
		case layout.RunOf:
			runs[st.Index] += lost
		case layout.Source:
			// A gravity tank's regulator is the only source with a law and no curve.
			if l.Curve == nil {
				regulator += lost
			}
		case layout.Devices:
			devices += lost
		case layout.Filter:
			inFilter += lost
		case layout.HeaderOf, layout.FarOf:
			header += lost
		case layout.RowOf, layout.Between:
			row += lost
		}
	}
	e := &n.Emitters[n.Nodes[node].Emitter]
	lines := make([]Loss, 0, len(runs)+9)
	lines = append(lines, Loss{Kind: Lift, Head: n.Nodes[node].Z})
	for i, h := range runs {
		lines = append(lines, Loss{InRun, i, h})
	}
	reserve := l.Plan.Limits.Reserve
	if devices != 0 {
		lines = append(lines, Loss{Kind: InDevices, Head: devices})
	}
	if regulator != 0 {
		lines = append(lines, Loss{Kind: InRegulator, Head: regulator})
	}
	return append(lines,
		Loss{Kind: InFilter, Head: inFilter},
		Loss{Kind: InHeader, Head: header},
		Loss{InRow, l.Plants[z.Worst].Row, row},
		Loss{Kind: InFittings, Head: fittings},
		Loss{Kind: Needed, Head: e.Lowest},
		Loss{Kind: Reserve, Head: reserve},
		Loss{Kind: Spare, Head: z.Margin - reserve},
	)
}

// Softest returns what nobody knows well of a zone's budget, which is what
// fittings take, and what there is beyond the safety margin, negative where that
// is missing, both in m. The answer hangs on the first where it is more than the
// second, or than what is missing: fittings that take nothing, or twice as much,
// would turn it.
func (z *ZoneResult) Softest() (fittings, spare float64, hangs bool) {
	for i := range z.Budget {
		switch b := &z.Budget[i]; b.Kind {
		case InFittings:
			fittings = b.Head
		case Spare:
			spare = b.Head
		}
	}
	return fittings, spare, fittings > math.Abs(spare)
}

// atFittings returns how much of the head lost in a length of tubing is lost
// at fittings and emitter barbs, not to friction.
func atFittings(link *network.Link, lost, flow float64) float64 {
	local := pipe.LocalHead(link.K, pipe.Velocity(flow, link.Bore))
	if link.Extra > 0 {
		local += (lost - local) * link.Extra / (link.Length + link.Extra)
	}
	return local
}
