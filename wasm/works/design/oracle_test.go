package design

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/build/oracle"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// few is a small plan, of which three or four sizes of tubing are to be had.
func few(r *rand.Rand, seed int) *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator, p.Supply.Devices = plan.PumpTwo, 0, 0
	p.Supply.ShutOff, p.Supply.MaxFlow = 14+10*r.Float64(), (15+25*r.Float64())/6e4
	p.Filter.Present, p.Filter.Fouling = r.IntN(2), 3e4*r.Float64()
	p.Limits.Reserve, p.Limits.Evenness, p.Limits.Speed = r.Float64(), 0.86+0.1*r.Float64(), 0.4+0.8*r.Float64()
	p.Rows = p.Rows[:2+r.IntN(2)]
	for i := range p.Rows {
		row := &p.Rows[i]
		row.Plants, row.Spacing = 3+r.IntN(5), 0.2+1.5*r.Float64()
		row.Slope, row.Height = 0.06*r.Float64()-0.03, 0.6*r.Float64()-0.3
		row.Gap, row.Zone = 0.5+r.Float64(), 1+r.IntN(2)
	}
	p.Place.Length, p.Place.Width = 60, 40
	e := &p.Emitters[0]
	e.Flow, e.Opens = (2+25*r.Float64())/3.6e6, 0.5*e.Lowest
	e.Closes = 0.5 * e.Opens
	if r.IntN(2) == 0 {
		e.Highest = e.Lowest * (1.1 + 0.4*r.Float64())
	}
	switch seed % 3 {
	case 0:
		e.Kind, e.Nominal, e.Exponent, e.Lowest = plan.NonCompensating, 1e5, 0.5, 7e4
	case 1:
		e.Exponent = 0.1 * r.Float64()
	}
	switch seed % 5 {
	case 0:
		p.Supply.Kind = plan.GravityTank
		p.Runs[0].Rise = -12 - 6*r.Float64()
		if seed >= 10 {
			p.Supply.Regulator = 1.15e5 // 11.7 m: it takes something away from each
		}
	case 1:
		p.Header.Layout, p.Rows = plan.OneLine, p.Rows[:2]
		p.Rows[1].Plants, p.Rows[1].Spacing = p.Rows[0].Plants, p.Rows[0].Spacing
	case 2:
		p.Header.Layout = plan.Ring
	case 3: // over a height where the lead may draw air
		p.Runs = append(p.Runs, plan.Run{Length: 4, Rise: -18 * r.Float64(), Tube: 2, Bore: 0.02})
		p.Runs[0].Rise = -p.Runs[1].Rise
	}
	p.Prices.Flush = seed / 2 % 2
	for i := range p.Prices.Tubes {
		p.Prices.Tubes[i] = 0
	}
	for k, i := range []int{1, 2, 3} {
		p.Prices.Tubes[i] = 0.2 + float64(k)*0.3 + 0.2*r.Float64()
	}
	for i := range p.Rows {
		p.Rows[i].Tube = 1
	}
	p.Header.Tube, p.Runs[0].Tube = 2, 3
	return p
}

// A served is a candidate with the least supply that it takes.
type served struct {
	plan                     *plan.Plan
	cost, head, flow, effort float64
	own                      bool // the plan's own supply carries it
	ok                       bool // its own least supply does
}

// spare is by how much a zone, with all emitters open, has more head than it
// must have where that is least, in m: at emitters for their lowest pressure and
// the reserve, and where tubing stands so high that it would draw air.
func spare(l *layout.Layout, n *network.Network, sol *network.Solution, reserve float64) float64 {
	least := math.Inf(1)
	for i, node := range n.Nodes {
		if node.Emitter != network.None {
			least = min(least, sol.Head[i]-node.Z-n.Emitters[node.Emitter].Lowest-reserve)
		}
	}
	for i := range l.Stretches {
		st := &l.Stretches[i]
		if st.Kind == layout.RunOf || st.Kind == layout.HeaderOf || st.Kind == layout.Between {
			to := n.Links[st.Links[len(st.Links)-1]].To
			least = min(least, sol.Head[to]-n.Nodes[to].Z)
		}
	}
	return least
}

func allOpen(t *testing.T, n *network.Network) *network.Solution {
	t.Helper()
	sol, err := network.Hold(n, slices.Repeat([]bool{true}, len(n.Nodes)))
	if err != nil {
		t.Fatal(err)
	}
	return sol
}

// duty is the least head at the supply of a zone, and its flow there: the whole
// network is solved at one head after another.
func duty(t *testing.T, l *layout.Layout, n *network.Network, reserve float64) (head, flow float64) {
	n.Links = slices.Clone(n.Links)
	if l.Stretches[0].Kind == layout.Source {
		n.Links[0].Law = through{}
	}
	lo, hi := -40.0, 400.0
	for range 60 {
		n.Head = (lo + hi) / 2
		sol := allOpen(t, n)
		s := spare(l, n, sol, reserve)
		flow = sol.Total
		if math.Abs(s) < 1e-7 {
			break
		}
		if s < 0 {
			lo = max(lo, n.Head)
			lo = min(max(lo, n.Head-0.5*s), hi) // losses only rise: at least as much is missing as that, and half is on the safe side
		} else {
			hi = n.Head
		}
	}
	return n.Head, flow
}

// broken returns the limits that a plan breaks with its own supply, each of its
// networks solved as a whole.
func broken(t *testing.T, p *plan.Plan) (why Limit) {
	l := layout.New(p)
	for i := range l.Stretches {
		st := &l.Stretches[i]
		if st.Tube == layout.NoTube {
			continue
		}
		for _, k := range st.Links { // what its tubing may carry in the sun, with every valve shut
			low := min(l.Points[l.Network.Links[k].From].Z, l.Points[l.Network.Links[k].To].Z)
			if l.Still(st)-low > l.Network.Water.HeadOf(catalogue.Tubes[l.Tubes[st.Tube].Entry].InSun()) {
				why |= Rating
			}
		}
	}
	for _, z := range l.Zones {
		n := l.Zone(z)
		sol := allOpen(t, n)
		if spare(l, n, sol, p.Limits.Reserve) < -2*near || l.Curve != nil && sol.Total > l.Curve.LastFlow() {
			why |= Reach
		}
		if l.FilterLink >= 0 {
			due := l.Fouled(n, l.Network.Water.HeadOf(p.Filter.Fouling))
			if s := allOpen(t, due); spare(l, due, s, 0) < -2*near {
				why |= Reach
			}
		}
		count, sum, least, cv, fewest := 0.0, 0.0, math.Inf(1), 0.0, math.Inf(1)
		for i, node := range n.Nodes {
			if node.Emitter == network.None {
				continue
			}
			e := &n.Emitters[node.Emitter]
			if sol.Head[i]-node.Z > e.Highest {
				why |= Above
			}
			share := sol.Out[i] / (e.Flow * node.Count)
			count, sum, least = count+1, sum+share, min(least, share)
			cv, fewest = max(cv, e.CV), min(fewest, node.Count)
		}
		if evenness.Design(cv, fewest, least*count/sum) < p.Limits.Evenness {
			why |= Uneven
		}
		if max(speed(l, n, sol, layout.Lead), speed(l, n, sol, layout.Main)) > p.Limits.Speed {
			why |= Fast
		}
	}
	if p.Prices.Flush != 0 && p.Header.Layout != plan.Ring && !oracle.Flushes(t, p) {
		why |= Dirty
	}
	return why
}

// solve works one candidate out.
func solve(t *testing.T, q *plan.Plan) served {
	l := layout.New(q)
	w := served{plan: q, head: math.Inf(-1)}
	for _, z := range l.Zones {
		h, f := duty(t, l, l.Zone(z), q.Limits.Reserve)
		w.head, w.flow = max(w.head, h), max(w.flow, f)
		if l.FilterLink >= 0 {
			h, f = duty(t, l, l.Fouled(l.Zone(z), l.Network.Water.HeadOf(q.Filter.Fouling)), 0)
			w.head, w.flow = max(w.head, h), max(w.flow, f)
		}
	}
	for i := range l.Stretches {
		if st := &l.Stretches[i]; st.Tube != layout.NoTube {
			w.cost += st.Length * q.Prices.Tubes[l.Tubes[st.Tube].Entry]
		}
	}
	for i := range l.Joints {
		if stub := l.Joints[i].Stub(); stub != layout.NoTube {
			w.cost += layout.Stub * q.Prices.Tubes[l.Tubes[stub].Entry]
		}
	}
	if n := len(l.Zones); n > 1 {
		w.cost += float64(len(q.Rows))*q.Prices.Valve + float64(n)*q.Prices.Zone
	}
	w.effort = pump.HydraulicPower(l.Network.Water.Density, w.flow, w.head)
	if q.Supply.Kind == plan.GravityTank {
		w.effort = w.head
	}
	w.own = broken(t, q) == 0
	strong := q.Clone()
	Strengthen(strong, w.head, w.flow)
	w.ok = len(strong.Check()) == 0 && broken(t, strong) == 0
	return w
}

// everything works out every candidate of a plan.
func everything(t *testing.T, p *plan.Plan) (list []served) {
	var had []int
	for i := range catalogue.Tubes {
		if p.Had(i) {
			had = append(had, i)
		}
	}
	leads := [][]int{}
	for _, a := range had {
		for _, b := range had {
			if len(p.Runs) == 2 {
				leads = append(leads, []int{a, b})
			}
		}
		if len(p.Runs) == 1 {
			leads = append(leads, []int{a})
		}
	}
	headers, feeds, groupings := had, []int{plan.FeedEnd, plan.FeedMiddle}, []int{0}
	if p.Header.Layout == plan.OneLine {
		headers, feeds = []int{p.Header.Tube}, []int{p.Header.Feed}
	}
	if p.Header.Layout == plan.HeaderAndRows {
		for n := 1; n <= len(p.Rows); n++ {
			groupings = append(groupings, n)
		}
	}
	for _, n := range groupings {
		for _, row := range had {
			if !catalogue.Tubes[row].Row {
				continue
			}
			for _, header := range headers {
				for _, feed := range feeds {
					for _, runs := range leads {
						q := p.Clone()
						if n > 0 {
							split(q, n)
						}
						q.Header.Tube, q.Header.Feed = header, feed
						for i := range q.Rows {
							q.Rows[i].Tube = row
						}
						for i := range q.Runs {
							q.Runs[i].Tube = runs[i]
						}
						list = append(list, solve(t, q))
					}
				}
			}
		}
	}
	return list
}

// Every candidate of small plans solved as a whole network, one by one, gives
// the list that the search gives, and the cheapest that the plan's supply
// carries.
func TestSearchAgainstSolvingEverything(t *testing.T) {
	listed, owned, none := 0, 0, 0
	for seed := range 20 {
		p := few(rand.New(rand.NewPCG(uint64(seed), 5)), seed)
		if errs := p.Check(); len(errs) > 0 {
			t.Fatalf("seed %d: %v", seed, errs[0])
		}
		r := Of(p, split, nil)
		all := everything(t, p)
		if r.Cut || r.Solved+r.Pruned != r.Counted || r.Counted > len(all) || r.Counted == 0 {
			t.Errorf("seed %d: %d counted, %d solved, %d pruned, %d here", seed, r.Counted, r.Solved, r.Pruned, len(all))
		}
		// Heads agree within a few tenths of a millimetre, and so do what they take.
		const tolerance = 1e-3
		effort := func(d *Design) (effort, within float64) {
			if p.Supply.Kind == plan.GravityTank {
				return d.Head, tolerance
			}
			return d.Power, pump.HydraulicPower(1000, d.Flow, tolerance)
		}
		for i := range r.List {
			d := &r.List[i]
			e, within := effort(d)
			same := slices.ContainsFunc(all, func(w served) bool {
				return w.ok && math.Abs(w.cost-d.Cost) < 1e-9 && math.Abs(w.effort-e) <= within && math.Abs(w.head-d.Head) <= tolerance && math.Abs(w.flow-d.Flow) <= 1e-3*d.Flow
			})
			if !same {
				t.Errorf("seed %d: design %d of the list, %g, %g m, %g m³/s, is none that serves", seed, i, d.Cost, d.Head, d.Flow)
			}
			// Its plan is what it says.
			if w := solve(t, d.Plan); math.Abs(w.cost-d.Cost) > 1e-9 || math.Abs(w.head-d.Head) > tolerance || len(d.Plan.Zones()) != d.Zones || (d.Plan.Header.Feed == plan.FeedMiddle) != d.Middle {
				t.Errorf("seed %d: design %d says %g and %g m, and its plan %g and %g m", seed, i, d.Cost, d.Head, w.cost, w.head)
			}
		}
		cheapest := math.Inf(1)
		for _, w := range all {
			if w.own {
				cheapest = min(cheapest, w.cost)
			}
			if !w.ok {
				continue
			}
			if !slices.ContainsFunc(r.List, func(d Design) bool {
				e, within := effort(&d)
				return d.Cost <= w.cost+1e-9 && e <= w.effort+within
			}) {
				t.Errorf("seed %d: the list has nothing as good as %g, %g m, %g m³/s", seed, w.cost, w.head, w.flow)
			}
		}
		switch {
		case math.IsInf(cheapest, 1) != (len(r.Own) == 0):
			t.Errorf("seed %d: the supply carries one of %g, and the search found %d", seed, cheapest, len(r.Own))
		case len(r.Own) > 0:
			owned++
			if math.Abs(r.Own[0].Cost-cheapest) > 1e-9 || !r.Own[0].Present {
				t.Errorf("seed %d: the cheapest that the supply carries costs %g, want %g", seed, r.Own[0].Cost, cheapest)
			}
		}
		if now := solve(t, p); math.Abs(now.cost-r.Now) > 1e-9 {
			t.Errorf("seed %d: the plan costs %g now, want %g", seed, r.Now, now.cost)
		}
		if len(r.List) > 0 {
			listed++
		} else {
			none++
		}

	}
	t.Logf("%d with designs, %d without, %d with one of their own", listed, none, owned)
	if listed < 8 || owned < 4 {
		t.Errorf("%d plans with designs, %d with one that their supply carries: too few", listed, owned)
	}
}
