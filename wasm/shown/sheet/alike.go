package sheet

import (
	"math"

	"evenrow/wasm/trade/climate"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/works/limit"
	"evenrow/wasm/works/network"
	"evenrow/wasm/year/demand"
	"evenrow/wasm/year/season"
)

// A Sameness is how the water of one plant compares with that of another, from
// the flows as they are: emitters that differ, or two at some plants, count.
type Sameness uint8

const (
	Differs    Sameness = iota // none of the others
	Same                       // EU over all plants is at least [sameFrom]
	NearlySame                 // at least [nearlyFrom]
	SameInZone                 // that of each zone by itself is at least sameFrom; zones differ, and can run for other times
	NearInZone                 // at least nearlyFrom
	AsNeeded                   // flows differ, and what each crop takes up differs about as much
	Samenesses = iota          // how many there are
)

// From these emission uniformities on, plants are said to get the same water,
// and nearly the same. The second is what the trade calls excellent (ASAE EP
// 405, from memory); the first is our own choice, what a cup cannot tell from
// 100 %.
const (
	sameFrom   = 0.99
	nearlyFrom = 0.9
)

// A RowWater is what the plants of one row get while their zone is watered,
// beside what their crop takes up.
type RowWater struct {
	Least, Mean float64 // m³/s, of a plant
	Need        float64 // m³, that a plant takes up on the typical day of its season on which that is most; 0 where nothing is planted
}

// compare says how alike the water of all plants is, and finds rows that are
// watered together but get neither the same nor what their crops need. Where
// some emitters stay shut, it says nothing.
func (s *Sheet) compare() {
	least, mean, n, made := math.Inf(1), 0.0, 0, 1.0
	zones := 1.0
	fits := true
	for i := range s.Zones {
		z := &s.Zones[i]
		e := &z.Alike
		if e.Mean <= 0 {
			return
		}
		least, mean, n = min(least, z.Least), mean+e.Mean*float64(e.N), n+e.N
		made = min(made, e.EU/(z.Least/e.Mean))
		zones = min(zones, e.EU)
		if z.Open < z.Emitters {
			return
		}
		if e.EU < max(nearlyFrom, limit.EvennessOf(s.Plan).At) {
			fits = z.Mixed && s.fit(z) >= nearlyFrom && fits
		}
	}
	all := 0.0
	if n > 0 && least > 0 {
		all = made * least / (mean / float64(n))
	}
	switch {
	case all >= sameFrom, n == 1 && least > 0:
		s.Sameness = Same
	case all >= nearlyFrom:
		s.Sameness = NearlySame
	case len(s.Zones) > 1 && zones >= sameFrom:
		s.Sameness = SameInZone
	case len(s.Zones) > 1 && zones >= nearlyFrom:
		s.Sameness = NearInZone
	case fits && n > 0:
		s.Sameness = AsNeeded
		for i := range s.Zones { // crops that share a zone's even flow may need different amounts
			if s.fit(&s.Zones[i]) < nearlyFrom {
				s.Sameness = Differs
			}
		}
	}
}

// fit compares the flows of a zone whose emitters differ with what the crops
// need, and returns the emission uniformity of the one over the other: 1 where
// every plant gets as much of its need as every other. Rows in which nothing is
// planted need nothing; without any other it is 0, and flows that are less even
// than was asked are found. It finds the rows that get most and least of their
// need where neither the flows nor these shares are as even as was asked.
func (s *Sheet) fit(z *ZoneResult) float64 {
	s.needs()
	l := s.Layout
	var shares []float64
	cv, fewest := 0.0, math.Inf(1)
	low, high := -1, -1
	share := func(row int) float64 { return s.Water[row].Mean / s.Water[row].Need }
	for i := range l.Plants {
		p := &l.Plants[i]
		node := &l.Network.Nodes[p.Node]
		if l.ZoneOf(p.Row) != z.Zone || node.Emitter == network.None || s.Water[p.Row].Need <= 0 {
			continue
		}
		shares = append(shares, z.Solution.Out[p.Node]/s.Water[p.Row].Need)
		cv, fewest = max(cv, l.Network.Emitters[node.Emitter].CV), min(fewest, node.Count)
		if low < 0 || share(p.Row) < share(low) {
			low = p.Row
		}
		if high < 0 || share(p.Row) > share(high) {
			high = p.Row
		}
	}
	wanted := limit.EvennessOf(s.Plan)
	if len(shares) == 0 { // then the flows alone are judged
		if wanted.Broken(z.Alike.EU) {
			s.find(Finding{Kind: Uneven, Row: -1, Value: z.Alike.EU, Limit: wanted.At, Zone: z.Zone})
		}
		return 0
	}
	even := evenness.Of(shares, fewest, cv).EU
	if wanted.Broken(even) && wanted.Broken(z.Alike.EU) {
		s.find(Finding{Kind: Unlike, Row: high, Base: low, Value: share(high) / share(low), Limit: 1, Zone: z.Zone})
	}
	return even
}

// needs works out what each row gets and needs. It asks the whole season, so it
// does so only where emitters that are watered together differ.
func (s *Sheet) needs() {
	if s.Water != nil {
		return
	}
	s.Water = make([]RowWater, len(s.Plan.Rows))
	for row, f := range s.flows() {
		s.Water[row].Least, s.Water[row].Mean = f.Least, f.Mean
	}
	year := s.Season
	if year == nil {
		year = season.Of(s.Plan)
	}
	d := demand.Of(s.Plan, year)
	for i := range d.Plantings {
		_, use := d.Peak(i, climate.Typical)
		for _, row := range year.Plantings[d.Plantings[i].Index].Rows {
			s.Water[row].Need = max(s.Water[row].Need, use)
		}
	}
}

// Mixed says whether plants of some zone have emitters that are made to give
// different amounts.
func (s *Sheet) Mixed() bool {
	for i := range s.Zones {
		if s.Zones[i].Mixed {
			return true
		}
	}
	return false
}
