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
	"evenrow/wasm/works/parts"
)

// together reports whether all records of a section stand open: they are short.
func together(s *plan.Section) bool { return s.Name == "points" || s.Name == "months" }

// records writes the records of a list: one stands open, or all where they are
// short, and the others are a button each.
func (f *form) records(s *plan.Section) {
	n := s.Records(f.p)
	switch {
	case n == 1 || together(s):
		for i := range n {
			f.record(s, i, n)
		}
	case s.Name == "rows":
		f.allRows(s, n)
		f.more(words.Say("One row by itself ({n})", words.N(n)), f.within(s), func() { f.oneByOne(s, n) })
	default:
		f.oneByOne(s, n)
	}
	if n < s.Max && !byButton(s) {
		f.action("add-"+s.One, s.Record.Add)
	}
}

// within reports whether a record of a section is open, or wrong.
func (f *form) within(s *plan.Section) bool {
	if strings.HasPrefix(f.at.Record, s.Name+".") {
		return true
	}
	for path := range f.errs {
		if strings.HasPrefix(path, s.Name+".") {
			return true
		}
	}
	return false
}

// oneByOne writes a line for each record, and the one that is open.
func (f *form) oneByOne(s *plan.Section, n int) {
	for i := range n {
		id := s.Name + "." + strconv.Itoa(i+1)
		open := f.at.Record == id
		for path := range f.errs {
			open = open || f.at.Record == "" && strings.HasPrefix(path, id+".")
		}
		if open {
			f.record(s, i, n)
			continue
		}
		at := Place{f.at.Job, f.in, id}
		f.HTML(`<p class="record"><button class="record__line" name="`).HTML(plan.ActionName).HTML(`"`).Attr("value", plan.GoTo+at.String()).Attr("id", "s-"+id).HTML(`>`).
			Text(called(f.p, s, i, f.parts)).HTML(`</button></p>`)
	}
}

// allRows writes the boxes that are for all rows at once. What rows differ in is
// empty there.
func (f *form) allRows(s *plan.Section, n int) {
	f.list(s, func(fd *plan.Field) bool { return fd.Applies(f.p, n-1) }, func(fd *plan.Field) {
		text, _ := f.d.Common(fd, n)
		path := plan.AllName + fd.Name
		f.carried(plan.AllWas+fd.Name, text)
		f.box(fd, n-1, path, text)
	})
}

// record writes one record of a list, with the buttons that move it.
func (f *form) record(s *plan.Section, i, n int) {
	id := s.Name + "." + strconv.Itoa(i+1)
	f.HTML(`<div class="record" role="group"`).Attr("id", "d-"+id).Attr("aria-labelledby", "s-"+id).HTML(`>`)
	if n > 1 || s.Min == 0 {
		f.HTML(`<h4 class="record__name" tabindex="-1"`).Attr("id", "s-"+id).HTML(`>`).Text(called(f.p, s, i, f.parts)).HTML(`</h4>`)
	} else {
		f.HTML(`<p class="out" tabindex="-1"`).Attr("id", "s-"+id).HTML(`>`).Text(called(f.p, s, i, f.parts)).HTML(`</p>`)
	}
	if s.Name == "emitters" {
		f.carried(id+"."+plan.KindWas, f.d.Get(id+".kind"))
	}
	if byButton(s) {
		f.carry("bought." + strconv.Itoa(i+1) + ".part")
	}
	f.fields(s, i)
	if byButton(s) {
		f.ofPart(i)
	}
	f.HTML(`<p class="record__do">`)
	number := "." + strconv.Itoa(i+1)
	name := words.Say(s.Record.Within, words.N(i+1))
	if n < s.Max && !byButton(s) {
		f.action("copy-"+s.One+number, "Copy[ {row}]", name)
	}
	if n > s.Min {
		f.action("remove-"+s.One+number, "Remove[ {row}]", name)
	}
	if s.Name != "points" && s.Name != "months" && !byButton(s) { // their order is given
		if i > 0 {
			f.action(s.One+"-up"+number, "Up[ {row}]", name)
		}
		if i < n-1 {
			f.action(s.One+"-down"+number, "Down[ {row}]", name)
		}
	}
	f.HTML(`</p></div>`)
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
	case "fittings":
		if p.Fittings[i].Name != "" {
			return is(p.Fittings[i].Name)
		}
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

// Summaries returns the lines of the groups of a job and of their records, which change
// while the form itself stays. list is as for [Ask].
func Summaries(p *plan.Plan, groups []Group, list ...parts.Line) []block.Fragment {
	var fs []block.Fragment
	for k := range groups {
		g := &groups[k]
		if !g.Applies(p) {
			continue
		}
		f := &form{Writer: &block.Writer{}, p: p}
		f.line(g)
		fs = append(fs, block.Fragment{ID: "t-" + g.ID, HTML: f.String()})
		for _, name := range g.Sections {
			s := plan.SectionNamed(name)
			if !s.Applies(p) {
				continue
			}
			fs = append(fs, Origins(p, s)...)
			if !s.List {
				continue
			}
			for i := range s.Records(p) {
				w := &block.Writer{}
				w.Text(called(p, s, i, list))
				fs = append(fs, block.Fragment{ID: "s-" + s.Name + "." + strconv.Itoa(i+1), HTML: w.String()})
			}
		}
	}
	return fs
}
