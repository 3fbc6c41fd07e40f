package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
)

func linkCommand(args []string, std stdio) int {
	flags := flag.NewFlagSet("link", flag.ContinueOnError)
	if code, ok := parse(flags, args, std, 1); !ok {
		return code
	}
	text, err := input(flags.Arg(0), std)
	// A link is too long for the name of a file, which is another error than
	// that there is none.
	if err != nil && looksLikeLink(flags.Arg(0)) {
		text, err = []byte(flags.Arg(0)), nil
	}
	if err != nil {
		return std.fail(err)
	}
	text = bytes.TrimSpace(text)
	if bytes.HasPrefix(text, []byte("{")) {
		p, err := readPlan(text)
		if err != nil {
			return std.fail(err)
		}
		fmt.Fprintln(std.out, "#"+carry.Link(p))
		return 0
	}
	if i := bytes.LastIndexAny(text, "#?"); i >= 0 { // "?" in the address of a plan page
		text = text[i+1:]
	}
	p, err := carry.ReadLink(string(text))
	if err != nil {
		return std.fail(err)
	}
	std.out.Write(append(bytes.TrimSpace(carry.JSON(p)), '\n'))
	return 0
}

// looksLikeLink reports whether an argument that is no file may be a link or
// a whole address with one.
func looksLikeLink(arg string) bool {
	return strings.ContainsAny(arg, "#?") || arg != "" && arg[0] >= '0' && arg[0] <= '9'
}

// input reads a file, or standard input when the name is empty or "-".
func input(name string, std stdio) ([]byte, error) {
	if name == "" || name == "-" {
		return io.ReadAll(std.in)
	}
	return os.ReadFile(name)
}

// planNamed returns the plan file that a command is given, or nil and the exit
// code when there is none or something is wrong in it.
func planNamed(command string, args []string, std stdio) (*plan.Plan, int) {
	flags := flag.NewFlagSet(command, flag.ContinueOnError)
	if code, ok := parse(flags, args, std, 1); !ok {
		return nil, code
	}
	text, err := input(flags.Arg(0), std)
	if err != nil {
		return nil, std.fail(err)
	}
	p, err := readPlan(text)
	if err != nil {
		return nil, std.fail(err)
	}
	return p, 0
}

// readPlan reads a plan as JSON. The error joins one for each field that is
// wrong.
func readPlan(text []byte) (*plan.Plan, error) {
	p, errs := carry.ReadJSON(text)
	var all []error
	for _, e := range errs {
		all = append(all, e)
	}
	return p, errors.Join(all...)
}
