package parts

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/ends"
	"evenrow/wasm/works/chain"
	"evenrow/wasm/works/layout"
)

// connectors adds what joins the threads of the supply's parts, and those of a tank's
// regulator to the supply line.
func (c *count) connectors() {
	for _, w := range [...]*chain.Way{&c.Chains.Supply, &c.Chains.Header} {
		node := 0 // where the supply line begins
		for i := range c.joints {
			if c.joints[i].Kind == layout.Adapter {
				node = c.joints[i].Node
				break
			}
		}
		if w == &c.Chains.Header {
			node = c.Feed
		}
		for i := range w.Gaps {
			g := &w.Gaps[i]
			between := words.Say("between {part} and {next}", Place(c.Plan, w, g.From), Place(c.Plan, w, g.To))
			c.steps(g, 1, Line{Nodes: []int{node}, By: [Sites]float64{Leading: 1}}, between)
		}
	}
}

// steps adds the parts of a gap, n times.
func (c *count) steps(g *chain.Gap, n int, where Line, why string) {
	for _, s := range g.Steps {
		part := &c.Chains.Parts[s.Part]
		c.add(Line{Item: AConnector, Size: c.ofParts(s.Part), Name: PartName(c.Plan, c.Chains, s.Part), Count: n, Why: why,
			Nodes: slices.Clone(where.Nodes), By: where.By, Price: part.Price, Own: part.Own >= 0})
	}
}

// ofParts tells a part of a chain from others, in keys: by the places of its ends in the table
// of ends, which are permanent.
func (c *count) ofParts(part int) string {
	p := &c.Chains.Parts[part]
	key := ""
	for _, e := range [...]ends.End{p.A, p.B} {
		key += c.endKey(e) + " "
	}
	if p.Own >= 0 {
		return key + "own " + strconv.Itoa(p.Own)
	}
	return key[:len(key)-1]
}

// endKey is the place of an end in the table of ends.
func (c *count) endKey(e ends.End) string { return strconv.Itoa(slices.Index(ends.All, e)) }

// pair adds the parts between two kinds of tubing at n joints like j, whose other end, an
// index into its Ends, is held through a thread.
func (c *count) pair(j *layout.Joint, end, n int, where Line) {
	pair, needed := c.Chains.Between(c.Tubes[j.Ends[0]].Entry, c.Tubes[j.Ends[end]].Entry, layout.Fittings[j.Kind].Noun != joiner)
	if !needed {
		return
	}
	why := words.Say("into the thread of {part}", words.Say(layout.Fittings[j.Kind].Noun.The))
	if !pair.Thread {
		why = c.why(j, n)
	}
	c.steps(&pair.Gap, n, where, why)
}

// Measured is what tubing is called that was measured in a plan, for the names of ends: that
// of the supply line, whose fittings are asked for first.
func Measured(p *plan.Plan) string {
	for i := range p.Runs {
		if p.Runs[i].Tube == catalogue.Custom {
			return unit.Text(unit.Bore, p.Units, p.Runs[i].Bore)
		}
	}
	for i := range p.Rows {
		if p.Rows[i].Tube == catalogue.Custom {
			return unit.Text(unit.Bore, p.Units, p.Rows[i].Bore)
		}
	}
	return unit.Text(unit.Bore, p.Units, p.Header.Bore)
}

// PartName is what to ask for: a part of a chain.
func PartName(p *plan.Plan, c *chain.Chains, part int) string {
	is := &c.Parts[part]
	a, b := is.A.Name(Measured(p)), is.B.Name(Measured(p))
	switch {
	case is.Own >= 0 && p.Fittings[is.Own].Name != "":
		return words.Say("{name}, {a}, to {b}", p.Fittings[is.Own].Name, a, b)
	case is.A == is.B && is.A.Pipe():
		return words.Say("Short piece of {tubing}", a)
	case is.A == is.B && is.A.Sex == ends.Male:
		return words.Say("Nipple, {a}, at both ends", a)
	case is.A == is.B:
		return words.Say("Coupling, {a}, at both ends", a)
	case is.A.Family == is.B.Family || is.A.Threaded() && is.B.Threaded() && is.A.Size != is.B.Size:
		return words.Say("Reducer, {a}, to {b}", a, b)
	}
	return words.Say("Adapter, {a}, to {b}", a, b)
}

// Place is what a place of a way is called within a sentence.
func Place(p *plan.Plan, w *chain.Way, at int) string {
	switch w.Places[at].Device {
	case chain.Outlet:
		return words.Say(outlet(p))
	case chain.TimerValve:
		return words.Say("the timer valve")
	case chain.Backflow:
		return words.Say("the backflow device")
	case chain.First:
		return words.Say("the tee of the first gauge")
	case chain.Filter:
		return words.Say(theFilter)
	case chain.Second:
		return words.Say("the tee of the second gauge")
	case chain.Regulator:
		return words.Say(theRegulator)
	case chain.Branch:
		return words.Say("the thread of the fitting")
	case chain.Tubing:
	}
	return words.Say("the supply line")
}

// clamped says whether tubing is held by a barb at an end of a joint, and not by the grip of
// a part that the search for a chain has found.
func (c *count) clamped(j *layout.Joint, end int) bool {
	barb := func(g *chain.Gap, joint int) bool {
		rule := g.Joints[joint]
		return !g.OK || rule == ends.OneClamp || rule == ends.TwoClamps
	}
	last := func(g *chain.Gap) bool { return barb(g, len(g.Joints)-1) }
	threaded := c.threadedEnd(j)
	switch {
	case j.Kind == layout.Adapter && j.N == 1:
		return last(&c.Chains.Supply.Gaps[len(c.Chains.Supply.Gaps)-1])
	case j.Kind == layout.Adapter:
		return last(&c.Chains.Header.Gaps[1]) // either side of a tank's regulator
	case threaded == 0 || end != threaded && layout.Fittings[j.Kind].Noun != joiner:
		return true
	}
	pair, _ := c.Chains.Between(c.Tubes[j.Ends[0]].Entry, c.Tubes[j.Ends[threaded]].Entry, layout.Fittings[j.Kind].Noun != joiner)
	if end == threaded {
		return last(&pair.Gap)
	}
	return barb(&pair.Gap, 0)
}

// washers adds one in reserve for each joint of the supply that a washer seals, by thread.
func (c *count) washers() {
	for _, w := range [...]*chain.Way{&c.Chains.Supply, &c.Chains.Header} {
		for i := range w.Gaps {
			e := w.Places[w.Gaps[i].From].Out
			for k, rule := range w.Gaps[i].Joints {
				if k > 0 {
					e = w.Gaps[i].Steps[k-1].Out
				}
				if rule != ends.Washer {
					continue
				}
				name, size := words.Say("Flat washer, 3/4 in, for hose threads"), "hose"
				if e.Family == ends.Parallel {
					name, size = words.Say("Flat washer, G {size}", words.Say(e.SizeText())), "g "+strconv.Itoa(e.Size)
				}
				n := Line{Item: AWasher, Size: size, Name: name, Count: 1, Spare: 1}
				if !slices.ContainsFunc(c.lines, func(o Line) bool { return o.Item == AWasher && o.Size == size }) {
					n.Why = words.Say("in reserve, one for each joint that it seals: a lost or cracked washer is its usual leak")
				}
				c.add(n)
			}
		}
	}
}
