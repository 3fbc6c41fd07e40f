package buy

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/ends"
	"evenrow/wasm/works/chain"
	"evenrow/wasm/works/parts"
)

// Chain says what joins the supply to the tubing, joint by joint.
func Chain(the *scene.Scene) {
	sc := part{the}
	if sc.S.Layout == nil {
		sc.Say("p", "There is nothing to join yet.")
		return
	}
	c := sc.S.Layout.Chains
	sc.Say("p", "In the order of the water. Threads that nobody has chosen are the usual ones: hold what you have beside the list before you buy, and say under Threads what differs.")
	sc.way(c, &c.Supply, words.Say("From the supply to the tubing"))
	if len(c.Header.Places) > 0 {
		sc.way(c, &c.Header, words.Say("At the regulator before the header"))
	}
	sc.choice(c)
	for i := range c.Pairs {
		p := &c.Pairs[i]
		var names []string
		for _, s := range p.Gap.Steps {
			names = append(names, parts.PartName(sc.S.Plan, c, s.Part))
		}
		if len(names) > 0 {
			sc.Say("p", "From {from} to {to}, where two kinds of tubing meet: {parts}.", sc.end(sc.from(p)), sc.end(ends.Tubing(p.To)), words.Notes(names...))
		}
	}
	for i := range c.Pairs {
		if g := &c.Pairs[i].Gap; !g.OK {
			sc.Say("p", "No parts lead from {from} to {to}, where two kinds of tubing meet: {why}. Take tubing of one kind, add a fitting of your own, or say under Threads that you can buy adapters between the two.",
				sc.end(sc.from(&c.Pairs[i])), sc.end(ends.Tubing(c.Pairs[i].To)), words.Say(ends.Whys[g.Joints[0]]))
		}
	}
}

// from is the end at which the parts between two kinds of tubing begin.
func (sc *part) from(p *chain.Pair) ends.End {
	if p.Thread {
		return ends.BranchOf(p.From)
	}
	return ends.Tubing(p.From)
}

// ChainLine says how many parts there are between the devices, and whether they hold.
func ChainLine(the *scene.Scene) (said string, is sheet.Verdict) {
	if the.S.Layout == nil {
		return "", sheet.Yes
	}
	c := the.S.Layout.Chains
	if g, w := c.Missing(); g != nil {
		return words.Say("nothing joins {from} to {to}", parts.Place(the.S.Plan, w, g.From), parts.Place(the.S.Plan, w, g.To)), sheet.Nearly
	}
	if n := c.Broken(); n > 0 {
		return words.Say("nothing joins two kinds of tubing"), sheet.Nearly
	}
	n := words.N(c.Supply.Parts() + c.Header.Parts())
	if c.Weak() != nil {
		return words.Say("{n} {n|part|parts}, and a joint that carries too little", n), sheet.Nearly
	}
	return words.Say("{n} {n|part|parts}, and every joint holds", n), sheet.Yes
}

func (sc *part) end(e ends.End) string { return e.Name(parts.Measured(sc.S.Plan)) }

// way lists the places of a way and the parts between them.
func (sc *part) way(c *chain.Chains, w *chain.Way, title string) {
	sc.Table(title, words.Say("What comes next"), words.Say("Its end"), words.Say("Sealed by")).Rows(func(t *block.Table) {
		for i := range w.Places {
			p := &w.Places[i]
			name := unit.Capital(parts.Place(sc.S.Plan, w, i))
			if p.Device <= chain.Regulator && p.Device != chain.First && p.Device != chain.Second && !p.Chosen {
				name = words.Say("{part}, its threads assumed", name)
			}
			seal, before := "", ""
			if i > 0 {
				g := &w.Gaps[i-1]
				seal, before = words.Say("nothing"), sc.end(p.In)
				if last := g.Joints[len(g.Joints)-1]; g.OK {
					seal = words.Say(ends.Seals[last].Name)
				}
			}
			at := before
			if i+1 < len(w.Places) && (i == 0 || p.In != p.Out) {
				at = sc.end(p.Out)
				if before != "" {
					at = words.Say("{before}, then {behind}", before, at)
				}
			}
			t.Row(name, at, seal)
			if i+1 == len(w.Places) {
				break
			}
			for k, s := range w.Gaps[i].Steps {
				t.Row(parts.PartName(sc.S.Plan, c, s.Part), sc.end(s.In), words.Say(ends.Seals[w.Gaps[i].Joints[k]].Name))
			}
		}
	})
	for i := range w.Gaps {
		sc.gap(c, w, &w.Gaps[i])
	}
	sc.how(w)
}

// gap says what is remarkable of a gap: that nothing closes it and what would; that its two
// ends seem to mate; that a joint carries less than it may have to.
func (sc *part) gap(c *chain.Chains, w *chain.Way, g *chain.Gap) {
	from, to := parts.Place(sc.S.Plan, w, g.From), parts.Place(sc.S.Plan, w, g.To)
	a, b := w.Places[g.From].Out, w.Places[g.To].In
	direct := ends.Mate(a, b)
	switch {
	case !g.OK:
		sc.Say("p", "No parts lead from {from} ({a}) to {to} ({b}): {why}. A fitting with {one} at one end and {other} at the other would: if you can have it, add it under Fittings of your own, or say there that you can buy adapters between the two kinds of threads, or take a part with other threads.",
			from, sc.end(a), to, sc.end(b), words.Say(ends.Whys[direct]), sc.end(chain.MateOf(a)), sc.end(chain.MateOf(b)))
	case direct.Seems():
		sc.Say("p", "{a} of {from} seems to fit {b} of {to}, and does not: {why}. The parts between them are no luxury.",
			unit.Capital(sc.end(a)), from, sc.end(b), to, words.Say(ends.Whys[direct]))
	}
	if rule, weak := g.Weakest(); weak {
		sc.Say("p", "Between {from} and {to} a joint with {seal} carries {carries} for long, and more may stand there: {rest} with every outlet shut. Lower the pressure before it, or have whoever sells it say that it carries that.",
			from, to, words.Say(ends.Seals[rule].Name), sc.Amount(unit.Pressure, ends.Seals[rule].Pressure), sc.Amount(unit.Pressure, c.Stands(w, g)))
	}
}

// how says how each kind of seal of a way is made.
func (sc *part) how(w *chain.Way) {
	var used [ends.HoseOnPipe]bool
	for i := range w.Gaps {
		for _, r := range w.Gaps[i].Joints {
			if r < ends.HoseOnPipe {
				used[r] = true
			}
		}
	}
	for r := range used {
		if s := &ends.Seals[r]; used[r] {
			sc.Say("p", "{seal}: {how} Up to about {pressure} and {warm}.", unit.Capital(words.Say(s.Name)), words.Say(s.How), sc.Amount(unit.Pressure, s.Pressure), sc.Amount(unit.Temperature, s.Temperature))
		}
	}
}

// choice says how else the parts could be chosen, where it differs.
func (sc *part) choice(c *chain.Chains) {
	if g, _ := c.Missing(); g != nil {
		return
	}
	n, price, other, otherPrice := 0, 0.0, 0, 0.0
	for _, w := range [...]*chain.Way{&c.Supply, &c.Header} {
		n, price = n+w.Parts(), price+w.Price()
		for i := range w.Gaps {
			k, p := c.Other(w, &w.Gaps[i])
			other, otherPrice = other+k, otherPrice+p
		}
	}
	switch {
	case sc.S.Plan.Ends.Shortest == 0 && other < n:
		sc.Say("p", "These parts are the cheapest, at the prices here: no others that fit cost less. With {fewer} instead of {n} it costs {more} more.", words.N(other), words.N(n), money(otherPrice-price))
	case sc.S.Plan.Ends.Shortest == 0:
		sc.Say("p", "These parts are the cheapest, at the prices here, and as few as can be: every chain that fits was compared.")
	case otherPrice < price-0.001:
		sc.Say("p", "No fewer parts do. With {more} instead of {n} it costs {less} less.", words.N(other), words.N(n), money(price-otherPrice))
	default:
		sc.Say("p", "No fewer parts do, and no others cost less: every chain that fits was compared.")
	}
}
