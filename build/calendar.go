package main

import (
	"io"

	"evenrow/wasm/shown/page"
)

func calendarCommand(args []string, std stdio) int {
	p, code := planNamed("calendar", args, std)
	if p == nil {
		return code
	}
	io.WriteString(std.out, page.CalendarFile(p).File)
	return 0
}
