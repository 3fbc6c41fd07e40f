package catalogue

import "evenrow/wasm/ground/words"

// A Method is a way to bring water to roots.
type Method int

const (
	Drip     Method = iota // on a medium, an emitter for each plant
	DeepBed                // roots hang in deep water with air bubbled through it
	ThinFilm               // roots lie in a channel with a film of water
	Methods  = iota        // how many there are
)

// MethodNames are the methods as the page names them at the beginning of a line.
var MethodNames = [Methods]words.Text{"Drip on a medium", "Deep water", "Nutrient film"}

// A Fitness says how well a method suits a crop.
type Fitness int

const (
	Best Fitness = iota
	Works
	Poor
)

// FitnessNames are the words for it.
var FitnessNames = [...]words.Text{"best", "works", "not usual"}

// Suits returns how well a method suits the crop, and why. The ratings are
// common practice without a source, but for those of lettuce and basil (FAO
// Fisheries and Aquaculture Technical Paper 589, 2014, appendix 1).
func (c *Crop) Suits(m Method) (Fitness, words.Text) {
	for i := range reasons {
		if r := &reasons[i]; r.mark == c.fit[m] {
			return r.fit, r.why
		}
	}
	return Poor, ""
}

// reasons are the letters of a crop's fit, one for each method.
var reasons = [...]struct {
	mark byte
	fit  Fitness
	why  words.Text
}{
	{'b', Best, "The medium holds water in reserve if the pump stops, and gives a tall plant a base."},
	{'c', Best, "Troughs and bags give each plant enough medium, and the fruit hangs clean and dry."},
	{'m', Best, "Roots that last for years want air and room, which a medium gives."},
	{'g', Works, "It works, but costs an emitter for every small plant."},
	{'t', Works, "It grows well while air is pumped day and night; large roots use the oxygen of warm water fast."},
	{'e', Works, "It works; a bed of loose medium, flooded and drained, suits it as well and needs fewer emitters."},
	{'r', Best, "Short plants float on rafts, need no emitter each, and their roots stay cool."},
	{'v', Works, "It crops, but thick roots dam the channel late in the season, and in heat nothing is left an hour or two after the pump stops."},
	{'w', Works, "Light plants fit a gutter, but in heat nothing is left an hour or two after the pump stops."},
	{'f', Best, "Light plants fit a channel, and the time to harvest is short."},
	{'u', Poor, "It is seldom grown so: roots of this crop want more air, or a firmer hold."},
	{'x', Poor, "Heavy plants with thirsty fruit have no reserve in a channel."},
}
