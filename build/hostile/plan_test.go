package hostile

import (
	"testing"

	"evenrow/wasm/grower/plan"
)

// Plans are accepted, differ in everything that a plan can differ in, and go
// up to every limit.
func TestPlansGoEverywhere(t *testing.T) {
	const plans = 6000
	straight, most := 0, 0
	low, high := map[string]int{}, map[string]int{}
	options := map[string]int{}
	for n := range plans {
		p, accepted := Plan(Numbered(1, n))
		if errs := p.Check(); len(errs) > 0 {
			t.Fatalf("plan %d: %v", n, errs[0])
		}
		if accepted {
			straight++
		}
		total := 0
		for i := range p.Rows {
			total += p.Rows[i].Plants
		}
		most = max(most, total)
		for _, s := range plan.Sections() {
			for i := range s.Records(p) {
				for _, f := range s.Fields() {
					if f.Type == plan.Text || !f.Applies(p, i) {
						continue
					}
					switch v := f.Value(p, i); {
					case f.Type == plan.Choice:
						options[f.Section+"."+f.Name+"="+f.Options[int(v)].Code]++
					case v == f.Min:
						low[f.Section+"."+f.Name]++
					case v == f.Max:
						high[f.Section+"."+f.Name]++
					}
				}
			}
		}
	}
	t.Logf("%d of %d plans were accepted as they were drawn", straight, plans)
	if straight < plans/10 {
		t.Errorf("only %d of %d plans were accepted as they were drawn", straight, plans)
	}
	if most != plan.MaxPlants {
		t.Errorf("the most plants are %d, want %d", most, plan.MaxPlants)
	}
	for _, f := range plan.Fields() {
		name := f.Section + "." + f.Name
		switch f.Type {
		case plan.Text:
		case plan.Choice:
			for k, o := range f.Options {
				row := name == "rows.tube" && k != 0 // of which only those go that emitters can be punched into
				if options[name+"="+o.Code] == 0 && !row {
					t.Errorf("no plan has %s=%s", name, o.Code)
				}
			}
		default:
			// The first frost is after the last one, and both are in the range.
			last, first := name == "season.last-frost", name == "season.first-frost"
			all := name == "sky.since" // which at its lower limit says so, and is not asked for
			if low[name] == 0 && !first && !all || high[name] == 0 && !last {
				t.Errorf("%s is at its lower limit %d times, at its upper %d times", name, low[name], high[name])
			}
		}
	}
}
