package plan

import (
	"slices"

	"evenrow/wasm/ground/numeric"
)

// ZoneOf returns the zone that a row, from 0, is watered with. In one line, and
// in a ring, no valve shuts off one row alone, so all rows are in row 1's zone.
func (p *Plan) ZoneOf(row int) int {
	if p.Header.Layout != HeaderAndRows {
		row = 0
	}
	return p.Rows[row].Zone
}

// Zones returns the zones in use, each once, rising.
func (p *Plan) Zones() []int {
	z := make([]int, 0, MaxZones)
	for i := range p.Rows {
		if n := p.ZoneOf(i); !slices.Contains(z, n) {
			z = append(z, n)
		}
	}
	numeric.Sort(len(z), func(i, j int) bool { return z[i] < z[j] }, func(i, j int) { z[i], z[j] = z[j], z[i] })
	return z
}
