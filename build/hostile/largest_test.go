package hostile

import (
	"math"
	"strings"
	"testing"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
)

// largest is more than any plan: every list full, every name as long as it may
// be, of letters that take the most bytes, every number with all its digits, and
// no value the one in the record before, which a link would leave out.
func largest() *plan.Plan {
	p := plan.Default()
	for _, s := range plan.Sections() {
		if s.List {
			s.Resize(p, s.Max)
		}
		for i := range s.Records(p) {
			for k, f := range s.Fields() {
				unlike := float64((i*7+k)%97) / 97
				switch f.Type {
				case plan.Text:
					*f.Text(p, i) = strings.Repeat([]string{"\U0001F345", "\U0001FAD1"}[i%2], int(f.Max))
					if f.Name == "part" { // a key, of plain letters
						*f.Text(p, i) = strings.Repeat([]string{"a:", "b:"}[i%2], int(f.Max)/2)
					}
				case plan.Choice:
					longest := i % 2
					for k, o := range f.Options {
						if k%2 == i%2 && len(o.Code) > len(f.Options[longest].Code) {
							longest = k
						}
					}
					*f.Int(p, i) = longest
				case plan.Whole, plan.Date:
					f.SetValue(p, i, f.Max-float64(i%2))
				default:
					*f.Number(p, i) = f.Max - (f.Max-f.Min)*(unlike+0.01)/math.E/10
				}
				p.SetOrigin(f, i, plan.Origin(1+i%(plan.Origins-1)))
			}
		}
	}
	return p
}

// The limits of a form, a link and a file shut out no plan.
func TestTheLargestPlanIsTaken(t *testing.T) {
	p := largest()
	for _, c := range []struct {
		name       string
		n          int
		about, max int // as the declaration of the limit says
	}{
		{"form", len(plan.DraftOf(p).Encode()), 81_500, plan.MaxForm},
		{"link", len(carry.Link(p)), 0, carry.MaxLink},
		{"file", len(carry.JSON(p)), 0, carry.MaxFile},
	} {
		t.Logf("the largest %s has %d bytes of %d", c.name, c.n, c.max)
		if c.n > c.max || c.about != 0 && math.Abs(float64(c.n-c.about)) > 1000 {
			t.Errorf("the largest %s has %d bytes; it is said to have %d, and %d are taken", c.name, c.n, c.about, c.max)
		}
	}
}
