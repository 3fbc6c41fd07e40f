package plan

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
)

// A Crop changes a crop of the catalogue, or fills one of its places for crops
// of the grower's own.
type Crop struct {
	Of     int                       // index into catalogue.Crops
	Name   string                    // empty to keep its name
	Traits [catalogue.Traits]float64 // in inner units; Unset for as in the table
}

// MaxCrops is how many changed crops a plan may hold.
const MaxCrops = 12

// Unset is the value of a number that may be left empty, and was; see
// [Field.Empty].
const Unset = -1000

// Trait returns a number about a crop, an index into catalogue.Crops: the
// grower's where there is one, else that of the table.
func (p *Plan) Trait(crop int, t catalogue.Trait) float64 {
	if c, ok := p.Edited(crop, t); ok {
		return c
	}
	return catalogue.Crops[crop].Of(t)
}

// Edited returns the grower's own number about a crop, and whether there is
// one. The first record that has it counts.
func (p *Plan) Edited(crop int, t catalogue.Trait) (float64, bool) {
	for i := range p.Crops {
		if c := &p.Crops[i]; c.Of == crop && c.Traits[t] != Unset {
			return c.Traits[t], true
		}
	}
	return 0, false
}

// Told reports whether the grower has told any number about a crop.
func (p *Plan) Told(crop int) bool {
	for t := range catalogue.Trait(catalogue.Traits) {
		if _, ok := p.Edited(crop, t); ok {
			return true
		}
	}
	return false
}

// CropName returns the name of a crop, which the grower may have changed.
func (p *Plan) CropName(crop int) string {
	for i := range p.Crops {
		if c := &p.Crops[i]; c.Of == crop && c.Name != "" {
			return c.Name
		}
	}
	return words.Say(catalogue.Crops[crop].Name)
}

// Emergence returns the days from sowing to emergence of a crop at temp °C,
// and how sure they are; see [catalogue.Crop.Emergence].
func (p *Plan) Emergence(crop int, temp float64) (days float64, how catalogue.Sprouting) {
	if d := p.Trait(crop, catalogue.Emerge); d > 0 {
		return d, catalogue.Tested
	}
	return catalogue.Crops[crop].Emergence(temp)
}
