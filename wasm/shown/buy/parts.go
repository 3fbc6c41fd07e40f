// Package buy lists what has to be bought.
package buy

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/works/parts"
)

// GroupNames are the headings of the list of parts, by [parts.Group].
var GroupNames [parts.Groups]words.Text = [...]words.Text{
	parts.Tubing:        "Tubing",
	parts.Fittings:      "Fittings",
	parts.EmittersGroup: "Emitters",
	parts.WaterPath:     "Water path",
	parts.Electrics:     "Electrics",
	parts.Growing:       "Growing",
	parts.Tools:         "Tools",
}

// Parts lists what to buy, by group.
func Parts(the *scene.Scene) {
	sc := part{the}
	if len(sc.S.Parts) == 0 {
		sc.Say("p", "There is nothing to buy yet.")
		return
	}
	sc.Say("p", "Counted from the layout, spares included. Check each thread against the part it meets before you pay. Not on this list: what brings power to a pump, and what is mixed into the water.")
	sc.Table(words.Say("Parts to buy"), words.Say("Part"), block.Figures(words.Say("Number or length")), block.Figures(words.Say("Spare in it"))).Rows(func(t *block.Table) {
		last := -1
		for i := range sc.S.Parts {
			p := &sc.S.Parts[i]
			if int(p.Group) != last {
				last = int(p.Group)
				if last < len(GroupNames) {
					t.Group(words.Say(GroupNames[last]))
				}
			}
			n, spare := strconv.Itoa(p.Count), ""
			if p.Length > 0 {
				n = sc.Amount(unit.Length, p.Length)
				if p.Rolls > 0 {
					n = words.Say("{n} {n|roll|rolls} of {roll}, for {length}", words.N(p.Rolls), sc.Amount(unit.Length, p.Roll), n)
				}
			}
			if p.Spare > 0 {
				spare = strconv.Itoa(p.Spare)
			}
			t.Row(p.Name, n, spare)
		}
	})
	sc.Saves("parts")
}

// Counts says where the number of each part comes from.
func Counts(the *scene.Scene) {
	sc := part{the}
	if len(sc.S.Parts) == 0 {
		sc.Say("p", "There is nothing to buy yet.")
		return
	}
	sc.Table(words.Say("Where the numbers come from"), words.Say("Part"), words.Say("Counted")).Rows(func(t *block.Table) {
		for i := range sc.S.Parts {
			t.Row(sc.S.Parts[i].Name, sc.S.Parts[i].Why)
		}
	})
}
