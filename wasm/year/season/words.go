package season

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// titles are what tasks are called; those for a planting are followed by it.
var titles = [TaskKinds]words.Text{
	Sowing: "Sow", Potting: "Move into blocks", Setting: "Plant out", Tying: "Tie up", Picking: "First harvest", Clearing: "Remove plants",
	Building: "Build the system", Leaks: "Fill the system and look for leaks", Cups: "Catch-can test", Wetting: "Expand slabs with water, or wet the medium",
	Strength: "Measure EC and pH", Filter: "Look at the filter", Flushing: "Flush all ends", Treating: "Clean the lines", Storing: "Drain the system and store it",
	Resetting: "Set the timer",
}

// notes say how, in a sentence or two; {n} is [catalogue.SowingSpare].
var notes = [TaskKinds]words.Text{
	Sowing:    "One seed to a plug, and 1 more for every {n}. Keep them warm and covered until seedlings are up.",
	Potting:   "Move them when the first true leaves show, be it earlier or later. Soak the blocks in feed first.",
	Setting:   "Plant when roots show at the foot of the block. Wet the block well, set it on its opening and put the emitter in.",
	Tying:     "Every week: turn or clip the stem to its string and take the side shoots.",
	Picking:   "From now on pick every few days.",
	Clearing:  "Shut the row's water or plug its emitters, take the plants out and sweep up.",
	Building:  "Follow the order of assembly. Keep the pump unplugged, or the tap shut, until every joint is clamped and the cautions are met.",
	Leaks:     "Run it with the ends open, then with all closed but one, open a crack. Look at every joint, and stop the water before you touch one.",
	Cups:      "Cups under emitters at the start, the middle and the end of rows; the flows must be alike.",
	Wetting:   "Wet until the slab is even and full. Cut the drain slits a day later, or before planting.",
	Strength:  "Every week: of the feed and of what drains.",
	Filter:    "Every week: read both gauges, or stop the water, open it and look.",
	Flushing:  "Stop the water before you touch an end. Open a few at a time, and run it until it is clear.",
	Treating:  "With plants on the line only what the label allows; strong doses only with none. Never mix bleach and acid. Flush afterwards.",
	Resetting: "On the evening before, or before the first shot. On the eve of a hot or a dull day set it to that line of the card.",
	Storing:   "Unplug the pump or shut the valve first. Open every end and let it drain before frost; store emitters and pump dry.",
}

// hazards are what can hurt in a task, wherever it is told.
var hazards = [TaskKinds]care.Set{
	Sowing:    1 << care.Dust,
	Potting:   1<<care.Dust | 1<<care.Drinking,
	Setting:   1<<care.Current | 1<<care.Weight | 1<<care.Dust | 1<<care.Swelter,
	Tying:     1<<care.Blades | 1<<care.Swelter,
	Picking:   1<<care.Blades | 1<<care.Drinking | 1<<care.Swelter,
	Clearing:  1<<care.Current | 1<<care.Blades | 1<<care.Weight | 1<<care.Dust | 1<<care.Swelter,
	Building:  1<<care.Current | 1<<care.Wiring | 1<<care.Pressure | 1<<care.Heat | 1<<care.Blades | 1<<care.Weight | 1<<care.Height | 1<<care.InTank | 1<<care.Drowning | 1<<care.Dust,
	Leaks:     1<<care.Current | 1<<care.Pressure | 1<<care.Slips | 1<<care.Drain | 1<<care.Height | 1<<care.Backflow,
	Cups:      1<<care.Current | 1<<care.Slips,
	Wetting:   1<<care.Blades | 1<<care.Weight | 1<<care.Slips | 1<<care.Drain | 1<<care.Dust,
	Strength:  1<<care.Chemicals | 1<<care.Drinking,
	Filter:    1<<care.Current | 1<<care.Pressure,
	Flushing:  1<<care.Current | 1<<care.Pressure | 1<<care.Slips | 1<<care.Drain,
	Treating:  1<<care.Current | 1<<care.Chemicals | 1<<care.Salts | 1<<care.Drain | 1<<care.Drinking,
	Storing:   1<<care.Current | 1<<care.Pressure | 1<<care.Weight | 1<<care.Slips | 1<<care.Drain | 1<<care.InTank | 1<<care.Drowning | 1<<care.Stored,
	Resetting: 0,
}

// Hazards are what can hurt in a task.
func (k TaskKind) Hazards() care.Set { return hazards[k] }

// String is what a task is called.
func (k TaskKind) String() string { return words.Say(titles[k]) }

// Title is a task in a few words: "Plant out: tomato, 30 plants".
func (s *Season) Title(p *plan.Plan, t *Task) string {
	if t.Timer != nil {
		return words.Say("{task}: {setting}", t.Kind.String(), t.Timer.String())
	}
	if t.Planting < 0 {
		return t.Kind.String()
	}
	return words.Say("{task}: {planting}", t.Kind.String(), s.For(p, t))
}

// For is what a task is for: "tomato, 30 plants"; empty when it is for no
// planting.
func (s *Season) For(p *plan.Plan, t *Task) string {
	if t.Planting < 0 {
		return ""
	}
	name := s.Name(p, t.Planting)
	switch t.Kind {
	case Sowing, Potting, Setting:
		return words.Say("{planting}, {n} {n|plant|plants}", name, words.N(t.Plants))
	}
	return name
}

// Note says how a task is done.
func (t *Task) Note() string { return words.Say(notes[t.Kind], words.N(catalogue.SowingSpare)) }

// Name is a planting in words: the crop, with its number when there are
// several plantings of it: "cucumber 2".
func (s *Season) Name(p *plan.Plan, i int) string {
	g := &s.Plantings[i]
	name := p.CropName(g.Crop)
	for k := range s.Plantings {
		if k != i && s.Plantings[k].Crop == g.Crop {
			return words.Say("{crop} {number}", name, words.N(g.Number+1))
		}
	}
	return name
}

// NameBegin is [Season.Name] at the beginning of a sentence or a line.
func (s *Season) NameBegin(p *plan.Plan, i int) string { return unit.Capital(s.Name(p, i)) }
