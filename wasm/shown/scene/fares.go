package scene

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/emitter"
)

// states are the states of emitters, as a table prints them.
var states [sheet.States]words.Text = [...]words.Text{
	sheet.Unknown: "not worked out",
	sheet.Shut:    "shut",
	sheet.Below:   "below range",
	sheet.Within:  "in range",
	sheet.Above:   "above range",
}

// counted are the same with how many there are.
var counted [sheet.States]words.Text = [...]words.Text{
	sheet.Unknown: "{n} not worked out",
	sheet.Shut:    "{n} shut",
	sheet.Below:   "{n} below range",
	sheet.Within:  "{n} in range",
	sheet.Above:   "{n} above range",
}

// State is how an emitter runs: "in range".
func State(s sheet.State) string { return words.Say(states[s]) }

// CountIn says how many plants are in a state: "3 in range".
func CountIn(s sheet.State, n int) string { return words.Say(counted[s], words.N(n)) }

// Tally says how many plants of a row are in each state: "3 shut, 12 in range".
func Tally(r *sheet.RowFare) string {
	var list []string
	for s, n := range r.In {
		if n > 0 {
			list = append(list, CountIn(sheet.State(s), n))
		}
	}
	return words.List(list...)
}

// EmitterOf returns the emitter of a plant, or nil.
func (sc *Scene) EmitterOf(plant int) *emitter.Emitter { return sc.S.EmitterOf(plant) }
