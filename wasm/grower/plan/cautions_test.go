package plan_test

import (
	"testing"

	"evenrow/build/hostile"
	"evenrow/wasm/grower/plan"
)

// Every caution stands at a place that is there, in the order of the page, for
// plans that there are: a condition that holds for none of them, or for all, is
// not the one that was meant.
func TestCautionsAreWhole(t *testing.T) {
	var plans []*plan.Plan
	for _, e := range plan.Examples() {
		plans = append(plans, e.Plan)
	}
	for n := range 200 {
		plans = append(plans, hostile.Ordinary(hostile.Numbered(21, n)))
	}
	order := map[string]int{}
	for i, s := range plan.Sections() {
		order[s.Name] = i
	}
	taken, before := map[string]bool{}, 0
	for i, c := range plan.Cautions() {
		place, stands := order[c.Section]
		s := plan.SectionNamed(c.Section)
		switch {
		case c.Name == "" || c.When == nil || c.When.Words == "":
			t.Errorf("row %d, %s: it has no name, or no condition with words; any plan is one, too", i, c.Name)
			continue
		case !stands || c.Section == "":
			t.Errorf("%s: there is no section %q", c.Name, c.Section)
			continue
		case c.Field != "" && (s.List || plan.FieldNamed(c.Section, c.Field) == nil):
			t.Errorf("%s: section %s has no field %q that comes once", c.Name, c.Section, c.Field)
		case taken[c.Name+" "+c.Section]:
			t.Errorf("%s stands in section %s twice", c.Name, c.Section)
		case place < before:
			t.Errorf("%s, in section %s, is not in the order of the page", c.Name, c.Section)
		}
		taken[c.Name+" "+c.Section], before = true, place
		shown := 0
		for _, p := range plans {
			if c.Applies(p) {
				shown++
			}
		}
		if any := c.When.Words == "any plan"; shown == 0 || (shown == len(plans)) != any {
			t.Errorf("%s, in section %s, is for plans of which %q: it is shown for %d of %d", c.Name, c.Section, c.When.Words, shown, len(plans))
		}
	}
}
