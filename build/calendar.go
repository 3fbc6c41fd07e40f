package main

import (
	"flag"
	"io"

	"evenrow/wasm/page"
)

func calendarCommand(args []string, std stdio) int {
	flags := flag.NewFlagSet("calendar", flag.ContinueOnError)
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
	io.WriteString(std.out, page.CalendarFile(p).File)
	return 0
}
