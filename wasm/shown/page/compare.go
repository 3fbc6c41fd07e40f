package page

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
)

// Names in form data of the two plans that [Compare] holds side by side, each a form
// of its own.
const (
	OneName   = "one"
	OtherName = "other"
)

// Compare holds two plans side by side: their answers, and every value in which they
// differ. A plan with something to put right is not compared.
func Compare(typed string) Reply {
	d := plan.ParseDraft(typed)
	var plans [2]*plan.Plan
	for i, name := range [...]string{OneName, OtherName} {
		one := plan.ParseDraft(d.Get(name))
		one.Apply()
		p, errs := one.Read()
		if len(errs) > 0 {
			r := Reply{Focus: "compared"}
			r.add("compared", form.Message(words.Say("{plan} has something to put right first: {first}", scene.Title(p), errs[0].Text)))
			return r
		}
		plans[i] = p
	}
	r := Reply{Focus: "compared"}
	r.add("compared", compared(plans[0], plans[1]))
	return r
}

// compared is the table of two plans.
func compared(a, b *plan.Plan) string {
	w := &block.Writer{Units: wording.Units{Sys: a.Units}}
	s, t := sheet.Answer(a), sheet.Answer(b)
	w.Table(words.Say("The two plans"), words.Say("What"), " "+scene.Title(a), " "+scene.Title(b)).Rows(func(rows *block.Table) {
		rows.Row(words.Say("Answer"), answer.Announce(s), answer.Announce(t))
		rows.Row(words.Say("To spare at the weakest emitter"), spare(w, s), spare(w, t))
		rows.Row(words.Say("Flow"), flow(w, s), flow(w, t))
		for _, section := range plan.Sections() {
			differences(rows, section, a, b)
		}
	})
	return w.String()
}

// spare is what the weakest emitter has to spare.
func spare(w *block.Writer, s *sheet.Sheet) string {
	if s.Critical < 0 || s.Critical >= len(s.Zones) {
		return "–"
	}
	return w.Amount(unit.Head, s.Zones[s.Critical].Margin)
}

// flow is what the zone with the weakest emitter takes.
func flow(w *block.Writer, s *sheet.Sheet) string {
	if s.Critical < 0 || s.Critical >= len(s.Zones) {
		return "–"
	}
	return w.Amount(unit.Flow, s.Zones[s.Critical].Flow)
}

// differences writes a row for every value of a section in which two plans differ, in
// the units of the first.
func differences(rows *block.Table, section *plan.Section, a, b *plan.Plan) {
	n, m := section.Records(a), section.Records(b)
	if section.List && n != m {
		rows.Row(words.Say(section.Record.Number), words.N(n), words.N(m))
	}
	headed := false
	for i := range min(n, m) {
		for _, f := range section.Fields() {
			if !f.Applies(a, i) || !f.Applies(b, i) {
				continue
			}
			one, other := shown(f, a, a, i), shown(f, a, b, i)
			if one == other {
				continue
			}
			if !headed {
				headed = true
				rows.Group(words.Say(section.Title))
			}
			name := f.Says()
			if section.List {
				name = words.Say("{row}: {what}", words.Say(section.Record.Begin, words.N(i+1)), name)
			}
			rows.Row(name, one, other)
		}
	}
}

// shown is a value of p as a table prints it, in the units of another plan.
func shown(f *plan.Field, units, p *plan.Plan, i int) string {
	switch f.Type {
	case plan.Number:
		if f.Empty && *f.Number(p, i) == plan.Unset {
			return "–"
		}
		return wording.Units{Sys: units.Units}.Amount(f.Kind, *f.Number(p, i))
	case plan.Choice:
		if v := *f.Int(p, i); v >= 0 && v < len(f.Options) {
			return f.Options[v].Says()
		}
		return ""
	case plan.Whole, plan.Text, plan.Date:
		return f.Typed(p, i)
	}
	return ""
}
