package view

import (
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/form"
)

// What a grower stumbles over, anywhere on the page; and, outside what is folded
// away, what belongs to the workings.
var (
	stumbles = regexp.MustCompile(`(?i)\bleads?\b|\bblows?\b|thirst|\breckon|\bupright|serve for less|\bdear(er|est)?\b|treat(ing|ment)?( of)? the lines|\bin hand\b|stands with the answer|(^|[^.\d])1 (plants|rows|emitters|days|zones|shots|draws)\b|\band at in\b`)
	inner    = regexp.MustCompile(`(?i)from memory|\bgenerator|(over all|of the|one|\d) draws?\b|splitmix`)

	folds  = regexp.MustCompile(`(?s)<details.*?</details>`) // of what is folded twice a rest is left, which is read as well
	anyTag = regexp.MustCompile(`(?s)<[^>]*>`)
)

func TestWordsThatAGrowerKnows(t *testing.T) {
	for name, s := range sheets() {
		fragments := append([]block.Fragment{{ID: "form", HTML: form.Ask(s.Plan, plan.DraftOf(s.Plan), nil, Groups(), form.Place{})}}, Everything(s, func(*plan.Plan) string { return "#x" })...)
		for _, f := range fragments {
			plain := func(html string) string { return strings.ReplaceAll(anyTag.ReplaceAllString(html, " "), "\u00a0", " ") }
			if m := stumbles.FindString(plain(f.HTML)); m != "" {
				t.Errorf("%s, %s: %q", name, f.ID, m)
			}
			if m := inner.FindString(plain(folds.ReplaceAllString(f.HTML, " "))); m != "" {
				t.Errorf("%s, %s: %q stands in a line that a grower reads", name, f.ID, m)
			}
		}
	}
}
