package parts

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
)

// Spares, common practice, no source: for emitters a twentieth but at least
// two, for sowing a tenth but at least two.
const (
	emitterSpare = 5  // hundredths
	sowingSpare  = 10 // hundredths
	leastSpare   = 2
)

// emitters adds the emitters by kind, with the stakes that hold the tubing.
func (c *count) emitters() {
	stakes := 0
	for i := range c.Plan.Emitters {
		n, plants, perPlant := 0, 0, 0
		for k := range c.Plants {
			r := &c.Plan.Rows[c.Plants[k].Row]
			if r.Emitter != i {
				continue
			}
			n += r.PerPlant
			plants++
			switch {
			case plants == 1:
				perPlant = r.PerPlant
			case perPlant != r.PerPlant:
				perPlant = 0
			}
		}
		if n == 0 {
			continue
		}
		stakes += n
		why := strconv.Itoa(n) + " at " + of(plants, "plant", "plants")
		if perPlant > 0 {
			why = of(plants, "plant", "plants") + " with " + strconv.Itoa(perPlant) + " each"
		}
		spare := share(n, emitterSpare, leastSpare)
		c.add(Line{
			Group: EmittersGroup,
			Name:  emitterName(&c.Plan.Emitters[i], c.sys),
			Count: n + spare,
			Spare: spare,
			Why:   why + ", and 1 to spare for every 20, at least 2, all of one batch",
		})
	}
	c.add(Line{Group: EmittersGroup, Name: "Stake to hold the tubing", Count: stakes, Why: "one at each emitter"})
	plugs := share(stakes, 2, 5)
	c.add(Line{Group: EmittersGroup, Name: "Plug for a wrong hole", Count: plugs, Spare: plugs, Why: "1 for every 50 holes, at least 5"})
}

// emitterName names an emitter by its data sheet.
func emitterName(e *plan.Emitter, sys unit.System) string {
	s := "Emitter, " + unit.Text(unit.EmitterFlow, sys, e.Flow)
	if e.Kind == plan.Compensating {
		return s + ", pressure-compensating"
	}
	return s + " at " + unit.Text(unit.Pressure, sys, e.Nominal)
}

// tools adds what the work needs and a household may not have.
func (c *count) tools() {
	sizes := [...]string{plan.BarbSmall: "small", plan.BarbStandard: "standard", plan.BarbLarge: "large"}
	for barb, size := range sizes {
		for i := range c.Plan.Rows {
			if c.Plan.Emitters[c.Plan.Rows[i].Emitter].Barb == barb {
				c.one(Tools, "Punch for emitters with a "+size+" barb", "made for the emitter: too wide a hole leaks for ever")
				break
			}
		}
	}
	c.one(Tools, "Tubing cutter", "for square ends")
	c.one(Tools, "Roll of thread tape", "for tapered threads; hose threads seal with a washer")
}
