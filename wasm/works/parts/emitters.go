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
	holes := 0
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
		holes += n
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
		c.micro(&c.Plan.Emitters[i], n)
	}
	plugs := spares(holes, holeSpare, leastHoles)
	c.add(Line{Item: AHolePlug, Name: words.Say("Plug for a wrong hole"), Count: plugs, Spare: plugs, Why: words.Say("1 for every {n} holes, at least {least}", words.N(holeSpare), words.N(leastHoles))})
}

// micro adds what stands between n emitters of a kind and the row's tubing, or holds
// the tubing where they sit in it.
func (c *count) micro(e *plan.Emitter, n int) {
	if e.Micro == 0 {
		c.add(Line{Item: AStake, Name: words.Say("Stake to hold the tubing"), Count: n, Why: words.Say("one at each emitter")})
		return
	}
	each := unit.Text(unit.Length, c.sys, e.Micro)
	c.add(Line{Item: AMicroTubing, Name: words.Say("Micro tubing, opaque, fit for drinking water, {bore} bore or a little more", unit.Text(unit.Bore, c.sys, plan.MicroBore)), Length: float64(n) * e.Micro,
		Why: words.Say("{length} at each of {n} {n|emitter|emitters}; what it takes is not counted, for it is at most {share} of the emitter's lowest pressure", each, words.N(n), unit.Text(unit.Share, c.sys, plan.MicroShare))})
	spare := spares(n, emitterSpare, leastSpare)
	c.add(Line{Item: AMicroConnector, Name: words.Say("Barbed connector from the tubing to micro tubing"), Count: n + spare, Spare: spare,
		Why: words.Say("one in the hole for each of {n} {n|emitter|emitters}, and 1 to spare for every {every}, at least {least}", words.N(n), words.N(emitterSpare), words.N(leastSpare))})
	c.add(Line{Item: AStake, Size: "plant", Name: words.Say("Stake to hold an emitter at its plant"), Count: n, Why: words.Say("one at the end of each micro tubing")})
}

// emitterName names an emitter by its data sheet.
func emitterName(e *plan.Emitter, sys unit.System) string {
	flow := unit.Text(unit.EmitterFlow, sys, e.Flow)
	if e.Kind == plan.Compensating {
		return words.Say("Emitter, {flow}, pressure-compensating", flow)
	}
	return words.Say("Emitter, {flow} at {pressure}", flow, unit.Text(unit.Pressure, sys, e.Nominal))
}
