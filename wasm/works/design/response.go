package design

import (
	"math"

	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// What a state tells of a row, beside the head at its tee.
const (
	flowOf  = iota // m³/s
	spareOf        // m, least head that an emitter has above its lowest
	belowOf        // m, least head that an emitter has below the top of its range
	leastOf        // least flow of a plant as a share of what its emitters are made for
	sumOf          // sum of these shares over the row
	tells
)

// A state is a row at one head at its end, exactly, with slopes.
type state struct {
	head  float64 // m at the tee
	rises float64 // m at the tee per m at the end
	told  [tells]float64
	slope [tells]float64 // per m at the tee
}

// A response is how a row whose flows follow the heads answers to the head at
// its tee: exact states, with cubics between them that have their values and
// slopes. It begins where the weakest emitter has its lowest.
type response struct {
	states [knots]state // the head rising
	plants float64
}

// knots is how many states are worked out. They stand closest where the head is
// low. Between them a flow that goes with the root of the head is missed by a
// few millionths, and a head by less than a millimetre.
const knots = 32

// respond works a response out, from the row's end against the water.
func (s *search) respond(l *layout.Layout, links []network.Link, drags []*network.Drag) *response {
	r := new(response)
	end := math.Inf(-1)
	for i := range links {
		if n := &l.Network.Nodes[links[i].To]; n.Emitter != network.None {
			r.plants++
			end = max(end, n.Z+l.Network.Emitters[n.Emitter].Lowest)
		}
	}
	// At that head at the end no emitter has less than its lowest: heads only
	// rise against the water. Down from there to where the weakest just has it.
	for range 60 {
		st := s.march(l, links, drags, end)
		spare := st.told[spareOf]
		end -= spare / (st.slope[spareOf] * st.rises)
		if math.Abs(spare) < near/100 {
			break
		}
	}
	end += near / 100 // a hair above: below its lowest an emitter's flow rises in another way
	for k := range r.states {
		share := float64(k) / (knots - 1)
		r.states[k] = s.march(l, links, drags, end+share*share*MostHead)
	}
	return r
}

// march goes along a row against the water, from a head at its end.
func (s *search) march(l *layout.Layout, links []network.Link, drags []*network.Drag, end float64) state {
	s.meter.Spend(len(links))
	st := state{head: end, rises: 1}
	st.told[spareOf], st.told[belowOf], st.told[leastOf] = math.Inf(1), math.Inf(1), math.Inf(1)
	flow, more := 0.0, 0.0 // and its slope per m at the end
	for i := len(links) - 1; i >= 0; i-- {
		n := &l.Network.Nodes[links[i].To]
		if n.Emitter != network.None {
			e := &l.Network.Emitters[n.Emitter]
			h := st.head - n.Z
			q, dq := e.Open(h)
			flow += n.Count * q
			more += n.Count * dq * st.rises
			least := func(what int, v, slope float64) {
				if v < st.told[what] {
					st.told[what], st.slope[what] = v, slope
				}
			}
			least(spareOf, h-e.Lowest, st.rises)
			least(belowOf, e.Highest-h, -st.rises)
			least(leastOf, q/e.Flow, dq*st.rises/e.Flow)
			st.told[sumOf] += q / e.Flow
			st.slope[sumOf] += dq * st.rises / e.Flow
		}
		loss, slope := drags[i].Loss(flow)
		st.head += loss
		st.rises += slope * more
	}
	st.told[flowOf], st.slope[flowOf] = flow, more
	for i := range st.slope {
		st.slope[i] /= st.rises
	}
	return st
}

// place finds the states beside a head.
func (r *response) place(head float64) int {
	lo, hi := 0, knots-1
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; r.states[mid].head <= head {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// at returns what the row tells at a head at its tee, and its slope: straight
// on beyond the first and the last state.
func (r *response) at(what int, head float64) (v, slope float64) {
	k := r.place(head)
	a, b := &r.states[k], &r.states[k+1]
	if head < a.head || head > b.head {
		if head > b.head {
			a = b
		}
		return a.told[what] + a.slope[what]*(head-a.head), a.slope[what]
	}
	h := b.head - a.head
	t := (head - a.head) / h
	u := 1 - t
	y0, y1, d0, d1 := a.told[what], b.told[what], a.slope[what], b.slope[what]
	v = u*u*((1+2*t)*y0+t*h*d0) + t*t*((3-2*t)*y1-u*h*d1)
	slope = 6*u*t*(y1-y0)/h + u*(1-3*t)*d0 + t*(3*t-2)*d1
	return v, slope
}
