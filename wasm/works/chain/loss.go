package chain

import (
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/ends"
	"evenrow/wasm/trade/pipe"
)

// Loss returns the loss coefficient of what stands between the supply and the supply line,
// on the velocity in tubing of a bore in m. Of a pump it is the most that the way may become
// with another one, so that a duty that is asked for is enough.
func (c *Chains) Loss(bore float64) float64 {
	k := c.Supply.Loss(bore)
	for i := range c.might {
		k = max(k, c.might[i].Loss(bore))
	}
	return k
}

// UnionLoss is the loss coefficient of a threaded joint, on the velocity within it.
const UnionLoss = 0.08

// Loss returns the loss coefficient of all that stands between the places of a way, and
// of its gauges' tees, on the velocity in tubing of a bore in m. What the devices take the
// plan says itself.
func (w *Way) Loss(bore float64) (k float64) {
	for i := range w.Gaps {
		k += w.Gaps[i].Loss(bore)
	}
	for i := range w.Places {
		if p := &w.Places[i]; p.Device == First || p.Device == Second {
			k += narrow(p.In, p.Out, bore, catalogue.Fittings[catalogue.TeeThrough].K)
		}
	}
	return k
}

// Loss is that of the parts of a gap.
func (g *Gap) Loss(bore float64) (k float64) {
	for _, s := range g.Steps {
		k += narrow(s.In, s.Out, bore, UnionLoss)
	}
	return k
}

// narrow is the loss coefficient of a part, on the velocity in tubing of a bore in m: the
// lesser bore of its two ends narrows the way, and it has a coefficient of its own on the
// velocity there. An end that is pushed into tubing is counted with the tubing.
func narrow(a, b ends.End, bore, own float64) (k float64) {
	free := a.Bore()
	if other := b.Bore(); free == 0 || other > 0 && other < free {
		free = other
	}
	if free == 0 {
		return 0 // of tubing to tubing
	}
	r := bore / free
	k = own * r * r * r * r
	if free < bore {
		k += pipe.Insert(free, bore)
	}
	return k
}
