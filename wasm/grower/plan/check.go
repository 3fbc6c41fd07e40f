package plan

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// Check returns everything that is wrong with p, in the order of the page: how
// many records each list has, every value that applies against its range, and
// values against each other. A plan without errors can be worked out.
func (p *Plan) Check() []Error { return p.CheckAlso(nil) }

// CheckAlso is [Plan.Check] for a plan of which some values could not be read:
// found holds what is wrong with them, by path, and takes the place of their
// own checks. What was found in fields that do not apply is left out.
func (p *Plan) CheckAlso(found map[string]Error) []Error {
	var errs []Error
	for _, s := range sections {
		if !s.Applies(p) {
			// A list that is too long would not come back from a link.
			if n := s.Records(p); s.List && n > s.Max {
				errs = append(errs, s.countError(n))
			}
			continue
		}
		if e, bad := found[s.Name]; bad {
			errs = append(errs, e)
			continue
		}
		n := s.Records(p)
		if s.List && (n < s.Min || n > s.Max) {
			errs = append(errs, s.countError(n))
			if n > s.Max {
				continue
			}
		}
		before := len(errs)
		soundBefore := true
		for i := range n {
			start := len(errs)
			for _, f := range s.Fields() {
				if f.When != nil && !f.When(p, i) {
					continue
				}
				if e, bad := f.among(found, i); bad {
					errs = append(errs, e)
				} else if problem := f.rangeProblem(p, i); problem != nil {
					errs = append(errs, f.ErrorAt(i, f.Typed(p, i), problem))
				}
			}
			// Values are held against each other only where both are in
			// range, so that one slip is not reported twice.
			sound := len(errs) == start
			if sound && soundBefore {
				for _, f := range s.Fields() {
					if f.relation == nil || f.When != nil && !f.When(p, i) {
						continue
					}
					if problem := f.relation(p, i); problem != nil {
						errs = append(errs, f.ErrorAt(i, f.Typed(p, i), problem))
					}
				}
			}
			soundBefore = sound
		}
		if s.Name == "rows" && len(errs) == before {
			total := 0
			for i := range p.Rows {
				total += p.Rows[i].Plants
			}
			if total > MaxPlants {
				many := words.About("{field} must hold at most {most} plants in all, not {n}.", words.N(MaxPlants), words.N(total))
				errs = append(errs, Error{Path: s.Name, Text: many.Of(words.Say(s.Title))})
			}
		}
	}
	return errs
}

// among returns what was found wrong with record i of the field. Where nothing
// was found no path is made: an answer checks plans by the dozen.
func (f *Field) among(found map[string]Error, i int) (e Error, bad bool) {
	if len(found) > 0 {
		e, bad = found[Path(f, i)]
	}
	return e, bad
}

// countError is the error of a list that has n records, too few or too many.
func (s *Section) countError(n int) Error {
	problem := words.About("{field} must be from {low} to {high}, not {n}.", words.N(s.Min), words.N(s.Max), words.N(n))
	return Error{Path: s.Name, Text: problem.Of(words.Say(s.Record.Number))}
}

// ErrorAt returns an error about record i of the field, with what was typed
// and what is wrong with it.
func (f *Field) ErrorAt(i int, typed string, problem *words.Remark) Error {
	return Error{Path: Path(f, i), Text: problem.Of(f.named(i)), Typed: typed}
}

// named is the field's label with its section or record, because errors are
// also listed away from their fields: "Row 2: spacing".
func (f *Field) named(i int) string {
	s := SectionNamed(f.Section)
	switch {
	case s.List:
		return words.Say("{record}: {field}", words.Say(s.Record.Begin, words.N(i+1)), f.Within())
	case s.Name != "":
		return words.Say("{section}: {field}", words.Say(s.Title), f.Within())
	}
	return words.Say(f.Label)
}

// Problem says what is wrong with the value in record i by itself, beside no other;
// nil when all is well.
func (f *Field) Problem(p *Plan, i int) *words.Remark { return f.rangeProblem(p, i) }

// rangeProblem says what is wrong with the value in record i by itself.
func (f *Field) rangeProblem(p *Plan, i int) *words.Remark {
	switch f.Type {
	case Text:
		return f.textProblem(*f.Text(p, i))
	case Choice:
		if v := *f.Int(p, i); v < 0 || v >= len(f.Options) {
			return noChoice
		}
	case Whole, Date:
		if v := float64(*f.Int(p, i)); v < f.Min || v > f.Max {
			return f.outOfRange(p.Units)
		}
	case Number:
		// A limit typed in the other system may differ in the last bits.
		v := *f.Number(p, i)
		slack := 1e-9 * (f.Max - f.Min)
		if !(v >= f.Min-slack && v <= f.Max+slack) && !(f.Empty && v == Unset) {
			return f.outOfRange(p.Units)
		}
	}
	return nil
}

var noChoice = words.About("{field} must be one of the choices.")

func (f *Field) outOfRange(sys unit.System) *words.Remark {
	low, high := f.Limits(sys)
	return words.About("{field} must be from {low} to {high}.", low, high)
}

func (f *Field) textProblem(text string) *words.Remark {
	if n := utf8.RuneCountInString(text); n > int(f.Max) {
		return words.About("{field} must be at most {most} characters, not {n}.", words.N(int(f.Max)), words.N(n))
	}
	if !utf8.ValidString(text) || strings.ContainsFunc(text, func(r rune) bool { return r < ' ' || r == 0x7f }) {
		return words.About("{field} must be plain text on one line.")
	}
	return nil
}

// Limits returns the least and the greatest that may be typed into a Number, a
// Whole or a Date, such as "0.1" and "5 m", in the units of sys. Hints and errors
// share them, so they cannot differ.
func (f *Field) Limits(sys unit.System) (low, high string) {
	switch f.Type {
	case Whole:
		return words.N(int(f.Min)), words.N(int(f.Max))
	case Number:
		low, high = limit(f.Kind, sys, f.Min, math.Ceil), limit(f.Kind, sys, f.Max, math.Floor)
		if u := unit.Of(f.Kind, sys); u.Symbol != "" {
			high += " " + u.Symbol
		}
	case Date:
		return day.Day(f.Min).ISO(), day.Day(f.Max).ISO()
	}
	return low, high
}

// limit writes a limit with three significant digits, rounded towards the
// inside of the range so that what is written may be typed. Limits that are
// round in the system stay as they are.
func limit(kind unit.Kind, sys unit.System, v float64, inside func(float64) float64) string {
	s := unit.Exact(kind, sys, v)
	if len(strings.Trim(s, "-0.")) <= 4 {
		return s
	}
	u := unit.Of(kind, sys)
	x := u.FromInner(v)
	step := 1.0
	for ; math.Abs(x)*step < 100; step *= 10 {
	}
	for ; math.Abs(x)*step >= 1000; step /= 10 {
	}
	return strconv.FormatFloat(inside(x*step)/step, 'f', -1, 64)
}
