package parts

import (
	"math"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// tank adds the tank, what it stands on and what fills it.
func (c *count) tank() {
	s := &c.Plan.Supply
	c.one(ATank, "", words.Say("Opaque tank with a lid, fit for drinking water, {volume}", unit.Text(unit.Volume, c.sys, s.Tank)),
		words.Say("from the plan; what touches feed is opaque, so that nothing grows in it, and fit for food; the lid keeps out light, leaves and children"))
	if weight := c.weight(s.Tank); s.Kind == plan.GravityTank {
		c.one(ATankStand, "raised", words.Say("Level stand that carries {weight} and the tank", weight),
			words.Say("{weight} is the water of the full tank alone; firm ground, feet well apart, and the tank tied to something that holds: one that tips can kill", weight))
	} else {
		// Slabs of a garden, which cost less than a stand.
		c.add(Line{Item: ATankStand, Size: "ground", Name: words.Say("Level base for the tank, for {weight} and the tank", weight), Count: 1, Price: 15,
			Why: words.Say("{weight} is the water of the full tank alone; firm level ground will do, with no stone under the tank", weight)})
	}
	if s.Fill == plan.FilledByFloat {
		bore := fillBores[c.sys]
		c.one(AFloatValve, "", words.Say("Float valve for the tank, fit for drinking water, and a holder that keeps its outlet {gap} above the rim", unit.Text(unit.Bore, c.sys, AirGap(bore))),
			words.Say("the air gap that keeps feed out of drinking water: twice the bore of the pipe that feeds the valve, here {bore}, and never less than {least}, from the rim that the tank floods over up to the outlet, with no hose on it; local code comes first; it lets in plain water, so that what was mixed into the tank thins out; the pipe from the tap is not counted",
				unit.Text(unit.Bore, c.sys, bore), unit.Text(unit.Bore, c.sys, leastGap)))
	}
}

// fillBores are the bores in m of the pipe that float valves are commonly sold for,
// by system of units (common practice, no source).
var fillBores = [unit.Systems]float64{unit.Metric: 0.015, unit.US: 0.0127}

// leastGap is the least air gap in m, one inch.
const leastGap = 0.0254

// AirGap returns the height in m above the rim that a tank floods over, at which a
// pipe of a bore in m may end that fills the tank from drinking water: twice its bore,
// and an inch at least (Minnesota Department of Agriculture; municipal codes).
func AirGap(bore float64) float64 { return max(2*bore, leastGap) }

// pound is a pound in kg.
const pound = 0.45359237

// weight says what a volume of water weighs, in whole kilograms or pounds, rounded up.
func (c *count) weight(volume float64) string {
	kg := volume * c.Network.Water.Density
	if c.sys == unit.US {
		return words.Say("{n} lb", words.N(int(math.Ceil(kg/pound))))
	}
	return words.Say("{n} kg", words.N(int(math.Ceil(kg))))
}
