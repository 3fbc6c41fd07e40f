package layout

import "evenrow/wasm/grower/plan"

// rows adds the rows of a header. A row's first link comes out of the branch
// of its tee, over a barb, and past its valve when there are several zones; it
// climbs or falls to the height of the row's start.
//
// A header feeds all rows, so several zones need a valve at each row; those of
// one zone are opened together.
func (l *Layout) rows(base Point) {
	valved := len(l.Zones) > 1
	reach, end := 0.0, 0.0
	if l.ringed() {
		reach = l.reach()
	}
	for i := range l.Plan.Rows {
		r := &l.Plan.Rows[i]
		tube := l.tube(r.Tube, r.Bore)
		in := insert(&l.Tubes[tube])
		k := branch(RowTee) + in
		if l.ringed() {
			end = branch(FarTee) + in
		}
		l.begin(RowOf, i, tube)
		if valved {
			k += through(ZoneValve) + in
			l.joint(ZoneValve, 1, l.Tees[i], tube, tube, NoTube)
		}
		start := Point{0, l.across[i], base.Z + r.Height}
		l.Ends[i] = l.row(i, l.Tees[i], start, 1, k, max(reach, r.Length()), end)
		if !l.ringed() {
			l.joint(RowCap, 1, l.Ends[i], tube, NoTube, NoTube)
		}
	}
}

// line adds the rows of one line, which runs up one row and down the next, or
// one row alone. The lead comes straight into row 1.
//
// Each further row begins where the row before ends, seen along the rows, and
// runs the other way. The piece between two rows has the tubing of the row it
// leads to, the length of the gap and an elbow at each end. The heights of the
// rows' starts are as the plan gives them: whatever difference is left between
// the end of one row and the start of the next, the piece between climbs or
// falls, without growing longer.
func (l *Layout) line(base Point) {
	rows := l.Plan.Rows
	node, at, dir := l.Feed, base, 1.0
	before := NoTube
	for i := range rows {
		r := &rows[i]
		tube := l.tube(r.Tube, r.Bore)
		in := insert(&l.Tubes[tube])
		k := 0.0
		start := Point{at.X, l.across[i], base.Z + r.Height}
		if i == 0 {
			l.joint(Joiner, 1, node, l.leadEnd, tube, NoTube)
			k = in
		} else {
			l.begin(Between, i, tube)
			l.joint(TurnElbow, 1, node, before, tube, NoTube)
			node = l.pipe(node, start, tube, r.Gap, 2*(through(TurnElbow)+in), 0)
			l.joint(TurnElbow, 1, node, tube, tube, NoTube)
		}
		l.Tees[i], l.Ends[i] = node, -1
		l.begin(RowOf, i, tube)
		node = l.row(i, node, start, dir, k, r.Length(), 0)
		at = l.Points[node]
		dir, before = -dir, tube
	}
	last := len(rows) - 1
	l.Ends[last] = node
	l.joint(RowCap, 1, node, before, NoTube, NoTube)
}

// row adds a row's plants and its end, from a node to the place where the row
// starts and on in the direction dir along X up to length whole, with the loss
// coefficients k on its first link and end on its last. It returns the node of
// its end.
//
// A plant is one node with all its emitters. Each emitter's barb narrows the
// tubing and is charged to the link that ends at the plant.
func (l *Layout) row(i, from int, start Point, dir, k, whole, end float64) int {
	r := &l.Plan.Rows[i]
	tube := l.tube(r.Tube, r.Bore)
	extra := float64(r.PerPlant) * barb(&l.Plan.Emitters[r.Emitter], l.Tubes[tube].Bore)
	length := r.First
	node := from
	for n := range r.Plants {
		along := r.First + float64(n)*r.Spacing
		at := Point{start.X + dir*along, start.Y, start.Z + along*r.Slope}
		node = l.pipe(node, at, tube, length, k, extra)
		to := &l.Network.Nodes[node]
		to.Emitter, to.Count = r.Emitter, float64(r.PerPlant)
		l.Plants = append(l.Plants, Plant{i, n + 1, node, at})
		length, k = r.Spacing, 0
	}
	stop := Point{start.X + dir*whole, start.Y, start.Z + whole*r.Slope}
	return l.pipe(node, stop, tube, whole-r.Length()+plan.Tail, k+end, 0)
}
