package network

import "evenrow/wasm/trade/water"

// A Drag is what one link loses, by itself and for many flows.
type Drag struct {
	link Link
	r    resistance
}

// NewDrag makes a link in water w ready.
func NewDrag(l Link, w water.Water) *Drag { return &Drag{l, newResistance(&l, w)} }

// Loss returns the head in m that the link loses at a flow of q m³/s, just as a
// [Solver] takes it, and its slope in m per m³/s.
func (d *Drag) Loss(q float64) (loss, slope float64) { return d.r.loss(&d.link, q) }

// Loss returns the head in m that the link loses at one flow of q m³/s in water
// w; see [Drag] for many.
func (l Link) Loss(q float64, w water.Water) float64 {
	d := NewDrag(l, w)
	loss, _ := d.Loss(q)
	return loss
}
