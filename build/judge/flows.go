package judge

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/network"
)

// flows checks the solutions of a sheet with the formulas alone: what flows into
// a place flows out of it, every length of tubing takes the head that its flow
// costs, every emitter gives what its pressure gives, open ones may be open and
// shut ones shut, and the budget adds up.
func flows(s *sheet.Sheet) []string {
	var faults []string
	fault := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	for zi := range s.Zones {
		z := &s.Zones[zi]
		n, sol := s.Layout.Zone(z.Zone), z.Solution
		into := make([]float64, len(n.Nodes))
		for k := range n.Links {
			l, q := &n.Links[k], sol.Flow[k]
			into[l.From] -= q
			into[l.To] += q
			var loss float64
			if d, ok := l.Law.(network.Drop); ok && q <= 0 {
				// Still water is held by the spring at any head up to its own.
				loss = min(max(sol.Head[l.From]-sol.Head[l.To], 0), float64(d))
			} else if l.Law != nil {
				loss, _ = l.Law.Loss(q)
			} else {
				loss = pipe.Head(q, l.Length+l.Extra, l.Bore, l.Roughness, n.Water.Kinematic) +
					math.Copysign(pipe.LocalHead(l.K, pipe.Velocity(math.Abs(q), l.Bore)), q)
			}
			// The solver gives every link a resistance of 1e-3 m per m³/s
			// besides, and settles to a part in 10¹² of the greatest head; the
			// two ways to the same loss round differently.
			gap := sol.Head[l.From] - sol.Head[l.To] - loss
			if !(math.Abs(gap) <= 1.01e-3*math.Abs(q)+1e-7+1e-9*math.Abs(loss)) {
				fault("zone %d, link %d: at %g m³/s the head falls by %g m, the tubing takes %g m", z.Zone, k, q, sol.Head[l.From]-sol.Head[l.To], loss)
			}
		}
		total, giving, unsteady := 0.0, 0, 0
		for i := range n.Nodes {
			node := &n.Nodes[i]
			if i == 0 {
				continue
			}
			want := node.Draw
			if node.Emitter != network.None {
				e, h := &n.Emitters[node.Emitter], sol.Head[i]-node.Z
				if sol.Open[i] {
					q, _ := e.Open(h)
					want += node.Count * q
				}
				switch compensates := e.Kind == emitter.Compensating; {
				case compensates && sol.Open[i] && h < e.Closes-1e-9:
					fault("zone %d, node %d: open at %g m, and shuts below %g m", z.Zone, i, h, e.Closes)
				case compensates && !sol.Open[i] && h >= e.Opens:
					unsteady++
				case !compensates && !sol.Open[i]:
					fault("zone %d, node %d: shut, and cannot shut", z.Zone, i)
				}
			}
			total += want
			if want > 0 {
				giving++
			}
			if !(math.Abs(into[i]-want) <= 1e-9*sol.Total+1e-15) {
				fault("zone %d, node %d: %g m³/s in, %g out", z.Zone, i, into[i], want)
			}
			if !(math.Abs(sol.Out[i]-want) <= 1e-9*sol.Total+1e-15) {
				fault("zone %d, node %d: %g m³/s is said to come out, and %g does", z.Zone, i, sol.Out[i], want)
			}
		}
		// Each node that gives water may be out by a part in 10⁹ of it all, as above, and all
		// of them the same way.
		if !(math.Abs(total-z.Flow) <= 1e-9*float64(giving)*total+1e-15) {
			fault("zone %d: %g m³/s in all, the plants get %g", z.Zone, z.Flow, total)
		}
		if unsteady != sol.Unsteady {
			fault("zone %d: %d emitters open and shut in turn, %d are said to", z.Zone, unsteady, sol.Unsteady)
		}
		sum, gross := 0.0, 0.0
		for _, line := range z.Budget {
			sum += line.Head
			gross += math.Abs(line.Head)
		}
		if !(math.Abs(sum-z.Head) <= resisted(n, sol)+1e-7+1e-9*gross) {
			fault("zone %d: the budget adds up to %g m, the supply gives %g m", z.Zone, sum, z.Head)
		}
	}
	return faults
}

// resisted is the most head that the solver's own resistance takes on the way from
// the supply to any node, which no formula has: a link has 1e-3 m per m³/s of it, and
// a row of a thousand links as often as much.
func resisted(n *network.Network, sol *network.Solution) float64 {
	most, order := make([]float64, len(n.Nodes)), make([]int, len(n.Nodes))
	for i := range order {
		order[i] = i
	}
	// Water flows to where the head is less, but for the supply, which is the first node.
	slices.SortFunc(order[1:], func(a, b int) int { return cmp.Compare(sol.Head[b], sol.Head[a]) })
	into := make([][]int, len(n.Nodes))
	for k, l := range n.Links {
		to := l.To
		if sol.Flow[k] < 0 {
			to = l.From
		}
		into[to] = append(into[to], k)
	}
	for _, i := range order[1:] {
		for _, k := range into[i] {
			from := n.Links[k].From + n.Links[k].To - i
			most[i] = max(most[i], most[from]+1.01e-3*math.Abs(sol.Flow[k]))
		}
	}
	return slices.Max(most)
}
