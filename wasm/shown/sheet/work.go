package sheet

import (
	"math"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/parts"
	"evenrow/wasm/works/surge"
)

// Work works out a plan that has been checked, all of it.
func Work(p *plan.Plan) *Sheet {
	s := Answer(p)
	for which := range Exploration(Explorations) {
		s.Explore(which)
	}
	return s
}

// Answer works out a plan that has been checked, but for what takes many
// solutions and can wait until the answer is on the screen; see [Sheet.Explore].
func Answer(p *plan.Plan) *Sheet { return AnswerFor(p, nil) }

// AnswerFor is [Answer] for somebody who may leave: gone, which is asked now and
// then, also by explorations, says whether nobody waits any more. The sheet is
// nil then.
func AnswerFor(p *plan.Plan, gone func() bool) *Sheet { return AnswerWithin(fixing, p, gone) }

// Bounds of the work, in units of package work: of the search for fixes, and of
// each exploration. The answer itself has none: it is a few solutions.
const (
	fixing    = 100_000_000
	exploring = 50_000_000
)

// Bounds returns the units of work of the search for fixes, and of each
// exploration.
func Bounds() (fixes, exploration int) { return fixing, exploring }

// AnswerWithin is [AnswerFor] with so many units for the search for fixes.
func AnswerWithin(units int, p *plan.Plan, gone func() bool) *Sheet {
	s := bare(p, gone)
	if s == nil || !s.help(units) {
		return nil
	}
	return s
}

// Bare is [Answer] without what would help, which is explored by [Helping]: on a large
// plan that takes much longer than the answer.
func Bare(p *plan.Plan) *Sheet { return bare(p, nil) }

func bare(p *plan.Plan, gone func() bool) (s *Sheet) {
	free := work.New(math.MaxInt, gone)
	if !free.Within(func() {
		s = assess(p, free)
		s.Parts = parts.CountWith(s.Layout, working(s), ahead(s), s.Wanted.bought())
		s.Surge = blows(s)
		s.fare()
	}) {
		return nil
	}
	s.gone = gone
	return s
}

// helpless says whether something is to be helped.
func (s *Sheet) helpless() bool { return s.Verdict == Nearly || s.Verdict == No }

// help looks for what would help, unless that is known, with so many units of work. The
// result is false once nobody waits any more.
func (s *Sheet) help(units int) bool {
	if s.helped || !s.helpless() {
		return true
	}
	s.spendFrom(units)
	s.Fixes, s.helped = fixes(s), true
	return !s.meter().Gone()
}

// meter counts what is worked out for the sheet at present.
func (s *Sheet) meter() *work.Meter { return s.Layout.Network.Meter }

// spendFrom begins a piece of work of so many units at most.
func (s *Sheet) spendFrom(units int) { s.Layout.Network.Meter = work.New(units, s.gone) }

// working returns the highest pressure in Pa while a zone is watered; 0 where
// that is not known.
func working(s *Sheet) float64 {
	head := 0.0
	for i := range s.Zones {
		for k, h := range s.Zones[i].Solution.Head {
			head = max(head, h-s.Layout.Points[k].Z)
		}
	}
	return s.Layout.Network.Water.PressureHead(head)
}

// ahead returns the highest pressure in Pa before a pump's or a tap's regulator
// while a zone is watered; 0 where there is none.
func ahead(s *Sheet) float64 {
	own, head := s.Layout.Plan.Supply, 0.0
	own.Regulator = 0
	if c := layout.Drive(&own, s.Layout.Network.Water); c != nil && s.Layout.Plan.Supply.Regulator > 0 {
		for i := range s.Zones {
			h, _ := c.Head(s.Zones[i].Flow)
			head = max(head, h)
		}
	}
	return s.Layout.Network.Water.PressureHead(head)
}

// flushed opens the ends of the tubing while each zone is watered; nil where no
// water flows.
func flushed(s *Sheet) *flush.Flush {
	open := make([][]bool, len(s.Zones))
	for i := range s.Zones {
		open[i] = s.Zones[i].Solution.Open
	}
	if len(open) < len(s.Layout.Zones) {
		return nil
	}
	return flush.Of(s.Layout, open)
}

// blows are those of valves that shut at once; none where no water flows.
func blows(s *Sheet) []surge.Blow {
	if len(s.Zones) == 0 {
		return nil
	}
	return surge.Of(s.Layout, s.solutions())
}

// assess works out a plan's water and verdict, without parts and fixes.
func assess(p *plan.Plan, m *work.Meter) *Sheet {
	s := &Sheet{Plan: p}
	with := p
	if p.Supply.Sought() {
		with, s.Wanted = provided(p, m)
	}
	s.Layout = layout.Metered(with, m)
	for _, z := range s.Layout.Zones {
		r, err := solveZone(s.Layout, z)
		if err != nil {
			s.Zones = nil
			s.find(Finding{Kind: Unsolved, Row: -1, Zone: z})
			s.sortFindings()
			return s
		}
		s.Zones = append(s.Zones, r)
		if r.Margin < s.Zones[s.Critical].Margin {
			s.Critical = len(s.Zones) - 1
		}
	}
	for i := range s.Zones {
		s.judgeZone(&s.Zones[i])
	}
	s.compare()
	s.judgePlan()
	s.sortFindings()
	return s
}
