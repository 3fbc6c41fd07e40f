package parts

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// Spares, common practice, no source: one more for every so many, and how many
// at least.
const (
	emitterSpare = 20 // emitters
	leastSpare   = 2  // emitters, and plugs to sow in
	holeSpare    = 50 // holes, one of which is wrong and takes a plug
	leastHoles   = 5  // plugs for wrong holes
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
		every, least := words.N(emitterSpare), words.N(leastSpare)
		why := words.Say("{n} at {plants} {plants|plant|plants}, and 1 to spare for every {every}, at least {least}, all of one batch", words.N(n), words.N(plants), every, least)
		if perPlant > 0 {
			why = words.Say("{plants} {plants|plant|plants} with {n} each, and 1 to spare for every {every}, at least {least}, all of one batch", words.N(plants), words.N(perPlant), every, least)
		}
		spare := spares(n, emitterSpare, leastSpare)
		c.add(Line{
			Item: AnEmitter, Size: strconv.Itoa(i),
			Name:  emitterName(&c.Plan.Emitters[i], c.sys),
			Count: n + spare,
			Spare: spare,
			Why:   why,
		})
	}
	c.add(Line{Item: AStake, Name: words.Say("Stake to hold the tubing"), Count: stakes, Why: words.Say("one at each emitter")})
	plugs := spares(stakes, holeSpare, leastHoles)
	c.add(Line{Item: AHolePlug, Name: words.Say("Plug for a wrong hole"), Count: plugs, Spare: plugs, Why: words.Say("1 for every {n} holes, at least {least}", words.N(holeSpare), words.N(leastHoles))})
}

// emitterName names an emitter by its data sheet.
func emitterName(e *plan.Emitter, sys unit.System) string {
	flow := unit.Text(unit.EmitterFlow, sys, e.Flow)
	if e.Kind == plan.Compensating {
		return words.Say("Emitter, {flow}, pressure-compensating", flow)
	}
	return words.Say("Emitter, {flow} at {pressure}", flow, unit.Text(unit.Pressure, sys, e.Nominal))
}

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
	c.one(ACutter, "", words.Say("Tubing cutter"), words.Say("for square ends"))
	c.one(AThreadTape, "", words.Say("Roll of thread tape"), words.Say("for tapered threads; hose threads seal with a washer"))
}
