package plan

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// A Type is what may be typed into a field.
type Type uint8

const (
	Number Type = iota // a number in the units of the field's Kind
	Whole              // a whole number
	Choice             // one of Options
	Text               // a line of text
	Date               // a day, typed as ISO 8601 writes it; kept as days since 1 January 1970
)

// A Section groups fields on the page. Its name is the first part of a path.
type Section struct {
	ID       int        // permanent number in links, never reused
	Name     string     // "supply"; the first part of its fields' paths; empty for the plan's own fields, whose paths are one word
	Title    words.Text // "Supply"
	Intro    words.Text // one sentence, may be empty
	Guide    string     // name of a guide in content/guides, may be empty
	List     bool       // its fields come once per record: rows, runs, emitters, points
	One      string     // List: what buttons call one record, such as "row" in "add-row"
	Record   Record     // List: what the page calls it
	Min, Max int        // List: how many records

	// When says whether the section applies; nil for always.
	When func(p *Plan) bool
	// Len returns the number of records of a List, and Resize changes it,
	// new records being copies of the last, or zero when there is none.
	Len    func(p *Plan) int
	Resize func(p *Plan, n int)
}

// A Record is what the page calls one record of a list. Its number fills the
// place.
type Record struct {
	Begin  words.Text // "Row {n}"
	Within words.Text // "row {n}", within a sentence
	Number words.Text // "Number of rows"
	Add    words.Text // "Add a row"
}

// A Field is one input, declared once. Forms, range checks, units, links,
// files and the documentation of limits all come from it.
type Field struct {
	ID      int        // permanent number in links, unique within its section, never reused
	Section string     // name of a Section
	Name    string     // last part of the path, such as "length"
	Label   words.Text // without the unit
	Size    words.Text // fills the place in the label of tubing; else empty
	Type    Type
	Kind    unit.Kind  // Number
	Min     float64    // inclusive, in the kind's inner unit; for Text the least length
	Max     float64    // inclusive; for Text the greatest length in characters
	Default float64    // what a link leaves out: part of the link format, so never changed; for Choice an index; a Text has the default ""
	Options []Option   // Choice
	Empty   bool       // Number: may be left empty, which is the value Unset
	Help    words.Text // one short sentence or two; may be empty
	Guide   string     // name of a guide page and heading, "pump-curve#reading"; may be empty
	Measure words.Text // how to find the value on the spot, as a sentence; empty where a grower cannot

	// Range is what the value in record i may really be while it is assumed, in
	// the inner unit, within Min and Max and within its relations to other
	// values; nil where it can turn no answer.
	Range    func(p *Plan, i int) (low, high float64)
	Unproven bool // what is typed is not known either: only a measurement is proof

	// When says whether the field applies to record i; nil for always. A field
	// that does not apply is not shown and not checked, but keeps its value.
	When func(p *Plan, i int) bool

	// One of these reaches the value in record i; i is 0 outside lists.
	Number func(p *Plan, i int) *float64 // Number
	Int    func(p *Plan, i int) *int     // Whole, Choice, Date
	Text   func(p *Plan, i int) *string  // Text

	// relation says what is wrong with the value in record i beside other
	// values that are in range; nil when all is well.
	relation func(p *Plan, i int) *words.Remark

	at int // place in allFields
}

// An Option is one choice. Its position is the stored number and permanent.
type Option struct {
	Code  string     // in JSON and form data, such as "end"
	Label words.Text // on the page, such as "at the end, by row 1"
	Size  words.Text // fills the place {size} in the label; else empty
}

// Says returns what the page calls the option.
func (o *Option) Says() string {
	if o.Size == "" {
		return words.Say(o.Label)
	}
	return words.Say(o.Label, words.Say(o.Size))
}

// An Error says which field is wrong and what would be right.
type Error struct {
	Path  string // as in the form: "rows.2.spacing", records counted from 1
	Text  string // a sentence, such as "Row 2: spacing must be from 0.1 to 5 m."
	Typed string // what was typed, kept as it was
}

// Error returns the sentence, with its stop.
func (e Error) Error() string { return e.Text }
