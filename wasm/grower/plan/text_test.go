package plan

import (
	"math"
	"testing"

	"evenrow/wasm/ground/unit"
)

// A number may be typed with its unit, in either system of units.
func TestAUnitMayBeTyped(t *testing.T) {
	for _, tt := range []struct {
		section, name, typed string
		want                 float64
		problem              string
	}{
		{"supply", "power", "1 hp", 745.6998715822702, ""}, // 550 ft·lbf/s, exact
		{"supply", "power", "0,75 kW", 750, ""},
		{"emitters", "opens", "15 psi", 15 * 6894.757293168361, ""},
		{"place", "length", "40ft", 12.192, ""},
		{"place", "length", "12", 12, ""},
		{"place", "length", "12 psi", 0, `must be in m or ft, not in "psi"`},
		{"place", "length", "twelve", 0, "must be a number, such as 12.5"},
		{"place", "length", "", 0, "is missing"},
	} {
		f, p := FieldNamed(tt.section, tt.name), Default()
		before := f.Value(p, 0)
		if problem := f.Read(p, 0, tt.typed); said(problem) != tt.problem {
			t.Errorf("%q: %q, want %q", tt.typed, said(problem), tt.problem)
		}
		want := tt.want
		if tt.problem != "" {
			want = before
		}
		if got := f.Value(p, 0); math.Abs(got-want) > 1e-12*want {
			t.Errorf("%q read as %v, want %v", tt.typed, got, want)
		}
		if tt.problem == "" && tt.typed != "12" {
			p.Units = unit.US
			f.Read(p, 0, tt.typed)
			if got := f.Value(p, 0); math.Abs(got-want) > 1e-9*want {
				t.Errorf("%q read as %v in US units, want %v", tt.typed, got, want)
			}
		}
	}
}
