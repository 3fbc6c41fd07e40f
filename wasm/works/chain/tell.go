package chain

import (
	"math"

	"evenrow/wasm/trade/ends"
)

// Missing is the first gap of the ways that no parts close, with its way; nil for none.
func (c *Chains) Missing() (*Gap, *Way) {
	for _, w := range [...]*Way{&c.Supply, &c.Header} {
		for i := range w.Gaps {
			if !w.Gaps[i].OK {
				return &w.Gaps[i], w
			}
		}
	}
	return nil, nil
}

// Broken is how many places there are where two kinds of tubing meet and no parts lead
// from one to the other.
func (c *Chains) Broken() (n int) {
	for i := range c.Pairs {
		if !c.Pairs[i].Gap.OK {
			n++
		}
	}
	return n
}

// Weak is the first gap whose parts carry less than they may have to, or nil.
func (c *Chains) Weak() *Gap {
	for _, w := range [...]*Way{&c.Supply, &c.Header} {
		for i := range w.Gaps {
			if w.Gaps[i].Weak {
				return &w.Gaps[i]
			}
		}
	}
	return nil
}

// Weakest is the joint of a weak gap that carries least.
func (g *Gap) Weakest() (rule ends.Rule, weak bool) {
	least := math.Inf(1)
	for _, r := range g.Joints {
		if g.Weak && ends.Seals[r].Pressure < least {
			rule, least = r, ends.Seals[r].Pressure
		}
	}
	return rule, g.Weak
}

// Stands is the pressure in Pa that may stand at a gap of a way, at the level of the
// supply, with every outlet shut.
func (c *Chains) Stands(w *Way, g *Gap) float64 {
	for i := range g.From + 1 {
		if w.Places[i].Device == Regulator {
			return c.rest
		}
	}
	return c.ahead
}

// MateOf is an end that mates with another: such as a fitting needs that closes a gap.
func MateOf(e ends.End) ends.End {
	for _, o := range ends.All {
		if ends.Mate(e, o).Holds(0) && o.Family != ends.Taper {
			return o
		}
	}
	for _, o := range ends.All {
		if ends.Mate(e, o).Holds(0) {
			return o
		}
	}
	return e
}
