package plan

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
)

// Limits that several fields share, in the metric units of the page.
const (
	maxFlow = 2000 // L/min
	maxHead = 150  // m
	minBore = 2    // mm
	maxBore = 110
)

// MaxPlants is how many plants a plan may hold in all its rows.
const MaxPlants = 4000

// fieldsOf holds the fields of each section by its ID.
var fieldsOf = [...][]*Field{
	planFields, placeFields, supplyFields, pointFields, runFields,
	filterFields, headerFields, emitterFields, rowFields, limitFields,
	seasonFields, plantingFields, cropFields,
	13: skyFields, monthFields,
	15: timerFields, priceFields, chanceFields, endFields, fittingFields,
	20: boughtFields,
}

var allFields = inOrder()

func inOrder() []*Field {
	var all []*Field
	for _, s := range sections {
		if resize := s.Resize; s.List {
			s.Resize = func(p *Plan, n int) {
				p.How.shorten(s, n)
				resize(p, n)
			}
		}
		for _, f := range s.Fields() {
			f.Section = s.Name
			f.at = len(all)
			all = append(all, f)
		}
	}
	spans(all)
	return all
}

// Fields returns every field in the order of the page. They are shared and
// must not be changed.
func Fields() []*Field { return allFields }

// FieldNamed returns the field of a name in a section, or nil.
func FieldNamed(section, name string) *Field {
	for _, f := range allFields {
		if f.Section == section && f.Name == name {
			return f
		}
	}
	return nil
}

// Path returns the path of the field in record i, counted from 0: "units",
// "place.length", or "rows.2.spacing" for i = 1.
func Path(f *Field, i int) string {
	switch s := SectionNamed(f.Section); {
	case s.List:
		return s.Name + "." + strconv.Itoa(i+1) + "." + f.Name
	case s.Name != "":
		return s.Name + "." + f.Name
	}
	return f.Name
}

// Applies reports whether the field is shown and checked in record i of p,
// which takes its section into account.
func (f *Field) Applies(p *Plan, i int) bool {
	return SectionNamed(f.Section).Applies(p) && (f.When == nil || f.When(p, i))
}

// Value returns the value in record i of p, in the kind's inner unit; whole
// numbers and choices as they are; 0 for a Text.
func (f *Field) Value(p *Plan, i int) float64 {
	switch f.Type {
	case Number:
		return *f.Number(p, i)
	case Text:
		return 0
	}
	return float64(*f.Int(p, i))
}

// SetValue is the inverse of [Field.Value]; it leaves a Text alone.
func (f *Field) SetValue(p *Plan, i int, v float64) {
	switch f.Type {
	case Number:
		*f.Number(p, i) = v
	case Whole, Choice, Date:
		*f.Int(p, i) = int(v)
	}
}

// number declares a Number. Its limits and default are in the metric unit of
// the page, and go through the same conversion as typed text, so that the
// default typed in is the default to the last bit.
func number(id int, name string, label words.Text, kind unit.Kind, low, high, def float64, help words.Text, at func(p *Plan, i int) *float64) *Field {
	u := unit.Of(kind, unit.Metric)
	return &Field{ID: id, Name: name, Label: label, Type: Number, Kind: kind, Help: help, Number: at,
		Min: u.ToInner(low), Max: u.ToInner(high), Default: u.ToInner(def)}
}

func whole(id int, name string, label words.Text, low, high, def int, help words.Text, at func(p *Plan, i int) *int) *Field {
	return &Field{ID: id, Name: name, Label: label, Type: Whole, Kind: unit.Count, Help: help, Int: at,
		Min: float64(low), Max: float64(high), Default: float64(def)}
}

func choice(id int, name string, label words.Text, options []Option, def int, help words.Text, at func(p *Plan, i int) *int) *Field {
	return &Field{ID: id, Name: name, Label: label, Type: Choice, Help: help, Int: at, Options: options,
		Max: float64(len(options) - 1), Default: float64(def)}
}

// when sets the condition of a field.
func (f *Field) when(applies func(p *Plan, i int) bool) *Field {
	f.When = applies
	return f
}

func (f *Field) must(relation func(p *Plan, i int) *words.Remark) *Field {
	f.relation = relation
	return f
}

func (f *Field) guide(name string) *Field {
	f.Guide = name
	return f
}

// Positions in catalogue.Tubes that fields and examples start from.
const (
	tube16     = 1
	tube25     = 3
	tubeHalf   = 10 // 1/2 in, 0.600 x 0.700
	tubeOne    = 15 // 1 in PE
	tubeOneTwo = 16 // 1-1/4 in PE
)

var (
	tubeOptions = tubes()
	cropOptions = crops()
)

func tubes() []Option {
	var list []Option
	for _, t := range catalogue.Tubes {
		list = append(list, Option{Code: string(t.Short), Label: t.Name})
	}
	return list
}

func crops() []Option {
	var list []Option
	for _, c := range catalogue.Crops {
		list = append(list, Option{Code: string(c.Name), Label: c.Name})
	}
	return list
}
