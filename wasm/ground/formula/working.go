package formula

import "evenrow/wasm/ground/unit"

// A Working is a formula with the values that went in and the result, all in
// inner units.
type Working struct {
	Formula *Formula
	In      []float64
	Result  float64
}

// Of returns the working of f for values that are known to be in range, as
// those of a checked plan are.
func Of(f *Formula, in ...float64) Working {
	return Working{Formula: f, In: in, Result: f.Eval(in)}
}

// A Line is one quantity of a working, as the page prints it.
type Line struct {
	Letter  string // "L"
	Meaning string // "length of the tubing"
	Value   string // "12 m"
}

// Lines returns the quantities that went in, with their values in units sys.
func (w Working) Lines(sys unit.System) []Line {
	lines := make([]Line, len(w.In))
	for i, v := range w.In {
		s := w.Formula.symbol(i)
		lines[i] = Line{s.Letter, s.Meaning, s.Text(v, sys)}
	}
	return lines
}

// Answer returns the result with its value in units sys.
func (w Working) Answer(sys unit.System) Line {
	s := &w.Formula.Result
	return Line{s.Letter, s.Meaning, s.Text(w.Result, sys)}
}

// Text returns the working as plain lines: the equation, a line per quantity,
// the result and the source.
func (w Working) Text(sys unit.System) string {
	t := w.Formula.Title + ": " + w.Formula.Text + "\n"
	for _, l := range w.Lines(sys) {
		t += "  " + l.Letter + " = " + l.Value + ", " + l.Meaning + "\n"
	}
	a := w.Answer(sys)
	return t + "  " + a.Letter + " = " + a.Value + ", " + a.Meaning + "\n  " + w.Formula.Source.String() + "\n"
}
