package page

import (
	"net/url"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
)

// Two plans side by side: what differs has a row with both, what does not has none, and a
// plan that cannot be read is not compared.
func TestCompare(t *testing.T) {
	a := plan.DraftOf(plan.Default())
	b := plan.DraftOf(plan.Default())
	b.Set("name", "The other <b>")
	b.Set("runs.1.rise", "2.5")
	b.Set("rows.2.medium", "bucket")
	b.Set("supply.kind", "mains")
	asked := func() Reply { return Compare(url.Values{OneName: {a.Encode()}, OtherName: {b.Encode()}}.Encode()) }
	html, _ := fragment(asked(), "compared")
	for _, want := range []string{"Millrace tunnel</th>", "The other &lt;b&gt;</th>", "Yes, if what is assumed is so. ", "Run 1: Rise</th><td>0.4\u00a0m</td><td>2.5\u00a0m", "Row 2: Medium</th><td>coco slab</td><td>bucket", "a tap"} {
		if !strings.Contains(html, want) {
			t.Errorf("nothing says %q in\n%s", want, html)
		}
	}
	for _, not := range []string{"Row 1:", "Length along the rows", "<b>"} {
		if strings.Contains(html, not) {
			t.Errorf("%q is said, and is the same in both", not)
		}
	}
	b.Set("runs.1.rise", "up")
	if html, _ := fragment(asked(), "compared"); !strings.Contains(html, "something to put right first: Run 1: rise") || strings.Contains(html, "<table") {
		t.Errorf("a plan with a mistake is compared: %s", html)
	}
}

// A set for paper has the jobs that were asked for, whole, and no id that the page has.
func TestPaper(t *testing.T) {
	data := url.Values{}
	data.Set(PrintName, "water buy nothing")
	form := plan.DraftOf(plan.Default()).Encode() + "&" + data.Encode()
	html, there := fragment(new(Session).Paper(form), "paper")
	if !there || strings.Count(html, "<h1>") != 2 || strings.Index(html, "<h1>Water") > strings.Index(html, "<h1>Buy") || strings.Contains(html, ` id="`) {
		t.Errorf("%.300s", html)
	}
	if !strings.Contains(html, "Parts to buy") || !strings.Contains(html, "shots") && !strings.Contains(html, "Hot day") {
		t.Error("a job is not whole")
	}
	if r := new(Session).Paper(strings.Replace(form, "place.length=", "place.length=x", 1)); len(r.Errors) == 0 {
		t.Error("a plan with a mistake is printed")
	}
}
