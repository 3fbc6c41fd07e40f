package plan

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/ends"
)

// Options of what ends a part may have: every one, and the threads alone behind the usual
// one.
var endOptions, threadOptions = func() (all, threads []Option) {
	families := [ends.Families]string{"npt", "hose", "g", "r", "socket", "pvc", "soft", "hard", "insertable", "barb", "insert", "grip", "compression", "push-in"}
	sexes := [...]string{ends.Neither: "", ends.Male: "-male", ends.Female: "-female"}
	for _, e := range ends.All {
		code := families[e.Family]
		if e.Threaded() || e.Family == ends.Socket || e.Family == ends.Rigid {
			code += "-" + string(ends.Sizes[e.Size]) + sexes[e.Sex]
		} else {
			code += "-" + strconv.Itoa(e.Size)
		}
		all = append(all, Option{Code: code, Label: e.Text(), Size: e.SizeText()})
	}
	threads = append(threads, Option{Code: "usual", Label: "the usual one"})
	return all, append(threads, all[:ends.Threads]...)
}()

var endFields = func() []*Field {
	places := [EndPlaces]struct {
		name    string
		in, out words.Text
		when    func(*Plan, int) bool
	}{
		AtOutlet:    {"outlet", "", "Thread of the tap, pump or tank", nil},
		AtTimer:     {"timer", "Timer valve, where water comes in", "Timer valve, where water goes out", supplied(Mains, GravityTank)},
		AtBackflow:  {"backflow", "Backflow device, where water comes in", "Backflow device, where water goes out", supplied(Mains)},
		AtFilter:    {"filter", "Filter, where water comes in", "Filter, where water goes out", filtered},
		AtRegulator: {"regulator", "Regulator, where water comes in", "Regulator, where water goes out", func(p *Plan, _ int) bool { return p.Supply.Regulated() }},
	}
	list := []*Field{
		choice(1, "choose", "Parts between them", []Option{{Code: "cheapest", Label: "the cheapest"}, {Code: "fewest", Label: "as few as can be"}}, 0,
			"", func(p *Plan, _ int) *int { return &p.Ends.Shortest }),
		choice(2, "mixed", "Can you buy adapters between American and BSP threads?", []Option{{Code: "no", Label: "no"}, {Code: "yes", Label: "yes"}}, 0,
			"Few shops have them.", func(p *Plan, _ int) *int { return &p.Ends.Mixed }),
	}
	for i := range places {
		at := &places[i]
		if at.in != "" {
			list = append(list, choice(10+2*i, at.name+"-in", at.in, threadOptions, 0, "", func(p *Plan, _ int) *int { return &p.Ends.In[i] }).when(at.when))
		}
		help := words.Text("")
		if i == AtOutlet {
			help = "Hold a part that you know against it: male threads are outside, female ones inside. What nobody has chosen is the usual one, which the list of what joins what names."
		}
		list = append(list, choice(11+2*i, at.name+"-out", at.out, threadOptions, 0, help, func(p *Plan, _ int) *int { return &p.Ends.Out[i] }).when(at.when))
	}
	return list
}()

var fittingFields = []*Field{
	{ID: 1, Name: "name", Label: "Name", Type: Text, Max: 40, Help: "As the shop calls it; empty to go by its ends.",
		Text: func(p *Plan, i int) *string { return &p.Fittings[i].Name }},
	choice(2, "a", "One end", endOptions, 2, "", func(p *Plan, i int) *int { return &p.Fittings[i].A }),
	choice(3, "b", "Other end", endOptions, 2, "", func(p *Plan, i int) *int { return &p.Fittings[i].B }),
	number(4, "price", "Price", unit.Money, 0, 1e4, 0, "0 for one that you have.", func(p *Plan, i int) *float64 { return &p.Fittings[i].Price }),
}
