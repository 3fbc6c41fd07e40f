package form

import (
	"strconv"
	"strings"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/catalogue"
)

// record writes one record of a list, with the buttons that move it.
func (f *form) record(s *plan.Section, i, n int) {
	id := s.Name + "." + strconv.Itoa(i+1)
	open := n == 1 || s.Name == "points"
	for path := range f.errs {
		open = open || strings.HasPrefix(path, id+".")
	}
	f.HTML(`<details class="record"`).Attr("id", "d-"+id)
	if open {
		f.HTML(` open`)
	}
	f.HTML(`><summary`).Attr("id", "s-"+id).HTML(`>`).Text(Summary(f.p, s, i)).HTML(`</summary>`)
	f.HTML(`<div role="group"`).Attr("aria-labelledby", "s-"+id).HTML(`>`)
	if s.Name == "emitters" {
		f.HTML(`<input type="hidden"`).Attr("name", id+"."+plan.KindWas).Attr("value", f.d.Get(id+".kind")).HTML(`>`)
	}
	f.fields(s, i)
	f.HTML(`<p class="record__do">`)
	number := "." + strconv.Itoa(i+1)
	name := words.Say(s.Record.Within, words.N(i+1))
	if n < s.Max {
		f.action("copy-"+s.One+number, "Copy[ {row}]", name)
	}
	if n > s.Min {
		f.action("remove-"+s.One+number, "Remove[ {row}]", name)
	}
	if s.Name != "points" && s.Name != "months" { // their order is given
		if i > 0 {
			f.action(s.One+"-up"+number, "Up[ {row}]", name)
		}
		if i < n-1 {
			f.action(s.One+"-down"+number, "Down[ {row}]", name)
		}
	}
	f.HTML(`</p></div></details>`)
}

// action writes a button that changes the form. What stands between brackets in
// its name is for screen readers.
func (f *form) action(value string, name words.Text, of ...string) {
	f.HTML(`<button class="button"`).Attr("name", plan.ActionName).Attr("value", value).HTML(`>`)
	if len(of) == 0 {
		f.Text(words.Say(name))
	} else {
		f.Half(name, of...)
	}
	f.HTML(`</button> `)
}

// Summary is one record in a few words, such as "Row 2: tomato, 30 plants".
func Summary(p *plan.Plan, s *plan.Section, i int) string {
	name := words.Say(s.Record.Begin, words.N(i+1))
	amount := func(k unit.Kind, v float64) string { return unit.Text(k, p.Units, v) }
	is := func(what string) string { return words.Say("{row}: {what}", name, what) }
	two := func(name, one, other string) string { return words.Say("{row}: {one}, {other}", name, one, other) }
	switch s.Name {
	case "rows":
		return rowSummary(p, name, &p.Rows[i])
	case "plantings":
		g := &p.Plantings[i]
		switch known := listed(g.Crop); {
		case known && g.Times > 1:
			return words.Say("{row}: {crop}, {n} times", name, p.CropName(g.Crop), words.N(g.Times))
		case known:
			return is(p.CropName(g.Crop))
		case g.Times > 1:
			return words.Say("{row}, {n} times", name, words.N(g.Times))
		}
	case "crops":
		if of := p.Crops[i].Of; listed(of) {
			return is(p.CropName(of))
		}
	case "runs":
		return is(amount(unit.Length, p.Runs[i].Length))
	case "months":
		m := &p.Months[i]
		return two(day.MonthName(i+1), wording.Minus(amount(unit.Temperature, m.High)), wording.Minus(amount(unit.Temperature, m.Low)))
	case "emitters":
		return is(amount(unit.EmitterFlow, p.Emitters[i].Flow))
	case "points":
		at := &p.Supply.Points[i]
		return two(name, amount(unit.Flow, at.Flow), amount(unit.Head, at.Head))
	}
	return name
}

func rowSummary(p *plan.Plan, name string, r *plan.Row) string {
	plants, zone := words.N(r.Plants), words.N(r.Zone)
	switch known := listed(r.Crop); {
	case known && r.Zone > 1:
		return words.Say("{row}: {crop}, {n} {n|plant|plants}, zone {zone}", name, p.CropName(r.Crop), plants, zone)
	case known:
		return words.Say("{row}: {crop}, {n} {n|plant|plants}", name, p.CropName(r.Crop), plants)
	case r.Zone > 1:
		return words.Say("{row}, zone {zone}", name, zone)
	}
	return name
}

// listed says whether a crop is one of the list: a form may hold any number.
func listed(crop int) bool { return crop >= 0 && crop < len(catalogue.Crops) }

// Summaries returns the summaries of all records, and how the values that are
// shown came to be, which change while the form itself stays.
func Summaries(p *plan.Plan) []block.Fragment {
	var fs []block.Fragment
	for _, s := range plan.Sections() {
		if !s.Applies(p) {
			continue
		}
		fs = append(fs, Origins(p, s)...)
		if !s.List {
			continue
		}
		for i := range s.Records(p) {
			w := &block.Writer{}
			w.Text(Summary(p, s, i))
			fs = append(fs, block.Fragment{ID: "s-" + s.Name + "." + strconv.Itoa(i+1), HTML: w.String()})
		}
	}
	return fs
}
