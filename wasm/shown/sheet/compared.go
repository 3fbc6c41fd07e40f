package sheet

import "math"

// Extremes are the zones whose plants get least and most, on the mean.
func (s *Sheet) Extremes() (low, high *ZoneResult) {
	for i := range s.Zones {
		z := &s.Zones[i]
		if low == nil || z.Alike.Mean < low.Alike.Mean {
			low = z
		}
		if high == nil || z.Alike.Mean > high.Alike.Mean {
			high = z
		}
	}
	return low, high
}

// LeastShare is what the plant that gets least of its zone gets, as a share of
// the zone's mean: the least of all zones; and whether that is less than what
// counts as nearly the same.
func (s *Sheet) LeastShare() (share float64, seen bool) {
	share = math.Inf(1)
	for i := range s.Zones {
		share = min(share, s.Zones[i].Least/s.Zones[i].Alike.Mean)
	}
	return share, share < nearlyFrom
}

// LeastAlike is the zone whose plants are least alike, of several the critical
// one; nil where no water flows.
func (s *Sheet) LeastAlike() *ZoneResult {
	if s.Critical >= len(s.Zones) {
		return nil
	}
	z := &s.Zones[s.Critical]
	for i := range s.Zones {
		if v := &s.Zones[i]; v.Open > 0 && v.Alike.EU < z.Alike.EU-rounding {
			z = v
		}
	}
	return z
}

// nothing is a head in m that prints as none.
const nothing = 0.005

// Nothing says whether a head in m is as good as none.
func Nothing(head float64) bool { return math.Abs(head) < nothing }
