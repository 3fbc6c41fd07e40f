package main

import (
	"fmt"
	"strings"

	"evenrow/wasm/formula"
	"evenrow/wasm/method"
	"evenrow/wasm/unit"
)

func formulaCommand(args []string, std stdio) int {
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
	if len(args) == 1 {
		describe(f, std)
		return 0
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
	fmt.Fprint(std.out, w.Text(unit.Metric))
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
