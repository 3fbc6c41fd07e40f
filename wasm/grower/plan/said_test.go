package plan

import (
	"strings"

	"evenrow/wasm/ground/words"
)

// said is what a problem says of "It", without the name and the stop.
func said(problem *words.Remark) string {
	if problem == nil {
		return ""
	}
	return clause("It", problem.Of("It"))
}

// clause is what a sentence says of what it names first. Without a stop it is no
// sentence, and stays as it is.
func clause(name, sentence string) string {
	s, whole := strings.CutSuffix(strings.TrimPrefix(sentence, name+" "), ".")
	if !whole {
		return sentence
	}
	return s
}
