package care_test

import (
	"math/bits"
	"strings"
	"testing"

	"evenrow/build/hostile"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/grower/plan"
)

// plans are examples and ordinary ones.
func plans() []*plan.Plan {
	var all []*plan.Plan
	for _, e := range plan.Examples() {
		all = append(all, e.Plan)
	}
	for n := range 200 {
		all = append(all, hostile.Ordinary(hostile.Numbered(21, n)))
	}
	return all
}

// Every caution stands at a place that is there, for plans that there are: a condition
// that holds for none of them, or for all, is not the one that was meant.
func TestCautionsAreWhole(t *testing.T) {
	all := plans()
	names, said := map[string]bool{}, map[words.Text]bool{}
	for i, c := range care.Catalogue {
		if c.Name == "" || c.When == nil || c.When.Words == "" || c.Short == "" || c.Hazards == 0 || len(c.At) == 0 {
			t.Errorf("row %d, %s: it lacks a name, a hazard, a condition with words, a place or what to do; any plan is a condition, too", i, c.Name)
			continue
		}
		if names[c.Name] || said[c.Short] {
			t.Errorf("%s stands in the catalogue twice", c.Name)
		}
		names[c.Name], said[c.Short] = true, true
		// A task only names what can hurt: what to do is found by that name.
		var called []string
		for h, name := range care.Names {
			if c.Hazards.Has(care.Hazard(h)) {
				called = append(called, words.Say(name))
			}
		}
		if head := unit.Capital(strings.Join(called, ", ")) + ": "; !strings.HasPrefix(words.Say(c.Short), head) {
			t.Errorf("%s: what to do begins with %.25q, and not with %q", c.Name, words.Say(c.Short), head)
		}
		if n := len(words.Say(c.Short)); n > 190 {
			t.Errorf("%s: what to do takes %d letters", c.Name, n)
		}
		taken := map[string]bool{}
		for _, at := range c.At {
			s := plan.SectionNamed(at.Section)
			switch {
			case s == nil || at.Section == "":
				t.Errorf("%s: there is no section %q", c.Name, at.Section)
			case at.Field != "" && (s.List || plan.FieldNamed(at.Section, at.Field) == nil):
				t.Errorf("%s: section %s has no field %q that comes once", c.Name, at.Section, at.Field)
			case taken[at.Section]:
				t.Errorf("%s stands in section %s twice", c.Name, at.Section)
			}
			taken[at.Section] = true
		}
		shown := 0
		for _, p := range all {
			if c.Applies(p) {
				shown++
			}
		}
		if any := c.When.Words == "any plan"; shown == 0 || (shown == len(all)) != any {
			t.Errorf("%s is for plans of which %q: it is shown for %d of %d", c.Name, c.When.Words, shown, len(all))
		}
	}
}

// What can hurt in a plan has at least one caution there, and a caution answers nothing
// that cannot hurt in any plan for which it is shown.
func TestEveryHazardIsAnswered(t *testing.T) {
	met := care.Set(0)
	for _, p := range plans() {
		in := care.In(p)
		met |= in
		for h := range care.Hazard(care.Hazards) {
			if in.Has(h) && len(care.Against(1<<h, p)) == 0 {
				t.Fatalf("nothing is said of %q where %d drives the water", words.Say(care.Names[h]), p.Supply.Kind)
			}
		}
		for _, c := range care.Catalogue {
			if c.Applies(p) && c.Hazards&in != c.Hazards {
				t.Fatalf("%s is shown, and cannot hurt where %d drives the water", c.Name, p.Supply.Kind)
			}
		}
	}
	if n := bits.OnesCount32(uint32(met)); n != care.Hazards {
		t.Errorf("of %d hazards the plans here have %d", care.Hazards, n)
	}
	for h, name := range care.Names {
		if name == "" {
			t.Errorf("hazard %d has no name", h)
		}
	}
}

// A tap has backflow and no pump; what stands high can tip; only under a cover it is hot.
func TestConditions(t *testing.T) {
	has := func(p *plan.Plan, name string) bool {
		for _, c := range care.Against(1<<care.Hazards-1, p) {
			if c.Name == name {
				return true
			}
		}
		return false
	}
	for _, c := range []struct {
		kind   int
		yes    []string
		no     []string
		shaded int
	}{
		{plan.Mains, []string{"backflow", "wires", "tunnel"}, []string{"electricity", "cords", "raised", "stored-water"}, 1},
		{plan.PumpPoints, []string{"electricity", "cords", "backflow", "stored-water"}, []string{"wires", "raised", "tunnel"}, plan.OpenAir},
		{plan.PumpWanted, []string{"electricity", "cords"}, []string{"wires", "raised"}, 1},
		{plan.PumpTwo, []string{"electricity", "cords"}, []string{"wires", "raised"}, 1},
		{plan.PumpPower, []string{"electricity", "cords"}, []string{"wires", "raised"}, 1},
		{plan.GravityTank, []string{"raised", "wires", "backflow", "stored-water"}, []string{"electricity", "cords"}, 1},
	} {
		p := plan.Default()
		p.Supply.Kind, p.Season.Shelter = c.kind, c.shaded
		for _, name := range c.yes {
			if !has(p, name) {
				t.Errorf("supply %d lacks %s", c.kind, name)
			}
		}
		for _, name := range c.no {
			if has(p, name) {
				t.Errorf("supply %d has %s", c.kind, name)
			}
		}
	}
}
