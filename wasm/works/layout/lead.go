package layout

import (
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/network"
)

// begin starts a stretch; the links added until the next begin are its own.
func (l *Layout) begin(kind StretchKind, index, tube int) {
	l.Stretches = append(l.Stretches, Stretch{Kind: kind, Index: index, Tube: tube, first: len(l.Network.Links)})
}

// join adds a node and the link to it, in the stretch that was begun last.
func (l *Layout) join(from int, at Point, link network.Link) int {
	node := len(l.Points)
	link.From, link.To = from, node
	l.Points = append(l.Points, at)
	l.Network.Nodes = append(l.Network.Nodes, network.Node{Z: at.Z, Emitter: network.None})
	l.Network.Links = append(l.Network.Links, link)
	return node
}

// pipe is join for a length of tubing with the loss coefficients k, and with
// extra metres of tubing for losses given as a length.
func (l *Layout) pipe(from int, at Point, tube int, length, k, extra float64) int {
	t := &l.Tubes[tube]
	l.Stretches[len(l.Stretches)-1].Length += length
	return l.join(from, at, network.Link{
		Length:    length,
		Bore:      t.Bore,
		Roughness: t.Roughness,
		K:         k,
		Extra:     extra,
	})
}

// lead adds the supply and the runs to the header, and returns the place where
// the lead ends.
//
// A run is charged with an insert at each of its ends and one for each fitting
// in it, since all of them are pushed into the tubing and narrow it, unless they are
// compression fittings, besides the coefficients of the fittings. A joiner between two runs of one size is
// counted twice that way, on the safe side. Water that leaves a gravity tank
// also pays for the way in; a pump's curve and a tap's flow have it in them.
func (l *Layout) lead() Point {
	p := l.Plan
	length, rise := 0.0, 0.0
	for i := range p.Runs {
		length += p.Runs[i].Length
		rise += p.Runs[i].Rise
	}
	end := l.entry()
	at := Point{end.X - length, end.Y, 0}
	node := l.supply(at, rise)

	before := NoTube
	for i := range p.Runs {
		r := &p.Runs[i]
		tube := l.tube(r.Tube, r.Bore)
		l.begin(RunOf, i, tube)
		if i == 0 {
			l.joint(Adapter, 1, node, NoTube, tube, NoTube)
		} else {
			l.joint(Joiner, 1, node, before, tube, NoTube)
		}
		in := insert(&l.Tubes[tube])
		k := 2 * in
		if i == 0 {
			k += l.Chains.Loss(l.Tubes[tube].Bore)
		}
		if i == len(p.Runs)-1 {
			k += l.Chains.Header.Loss(l.Tubes[tube].Bore)
		}
		if i == 0 && p.Supply.Kind == plan.GravityTank {
			k += catalogue.Fittings[catalogue.Entrance].K
		}
		for kind := range JointKind(JointKinds) {
			k += float64(Fittings[kind].perRun(r)) * (through(kind) + in)
		}
		if i == len(p.Runs)-1 && l.feedsBetween() {
			k += branch(EntryTee) // all the water turns in the tee where the supply line meets the header
		}
		if header := l.narrower(tube); i == len(p.Runs)-1 && header.Bore > 0 {
			// The short piece of a narrower header up to row 1's tee is pushed
			// onto two barbs of its own, with all the water on its way.
			share := l.Tubes[tube].Bore / header.Bore
			k += 2 * insert(&header) * share * share * share * share
		}
		at.X += r.Length
		at.Z += r.Rise
		node = l.pipe(node, at, tube, r.Length, k, 0)
		for kind := range JointKind(JointKinds) {
			l.joint(kind, Fittings[kind].perRun(r), node, tube, tube, NoTube)
		}
		before = tube
	}
	l.Feed, l.leadEnd = node, before
	// The sum of the lengths, not exactly the way back, is where it ended.
	l.Points[node].X = end.X
	return Point{end.X, end.Y, at.Z}
}

// entry returns where the lead ends, seen from above: at row 1, or in the
// middle between the first row and the last.
func (l *Layout) entry() Point {
	if !l.feedsBetween() {
		return Point{0, l.across[0], 0}
	}
	middle := (l.across[0] + l.across[len(l.across)-1]) / 2
	for _, y := range l.across {
		if y > middle-together && y < middle+together {
			return Point{0, y, 0}
		}
	}
	return Point{0, middle, 0}
}

// together is the distance in m below which the middle of a header and a row's
// tee count as one place.
const together = 1e-3

// narrower returns the tubing of a header that the lead of another size meets
// at its end and that is narrower than it, or a Tube without a bore.
func (l *Layout) narrower(lead int) Tube {
	if !l.headed() || l.feedsBetween() {
		return Tube{}
	}
	header := TubeOf(l.Plan.Header.Tube, l.Plan.Header.Bore)
	if header == l.Tubes[lead] || header.Bore >= l.Tubes[lead].Bore {
		return Tube{}
	}
	return header
}

// headed says whether there is a header: one row alone needs none.
func (l *Layout) headed() bool {
	return l.Plan.Header.Layout != plan.OneLine && len(l.Plan.Rows) > 1
}

// feedsBetween says whether the lead meets the header between its ends.
func (l *Layout) feedsBetween() bool {
	return l.headed() && l.Plan.Header.Feed == plan.FeedMiddle
}
