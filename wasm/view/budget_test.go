package view

import (
	"strings"
	"testing"

	"evenrow/wasm/plan"
	"evenrow/wasm/sheet"
)

// Where fittings take more than is to spare, or than is missing, the budget
// says that the answer hangs on them; where they do not, it says nothing.
func TestBudgetSaysWhatTheAnswerHangsOn(t *testing.T) {
	const says = "so the answer hangs on their coefficients"
	short := planOf(t, "ring")
	short.Limits.Reserve = 1.4
	wide := planOf(t, "ring")
	wide.Limits.Reserve = 0.3
	for _, tt := range []struct {
		what string
		plan *plan.Plan
		want string // "" for nothing
	}{
		{"the ring, with little to spare", planOf(t, "ring"), "Fittings take 0.07\u00a0bar (0.7\u00a0m), more than the 0.03\u00a0bar (0.3\u00a0m) beyond the safety margin, "},
		{"the ring, a little short", short, "more than the 0.01\u00a0bar (0.1\u00a0m) that is missing, "},
		{"the ring, with more to spare than fittings take", wide, ""},
		{"the first example", plan.Default(), ""},
		{"a pump that is far too weak", planOf(t, "wrong-pump"), ""},
		{"a field that is far short", planOf(t, "long-field"), ""},
	} {
		got := ""
		for _, f := range Everything(sheet.Answer(tt.plan), func(*plan.Plan) string { return "#plan" }) {
			if f.ID == "budget" {
				got = f.HTML
			}
		}
		if got == "" {
			t.Errorf("%s: no budget", tt.what)
		}
		if tt.want == "" && strings.Contains(got, says) || tt.want != "" && !strings.Contains(got, tt.want+says) {
			t.Errorf("%s: want %q in %s", tt.what, tt.want, got)
		}
	}
}
