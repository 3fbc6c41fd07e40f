package plan

import (
	"math"
	"strconv"
	"strings"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// Typed returns the value in record i of p as it would be typed: numbers in
// the plan's units, a choice by its code.
func (f *Field) Typed(p *Plan, i int) string {
	switch f.Type {
	case Number:
		if v := *f.Number(p, i); math.IsNaN(v) || math.IsInf(v, 0) || f.Empty && v == Unset {
			return ""
		} else {
			if v == f.Default {
				return f.usual(p.Units)
			}
			return unit.Box(f.Kind, p.Units, v)
		}
	case Whole:
		return strconv.Itoa(*f.Int(p, i))
	case Date:
		return day.Day(*f.Int(p, i)).ISO()
	case Choice:
		if v := *f.Int(p, i); v >= 0 && v < len(f.Options) {
			return f.Options[v].Code
		}
		return ""
	}
	return *f.Text(p, i)
}

// Read puts what was typed into record i of p, numbers being in the plan's
// units, and says what is wrong. Ranges are left to [Plan.Check].
func (f *Field) Read(p *Plan, i int, typed string) *words.Remark {
	switch f.Type {
	case Number:
		if f.Empty && strings.TrimSpace(typed) == "" {
			*f.Number(p, i) = Unset
			return nil
		}
		v, problem := f.quantity(typed, p.Units)
		if problem != nil {
			return problem
		}
		// What stands in the box of a default reads as the default.
		if math.Abs(v-f.Default) <= unit.TidyShare*math.Abs(f.Default) {
			if usual, _ := f.quantity(f.usual(p.Units), p.Units); v == usual {
				v = f.Default
			}
		}
		*f.Number(p, i) = v
	case Whole:
		x, problem := unit.ParseCount(typed)
		if problem == unit.NoNumber {
			problem = words.About("{field} must be a whole number, such as 12.")
		}
		if problem != nil {
			return problem
		}
		if x != math.Trunc(x) || math.Abs(x) > 1e9 {
			low, high := f.Limits(p.Units)
			return words.About("{field} must be a whole number from {low} to {high}.", low, high)
		}
		*f.Int(p, i) = int(x)
	case Date:
		typed = strings.TrimSpace(typed)
		d, ok := day.Parse(typed)
		switch {
		case typed == "":
			return unit.Missing
		case !ok:
			return words.About("{field} must be a date that exists, as year-month-day, such as 2027-05-12.")
		}
		*f.Int(p, i) = int(d)
	case Choice:
		v, ok := f.Option(typed)
		if !ok {
			if typed == "" {
				return unit.Missing
			}
			return noChoice
		}
		*f.Int(p, i) = v
	case Text:
		*f.Text(p, i) = typed
	}
	return nil
}

// usual returns the default as it would be typed. It is metric, and shown tidily
// in the other system.
func (f *Field) usual(sys unit.System) string {
	if sys != unit.Metric {
		return unit.Tidy(f.Kind, sys, f.Default)
	}
	return unit.Box(f.Kind, sys, f.Default)
}

// quantity reads a number in the field's unit, or in any other that is typed
// after it, such as "1/2 hp" or "15 psi".
func (f *Field) quantity(typed string, sys unit.System) (v float64, problem *words.Remark) {
	x, problem := unit.ParseIn(typed, f.Kind)
	if problem == nil {
		return unit.Of(f.Kind, sys).ToInner(x), nil
	}
	return unit.ParseQuantity(typed, f.Kind)
}

// Option returns the position of a code among the field's options.
func (f *Field) Option(code string) (int, bool) {
	for v, o := range f.Options {
		if o.Code == code {
			return v, true
		}
	}
	return 0, false
}
