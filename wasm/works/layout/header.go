package layout

// header adds the header and its tees. It is level, at the height where the
// lead ends, and runs from row 1's tee to the last row's.
//
// Each of its pieces is charged with one insert, out of one tee and into the
// next, and with the way straight through the row's tee that it comes from.
// Fed at an end, the lead comes straight into row 1's tee. Fed in the middle,
// it comes through the branch of a tee of its own; where a row's tee stands
// there too, the two stand side by side with a cut in the header between
// them, and are one node.
func (l *Layout) header(base Point) {
	p := l.Plan
	tube := l.tube(p.Header.Tube, p.Header.Bore)
	between := l.feedsBetween()
	if between {
		l.joint(EntryTee, 1, l.Feed, tube, tube, l.leadEnd)
	} else if l.leadEnd != tube {
		l.joint(HeaderJoiner, 1, l.Feed, l.leadEnd, tube, NoTube)
	}

	first := 0 // the first row at or beyond the feed
	for l.across[first] < base.Y {
		first++
	}
	up := first
	if l.across[first] == base.Y {
		l.rowTee(first, l.Feed, tube)
		up++
	}
	last := len(l.across) - 1
	node, at := l.Feed, base
	for r := up; r <= last; r++ {
		node, at = l.piece(r, node, at, tube)
	}
	l.joint(HeaderCap, 1, node, tube, NoTube, NoTube)
	if !between {
		return
	}
	node, at = l.Feed, base
	for r := first - 1; r >= 0; r-- {
		node, at = l.piece(r, node, at, tube)
	}
	l.joint(HeaderCap, 1, node, tube, NoTube, NoTube)
}

// piece adds the header from a node to a row's tee, and the tee.
func (l *Layout) piece(row, from int, at Point, tube int) (int, Point) {
	length := l.across[row] - at.Y
	at.Y = l.across[row]
	k := insert(&l.Tubes[tube])
	if from != l.Feed || l.teeAtFeed() {
		k += through(RowTee)
	}
	l.begin(HeaderOf, row, tube)
	node := l.pipe(from, at, tube, max(length, -length), k, 0)
	l.rowTee(row, node, tube)
	return node, at
}

// teeAtFeed says whether a row's tee stands where the lead ends.
func (l *Layout) teeAtFeed() bool {
	for i := range l.Joints {
		if j := &l.Joints[i]; j.Kind == RowTee && j.Node == l.Feed {
			return true
		}
	}
	return false
}

// rowTee notes the tee of a row.
func (l *Layout) rowTee(row, node, header int) {
	r := &l.Plan.Rows[row]
	l.Tees[row] = node
	l.joint(RowTee, 1, node, header, header, l.tube(r.Tube, r.Bore))
}
