package parts

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/ends"
	"evenrow/wasm/works/layout"
)

// adapter is what joins a thread to tubing, and joiner two ends of tubing.
var adapter, joiner = layout.Fittings[layout.Adapter].Noun, layout.Fittings[layout.Joiner].Noun

// fittings adds the joints by kind and size, with the adapters that the thread
// of a joint between two kinds of tubing takes, and the clamps.
func (c *count) fittings() {
	for kind := range layout.JointKind(layout.JointKinds) {
		// All joints of one kind and one set of sizes make one line.
		for i := range c.joints {
			first := &c.joints[i]
			if first.Kind != kind || c.before(i) {
				continue
			}
			n, where := 0, []int(nil)
			var by [Sites]float64
			for k := i; k < len(c.joints); k++ {
				if j := &c.joints[k]; j.Kind == kind && j.Ends == first.Ends {
					n += j.N
					by[c.site(j)] += float64(j.N)
					where = append(where, j.Node)
				}
			}
			if kind == layout.Adapter || layout.Fittings[kind].Noun == joiner && c.threadedEnd(first) == 1 {
				if kind != layout.Adapter {
					c.pair(first, 1, n, Line{Nodes: where, By: by}) // no joiner holds both
				}
				continue
			}
			c.add(c.line(first, Line{Count: n, Why: c.why(first, n), Nodes: where, By: by}))
			if end := c.threadedEnd(first); end > 0 {
				c.pair(first, end, n, Line{Nodes: where, By: by})
			}
		}
	}
	c.longer()
}

// longer adds the joiners of pieces that are longer than a roll.
func (c *count) longer() {
	for i := range c.cuts {
		n, tube := c.cuts[i].Joined, c.cuts[i].Tube
		if n == 0 {
			continue
		}
		var where []int // the ends of the pieces that are joined
		var by [Sites]float64
		for _, p := range c.cuts[i].Pieces {
			if p.Part > 1 && p.Stretch >= 0 {
				s := &c.Stretches[p.Stretch]
				where = append(where, c.Network.Links[s.Links[len(s.Links)-1]].To)
				by[siteOf[use(s.Kind)]]++
				c.joints = append(slices.Clip(c.joints), layout.Joint{Kind: layout.Joiner, N: 1, Node: where[len(where)-1], Stretch: p.Stretch, Ends: [3]int{tube, tube, layout.NoTube}})
			}
		}
		j := &c.joints[len(c.joints)-1]
		c.add(c.line(j, Line{Count: n, Why: words.Say("{n} where a piece is longer than a roll", words.N(n)), Nodes: where, By: by}))
	}
}

// before says whether a joint like the one at i stands before it.
func (c *count) before(i int) bool {
	for k := range i {
		if c.joints[k].Kind == c.joints[i].Kind && c.joints[k].Ends == c.joints[i].Ends {
			return true
		}
	}
	return false
}

// threadedEnd returns the end of a joint that goes through a thread, with an
// adapter of its own behind it, because its tubing is held by fittings of
// another kind or of another family of sizes than that of the first end; or 0.
// Measured tubing is of no family: barbs go by the bore.
func (c *count) threadedEnd(j *layout.Joint) int {
	if j.Ends[0] == layout.NoTube {
		return 0
	}
	a := &catalogue.Tubes[c.Tubes[j.Ends[0]].Entry]
	for end := 1; end < len(j.Ends); end++ {
		if j.Ends[end] == layout.NoTube || j.Ends[end] == j.Ends[0] {
			continue
		}
		b := &catalogue.Tubes[c.Tubes[j.Ends[end]].Entry]
		if !a.Meets(b) {
			return end
		}
	}
	return 0
}

// noun is the part of a joint: a joiner between two kinds of tubing is an
// adapter at either side of a thread.
func (c *count) noun(j *layout.Joint) *layout.Noun {
	part := layout.Fittings[j.Kind].Noun
	if part == joiner && c.threadedEnd(j) == 1 {
		return adapter
	}
	return part
}

// held names a part with how it holds tubing.
func (c *count) held(tube int, n *layout.Noun) string {
	return words.Say(n.Held[catalogue.Tubes[c.Tubes[tube].Entry].Takes])
}

// name is what to ask for: the part, the sizes that it joins.
func (c *count) name(j *layout.Joint) string {
	thread := c.threadedEnd(j)
	part := c.held(j.Ends[0], layout.Fittings[j.Kind].Noun)
	size := func(end int) string { return c.Tubes[j.Ends[end]].Short(c.sys) }
	switch {
	case thread == 0 && c.other(j, 1) == 0:
		return words.Say("{part}, {size}", part, size(0))
	case thread == 1:
		return words.Say("{part}, {size}, with {thread}, at its other end", part, size(0), c.branch(j))
	case thread > 0:
		return words.Say("{part}, {size}, with {thread}, on its branch", part, size(0), c.branch(j))
	}
	second := c.other(j, 1)
	if third := c.other(j, second+1); third > 0 {
		return words.Say("{part}, {size} to {second} to {third}", part, size(0), size(second), size(third))
	}
	return words.Say("{part}, {size} to {second}", part, size(0), size(second))
}

// branch names the thread of a joint that tubing of another kind is joined to.
func (c *count) branch(j *layout.Joint) string {
	return ends.BranchOf(c.Tubes[j.Ends[0]].Entry).Name("")
}

// other returns the first end of a joint, from one on, whose tubing is not that
// of its first end; 0 for none.
func (c *count) other(j *layout.Joint, from int) int {
	for end := from; end < len(j.Ends); end++ {
		if j.Ends[end] != layout.NoTube && j.Ends[end] != j.Ends[0] {
			return end
		}
	}
	return 0
}

// why says where n joints like j stand: what is declared of their kind, unless
// it depends on the rest of the plan.
func (c *count) why(j *layout.Joint, n int) string {
	switch {
	case j.Kind == layout.Joiner && j.Node == c.Feed:
		return words.Say("from the supply line to row 1")
	case j.Kind == layout.HeaderCap && n == 2:
		return words.Say("one at each end of the header, to flush it")
	case j.Kind == layout.RowCap && c.Plan.Header.Layout == plan.OneLine:
		return words.Say("at the end of the line, to flush it")
	}
	return layout.Fittings[j.Kind].Why(n)
}

const theFilter, theRegulator words.Text = "the filter", "the regulator"

// path names the parts of the supply that are joined by threads, in the order
// of the water, as the trade puts them: the filter keeps dirt out of the
// regulator too (common practice, no source). A tank's regulator is not among them: it stands at the header.
func (c *count) path() []words.Text {
	path := []words.Text{outlet(c.Plan)}
	switch c.Plan.Supply.Kind {
	case plan.GravityTank:
		path = append(path, "the timer valve")
	case plan.Mains:
		path = append(path, "the timer valve", "the backflow device")
	}
	if c.FilterLink >= 0 {
		path = append(path, theFilter)
	}
	if c.regulated() && c.Plan.Supply.Kind != plan.GravityTank {
		path = append(path, theRegulator)
	}
	return path
}

// outlet is what the water comes out of.
func outlet(p *plan.Plan) words.Text {
	switch p.Supply.Kind {
	case plan.GravityTank:
		return "the tank's outlet"
	case plan.Mains:
		return "the tap"
	}
	return "the pump"
}

// regulated says whether the plan has a regulator.
func (c *count) regulated() bool {
	return c.Plan.Supply.Regulated()
}

// size tells tubing from other tubing, in keys.
func (c *count) size(tube int) string {
	t := &c.Tubes[tube]
	if t.Entry == catalogue.Custom {
		return strconv.FormatFloat(math.Round(t.Bore*1e5)/100, 'f', -1, 64) + "mm"
	}
	return strconv.Itoa(t.Entry)
}

// line makes n a line of joints like j.
func (c *count) line(j *layout.Joint, n Line) Line {
	n.Item, n.Name = AJoint, c.name(j)
	n.Size = strings.ReplaceAll(string(c.noun(j).Name), " ", "-")
	for _, t := range j.Ends {
		if t != layout.NoTube {
			n.Size += " " + c.size(t)
		}
	}
	return n
}
