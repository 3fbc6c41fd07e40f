package formula

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// A RangeError says that a value lies outside the range of its symbol, or is
// no number.
type RangeError struct {
	Symbol *Symbol
	Value  float64
	System unit.System // the units it is told in
}

// Error returns the problem as a sentence without its stop: "length of the
// tubing must be from 0.001 to 500 m, and is 900 m".
func (e *RangeError) Error() string {
	is := "no number"
	if e.Value == e.Value {
		is = e.Symbol.Text(e.Value, e.System)
	}
	return e.Symbol.Meaning + " must be from " + e.Symbol.Range(e.System) + ", and is " + is
}

// Evaluate computes the formula from one value per symbol, in inner units and
// in the order of f.In. A formula that repeats takes two or more values for
// its last symbol.
//
// The error joins a [*RangeError], told in units sys, for each value out of
// range, or says how many values are wanted.
func (f *Formula) Evaluate(in []float64, sys unit.System) (Working, error) {
	if !f.takes(len(in)) {
		want := strconv.Itoa(len(f.In))
		if f.Repeats {
			want = "at least " + strconv.Itoa(len(f.In)+1)
		}
		return Working{}, errors.New(f.Name + " takes " + want + " values, and got " + strconv.Itoa(len(in)))
	}
	var errs []error
	for i, v := range in {
		if s := f.symbol(i); !(s.Min <= v && v <= s.Max) {
			errs = append(errs, &RangeError{s, v, sys})
		}
	}
	if errs != nil {
		return Working{}, errors.Join(errs...)
	}
	return Working{Formula: f, In: slices.Clone(in), Result: f.Eval(in)}, nil
}

// Read computes the formula from values as a person writes them, by symbol
// name: "12 m", "2 L/h", or a plain number in the unit that sys shows. A
// symbol that repeats takes its values separated by semicolons.
//
// The error joins one for each missing or unknown symbol, each text that is no
// quantity of its kind, and each value out of range.
func (f *Formula) Read(values map[string]string, sys unit.System) (Working, error) {
	var errs []error
	var in []float64
	for i := range f.In {
		s := &f.In[i]
		text, ok := values[s.Name]
		if !ok {
			errs = append(errs, errors.New(s.Name+" ("+s.Meaning+") is missing"))
			continue
		}
		one := []string{text}
		if f.Repeats && i == len(f.In)-1 {
			one = strings.Split(text, ";")
		}
		for _, t := range one {
			v, problem := s.read(t, sys)
			var err error
			switch {
			case problem != nil:
				// As the other errors, without its stop.
				err = errors.New(strings.TrimSuffix(problem.Of(s.Meaning), "."))
			case !(s.Min <= v && v <= s.Max):
				err = &RangeError{s, v, sys}
			}
			if err != nil {
				errs = append(errs, err)
			}
			in = append(in, v)
		}
	}
	for _, name := range sortedKeys(values) {
		if !slices.ContainsFunc(f.In, func(s Symbol) bool { return s.Name == name }) {
			errs = append(errs, errors.New(name+" is no symbol of "+f.Name))
		}
	}
	if errs != nil {
		return Working{}, errors.Join(errs...)
	}
	return f.Evaluate(in, sys)
}

// sortedKeys returns the keys of m in order, so that errors come in the same
// order each time.
func sortedKeys(m map[string]string) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// read returns the value of one text, or what is wrong with it.
func (s *Symbol) read(text string, sys unit.System) (float64, *words.Remark) {
	text = strings.TrimSpace(text)
	if s.Unit != "" {
		text = strings.TrimSpace(strings.TrimSuffix(text, s.Unit))
	}
	v, problem := unit.ParseNumber(text)
	if problem == nil {
		return unit.Of(s.Kind, sys).ToInner(v), nil
	}
	if s.Unit != "" {
		return 0, problem
	}
	return unit.ParseQuantity(text, s.Kind)
}
