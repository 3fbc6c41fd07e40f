package plan

import (
	"math"
	"testing"

	"evenrow/wasm/ground/unit"
)

// A power as it stands on a label, and a flow by the hour as shops print it,
// are taken in the fields that ask for them. The factors are those of NIST SP
// 811 (2008), appendix B: the horsepower of 550 ft lbf/s is 745.699872 W, the
// US gallon 3.785412 L.
func TestFractionsAndFlowsByTheHour(t *testing.T) {
	const hp, gallon = 745.6998715822702, 3.785411784
	for _, tt := range []struct {
		section, name, typed string
		want                 float64
		problem              string
	}{
		{"supply", "power", "1/2 hp", hp / 2, ""},
		{"supply", "power", " 1 / 2 HP", hp / 2, ""},
		{"supply", "power", "1 1/2 hp", hp * 1.5, ""},
		{"supply", "power", "1-1/2 hp", hp * 1.5, ""},
		{"supply", "power", "½ hp", hp / 2, ""},
		{"supply", "power", "1½ hp", hp * 1.5, ""},
		{"supply", "power", "1 ¾ hp", hp * 1.75, ""},
		{"supply", "power", "1⁄3 hp", hp / 3, ""},
		{"supply", "power", "0,5 hp", hp / 2, ""},
		{"supply", "power", "0.37 kW", 370, ""},
		{"runs", "bore", "3/4 in", 0.01905, ""},
		{"place", "length", "39 1/2 ft", 39.5 * 0.3048, ""},
		{"supply", "max-flow", "800 L/h", 800 / 3.6e6, ""},
		{"supply", "max-flow", "800 l/hr", 800 / 3.6e6, ""},
		{"supply", "max-flow", "800 lph", 800 / 3.6e6, ""},
		{"supply", "max-flow", "20 lpm", 20 / 6e4, ""},
		{"supply", "max-flow", "200 gal/h", 200 * gallon / 3.6e6, ""},
		{"supply", "max-flow", "200 GPH", 200 * gallon / 3.6e6, ""},
		{"supply", "max-flow", "200 gal/hr", 200 * gallon / 3.6e6, ""},
		{"supply", "max-flow", "1.2 m3/h", 1.2 / 3600, ""},
		{"supply", "max-flow", "1,2 m³/h", 1.2 / 3600, ""},
		{"supply", "tap-flow", "1.2 m3/h", 1.2 / 3600, ""},
		{"points", "flow", "1200 L/h", 1200 / 3.6e6, ""},
		{"filter", "rated", "200 gal/h", 200 * gallon / 3.6e6, ""},
		{"emitters", "flow", "1/2 gph", gallon / 2 / 3.6e6, ""},
		{"emitters", "flow", "0.5 gal/hour", gallon / 2 / 3.6e6, ""},
		{"supply", "max-flow", "800 L/hour", 800 / 3.6e6, ""},
		{"supply", "max-flow", "1.2 m³/hour", 1.2 / 3600, ""},

		{"supply", "power", "1/0 hp", 0, "must be a number, such as 12.5"},
		{"supply", "power", "1/", 0, "must be a number, such as 12.5"},
		{"supply", "power", "1.5/2 hp", 0, "must be a number, such as 12.5"},
		{"supply", "power", "1/2/3 hp", 0, "must be a number, such as 12.5"},
		{"supply", "power", "-1/2 hp", -hp / 2, ""}, // out of range, which Check says
		{"supply", "power", "1/2 m", 0, `must be in W or hp, not in "m"`},
		{"supply", "power", "1 000/2 hp", 0, "must be a number, such as 12.5"}, // five hundred, or one
		{"supply", "power", "1 3/2 hp", 0, "must be a number, such as 12.5"},
		{"supply", "power", "1,000 W", 0, "may mean 1000 or 1.000: write one of these"},
		{"emitters", "opens", "1/2 bar", 0, "must be a number, such as 12.5"},
		{"emitters", "opens", "1 1/2 bar", 0, "must be a number, such as 12.5"},
		// What the field shows after the number is taken with it.
		{"prices", "tube-0", "2.5 /m", 2.5, ""},
		{"prices", "tube-0", "2,5/m", 2.5, ""},
		{"prices", "tube-0", "1/2", 0, "must be a number, such as 12.5"},
		// 1 in 100 is a slope of 1 %, and 1/100 % is none: not guessed at.
		{"rows", "slope", "1/100", 0, "must be a number, such as 12.5"},
		{"rows", "plants", "1/2", 0, "must be a whole number, such as 12"},
		{"rows", "plants", "many", 0, "must be a whole number, such as 12"},
	} {
		for _, sys := range []unit.System{unit.Metric, unit.US} {
			f, p := FieldNamed(tt.section, tt.name), Default()
			p.Units = sys
			before := f.Value(p, 0)
			if problem := f.Read(p, 0, tt.typed); said(problem) != tt.problem {
				t.Errorf("%s %q: %q, want %q", tt.name, tt.typed, said(problem), tt.problem)
			}
			want := tt.want
			if tt.problem != "" {
				want = before
			}
			if got := f.Value(p, 0); math.Abs(got-want) > 1e-12*math.Abs(want) {
				t.Errorf("%s %q is %v, want %v", tt.name, tt.typed, got, want)
			}
		}
	}
	// Alone it is in the field's own unit, also after a change of the units.
	p := Default()
	p.Units, p.Supply.Kind = unit.US, PumpPower
	d := DraftOf(p)
	d.Set(UnitsWas, "us")
	d.Set("supply.power", "1 1/2")
	if p, errs := d.Read(); len(errs) > 0 || math.Abs(p.Supply.Power-1.5*hp) > 1e-9 {
		t.Errorf("1 1/2 in hp is %v W, %v", p.Supply.Power, errs)
	}
	d.Set("units", "metric")
	d.Apply()
	if p, errs := d.Read(); len(errs) > 0 || math.Abs(p.Supply.Power-1.5*hp) > 0.1 {
		t.Errorf("in W it became %q, %v", d.Get("supply.power"), errs)
	}
}
