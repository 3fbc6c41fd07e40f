package design

import (
	"slices"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// sizes returns what a part of a plan may be made of: the tubes to be had, or
// of them those that rows can be, and the part as it stands if it is not one of
// these. now are the sizes in it.
func sizes(p *plan.Plan, row bool, now ...int) []int {
	var list []int
	for i := range catalogue.Tubes {
		if p.Had(i) && (catalogue.Tubes[i].Row || !row) {
			list = append(list, i)
		}
	}
	mixed := slices.ContainsFunc(now, func(t int) bool { return t != now[0] })
	priced := !slices.ContainsFunc(now, func(t int) bool { return p.Prices.Tubes[t] <= 0 })
	if priced && (mixed || !slices.Contains(list, now[0])) {
		list = append(list, Kept)
	}
	return list
}

// leads returns the sizes of all runs in every combination; with more than two
// runs all of one size.
func leads(p *plan.Plan) [][]int {
	runs := make([]int, len(p.Runs))
	for i := range runs {
		runs[i] = p.Runs[i].Tube
	}
	var list [][]int
	switch len(runs) {
	case 1:
		for _, a := range sizes(p, false, runs...) {
			list = append(list, []int{a})
		}
	case 2:
		for _, a := range sizes(p, false, runs[0]) {
			for _, b := range sizes(p, false, runs[1]) {
				list = append(list, []int{a, b})
			}
		}
	default:
		for _, a := range sizes(p, false, runs...) {
			list = append(list, slices.Repeat([]int{a}, len(runs)))
		}
	}
	return list
}

// zonings returns plans whose rows are grouped in every way that is tried.
func (s *search) zonings(split func(p *plan.Plan, n int)) {
	p := s.p
	if !s.headed || p.Header.Layout != plan.HeaderAndRows {
		s.zoned = []*plan.Plan{p}
		return
	}
	own := true
	for n := 1; n <= min(len(p.Rows), plan.MaxZones); n++ {
		q := p.Clone()
		split(q, n)
		s.zoned = append(s.zoned, q)
		own = own && !grouped(p, q)
	}
	if own {
		s.zoned = append(s.zoned, p)
	}
}

// grouped says whether two plans group the rows alike.
func grouped(p, q *plan.Plan) bool {
	for i := range p.Rows {
		for j := range i {
			if (p.Rows[i].Zone == p.Rows[j].Zone) != (q.Rows[i].Zone == q.Rows[j].Zone) {
				return false
			}
		}
	}
	return true
}

// laid returns p with other tubing and another feed.
func laid(p *plan.Plan, rows, header int, runs []int, feed int) *plan.Plan {
	p = p.Clone()
	if rows != Kept {
		for i := range p.Rows {
			p.Rows[i].Tube = rows
		}
	}
	if header != Kept {
		p.Header.Tube = header
	}
	for i, t := range runs {
		if t != Kept {
			p.Runs[i].Tube = t
		}
	}
	p.Header.Feed = feed
	return p
}
