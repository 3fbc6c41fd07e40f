package catalogue

import "evenrow/wasm/ground/source"

// A Trait is one number that is known of a crop.
type Trait int

// The traits of a crop; the comment names the inner unit. Positions are
// permanent: links hold them as numbers of fields.
const (
	Spacing  Trait  = iota // m in the row
	Crowd                  // plants to a square metre of floor
	PerSlab                // plants to a slab or bag of one metre
	Medium1                // m³ of medium for one plant
	Height                 // m, to which it is trained
	Emerge                 // days from sowing to emergence; 0 where they follow from the temperature, see [Crop.Emergence]
	InPlug                 // days in the plug, from sowing at 25 °C; 0 when bought as a plant
	InBlock                // days in the block; 0 when it goes from the plug to its place
	Wait                   // days from planting out to the first harvest
	Picking                // weeks from the first harvest to the last
	KcIni                  // crop coefficient, open air: just planted
	KcMid                  // grown, on the ground
	KcTied                 // grown, tied up to a trellis; 0 where none is printed
	KcEnd                  // at the end
	Ini                    // days just planted
	Dev                    // days until the canopy is full
	Mid                    // days grown
	Late                   // days to the end
	Young                  // m³ of water for a plant and day, just planted
	Grown                  // m³ of water for a plant and day, grown, in full sun
	SeedLow                // °C, seeds come up well from here
	SeedHigh               // °C, to here
	Least                  // °C, it suffers below; above 0 for crops that frost kills
	Most                   // °C, flowers or leaves suffer above
	Traits   = iota        // how many there are
)

// scale is what the whole numbers of the table are divided by, by trait.
var scale = [Traits]float64{
	Spacing: 1e3, Crowd: 100, PerSlab: 1, Medium1: 1e6, Height: 100, Emerge: 1, InPlug: 1, InBlock: 1, Wait: 1, Picking: 1,
	KcIni: 100, KcMid: 100, KcTied: 100, KcEnd: 100, Ini: 1, Dev: 1, Mid: 1, Late: 1,
	Young: 1e6, Grown: 1e6, SeedLow: 1, SeedHigh: 1, Least: 1, Most: 1,
}

// Of returns a trait in its inner unit.
func (c *Crop) Of(t Trait) float64 { return float64(c.traits[t]) / scale[t] }

// Ref returns where a trait's number comes from.
func (c *Crop) Ref(t Trait) source.Ref { return cropSources[c.marks[t]-'a'] }

// Works that more than one table is from.
const (
	fao56  = "FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes and Smith, 1998)"
	fao589 = "FAO Fisheries and Aquaculture Technical Paper 589 (2014)"
)
