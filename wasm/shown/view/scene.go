package view

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/water"
)

// A scene is one sheet on its way to the page, with what several fragments
// need worked out once.
type scene struct {
	*writer
	s      *sheet.Sheet
	sys    unit.System
	weight float64 // Pa, of one metre of water
	plants []seen  // by index into Layout.Plants
	zone   *sheet.ZoneResult
	left   bool // out: what is drawn takes too much work
}

// A state is how an emitter runs. The drop on the plan view shows it.
type state uint8

const (
	unknown state = iota // its zone was not solved
	shut
	below
	within
	above
	states
)

// words of the states, as a table prints them.
var stateWords = [states]string{"not worked out", "shut", "below range", "in range", "above range"}

// A seen is what the page says about one plant.
type seen struct {
	head  float64 // m of water above its emitter
	flow  float64 // m³/s, all its emitters together
	state state
}

func newScene(s *sheet.Sheet) *scene {
	sc := &scene{writer: &writer{}, s: s, sys: s.Plan.Units, weight: 1000 * water.Gravity}
	if s.Critical >= 0 && s.Critical < len(s.Zones) {
		sc.zone = &s.Zones[s.Critical]
	}
	if s.Layout == nil {
		return sc
	}
	if d := s.Layout.Network.Water.Density; d > 0 {
		sc.weight = d * water.Gravity
	}
	sc.plants = make([]seen, len(s.Layout.Plants))
	for i := range s.Zones {
		sc.see(&s.Zones[i])
	}
	return sc
}

// see notes how the plants of a zone fare.
func (sc *scene) see(z *sheet.ZoneResult) {
	if z.Solution == nil {
		return
	}
	l := sc.s.Layout
	for i := range l.Plants {
		pl := &l.Plants[i]
		if l.ZoneOf(pl.Row) != z.Zone {
			continue
		}
		e := sc.emitterOf(i)
		v := &sc.plants[i]
		v.head = z.Solution.Head[pl.Node] - l.Network.Nodes[pl.Node].Z
		v.flow = z.Solution.Out[pl.Node]
		switch {
		case e == nil:
		case !z.Solution.Open[pl.Node] || v.flow <= 0:
			v.state = shut
		case v.head < e.Lowest:
			v.state = below
		case v.head > e.Highest:
			v.state = above
		default:
			v.state = within
		}
	}
}

// emitterOf returns the emitter of a plant, or nil.
func (sc *scene) emitterOf(plant int) *emitter.Emitter {
	n := &sc.s.Layout.Network
	if plant < 0 || plant >= len(sc.s.Layout.Plants) {
		return nil
	}
	e := n.Nodes[sc.s.Layout.Plants[plant].Node].Emitter
	if e < 0 || e >= len(n.Emitters) {
		return nil
	}
	return &n.Emitters[e]
}

// finite says whether v can be printed.
func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// amount is v with its unit, as the page prints it.
func (sc *scene) amount(k unit.Kind, v float64) string {
	if !finite(v) {
		return "–"
	}
	s := minus(unit.Figure(k, sc.sys, v))
	if u := sc.symbol(k); u != "" {
		s += "\u00a0" + u // a figure and its unit stay on one line
	}
	return s
}

// bare is v without its unit, for a table whose heading names it.
func (sc *scene) bare(k unit.Kind, v float64) string {
	if !finite(v) {
		return "–"
	}
	return minus(unit.Figure(k, sc.sys, v))
}

// head is the pressure that a gauge would show, with its head: "3.2 bar (32.2 m)".
func (sc *scene) head(v float64) string {
	if !finite(v) {
		return "–"
	}
	return sc.amount(unit.Pressure, v*sc.weight) + " (" + sc.amount(unit.Head, v) + ")"
}

// headOf is a pressure with its head.
func (sc *scene) headOf(pascals float64) string { return sc.head(pascals / sc.weight) }

// symbol is the unit of a kind, for a heading.
func (sc *scene) symbol(k unit.Kind) string { return unit.Of(k, sc.sys).Symbol }

// count is a number with its noun.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// place names a plant: "row 4, plant 30".
func (sc *scene) place(plant int) string {
	if sc.s.Layout == nil || plant < 0 || plant >= len(sc.s.Layout.Plants) {
		return ""
	}
	p := &sc.s.Layout.Plants[plant]
	return "row " + strconv.Itoa(p.Row+1) + ", plant " + strconv.Itoa(p.Number)
}

// minus turns a hyphen before a number into a minus sign.
func minus(s string) string {
	if len(s) > 0 && s[0] == '-' {
		return "−" + s[1:]
	}
	return s
}
