package catalogue

import (
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/words"
)

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

// Suits returns how well a method suits the crop, and why.
func (c *Crop) Suits(m Method) (Fitness, words.Text) {
	r := &reasons[c.fit[m]]
	return r.fit, r.why
}

// SuitsRef returns where it comes from that a method suits the crop, or does not.
func (c *Crop) SuitsRef(m Method) source.Ref { return cropSources[c.marks[int(Traits)+int(m)]-'a'] }

// A reason is why a method suits a crop, or does not; crops.csv names it.
type reason uint8

const (
	base reason = iota
	trough
	perennial
	costly
	air
	bed
	raft
	dams
	gutter
	channel
	seldom
	heavy
)

var reasons = [...]struct {
	fit Fitness
	why words.Text
}{
	base:      {Best, "The medium holds water in reserve if the pump stops, and gives a tall plant a base."},
	trough:    {Best, "Troughs and bags give each plant enough medium, and the fruit hangs clean and dry."},
	perennial: {Best, "Roots that last for years want air and room, which a medium gives."},
	costly:    {Works, "It works, but costs an emitter for every small plant."},
	air:       {Works, "It grows well while air is pumped day and night; large roots use the oxygen of warm water fast."},
	bed:       {Works, "It works; a bed of loose medium, flooded and drained, suits it as well and needs fewer emitters."},
	raft:      {Best, "Short plants float on rafts, need no emitter each, and their roots stay cool."},
	dams:      {Works, "It crops, but thick roots dam the channel late in the season, and in heat nothing is left an hour or two after the pump stops."},
	gutter:    {Works, "Light plants fit a gutter, but in heat nothing is left an hour or two after the pump stops."},
	channel:   {Best, "Light plants fit a channel, and the time to harvest is short."},
	seldom:    {Poor, "It is seldom grown so: roots of this crop want more air, or a firmer hold."},
	heavy:     {Poor, "Heavy plants with thirsty fruit have no reserve in a channel."},
}
