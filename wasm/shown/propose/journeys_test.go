package propose

import (
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/catalogue"
)

// journey reads what somebody types, and proposes.
func journey(t *testing.T, pairs ...string) (Answers, *plan.Plan, Outcome) {
	t.Helper()
	a, errs, left := Read(typed(pairs...))
	if len(errs) > 0 || left > 0 {
		t.Fatalf("%v, %d questions left", errs, left)
	}
	p, o := Of(work.New(units, nil), a, Known{})
	whole(t, strings.Join(pairs, " "), a, p, o)
	return a, p, o
}

// Ten tomatoes and ten sweet peppers in buckets, 6 m by 3 m, at a tap 8 m away: one
// row each, as far apart as the crop table has them, of compensating emitters
// behind a regulator that their tubing can bear.
func TestATapAndTwentyPlants(t *testing.T) {
	_, p, o := journey(t, "ask.crop.1", "tomato", "ask.plants.1", "10", "ask.crop.2", "sweet pepper", "ask.plants.2", "10",
		"ask.medium", "bucket", "ask.length", "6", "ask.width", "3", "ask.supply", "mains", "ask.distance", "8", "ask.rise", "0.4")
	if o.Verdict != sheet.Yes || o.Plain || len(o.Said(p)) != 1 { // that the dates are assumed
		t.Errorf("%+v, %q", o, o.Said(p))
	}
	if len(p.Rows) != 2 || p.Rows[0].Plants != 10 || p.Rows[1].Plants != 10 || p.Rows[0].Spacing != 0.4 || p.Rows[1].Spacing != 0.333 {
		t.Errorf("rows %+v", p.Rows)
	}
	if s := &p.Supply; s.Regulator <= 1.03e5 || s.Regulator > 2.44e5 || s.Devices <= 0 || p.Filter.Present == 0 {
		t.Errorf("supply %+v", s)
	}
	if p.Runs[0].Length != 8 || p.Runs[0].Rise != 0.4 || p.Header.Layout != plan.HeaderAndRows {
		t.Errorf("%+v", p.Runs)
	}
}

// A pump of 12 V whose label says 800 L/h and 3 m opens no compensating emitter.
func TestABalconyAndASmallPump(t *testing.T) {
	_, p, o := journey(t, balcony...)
	if o.Verdict != sheet.Yes || !o.Plain || p.Emitters[0].Kind != plan.NonCompensating || len(p.Rows) != 1 || p.Rows[0].Plants != 8 || p.Header.Layout != plan.OneLine {
		t.Errorf("%+v, rows %+v", o, p.Rows)
	}
	if said := strings.Join(o.Said(p), " "); !strings.Contains(said, "need more head than there can be") {
		t.Errorf("%q", said)
	}
}

// A label whose figures cannot all be so is told of, and one whose power fits is not.
func TestALabelThatCannotBe(t *testing.T) {
	for power, told := range map[string]bool{"": false, "25": false, "2 W": true} {
		_, p, _ := journey(t, append(slices.Clone(balcony), "ask.max-flow", "60 L/min", "ask.power", power)...)
		if got := slices.ContainsFunc(sheet.Answer(p).Findings, func(f sheet.Finding) bool { return strings.Contains(f.Kind.String(), "label") }); got != told {
			t.Errorf("power %q: told of %v", power, got)
		}
		if power == "" && p.Supply.Label != plan.Unset {
			t.Errorf("a label of %v W that nobody typed", p.Supply.Label)
		}
	}
}

// A label with power alone leads on to a pump that gives what is asked.
func TestHalfAHorsepower(t *testing.T) {
	a, p, o := journey(t, append(slices.Clone(balcony), "ask.shut-off", "", "ask.max-flow", "", "ask.power", "1/2 hp")...)
	if p.Supply.Kind != plan.PumpPower || p.Supply.Power != unit.Of(unit.Power, unit.US).ToInner(0.5) || a.Power != p.Supply.Power {
		t.Errorf("%+v", p.Supply)
	}
	if p.Emitters[0].Kind != plan.Compensating || o.Plain || o.Verdict != sheet.Yes {
		t.Errorf("%+v", o)
	}
	if w := sheet.Answer(p).Wanted; w == nil || !w.Does || w.Least < 11.5 || w.Most < w.Least {
		t.Errorf("a pump that gives %+v is asked for", w)
	}
}

// A thousand plants in US units on ground that climbs: zones by the search.
func TestAThousandPlants(t *testing.T) {
	pairs := []string{"units", "us", "ask.crop.1", "tomato", "ask.plants.1", "600", "ask.crop.2", "sweet pepper", "ask.plants.2", "400",
		"ask.medium", "grow-bag", "ask.length", "131", "ask.width", "65", "ask.supply", "mains", "ask.distance", "100 ft", "ask.rise", "6"}
	_, p, o := journey(t, pairs...)
	if o.Verdict != sheet.Yes || total(o.Planned) != 1000 || len(p.Zones()) < 2 || p.Timer.Channels != len(p.Zones()) {
		t.Errorf("%+v, %d zones, %d valves", o, len(p.Zones()), p.Timer.Channels)
	}
	for i := range p.Rows {
		if catalogue.Tubes[p.Rows[i].Tube].Metric() {
			t.Errorf("row %d is of metric tubing", i+1)
		}
	}
	// With almost no work done there is a plan all the same, and it says so.
	a, _, _ := Read(typed(pairs...))
	q, cut := Of(work.New(1000, nil), a, Known{})
	if errs := q.Check(); len(errs) > 0 || !cut.Cut || !strings.Contains(strings.Join(cut.Said(q), " "), "There may be a better plan") {
		t.Errorf("%v, %+v", errs, cut)
	}
	if got := sheet.Answer(q).Verdict; got != cut.Verdict {
		t.Errorf("verdict %d, and is said to be %d", got, cut.Verdict)
	}
	gone := work.New(units, func() bool { return true })
	if q, _ := Of(gone, a, Known{}); len(q.Check()) > 0 {
		t.Error("nobody waits, and there is no plan")
	}
}

// A tank that stands too low for any emitter is told how much higher to stand, and
// at that height the answer is Yes.
func TestATankThatStandsTooLow(t *testing.T) {
	pairs := append(slices.Clone(balcony), "ask.supply", "gravity", "ask.tank-height", "0.3")
	a, _, o := journey(t, pairs...)
	if o.Verdict == sheet.Yes || len(o.Fixes) == 0 || o.Fixes[0].Kind != sheet.RaiseTank || !o.Fixes[0].Solves {
		t.Fatalf("%+v", o)
	}
	a.TankHeight += o.Fixes[0].Value
	if _, o := Of(work.New(units, nil), a, Known{}); o.Verdict != sheet.Yes {
		t.Errorf("raised by %v: %+v", o.Fixes, o)
	}
}

// What finds no place is counted, and what was narrowed for it is named.
func TestTooManyPlants(t *testing.T) {
	for _, c := range []struct {
		plants, length, width string
		n                     int
		said                  []string
		not                   string
	}{
		// 4.5 m less the door's 0.8 and the margin's 0.1 holds 9 pots of 0.25 m, 0.4 m
		// apart: 3.35 / 0.4 + 1; and 1.2 m less two margins two lines 0.85 m apart.
		{"9", "4.5", "1.2", 9, nil, "find"},
		{"18", "4.5", "1.2", 18, []string{"So many find a place only with paths of 0.45\u00a0m between rows instead of 0.6\u00a0m, 0.05\u00a0m free at the walls and a door of 0.6\u00a0m."}, "of 18"},
		{"40", "4.5", "1.2", 20, []string{"20 of 40 plants find a place, and these are planned: 20 tomato.", "only with paths of 0.45\u00a0m"}, ""},
		{"1", "0.5", "0.5", 1, []string{"The place has no room for a path or a door"}, "only with"},
		{"9", "0.5", "0.5", 2, []string{"2 of 9 plants find a place"}, "only with"},
	} {
		_, p, o := journey(t, append(slices.Clone(balcony), "ask.plants.1", c.plants, "ask.length", c.length, "ask.width", c.width)...)
		said := strings.Join(o.Said(p), " ")
		if total(o.Planned) != c.n {
			t.Errorf("%s plants in %s by %s: %d planned", c.plants, c.length, c.width, total(o.Planned))
		}
		for _, s := range c.said {
			if !strings.Contains(said, s) {
				t.Errorf("%s plants in %s by %s: nothing says %q, but %q", c.plants, c.length, c.width, s, said)
			}
		}
		if c.not != "" && strings.Contains(said, c.not) {
			t.Errorf("%s plants in %s by %s: %q", c.plants, c.length, c.width, said)
		}
	}
	_, p, o := journey(t, append(slices.Clone(balcony), "ask.length", "0.5", "ask.width", "0.5", "ask.medium", "coco-slab")...)
	if said := strings.Join(o.Said(p), " "); !o.None || !strings.Contains(said, "No plant finds a place there.") || strings.Contains(said, "8 plants") {
		t.Errorf("%q", said)
	}
}

// What was typed is so marked, what the crop table says is looked up, and whatever
// else stands in the plan is assumed: also what equals what somebody might type.
func TestHowValuesCameToBe(t *testing.T) {
	_, p, _ := journey(t, "name", "Yard", "ask.crop.1", "tomato", "ask.plants.1", "10", "ask.crop.2", "cucumber", "ask.plants.2", "4",
		"ask.medium", "coco-slab", "ask.length", "12", "ask.width", "3", "ask.supply", "mains", "ask.static", "4", "ask.distance", "8")
	want := map[string]plan.Origin{"units": plan.Typed, "name": plan.Typed, "place.length": plan.Typed, "place.width": plan.Typed, "supply.kind": plan.Typed,
		"supply.static": plan.Typed, "runs.1.length": plan.Typed, "rows.1.spacing": plan.LookedUp, "rows.1.per-piece": plan.LookedUp, "rows.2.per-piece": plan.LookedUp,
		"rows.1.crop": plan.Typed, "rows.2.crop": plan.Typed, "rows.1.plants": plan.Typed, "rows.2.plants": plan.Typed, "rows.1.medium": plan.Typed, "rows.2.medium": plan.Typed}
	if len(p.Rows) != 2 || p.Rows[1].Spacing != 0.5 {
		t.Fatalf("rows %+v", p.Rows) // two cucumbers to a slab of 1 m stand further apart than the table has them
	}
	for _, s := range plan.Sections() {
		for i := range s.Records(p) {
			for _, f := range s.Fields() {
				path := plan.Path(f, i)
				is := want[path]
				if is == plan.ByRule {
					is = plan.Assumed
				}
				if got := p.Origin(f, i); got != is {
					t.Errorf("%s is %s, want %s", path, got.Code(), is.Code())
				}
				delete(want, path)
			}
		}
	}
	for path := range want {
		t.Errorf("there is no %s", path)
	}
}

// A supply line that has to be longer than the way, since the rows are higher than
// they are far, is nobody's figure.
func TestALineThatClimbsIsAsLong(t *testing.T) {
	_, p, _ := journey(t, append(slices.Clone(balcony), "ask.distance", "1", "ask.rise", "1.5")...)
	if p.Runs[0].Length != 1.5 || p.Origin(plan.FieldNamed("runs", "length"), 0) != plan.Assumed || p.Origin(plan.FieldNamed("runs", "rise"), 0) != plan.Typed {
		t.Errorf("%+v", p.Runs[0])
	}
}

// Where not all find a place, each crop has its share of what does: three to one.
func TestCropsKeepTheirShares(t *testing.T) {
	_, _, o := journey(t, "ask.crop.1", "tomato", "ask.plants.1", "90", "ask.crop.2", "sweet pepper", "ask.plants.2", "30",
		"ask.medium", "bucket", "ask.length", "6", "ask.width", "3", "ask.supply", "mains", "ask.distance", "8")
	if n := total(o.Planned); len(o.Planned) != 2 || n >= 120 || n < 20 {
		t.Fatalf("%+v", o)
	}
	if a, b := o.Planned[0].Plants, o.Planned[1].Plants; a < 3*b-4 || a > 3*b+4 {
		t.Errorf("%d and %d of 90 and 30", a, b)
	}
}

// 31 tomatoes take eleven slabs of three, in two rows of six and five, since eight
// metres less the door and a strip hold six, 1.2 m apart; and a row is as far from
// the next as the floor carries 2.7 to the square metre, 1/(2.7 x 0.4) m.
func TestRowsOfACropAreAlike(t *testing.T) {
	_, p, o := journey(t, "ask.crop.1", "tomato", "ask.plants.1", "31", "ask.medium", "coco-slab",
		"ask.length", "8", "ask.width", "9", "ask.supply", "mains", "ask.distance", "8")
	if len(p.Rows) != 2 || p.Rows[0].Plants != 18 || p.Rows[1].Plants != 13 {
		t.Fatalf("rows %+v", p.Rows)
	}
	if p.Rows[1].Gap != 0.925 {
		t.Errorf("the rows are %v apart", p.Rows[1].Gap)
	}
	if got, want := p.Rows[0].Gap, (9-0.925)/2; got > want || got < want-1e-3 {
		t.Errorf("row 1 stands %v from the wall, want %v", got, want)
	}
	if o.Room != o.Usual {
		t.Errorf("%+v", o.Room)
	}
}

// A regulator is set half-way between what the emitters need, which is 1.03 bar, a
// foul filter's 0.32 bar, 1 m of margin and 0.4 m of rise, and what drip tubing of
// 4 bar may carry in the sun: 1.49 and 2.48 bar, of which tenths are set.
func TestTheRegulatorOfATap(t *testing.T) {
	_, p, _ := journey(t, "ask.crop.1", "tomato", "ask.plants.1", "10", "ask.medium", "bucket", "ask.length", "6", "ask.width", "3",
		"ask.supply", "mains", "ask.static", "4", "ask.distance", "8", "ask.rise", "0.4")
	if got := p.Supply.Regulator; got < 1.9e5-1 || got > 1.9e5+1 {
		t.Errorf("set to %v Pa", got)
	}
	_, p, _ = journey(t, "ask.crop.1", "tomato", "ask.plants.1", "10", "ask.medium", "bucket", "ask.length", "6", "ask.width", "3",
		"ask.supply", "mains", "ask.static", "2", "ask.distance", "8", "ask.rise", "0.4")
	if p.Supply.Regulator != 0 {
		t.Error("tubing is kept from a pressure that it can bear")
	}
}

// In a very long line no crop begins where no row of a plan may, and no row has more
// plants than one may.
func TestVeryLongLines(t *testing.T) {
	_, p, o := journey(t, "ask.crop.1", "tomato", "ask.plants.1", "150", "ask.crop.2", "sweet pepper", "ask.plants.2", "50",
		"ask.medium", "bucket", "ask.length", "100", "ask.width", "0.6", "ask.supply", "pump-wanted", "ask.distance", "8")
	if total(o.Planned) == 200 || len(p.Rows) < 1 {
		t.Errorf("%+v", o)
	}
	_, _, o = journey(t, "ask.crop.1", "strawberry", "ask.plants.1", "900", "ask.medium", "coco-slab",
		"ask.length", "200", "ask.width", "0.5", "ask.supply", "pump-wanted", "ask.distance", "8")
	if total(o.Planned) != 400 {
		t.Errorf("%+v", o)
	}
}

func TestPlainEmittersInUSUnits(t *testing.T) {
	_, p, o := journey(t, "units", "us", "ask.crop.1", "tomato", "ask.plants.1", "8", "ask.medium", "pot", "ask.length", "15", "ask.width", "4",
		"ask.supply", "gravity", "ask.tank-height", "5", "ask.distance", "9")
	d := plan.DraftOf(p)
	if !o.Plain || d.Get("limits.reserve") != "1.5" || d.Get("place.path") != "2" || d.Get("place.door") != "2.5" || d.Get("place.margin") != "0.3" {
		t.Errorf("%+v, a margin of %s ft", o, d.Get("limits.reserve"))
	}
}
