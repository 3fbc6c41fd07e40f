package answer

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
)

// yes is the answer's first word where it is yes: plain only where nothing that
// is assumed could turn it.
func (sc part) yes() string {
	switch rest := sc.S.Rest; {
	case sc.S.Sure():
		return words.Say(verdicts[sheet.Yes])
	case rest == nil || sc.S.Left[sheet.Turning] || rest.Untested > 0:
		return words.Say("Yes, if what is assumed is so.")
	default:
		return words.Say("Yes, if {n} {n|thing is|things are} so.", words.N(len(rest.Turns)))
	}
}

// Rests says what the answer rests on.
func Rests(the *scene.Scene) {
	sc := part{the}
	rest := sc.S.Rest
	all := 0
	if rest != nil {
		all = len(rest.Turns) + rest.Steady + rest.Untested
	}
	switch {
	case sc.S.Verdict == sheet.Cannot || rest == nil:
		sc.Say("p", "Nothing can be said of it before the answer can be given.")
		return
	case sc.S.Wanted != nil && all > 0:
		sc.Say("p", "The pump to ask for goes by {n} {n|value that is|values that are} assumed: what you type or measure instead changes what you ask for.", words.N(all))
		return
	case all == 0:
		sc.Say("p", "Nothing that it rests on is assumed.")
		return
	case len(rest.Turns) == 0:
		none := ""
		switch rest.Steady {
		case 0:
		case 1:
			none = words.Say("One value is assumed, and wherever it lies in what it may really be, the answer is the same.")
		default:
			none = words.Say("{n} values are assumed, and wherever one of them lies in what it may really be, the answer is the same.", words.N(rest.Steady))
		}
		sc.Tag("p", words.Sentences(none, sc.untested()))
		return
	}
	t := &rest.Turns[0]
	sc.Say("p", "What matters most: {thing}, {known}. {turns}.", sc.thing(t), sc.known(t), sc.turns(t))
	sc.Table(words.Say("What would turn the answer"), words.Say("What is assumed, and how to find it"), words.Say("The plan has"), words.Say("The answer is")).Rows(func(table *block.Table) {
		for i := range rest.Turns {
			t := &rest.Turns[i]
			thing, whole := sc.thing(t), ""
			if t.Field.Section == "points" {
				whole = words.Say("All points of the curve in proportion; the figures are of the greatest.")
			}
			small := words.Sentences(whole, found(t.Field))
			if sc.Link == nil || sc.Still {
				table.Explained(thing, small, sc.known(t), sc.turns(t))
			} else {
				table.Led(thing, small, "#f-"+plan.Path(t.Field, t.Records[0]), words.Say("Type it"), sc.known(t), sc.turns(t))
			}
		}
	})
	steady := ""
	if rest.Steady > 0 {
		steady = words.Say("{n} other {n|value that is|values that are} assumed cannot turn it by {n|itself|themselves}.", words.N(rest.Steady))
	}
	sc.Tag("p", words.Sentences(steady, sc.untested(), words.Say("Each was moved alone through what it may really be, and the plan worked out again; two that are off together may turn it sooner.")))
}

// found is how to find a value.
func found(f *plan.Field) string {
	if f.Measure == "" {
		return words.Say("It stands on the data sheet.")
	}
	return words.Say(f.Measure)
}

// untested says how many were not moved.
func (sc part) untested() string {
	if sc.S.Rest.Untested == 0 {
		return ""
	}
	return words.Say("{n} more {n|was|were} not tried: for this plan it takes too long.", words.N(sc.S.Rest.Untested))
}

// thing is what is moved: "Rise (supply line)".
func (sc part) thing(t *sheet.Turn) string {
	s := plan.SectionNamed(t.Field.Section)
	n := s.Records(sc.S.Plan)
	within := ""
	switch {
	case len(t.Records) == n || t.Field.Section == "points":
		within = words.Within(s.Title)
	case s.Name == "rows":
		within = wording.Rows(t.Records)
	case len(t.Records) == 1:
		within = words.Say(s.Record.Within, words.N(t.Records[0]+1))
	default:
		var list []string
		for _, i := range t.Records {
			list = append(list, words.Say(s.Record.Within, words.N(i+1)))
		}
		within = words.And(list)
	}
	return words.Say("{field} ({where})", t.Field.Says(), within)
}

// known is what the plan has for it, and where that is from.
func (sc part) known(t *sheet.Turn) string {
	value := sc.exact(t.Field, t.From)
	return words.Say(knownAs[sc.S.Plan.Origin(t.Field, t.Records[0])], value)
}

// knownAs is what is said of a value that is not known.
var knownAs [plan.Origins]words.Text = [...]words.Text{
	plan.ByRule: "", plan.Assumed: "assumed: {value}", plan.LookedUp: "looked up: {value}", plan.Typed: "typed and not measured: {value}", plan.Measured: "",
}

// turn is what is said of an end, downwards and upwards: where the answer gets
// worse beyond a value, and where it gets better at it.
var turn [sheet.Verdicts]struct{ worse, better way } = [...]struct{ worse, better way }{
	sheet.Yes:    {better: way{"Yes at {value} and below", "Yes at {value} and above"}},
	sheet.Nearly: {way{"Nearly below {value}", "Nearly beyond {value}"}, way{"Nearly at {value} and below", "Nearly at {value} and above"}},
	sheet.No:     {worse: way{"No below {value}", "No beyond {value}"}},
	sheet.Cannot: {worse: way{"Unknown below {value}", "Unknown beyond {value}"}},
}

// A way is said of an end downwards or upwards.
type way struct{ down, up words.Text }

// turns is where the answer turns.
func (sc part) turns(t *sheet.Turn) string {
	var list []string
	for side := range t.Ends {
		e := &t.Ends[side]
		if !e.Turns {
			continue
		}
		said := turn[e.To].worse
		if e.To < sc.S.Verdict {
			said = turn[e.To].better
		}
		there := said.up
		if side == 0 {
			there = said.down
		}
		list = append(list, words.Say(there, sc.exact(t.Field, e.Said(sc.S.Verdict))))
	}
	return words.List(list...)
}

// exact is a value of a field as it is typed, with its unit.
func (sc part) exact(f *plan.Field, v float64) string {
	if f.Type == plan.Whole {
		return words.N(int(v))
	}
	text := wording.Minus(unit.Exact(f.Kind, sc.Sys, v))
	if symbol := sc.Symbol(f.Kind); symbol != "" {
		text += " " + symbol
	}
	return text
}
