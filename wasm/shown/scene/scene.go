// Package scene holds one worked-out plan on its way to the page: what several
// jobs say of it in the same words.
package scene

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/water"
)

// A Scene is one sheet on its way to the page, with what several fragments
// need worked out once.
type Scene struct {
	*block.Writer
	S      *sheet.Sheet
	Plants []sheet.Fare // the sheet's, by index into Layout.Plants
	Zone   *sheet.ZoneResult
	Link   Linker // leads to changed plans; nil where there is no page to lead to
	Still  bool   // no script leads to fields that are out of sight
	ByRow  bool   // the plants of each row stand on the same screen, and can be led to
}

// Bare is a scene of which nothing is worked out; s may be nil.
func Bare(s *sheet.Sheet, sys unit.System) *Scene {
	return &Scene{Writer: &block.Writer{Units: wording.Units{Sys: sys, Weight: 1000 * water.Gravity}}, S: s}
}

// New is the scene of a sheet.
func New(s *sheet.Sheet, link Linker) *Scene {
	sc := Bare(s, s.Plan.Units)
	sc.Link = link
	if s.Critical >= 0 && s.Critical < len(s.Zones) {
		sc.Zone = &s.Zones[s.Critical]
	}
	if s.Layout == nil {
		return sc
	}
	if d := s.Layout.Network.Water.Density; d > 0 {
		sc.Weight = d * water.Gravity
	}
	sc.Plants = s.Plants
	return sc
}

// A Linker returns the address of a plan within the page, beginning with "#".
type Linker func(*plan.Plan) string
