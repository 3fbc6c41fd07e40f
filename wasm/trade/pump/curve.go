// Package pump gives the head that a pump or a tap can hold at a flow.
//
// A pump is its curve. Its horsepower says how much work the motor can do, not
// at which pressure, and no curve follows from it.
package pump

import (
	"errors"
	"strconv"

	"evenrow/wasm/ground/numeric"
)

// A Curve is the head that a supply gives at a flow. It falls strictly as the
// flow rises, everywhere, also where no supply works: beyond its last point,
// and steeply up where water would run back through it.
type Curve interface {
	// Head returns the head in m at flow q in m³/s, and its slope, always
	// negative, in m per m³/s.
	Head(q float64) (h, slope float64)

	// Loss returns the opposite of Head, so that a curve can be a link of a
	// network that gives head instead of losing it.
	Loss(q float64) (loss, slope float64)

	// LastFlow returns the flow in m³/s up to which the curve is known.
	LastFlow() float64
}

// A Point is one point of a pump's curve.
type Point struct {
	Flow float64 // m³/s
	Head float64 // m
}

// backflow is how steep a curve is for water that runs back, in units of the
// shut-off head over the last flow: steep as a check valve is, yet tame enough
// for an iteration.
const backflow = 10

// points is a curve by points.
type points struct {
	curve *numeric.Curve
	first float64 // m, head at no flow
	last  float64 // m³/s
	back  float64 // m per m³/s, slope before 0, negative
}

// ByPoints returns the curve through the points of a maker's curve: two or
// more, from no flow on, the flow rising and the head falling from each to the
// next, no head below 0. Between them it is smooth and falls without
// overshoot (see [numeric.NewCurve]). Beyond the last it goes on straight with
// the slope it has there.
//
// The error names the first point that is wrong, counted from 1.
func ByPoints(p []Point) (Curve, error) {
	if len(p) < 2 {
		return nil, errors.New("a pump curve needs at least two points")
	}
	x, y := make([]float64, len(p)), make([]float64, len(p))
	for i, pt := range p {
		what := "point " + strconv.Itoa(i+1) + " of the pump curve: "
		switch {
		case !finite(pt.Flow) || !finite(pt.Head):
			return nil, errors.New(what + "flow and head must be numbers")
		case i == 0 && pt.Flow != 0:
			return nil, errors.New(what + "the flow must be 0, where the pump is shut off")
		case pt.Head < 0:
			return nil, errors.New(what + "the head must not be below 0")
		case i > 0 && pt.Flow <= p[i-1].Flow:
			return nil, errors.New(what + "the flow must be more than at the point before")
		case i > 0 && pt.Head >= p[i-1].Head:
			return nil, errors.New(what + "the head must be less than at the point before")
		}
		x[i], y[i] = pt.Flow, pt.Head
	}
	c := &points{curve: numeric.NewCurve(x, y), first: y[0], last: x[len(x)-1]}
	_, slope := c.curve.At(0)
	c.back = min(-backflow*c.first/c.last, slope)
	return c, nil
}

func finite(v float64) bool { return v-v == 0 }

func (c *points) Head(q float64) (h, slope float64) {
	if q < 0 {
		return c.first + c.back*q, c.back
	}
	return c.curve.At(q)
}

func (c *points) Loss(q float64) (loss, slope float64) {
	h, s := c.Head(q)
	return -h, -s
}

func (c *points) LastFlow() float64 { return c.last }

// parabola is a curve by shut-off head and greatest flow.
type parabola struct {
	first float64 // m
	last  float64 // m³/s
}

// ByTwo returns the curve of a pump of which only the head at no flow, in m,
// and the flow at no head, in m³/s, are known, both more than 0:
//
//	H = shutOff (1 - (q/maxFlow)²)
//
// A parabola is common practice for want of more (no source); real curves lie
// on both sides of it. Below 1/1000 of maxFlow it is a straight line, so that
// its slope does not vanish, which changes the head by less than a millionth.
func ByTwo(shutOff, maxFlow float64) (Curve, error) {
	switch {
	case !(shutOff > 0) || !finite(shutOff):
		return nil, errors.New("the shut-off head must be more than 0")
	case !(maxFlow > 0) || !finite(maxFlow):
		return nil, errors.New("the greatest flow must be more than 0")
	}
	return &parabola{shutOff, maxFlow}, nil
}

// Tap returns the curve of a tap from its head with every tap closed, in m,
// and the flow it gives wide open into a bucket, in m³/s, both more than 0.
// All the head is then lost in the house's pipes, by the square of the flow,
// so the curve is that of [ByTwo].
func Tap(staticHead, tapFlow float64) (Curve, error) {
	switch {
	case !(staticHead > 0) || !finite(staticHead):
		return nil, errors.New("the tap's static head must be more than 0")
	case !(tapFlow > 0) || !finite(tapFlow):
		return nil, errors.New("the tap's flow must be more than 0")
	}
	return &parabola{staticHead, tapFlow}, nil
}

// lowShare is the share of the last flow below which a parabola is straight.
const lowShare = 1e-3

func (c *parabola) Head(q float64) (h, slope float64) {
	u := q / c.last
	switch {
	case u < 0:
		return c.first * (1 - backflow*u), -backflow * c.first / c.last
	case u < lowShare:
		return c.first * (1 - lowShare*u), -lowShare * c.first / c.last
	}
	return c.first * (1 - u*u), -2 * u * c.first / c.last
}

func (c *parabola) Loss(q float64) (loss, slope float64) {
	h, s := c.Head(q)
	return -h, -s
}

func (c *parabola) LastFlow() float64 { return c.last }

// regulated is a curve behind a pressure regulator.
type regulated struct {
	Curve
	set   float64 // m
	droop float64 // m per m³/s, positive
}

// droop is how far a regulator's head falls from no flow to the last flow of
// the curve before it, as a share of its setting. A real one falls by some
// percent, which makers state seldom; this one only keeps the curve falling.
const droop = 1e-4

// Regulated returns curve c behind a regulator set to setHead m, more than 0.
// Where the curve gives more, the regulator gives setHead, less a droop of
// 1e-4 of it at the curve's last flow; where the curve gives less, the
// regulator stands open and is taken to lose nothing.
func Regulated(c Curve, setHead float64) Curve {
	return &regulated{c, setHead, droop * setHead / c.LastFlow()}
}

func (c *regulated) Head(q float64) (h, slope float64) {
	h, slope = c.Curve.Head(q)
	d := c.droop
	if q < 0 {
		d = backflow * c.set / c.LastFlow()
	}
	if set := c.set - d*q; set < h {
		return set, -d
	}
	return h, slope
}

func (c *regulated) Loss(q float64) (loss, slope float64) {
	h, s := c.Head(q)
	return -h, -s
}
