package plan

import (
	"strings"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
)

// Actions by which a reading of the drain comes into a plan, and is taken back.
const (
	CorrectTo   = "correct-to." // see [Sky.CorrectTo]
	CorrectBack = "correct-back"
)

// CorrectTo is the action by which plants are counted from a day on to take up so many times
// what is worked out; empty where no plan may hold that.
func (s *Sky) CorrectTo(from day.Day, times float64) string {
	p := &Plan{Sky: *s}
	p.Sky.Adjust, p.Sky.Since = times, int(from)
	adjust, since := FieldNamed("sky", "adjust"), FieldNamed("sky", "since")
	if adjust.Problem(p, 0) != nil || since.Problem(p, 0) != nil {
		return ""
	}
	return CorrectTo + from.ISO() + "." + unit.Exact(unit.Share, unit.Metric, times)
}

// correct does what [CorrectTo] and [CorrectBack] ask for, and says whether it was one of them.
// What was counted before stays before that day, and is what comes back.
func (d *Draft) correct(h *History, action string) bool {
	to, is := strings.CutPrefix(action, CorrectTo)
	if !is && action != CorrectBack {
		return false
	}
	adjust, since, before := FieldNamed("sky", "adjust"), FieldNamed("sky", "since"), FieldNamed("sky", "before")
	p, _ := d.Read()
	now := p.Sky
	switch {
	case is:
		on, share, _ := strings.Cut(to, ".")
		q := p.Clone()
		if since.Read(q, 0, on) != nil || adjust.Read(q, 0, share) != nil || since.Problem(q, 0) != nil || adjust.Problem(q, 0) != nil {
			return false
		}
		p.Sky.Adjust, p.Sky.Since, p.Sky.Before = q.Sky.Adjust, q.Sky.Since, now.AdjustOn(day.Day(q.Sky.Since-1))
	case action == CorrectBack && now.Since != Always:
		p.Sky.Adjust, p.Sky.Since, p.Sky.Before = now.Before, Always, before.Default
	default:
		return false
	}
	for _, f := range [...]*Field{adjust, since, before} {
		d.Set(Path(f, 0), f.Typed(p, 0))
		o := Measured
		if f.Value(p, 0) == f.Default {
			o = ByRule
		}
		h.put(f, 0, 1, o)
	}
	d.settle(h)
	return true
}
