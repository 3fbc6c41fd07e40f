// Package care is what can hurt, and what is said of it.
//
// Whatever is done, be it a step, a task of the calendar, a card, a group of inputs or a
// guide, declares its hazards as a [Set]. What is said of them is in one catalogue: a row
// of [Catalogue], with the file of the same name in content/cautions.
package care

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// A Hazard is what can hurt.
type Hazard uint8

const (
	Current  Hazard = iota // a shock, from a pump and its cord
	Timer                  // or from a timer that has a plug, where there is no pump
	Wiring                 // outlets and cords that are chosen or put up
	Pressure               // a line that is opened, or lets go
	Heat                   // hot water, hot air
	Blades
	Chemicals        // acid, base, bleach
	Salts            // feed salts as they are bought, which feed a fire
	Weight           // that is lifted or carried
	Slips            // on a wet floor, over tubing
	Drain            // where what runs out goes
	Height           // what stands high may tip
	InTank           // somebody climbs into one
	Drowning         // of children, in open water
	Dust             // and fibres
	Backflow         // feed in the drinking water
	Stored           // germs and mosquitoes in water that stands
	Drinking         // of feed and of drain, by people and animals
	Swelter          // work in a hot tunnel
	Hazards   = iota // how many there are
)

// Names are what the hazards are called, within a sentence and at the head of a guide.
var Names = [Hazards]words.Text{
	Current: "current", Timer: "the timer's power", Wiring: "wiring", Pressure: "pressure", Heat: "heat", Blades: "blades", Chemicals: "chemicals", Salts: "salts",
	Weight: "weight", Slips: "wet floor", Drain: "drain", Height: "tipping", InTank: "air in tanks", Drowning: "drowning", Dust: "dust",
	Backflow: "backflow", Stored: "stored water", Drinking: "feed", Swelter: "hot tunnel",
}

// A Set is some hazards.
type Set uint32

// Has says whether a hazard is among them.
func (s Set) Has(h Hazard) bool { return s>>h&1 != 0 }

// where says which plans have a hazard at all; nil for all.
var where = [Hazards]*Condition{
	Current: &pumped, Timer: &unpumped, Wiring: &pumped, Pressure: nil, Heat: nil, Blades: nil, Chemicals: nil, Salts: nil, Weight: nil, Slips: nil, Drain: nil, Height: &fromTank,
	InTank: nil, Drowning: nil, Dust: nil, Backflow: nil, Stored: &tanked, Drinking: nil, Swelter: &sheltered,
}

// In is what can hurt in a plan. It knows no caution: each of these must have one.
func In(p *plan.Plan) (s Set) {
	for h := range Hazard(Hazards) {
		if c := where[h]; c == nil || c.Holds(p) {
			s |= 1 << h
		}
	}
	return s
}
