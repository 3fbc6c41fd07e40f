package sheet

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/works/limit"
)

// A FindingKind is what a finding says, the gravest first: what keeps plants from
// their share comes before what may.
type FindingKind uint8

const (
	PowerOnly    FindingKind = iota // only the power of the pump is known, which does not say how high it lifts the water
	LabelFigures                    // a label's head, flow and power cannot all be so
	LabelShort                      // a pump of so much power cannot be the one that is wanted
	NeverOpen                       // Count emitters stay shut
	Unsteady                        // Count emitters open and shut in turn
	Suction                         // on the way, flowing water is under less than the air's pressure
	BelowRange                      // Count emitters run below their range
	AboveRange                      // Count emitters run above it
	Uneven                          // plants get amounts that differ too much
	Unlike                          // rows watered together get neither the same nor what their crops need
	ShortReserve                    // in range, but with less than the wanted reserve
	FastLead                        // water runs too fast in the supply line or the header
	OffCurve                        // the pump runs beyond the last point of its curve
	NarrowPump                      // the heads that will do lie too close together to ask for a pump
	CoarseFilter                    // the filter lets through what blocks emitters
	NoFilter                        // there is none
	OverRating                      // at rest the tubing has to carry more than it may in the sun
	OutsidePlace                    // a row is longer or further out than the place
	SmallTank                       // the tank holds less than an hour of flow
	Fouled                          // emitters run below their range once the filter is due for cleaning
	Unsolved                        // the flows did not settle
	TooHigh                         // still water does not reach the way's highest point
	NoBackflow                      // a tap, and no loss counted for the device that keeps its water clean
	NarrowPath                      // rows stand nearer to each other than somebody needs to walk there
	NearWall                        // a row stands nearer to a wall than it may
	InTheDoor                       // a row stands in the way in
	NoChain                         // no parts lead from one device to the next
	WeakJoint                       // a joint between devices carries less than may stand there
	FindingKinds = iota             // how many there are
)

// A KindOf is what all findings of a kind have in common. What is said of them
// stands in package answer, in a table of the same kinds: this floor knows no
// words, and neither table compiles without a row for the last kind.
type KindOf struct {
	Name    string    // for spreadsheets and scripts, so it stays as it is
	Verdict Verdict   // that it leads to by itself; Yes for advice
	Unit    unit.Kind // of Value and Limit; None for what has no unit
	Low     bool      // it is of too little head: a stronger supply mends it
	High    bool      // it is of too much, Value over Limit
	Breaks  limit.Set // what it is that is broken, of what designs are held to as well; nothing for what they are not

	// What a zone is held to, where one figure says it: broken it is found, and
	// what is left to it is what the headroom goes by.
	Held func(s *Sheet, z *ZoneResult) Measure
}

// A Measure is what was measured in a zone, and what it is held to.
type Measure struct {
	Value float64
	Bound limit.Bound
	Told  bool // broken it is found: no graver finding of the zone says it already
}

// Kinds has a row for each kind: without one at the end it does not compile, and
// TestEveryKindHasItsRow names what else is missing. The comment says what Value
// and Limit of a [Finding] are.
var Kinds [FindingKinds]KindOf = [...]KindOf{
	PowerOnly:    {Name: "power-only", Unit: unit.Power},                                                                           // the pump's power; none
	LabelFigures: {Name: "label-figures", Unit: unit.Power},                                                                        // most that the two figures put into the water; most that the label's power does
	LabelShort:   {Name: "label-short", Unit: unit.Power},                                                                          // what the pump that is wanted puts into the water at the least; likewise
	NeverOpen:    {Name: "never-open", Verdict: No, Unit: unit.Head, Low: true, Breaks: limit.Reach.Alone()},                       // highest head that they see; opening head
	Unsteady:     {Name: "unsteady", Verdict: No, Unit: unit.Head, Low: true, Breaks: limit.Reach.Alone()},                         // head while shut; closing head
	Suction:      {Name: "suction", Verdict: Nearly, Unit: unit.Head, Low: true, Breaks: limit.Reach.Alone()},                      // head there, negative; none
	BelowRange:   {Name: "below-range", Verdict: Nearly, Unit: unit.Head, Low: true, Breaks: limit.Reach.Alone()},                  // lowest head; lowest of the range
	AboveRange:   {Name: "above-range", Verdict: Nearly, Unit: unit.Head, High: true, Breaks: limit.Range.Alone()},                 // highest head; highest of the range
	Uneven:       {Name: "uneven", Verdict: Nearly, Unit: unit.Share, Breaks: limit.Evenness.Alone(), Held: evened},                // EU; wanted
	Unlike:       {Name: "unlike", Verdict: Nearly, Unit: unit.None},                                                               // how many times as much of its need Row gets as Base does; 1
	ShortReserve: {Name: "short-margin", Verdict: Nearly, Unit: unit.Head, Low: true, Breaks: limit.Reach.Alone(), Held: reserved}, // margin; wanted
	FastLead:     {Name: "fast-supply-line", Verdict: Nearly, Unit: unit.Speed, Breaks: limit.Speed.Alone(), Held: fastest},        // speed in the supply line or the header; wanted
	OffCurve:     {Name: "off-curve", Verdict: Nearly, Unit: unit.Flow, Breaks: limit.Reach.Alone(), Held: drawnOff},               // flow; that of the curve's last point
	NarrowPump:   {Name: "narrow-pump", Verdict: Nearly, Unit: unit.Head, Breaks: limit.Reach.Alone()},                             // head at which all is well; none
	CoarseFilter: {Name: "coarse-filter", Unit: unit.Opening},                                                                      // opening; largest that is fit
	NoFilter:     {Name: "no-filter", Unit: unit.None},                                                                             // none; none
	OverRating:   {Name: "over-rating", Verdict: Nearly, Unit: unit.Head, High: true, Breaks: limit.Rating.Alone()},                // head at rest; what the tubing may carry in the sun
	OutsidePlace: {Name: "outside-place", Verdict: Nearly, Unit: unit.Length, Breaks: limit.Place.Alone()},                         // where the plant stands; the end of the place
	SmallTank:    {Name: "small-tank", Unit: unit.Duration},                                                                        // until it is empty; an hour
	Fouled:       {Name: "fouled", Verdict: Nearly, Unit: unit.Head, Low: true, Breaks: limit.Reach.Alone(), Held: fouled},         // margin then, negative; none
	Unsolved:     {Name: "unsolved", Verdict: Cannot, Unit: unit.None},                                                             // none; none
	TooHigh:      {Name: "too-high", Verdict: No, Unit: unit.Head, Low: true, Breaks: limit.Reach.Alone()},                         // how far below the highest point the water stays, negative; none
	NoBackflow:   {Name: "no-backflow", Unit: unit.None},                                                                           // none; none
	NarrowPath:   {Name: "narrow-path", Unit: unit.Length},                                                                         // free strip between Row and Base; wanted
	NearWall:     {Name: "near-wall", Unit: unit.Length},                                                                           // how far Row is from it; wanted
	NoChain:      {Name: "no-chain", Unit: unit.None},                                                                              // none; none
	WeakJoint:    {Name: "weak-joint", Unit: unit.Pressure},                                                                        // what may stand there; what the joint carries
	InTheDoor:    {Name: "in-the-door", Unit: unit.Length},                                                                         // how far from the door Row begins; wanted
}

func (k FindingKind) String() string { return Kinds[k].Name }

// What zones are held to.

func reserved(s *Sheet, z *ZoneResult) Measure {
	return Measure{z.Margin, limit.MarginOf(s.Plan, false), z.open() && z.Below == 0}
}

func fouled(s *Sheet, z *ZoneResult) Measure {
	return Measure{z.Fouled, limit.MarginOf(s.Plan, true), z.open() && z.Below == 0}
}

func evened(s *Sheet, z *ZoneResult) Measure {
	return Measure{z.Even.EU, limit.EvennessOf(s.Plan), z.open()}
}

func fastest(s *Sheet, z *ZoneResult) Measure {
	return Measure{max(z.LeadSpeed, z.HeaderSpeed), limit.SpeedOf(s.Plan), true}
}

func drawnOff(s *Sheet, z *ZoneResult) Measure {
	return Measure{z.Flow, limit.CurveOf(s.Layout.Curve), true}
}

// open says whether every emitter of a zone is.
func (z *ZoneResult) open() bool { return z.Open == z.Emitters }
