package sheet

import (
	"math"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/limit"
)

// A Zoning is how many zones a plan takes, beside how many it has.
type Zoning struct {
	Fewest int        // the answer is Yes with so many, of rows that stand together and draw about the same, and with no fewer; 0 when with none that was tried
	Tried  int        // up to how many zones were tried
	Plan   *plan.Plan // with the fewest zones, when it is another plan and a better one
	Alone  bool       // no valve can shut off a row alone: one line, or a ring
	Large  bool       // the plan is too large to try all of them
}

// zoning is how many nodes, over all zones that are tried, are worked out: about
// a third of a second.
const zoning = 60_000

// zoned looks for the fewest zones with which the answer is Yes; nil where no
// water flows.
func zoned(s *Sheet) *Zoning {
	if len(s.Zones) == 0 || s.Verdict == Cannot {
		return nil
	}
	p := s.Plan
	z := &Zoning{}
	now := len(s.Zones)
	if p.Header.Layout != plan.HeaderAndRows || len(p.Rows) < 2 {
		z.Alone = p.Header.Layout != plan.HeaderAndRows
		z.Tried = 1
		if s.Verdict == Yes {
			z.Fewest = 1
		}
		return z
	}
	most := min(len(p.Rows), plan.MaxZones)
	if s.Verdict == Yes {
		most = now
	}
	work := 0
	for n := 1; n <= most; n++ {
		if s.Verdict == Yes && n == now {
			z.Fewest, z.Tried = n, n // as it stands, whatever its grouping
			return z
		}
		if work += n * len(s.Layout.Points); work > zoning {
			z.Large = true
			return z
		}
		z.Tried = n
		q := p.Clone()
		split(q, n)
		if solves(q, s.meter()) {
			z.Fewest, z.Plan = n, q
			return z
		}
	}
	return z
}

// Round returns the seconds after which the zones, one after another, have
// given every plant one litre, also the one that gets least, and each zone's
// share of them; 0 for a zone, and for all, where some plant gets no water.
func (s *Sheet) Round() (whole float64, zones []float64) {
	const litre = 1e-3
	dry := false
	for i := range s.Zones {
		t := 0.0
		if z := &s.Zones[i]; z.Least > 0 && z.Even.N > 0 {
			t = litre / z.Least
		} else {
			dry = true
		}
		zones = append(zones, t)
		whole += t
	}
	if dry {
		whole = 0
	}
	return whole, zones
}

// A Loop compares a plan with a far header, which ties its rows' ends, and the
// same plan without one.
type Loop struct {
	Now  int // index into Side of the plan as it stands
	Side [2]Looped
	More float64 // m, tubing that the ring takes beyond the rows and one header
	Plan *plan.Plan
}

// Sides of a Loop.
const (
	Untied = iota
	Tied
)

// A Looped is one side of the comparison.
type Looped struct {
	Layout  *layout.Layout
	Verdict Verdict
	Zone    ZoneResult
	Low     float64 // m, least head above an emitter
	High    float64 // m, most
	Longer  int     // plants that every row may have more, with every emitter open, at its lowest and the reserve; negative when it may have only fewer
	Bounded bool    // more was not looked for, or not taken by the form
	Sought  bool
}

// longest is how many plants a plan may have for its longest rows to be sought.
const longest = 1500

// looped works out what closing the rows into rings gains; nil where that makes
// no sense: in one line, with one row, in several zones, and where no water
// flows.
func looped(s *Sheet) *Loop {
	p := s.Layout.Plan // the same pump for both, also where it is sought
	if len(s.Zones) != 1 || len(p.Rows) < 2 || p.Header.Layout == plan.OneLine || s.Verdict == Cannot {
		return nil
	}
	l := &Loop{}
	other := p.Clone()
	if other.Header.Layout == plan.Ring {
		other.Header.Layout = plan.HeaderAndRows
		// A plan that is a ring waters all rows together.
		for i := range other.Rows {
			other.Rows[i].Zone = other.Rows[0].Zone
		}
		l.Now = Tied
	} else {
		other.Header.Layout = plan.Ring
	}
	o := assess(other, s.meter())
	if len(o.Zones) != 1 {
		return nil
	}
	l.Plan = other.Clone()
	l.Plan.Supply = s.Plan.Clone().Supply
	for i, side := range [...]*Sheet{s, o} {
		l.Side[(i+l.Now)%2] = sideOf(side)
	}
	l.More = tubing(l.Side[Tied].Layout) - tubing(l.Side[Untied].Layout)
	return l
}

// tubing returns the length in m of all tubing of a layout.
func tubing(l *layout.Layout) float64 {
	sum := 0.0
	for i := range l.Stretches {
		if l.Stretches[i].Tube != layout.NoTube {
			sum += l.Stretches[i].Length
		}
	}
	for i := range l.Joints {
		if l.Joints[i].Stub() != layout.NoTube {
			sum += layout.Stub
		}
	}
	return sum
}

func sideOf(s *Sheet) Looped {
	z := s.Zones[0]
	side := Looped{Layout: s.Layout, Verdict: s.Verdict, Zone: z, Low: math.Inf(1), High: math.Inf(-1)}
	plants := len(s.Layout.Plants)
	for i := range s.Layout.Plants {
		node := s.Layout.Plants[i].Node
		h := z.Solution.Head[node] - s.Layout.Network.Nodes[node].Z
		side.Low, side.High = min(side.Low, h), max(side.High, h)
	}
	if plants > longest {
		return side
	}
	side.Sought = true
	longer := func(n int) (*plan.Plan, bool) {
		p := s.Layout.Plan.Clone()
		for i := range p.Rows {
			r := &p.Rows[i]
			r.Plants += n
			r.PerPiece = min(r.PerPiece, max(1, r.Plants))
		}
		return p, len(p.Check()) == 0
	}
	fits := func(n int) bool {
		p, ok := longer(n)
		return ok && !limit.MarginOf(p, false).Broken(allOpen(p, s.meter()))
	}
	least := math.MaxInt
	for i := range s.Plan.Rows {
		least = min(least, s.Plan.Rows[i].Plants)
	}
	// Longer rows only make matters worse: bracketed, then halved. Where there is
	// plenty the rows may double, and then nothing else has to be solved.
	lo, hi := least, least+1
	if !fits(least) {
		if lo, hi = 0, least; !fits(0) {
			if lo, hi = 1-least, 0; !fits(lo) {
				side.Sought = false
				return side
			}
		}
	}
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; fits(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	side.Longer = lo
	if _, ok := longer(hi); hi > least || !ok {
		side.Bounded = true
	}
	return side
}
