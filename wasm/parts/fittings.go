package parts

import (
	"strconv"

	"evenrow/wasm/layout"
	"evenrow/wasm/plan"
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

// fittings adds the joints by kind and size, and the clamps.
func (c *count) fittings() {
	for kind := range layout.JointKind(layout.JointKinds) {
		// All joints of one kind and one set of sizes make one line.
		for i := range c.Joints {
			first := &c.Joints[i]
			if first.Kind != kind || c.before(i) {
				continue
			}
			n, where := 0, []int(nil)
			for k := i; k < len(c.Joints); k++ {
				if j := &c.Joints[k]; j.Kind == kind && j.Ends == first.Ends {
					n += j.N
					where = append(where, j.Node)
				}
			}
			c.add(Line{Group: Fittings, Name: c.name(first), Count: n, Why: c.why(first, n), Nodes: where})
		}
	}
	c.clamps()
}

// before says whether a joint like the one at i stands before it.
func (c *count) before(i int) bool {
	for k := range i {
		if c.Joints[k].Kind == c.Joints[i].Kind && c.Joints[k].Ends == c.Joints[i].Ends {
			return true
		}
	}
	return false
}

// name is what to ask for: the part, the sizes that it joins.
func (c *count) name(j *layout.Joint) string {
	size := func(end int) string { return c.Tubes[j.Ends[end]].Short(c.sys) }
	s := nouns[j.Kind]
	switch j.Kind {
	case layout.Adapter:
		return s + ", thread to " + size(1) + " barb"
	case layout.HeaderCap, layout.RowCap:
		return s + " that opens, " + size(0)
	}
	s += ", " + size(0)
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
		return "from " + c.threaded() + " to the lead"
	case layout.Joiner:
		if j.Node == c.Feed {
			return "from the lead to row 1"
		}
		return number + " between runs of the lead"
	case layout.HeaderJoiner:
		return "from the lead to the header"
	case layout.RunElbow:
		return of(n, "bend", "bends") + " in the lead"
	case layout.RunTee:
		return number + " in the lead, passed straight through; the third end is for what branches off there"
	case layout.BallValve, layout.CheckValve:
		return number + " in the lead"
	case layout.EntryTee:
		return "where the lead meets the header"
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
	if c.FilterLink >= 0 {
		return "the thread of the filter"
	}
	if c.regulated() && c.Plan.Supply.Kind != plan.GravityTank {
		return "the thread of the regulator"
	}
	return "the thread of " + c.outlet()
}

// outlet names what the water comes out of.
func (c *count) outlet() string {
	switch c.Plan.Supply.Kind {
	case plan.GravityTank:
		return "the tank's outlet"
	case plan.Mains:
		return "the tap"
	}
	return "the pump"
}

// regulated says whether the plan has a regulator.
func (c *count) regulated() bool {
	return c.Plan.Supply.Regulator > 0 && c.Plan.Supply.Kind != plan.PumpPower
}
