package sheet

import "evenrow/wasm/grower/plan"

// Regulated says whether a regulator follows a pump or a tap, so that the head
// that zones are given is that behind it.
func (s *Sheet) Regulated() bool {
	return s.Layout != nil && s.Layout.Curve != nil && s.Layout.Plan.Supply.Regulator > 0
}

// RegulatorFirst says whether package layout puts a regulator before a filter or
// a device that stands before it in truth, which errs on the safe side.
func (s *Sheet) RegulatorFirst() bool {
	return s.Regulated() && (s.Layout.FilterLink >= 0 || s.Layout.Plan.Supply.Devices > 0)
}

// A Relief is what takes pressure off tubing that cannot carry it while nothing
// flows.
type Relief uint8

const (
	LowerRegulator Relief = iota // the one that there is
	FitRegulator                 // a tap gives what it gives
	LowerTank                    // or a regulator
	WeakerPump                   // or a regulator
	Reliefs        = iota        // how many there are
)

// Relief is what would take pressure off this plan's tubing.
func (s *Sheet) Relief() Relief {
	switch supply := &s.Layout.Plan.Supply; {
	case supply.Regulator > 0:
		return LowerRegulator
	case supply.Kind == plan.Mains:
		return FitRegulator
	case supply.Kind == plan.GravityTank:
		return LowerTank
	}
	return WeakerPump
}
