// Package chance draws emitters that differ by manufacture, or are blocked, and
// says how evenly a system waters then.
package chance

import (
	"math"
	"slices"

	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// Enough is the share of the mean below which a plant is short of water.
const Enough = 0.9

// Draws is how often a zone is drawn, unless it has so many emitters that it
// takes too long: then [Zone.Draws] says how often.
const Draws = 10_000

// work is how many emitters are drawn in all, because a reader waits: a tenth
// to half a second.
const work = 4_000_000

// solves is how many draws are solved in full beside, and nodes how many nodes
// over all of them at most, but for the first.
const (
	solves = 32
	nodes  = 20_000
)

// Bins is how many ranges of water for a plant are counted, each Width of the
// mean; the last takes all that is more.
const (
	Bins  = 80
	Width = 0.025
)

// A Zone is what the draws of one zone say. Water is by plant, as a share of
// what its emitters are made to give, over the mean of that in its draw.
type Zone struct {
	Number   int
	Plants   int
	Emitters int
	Draws    int
	Short    float64 // share of plants, over all draws, with less than Enough of the mean
	None     float64 // share of draws in which no plant is short
	CV       float64 // coefficient of variation of all plants' water
	EU       float64 // mean of the lowest quarter over the mean; mean of all draws
	CU       float64 // Christiansen's coefficient; mean of all draws
	Most     float64 // greatest CV of manufacture in the zone
	Fewest   float64 // fewest emitters at a plant
	Least    float64 // least water of a plant if all emitters were alike, over the mean
	Design   float64 // EU by Karmeli and Keller's formula
	Normal   float64 // CU of a normal distribution with the variation of manufacture of a plant
	Weakest  int     // index into Layout.Plants: the one that is short most often
	Often    float64 // in which share of draws
	Counts   [Bins]int
	Solved   int     // draws that were solved in full beside
	Off      float64 // greatest difference of a plant's water from that, as a share of the mean
}

// Of draws the zones of a layout, of which flows are the solutions in the order
// of l.Zones. blocked is the chance of an emitter to be blocked, from 0 to 1.
// The result is nil where no water flows, and where the flows do not settle.
//
// The flow of an emitter varies as a normal distribution with its CV, cut off
// at no flow. Heads answer to each draw to first order; whether emitters are
// open is left as it is.
func Of(l *layout.Layout, flows []*network.Solution, blocked float64) []Zone {
	if len(flows) < len(l.Zones) {
		return nil
	}
	var zones []Zone
	for i, number := range l.Zones {
		if flows[i].Total <= 0 {
			continue
		}
		c, ok := newCup(l, number, flows[i].Open)
		if !ok {
			return nil
		}
		// The tubing of other zones takes its share of the work.
		c.draws = max(50, min(Draws, work/len(l.Zones)/max(1, c.Emitters, len(c.net.Nodes)/4)))
		if !c.draw(blocked) {
			return nil
		}
		zones = append(zones, c.Zone)
	}
	return zones
}

// A source of water for one plant.
type outlet struct {
	plant  int // index into Layout.Plants
	node   int
	count  int
	cv     float64
	flow   float64 // m³/s at rest
	slope  float64 // m³/s per m
	made   float64 // one over what its emitters are made to give together
	factor float64 // of this draw: what its emitters give at the head of rest, over flow
}

// A cup holds one zone's draws.
type cup struct {
	Zone
	draws    int
	net      *network.Network
	response *network.Response
	check    *network.Solver
	open     []bool
	outlets  []outlet
	water    []float64 // of one draw, by outlet
	sorted   []float64
	short    []int // by outlet: in how many draws
}

func newCup(l *layout.Layout, number int, open []bool) (*cup, bool) {
	c := &cup{Zone: Zone{Number: number}, net: l.Zone(number), open: open}
	s, err := network.NewSolver(c.net)
	if err != nil {
		return nil, false
	}
	var rest *network.Solution
	if c.response, rest, err = s.Response(open); err != nil {
		return nil, false
	}
	cv, fewest := 0.0, math.Inf(1)
	var flows []float64
	for i := range l.Plants {
		at := l.Plants[i].Node
		node := &c.net.Nodes[at]
		if node.Emitter == network.None {
			continue
		}
		e := &c.net.Emitters[node.Emitter]
		o := outlet{plant: i, node: at, count: int(node.Count), cv: e.CV, flow: rest.Out[at], slope: s.Slope(at), made: 1 / (e.Flow * node.Count)}
		c.outlets = append(c.outlets, o)
		c.Emitters += o.count
		flows = append(flows, o.flow*o.made)
		cv, fewest = max(cv, e.CV), min(fewest, node.Count)
	}
	n := len(c.outlets)
	if n == 0 {
		return nil, false
	}
	c.Plants = n
	c.water, c.sorted, c.short = make([]float64, n), make([]float64, n), make([]int, n)
	c.Most, c.Fewest = cv, fewest
	if mean := evenness.Mean(flows); mean > 0 {
		c.Least = slices.Min(flows) / mean
	}
	c.Design = evenness.Design(cv, fewest, c.Least)
	c.Normal = evenness.NormalCU(cv / math.Sqrt(fewest))
	// The network of the response must not change; its solver has a copy.
	full := *c.net
	full.Nodes = append([]network.Node(nil), full.Nodes...)
	c.net = &full
	c.check, err = network.NewSolver(c.net)
	return c, err == nil
}

// draw draws the zone, and says whether the flows settled.
func (c *cup) draw(blocked float64) bool {
	r := random(Seed)
	limit := threshold(blocked)
	full := max(1, min(solves, nodes/len(c.net.Nodes), c.draws))
	sum, squares := 0.0, 0.0
	for d := range c.draws {
		c.net.Meter.Spend(len(c.net.Nodes) + c.Emitters)
		c.one(&r, limit)
		if d < full && !c.compare() {
			return false
		}
		s, q := c.count()
		sum += s
		squares += q
	}
	n := float64(c.draws)
	all := n * float64(c.Plants)
	c.Draws = c.draws
	c.EU /= n
	c.CU /= n
	c.None /= n
	c.Short /= all
	if mean := sum / all; mean > 0 {
		c.CV = math.Sqrt(max(0, squares/all-mean*mean)) / mean
	}
	for i, short := range c.short {
		if often := float64(short) / n; often > c.Often || i == 0 {
			c.Often, c.Weakest = often, c.outlets[i].plant
		}
	}
	return true
}

// one draws every emitter once, and reckons each plant's water.
func (c *cup) one(r *random, limit uint64) {
	draw := c.response.Draw()
	clear(draw)
	for i := range c.outlets {
		o := &c.outlets[i]
		sum := 0.0
		for range o.count {
			if limit > 0 && r.next() < limit {
				continue
			}
			if f := 1 + o.cv*r.normal(); f > 0 {
				sum += f
			}
		}
		o.factor = sum / float64(o.count)
		draw[o.node] = o.flow * (1 - o.factor)
	}
	rise := c.response.Heads()
	for i := range c.outlets {
		o := &c.outlets[i]
		c.water[i] = max(0, o.factor*(o.flow+o.slope*rise[o.node])) * o.made
	}
}

// compare solves the present draw in full, and says whether the flows settled.
func (c *cup) compare() bool {
	for i := range c.outlets {
		o := &c.outlets[i]
		c.net.Nodes[o.node].Count = o.factor * float64(o.count)
	}
	sol, _, err := c.check.Hold(c.open)
	if err != nil {
		return false
	}
	c.Solved++
	mean := 0.0
	for i := range c.outlets {
		o := &c.outlets[i]
		mean += sol.Out[o.node] * o.made
	}
	mean /= float64(c.Plants)
	if mean <= 0 {
		return true
	}
	for i := range c.outlets {
		o := &c.outlets[i]
		c.Off = max(c.Off, math.Abs(sol.Out[o.node]*o.made-c.water[i])/mean)
	}
	return true
}

// count adds the present draw to the zone, and returns the sums of the plants'
// water, over its mean, and of its squares.
func (c *cup) count() (sum, squares float64) {
	mean := evenness.Mean(c.water)
	if mean <= 0 {
		c.Counts[0] += c.Plants
		c.Short += float64(c.Plants)
		for i := range c.short {
			c.short[i]++
		}
		return 0, 0
	}
	over, off := 1/mean, 0.0
	fine := 1.0
	for i, w := range c.water {
		w *= over
		c.sorted[i] = w
		sum += w
		squares += w * w
		off += math.Abs(w - 1)
		if w < Enough {
			c.Short++
			c.short[i]++
			fine = 0
		}
		c.Counts[min(Bins-1, int(w*(1/Width)))]++
	}
	c.None += fine
	c.CU += 1 - off/float64(c.Plants)
	c.EU += low(c.sorted)
	return sum, squares
}

// low returns the mean of the lowest quarter, as [evenness.Low] does, but
// faster: it puts the values in order only as far as it must.
func low(v []float64) float64 {
	quarter := float64(len(v)) / 4
	whole := int(quarter)
	part(v, whole)
	sum := (quarter - float64(whole)) * v[whole]
	for _, x := range v[:whole] {
		sum += x
	}
	return sum / quarter
}

// part moves the k least values before place k, and the next to it (Hoare's
// selection).
func part(v []float64, k int) {
	lo, hi := 0, len(v)-1
	for lo < hi {
		pivot := v[(lo+hi)/2]
		i, j := lo, hi
		for i <= j {
			for v[i] < pivot {
				i++
			}
			for v[j] > pivot {
				j--
			}
			if i <= j {
				v[i], v[j] = v[j], v[i]
				i++
				j--
			}
		}
		if k <= j {
			hi = j
		} else if k >= i {
			lo = i
		} else {
			return
		}
	}
}
