// Package unit holds the quantities a grower reads and types, and is the only
// place where a number changes its unit.
//
// Inside the program every quantity is a float64 in one fixed unit per [Kind],
// an SI unit named in the list of kinds below: a bore of 13.6 mm is 0.0136.
// Text of the page, of links and of files is in the units of a [System].
package unit

// A System is the set of units that a plan is shown in.
type System int

const (
	Metric System = iota
	US
)

// Systems is how many systems there are.
const Systems = 2

// A Kind is one quantity of the trade. The comment names the unit inside the
// program, then those shown.
type Kind uint8

const (
	None        Kind = iota // a plain number
	Count                   // a whole number of things
	Length                  // m: m, ft
	Bore                    // m: mm, in
	Head                    // m of water: m, ft
	Pressure                // Pa: bar, psi
	EmitterFlow             // m³/s: L/h, gal/h
	Flow                    // m³/s: L/min, gal/min
	Speed                   // m/s: m/s, ft/s
	Temperature             // °C: °C, °F
	Volume                  // m³: L, gal
	Share                   // a fraction of one: %, %
	Opening                 // m: µm, µm
	Power                   // W: W, hp
	Duration                // s: min, min
	Slope                   // m per m: %, %
	Viscosity               // m²/s: mm²/s, mm²/s
	Density                 // kg/m³: kg/m³, lb/ft³
	Angle                   // °: °, °; latitudes, north positive, and longitudes, east positive
	Hours                   // s: h, h; differences of clocks
	Radiation               // J/m² a day: MJ/m² a day, Btu/ft² a day
	Evaporation             // m a day: mm a day, in a day
	Vapour                  // Pa: kPa, psi; pressures of vapour and of the air
	Wind                    // m/s: m/s, mph
	Area                    // m²: m², ft²
	PlantWater              // m³ a day: L a day, gal a day; of one plant
	Dose                    // m³: mL, fl oz; of one shot for a plant
	Crowd                   // 1/m²: plants to a m², plants to a ft²
	Money                   // any currency
	Price                   // any currency for a m: for a m, for a ft
	kinds
)
