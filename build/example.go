package main

import (
	"flag"
	"fmt"
	"os"
	"strings"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
)

func exampleCommand(args []string, std stdio) int {
	flags := flag.NewFlagSet("example", flag.ContinueOnError)
	if code, ok := parse(flags, args, std, 2); !ok {
		return code
	}
	var names []string
	for _, e := range plan.Examples() {
		names = append(names, e.Key)
		switch {
		case flags.NArg() == 0:
			fmt.Fprintf(std.out, "%-12s %s. %s\n", e.Key, e.Title, e.Summary)
		case e.Key != flags.Arg(0):
		case flags.NArg() == 1 || flags.Arg(1) == "-":
			std.out.Write(carry.JSON(e.Plan))
			return 0
		default:
			return written(flags.Arg(1), carry.JSON(e.Plan), std)
		}
	}
	if flags.NArg() > 0 {
		fmt.Fprintf(std.err, "there is no example %s; there are %s\n", flags.Arg(0), strings.Join(names, ", "))
		return 2
	}
	return 0
}

// written writes a file that is not there yet: a plan of somebody's may have
// the same name. One that holds the same already is left as it is.
func written(name string, content []byte, std stdio) int {
	if held, err := os.ReadFile(name); err == nil && string(held) != string(content) {
		return std.fail(fmt.Errorf("%s is there already and holds something else; name another file, or remove it", name))
	}
	if err := os.WriteFile(name, content, 0o666); err != nil {
		return std.fail(err)
	}
	return 0
}
