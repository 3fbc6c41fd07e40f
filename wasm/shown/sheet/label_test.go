package sheet

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
)

// labels says what is found of a label.
func labels(s *Sheet) (kinds []FindingKind) {
	for _, f := range s.Findings {
		if f.Kind == LabelFigures || f.Kind == LabelShort {
			kinds = append(kinds, f.Kind)
		}
	}
	return kinds
}

// The figures on a label, by hand. A parabola from H to Q puts 0.3849 H Q of 9789 N/m³
// into water of 20 °C at best: 3 m and 800 L/h 2.5 W, 3 m and 800 L/min 151 W. Of what a
// label says four fifths get there at most.
func TestFiguresOnALabel(t *testing.T) {
	const hour, minute = 1 / 3.6e6, 1 / 6e4
	for _, tt := range []struct {
		what        string
		kind        int
		head, flow  float64 // m, m³/s
		label       float64 // W
		found, hour bool
	}{
		{"a small pump of 12 V", plan.PumpTwo, 3, 800 * hour, 10, false, true},
		{"its flow as if of a minute", plan.PumpTwo, 3, 800 * minute, 10, true, true},
		{"as much as a good pump of half a horsepower", plan.PumpTwo, 34, 60 * minute, 373, false, true},
		{"four fifths and a little more", plan.PumpTwo, 3, 800 * minute, 150.7 / 0.8, true, true},
		{"four fifths and a little less", plan.PumpTwo, 3, 800 * minute, 150.73 / 0.8, false, true},
		{"too much by the hour too", plan.PumpTwo, 100, 2000 * minute, 10, true, false},
		{"nothing on the label", plan.PumpTwo, 100, 2000 * minute, plan.Unset, false, false},
		{"a label from another kind of supply", plan.PumpPoints, 100, 2000 * minute, 10, false, false},
	} {
		p := plan.Default()
		p.Supply.Kind, p.Supply.ShutOff, p.Supply.MaxFlow, p.Supply.Label = tt.kind, tt.head, tt.flow, tt.label
		if errs := p.Check(); len(errs) > 0 {
			t.Fatal(errs[0])
		}
		s := Answer(p)
		if found := slices.Contains(labels(s), LabelFigures); found != tt.found {
			t.Errorf("%s: found %t, want %t", tt.what, found, tt.found)
		}
		if tt.found && s.FlowOfAnHour() != tt.hour {
			t.Errorf("%s: the flow of an hour: %t", tt.what, !tt.hour)
		}
		p.Supply.Label = plan.Unset
		if o := Answer(p); o.Verdict != s.Verdict || o.Zones[0].Flow != s.Zones[0].Flow {
			t.Errorf("%s: the label changes the water", tt.what)
		}
	}
}

// Of a pump known by its power, what it would have to put into the water is that of the
// duty: 12.1 m at 4.0 L/min are 12.1 x 4/60000 x 9789, 7.9 W, which four fifths of 9.8 W
// are not and of 10 W are.
func TestPowerThatIsTooLittle(t *testing.T) {
	for _, tt := range []struct {
		power float64
		want  bool
	}{{9.8, true}, {10, false}, {2, true}, {750, false}} {
		p := plan.Default()
		p.Supply.Kind, p.Supply.Power = plan.PumpPower, tt.power
		s := Answer(p)
		if w := s.Wanted; math.Abs(w.Least-12.1) > 1e-9 || math.Abs(w.Flow*6e4-4) > 1e-9 {
			t.Fatalf("%+v is wanted", *w)
		}
		if got := slices.Contains(labels(s), LabelShort); got != tt.want || s.Verdict != Yes {
			t.Errorf("%g W: too little %t, want %t, verdict %d", tt.power, got, tt.want, s.Verdict)
		}
	}
	p := plan.Default()
	p.Supply.Kind, p.Supply.Power = plan.PumpWanted, 2
	if got := labels(Answer(p)); len(got) > 0 {
		t.Errorf("a pump that is yet to be bought has a label: %v", got)
	}
}

// A pump of 12 V from the box, with its flow by the hour, waters eight buckets with
// plain emitters: typed as it is printed, in either system of units.
func TestAPumpOfTwelveVolts(t *testing.T) {
	for _, sys := range []unit.System{unit.Metric, unit.US} {
		for _, typed := range [][3]string{{"3 m", "800 L/h", "19 W"}, {"3,0 m", "0,8 m³/h", "0,019 kW"}, {"10 ft", "211 gph", "1/40 hp"}, {"10'", "3.5 gpm", ""}} {
			p := example(t, "balcony").Clone()
			p.Units, p.Supply.Kind, p.Runs[0].Rise = sys, plan.PumpTwo, 0.4
			d := plan.DraftOf(p)
			d.Set("supply.shut-off", typed[0])
			d.Set("supply.max-flow", typed[1])
			d.Set("supply.label", typed[2])
			q, errs := d.Read()
			if len(errs) > 0 {
				t.Errorf("%v: %v", typed, errs)
				continue
			}
			if math.Abs(q.Supply.ShutOff-3) > 0.05 || math.Abs(q.Supply.MaxFlow*3.6e6-800) > 6 || typed[2] != "" && math.Abs(q.Supply.Label-19) > 0.5 || typed[2] == "" && q.Supply.Label != plan.Unset {
				t.Errorf("%v is %g m, %g L/h, %g W", typed, q.Supply.ShutOff, q.Supply.MaxFlow*3.6e6, q.Supply.Label)
			}
			if s := Work(q); s.Verdict != Yes || len(s.Findings) > 0 {
				t.Errorf("%v: verdict %d, %+v", typed, s.Verdict, s.Findings)
			}
		}
	}
}
