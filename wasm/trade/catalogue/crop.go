package catalogue

import "evenrow/wasm/ground/words"

// The list of crops, [Crops], is made of crops.csv and crop-sources.csv in this
// folder by go test ./build/crops -update. Numbers lie within the usual range of
// each crop, for plants trained to as many stems as is usual for it.

// OwnCrops is how many crops a grower can add, and FirstOwn the position of
// the first of them in [Crops]. They start as a usual large fruiting crop.
const (
	OwnCrops = 4
	FirstOwn = 15
)

// A Crop is one crop of the list. Its numbers are its traits; see [Crop.Of].
type Crop struct {
	Name   words.Text // "sweet pepper"
	seed   int        // row of the table of emergence
	fit    [Methods]reason
	traits [Traits]int16
	marks  string // by trait, then by method, a letter for a place in cropSources, from a on
}

// Own reports whether position i in [Crops] is a place for a crop of the
// grower's own.
func Own(i int) bool { return i >= FirstOwn && i < FirstOwn+OwnCrops }
