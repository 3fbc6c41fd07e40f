package chance

import "math"

// Luck is how many standard deviations a plant must be short more often than
// the mean of all before it is named: with less, one of a thousand plants that
// are alike would be (for rare events counts scatter as their square root).
const Luck = 6

// Many is the share of plants that are short from which on something is to be
// done about it.
const Many = 0.02

// A Remedy is what helps plants that are short because emitters differ.
type Remedy uint8

const (
	NoneWanted        Remedy = iota // few are short
	Unblock                         // emitters are blocked, of plants that have others
	UnblockAndDouble                // emitters are blocked, and one leaves its plant dry
	LessSpread                      // emitters that are made more alike
	LessSpreadOrTwice               // those, or two at each plant, each with half the flow
	Remedies          = iota        // how many there are
)

// Worst returns the zone of which the greatest share of plants is short.
func Worst(zones []Zone) *Zone {
	worst := &zones[0]
	for i := range zones {
		if zones[i].Short > worst.Short {
			worst = &zones[i]
		}
	}
	return worst
}

// Checked returns how many draws of all zones were solved in full beside, and by
// how much a plant's water was off at most, as a share of the mean.
func Checked(zones []Zone) (solved int, off float64) {
	for i := range zones {
		solved += zones[i].Solved
		off = max(off, zones[i].Off)
	}
	return solved, off
}

// Singled says whether the weakest plant is short more often than luck explains:
// where all are alike, one of them is short most often by luck.
func (z *Zone) Singled() bool {
	return z.Often > z.Short+Luck*math.Sqrt(z.Short/float64(z.Draws))
}

// Remedy says what helps, where an emitter is blocked with a chance from 0 to 1.
func (z *Zone) Remedy(blocked float64) Remedy {
	single := z.Fewest < 2
	switch {
	case !(z.Short > Many):
		return NoneWanted
	case blocked > 0 && single:
		return UnblockAndDouble
	case blocked > 0:
		return Unblock
	case single:
		return LessSpreadOrTwice
	}
	return LessSpread
}
