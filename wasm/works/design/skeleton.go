package design

import (
	"math"
	"slices"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/limit"
	"evenrow/wasm/works/network"
)

// bare returns p with one plant in each row, whose layout has the lead and the
// header of p and takes no time.
func bare(p *plan.Plan) *plan.Plan {
	p = p.Clone()
	for i := range p.Rows {
		p.Rows[i].Plants, p.Rows[i].PerPiece, p.Rows[i].Zone = 1, 1, 1
	}
	return p
}

// A lead is the way from the supply to the feed.
type lead struct {
	sizes  []int
	links  []*network.Drag // devices, filter and runs, in order of flow
	tubes  []bool          // by link: it is a run
	bores  []float64       // m, of the runs
	ends   []float64       // m, height of each run's end
	filter *network.Drag   // as it is when it is due for cleaning
	dirty  int             // its place in links, or -1
	still  float64         // m, head of still water at the supply that its tubing may carry in the sun
	cost   float64

	loss, fouled []float64 // m, by zone of the zoning at hand, clean and due
	lifts        []float64 // m, by zone: the head at the feed that keeps the runs from drawing air
}

// leadOf reads the lead off a layout.
func (s *search) leadOf(l *layout.Layout, sizes []int) lead {
	a := lead{sizes: sizes, dirty: -1, still: math.Inf(1)}
	for i := range l.Stretches {
		st := &l.Stretches[i]
		if st.Kind == layout.Source || st.Rank() != layout.Lead {
			continue
		}
		for _, k := range st.Links {
			link := l.Network.Links[k]
			if st.Kind == layout.Filter && s.fouling > 0 {
				dirty := l.Clean
				dirty.Extra = s.fouling
				a.dirty, a.filter = len(a.links), network.NewDrag(network.Link{Law: dirty}, s.water)
			}
			a.links, a.tubes = append(a.links, network.NewDrag(link, s.water)), append(a.tubes, link.Law == nil)
			if st.Kind == layout.RunOf {
				a.bores = append(a.bores, link.Bore)
				a.ends = append(a.ends, l.Network.Nodes[link.To].Z)
			}
		}
		s.tubing(l, st, &a.cost, &a.still)
	}
	return a
}

// at returns the head lost at a flow, and the head at the feed below which a
// run's end would draw air.
func (a *lead) at(q float64, due bool) (loss, lift float64) {
	lift = math.Inf(-1)
	run := len(a.ends)
	for i := len(a.links) - 1; i >= 0; i-- {
		if a.tubes[i] {
			run--
			lift = max(lift, a.ends[run]-loss)
		}
		d := a.links[i]
		if due && i == a.dirty {
			d = a.filter
		}
		lost, _ := d.Loss(q)
		loss += lost
	}
	return loss, lift
}

// fastest returns the greatest speed in the runs at a flow, in m/s.
func (a *lead) fastest(q float64) float64 {
	v := 0.0
	for _, d := range a.bores {
		v = max(v, pipe.Velocity(q, d))
	}
	return v
}

// tubing adds what a stretch costs, and lowers the head of still water at the
// supply to what its tubing may carry.
func (s *search) tubing(l *layout.Layout, st *layout.Stretch, cost, still *float64) {
	if st.Tube == layout.NoTube {
		return
	}
	entry := l.Tubes[st.Tube].Entry
	*cost += s.p.Prices.Tubes[entry] * st.Length
	rating := limit.RatingOf(entry, s.water).At
	for _, k := range st.Links {
		link := &l.Network.Links[k]
		*still = min(*still, rating+min(l.Network.Nodes[link.From].Z, l.Network.Nodes[link.To].Z))
	}
}

// A header is the header of one size and feed.
type header struct {
	size, feed int
	cost       float64
	still      float64 // m, as of lead
	pieces     []piece
	leadsTo    []int // by row: the piece that ends at its tee, or -1
	leads      []lead
	gushes     [][]gush // by field; none until they are asked for
}

// A piece is the header from one row's tee, or the feed, to the next.
type piece struct {
	drag   *network.Drag
	bore   float64 // m
	before int     // the piece that the water comes through; -1 at the feed
	row    int     // that it leads to
	z      float64 // m, height of its end
}

// headers reads every header and lead off layouts of their own.
func (s *search) headers(sizesOf []int, feeds []int, combinations [][]int) {
	thin := bare(s.p)
	for _, feed := range feeds {
		for _, size := range sizesOf {
			h := header{size: size, feed: feed, still: math.Inf(1)}
			for c, runs := range combinations {
				l := layout.Metered(laid(thin, Kept, size, runs, feed), s.meter)
				a := s.leadOf(l, runs)
				joined := 0.0
				for i := range l.Joints {
					if t := l.Joints[i].Stub(); t != layout.NoTube {
						joined += s.p.Prices.Tubes[l.Tubes[t].Entry] * layout.Stub
					}
				}
				a.cost += joined
				if c == 0 {
					s.read(&h, l)
				}
				h.leads = append(h.leads, a)
			}
			s.all = append(s.all, h)
		}
	}
}

// read reads the header off a layout.
func (s *search) read(h *header, l *layout.Layout) {
	h.leadsTo = slices.Repeat([]int{-1}, len(l.Tees))
	for i := range l.Stretches {
		st := &l.Stretches[i]
		if st.Rank() != layout.Main {
			continue
		}
		s.tubing(l, st, &h.cost, &h.still)
		if st.Kind != layout.HeaderOf {
			continue
		}
		link := l.Network.Links[st.Links[0]]
		// It goes on from the piece before it, or is the first on its side.
		before := len(h.pieces) - 1
		if link.From == l.Feed {
			before = -1
		}
		h.leadsTo[st.Index] = len(h.pieces)
		h.pieces = append(h.pieces, piece{network.NewDrag(link, s.water), link.Bore, before, st.Index, l.Network.Nodes[link.To].Z})
	}
}
