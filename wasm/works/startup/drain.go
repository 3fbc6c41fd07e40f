package startup

import (
	"math"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// A Drain is what runs out of one zone's tubing after a shot.
type Drain struct {
	Volume   float64   // m³, out of the emitters
	Back     float64   // m³, through the pump into the tank
	Level    float64   // m³, that lies no higher than emitters that let it out, and stays unless they hang below the tubing
	Extra    []float64 // m³, by index into Layout.Plants: what its emitters let out of Volume
	Most     int       // plant that gets most of it; -1 where nothing runs out
	Stay     Stay      // why nothing does
	Outlets  int       // plants that let out any
	Refill   float64   // s, to put it all back: its share of the time to fill all, or where they never fill its time at the zone's flow; infinite where nothing flows
	Prevents float64   // m, a closing head at which nothing would run out of emitters; 0 where nothing does
	Siphon   bool      // the tank's water stands above emitters that keep open, and runs on through the pump
}

// returns says whether water runs back through the supply when it stops: into
// a tank below a pump without a check valve behind it. A tap is shut, and so is
// the valve of a tank above the rows.
func returns(p *plan.Plan) bool {
	for i := range p.Runs {
		if p.Runs[i].Checks > 0 {
			return false
		}
	}
	return p.Supply.Kind != plan.GravityTank && p.Supply.Kind != plan.Mains
}

// A basin is tubing whose water stands together once a shot is over, with the
// ways by which it may leave.
type basin struct {
	l     *layout.Layout
	n     *network.Network
	cut   bool      // each row is shut off from the header
	keeps []float64 // by node: the level in m to which its emitters let water out, infinite where they do not
	comes reach     // before
}

// drainOf works out what runs out after the shot of a zone, given the state in
// which it ends.
//
// Water runs out of an open emitter until it stands no higher above it than the
// closing head, over every height between; air comes in wherever water leaves.
// The volume of a height is shared alike by the emitters below it: they run for
// about as long. Tubing is reckoned without thickness: a level row
// leaves what lies above an outlet, and nothing at an outlet's own level.
func drainOf(l *layout.Layout, zone int, sol *network.Solution) Drain {
	b := basin{l: l, n: l.Zone(zone), cut: len(l.Zones) > 1, keeps: make([]float64, len(l.Points))}
	b.comes = reachOf(l, b.n, sol)
	d := Drain{Extra: make([]float64, len(l.Plants)), Most: -1, Refill: math.Inf(1)}
	low := math.Inf(1)
	for i := range b.keeps {
		b.keeps[i] = math.Inf(1)
		node := &b.n.Nodes[i]
		if node.Emitter == network.None || !b.comes.gets(b.n, sol, i) {
			continue
		}
		b.keeps[i] = node.Z
		if e := &b.n.Emitters[node.Emitter]; e.Kind == emitter.Compensating {
			b.keeps[i] += e.Closes
		}
		low = min(low, b.keeps[i])
	}
	if !returns(l.Plan) {
		b.run(&d, nil)
	} else {
		tank := make([]float64, len(b.keeps))
		for i := range tank {
			tank[i] = math.Inf(1)
		}
		tank[0] = b.n.Nodes[0].Z
		d.Siphon = low < tank[0] && !b.cut
		b.run(&d, tank)
	}
	most := 0.0
	for i, v := range d.Extra {
		if v > 0 {
			d.Outlets++
		}
		if v > most {
			most, d.Most = v, i
		}
	}
	if sol.Total > 0 {
		d.Refill = (d.Volume + d.Back) / sol.Total
	}
	return d
}

// brim is a height in m that no level shows.
const brim = 1e-7

// A slice is some of the tubing that drains, with its height.
type slice struct{ volume, z float64 }

// run adds up what leaves by the emitters, and first by the tank, if it may.
func (b *basin) run(d *Drain, tank []float64) {
	out := append([]float64(nil), b.keeps...)
	b.settle(out)
	if tank != nil {
		b.settle(tank)
	}
	var slices []slice
	top := math.Inf(-1)
	basin := 0
	for i := range b.l.Stretches {
		s := &b.l.Stretches[i]
		if b.cut && s.Kind == layout.RowOf {
			d.share(b, slices, basin, top)
			slices, top, basin = slices[:0], math.Inf(-1), s.Index+1
		}
		for _, k := range s.Links {
			link := &b.n.Links[k]
			if link.Law != nil {
				continue
			}
			v := pipe.Volume(link.Length, link.Bore)
			full := b.comes.full(b.n, link)
			back := 0.0
			if tank != nil {
				back = v * max(b.dry(link, tank)+full-1, 0)
			}
			gone := v*max(b.dry(link, out)+full-1, 0) - back
			d.Back += back
			a, z := b.n.Nodes[link.From].Z, b.n.Nodes[link.To].Z
			if gone > v*1e-9 {
				d.Volume += gone
				high := min(a, z) + math.Abs(a-z)*full // of the water in it
				slices = append(slices, slice{gone, high - math.Abs(a-z)*gone/v/2})
				top = max(top, high)
			} else if a == z && back == 0 && full > 0 && (out[link.From] == a || out[link.To] == a) {
				d.Level += v
			}
		}
		if b.cut && s.Kind == layout.RowOf {
			d.share(b, slices, basin, top)
			slices, top, basin = slices[:0], math.Inf(-1), 0
		}
	}
	d.share(b, slices, basin, top)
}

// settle lowers the levels at which some outlets hold the water to those at
// which it stands everywhere: over each place it must pass.
func (b *basin) settle(level []float64) {
	pass := func(k int) bool {
		link := &b.n.Links[k]
		i, j := link.From, link.To
		if b.shut(k) {
			return false
		}
		was := level[i] + level[j]
		level[i] = min(level[i], max(level[j], b.n.Nodes[j].Z-brim))
		level[j] = min(level[j], max(level[i], b.n.Nodes[i].Z-brim))
		return level[i]+level[j] < was
	}
	for again := true; again; {
		again = false
		for k := range b.n.Links {
			again = pass(len(b.n.Links)-1-k) || again
		}
		for k := range b.n.Links {
			again = pass(k) || again
		}
	}
}

// shut says whether a link is the first of a row behind its valve.
func (b *basin) shut(link int) bool {
	if !b.cut {
		return false
	}
	s := &b.l.Stretches[b.l.StretchOf(link)]
	return s.Kind == layout.RowOf && s.Links[0] == link
}

// dry returns the share of a link that the water leaves, given the levels at
// its ends.
func (b *basin) dry(link *network.Link, level []float64) float64 {
	lo, hi := link.From, link.To
	if b.n.Nodes[lo].Z > b.n.Nodes[hi].Z {
		lo, hi = hi, lo
	}
	bottom, top := b.n.Nodes[lo].Z, b.n.Nodes[hi].Z
	if bottom == top {
		if top > min(level[lo], level[hi]) {
			return 1
		}
		return 0
	}
	if math.IsInf(level[lo], 1) {
		return 0
	}
	return min(max((top-max(level[lo], bottom))/(top-bottom), 0), 1)
}

// share gives slices of one basin to the emitters below them: those of a row,
// from 1, or with 0 of all.
func (d *Drain) share(b *basin, slices []slice, row int, top float64) {
	if len(slices) == 0 {
		return
	}
	var plants []int
	least := math.Inf(1)
	for i := range b.l.Plants {
		p := &b.l.Plants[i]
		if (row == 0 || p.Row == row-1) && !math.IsInf(b.keeps[p.Node], 1) {
			plants = append(plants, i)
			least = min(least, b.n.Nodes[p.Node].Z)
		}
	}
	if len(plants) == 0 {
		return
	}
	d.Prevents = max(d.Prevents, top-least)
	keeps := func(i int) float64 { return b.keeps[b.l.Plants[plants[i]].Node] }
	numeric.Sort(len(plants), func(i, j int) bool { return keeps(i) < keeps(j) }, func(i, j int) { plants[i], plants[j] = plants[j], plants[i] })
	numeric.Sort(len(slices), func(i, j int) bool { return slices[i].z < slices[j].z }, func(i, j int) { slices[i], slices[j] = slices[j], slices[i] })
	// From the highest emitter down: each gets its part of every slice above it,
	// and all slices above it are above those below it too.
	each, k := make([]float64, len(plants)), 0
	for _, s := range slices {
		for k < len(plants) && keeps(k) < s.z {
			k++
		}
		each[max(k-1, 0)] += s.volume / float64(max(k, 1))
	}
	sum := 0.0
	for i := len(plants) - 1; i >= 0; i-- {
		sum += each[i]
		d.Extra[plants[i]] += sum
	}
}
