package view

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
)

// The two widths of every picture, in px. The page shows one of them.
var widths = [...]struct {
	width float64
	class markup
}{{340, "narrow"}, {760, "wide"}}

// A plot is the frame of a line picture: where values stand on the paper.
type plot struct {
	left, right, top, bottom float64 // px
	x0, x1, y0, y1           float64 // values at the edges
}

func (p *plot) x(v float64) float64 {
	return p.left + (v-p.x0)/(p.x1-p.x0)*(p.right-p.left)
}

func (p *plot) y(v float64) float64 {
	return p.bottom - (v-p.y0)/(p.y1-p.y0)*(p.bottom-p.top)
}

// A tick is a value at an axis, in the inner unit, with its text.
type tick struct {
	v    float64
	text string
}

// ticks returns round values from lo to hi in the unit shown, about n of them.
func (sc *scene) ticks(k unit.Kind, lo, hi float64, n int) []tick {
	u := unit.Of(k, sc.sys)
	a, b := u.FromInner(lo), u.FromInner(hi)
	if !(b > a) || !finite(b-a) {
		return nil
	}
	step := roundStep((b - a) / float64(n))
	decimals := 0
	for s := step; s < 0.999 && decimals < 6; s *= 10 {
		decimals++
	}
	var ts []tick
	for i := math.Ceil(a/step - 1e-9); i*step <= b+1e-9*step && len(ts) < 3*n+3; i++ {
		v := i * step
		if i == 0 {
			v = 0 // not −0
		}
		ts = append(ts, tick{u.ToInner(v), minus(strconv.FormatFloat(v, 'f', decimals, 64))})
	}
	return ts
}

// roundStep is the least of 1, 2 and 5 times a power of ten that is not below v.
func roundStep(v float64) float64 {
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

// heads is side for heads.
func (sc *scene) heads(p *plot) { sc.side(p, unit.Head) }

// side draws the lines across and the scale at the left, with the unit at the
// top one.
func (sc *scene) side(p *plot, k unit.Kind) { sc.sideOf(p, k, 4) }

// sideOf is side with about n lines.
func (sc *scene) sideOf(p *plot, k unit.Kind, n int) {
	ts := sc.ticks(k, p.y0, p.y1, n)
	grid := &path{}
	for _, t := range ts {
		grid.move(p.left, p.y(t.v))
		grid.line(p.right, p.y(t.v))
	}
	sc.draw("grid", grid)
	for i, t := range ts {
		s := t.text
		if i == len(ts)-1 {
			s += " " + sc.symbol(k)
		}
		sc.label(p.left-6, p.y(t.v)+4, "end", s)
	}
}

// A limit is a dashed line across a picture with its words.
type limit struct {
	head float64
	text string
}

// limits draws dashed lines with their words at the right, above the line, or
// below it where another limit or the end of the curve, at a head, stands in
// the way.
func (sc *scene) limits(p *plot, end float64, ls ...limit) {
	for i, l := range ls {
		y := p.y(l.head)
		if !finite(y) || y < p.top-1 || y > p.bottom+1 {
			continue
		}
		dash := &path{}
		dash.move(p.left, y)
		dash.line(p.right, y)
		sc.draw("dash", dash)
		dy := -5.0
		if d := p.y(end) - y; d < 4 && d > -22 {
			dy = 14
		}
		for j, o := range ls {
			if d := p.y(o.head) - y; j != i && d <= 0 && d > -20 && (d < 0 || j < i) {
				dy = 14
			}
		}
		sc.label(p.right, y+dy, "end", l.text)
	}
}

// axis draws values below a picture.
func (sc *scene) axis(p *plot, k unit.Kind, ts []tick, name string) {
	for _, t := range ts {
		sc.label(p.x(t.v), p.bottom+16, "middle", t.text)
	}
	if u := sc.symbol(k); u != "" {
		name += ", " + u
	}
	sc.label(p.right, p.bottom+32, "end", name)
}

// span returns the least and the greatest of the finite values.
func span(lo, hi float64, vs ...float64) (float64, float64) {
	for _, v := range vs {
		if finite(v) {
			lo, hi = min(lo, v), max(hi, v)
		}
	}
	return lo, hi
}
