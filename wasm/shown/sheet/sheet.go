// Package sheet works a plan out: it solves the water of every zone and says
// whether every plant gets its water, why, and what would help.
//
// A Sheet holds numbers, in inner units, and what was judged, as kinds. The
// rooms, which package view has in their order, turn it into text and pictures
// in the plan's units.
package sheet

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/works/chance"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/fault"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/works/headroom"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
	"evenrow/wasm/works/parts"
	"evenrow/wasm/works/startup"
	"evenrow/wasm/works/surge"
	"evenrow/wasm/year/demand"
	"evenrow/wasm/year/season"
	"evenrow/wasm/year/shots"
)

// A Verdict is the first word of the answer.
type Verdict uint8

const (
	Yes      Verdict = iota // every emitter is open and in range, and every limit is met
	Nearly                  // every emitter is open, but something is outside its range or limit
	No                      // some plant gets no water
	Cannot                  // the question lacks something, such as a pump's curve
	Verdicts = iota         // how many there are
)

// A Finding is one thing to say about the plan.
type Finding struct {
	Kind  FindingKind
	Count int     // of emitters, or rows, that it concerns
	Row   int     // from 0; -1 when it concerns no single row
	Plant int     // from 1; 0 when none
	Value float64 // what was found; see [Kinds]
	Limit float64 // what was wanted
	Zone  int     // 0 when it concerns all
	Base  int     // the row, from 0, that Row is compared with; Unlike and NarrowPath only
}

// A Change is one thing that is done to a plan.
type Change struct {
	Kind      FixKind
	Value     float64 // see FixKind
	Flow      float64 // m³/s, with NewPump and MorePressure
	Most      float64 // m, likewise: the highest head with everything shut that the answer stays Yes with; 0 when it is not Yes
	Regulator float64 // Pa, likewise: what a regulator behind it is set to, and Most then no matter; 0 for none
	Index     int     // of a tube in the catalogue, or a count of zones
}

// A Fix is a change, or two, that turn the answer into a yes, or as near as it
// gets.
type Fix struct {
	Change
	And      *Change        // what has to be done besides; nil for a single change
	Solves   bool           // the plan was solved again with it and the answer is Yes; with NewPump and MorePressure, for every pump or tap that it names
	Plan     *plan.Plan     // the changed plan, ready to be taken over, with one pump or tap of those named; nil where the form takes none
	Cost     float64        // how much more its tubing, valves and places at the timer cost than the plan's
	Unpriced bool           // it takes something that the plan has no price for
	Design   *design.Design // with Redesign
	Breaks   *Finding       // with NewPump and MorePressure: what the least head already is too much for, so that none alone can do it; nil where nothing
}

// A FixKind is what a fix changes.
type FixKind uint8

const (
	NewPump      FixKind = iota // a pump that gives Value m or more at Flow
	RaiseTank                   // raise the tank by Value m
	MorePressure                // Value Pa or more at the tap at Flow
	AddRegulator                // set to Value Pa
	WiderLead                   // Index
	WiderHeader                 // Index
	WiderRows                   // Index
	MiddleFeed
	MoreZones // Index zones
	CleanerFilter
	LowerEmitters        // emitters that open at Value Pa
	CloseRing            // a second header ties the far ends of the rows
	OneEmitter           // every plant has as many of one kind of emitter as row Index, from 0
	OwnZones             // a zone for each kind and number of emitters; Index zones
	Redesign             // other tubing, feed and zones: Design; where Flow is not 0 with the very supply of Plan, of Value m at Flow
	FixKinds      = iota // how many there are
)

// A Loss is one line of the budget: where the head goes on the way to the
// worst emitter. The lines and Sheet.Margin add up to the source's head.
type Loss struct {
	Kind  LossKind
	Index int     // of the run or row
	Head  float64 // m; Lift may be negative
}

// A LossKind is a place where head goes.
type LossKind uint8

const (
	Lift LossKind = iota
	InRun
	InFilter
	InHeader
	InRow
	InFittings         // bends, tees, valves and barbs of the whole way
	Needed             // the emitter's own: Lowest
	Reserve            // kept as the grower asked
	Spare              // what is left; negative when it falls short
	InDevices          // a backflow device, a meter or a timer valve
	InRegulator        // of a gravity tank
	LossKinds   = iota // how many there are
)

// A ZoneResult is one zone's water, all its emitters open as far as they open.
type ZoneResult struct {
	Zone                             int
	Solution                         *network.Solution
	Flow                             float64           // m³/s
	Head                             float64           // m the supply gives at that flow, above its own level
	Worst                            int               // index into Layout.Plants: least head above its Lowest
	Best                             int               // most
	Margin                           float64           // m, of the worst above its Lowest; negative when short
	Even                             evenness.Evenness // how true plants' flows are to what their emitters are made to give
	Alike                            evenness.Evenness // how alike plants' flows are
	Least                            float64           // m³/s, of the plant that gets least
	Mixed                            bool              // plants have emitters that are made to give different amounts
	CV, PerPlant                     float64           // greatest variation of manufacture, and fewest emitters a plant, of the zone: the safe side
	Open                             int
	Emitters                         int
	Below, Above                     int // emitters open but below or above their range
	Budget                           []Loss
	Fouled                           float64 // m, the least margin once the filter is due for cleaning; Margin without a filter
	LeadSpeed, HeaderSpeed, RowSpeed float64 // m/s, largest
}

// A Sheet is everything worked out for one plan.
type Sheet struct {
	Plan     *plan.Plan
	Layout   *layout.Layout // its Plan is Plan, but for the supply where that is sought
	Wanted   *Wanted        // the pump to ask for; nil where the plan has one, or takes none
	Verdict  Verdict
	Findings []Finding // the first decides the verdict; then the rest by weight
	Fixes    []Fix     // in the order of their cost, and what has no price last
	Zones    []ZoneResult
	Critical int       // index into Zones: least margin
	Plants   []Fare    // how each plant fares, by index into Layout.Plants
	Rows     []RowFare // how those of each row fare
	Parts    []parts.Line
	Rest     *Rest              // what the answer rests on; nil before it is explored
	Flush    *flush.Flush       // nil where no water flows
	Zoning   *Zoning            // nil where no water flows
	Loop     *Loop              // nil where a ring makes no sense
	Designs  *Designs           // nil before it is explored
	Season   *season.Season     // the calendar
	Demand   *demand.Demand     // what each plant takes up, day by day
	Shots    *shots.Card        // what to set the timer to; nil where no water flows
	Headroom []headroom.Room    // empty unless the answer is Yes; see EndedBy
	Surge    []surge.Blow       // by size of tubing, as in Layout.Tubes; empty where no water flows
	Startup  *startup.Startup   // the first minutes of a shot and the last; nil where no water flows
	Faults   *fault.Faults      // what wear, dirt and leaks do; nil where no water flows
	Chance   []chance.Zone      // zones of emitters that differ; empty where no water flows
	Now      day.Moment         // when it is looked at; none where nobody knows
	Sameness Sameness           // how the water of one plant compares with another's
	Water    []RowWater         // by row; nil but where emitters that are watered together differ
	Untried  bool               // Fixes are not all that there may be: a search for them ended at its bound
	Left     [Explorations]bool // explorations that were left out, because they take more work than is done: their parts are nil
	helped   bool               // Fixes were looked for
	found    *design.Result     // what a search for the fixes found, for Designs; nil where none was made
	gone     func() bool        // nobody waits any more; nil for somebody who always does
}
