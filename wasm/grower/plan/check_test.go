package plan

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
)

func texts(errs []Error) []string {
	var list []string
	for _, e := range errs {
		list = append(list, e.Path+": "+clause("", e.Error()))
	}
	return list
}

func TestCheck(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *Plan)
		want   []string
	}{
		{"the default is sound", func(p *Plan) {}, nil},
		{"out of range, metric", func(p *Plan) { p.Rows[1].Spacing = 4 },
			[]string{"rows.2.spacing: Row 2: spacing must be from 0.05 to 3 m"}},
		{"out of range, US", func(p *Plan) { p.Units = unit.US; p.Rows[1].Spacing = 4 },
			[]string{"rows.2.spacing: Row 2: spacing must be from 0.165 to 9.84 ft"}},
		{"not finite", func(p *Plan) { p.Place.Length = math.NaN(); p.Place.Width = math.Inf(1) },
			[]string{"place.length: Place: length along the rows must be from 0.5 to 300 m", "place.width: Place: width across the rows must be from 0.5 to 200 m"}},
		{"all at once, in the order of the page", func(p *Plan) {
			p.Limits.Speed = 9
			p.Rows[3].Plants = 0
			p.Emitters[0].CV = -0.01
			p.Runs[0].Elbows = 41
			p.Name = strings.Repeat("x", 61)
		}, []string{
			"name: Name of the plan must be at most 60 characters, not 61",
			"runs.1.elbows: Run 1: bends of 90 degrees must be from 0 to 40",
			"emitters.1.cv: Emitter 1: variation in manufacture must be from 0 to 30 %",
			"rows.4.plants: Row 4: plants must be from 1 to 400",
			"limits.speed: Your limits: greatest speed in supply line and header must be from 0.3 to 3 m/s",
		}},
		{"a name of two lines", func(p *Plan) { p.Name = "a\nb" },
			[]string{"name: Name of the plan must be plain text on one line"}},
		{"a name that is no text", func(p *Plan) { p.Name = "a\xff" },
			[]string{"name: Name of the plan must be plain text on one line"}},
		{"a choice that is none", func(p *Plan) { p.Header.Layout = 3; p.Rows[0].Crop = -1 },
			[]string{"header.layout: Header: layout must be one of the choices", "rows.1.crop: Row 1: crop must be one of the choices"}},
		{"too few points", func(p *Plan) { p.Supply.Points = p.Supply.Points[:2] },
			[]string{"points: Number of points must be from 3 to 12, not 2"}},
		{"no rows", func(p *Plan) { p.Rows = nil },
			[]string{"rows: Number of rows must be from 1 to 60, not 0"}},
		{"too many rows", func(p *Plan) { p.Rows = make([]Row, 61) },
			[]string{"rows: Number of rows must be from 1 to 60, not 61"}},
		{"points that do not rise and fall", func(p *Plan) {
			p.Supply.Points = []Point{{0.0001, 30}, {0.0001, 30}, {0.0002, 31}}
		}, []string{
			"points.1.flow: Point 1: flow must be 0 at the first point",
			"points.2.flow: Point 2: flow must be more than at the point before",
			"points.2.head: Point 2: head must be less than at the point before",
			"points.3.head: Point 3: head must be less than at the point before",
		}},
		{"points of another kind of supply are not checked", func(p *Plan) {
			p.Supply.Kind = PumpPower
			p.Supply.Points = nil
			p.Supply.ShutOff = -1
		}, nil},
		{"a filter that is not there is not checked", func(p *Plan) { p.Filter = Filter{Rated: -1} }, nil},
		{"a bore counts only when it is measured", func(p *Plan) { p.Runs[0].Bore = 1; p.Rows[0].Bore = 1; p.Rows[1].Tube = 0; p.Rows[1].Bore = 1 },
			[]string{"rows.2.bore: Row 2: measured bore must be from 2 to 110 mm"}},
		{"an emitter that closes above its opening", func(p *Plan) { p.Emitters[0].Closes = 80000 },
			[]string{"emitters.1.closes: Emitter 1: closing pressure must not exceed the opening pressure, 0.70 bar"}},
		{"an emitter that opens above its range", func(p *Plan) { p.Emitters[0].Opens = 110000 },
			[]string{"emitters.1.opens: Emitter 1: opening pressure must not exceed the lowest pressure, 1.03 bar"}},
		{"a range upside down", func(p *Plan) { p.Emitters[0].Highest = 103000 },
			[]string{"emitters.1.highest: Emitter 1: highest pressure must be more than the lowest pressure, 1.03 bar"}},
		{"a compensating emitter's exponent", func(p *Plan) { p.Emitters[0].Exponent = 0.5 },
			[]string{"emitters.1.exponent: Emitter 1: exponent must be from 0 to 0.2 for a compensating emitter"}},
		{"another emitter's exponent", func(p *Plan) { p.Emitters[0].Kind = NonCompensating },
			[]string{"emitters.1.exponent: Emitter 1: exponent must be from 0.3 to 1 for an emitter that is not compensating"}},
		{"an exponent beyond all ranges is reported once", func(p *Plan) { p.Emitters[0].Exponent = 1.5 },
			[]string{"emitters.1.exponent: Emitter 1: exponent must be from 0 to 1"}},
		{"an emitter that is not described", func(p *Plan) { p.Rows[2].Emitter = 1 },
			[]string{"rows.3.emitter: Row 3: emitter must be emitter 1, the only one described"}},
		{"an emitter beyond two", func(p *Plan) { p.Rows[2].Emitter = 3; p.Emitters = append(p.Emitters, p.Emitters[0]) },
			[]string{"rows.3.emitter: Row 3: emitter must be one of the 2 emitters described"}},
		{"more to a slab than in the row", func(p *Plan) { p.Rows[0].Plants = 2 },
			[]string{"rows.1.per-piece: Row 1: plants in one slab, bag or bucket must not exceed the number of plants, 2"}},
		{"tubing that emitters cannot be punched into", func(p *Plan) { p.Rows[0].Tube = tube25 },
			[]string{"rows.1.tube: Row 1: tubing must be a size that emitters can be punched into"}},
		{"too many plants in all", func(p *Plan) {
			SectionNamed("rows").Resize(p, 11)
			for i := range p.Rows {
				p.Rows[i].Plants = 400
			}
		}, []string{"rows: Rows must hold at most 4000 plants in all, not 4400"}},
		{"as many plants as may be", func(p *Plan) {
			SectionNamed("rows").Resize(p, 10)
			for i := range p.Rows {
				p.Rows[i].Plants = 400
			}
		}, nil},
	} {
		p := Default()
		c.change(p)
		if got := texts(p.Check()); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s:\n got %q\nwant %q", c.name, got, c.want)
		}
	}
}

func TestAnErrorSaysWhatStoodThere(t *testing.T) {
	p := Default()
	p.Units = unit.US
	p.Rows[1].Spacing = 30.48
	p.Rows[1].Medium = 9
	for i, want := range []string{"100", ""} {
		if got := p.Check()[i].Typed; got != want {
			t.Errorf("error %d: typed %q, want %q", i, got, want)
		}
	}
}

// Limits that another field sets are told in one way.
func TestNoLimitIsAtMostAnother(t *testing.T) {
	p := Default()
	p.Supply.Kind = PumpPoints
	p.Timer.DrainLow, p.Timer.DrainHot = p.Timer.Drain+0.1, p.Timer.Drain+0.1
	p.Timer.LastHot = p.Timer.Last + 600
	got := texts(p.Check())
	want := []string{
		"timer.drain-low: Timer: share to drain on a dull day, and while plants root in must not exceed that of a typical day, 20 %",
		"timer.last-hot: Timer: last shot before sunset on a hot day must not exceed that of other days, 2.5 h",
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}
