// Package plan holds what a grower tells the tool: the place, the water path,
// the pump, the emitters and the rows, as one value with every field declared
// once.
//
// All numbers are in the inner units of package unit (metres, m³/s, Pa, °C,
// fractions of one). Choices are small whole numbers that index the options of
// their field; the numbers are permanent, because links hold them.
package plan

import "evenrow/wasm/ground/unit"

// A Plan is the whole question. The zero value is not valid; start from
// [Default] or read a [Draft].
type Plan struct {
	Name  string
	Units unit.System

	Place    Place
	Supply   Supply
	Runs     []Run // from the pump's outlet, the tank or the tap to the header; 1 to MaxRuns
	Filter   Filter
	Header   Header
	Emitters []Emitter // the kinds that rows choose from; 1 to MaxEmitters
	Rows     []Row     // 1 to MaxRows, in the order the header feeds them
	Limits   Limits

	Season    Season
	Plantings []Planting // none to MaxPlantings
	Crops     []Crop     // changed or added; none to MaxCrops
	Sky       Sky
	Months    []Month // twelve with OwnClimate, else twelve or none
	Timer     Timer
	Prices    Prices
	Bought    []Bought // none to MaxBought
	Chance    Chance
	Ends      Ends
	Fittings  []Fitting // of one's own; none to MaxFittings

	How History // how the values came to be
}

// How many records a plan may hold.
const (
	MaxRuns     = 8
	MaxPoints   = 12
	MaxEmitters = 4
	MaxRows     = 60
	MaxZones    = 12
)

// A Place is the ground that the rows stand on.
type Place struct {
	Length float64 // m, along the rows
	Width  float64 // m, across the rows
	Water  float64 // °C, temperature of the water
	Door   float64 // m, width of the door, in the middle of the near end, where X is 0; 0 for none
	Path   float64 // m, least width of the free strip between two rows that somebody walks; 0 where none is asked for
	Margin float64 // m, strip to keep free along all walls; 0 where none is asked for
}

// Kinds of supply, the values of Supply.Kind.
const (
	PumpPoints  = iota // a pump whose curve is known by points
	PumpTwo            // a pump known by shut-off head and maximum flow
	PumpPower          // a pump of which only the power is known
	GravityTank        // a tank above the rows
	Mains              // a tap with a pressure
	PumpWanted         // a pump that is yet to be bought
)

// How a tank is filled, the values of Supply.Fill.
const (
	FilledByHand  = iota // or from a hose that is held
	FilledByFloat        // by its valve, from a tap
)

// Sought says whether the supply is a pump whose curve is not known, because only
// its power is or because it is yet to be bought: the answer is which pump to ask
// for.
func (s *Supply) Sought() bool { return s.Kind == PumpPower || s.Kind == PumpWanted }

// Regulated says whether there is a regulator. A pump whose curve is not known is not
// asked for one.
func (s *Supply) Regulated() bool { return s.Regulator > 0 && !s.Sought() }

// A Supply is where the water comes from and what drives it.
type Supply struct {
	Kind int

	Tank    float64 // m³, volume of the tank; for pumps and gravity tanks
	Fill    int     // how the tank is filled
	Points  []Point // PumpPoints: 3 to MaxPoints, flow rising from 0, head falling
	ShutOff float64 // m, PumpTwo: head at no flow
	MaxFlow float64 // m³/s, PumpTwo: flow at no head
	Power   float64 // W, PumpPower: what the label says
	Label   float64 // W, PumpTwo: the power on the label, which the two figures are held against; Unset where there is none

	Static  float64 // Pa, Mains: pressure with every tap closed
	TapFlow float64 // m³/s, Mains: flow of the open tap into a bucket

	Devices float64 // Pa, what a backflow device, a meter or a timer valve at the supply takes while water flows

	Regulator float64 // Pa, outlet pressure of a regulator before the header; 0 for none
}

// A Point is one point of a pump's curve.
type Point struct {
	Flow float64 // m³/s
	Head float64 // m
}

// A Run is one stretch of the path from the supply to the header.
type Run struct {
	Length float64 // m
	Rise   float64 // m, from its start to its end, negative when it falls; the first starts at the water in the tank, half full, or at the tap
	Tube   int     // index into catalogue.Tubes, or catalogue.Custom
	Bore   float64 // m, when Tube is catalogue.Custom
	Elbows int     // bends of 90 degrees
	Tees   int     // tees passed straight through
	Valves int     // ball valves
	Checks int     // check valves
}

// A Filter stands directly after the supply.
type Filter struct {
	Present int     // 0 no, 1 yes
	Rated   float64 // m³/s, the flow at which Clean was read
	Clean   float64 // Pa, loss of the clean filter at that flow
	Fouling float64 // Pa, further loss at that flow at which it is cleaned
	Opening float64 // m, of the mesh or the grooves between discs
}

// Layouts, the values of Header.Layout.
const (
	HeaderAndRows = iota // a header across, rows from it
	OneLine              // up one row and down the next
	Ring                 // a header across, rows from it, and a far header that ties the rows' ends
)

// Feeds, the values of Header.Feed.
const (
	FeedEnd    = iota // the lead meets the header at row 1
	FeedMiddle        // the lead meets the header in its middle
)

// A Header carries the water across the rows.
type Header struct {
	Layout int
	Feed   int     // HeaderAndRows only
	Tube   int     // index into catalogue.Tubes, or catalogue.Custom
	Bore   float64 // m, when Tube is catalogue.Custom
}

// Emitter kinds, the values of Emitter.Kind.
const (
	Compensating = iota
	NonCompensating
)

// Sizes of the barb that an emitter pushes into the tubing, the values of
// Emitter.Barb.
const (
	BarbSmall = iota
	BarbStandard
	BarbLarge
)

// What an emitter does at low pressure, the values of Emitter.Flushes.
const (
	Never   = iota
	WhenLow // stands wide open and flushes itself
)

// An Emitter is one kind of emitter, with its data sheet.
type Emitter struct {
	Kind     int
	Flow     float64 // m³/s, nominal
	Opens    float64 // Pa, Compensating: opens above this, rising
	Closes   float64 // Pa, Compensating: closes below this, falling; at most Opens
	Lowest   float64 // Pa, lower end of its range: regulates from here (Compensating), or useful from here
	Highest  float64 // Pa, upper end of its range
	Nominal  float64 // Pa, NonCompensating: the pressure at which Flow was read
	Exponent float64 // x in q = k hˣ: 0 to 0.2 for Compensating, 0.3 to 1 for NonCompensating
	CV       float64 // coefficient of variation of manufacture, as a fraction
	Passage  float64 // m, smallest passage
	Barb     int
	Micro    float64 // m, tubing of [MicroBore] from the row's tubing to each emitter; 0 where it sits in the tubing

	Flushes   int     // Compensating
	Gush      float64 // m³/s, WhenLow: what it lets through while it flushes, at Regulates
	Regulates float64 // Pa, WhenLow: below it the emitter flushes; at most Lowest
}

// Media, the values of Row.Medium.
const (
	CocoSlab = iota
	StoneWoolSlab
	GrowBag
	Bucket
	Pot
)

// A Row is one row of plants with its tubing.
type Row struct {
	Crop     int     // index into catalogue.Crops
	Plants   int     // plants in the row
	Spacing  float64 // m, between plants
	First    float64 // m, from the header (or the row's start) to the first plant
	Gap      float64 // m, from the previous row; for row 1, from the side wall
	Medium   int
	PerPiece int     // plants in one slab, bag or bucket
	Emitter  int     // index into Plan.Emitters
	PerPlant int     // emitters per plant
	Tube     int     // index into catalogue.Tubes, or catalogue.Custom
	Bore     float64 // m, when Tube is catalogue.Custom
	Height   float64 // m, of the row's start above the header
	Slope    float64 // m per m, rising away from the header; along the water in one line
	Zone     int     // 1 to MaxZones: rows of one zone are watered together
}

// Length returns the length of the row's tubing in m: from the header (or the
// row's start) to the end cap, which stands Tail beyond the last plant.
func (r *Row) Length() float64 {
	return r.First + float64(r.Plants-1)*r.Spacing + Tail
}

// Tail is the length of tubing from a row's last plant to its end cap, in m:
// enough to fold the end into a can when flushing (common practice, no source).
const Tail = 0.2

// Limits are what the grower asks of the system.
type Limits struct {
	Reserve  float64 // m, head to keep above the emitter's lowest
	Evenness float64 // least emission uniformity, as a fraction
	Speed    float64 // m/s, highest velocity in the supply and the header
}
