package main

import (
	"io"

	"evenrow/wasm/shown/page"
	"evenrow/wasm/shown/sheet"
)

func calendarCommand(args []string, std stdio) int {
	p, code := planNamed("calendar", args, std)
	if p == nil {
		return code
	}
	s := sheet.Answer(p)
	s.Explore(sheet.Season)
	io.WriteString(std.out, page.CalendarFile(s).File)
	return 0
}
