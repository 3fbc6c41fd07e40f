package propose

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	const used = "A plan that is proposed from five answers. Each can be changed in it."
	room := func(title string, of func(r Room) float64) formula.Assumption {
		return formula.Assumption{
			Code: "propose.rooms", Title: title, Values: []float64{of(rooms[unit.Metric][0]), of(rooms[unit.Metric][1])}, Kind: unit.Length,
			Rule: "The second where not all plants find a place with the first, and nothing where none does with that. In US units round figures in feet.",
			Used: used, Source: source.Ref{Standing: source.Practice},
		}
	}
	return []formula.Assumption{
		room("Proposed path between rows", func(r Room) float64 { return r.Path }),
		room("Proposed free strip at the walls", func(r Room) float64 { return r.Margin }),
		room("Proposed width of the door, and of the ground before it", func(r Room) float64 { return r.Door }),
		{
			Code: "propose.field.add", Title: "Proposed spacing",
			Rule:   "In the row as the crop table has it, or as far apart as the pieces of the medium take; between rows so that the floor carries as many plants as the crop table has it, if the place is wide enough, else the path. Slabs and bags hold as many plants as the table says, buckets and pots one.",
			Used:   used,
			Source: source.Ref{At: "the crop table, with a source for each value", Standing: source.Practice},
		},
		{
			Code: "propose.late", Title: "Proposed season",
			Rule:   "The dates of frost that a form starts with, in the year of the device's date; in the next where no crop that is planted on that date would be picked before its season ends.",
			Used:   used,
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "propose.lossOfDevices", Title: "Proposed loss of a backflow device at a tap", Values: []float64{lossOfDevices}, Kind: unit.Pressure,
			Used: used, Source: source.Ref{At: "of two check valves in one body", Standing: source.Memory},
		},
		{
			Code: "propose.plainEmitter", Title: "Proposed emitters where there is too little head for compensating ones",
			Rule:   "Plain ones, whose flow was read at 0.1 bar, from 0.05 to 1 bar; a filter that takes 0.01 bar clean and 0.02 bar more before it is cleaned; and a safety margin of 0.5 m, in US units 1.5 ft.",
			Used:   used,
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "propose.usualTank", Title: "Height of a tank of which nobody has said how high it stands", Values: []float64{usualTank}, Kind: unit.Length,
			Used: used, Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "propose.anHour", Title: "Time that a proposed tank lasts at the least, all plants watered at once", Values: []float64{anHour}, Kind: unit.Duration,
			Used: used, Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "propose.usualPlants", Title: "Tomato plants that are proposed where nobody has said what grows", Values: []float64{usualPlants}, Kind: unit.Count,
			Used: used, Source: source.Ref{Standing: source.Choice},
		},
	}
}
