package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"slices"
	"strings"

	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/method"
)

func formulaCommand(args []string, std stdio) int {
	flags := flag.NewFlagSet("formula", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print one JSON object, with every value in SI units and in full")
	if code, ok := parse(flags, args, std, math.MaxInt); !ok {
		return code
	}
	args = slices.DeleteFunc(flags.Args(), func(arg string) bool {
		late := arg == "-json" || arg == "--json" // after the name, where people add it
		*asJSON = *asJSON || late
		return late
	})
	if len(args) == 0 && *asJSON {
		fmt.Fprintln(std.err, "-json takes the name of a formula; run formula without a name for a list")
		return 2
	}
	if len(args) == 0 {
		for _, c := range method.Chapters {
			fmt.Fprintln(std.out, c.Title)
			for _, f := range c.Formulas {
				fmt.Fprintf(std.out, "  %-24s %s\n", f.Name, f.Title)
			}
		}
		fmt.Fprint(std.out, "\nName one for its symbols, and give it a value for each: name=\"2 L/h\".\n")
		return 0
	}
	f := method.Find(args[0])
	if f == nil {
		fmt.Fprintf(std.err, "there is no formula %s; run formula without a name for a list\n", args[0])
		return 2
	}
	if len(args) == 1 && !*asJSON {
		describe(f, std)
		return 0
	}
	if len(args) == 1 {
		return std.object(declared(f))
	}
	values, err := assignments(args[1:])
	if err != nil {
		fmt.Fprintln(std.err, err)
		return 2
	}
	w, err := f.Read(values, unit.Metric)
	if err != nil {
		return std.fail(err)
	}
	if *asJSON {
		return std.object(evaluated(w))
	}
	fmt.Fprint(std.out, w.Text(unit.Metric))
	return 0
}

// An equation is a formula as JSON. Values are in SI units, temperatures in °C.
type equation struct {
	Name     string   `json:"name"`
	Title    string   `json:"title"`
	Equation string   `json:"equation"`
	Symbol   string   `json:"symbol"` // of what it gives
	Meaning  string   `json:"meaning"`
	Value    *float64 `json:"value,omitempty"` // left out when only the formula was asked for
	Unit     string   `json:"unit"`            // "1" for plain numbers
	Inputs   []given  `json:"inputs"`
	Note     string   `json:"note,omitempty"`
	Source   string   `json:"source"`
}

// A given is one symbol of a formula. One that takes several values comes once for each.
type given struct {
	Name    string   `json:"name"`
	Symbol  string   `json:"symbol"`
	Meaning string   `json:"meaning"`
	Value   *float64 `json:"value,omitempty"`
	Unit    string   `json:"unit"`
	Min     float64  `json:"min"` // of its valid range
	Max     float64  `json:"max"`
}

func declared(f *formula.Formula) equation {
	r := &f.Result
	e := equation{f.Name, f.Title, f.Text, r.Letter, r.Meaning, nil, siUnit(r), nil, f.Note, f.Source.String()}
	for i := range f.In {
		s := &f.In[i]
		e.Inputs = append(e.Inputs, given{s.Name, s.Letter, s.Meaning, nil, siUnit(s), s.Min, s.Max})
	}
	return e
}

func evaluated(w formula.Working) equation {
	e := declared(w.Formula)
	e.Value = &w.Result
	last := len(e.Inputs) - 1
	for i := range w.In {
		if i > last {
			e.Inputs = append(e.Inputs, e.Inputs[last])
		}
		e.Inputs[i].Value = &w.In[i]
	}
	return e
}

// siUnit is the unit of a symbol's value within the calculation.
func siUnit(s *formula.Symbol) string {
	if s.Unit != "" {
		return s.Unit
	}
	return unit.Inner(s.Kind)
}

// object prints one JSON object and returns the exit code.
func (std stdio) object(v any) int {
	text := json.NewEncoder(std.out)
	text.SetEscapeHTML(false)
	text.SetIndent("", "\t")
	if err := text.Encode(v); err != nil {
		return std.fail(err) // a result that is no number
	}
	return 0
}

// assignments reads "name=value unit" from arguments, whether or not a shell
// has kept value and unit together. A name that comes again adds to its
// values, for formulas that take several.
func assignments(args []string) (map[string]string, error) {
	values := map[string]string{}
	last := ""
	for _, arg := range args {
		name, value, ok := strings.Cut(arg, "=")
		switch {
		case ok && name == "":
			return nil, fmt.Errorf("%q has no name before the equals sign", arg)
		case !ok && last == "":
			return nil, fmt.Errorf("%q must be name=value", arg)
		case !ok:
			values[last] += " " + arg
			continue
		}
		last = name
		if before, again := values[name]; again {
			value = before + ";" + value
		}
		values[name] = value
	}
	return values, nil
}

// describe prints what a formula takes and gives.
func describe(f *formula.Formula, std stdio) {
	fmt.Fprintf(std.out, "%s: %s\n\n", f.Title, f.Text)
	for i := range f.In {
		s := &f.In[i]
		fmt.Fprintf(std.out, "  %-16s %s: %s, %s\n", s.Name, s.Letter, s.Meaning, s.Range(unit.Metric))
	}
	r := &f.Result
	fmt.Fprintf(std.out, "\n  gives %s: %s", r.Letter, r.Meaning)
	if u := unit.Of(r.Kind, unit.Metric).Symbol + r.Unit; u != "" {
		fmt.Fprintf(std.out, ", in %s", u)
	}
	fmt.Fprintln(std.out)
	if f.Repeats {
		fmt.Fprintf(std.out, "\n  %s takes two or more values, separated by semicolons\n", f.In[len(f.In)-1].Name)
	}
	if f.Note != "" {
		fmt.Fprintf(std.out, "\n  %s\n", f.Note)
	}
	fmt.Fprintf(std.out, "\n  Source: %s\n", f.Source)
}
