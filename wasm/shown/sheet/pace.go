package sheet

import (
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/limit"
)

// A Pace is what the speed of the water in tubing of one rank is to the limit.
type Pace uint8

const (
	NoLimit    Pace = iota // none is set
	SlowEnough             // within it
	TooFast
	Paces = iota // how many there are
)

// Pace judges the greatest speed of a zone's water in m/s, in tubing of one rank
// of package layout. In rows, whose water slows from emitter to emitter, none is
// set.
func (s *Sheet) Pace(z *ZoneResult, rank int) (speed float64, is Pace) {
	switch rank {
	case layout.Lead:
		speed = z.LeadSpeed
	case layout.Main:
		speed = z.HeaderSpeed
	default:
		return z.RowSpeed, NoLimit
	}
	if limit.SpeedOf(s.Plan).Broken(speed) {
		return speed, TooFast
	}
	return speed, SlowEnough
}
