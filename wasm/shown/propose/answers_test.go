package propose

import (
	"math/rand/v2"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
)

// typed is a draft of names and texts.
func typed(pairs ...string) plan.Draft {
	d := plan.Draft{}
	for i := 0; i < len(pairs); i += 2 {
		d.Set(pairs[i], pairs[i+1])
	}
	return d
}

var balcony = []string{"ask.crop.1", "tomato", "ask.plants.1", "8", "ask.medium", "pot", "ask.length", "4,5", "ask.width", "1.2",
	"ask.supply", "pump", "ask.shut-off", "3", "ask.max-flow", "13.3", "ask.distance", "3", "ask.rise", "0"}

func TestReadTakesWhatIsTyped(t *testing.T) {
	a, errs, left := Read(typed(balcony...))
	if len(errs) > 0 || left != 0 {
		t.Fatalf("%v, %d questions left", errs, left)
	}
	u := unit.Of(unit.Flow, unit.Metric)
	if len(a.Crops) != 1 || a.Crops[0] != (Count{1, 8}) || a.Medium != plan.Pot || a.Length != 4.5 || a.Width != 1.2 ||
		a.Supply != plan.PumpTwo || a.ShutOff != 3 || a.MaxFlow != u.ToInner(13.3) || a.Power != plan.Unset || a.Distance != 3 || a.Rise != 0 {
		t.Errorf("%+v", a)
	}
	// Figures of another supply stay in the form and are no answers.
	a, errs, _ = Read(typed(append(balcony, "ask.static", "nonsense", "ask.tank-height", "900")...))
	if len(errs) > 0 || a.Static != plan.Unset || a.TankHeight != plan.Unset {
		t.Errorf("%v, %+v", errs, a)
	}
	a, errs, _ = Read(typed("units", "us", "ask.length", "20", "ask.width", "3 m"))
	if want := unit.Of(unit.Length, unit.US).ToInner(20); len(errs) > 0 || a.Units != unit.US || a.Length != want || a.Width != 3 {
		t.Errorf("%v, %+v", errs, a)
	}
}

// What is wrong names its field, what was wrong and what is allowed; what is missing
// is wrong only where the rest of its question is there.
func TestReadSaysWhatIsWrong(t *testing.T) {
	for _, c := range []struct {
		change []string
		errs   []string // path and a part of the sentence
		left   int
	}{
		{[]string{"ask.length", "400"}, []string{"ask.length: Length of the place must be from 0.5 to 300 m"}, 1},
		{[]string{"ask.length", "long"}, []string{"ask.length: Length of the place must be a number"}, 1},
		{[]string{"ask.length", ""}, []string{"ask.length: Length of the place"}, 1},
		{[]string{"ask.width", ""}, []string{"ask.width: Width of the place"}, 1},
		{[]string{"ask.length", "", "ask.width", ""}, nil, 1},
		{[]string{"ask.plants.1", "0"}, []string{"ask.plants.1: Crop 1: how many plants must be from 1 to 4000"}, 1},
		{[]string{"ask.plants.1", "2.5"}, []string{"ask.plants.1: Crop 1: how many plants must be a whole number"}, 1},
		{[]string{"ask.plants.1", ""}, nil, 1},
		{[]string{"ask.crop.1", ""}, []string{"ask.crop.1: Crop 1: which crop"}, 1},
		{[]string{"ask.crop.2", "cucumber"}, []string{"ask.plants.2: Crop 2: how many plants"}, 1},
		{[]string{"ask.crop.2", "", "ask.plants.2", ""}, nil, 0},
		{[]string{"ask.crop.1", "triffid"}, []string{"ask.crop.1: Crop 1: which crop must be one of the choices"}, 1},
		{[]string{"ask.supply", "a spring"}, []string{"ask.supply: What drives the water must be one of the choices"}, 1},
		{[]string{"ask.supply", ""}, nil, 1},
		{[]string{"ask.supply", "pump-wanted"}, nil, 0},
		{[]string{"ask.supply", "mains"}, nil, 0},
		{[]string{"ask.supply", "gravity"}, []string{"ask.tank-height: Height of the water above the rows"}, 1},
		{[]string{"ask.supply", "gravity", "ask.tank-height", "1.6"}, nil, 0},
		{[]string{"ask.supply", "gravity", "ask.tank-height", "31"}, []string{"ask.tank-height: Height of the water above the rows must be from 0.1 to 30 m"}, 1},
		{[]string{"ask.shut-off", ""}, []string{"ask.shut-off: Greatest head"}, 1},
		{[]string{"ask.max-flow", ""}, []string{"ask.max-flow: Greatest flow"}, 1},
		{[]string{"ask.shut-off", "", "ask.max-flow", ""}, []string{"ask.shut-off: Greatest head must stand here, and the greatest flow below it, or the power"}, 1},
		{[]string{"ask.shut-off", "", "ask.max-flow", "", "ask.power", "1/2 hp"}, nil, 0},
		{[]string{"ask.rise", ""}, nil, 0},
		{[]string{"ask.distance", ""}, nil, 1},
		{[]string{"name", strings.Repeat("n", 61)}, []string{"name: Name of the plan must be at most 60"}, 0},
	} {
		a, errs, left := Read(typed(append(append([]string{}, balcony...), c.change...)...))
		if left != c.left || len(errs) != len(c.errs) {
			t.Errorf("%v: %d left, want %d: %v", c.change, left, c.left, errs)
			continue
		}
		for i, e := range errs {
			if got := e.Path + ": " + e.Text; !strings.HasPrefix(got, c.errs[i]) {
				t.Errorf("%v: %s, want %s", c.change, got, c.errs[i])
			}
		}
		// Whatever is wrong, what is left is enough for a plan.
		if p, _ := Of(work.New(units, nil), a, Known{}); len(p.Check()) > 0 {
			t.Errorf("%v: %v", c.change, p.Check())
		}
	}
	if _, errs, left := Read(plan.Draft{}); len(errs) > 0 || left != Five {
		t.Errorf("nothing typed: %v, %d questions left", errs, left)
	}
}

// What is written is read again, in both systems, and so is what an answered plan
// would hold: the same questions lead to the same plan.
func TestAnswersComeBack(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for range 60 {
		a := some(r)
		if a.Supply == plan.GravityTank {
			a.Rise = plan.Unset
			if a.TankHeight == plan.Unset {
				a.TankHeight = 1.5
			}
		}
		if a.Supply == plan.PumpTwo && a.ShutOff == plan.Unset && a.Power == plan.Unset {
			a.Power = 370
		}
		p, o := Of(work.New(units, nil), a, Known{})
		d := plan.Draft{}
		d.Set("units", plan.FieldNamed("", "units").Options[a.Units].Code)
		a.Write(&d)
		back, errs, left := Read(d)
		if len(errs) > 0 || left > 1 { // the distance may be left empty
			t.Fatalf("%+v: %v, %d left", a, errs, left)
		}
		if q, _ := Of(work.New(units, nil), back, Known{}); !alike(p, q) {
			t.Errorf("%+v came back as %+v", a, back)
		}
		again := AnswersOf(p)
		if again.Length != p.Place.Length || again.Supply != a.Supply || total(again.Crops) != total(o.Planned) || again.Medium != a.Medium {
			t.Errorf("%+v\nof its plan: %+v", a, again)
		}
		for what, v := range map[string][2]float64{"static": {a.Static, again.Static}, "tap flow": {a.TapFlow, again.TapFlow}} {
			if a.Supply == plan.Mains && v[0] != v[1] {
				t.Errorf("%s: %v was answered, and would be %v", what, v[0], v[1])
			}
		}
		if q, _ := Of(work.New(units, nil), again, Known{}); total(AnswersOf(q).Crops) != total(o.Planned) && !o.None {
			t.Errorf("%+v: %d plants, then %d", a, total(o.Planned), total(AnswersOf(q).Crops))
		}
	}
	for _, x := range plan.Examples() {
		a := AnswersOf(x.Plan)
		d := plan.Draft{}
		d.Set("units", plan.FieldNamed("", "units").Options[a.Units].Code)
		a.Write(&d)
		if _, errs, left := Read(d); len(errs) > 0 || left > 0 {
			t.Errorf("%s: %v, %d left", x.Key, errs, left)
		}
	}
}

// alike says whether two plans are the same to what a form types.
func alike(p, q *plan.Plan) bool { return plan.DraftOf(p).Encode() == plan.DraftOf(q).Encode() }

func TestUnitsOfAnswers(t *testing.T) {
	d := typed(append(balcony, "units", "us", plan.UnitsWas, "metric", "ask.power", "1/2 hp")...)
	SwitchUnits(&d)
	for name, want := range map[string]string{"ask.length": "14.76", "ask.shut-off": "9.8", "ask.plants.1": "8", "ask.power": "1/2 hp", "ask.supply": "pump"} {
		if got := d.Get(name); !strings.HasPrefix(got, want) {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	d = typed(append(balcony, "units", "us", plan.UnitsWas, "us")...)
	if SwitchUnits(&d); d.Get("ask.length") != "4,5" {
		t.Errorf("no units were switched: %q", d.Get("ask.length"))
	}
}

func TestAnotherCrop(t *testing.T) {
	d := typed(balcony...)
	for n := 2; n <= MaxCrops; n++ {
		if got := More(&d); got != n || Lines(d) != n {
			t.Errorf("line %d, want %d", got, n)
		}
	}
	if More(&d) != 0 || Lines(d) != MaxCrops {
		t.Error("there are more lines than there may be")
	}
	list, _ := Drawn(d)
	names := map[string]bool{}
	for _, q := range list {
		if names[q.Name] {
			t.Errorf("%s is asked twice", q.Name)
		}
		names[q.Name] = true
	}
	// Before a first result nobody is asked more than twenty things.
	if list, _ := Drawn(typed()); len(list) > 20 {
		t.Errorf("%d inputs", len(list))
	}
}
