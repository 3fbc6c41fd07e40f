package judge

import (
	"fmt"
	"math"
	"strings"

	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/sheet"
)

// headline checks what the answer says of the plants, which is worked out again
// from the flows in the solution with the usual definition of EU: the least
// flow over the mean, less 1.27 times the variation of manufacture over the root
// of the emitters at a plant. kind is which of the claims it was, empty for one
// that says nothing of evenness.
func headline(s *sheet.Sheet) (kind, fault string) {
	if s.Verdict == sheet.Cannot {
		return "", ""
	}
	p := s.Plan
	// eu is that of a zone, of all for 0, and by each row's need when negative.
	eu := func(zone int) float64 {
		least, sum, n := math.Inf(1), 0.0, 0.0
		made := 1.0
		for _, z := range s.Zones {
			if zone != 0 && z.Zone != zone && z.Zone != -zone {
				continue
			}
			cv, fewest := 0.0, math.Inf(1)
			for _, pl := range s.Layout.Plants {
				if s.Layout.ZoneOf(pl.Row) != z.Zone {
					continue
				}
				q := z.Solution.Out[pl.Node]
				if zone < 0 {
					if s.Water[pl.Row].Need == 0 {
						continue // nothing grows there
					}
					q /= s.Water[pl.Row].Need
				}
				least, sum, n = min(least, q), sum+q, n+1
				row := &p.Rows[pl.Row]
				cv, fewest = max(cv, p.Emitters[row.Emitter].CV), min(fewest, float64(row.PerPlant))
			}
			made = min(made, max(0, 1-1.27*cv/math.Sqrt(fewest)))
		}
		return made * least / (sum / n)
	}
	worst := 1.0
	for _, z := range s.Zones {
		worst = min(worst, eu(z.Zone))
	}
	word, claim, _ := strings.Cut(answer.Announce(s), ". ")
	const tiny = 1e-9
	if s.Verdict != sheet.Yes {
		its := strings.HasPrefix(claim, "Every plant gets its water")
		if its && s.Water != nil { // the least share of its need that a plant gets, over the mean
			worst = 1
			for _, z := range s.Zones {
				worst = min(worst, max(eu(z.Zone), eu(-z.Zone)))
			}
		}
		if its {
			kind = "its"
		}
		if strings.Contains(claim, "same") || its && worst < p.Limits.Evenness-tiny && s.Sameness != sheet.AsNeeded {
			fault = fmt.Sprintf("%s. %s With an EU of %.4f in the worst zone", word, claim, worst)
		}
		return kind, fault
	}
	var ok bool
	switch {
	case strings.HasSuffix(claim, "the plant gets its water."):
		kind, ok = "one", len(s.Layout.Plants) == 1
	case strings.HasSuffix(claim, "every plant gets the same water.") && !strings.Contains(claim, "not every"):
		kind, ok = "same", eu(0) >= 0.99-tiny
	case strings.HasSuffix(claim, "every plant gets nearly the same water."):
		kind, ok = "nearly", eu(0) >= 0.9-tiny && eu(0) < 0.99+tiny
	case strings.HasSuffix(claim, "every plant of a zone gets the same water."):
		kind, ok = "zone", worst >= 0.99-tiny && eu(0) < 0.9+tiny
	case strings.HasSuffix(claim, "every plant of a zone gets nearly the same water."):
		kind, ok = "nearly zone", worst >= 0.9-tiny && eu(0) < 0.9+tiny
	case strings.Contains(claim, "Plants get different amounts of water, each row about in proportion to what its crop needs."):
		kind, ok = "needed", worst < 0.9+tiny
		for _, z := range s.Zones {
			ok = ok && eu(-z.Zone) >= 0.9-tiny
		}
	case strings.HasSuffix(claim, "but not every plant gets the same water."):
		kind, ok = "not", worst < 0.9+tiny
	}
	if !ok {
		fault = fmt.Sprintf("%q, with an EU of %.4f over all plants and %.4f in the worst zone", claim, eu(0), worst)
	}
	return kind, fault
}
