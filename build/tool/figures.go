package tool

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/shots"
)

// figures are what the guides say in their text of the default example, from
// the same functions as the page.
func figures() map[string]string {
	s := sheet.Answer(plan.Default())
	s.Explore(sheet.Season)
	const noon = 12 * 60 * 60
	c := s.Shots
	l := &c.Lines[c.Peak]
	b := l.Worst()
	block := *b // the same plant, on its block alone
	block.Root, block.Easy = catalogue.BlockVolume, catalogue.BlockEasy
	first := &c.Lines[0]
	hand := shots.ByHand(l.Lit, b, b.Use[shots.Hot])
	return map[string]string{
		"need-from":    l.From.Short(),
		"outage-crop":  s.Season.Name(s.Plan, b.Planting),
		"outage-noon":  wording.Lasting(l.Lasts(b, shots.Hot, noon)),
		"outage-full":  wording.Lasting(dose.Dry(b.Root, b.Easy/b.Root, hand.Hour/3600)),
		"outage-block": wording.Lasting(l.Lasts(&block, shots.Hot, noon)),
		"outage-young": wording.Lasting(first.Lasts(first.Worst(), shots.Hot, noon)),
		"noon-rate":    strconv.FormatFloat(unit.Of(unit.EmitterFlow, unit.Metric).FromInner(hand.Hour/3600), 'f', 3, 64) + " L/h",
		"medium":       unit.Text(unit.PlantWater, unit.Metric, b.Root),
	}
}
