package season

import (
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// However many crops there are, each has its own planting: the 65th stood for
// the first once, and neither was planted twice.
func TestPlantingsOfALongListOfCrops(t *testing.T) {
	before := catalogue.Crops
	defer func() { catalogue.Crops = before }()
	catalogue.Crops = slices.Clone(before)
	for len(catalogue.Crops) <= 64 {
		catalogue.Crops = append(catalogue.Crops, before[0])
	}
	p := plan.Default()
	p.Rows = p.Rows[:2]
	p.Rows[0].Crop, p.Rows[1].Crop = 0, 64
	s := &Season{}
	s.plantings(p)
	if len(s.Plantings) != 2 || s.Plantings[0].Crop != 0 || s.Plantings[1].Crop != 64 {
		t.Errorf("rows of crops 0 and 64: %+v", s.Plantings)
	}
}
