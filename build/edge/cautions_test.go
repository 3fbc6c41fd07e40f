package edge

import (
	"html"
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/view"
)

var (
	asks = regexp.MustCompile(`(?s)<form id="?plan"?.*?</form>`)
	// What is printed stands in a section of its own: the form is not printed.
	printed = regexp.MustCompile(`(?s)<div id="?cautions"?>.*?</section>`)
	boxes   = regexp.MustCompile(`data-caution="?([a-z-]+)"?`)
)

// allJobs joins the pages of all jobs.
func allJobs(page func(job string) string) string {
	all := ""
	for i := range view.Jobs {
		all += page(view.Jobs[i].ID)
	}
	return all
}

// boxed is the names of the cautions that stand in a piece of a page.
func boxed(part string) []string {
	var names []string
	for _, m := range boxes.FindAllStringSubmatch(part, -1) {
		names = append(names, m[1])
	}
	return names
}

// The cautions beside the form, and those on paper, are those of the supply: a
// plan on a tap reads nothing of a pump, and one on a pump does. The same page
// answers for a form in which the supply was changed.
func TestCautionsFollowTheSupply(t *testing.T) {
	for kind, want := range map[int][]string{
		plan.PumpPoints:  {"electricity"},
		plan.PumpTwo:     {"electricity"},
		plan.PumpPower:   {"electricity"},
		plan.PumpWanted:  {"electricity"},
		plan.GravityTank: {"raised", "wires"},
		plan.Mains:       {"wires"},
	} {
		p := plan.Default()
		code := plan.FieldNamed("supply", "kind").Options[kind].Code
		p.Supply.Kind = kind
		form := filled(asks.FindString(ask(t, "GET", "/plan?"+carry.Link(plan.Default()), "").Body.String()))
		form.Set("supply.kind", code)
		for way, page := range map[string]string{
			"a link": allJobs(func(job string) string { return ask(t, "GET", "/plan?"+carry.Link(p)+"/"+job, "").Body.String() }),
			"a form": allJobs(func(job string) string {
				form.Set(plan.ActionName, plan.GoTo+job)
				return ask(t, "POST", "/plan", form.Encode()).Body.String()
			}),
		} {
			inForm, onPaper := strings.Join(asks.FindAllString(page, -1), ""), strings.Join(printed.FindAllString(page, -1), "")
			if inForm == "" || onPaper == "" {
				t.Fatalf("%s, %s: no form, or no cautions to print", code, way)
			}
			for _, part := range []string{inForm, onPaper} {
				got := boxed(part)
				for _, name := range []string{"electricity", "raised", "wires"} {
					if slices.Contains(got, name) != slices.Contains(want, name) {
						t.Errorf("%s, %s: cautions %q, want of electricity, raised and wires only %q", code, way, got, want)
					}
				}
				for _, name := range []string{"backflow", "chemicals", "dust", "pressure", "lifting", "drowning"} {
					if !slices.Contains(got, name) {
						t.Errorf("%s, %s: cautions %q lack %s", code, way, got, name)
					}
				}
			}
			for _, job := range printed.FindAllString(page, -1) {
				got := boxed(job)
				if slices.Sort(got); len(slices.Compact(got)) != len(boxed(job)) {
					t.Errorf("%s, %s: on one paper a caution stands twice: %q", code, way, got)
				}
			}
			if kind != plan.Mains {
				continue
			}
			for _, part := range []string{inForm, onPaper} {
				for _, box := range regexp.MustCompile(`(?s)data-caution=.*?</div>`).FindAllString(part, -1) {
					if text := strings.ToLower(html.UnescapeString(box)); strings.Contains(text, "pump") {
						t.Errorf("a caution speaks of a pump to a plan on a tap: %s", text)
					}
				}
			}
		}
	}
}

// Each hazard stands in the section where it is met, and the one of a single
// field directly before it.
func TestCautionsStandWhereTheyAreMet(t *testing.T) {
	tap := plan.Default()
	tap.Supply.Kind = plan.Mains
	for name, c := range map[string]struct {
		p     *plan.Plan
		place string // the part of the form
		want  []string
	}{
		"a tap":             {tap, "supply", []string{"backflow"}},
		"a pump":            {plan.Default(), "supply", []string{"electricity", "backflow"}},
		"rows":              {tap, "rows", []string{"lifting", "dust"}},
		"a pump's timer":    {plan.Default(), "timer", []string{"electricity", "cords", "feed", "drain"}},
		"a tap's timer":     {tap, "timer", []string{"wires", "feed", "drain"}},
		"treating of lines": {tap, "season", []string{"chemicals", "salts"}},
	} {
		page := allJobs(func(job string) string { return ask(t, "GET", "/plan?"+carry.Link(c.p)+"/"+job, "").Body.String() })
		part := regexp.MustCompile(`(?s)<fieldset class="?section"? id="?f-` + c.place + `"?.*?</fieldset>`).FindString(page)
		if got := boxed(part); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q stand at %s, want %q", name, got, c.place, c.want)
		}
		if c.place != "season" {
			continue
		}
		box, field := strings.Index(part, "data-caution"), strings.Index(part, "f-season.treat")
		if between := part[max(box, 0):max(field, 0)]; box < 0 || field < box || strings.Contains(between, "<input") {
			t.Errorf("%s: the caution does not stand before its field", name)
		}
	}
}
