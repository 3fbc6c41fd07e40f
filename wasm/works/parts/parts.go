// Package parts counts what has to be bought to build a plan, from its layout.
package parts

import (
	"slices"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/cuts"
	"evenrow/wasm/works/layout"
)

// A Group is a heading of the list.
type Group uint8

const (
	Tubing Group = iota
	Fittings
	EmittersGroup
	WaterPath
	Electrics
	Growing
	Tools
	Groups = iota // how many there are
)

// A Line is one thing to buy.
type Line struct {
	Item   Item
	Size   string    // tells it from other lines of its item; empty where there is one at the most
	Group  Group     // that of its item
	Name   string    // "Tee, 25 mm to 16 mm"
	Count  int       // pieces; 0 for tubing, which has a length
	Length float64   // m, for tubing: the exact sum
	Rolls  int       // of tubing, as few as were found to hold its pieces; 0 where it is sold by the metre
	Roll   float64   // m of a roll; 0 likewise
	Uses   []float64 // m that are cut from each roll, the least first; none likewise
	Price  float64   // of a piece, invented, where the item's own does not say it; 0 where that does
	Own    bool      // a fitting of the grower's own, whose Price is no invention
	Spare  int       // included in Count
	Why    string    // where the number comes from: "one at each of 4 rows"

	// Where the parts stand, for pictures; both empty for what stands nowhere
	// in particular or at every plant.
	Nodes     []int // nodes of the layout, for fittings
	Stretches []int // stretches of the layout, for tubing

	By [Sites]float64 // how much of it, in pieces or m, is of each site; of what is of none, and of spares, nothing
}

// Key is what a line is known by, in links and files: permanent, whatever the plan's
// units, language and numbers are.
func (n *Line) Key() string {
	if n.Size == "" {
		return Kinds[n.Item].Key
	}
	return Kinds[n.Item].Key + " " + n.Size
}

// Count returns what has to be bought for a layout, by group in the order of
// the groups. Every number is counted from the layout's own joints, stretches
// and plants. Spares are added for emitters, clamps and plugs alone, and said
// to be so.
//
// working is the highest pressure in the tubing while it waters, and ahead what
// the supply gives before its regulator then, in Pa, 0 where they are not known.
//
// It leaves out what a plan says nothing of: the pipe that fills a tank, the way
// from the tank into the pump, and whatever the third outlet of a tee in the lead
// goes to.
func Count(l *layout.Layout, working, ahead float64) []Line { return CountWith(l, working, ahead, nil) }

// A Pump is one to ask for in a shop: it gives Least m or more at Flow m³/s, and
// Most m or less with everything shut; 0 for no matter, behind a regulator.
type Pump struct{ Least, Flow, Most float64 }

// CountWith is [Count] for a layout whose pump is yet to be bought; nil where it is
// not.
func CountWith(l *layout.Layout, working, ahead float64, buy *Pump) []Line {
	c := &count{Layout: l, sys: l.Plan.Units, working: working, ahead: ahead, joints: l.Joints, buy: buy, tees: make([]int, len(l.Tubes))}
	if c.regulated() && l.Plan.Supply.Kind == plan.GravityTank {
		// It stands in the lead, just before its end.
		r := &l.Plan.Runs[len(l.Plan.Runs)-1]
		tube := slices.Index(l.Tubes, layout.TubeOf(r.Tube, r.Bore))
		c.joints = append(slices.Clone(l.Joints), layout.Joint{Kind: layout.Adapter, N: 2, Node: l.Feed, Ends: [3]int{layout.NoTube, tube, layout.NoTube}})
	}
	c.cuts = cuts.Of(l)
	c.tubing()
	c.fittings()
	c.emitters()
	c.waterPath()
	c.clamps() // after the tees of gauges, which have barbs too
	c.growing()
	c.tools()
	c.readings()
	return c.byGroup()
}

// byGroup returns the lines in the order of their groups.
func (c *count) byGroup() []Line {
	list := make([]Line, 0, len(c.lines))
	for g := range Group(Groups) {
		for _, n := range c.lines {
			if n.Group == g {
				list = append(list, n)
			}
		}
	}
	return list
}

// A count is a list in the making.
type count struct {
	*layout.Layout
	sys            unit.System
	joints         []layout.Joint // of the layout, and those at a tank's regulator
	working, ahead float64        // Pa
	buy            *Pump          // nil where there is one
	cuts           []cuts.Cutting // by tube
	tees           []int          // of gauges, by the tube that they are cut into
	lines          []Line
}

// add puts a line on the list, or its number to that of the line of its name.
func (c *count) add(n Line) {
	if n.Count == 0 && n.Length == 0 {
		return
	}
	for i := range c.lines {
		o := &c.lines[i]
		if o.Item == n.Item && o.Name == n.Name {
			o.Count += n.Count
			o.Length += n.Length
			o.Spare += n.Spare
			o.Why = words.Notes(o.Why, n.Why)
			o.Nodes = append(o.Nodes, n.Nodes...)
			o.Stretches = append(o.Stretches, n.Stretches...)
			for site := range n.By {
				o.By[site] += n.By[site]
			}
			return
		}
	}
	n.Group = Kinds[n.Item].Group
	c.lines = append(c.lines, n)
}

// one adds a thing of which the plan needs one.
func (c *count) one(item Item, size, name, why string) {
	c.add(Line{Item: item, Size: size, Name: name, Count: 1, Why: why})
}

// spares returns one for every so many things, begun ones counted as whole, but
// at least least.
func spares(things, every, least int) int {
	return max(least, (things+every-1)/every)
}
