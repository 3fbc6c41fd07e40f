package parts

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
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
			c.add(c.line(first, Line{Count: n, Why: c.why(first, n), Nodes: where, By: by}))
			if end := c.threadedEnd(first); end > 0 {
				c.add(Line{Item: AThreadAdapter, Size: c.size(first.Ends[end]), Name: c.adapter(first.Ends[end]), Count: n,
					Why: words.Say("into the thread of {part}", words.Say(c.noun(first).The)), Nodes: slices.Clone(where), By: by})
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
		if a.Takes != b.Takes || a.Outside > 0 && b.Outside > 0 && a.Metric() != b.Metric() {
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

// adapter names what joins a thread to tubing.
func (c *count) adapter(tube int) string {
	return words.Say("{part}, thread to {size}", c.held(tube, adapter), c.Tubes[tube].Short(c.sys))
}

// held names a part with how it holds tubing.
func (c *count) held(tube int, n *layout.Noun) string {
	return words.Say(n.Held[catalogue.Tubes[c.Tubes[tube].Entry].Takes])
}

// name is what to ask for: the part, the sizes that it joins.
func (c *count) name(j *layout.Joint) string {
	if j.Kind == layout.Adapter {
		return c.adapter(j.Ends[1])
	}
	thread := c.threadedEnd(j)
	noun := layout.Fittings[j.Kind].Noun
	if thread == 1 && c.noun(j) != noun {
		return c.adapter(j.Ends[0])
	}
	part := c.held(j.Ends[0], noun)
	size := func(end int) string { return c.Tubes[j.Ends[end]].Short(c.sys) }
	switch {
	case thread == 0 && c.other(j, 1) == 0:
		return words.Say("{part}, {size}", part, size(0))
	case thread == 1:
		return words.Say("{part}, {size} to thread", part, size(0))
	case thread > 0:
		return words.Say("{part}, {size}, thread on its branch", part, size(0))
	}
	second := c.other(j, 1)
	if third := c.other(j, second+1); third > 0 {
		return words.Say("{part}, {size} to {second} to {third}", part, size(0), size(second), size(third))
	}
	return words.Say("{part}, {size} to {second}", part, size(0), size(second))
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
	case j.Kind == layout.Adapter:
		return c.adapts(j, n)
	case j.Kind == layout.Joiner && j.Node == c.Feed:
		return words.Say("from the supply line to row 1")
	case j.Kind == layout.HeaderCap && n == 2:
		return words.Say("one at each end of the header, to flush it")
	case j.Kind == layout.RowCap && c.Plan.Header.Layout == plan.OneLine:
		return words.Say("at the end of the line, to flush it")
	}
	return layout.Fittings[j.Kind].Why(n)
}

// adapts says where n adapters between a thread of the supply and a run stand.
func (c *count) adapts(j *layout.Joint, n int) string {
	switch thread := c.threaded(); {
	case n == 1:
		return words.Say("from the thread of {part} to the supply line", thread)
	case j.Node == c.Feed:
		return words.Say("one at each side of the regulator")
	default:
		return words.Say("from the thread of {part} to the supply line, and one at each side of the regulator", thread)
	}
}

// threaded names the last part of the supply, whose thread the lead begins at.
func (c *count) threaded() string {
	path := c.path()
	return words.Say(path[len(path)-1])
}

const theFilter, theRegulator words.Text = "the filter", "the regulator"

// path names the parts of the supply that are joined by threads, in the order
// of the water, as the trade puts them: the filter keeps dirt out of the
// regulator too (common practice, no source). A tank's regulator is not among them: it stands at the header.
func (c *count) path() []words.Text {
	path := []words.Text{"the pump"}
	switch c.Plan.Supply.Kind {
	case plan.GravityTank:
		path = []words.Text{"the tank's outlet", "the timer valve"}
	case plan.Mains:
		path = []words.Text{"the tap", "the timer valve", "the backflow device"}
	}
	if c.FilterLink >= 0 {
		path = append(path, theFilter)
	}
	if c.regulated() && c.Plan.Supply.Kind != plan.GravityTank {
		path = append(path, theRegulator)
	}
	return path
}

// regulated says whether the plan has a regulator.
func (c *count) regulated() bool {
	return c.Plan.Supply.Regulator > 0 && !c.Plan.Supply.Sought()
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
	if j.Kind == layout.Adapter || c.noun(j) == adapter {
		n.Item, n.Size = AThreadAdapter, c.size(j.Ends[max(0, slices.IndexFunc(j.Ends[:], func(t int) bool { return t != layout.NoTube }))])
		return n
	}
	n.Size = strings.ReplaceAll(string(c.noun(j).Name), " ", "-")
	for _, t := range j.Ends {
		if t != layout.NoTube {
			n.Size += " " + c.size(t)
		}
	}
	return n
}
