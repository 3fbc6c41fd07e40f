package plan

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
)

func TestExamplesAreSound(t *testing.T) {
	keys := map[string]bool{}
	for _, x := range Examples() {
		for _, e := range x.Plan.Check() {
			t.Errorf("%s: %v", x.Key, e)
		}
		if x.Key == "" || keys[x.Key] || x.Title != x.Plan.Name || x.Summary == "" {
			t.Errorf("%q, %q, %q: a part is missing or taken", x.Key, x.Title, x.Summary)
		}
		keys[x.Key] = true
		width := 0.0
		for i := range x.Plan.Rows {
			width += x.Plan.Rows[i].Gap
			if l := x.Plan.Rows[i].Length(); l > x.Plan.Place.Length {
				t.Errorf("%s: row %d is %g m long in a place of %g m", x.Key, i+1, l, x.Plan.Place.Length)
			}
		}
		if width > x.Plan.Place.Width {
			t.Errorf("%s: rows %g m wide in a place of %g m", x.Key, width, x.Plan.Place.Width)
		}
	}
	if !reflect.DeepEqual(Examples()[0].Plan, Default()) {
		t.Error("the first example is not the default plan")
	}
}

func TestMillraceTunnel(t *testing.T) {
	p := Default()
	plants := 0
	var crops []string
	for i := range p.Rows {
		plants += p.Rows[i].Plants
		crops = append(crops, string(catalogue.Crops[p.Rows[i].Crop].Name))
		if l := p.Rows[i].Length(); math.Abs(l-10) > 0.05 {
			t.Errorf("row %d is %g m long, want about 10 m", i+1, l)
		}
	}
	if plants != 120 {
		t.Errorf("%d plants, want 120", plants)
	}
	if want := []string{"sweet pepper", "sweet pepper", "tomato", "cucumber"}; !reflect.DeepEqual(crops, want) {
		t.Errorf("crops %q, want %q", crops, want)
	}
	// The points of the pump in L/min and m.
	want := []Point{{0, 34}, {20, 29}, {40, 19}, {50, 12}}
	for i, q := range p.Supply.Points {
		if math.Abs(q.Flow*60000-want[i].Flow) > 1e-9 || q.Head != want[i].Head {
			t.Errorf("point %d is %g L/min at %g m, want %v", i+1, q.Flow*60000, q.Head, want[i])
		}
	}
	e := p.Emitters[0]
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"lead", p.Runs[0].Length, 8},
		{"rise", p.Runs[0].Rise, 0.4},
		{"lead bore", catalogue.Tubes[p.Runs[0].Tube].Bore, 0.0204},
		{"header outside", catalogue.Tubes[p.Header.Tube].Outside, 0.025},
		{"row bore", catalogue.Tubes[p.Rows[0].Tube].Bore, 0.0136},
		{"tank", p.Supply.Tank, 0.4},
		{"emitter flow in L/h", e.Flow * 3.6e6, 2},
		{"opens", e.Opens, 70000},
		{"closes", e.Closes, 50000},
		{"lowest", e.Lowest, 103000},
		{"highest", e.Highest, 400000},
		{"exponent", e.Exponent, 0},
		{"variation", e.CV, 0.03},
		{"passage", e.Passage, 0.001},
		{"water", p.Place.Water, 20},
		{"filter opening", p.Filter.Opening, 130e-6},
		{"clean loss", p.Filter.Clean, 7000},
		{"rated flow in L/min", p.Filter.Rated * 60000, 20},
		{"fouling", p.Filter.Fouling, 25000},
		{"reserve", p.Limits.Reserve, 1},
		{"evenness", p.Limits.Evenness, 0.9},
		{"speed", p.Limits.Speed, 1.5},
		{"spacing", p.Rows[1].Spacing, 0.333},
		{"first", p.Rows[1].First, 0.167},
		{"gap", p.Rows[1].Gap, 1.1},
	} {
		if math.Abs(c.got-c.want) > 1e-12*math.Abs(c.want) {
			t.Errorf("%s is %g, want %g", c.name, c.got, c.want)
		}
	}
}

func TestCloneSharesNothing(t *testing.T) {
	p := Default()
	c := p.Clone()
	if !reflect.DeepEqual(p, c) {
		t.Fatal("the clone differs")
	}
	for _, f := range Fields() {
		for i := range SectionNamed(f.Section).Records(c) {
			if f.Type == Text {
				*f.Text(c, i) = "another"
				continue
			}
			f.SetValue(c, i, f.Value(c, i)+1)
		}
	}
	if !reflect.DeepEqual(p, Default()) {
		t.Error("a change of the clone changed the plan")
	}
}

// What is said of an example stands in a list that is drawn once, for either system of units: it
// has no amount in one of them.
func TestExamplesAreToldWithoutUnits(t *testing.T) {
	for _, e := range Examples() {
		if said := words.Say(e.Summary); said == "" || strings.ContainsAny(said, "0123456789%") || strings.Contains(said, "metre") || strings.Contains(said, "feet") {
			t.Errorf("%s: %s", e.Key, said)
		}
	}
}
