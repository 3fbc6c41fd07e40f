package layout

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// A JointKind says what a fitting is and where it stands.
type JointKind uint8

// The list of parts has them in this order, and adds up a run's losses in it.
const (
	Adapter      JointKind = iota // from the thread of the supply or the filter to the first run
	Joiner                        // straight: between two runs, or from the lead to a row
	HeaderJoiner                  // straight, from the lead to a header of another size
	RunElbow                      // in a run of the lead
	RunTee                        // in a run of the lead, passed straight through
	BallValve                     // in a run of the lead
	CheckValve                    // in a run of the lead
	EntryTee                      // where the supply line meets the header between its ends
	RowTee                        // on the header, to a row
	HeaderCap                     // at the closed end of a header, opens for flushing
	ZoneValve                     // at a row's start, when there are several zones
	TurnElbow                     // one line: at the end of a row or the start of the next
	RowCap                        // at a row's end, opens for flushing
	FarTee                        // ring: on the far header, from a row's end
	JointKinds   = iota           // how many kinds there are
)

// A Fitting is all that is declared of a kind of joint.
type Fitting struct {
	Noun *Noun

	// What the water loses in it, beside what the barbs on its ends cost; nil
	// where that is not worth counting, or no water goes that way.
	Through *catalogue.Fitting // straight on, or round its bend
	Branch  *catalogue.Fitting // into its branch, or out of it

	// PerRun says how many the plan has in a run of the lead: there they are
	// laid, charged and counted by that alone. It is nil for a kind that stands
	// elsewhere, where its place follows from the plan's shape.
	PerRun func(*plan.Run) int

	// Where it stands, for the list of parts: one of them, and n of them. One
	// is empty where Many says both.
	One, Many words.Text
}

// A Noun is what a shop calls a fitting.
type Noun struct {
	Name words.Text    // "end cap"
	The  words.Text    // "the end cap"
	Held [3]words.Text // how to ask for it, by the [catalogue.Joining] of its tubing: "Barbed end cap that opens"
}

var (
	adapter    = Noun{"adapter", "the adapter", [...]words.Text{"Barbed adapter", "Insert adapter", "Compression adapter"}}
	joiner     = Noun{"joiner", "the joiner", [...]words.Text{"Barbed joiner", "Insert joiner", "Compression joiner"}}
	elbow      = Noun{"elbow", "the elbow", [...]words.Text{"Barbed elbow", "Insert elbow", "Compression elbow"}}
	tee        = Noun{"tee", "the tee", [...]words.Text{"Barbed tee", "Insert tee", "Compression tee"}}
	ballValve  = Noun{"ball valve", "the ball valve", [...]words.Text{"Barbed ball valve", "Insert ball valve", "Compression ball valve"}}
	checkValve = Noun{"check valve", "the check valve", [...]words.Text{"Barbed check valve", "Insert check valve", "Compression check valve"}}
	zoneValve  = Noun{"zone valve", "the zone valve", [...]words.Text{"Barbed zone valve", "Insert zone valve", "Compression zone valve"}}
	endCap     = Noun{"end cap", "the end cap", [...]words.Text{"Barbed end cap that opens", "Insert end cap that opens", "Compression end cap that opens"}}
)

// Fittings declares each kind of joint. What stands between the thread of the
// supply and the first run depends on the supply: package parts says it.
var Fittings = [JointKinds]Fitting{
	Adapter: {Noun: &adapter},
	Joiner: {
		Noun: &joiner,
		Many: "{n} between runs of the supply line",
	},
	HeaderJoiner: {
		Noun: &joiner,
		One:  "from the supply line to the header",
	},
	RunElbow: {
		Noun:    &elbow,
		Through: &catalogue.Fittings[catalogue.Elbow],
		PerRun:  func(r *plan.Run) int { return r.Elbows },
		Many:    "{n} {n|bend|bends} in the supply line",
	},
	RunTee: {
		Noun:    &tee,
		Through: &catalogue.Fittings[catalogue.TeeThrough],
		PerRun:  func(r *plan.Run) int { return r.Tees },
		Many:    "{n} in the supply line, passed straight through; the third end is for what branches off there",
	},
	BallValve: {
		Noun:    &ballValve,
		Through: &catalogue.Fittings[catalogue.BallValve],
		PerRun:  func(r *plan.Run) int { return r.Valves },
		Many:    "{n} in the supply line",
	},
	CheckValve: {
		Noun:    &checkValve,
		Through: &catalogue.Fittings[catalogue.SwingCheck],
		PerRun:  func(r *plan.Run) int { return r.Checks },
		Many:    "{n} in the supply line",
	},
	EntryTee: {
		Noun:   &tee,
		Branch: &catalogue.Fittings[catalogue.TeeBranch],
		One:    "where the supply line meets the header",
	},
	RowTee: {
		Noun:    &tee,
		Through: &catalogue.Fittings[catalogue.TeeThrough],
		Branch:  &catalogue.Fittings[catalogue.TeeBranch],
		One:     "one at the row",
		Many:    "one at each of {n} {n|row|rows}",
	},
	HeaderCap: {
		Noun: &endCap,
		One:  "at the closed end of the header, to flush it",
		Many: "one at each closed end of the two headers, to flush them",
	},
	ZoneValve: {
		Noun:    &zoneValve,
		Through: &catalogue.Fittings[catalogue.BallValve],
		One:     "one at the start of the row, since one header feeds all zones; those of one zone open together",
		Many:    "one at the start of each of {n} {n|row|rows}, since one header feeds all zones; those of one zone open together",
	},
	TurnElbow: {
		Noun:    &elbow,
		Through: &catalogue.Fittings[catalogue.Elbow],
		Many:    "{n} where the line turns from row to row",
	},
	RowCap: {
		Noun: &endCap,
		One:  "one at the end of the row, to flush it",
		Many: "one at the end of each of {n} {n|row|rows}, to flush it",
	},
	FarTee: {
		Noun:    &tee,
		Through: &catalogue.Fittings[catalogue.TeeThrough],
		Branch:  &catalogue.Fittings[catalogue.TeeBranch],
		One:     "one at the far end of the row",
		Many:    "one at the far end of each of {n} {n|row|rows}",
	},
}

// Why says where n fittings of a kind stand.
func (f *Fitting) Why(n int) string {
	if n == 1 && f.One != "" {
		return words.Say(f.One)
	}
	return words.Say(f.Many, words.N(n))
}

// perRun returns how many fittings of a kind a run has.
func (f *Fitting) perRun(r *plan.Run) int {
	if f.PerRun == nil {
		return 0
	}
	return f.PerRun(r)
}

// through returns the loss coefficient of the way through a kind of joint.
func through(kind JointKind) float64 { return coefficient(Fittings[kind].Through) }

// branch returns the loss coefficient of the way by its branch.
func branch(kind JointKind) float64 { return coefficient(Fittings[kind].Branch) }

func coefficient(f *catalogue.Fitting) float64 {
	if f == nil {
		return 0
	}
	return f.K
}
