// Command build makes the site, serves it on this machine, and does the
// calculation on the command line. Run it without arguments for its commands.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"
)

// A command is one thing that this program does. Its function returns the
// exit code: 0, 1 when something is wrong with what it was given, 2 when it
// was called wrongly.
type command struct {
	name, args, does string
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

var commands = []command{
	{"site", "[-out FOLDER]", "build the site into build/out and hold its sizes against the budget", siteCommand},
	{"serve", "[-port NUMBER] [-from FOLDER] [-public ADDRESS] [-origin ADDRESS]", "build the site, or take a finished one, and serve it on this machine, or to everybody", serveCommand},
	{"edge", "[-out FOLDER]", "build the site and its worker for an edge platform into build/out-edge", edgeCommand},
	{"sizes", "", "build the site and print its sizes, writing nothing", sizesCommand},
	{"solve", "[FILE]", "read a plan as JSON and write everything worked out for it as JSON", solveCommand},
	{"calendar", "[FILE]", "read a plan as JSON and write its season as an iCalendar file", calendarCommand},
	{"formula", "[NAME [name=value ...]]", "evaluate a formula; without a name, list them", formulaCommand},
	{"link", "[FILE or LINK]", "turn a plan as JSON into a link, and a link into JSON", linkCommand},
}

func main() {
	os.Exit(dispatch(os.Args[1:], stdio{os.Stdin, os.Stdout, os.Stderr}))
}

func dispatch(args []string, std stdio) int {
	if len(args) == 0 || args[0] == "help" || args[0] == "-h" || args[0] == "--help" {
		usage(std.out)
		return 0
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
	fmt.Fprint(w, "\nsolve, calendar and link read standard input when no file is named.\n")
}
