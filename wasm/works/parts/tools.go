package parts

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// tools adds what the work needs and a household may not have.
func (c *count) tools() {
	punches := [...]words.Text{
		plan.BarbSmall:    "Punch for emitters with a small barb",
		plan.BarbStandard: "Punch for emitters with a standard barb",
		plan.BarbLarge:    "Punch for emitters with a large barb",
	}
	for barb, punch := range punches {
		for i := range c.Plan.Rows {
			if c.Plan.Emitters[c.Plan.Rows[i].Emitter].Barb == barb {
				c.one(APunch, strconv.Itoa(barb), words.Say(punch), words.Say("made for the emitter: too wide a hole leaks for ever"))
				break
			}
		}
	}
	c.one(ATapeMeasure, "", words.Say("Tape measure"), words.Say("for the pieces of tubing and the places of the emitters"))
	c.one(AMarker, "", words.Say("Marker that writes on wet plastic"), words.Say("for where to cut and where to punch, and for names of pieces"))
	c.one(ACutter, "", words.Say("Tubing cutter"), words.Say("for square ends"))
	if slices.ContainsFunc(c.lines, func(n Line) bool { return n.Item == AClamp }) {
		c.one(AClampDriver, "", words.Say("Nut driver or screwdriver for hose clamps"), words.Say("it fits the screws of the clamps, and does not slip off as a flat blade does"))
	}
	c.one(AThreadTape, "", words.Say("Roll of thread tape"), words.Say("for tapered threads; hose threads seal with a washer"))
	c.washers()
}
