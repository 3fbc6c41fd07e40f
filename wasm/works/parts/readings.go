package parts

import (
	"evenrow/wasm/ground/words"
)

// Cups of a test, common practice, no source: at least a dozen emitters are to be
// looked at, better twenty.
const cups = 20

// readings adds what drain and feed are caught and read with.
func (c *count) readings() {
	crops := c.crops(false)
	c.add(Line{Item: ADrainCan, Name: words.Say("Can for the drain of one tray, opaque and fit for food"), Count: len(crops),
		Why: words.Say("one for each crop ({crops}), under the tray of some of its plants, for the drain of a whole day", words.And(crops))})
	c.one(AnECMeter, "", words.Say("EC meter"), words.Say("for the salts in feed and drain"))
	c.one(AnECFluid, "", words.Say("Calibration fluid for the EC meter, 1.41 mS/cm"), words.Say("a meter that nobody has checked tells nothing; what is poured out is not poured back"))
	c.one(APHMeter, "", words.Say("pH meter"), words.Say("for feed and drain; its tip is kept wet in its own fluid"))
	c.add(Line{Item: APHFluid, Name: words.Say("Calibration fluid for the pH meter, pH 4 and pH 7"), Count: 2, Why: words.Say("one of pH 7 and one of pH 4: feed is between them")})
	c.one(AMeasuringJug, "", words.Say("Measuring jug, fit for food"), words.Say("for what one emitter gives in a day and what is caught; never used for food or drink again"))
	emitters := 0
	for i := range c.Plants {
		emitters += c.Plan.Rows[c.Plants[i].Row].PerPlant
	}
	c.add(Line{Item: ATestCups, Name: words.Say("Cup for the cup test"), Count: min(cups, emitters),
		Why: words.Say("one under each of {n} {n|emitter|emitters}, spread over rows and ends: what they catch in the same minutes says how even the watering is", words.N(min(cups, emitters)))})
	c.one(AKitchenTimer, "", words.Say("Kitchen timer"), words.Say("for the minutes of the cup test"))
}
