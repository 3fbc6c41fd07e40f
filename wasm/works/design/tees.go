package design

import (
	"math"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/trade/pipe"
)

// A tees is a zone of a header and rows whose flows follow the heads: a small
// network of the tees, with a response for each row.
type tees struct {
	s     *search
	h     *header
	f     *field
	in    []bool    // by row: watered
	heads []float64 // m, by piece: at its end
	flows []float64 // m³/s, by piece
	drop  []float64 // m, by piece at whose end the header ends: what is lost up to there, as found last
}

// teesOf returns the zone of rows of a plan.
func (s *search) teesOf(h *header, p *plan.Plan, number int, f *field) *tees {
	n := len(h.pieces)
	all := make([]float64, 3*n)
	t := &tees{s: s, h: h, f: f, in: make([]bool, len(p.Rows)), heads: all[:n], flows: all[n : 2*n], drop: all[2*n:]}
	for i := range p.Rows {
		t.in[i] = p.Rows[i].Zone == number
	}
	return t
}

// lowest is the most that the tee of a row needs; the feed needs more.
func (t *tees) lowest() float64 {
	most := math.Inf(-1)
	for i, in := range t.in {
		if in {
			most = max(most, t.f.rows[i].answer.states[0].head)
		}
	}
	return most
}

// branch finds the heads and flows of the header on one side of the feed, whose
// last piece is last, by Newton's steps on the head at its closed end.
func (t *tees) branch(last int, head float64) {
	pieces := t.h.pieces
	end := head - t.drop[last]
	before := t.s.work
	for range 30 {
		flow, more, rises := 0.0, 0.0, 1.0
		at := end
		for i := last; i >= 0; i = pieces[i].before {
			t.s.work++
			c := &pieces[i]
			t.heads[i] = at
			if t.in[c.row] {
				q, dq := t.f.rows[c.row].answer.at(flowOf, at)
				flow += q
				more += dq * rises
			}
			t.flows[i] = flow
			if flow != 0 {
				loss, slope := c.drag.Loss(flow)
				at += loss
				rises += slope * more
			}
		}
		step := (at - head) / rises
		end -= step
		if math.Abs(step) < near/1000 {
			break
		}
	}
	t.drop[last] = head - end
	t.s.meter.Spend(t.s.work - before)
}

// at works the zone out.
func (t *tees) at(head float64) *zone {
	z := &zone{needs: math.Inf(-1), air: math.Inf(-1), top: math.Inf(1)}
	pieces := t.h.pieces
	for i := range pieces {
		// The last piece of each side is the one that none comes after.
		if i == len(pieces)-1 || pieces[i+1].before != i {
			t.branch(i, head)
		}
	}
	for i := range pieces {
		if pieces[i].before < 0 {
			z.flow += t.flows[i]
		}
		z.air = max(z.air, head-t.heads[i]+pieces[i].z)
		z.speed = max(z.speed, pipe.Velocity(t.flows[i], pieces[i].bore))
	}
	least, sum, n, cv, fewest := math.Inf(1), 0.0, 0.0, 0.0, math.Inf(1)
	for i, in := range t.in {
		if !in {
			continue
		}
		at, answer := head, t.f.rows[i].answer
		if k := t.h.leadsTo[i]; k >= 0 {
			at = t.heads[k]
		} else {
			q, _ := answer.at(flowOf, at)
			z.flow += q
		}
		spare, _ := answer.at(spareOf, at)
		below, _ := answer.at(belowOf, at)
		low, _ := answer.at(leastOf, at)
		all, _ := answer.at(sumOf, at)
		z.needs, z.top = max(z.needs, head-spare), min(z.top, head+below)
		least, sum, n = min(least, low), sum+all, n+answer.plants
		row := &t.s.p.Rows[i]
		cv, fewest = max(cv, t.s.p.Emitters[row.Emitter].CV), min(fewest, float64(row.PerPlant))
	}
	z.even = evenness.Design(cv, fewest, least*n/sum)
	return z
}
