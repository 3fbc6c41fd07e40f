package sheet

import "evenrow/wasm/ground/unit"

// A FixOf is what all changes of a kind have in common. What is said of them
// stands in package answer, in a table of the same kinds.
type FixOf struct {
	Name     string    // for spreadsheets and scripts, so it stays as it is
	Unit     unit.Kind // of Value; None where that says nothing
	Index    IndexOf   // what Index is
	Drives   bool      // it takes another pump, another tap or a higher tank
	Unpriced bool      // it takes something that the plan has no price for
	Emitters bool      // it takes other emitters, which no tubing is in the place of
}

// An IndexOf is what the index of a change is.
type IndexOf uint8

const (
	NoIndex IndexOf = iota
	OfTube          // a size of the catalogue
	OfZones         // how many zones
	OfRow           // a row, from 0
)

// FixesOf has a row for each kind: without one at the end it does not compile, and
// TestEveryFixHasItsRow names what else is missing.
var FixesOf [FixKinds]FixOf = [...]FixOf{
	NewPump:       {Name: "new-pump", Unit: unit.Head, Drives: true, Unpriced: true},
	RaiseTank:     {Name: "raise-tank", Unit: unit.Length, Drives: true, Unpriced: true},
	MorePressure:  {Name: "more-pressure", Unit: unit.Pressure, Drives: true, Unpriced: true},
	AddRegulator:  {Name: "add-regulator", Unit: unit.Pressure, Unpriced: true},
	WiderLead:     {Name: "wider-supply-line", Index: OfTube},
	WiderHeader:   {Name: "wider-header", Index: OfTube},
	WiderRows:     {Name: "wider-rows", Index: OfTube},
	MiddleFeed:    {Name: "middle-feed"},
	MoreZones:     {Name: "more-zones", Index: OfZones},
	CleanerFilter: {Name: "cleaner-filter", Unit: unit.Pressure},
	LowerEmitters: {Name: "lower-emitters", Unit: unit.Pressure, Unpriced: true, Emitters: true},
	CloseRing:     {Name: "close-loop"},
	OneEmitter:    {Name: "one-emitter", Index: OfRow, Unpriced: true, Emitters: true},
	OwnZones:      {Name: "own-zones", Index: OfZones},
	Redesign:      {Name: "redesign"},
}
