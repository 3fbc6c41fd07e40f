package layout

import (
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/network"
)

// ringed says whether the far ends of the rows are tied by a second header.
func (l *Layout) ringed() bool { return l.Plan.Header.Layout == plan.Ring && l.headed() }

// reach returns the distance in m from the header to the far header of a ring,
// where the longest row ends. The tubing of every row goes on to there.
func (l *Layout) reach() float64 {
	far := 0.0
	for i := range l.Plan.Rows {
		far = max(far, l.Plan.Rows[i].Length())
	}
	return far
}

// far adds the far header of a ring: its pieces tie the rows' ends, which are
// nodes already, so it closes rings. It lies at the heights of the rows' ends
// and is of the header's tubing. A piece is charged with one insert and the way
// straight through one tee, as a piece of the header is.
func (l *Layout) far() {
	header := l.tube(l.Plan.Header.Tube, l.Plan.Header.Bore)
	last := len(l.across) - 1
	for i := range last {
		l.begin(FarOf, i+1, header)
		if i == 0 {
			l.joint(HeaderCap, 1, l.Ends[0], header, NoTube, NoTube)
		}
		l.farTee(i, header)
		t := &l.Tubes[header]
		length := l.across[i+1] - l.across[i]
		l.Stretches[len(l.Stretches)-1].Length += length
		l.Network.Links = append(l.Network.Links, network.Link{
			From: l.Ends[i], To: l.Ends[i+1],
			Length: length, Bore: t.Bore, Roughness: t.Roughness,
			K: insert(t) + through(FarTee),
		})
	}
	l.farTee(last, header)
	l.joint(HeaderCap, 1, l.Ends[last], header, NoTube, NoTube)
}

// farTee notes the tee of a row's end on the far header.
func (l *Layout) farTee(row, header int) {
	r := &l.Plan.Rows[row]
	l.joint(FarTee, 1, l.Ends[row], header, header, l.tube(r.Tube, r.Bore))
}

// A Hop is one link of the water's way, and the nodes that it leads from and to
// on that way: a ring's links may be passed against their direction.
type Hop struct{ Link, From, To int }

// Way returns the links that the water passes from the source to a node, in
// order, given the flow of each link: from a node back through the link that
// brings it most. Without a ring that is [Layout.Path], which is also what is
// left where the water stands still, or seems to run in circles: between tees
// that stand together its flow is lost in the rounding of their heads. There the
// sign of a flow says nothing of where the way leads.
func (l *Layout) Way(node int, flow []float64) []Hop {
	bring := make([]int, len(l.Points)) // by node: the link that brings most
	for i := range bring {
		bring[i] = i - 1
	}
	total := 0.0
	for _, q := range flow {
		total = max(total, q, -q)
	}
	// Less than this share, or a drop in a year, is rounding and flows nowhere.
	still := max(1e-9*total, 1e-15)
	most := make([]float64, len(l.Points))
	for i := range most {
		most[i] = still
	}
	for k, q := range flow {
		to := l.Network.Links[k].To
		if q < 0 {
			to, q = l.Network.Links[k].From, -q
		}
		if q > most[to] {
			most[to], bring[to] = q, k
		}
	}
	var way []Hop
	for at := node; at != 0; {
		k := bring[at]
		if len(way) == len(bring) {
			way = way[:0]
			for _, k := range l.Path(node) {
				way = append(way, Hop{k, l.Network.Links[k].From, l.Network.Links[k].To})
			}
			return way
		}
		from := l.Network.Links[k].From + l.Network.Links[k].To - at
		way = append(way, Hop{k, from, at})
		at = from
	}
	for i, j := 0, len(way)-1; i < j; i, j = i+1, j-1 {
		way[i], way[j] = way[j], way[i]
	}
	return way
}
