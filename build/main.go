// Command build makes the site, serves it on this machine, and does the
// calculation on the command line. Run it without arguments for its commands.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"evenrow/wasm/ground/unit"
)

// A command is one thing that this program does. Its function returns the
// exit code: 0, 1 when something is wrong with what it was given, 2 when it
// was called wrongly.
type command struct {
	name, args, does string
	about            string // the rest of its help, without its flags
	run              func(args []string, std stdio) int
}

// A stdio is where a command reads and writes.
type stdio struct {
	in       io.Reader
	out, err io.Writer
}

// fail prints errors, in full words and one a line, and returns the exit code.
func (s stdio) fail(err error) int {
	fmt.Fprintln(s.err, err)
	return 1
}

// commands is filled at the start, because help reads it too.
var commands []command

func init() {
	const file = "Without FILE, or with - for it, standard input is read. A plan file is what the page saves, or what example writes.\n"
	commands = []command{
		{"site", "[-out FOLDER] [-names]", "build the site into build/out and hold its sizes against the budget",
			"The folder is emptied first. One that holds anything but an earlier build is not touched.\n", siteCommand},
		{"serve", "[-port NUMBER] [-from FOLDER] [-public ADDRESS] [-origin ADDRESS]", "build the site, or take a finished one, and serve it on this machine, or to everybody",
			"A site that is built now, or that edge has made, comes with the pages of plans that work without scripts. One that\nsite has made is served as it is, as any static host would.\n", serveCommand},
		{"edge", "[-out FOLDER]", "build the site and its worker for an edge platform into build/out-edge",
			"It fails when the worker is larger than the platform takes.\n", edgeCommand},
		{"sizes", "", "build the site and print its sizes, writing nothing",
			"It prints what each package weighs in the program, each kind of file as it is and compressed, and what a reader downloads against the budget. Over the budget,\nthe exit code is 1.\n", sizesCommand},
		{"example", "[NAME [FILE]]", "list the example plans, or write one as a plan file",
			"Without FILE, or with - for it, the plan goes to standard output. A file that holds something else already is not written over.\n\n  go run ./build example\n  go run ./build example balcony plan.json\n", exampleCommand},
		{"solve", "[FILE]", "read a plan as JSON and write everything worked out for it as JSON",
			file + "Numbers are in SI units, which the ends of their keys name: head_m, flow_m3_s. What is wrong with a plan is told all\nat once, and the exit code is then 1.\n\n  go run ./build solve plan.json\n", solveCommand},
		{"calendar", "[FILE]", "read a plan as JSON and write its season as an iCalendar file",
			file + "\n  go run ./build calendar plan.json\n", calendarCommand},
		{"formula", "[-json] [NAME [name=value ...]]", "evaluate a formula; without a name, list them",
			"With a name alone, its symbols, their ranges and its source are printed. A value may have a unit, and without one is in\nthe unit that its range is printed in. Where several values are taken, semicolons divide them.\n\n  go run ./build formula fill-time\n  go run ./build formula -json velocity flow=\"4 L/min\" bore=\"13.6 mm\"\n", formulaCommand},
		{"link", "[FILE or LINK]", "turn a plan as JSON into a link, and a link into JSON",
			file + "A link may be a whole address, or what follows the # or the ? in it. Put it in quotes: to a shell, # begins a comment.\n\n  go run ./build link plan.json\n  go run ./build link \"$(go run ./build link plan.json)\"\n", linkCommand},
		{"texts", "[-counts WAY] [-pseudo] [FILE]", "list what the program says, for another language, or check such a list",
			"Without FILE the list goes to standard output: a line that says how the language counts, then for each text the English\nand a line to write the other language in. With FILE, what is missing, left over or does not fit is named, and the exit\ncode is then 1.\n\n  go run ./build texts -counts \"one few many\"\n", textsCommand},
	}
}

func main() {
	os.Exit(dispatch(os.Args[1:], stdio{os.Stdin, os.Stdout, os.Stderr}))
}

func dispatch(args []string, std stdio) int {
	if len(args) == 0 || args[0] == "help" || args[0] == "-h" || args[0] == "--help" {
		if len(args) < 2 {
			usage(std.out)
			return 0
		}
		args = []string{args[1], "-h"}
	}
	for _, c := range commands {
		if c.name == args[0] {
			return c.run(args[1:], std)
		}
	}
	fmt.Fprintf(std.err, "there is no command %s\n\n", args[0])
	usage(std.err)
	return 2
}

func usage(w io.Writer) {
	fmt.Fprint(w, "Usage: go run ./build COMMAND\n\n")
	for _, c := range commands {
		fmt.Fprintf(w, "  %s\n        %s\n", strings.TrimSpace(c.name+" "+c.args), c.does)
	}
	fmt.Fprint(w, "\nsolve, calendar and link read standard input when no file is named. COMMAND -h says more of each.\n")
}

// help prints what a command does, with its flags.
func help(w io.Writer, flags *flag.FlagSet) {
	for _, c := range commands {
		if c.name == flags.Name() {
			fmt.Fprintf(w, "Usage: go run ./build %s\n\n%s.\n%s", strings.TrimSpace(c.name+" "+c.args), unit.Capital(c.does), c.about)
		}
	}
	flags.VisitAll(func(f *flag.Flag) {
		name, about := flag.UnquoteUsage(f)
		fmt.Fprintf(w, "\n  %s\n        %s", strings.TrimSpace("-"+f.Name+" "+name), about)
		if f.DefValue != "" && f.DefValue != "false" {
			fmt.Fprintf(w, " (by default %s)", f.DefValue)
		}
		fmt.Fprintln(w)
	})
}
