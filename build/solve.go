package main

import (
	"flag"

	"evenrow/build/answer"
)

func solveCommand(args []string, std stdio) int {
	flags := flag.NewFlagSet("solve", flag.ContinueOnError)
	if code, ok := parse(flags, args, std, 1); !ok {
		return code
	}
	text, err := input(flags.Arg(0), std)
	if err != nil {
		return std.fail(err)
	}
	p, err := readPlan(text)
	if err != nil {
		return std.fail(err)
	}
	out, err := answer.JSON(p)
	if err != nil {
		return std.fail(err)
	}
	std.out.Write(out)
	return 0
}
