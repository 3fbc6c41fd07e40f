package edge

import (
	"net/url"
	"strings"
	"testing"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
)

// The five questions are asked by the planner alone: whoever comes here with their place in
// an address, or in a form, gets the answer to a plan, and no fault.
func TestThePlaceOfTheQuestionsIsAnsweredToo(t *testing.T) {
	link := carry.Link(plan.Default())
	form := url.Values{"name": {"x"}, plan.AtName: {"start"}}
	asked := url.Values{"name": {"x"}, plan.ActionName: {plan.GoTo + "start"}}
	proposed := url.Values{"name": {"x"}, plan.AtName: {"start"}, plan.ActionName: {"propose"}, "ask.length": {"6"}}
	for way, w := range map[string]string{
		"an address":        ask(t, "GET", "/plan?"+link+"/start", "").Body.String(),
		"a form there":      ask(t, "POST", "/plan", form.Encode()).Body.String(),
		"a button to there": ask(t, "POST", "/plan", asked.Encode()).Body.String(),
		"a proposal":        ask(t, "POST", "/plan", proposed.Encode()).Body.String(),
	} {
		if !strings.Contains(w, ">Answer</h1>") || !strings.Contains(w, "class=\"answer__line\"") && !strings.Contains(w, "class=answer__line") || strings.Contains(w, "has a fault") {
			t.Errorf("%s: %.300s", way, w)
		}
	}
}
