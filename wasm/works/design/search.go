package design

import (
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/limit"
)

// A search is one search on its way.
type search struct {
	p       *plan.Plan
	meter   *work.Meter
	base    *layout.Layout
	water   water.Water
	headed  bool       // rows hang on a header
	fixed   bool       // no flow follows the head, within the range
	tree    bool       // and the rows close no rings: sums do
	tabled  bool       // flows follow the heads, and the rows close no rings: each row's response does
	fouling float64    // m at the filter's rated flow
	mine    pump.Curve // the plan's own supply; nil where it is not known
	rests   [2]float64 // m, of still water that it gives, in the lead and behind it: a tank's regulator stands between
	gravity bool
	flush   bool
	bound   bounds

	zoned []*plan.Plan
	all   []header
	rows  [2][]field // without valves and with

	work  int // nodes of all steps of the solver
	front []*found
	own   *found    // the cheapest that the supply carries
	fails limit.Set // what all candidates fail
	r     Result
}

// A found is a candidate that serves.
type found struct {
	cost, effort float64
	head, flow   float64
	power        float64
	zoning       int
	header, lead int
	size         int // of the rows
	own          bool
}

// MostHead is the greatest head in m that is asked of a supply: that of the
// strongest pump that a plan may hold. Naming a pump of more helps nobody.
const MostHead = 150

// mostWork bounds the work: nodes of all steps of the solver, about a third of a
// second. Sums need no bound: a plan with every size and grouping has less than
// three hundred thousand candidates times zones, a hundredth of a second.
const mostWork = 2_500_000

func newSearch(p *plan.Plan, split func(p *plan.Plan, n int), m *work.Meter) *search {
	s := &search{p: p, meter: m, base: layout.Metered(p, m), fails: ^limit.Set(0), flush: p.Prices.Flush != 0}
	s.water = s.base.Network.Water
	s.headed = p.Header.Layout != plan.OneLine && len(p.Rows) > 1
	s.gravity = p.Supply.Kind == plan.GravityTank
	if s.base.FilterLink >= 0 {
		s.fouling = s.water.HeadOf(p.Filter.Fouling)
	}
	s.ownSupply()
	s.fixed = true
	for i := range p.Rows {
		e := &p.Emitters[p.Rows[i].Emitter]
		s.fixed = s.fixed && e.Kind == plan.Compensating && e.Exponent == 0
	}
	s.tree = s.fixed && s.headed && p.Header.Layout == plan.HeaderAndRows
	s.tabled = !s.fixed && s.headed && p.Header.Layout == plan.HeaderAndRows
	s.flush = s.flush && p.Header.Layout != plan.Ring // a ring's rows have no ends
	s.bound = newBounds(s.base)
	s.zonings(split)

	header, feeds := []int{Kept}, []int{p.Header.Feed}
	if s.headed {
		header = sizes(p, false, p.Header.Tube)
		feeds = []int{plan.FeedEnd, plan.FeedMiddle}
	}
	s.headers(header, feeds, leads(p))
	tubes := make([]int, len(p.Rows))
	for i := range tubes {
		tubes[i] = p.Rows[i].Tube
	}
	for valved := range s.rows {
		if valved > 0 && len(s.zoned) == 1 {
			break
		}
		for _, size := range sizes(p, true, tubes...) {
			s.rows[valved] = append(s.rows[valved], s.fieldOf(size, valved > 0))
		}
	}
	return s
}

// run goes through all candidates.
func (s *search) run() {
	for zoning, p := range s.zoned {
		numbers := p.Zones()
		n := len(numbers)
		valves := 0.0
		fields := s.rows[0]
		if n > 1 {
			valves = float64(len(p.Rows))*s.p.Prices.Valve + float64(n)*s.p.Prices.Zone
			fields = s.rows[1]
		}
		if len(fields) == 0 {
			continue
		}
		bound := s.bound.of(p, numbers)
		for h := range s.all {
			head := &s.all[h]
			s.meter.Spend(len(head.leads) * (len(fields) + 4) * n)
			zones := make([]zone, n)
			var spreads []spread
			if s.tree {
				for _, number := range numbers {
					spreads = append(spreads, s.spreadOf(head, p, number, &fields[0]))
				}
				s.leadsAt(head, spreads)
			}
			for f := range fields {
				field := &fields[f]
				known := s.tree
				for i := range spreads {
					zones[i] = s.zoneOf(&spreads[i], field)
				}
				for a := range head.leads {
					if s.work > mostWork {
						s.r.Cut = true
						return
					}
					lead := &head.leads[a]
					s.r.Counted++
					c := found{
						cost:   valves + head.cost + field.cost + lead.cost,
						zoning: zoning, header: h, lead: a, size: f,
					}
					if !known {
						if c.effort = s.effort(bound.head, bound.flow); s.beaten(&c, s.carries(bound.head, bound.flow)) {
							s.r.Pruned++
							continue
						}
						if known = s.solve(zones, p, head, field, numbers); !known {
							s.fail(limit.Reach.Alone())
							continue
						}
					}
					s.judge(&c, zones, lead, head, field)
				}
			}
		}
	}
}

// leadsAt sums the losses of all leads of a header at the flows of fixed zones.
func (s *search) leadsAt(h *header, spreads []spread) {
	for a := range h.leads {
		lead := &h.leads[a]
		lead.loss, lead.fouled, lead.lifts = lead.loss[:0], lead.fouled[:0], lead.lifts[:0]
		for i := range spreads {
			if i > 0 && spreads[i].flow == spreads[i-1].flow {
				lead.loss, lead.fouled = append(lead.loss, lead.loss[i-1]), append(lead.fouled, lead.fouled[i-1])
				lead.lifts = append(lead.lifts, lead.lifts[i-1])
				continue
			}
			loss, lift := lead.at(spreads[i].flow, false)
			due := loss
			if lead.dirty >= 0 {
				due, _ = lead.at(spreads[i].flow, true)
			}
			lead.loss, lead.fouled, lead.lifts = append(lead.loss, loss), append(lead.fouled, due), append(lead.lifts, lift)
		}
	}
}

// solve makes the zones of a field ready for the solver; fixed flows need it
// only once.
func (s *search) solve(zones []zone, p *plan.Plan, h *header, f *field, numbers []int) bool {
	if s.tabled {
		for i, number := range numbers {
			zones[i] = zone{loose: s.teesOf(h, p, number, f)}
		}
		return true
	}
	l := layout.Metered(laid(p, f.size, h.size, nil, h.feed), s.meter)
	for i, number := range numbers {
		a, ok := s.looseOf(l, number)
		if !ok {
			return false
		}
		zones[i] = zone{loose: a}
		if s.fixed {
			zones[i] = *a.at(2 * MostHead)
		}
	}
	return true
}

// effort is what a supply of a head and a flow is compared by.
func (s *search) effort(head, flow float64) float64 {
	if s.gravity {
		return head
	}
	return max(0, pump.HydraulicPower(s.water.Density, flow, head))
}

// beaten says whether a candidate can neither be in the front, nor be the
// cheapest that the plan's own supply carries, if it carries it at all.
func (s *search) beaten(c *found, carried bool) bool {
	return s.inFront(c) && !(carried && s.better(c))
}

// carries says whether the plan's own supply gives a head at a flow.
func (s *search) carries(head, flow float64) bool {
	if s.mine == nil {
		return false
	}
	h, _ := s.mine.Head(flow)
	return h >= head-2*near && !limit.CurveOf(s.mine).Broken(flow)
}

// inFront says whether the front beats a candidate.
func (s *search) inFront(c *found) bool {
	// The front rises in cost and falls in effort: the last that costs no more
	// takes least.
	i := s.rank(c.cost)
	return i > 0 && s.front[i-1].effort <= c.effort
}

// rank returns how many designs of the front cost no more.
func (s *search) rank(cost float64) int {
	lo, hi := 0, len(s.front)
	for lo < hi {
		if mid := (lo + hi) / 2; s.front[mid].cost <= cost {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo
}

// keep puts a candidate that serves into the front, in the place of those that
// it beats: the ones that cost as much or more, up to the first that takes less.
func (s *search) keep(c *found) {
	if s.inFront(c) {
		return
	}
	i := s.rank(c.cost)
	if i > 0 && s.front[i-1].cost == c.cost {
		i--
	}
	end := i
	for end < len(s.front) && s.front[end].effort >= c.effort {
		end++
	}
	kept := *c
	s.front = append(append(s.front[:i:i], &kept), s.front[end:]...)
}

func (s *search) fail(why limit.Set) {
	s.fails &= why
	for l := range limit.Limit(limit.Limits) {
		if why.Has(l) {
			s.r.Failures[l]++
		}
	}
}
