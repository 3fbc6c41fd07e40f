package block

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/wording"
)

// A Plot is the frame of a line picture: where values stand on the paper.
type Plot struct {
	Left, Right, Top, Bottom float64 // px
	X0, X1, Y0, Y1           float64 // values at the edges
}

func (p *Plot) X(v float64) float64 {
	return p.Left + (v-p.X0)/(p.X1-p.X0)*(p.Right-p.Left)
}

func (p *Plot) Y(v float64) float64 {
	return p.Bottom - (v-p.Y0)/(p.Y1-p.Y0)*(p.Bottom-p.Top)
}

// A time axis runs in days.
func (p *Plot) Day(d day.Day) float64 { return p.X(float64(d)) }

// A Tick is a value at an axis, in the inner unit, with its text.
type Tick struct {
	V    float64
	Text string
}

// Ticks returns round values from lo to hi in the unit shown, about n of them.
func (w *Writer) Ticks(k unit.Kind, lo, hi float64, n int) []Tick {
	u := unit.Of(k, w.Sys)
	a, b := u.FromInner(lo), u.FromInner(hi)
	if !(b > a) || !wording.Finite(b-a) {
		return nil
	}
	step := RoundStep((b - a) / float64(n))
	decimals := 0
	for s := step; s < 0.999 && decimals < 6; s *= 10 {
		decimals++
	}
	var ts []Tick
	for i := math.Ceil(a/step - 1e-9); i*step <= b+1e-9*step && len(ts) < 3*n+3; i++ {
		v := i * step
		if i == 0 {
			v = 0 // not −0
		}
		ts = append(ts, Tick{u.ToInner(v), wording.Minus(strconv.FormatFloat(v, 'f', decimals, 64))})
	}
	return ts
}

// RoundStep is the least of 1, 2 and 5 times a power of ten that is not below v.
func RoundStep(v float64) float64 {
	step := 1.0
	for step > v {
		step /= 10
	}
	for step*10 <= v {
		step *= 10
	}
	for _, m := range [...]float64{1, 2, 5} {
		if step*m >= v {
			return step * m
		}
	}
	return step * 10
}

// Heads is [Writer.Side] for heads.
func (w *Writer) Heads(p *Plot) { w.Side(p, unit.Head) }

// Side draws the lines across and the scale at the left, with the unit at the
// top one.
func (w *Writer) Side(p *Plot, k unit.Kind) { w.SideOf(p, k, 4) }

// SideOf is [Writer.Side] with about n lines.
func (w *Writer) SideOf(p *Plot, k unit.Kind, n int) {
	ts := w.Ticks(k, p.Y0, p.Y1, n)
	grid := &Path{}
	for _, t := range ts {
		grid.Move(p.Left, p.Y(t.V))
		grid.Line(p.Right, p.Y(t.V))
	}
	w.Draw("grid", grid)
	for i, t := range ts {
		s := t.Text
		if i == len(ts)-1 {
			s += " " + w.Symbol(k)
		}
		w.Label(p.Left-6, p.Y(t.V)+4, "end", s)
	}
}

// A Limit is a dashed line across a picture with its words.
type Limit struct {
	At   float64 // the value where it stands
	Text string
}

// Limits draws dashed lines with their words at the right, above the line, or
// below it where another limit or the end of the curve, at a head, stands in
// the way.
func (w *Writer) Limits(p *Plot, end float64, ls ...Limit) {
	for i, l := range ls {
		y := p.Y(l.At)
		if !wording.Finite(y) || y < p.Top-1 || y > p.Bottom+1 {
			continue
		}
		dash := &Path{}
		dash.Move(p.Left, y)
		dash.Line(p.Right, y)
		w.Draw("dash", dash)
		dy := -5.0
		if d := p.Y(end) - y; d < 4 && d > -22 {
			dy = 14
		}
		for j, o := range ls {
			if d := p.Y(o.At) - y; j != i && d <= 0 && d > -20 && (d < 0 || j < i) {
				dy = 14
			}
		}
		w.Label(p.Right, y+dy, "end", l.Text)
	}
}

// Axis draws values below a picture.
func (w *Writer) Axis(p *Plot, k unit.Kind, ts []Tick, name string) {
	for _, t := range ts {
		w.Label(p.X(t.V), p.Bottom+16, "middle", t.Text)
	}
	if u := w.Symbol(k); u != "" {
		name += ", " + u
	}
	w.Label(p.Right, p.Bottom+32, "end", name)
}

// Span returns the least and the greatest of the finite values.
func Span(lo, hi float64, vs ...float64) (float64, float64) {
	for _, v := range vs {
		if wording.Finite(v) {
			lo, hi = min(lo, v), max(hi, v)
		}
	}
	return lo, hi
}
