package steps

import (
	"evenrow/wasm/grower/care"
	"evenrow/wasm/works/parts"
)

// A Kind is what is done in a step. The steps are done in this order: whatever can be
// made dry is, then current comes, and then water.
type Kind uint8

const (
	Place    Kind   = iota // made level, measured, and the tank put up
	Supply                 // what drives the water, with all that is screwed to it
	Filter                 // by its arrow
	Lead                   // the supply line
	Header                 // with its tees
	Rows                   // laid out
	Media                  // what the plants stand in, and where its drain goes
	Power                  // with its protection tested, before water comes
	Fill                   // the tank, or the tap
	Flush                  // with open ends, which are closed afterwards
	Emitters               // punched in, with their stakes
	Leaks                  // looked for while the emitters drip
	Gauges                 // read
	Cups                   // filled
	Plants                 // fed and set out
	Kinds    = iota        // how many there are
)

// Keys are what the steps are known by, in what a device keeps: permanent.
var Keys = [Kinds]string{
	Place: "place", Supply: "supply", Filter: "filter", Lead: "lead", Header: "header", Rows: "rows", Media: "media", Power: "power",
	Fill: "fill", Flush: "flush", Emitters: "emitters", Leaks: "leaks", Gauges: "gauges", Cups: "cups", Plants: "plants",
}

// kinds declares each kind of step.
var kinds = [Kinds]struct {
	always  bool     // is done also where it takes no part
	minutes float64  // besides those for its parts; common practice, no source
	hazards care.Set // besides those of its parts and tools
}{
	Place:    {true, 30, 1 << care.Height},
	Supply:   {false, 10, 1<<care.Current | 1<<care.Wiring},
	Filter:   {false, 5, 0},
	Lead:     {false, 10, 0},
	Header:   {false, 10, 0},
	Rows:     {false, 10, 0},
	Media:    {false, 10, 1<<care.Blades | 1<<care.Slips | 1<<care.Drain},
	Power:    {false, 15, 1<<care.Current | 1<<care.Wiring},
	Fill:     {true, 20, 1<<care.Current | 1<<care.Pressure | 1<<care.Slips | 1<<care.Drain | 1<<care.Backflow | 1<<care.Height},
	Flush:    {true, 20, 1<<care.Current | 1<<care.Pressure | 1<<care.Slips | 1<<care.Drain},
	Emitters: {true, 5, 1 << care.Current},
	Leaks:    {true, 20, 1<<care.Current | 1<<care.Pressure | 1<<care.Slips},
	Gauges:   {false, 10, 1<<care.Current | 1<<care.Pressure},
	Cups:     {true, 30, 1<<care.Current | 1<<care.Slips | 1<<care.Drain},
	Plants:   {false, 15, 1<<care.Chemicals | 1<<care.Salts | 1<<care.Drinking},
}

// threaded are the steps in which threads are screwed together, where their parts have any.
const threaded = 1<<Supply | 1<<Filter | 1<<Lead | 1<<Header | 1<<Rows

// items declares where each item is taken. Where a part has its site, that says it.
var items = [parts.Items]struct {
	at      Kind
	tool    uint16  // of a tool: all steps that use it, as bits
	minutes float64 // for each piece, or m of tubing; common practice, no source
	hazards care.Set
	thread  bool // is screwed to others
}{
	parts.ATube:            {at: Rows, minutes: 0.5},
	parts.AJoint:           {at: Rows, minutes: 3},
	parts.AConnector:       {at: Supply, minutes: 5, thread: true},
	parts.AClamp:           {at: Rows, minutes: 1, hazards: 1 << care.Heat},
	parts.AnEmitter:        {at: Emitters, minutes: 0.5},
	parts.AMicroTubing:     {at: Emitters, minutes: 0.5},
	parts.AMicroConnector:  {at: Emitters, minutes: 0.5},
	parts.AStake:           {at: Emitters, minutes: 0.25},
	parts.AHolePlug:        {at: Emitters},
	parts.ATank:            {at: Place, minutes: 15, hazards: 1<<care.Weight | 1<<care.InTank | 1<<care.Drowning | 1<<care.Stored},
	parts.ATankStand:       {at: Place, minutes: 60, hazards: 1 << care.Weight},
	parts.ATankOutlet:      {at: Supply, minutes: 20, hazards: 1 << care.Blades, thread: true},
	parts.AFloatValve:      {at: Supply, minutes: 20, hazards: 1 << care.Backflow, thread: true},
	parts.ABackflow:        {at: Supply, minutes: 10, hazards: 1 << care.Backflow, thread: true},
	parts.ATimerValve:      {at: Supply, minutes: 10, hazards: 1 << care.Timer, thread: true},
	parts.APump:            {at: Supply, minutes: 15, hazards: 1 << care.Weight, thread: true},
	parts.AFilter:          {at: Filter, minutes: 10, thread: true},
	parts.ARegulator:       {at: Filter, minutes: 5, thread: true},
	parts.AGauge:           {at: Filter, minutes: 5, thread: true},
	parts.AGaugeTee:        {at: Filter, minutes: 5, thread: true},
	parts.AClearHose:       {at: Gauges, minutes: 5},
	parts.AProtectedOutlet: {at: Power},
	parts.APlugCover:       {at: Power, minutes: 10},
	parts.APumpTimer:       {at: Power, minutes: 10},
	parts.ACordHook:        {at: Power, minutes: 5},
	parts.AMedium:          {at: Media, minutes: 3, hazards: 1<<care.Weight | 1<<care.Dust},
	parts.AFilling:         {at: Media, minutes: 60, hazards: 1 << care.Dust},
	parts.ASowingPlug:      {at: Place, minutes: 0.5},
	parts.ARaisingBlock:    {at: Place, minutes: 0.5},
	parts.ADrainTray:       {at: Media, minutes: 5},
	parts.ADrainCan:        {at: Media, hazards: 1<<care.Drowning | 1<<care.Drinking},
	parts.AnECMeter:        {at: Plants, minutes: 5},
	parts.APHMeter:         {at: Plants, minutes: 5},
	parts.AnECFluid:        {at: Plants},
	parts.APHFluid:         {at: Plants},
	parts.APunch:           {tool: 1 << Emitters, hazards: 1 << care.Blades},
	parts.ACutter:          {tool: 1<<Lead | 1<<Header | 1<<Rows, hazards: 1 << care.Blades},
	parts.AThreadTape:      {tool: threaded},
	parts.AWasher:          {tool: 1<<Supply | 1<<Filter},
	parts.AClampDriver:     {tool: 1<<Lead | 1<<Header | 1<<Rows},
	parts.ATapeMeasure:     {tool: 1<<Place | 1<<Lead | 1<<Header | 1<<Rows | 1<<Emitters},
	parts.AMarker:          {tool: 1<<Lead | 1<<Header | 1<<Rows | 1<<Emitters},
	parts.ATestCups:        {tool: 1 << Cups},
	parts.AMeasuringJug:    {tool: 1 << Cups},
	parts.AKitchenTimer:    {tool: 1 << Cups},
}

// sites says in which step what has a site is taken.
var sites = [parts.Sites]Kind{parts.Leading: Lead, parts.Heading: Header, parts.Rowing: Rows, parts.Ending: Rows}
