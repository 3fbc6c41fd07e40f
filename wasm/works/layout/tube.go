package layout

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
)

// NoTube stands for an end without tubing: the pump, a thread, a closed end.
const NoTube = -1

// A Tube is one size of tubing in use, from the catalogue or measured.
type Tube struct {
	Entry     int     // index into catalogue.Tubes; catalogue.Custom for measured tubing
	Bore      float64 // m
	Outside   float64 // m; 0 for measured tubing, of which only the bore is known
	Roughness float64 // m, absolute
}

// TubeOf returns the tubing that a plan names by its place in the catalogue,
// or by its bore in m when entry is catalogue.Custom.
func TubeOf(entry int, bore float64) Tube {
	c := &catalogue.Tubes[entry]
	t := Tube{entry, c.Bore, c.Outside, c.Roughness}
	if entry == catalogue.Custom {
		t.Bore, t.Outside = bore, 0
	}
	return t
}

// Short returns the tubing's size as a list says it, such as "16 mm", or for
// measured tubing "13.2 mm bore".
func (t Tube) Short(sys unit.System) string {
	if t.Entry == catalogue.Custom {
		return words.Say("{size} bore", unit.Text(unit.Bore, sys, t.Bore))
	}
	return words.Say(catalogue.Tubes[t.Entry].Short)
}

// Name returns the tubing's name in full.
func (t Tube) Name(sys unit.System) string {
	if t.Entry == catalogue.Custom {
		return words.Say("tubing of {size}", t.Short(sys))
	}
	return words.Say(catalogue.Tubes[t.Entry].Name)
}

// tube returns the index in Tubes of tubing that a plan names. Few sizes are
// in use at once, so a search is quick.
func (l *Layout) tube(entry int, bore float64) int {
	t := TubeOf(entry, bore)
	for i := range l.Tubes {
		if l.Tubes[i] == t {
			return i
		}
	}
	l.Tubes = append(l.Tubes, t)
	return len(l.Tubes) - 1
}
