package sheet

import "evenrow/wasm/ground/unit"

// A FindingKind is what a finding says, the gravest first: what keeps plants from
// their share comes before what may.
type FindingKind uint8

const (
	PowerOnly    FindingKind = iota // nobody knows how high the pump lifts the water
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
	CoarseFilter                    // the filter lets through what blocks emitters
	NoFilter                        // there is none
	OverRating                      // at rest the tubing has to carry more than it may in the sun
	OutsidePlace                    // a row is longer or further out than the place
	SmallTank                       // the tank holds less than an hour of flow
	Fouled                          // emitters run below their range once the filter is due for cleaning
	Unsolved                        // the flows did not settle
	TooHigh                         // still water does not reach the way's highest point
	NoBackflow                      // a tap, and no loss counted for the device that keeps its water clean
	FindingKinds = iota             // how many there are
)

// A KindOf is what all findings of a kind have in common. What is said of them
// stands in package answer, in a table of the same kinds.
type KindOf struct {
	Name    string    // for spreadsheets and scripts, so it stays as it is
	Verdict Verdict   // that it leads to by itself; Yes for advice
	Unit    unit.Kind // of Value and Limit; None for what has no unit
	Low     bool      // it is of too little head: a stronger supply mends it
	High    bool      // it is of too much, Value over Limit
}

// Kinds has a row for each kind: without one at the end it does not compile, and
// TestEveryKindHasItsRow names what else is missing. The comment says what Value
// and Limit of a [Finding] are.
var Kinds [FindingKinds]KindOf = [...]KindOf{
	PowerOnly:    {Name: "power-only", Verdict: Cannot, Unit: unit.Power},             // the pump's power; none
	NeverOpen:    {Name: "never-open", Verdict: No, Unit: unit.Head, Low: true},       // highest head that they see; opening head
	Unsteady:     {Name: "unsteady", Verdict: No, Unit: unit.Head, Low: true},         // head while shut; closing head
	Suction:      {Name: "suction", Verdict: Nearly, Unit: unit.Head, Low: true},      // head there, negative; none
	BelowRange:   {Name: "below-range", Verdict: Nearly, Unit: unit.Head, Low: true},  // lowest head; lowest of the range
	AboveRange:   {Name: "above-range", Verdict: Nearly, Unit: unit.Head, High: true}, // highest head; highest of the range
	Uneven:       {Name: "uneven", Verdict: Nearly, Unit: unit.Share},                 // EU; wanted
	Unlike:       {Name: "unlike", Verdict: Nearly, Unit: unit.None},                  // how many times as much of its need Row gets as Base does; 1
	ShortReserve: {Name: "short-margin", Verdict: Nearly, Unit: unit.Head, Low: true}, // margin; wanted
	FastLead:     {Name: "fast-supply-line", Verdict: Nearly, Unit: unit.Speed},       // speed in the supply line or the header; wanted
	OffCurve:     {Name: "off-curve", Verdict: Nearly, Unit: unit.Flow},               // flow; that of the curve's last point
	CoarseFilter: {Name: "coarse-filter", Unit: unit.Opening},                         // opening; largest that is fit
	NoFilter:     {Name: "no-filter", Unit: unit.None},                                // none; none
	OverRating:   {Name: "over-rating", Verdict: Nearly, Unit: unit.Head, High: true}, // head at rest; what the tubing may carry in the sun
	OutsidePlace: {Name: "outside-place", Verdict: Nearly, Unit: unit.Length},         // where the plant stands; the end of the place
	SmallTank:    {Name: "small-tank", Unit: unit.Duration},                           // until it is empty; an hour
	Fouled:       {Name: "fouled", Verdict: Nearly, Unit: unit.Head, Low: true},       // margin then, negative; none
	Unsolved:     {Name: "unsolved", Verdict: Cannot, Unit: unit.None},                // none; none
	TooHigh:      {Name: "too-high", Verdict: No, Unit: unit.Head, Low: true},         // how far below the highest point the water stays, negative; none
	NoBackflow:   {Name: "no-backflow", Unit: unit.None},                              // none; none
}

func (k FindingKind) String() string { return Kinds[k].Name }
