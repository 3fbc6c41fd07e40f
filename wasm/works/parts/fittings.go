package parts

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/layout"
)

// nouns names each kind of joint as a shop does.
var nouns = [layout.JointKinds]string{
	layout.Adapter:      "Adapter",
	layout.Joiner:       "Joiner",
	layout.HeaderJoiner: "Joiner",
	layout.RunElbow:     "Elbow",
	layout.RunTee:       "Tee",
	layout.BallValve:    "Ball valve",
	layout.CheckValve:   "Check valve",
	layout.EntryTee:     "Tee",
	layout.RowTee:       "Tee",
	layout.HeaderCap:    "End cap",
	layout.ZoneValve:    "Zone valve",
	layout.TurnElbow:    "Elbow",
	layout.RowCap:       "End cap",
	layout.FarTee:       "Tee",
}

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
			for k := i; k < len(c.joints); k++ {
				if j := &c.joints[k]; j.Kind == kind && j.Ends == first.Ends {
					n += j.N
					where = append(where, j.Node)
				}
			}
			c.add(Line{Group: Fittings, Name: c.name(first), Count: n, Why: c.why(first, n), Nodes: where})
			if end := c.threadedEnd(first); end > 0 {
				c.add(Line{Group: Fittings, Name: c.adapter(first.Ends[end]), Count: n,
					Why: "into the thread of the " + unit.Uncapital(c.noun(first)), Nodes: slices.Clone(where)})
			}
		}
	}
	c.clamps()
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
func (c *count) noun(j *layout.Joint) string {
	if c.threadedEnd(j) == 1 && nouns[j.Kind] == nouns[layout.Joiner] {
		return nouns[layout.Adapter]
	}
	return nouns[j.Kind]
}

// adapter names what joins a thread to tubing.
func (c *count) adapter(tube int) string {
	return c.held(tube, nouns[layout.Adapter]) + ", thread to " + c.Tubes[tube].Short(c.sys)
}

// held puts the word for how tubing is held before the name of a part.
func (c *count) held(tube int, noun string) string {
	return unit.Capital(catalogue.Tubes[c.Tubes[tube].Entry].Takes.Word()) + " " + unit.Uncapital(noun)
}

// name is what to ask for: the part, the sizes that it joins.
func (c *count) name(j *layout.Joint) string {
	size := func(end int) string { return c.Tubes[j.Ends[end]].Short(c.sys) }
	if j.Kind == layout.Adapter {
		return c.adapter(j.Ends[1])
	}
	thread := c.threadedEnd(j)
	if thread == 1 && c.noun(j) != nouns[j.Kind] {
		return c.adapter(j.Ends[0])
	}
	s := c.held(j.Ends[0], nouns[j.Kind])
	switch j.Kind {
	case layout.HeaderCap, layout.RowCap:
		return s + " that opens, " + size(0)
	}
	s += ", " + size(0)
	if thread == 1 {
		return s + " to thread"
	}
	if thread > 0 {
		return s + ", thread on its branch"
	}
	for end := 1; end < len(j.Ends); end++ {
		if j.Ends[end] != layout.NoTube && j.Ends[end] != j.Ends[0] {
			s += " to " + size(end)
		}
	}
	return s
}

// why says where n joints like j stand.
func (c *count) why(j *layout.Joint, n int) string {
	number := strconv.Itoa(n)
	switch j.Kind {
	case layout.Adapter:
		const beside = "one at each side of the regulator"
		switch {
		case n == 1:
			return "from " + c.threaded() + " to the supply line"
		case j.Node == c.Feed:
			return beside
		}
		return "from " + c.threaded() + " to the supply line, and " + beside
	case layout.Joiner:
		if j.Node == c.Feed {
			return "from the supply line to row 1"
		}
		return number + " between runs of the supply line"
	case layout.HeaderJoiner:
		return "from the supply line to the header"
	case layout.RunElbow:
		return of(n, "bend", "bends") + " in the supply line"
	case layout.RunTee:
		return number + " in the supply line, passed straight through; the third end is for what branches off there"
	case layout.BallValve, layout.CheckValve:
		return number + " in the supply line"
	case layout.EntryTee:
		return "where the supply line meets the header"
	case layout.RowTee:
		return each("at", n, "row", "rows")
	case layout.HeaderCap:
		switch n {
		case 1:
			return "at the closed end of the header, to flush it"
		case 2:
			return "one at each end of the header, to flush it"
		}
		return "one at each closed end of the two headers, to flush them"
	case layout.FarTee:
		return each("at the far end of", n, "row", "rows")
	case layout.ZoneValve:
		return each("at the start of", n, "row", "rows") + ", since one header feeds all zones; those of one zone open together"
	case layout.TurnElbow:
		return number + " where the line turns from row to row"
	}
	if c.Plan.Header.Layout == plan.OneLine {
		return "at the end of the line, to flush it"
	}
	return each("at the end of", n, "row", "rows") + ", to flush it"
}

// threaded names the last part of the supply, whose thread the lead begins at.
func (c *count) threaded() string {
	path := c.path()
	return "the thread of " + path[len(path)-1]
}

// path names the parts of the supply that are joined by threads, in the order
// of the water, as the trade puts them: the filter keeps dirt out of the
// regulator too (common practice, no source). A tank's regulator is not among them: it stands at the header.
func (c *count) path() []string {
	path := []string{"the pump"}
	switch c.Plan.Supply.Kind {
	case plan.GravityTank:
		path = []string{"the tank's outlet", "the timer valve"}
	case plan.Mains:
		path = []string{"the tap", "the timer valve", "the backflow device"}
	}
	if c.FilterLink >= 0 {
		path = append(path, theFilter)
	}
	if c.regulated() && c.Plan.Supply.Kind != plan.GravityTank {
		path = append(path, regulator)
	}
	return path
}

const theFilter, regulator = "the filter", "the regulator"

// regulated says whether the plan has a regulator.
func (c *count) regulated() bool {
	return c.Plan.Supply.Regulator > 0 && c.Plan.Supply.Kind != plan.PumpPower
}
