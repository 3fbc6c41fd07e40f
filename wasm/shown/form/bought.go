package form

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/parts"
)

// byButton says whether records of a section come by a button that stands beside what they are
// of, and not by one of the form.
func byButton(s *plan.Section) bool { return s.Name == "bought" }

// Lists says whether groups hold records that are called by the lines of the list of parts.
func Lists(p *plan.Plan, groups []Group) bool {
	for i := range groups {
		if len(p.Bought) > 0 && groups[i].holds("bought") {
			return true
		}
	}
	return false
}

// called is what the page calls a record: [Summary], but for what is said of a part, which has
// the name that the part has on the list.
func called(p *plan.Plan, s *plan.Section, i int, list []parts.Line) string {
	if !byButton(s) || list == nil {
		return Summary(p, s, i)
	}
	b := &p.Bought[i]
	for k := range i {
		if p.Bought[k].Part == b.Part {
			return words.Say("{row} says of the same part as part {other}, and does not count", words.Say(s.Record.Begin, words.N(i+1)), words.N(k+1))
		}
	}
	for k := range list {
		if list[k].Key() == b.Part {
			return list[k].Name
		}
	}
	return words.Say("{row}, on the list no more: {key}", words.Say(s.Record.Begin, words.N(i+1)), b.Part)
}

// ofPart writes what stands below the boxes of what is said of a part: the way to the price
// of tubing, which designs reckon with too, and the way back.
func (f *form) ofPart(i int) {
	if i >= len(f.p.Bought) {
		return
	}
	b := &f.p.Bought[i]
	if size := b.Part[min(len("tube "), len(b.Part)):]; b.Tubing() && plan.FieldNamed("prices", "tube-"+size) != nil {
		f.HTML(`<p>`).Linked("#f-prices.tube-"+size, "What a metre or foot of it costs, and how long a roll is, stands under [Prices].").HTML(`</p>`)
	}
	f.HTML(`<p>`).Linked("#h-parts", "[Back to the list of parts]").HTML(`</p>`)
}
