package main

import (
	"evenrow/build/answer"
)

func solveCommand(args []string, std stdio) int {
	p, code := planNamed("solve", args, std)
	if p == nil {
		return code
	}
	out, err := answer.JSON(p)
	if err != nil {
		return std.fail(err)
	}
	std.out.Write(out)
	return 0
}
