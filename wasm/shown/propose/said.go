package propose

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/catalogue"
)

// Said says what became of the answers besides what the plan's own answer says, in
// sentences: how many plants find a place, what was narrowed for them, which
// emitters were chosen for want of head, that there may be better, what stays of the plan
// before, and which dates are assumed.
func (o *Outcome) Said(p *plan.Plan) []string {
	sys := p.Units
	var said []string
	amount := func(v float64) string { return wording.Units{Sys: sys}.Amount(unit.Length, v) }
	all, n := total(o.Asked), total(o.Planned)
	switch {
	case o.None:
		said = append(said, words.Say("No plant finds a place there. One is planned all the same, so that you see its water: type a larger place."))
	case n < all:
		said = append(said, words.Say("{n} of {all} {all|plant finds|plants find} a place, and {n|this one is|these are} planned: {crops}.", words.N(n), words.N(all), counted(o.Planned)))
	}
	switch {
	case o.None || o.Room == o.Usual:
	case o.Room.Path > 0:
		said = append(said, words.Say("So many find a place only with paths of {narrow} between rows instead of {usual}, {strip} free at the walls and a door of {door}.",
			amount(o.Room.Path), amount(o.Usual.Path), amount(o.Room.Margin), amount(o.Room.Door)))
	default:
		said = append(said, words.Say("The place has no room for a path or a door: plants stand side by side, and are reached from outside."))
	}
	if o.Plain {
		said = append(said, words.Say("The emitters are plain ones that do not compensate: those that do need more head than there can be."))
	}
	if o.Cut {
		said = append(said, words.Say("The search for tubing and zones ended before all were compared. There may be a better plan."))
	}
	if len(o.Kept) > 0 {
		said = append(said, words.Say("As you had it before: {fields}.", named(o.Kept)))
	}
	if len(o.Lost) > 0 {
		said = append(said, words.Say("Not as you had it before, because it no longer goes with the rest or the answer would be worse: {fields}.", named(o.Lost)))
	}
	if o.Late {
		said = append(said, words.Say("It is too late to plant this year: the season is that of {year}.", words.N(p.SeasonYear())))
	}
	if !o.Dated {
		said = append(said, words.Say("The dates are assumed: last frost on {last}, first frost on {first}. Type those of your place under Grow.",
			day.Day(p.Season.LastFrost).Words(), day.Day(p.Season.FirstFrost).Words()))
	}
	return said
}

// most is how many fields of a section are named one by one.
const most = 4

// named lists fields within a sentence, section by section, and only how many there are where
// there are many.
func named(fields []*plan.Field) string {
	var all []string
	for _, s := range plan.Sections() {
		var each []string
		for _, f := range fields {
			if f.Section == s.Name {
				each = append(each, f.Within())
			}
		}
		switch n := len(each); {
		case n > most:
			all = append(all, words.Say("{section}: {n} values", words.Say(s.Title), words.N(n)))
		case n > 0:
			all = append(all, words.Say("{section}: {fields}", words.Say(s.Title), words.And(each)))
		}
	}
	return words.Notes(all...)
}

// total counts plants.
func total(list []Count) int {
	n := 0
	for _, c := range list {
		n += c.Plants
	}
	return n
}

// counted lists crops with their numbers: "10 tomato and 5 sweet pepper".
func counted(list []Count) string {
	var each []string
	for _, c := range list {
		each = append(each, words.Say("{n} {crop}", words.N(c.Plants), words.Say(catalogue.Crops[c.Crop].Name)))
	}
	return words.And(each)
}
