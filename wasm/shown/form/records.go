package form

import (
	"strconv"
	"strings"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
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
	name := " " + s.One + " " + strconv.Itoa(i+1)
	if n < s.Max {
		f.action("copy-"+s.One+number, "Copy", name)
	}
	if n > s.Min {
		f.action("remove-"+s.One+number, "Remove", name)
	}
	if s.Name != "points" && s.Name != "months" { // their order is given
		if i > 0 {
			f.action(s.One+"-up"+number, "Up", name)
		}
		if i < n-1 {
			f.action(s.One+"-down"+number, "Down", name)
		}
	}
	f.HTML(`</p></div></details>`)
}

// action writes a button that changes the form. hidden is added to its name
// for screen readers.
func (f *form) action(value, name, hidden string) {
	f.HTML(`<button class="button"`).Attr("name", plan.ActionName).Attr("value", value).HTML(`>`).Text(name)
	if hidden != "" {
		f.HTML(`<span class="out">`).Text(hidden).HTML(`</span>`)
	}
	f.HTML(`</button> `)
}

// Summary is one record in a few words, such as "Row 2: tomato, 30 plants".
func Summary(p *plan.Plan, s *plan.Section, i int) string {
	t := unit.Capital(s.One) + " " + strconv.Itoa(i+1)
	switch s.Name {
	case "rows":
		r := &p.Rows[i]
		if r.Crop >= 0 && r.Crop < len(catalogue.Crops) {
			t += ": " + p.CropName(r.Crop) + ", " + wording.Count(r.Plants, "plant", "plants")
		}
		if r.Zone > 1 {
			t += ", zone " + strconv.Itoa(r.Zone)
		}
	case "plantings":
		g := &p.Plantings[i]
		if g.Crop >= 0 && g.Crop < len(catalogue.Crops) {
			t += ": " + p.CropName(g.Crop)
		}
		if g.Times > 1 {
			t += ", " + strconv.Itoa(g.Times) + " times"
		}
	case "crops":
		if of := p.Crops[i].Of; of >= 0 && of < len(catalogue.Crops) {
			t += ": " + p.CropName(of)
		}
	case "runs":
		t += ": " + unit.Text(unit.Length, p.Units, p.Runs[i].Length)
	case "months":
		m := &p.Months[i]
		t = day.MonthName(i+1) + ": " + wording.Minus(unit.Text(unit.Temperature, p.Units, m.High)) + ", " + wording.Minus(unit.Text(unit.Temperature, p.Units, m.Low))
	case "emitters":
		t += ": " + unit.Text(unit.EmitterFlow, p.Units, p.Emitters[i].Flow)
	case "points":
		t += ": " + unit.Text(unit.Flow, p.Units, p.Supply.Points[i].Flow) + ", " + unit.Text(unit.Head, p.Units, p.Supply.Points[i].Head)
	}
	return t
}

// Summaries returns the summaries of all records, which change while the form
// itself stays.
func Summaries(p *plan.Plan) []block.Fragment {
	var fs []block.Fragment
	for _, s := range plan.Sections() {
		if !s.List || !s.Applies(p) {
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

// article returns the indefinite article that goes before a word of ours.
func article(word string) string {
	if strings.ContainsRune("aeio", rune(word[0])) {
		return "an "
	}
	return "a "
}
