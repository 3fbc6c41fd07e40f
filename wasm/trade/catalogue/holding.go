package catalogue

import "evenrow/wasm/ground/source"

// A Holding is how much of the water in a medium roots can take up easily.
type Holding struct {
	Easy   float64 // share of the medium's volume, given up between 10 and 50 cm of suction
	Source source.Ref
}

// Holdings go with Media, one each.
var Holdings = []Holding{
	{0.25, cocoHolds},
	{0.50, source.Ref{At: "half of a stone-wool slab's volume", Standing: source.Practice}},
	{0.25, cocoHolds},
	{0.25, cocoHolds},
	{0.25, cocoHolds},
}

var cocoHolds = source.Ref{At: "250 to 300 mL in a litre of coco, half as much in strong feed", Standing: source.Practice}

// The block in which a plant stands at first, in m³: 10 cm a side and 6.5 cm
// high, and what it gives up easily (common practice, no source).
const (
	BlockVolume = 0.65e-3
	BlockEasy   = 0.33e-3
)
