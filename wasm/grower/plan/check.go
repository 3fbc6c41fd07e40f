package plan

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
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
				errs = append(errs, s.countError(s.countProblem(n)))
			}
			continue
		}
		if e, bad := found[s.Name]; bad {
			errs = append(errs, e)
			continue
		}
		n := s.Records(p)
		if problem := s.countProblem(n); problem != "" {
			errs = append(errs, s.countError(problem))
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
				} else if problem := f.rangeProblem(p, i); problem != "" {
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
					if problem := f.relation(p, i); problem != "" {
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
				errs = append(errs, Error{Path: s.Name, Label: s.Title,
					Problem: "must hold at most " + strconv.Itoa(MaxPlants) + " plants in all, not " + strconv.Itoa(total)})
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

func (s *Section) countProblem(n int) string {
	if !s.List || s.Min <= n && n <= s.Max {
		return ""
	}
	return "must be from " + strconv.Itoa(s.Min) + " to " + strconv.Itoa(s.Max) + ", not " + strconv.Itoa(n)
}

func (s *Section) countError(problem string) Error {
	return Error{Path: s.Name, Label: "Number of " + s.Many, Problem: problem}
}

// ErrorAt returns an error about record i of the field, with what was typed
// and a clause that says what is right.
func (f *Field) ErrorAt(i int, typed, problem string) Error {
	return Error{Path: Path(f, i), Label: f.errorLabel(i), Typed: typed, Problem: problem}
}

// errorLabel is the field's label with its section or record, because errors
// are also listed away from their fields: "Row 2: spacing".
func (f *Field) errorLabel(i int) string {
	s := SectionNamed(f.Section)
	switch {
	case s.List:
		return unit.Capital(s.One) + " " + strconv.Itoa(i+1) + ": " + unit.Uncapital(f.Label)
	case s.Name != "":
		return s.Title + ": " + unit.Uncapital(f.Label)
	}
	return f.Label
}

// rangeProblem says what is wrong with the value in record i by itself.
func (f *Field) rangeProblem(p *Plan, i int) string {
	switch f.Type {
	case Text:
		return f.textProblem(*f.Text(p, i))
	case Choice:
		if v := *f.Int(p, i); v < 0 || v >= len(f.Options) {
			return "must be one of the choices"
		}
	case Whole, Date:
		if v := float64(*f.Int(p, i)); v < f.Min || v > f.Max {
			return "must be " + f.Range(p.Units)
		}
	case Number:
		// A limit typed in the other system may differ in the last bits.
		v := *f.Number(p, i)
		slack := 1e-9 * (f.Max - f.Min)
		if !(v >= f.Min-slack && v <= f.Max+slack) && !(f.Empty && v == Unset) {
			return "must be " + f.Range(p.Units)
		}
	}
	return ""
}

func (f *Field) textProblem(text string) string {
	if n := utf8.RuneCountInString(text); n > int(f.Max) {
		return "must be at most " + strconv.Itoa(int(f.Max)) + " characters, not " + strconv.Itoa(n)
	}
	if !utf8.ValidString(text) || strings.ContainsFunc(text, func(r rune) bool { return r < ' ' || r == 0x7f }) {
		return "must be plain text on one line"
	}
	return ""
}

// Range returns what may be typed, such as "from 0.1 to 5 m", in the units of
// sys, and "" for a Choice. Hints and errors share it, so they cannot differ.
func (f *Field) Range(sys unit.System) string {
	switch f.Type {
	case Whole:
		return "from " + strconv.Itoa(int(f.Min)) + " to " + strconv.Itoa(int(f.Max))
	case Number:
		s := "from " + limit(f.Kind, sys, f.Min, math.Ceil) + " to " + limit(f.Kind, sys, f.Max, math.Floor)
		if u := unit.Of(f.Kind, sys); u.Symbol != "" {
			s += " " + u.Symbol
		}
		return s
	case Date:
		return "from " + day.Day(f.Min).ISO() + " to " + day.Day(f.Max).ISO()
	case Text:
		return "at most " + strconv.Itoa(int(f.Max)) + " characters"
	}
	return ""
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
