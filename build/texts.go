package main

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"

	"evenrow/build/compile"
	"evenrow/build/texts"
	"evenrow/wasm/ground/words"
)

func textsCommand(args []string, std stdio) int {
	flags := flag.NewFlagSet("texts", flag.ContinueOnError)
	pseudo := flags.Bool("pseudo", false, "print a list of a language that nobody speaks, longer and accented")
	counts := flags.String("counts", "one many", "how the other language counts")
	if code, ok := parse(flags, args, std, 1); !ok {
		return code
	}
	if words.Ways()[*counts] == 0 {
		var ways []string
		for way := range words.Ways() {
			ways = append(ways, way)
		}
		slices.Sort(ways)
		fmt.Fprintf(std.err, "a language counts %s, not %s\n", strings.Join(ways, "; or "), *counts)
		return 2
	}
	root, err := compile.Root()
	if err != nil {
		return std.fail(err)
	}
	all, err := texts.Find(root)
	if err != nil {
		return std.fail(err)
	}
	problems := all.Problems
	switch {
	case flags.NArg() == 1:
		list, err := os.ReadFile(flags.Arg(0))
		if err != nil {
			return std.fail(err)
		}
		for _, p := range all.Check(string(list)) {
			problems = append(problems, flags.Arg(0)+": "+p)
		}
	case *pseudo:
		fmt.Fprint(std.out, all.Pseudo())
	default:
		fmt.Fprint(std.out, all.List(*counts))
	}
	for _, p := range problems {
		fmt.Fprintln(std.err, p)
	}
	if len(problems) > 0 {
		return 1
	}
	return 0
}
