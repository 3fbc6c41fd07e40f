package sheet

import (
	"math"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/headroom"
	"evenrow/wasm/works/limit"
)

// rooms finds how much more a plan whose answer is yes can carry.
func rooms(s *Sheet) []headroom.Room {
	if s.Verdict != Yes || s.Wanted != nil { // a pump is sought for what there is
		return nil
	}
	weakest := s.Layout.Plants[s.Zones[s.Critical].Worst].Row
	found := headroom.Of(s.Plan, len(s.Zones), weakest, s.slack(), func(p *plan.Plan) headroom.Answer {
		if margin, b := allOpen(p, s.meter()), limit.MarginOf(p, false); b.Broken(margin) {
			return headroom.Answer{Slack: b.Slack(margin)}
		}
		return assess(p, s.meter()).slack()
	})
	for i := range found {
		if r := &found[i]; r.Why.Limit == headroom.Unsaid {
			r.Why = assess(r.Plan(s.Plan, r.Fails), s.meter()).slack().Why
		}
	}
	return found
}

// EndOf is the end of a room that a finding ends.
func EndOf(k FindingKind) headroom.End {
	return headroom.End{Limit: headroom.Judged, Reason: int(k)}
}

// EndedBy returns the finding that ends a room, if one does.
func EndedBy(e headroom.End) (k FindingKind, ok bool) {
	if e.Limit != headroom.Judged {
		return 0, false
	}
	return FindingKind(e.Reason), true
}

// slack is the verdict with how far it is from turning: the least of what is
// left to the limits that more of anything uses up.
func (s *Sheet) slack() headroom.Answer {
	a := headroom.Answer{Yes: s.Verdict == Yes, Slack: math.Inf(1)}
	if len(s.Findings) > 0 {
		a.Why = EndOf(s.Findings[0].Kind)
	}
	for k := range Kinds {
		for i := range s.Zones {
			if Kinds[k].Held != nil {
				m := Kinds[k].Held(s, &s.Zones[i])
				a.Slack = min(a.Slack, m.Bound.Slack(m.Value))
			}
		}
	}
	return a
}
