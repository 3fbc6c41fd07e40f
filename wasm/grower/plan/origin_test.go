package plan

import (
	"reflect"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
)

// at is the field and the record of a path.
func at(t *testing.T, path string) (*Field, int) {
	t.Helper()
	f, i := fieldAt(path)
	if f == nil {
		t.Fatalf("%s is no path", path)
	}
	return f, i
}

// originsAt are what the values at some paths are said to be.
func originsAt(t *testing.T, p *Plan, paths ...string) string {
	t.Helper()
	var words []string
	for _, path := range paths {
		f, i := at(t, path)
		words = append(words, p.Origin(f, i).Code())
	}
	return strings.Join(words, " ")
}

func TestPathsAreFoundAgain(t *testing.T) {
	for _, s := range Sections() {
		for i := range max(s.Max, 1) {
			for _, f := range s.Fields() {
				if g, k := fieldAt(Path(f, i)); g != f || k != i {
					t.Fatalf("%s is found as %v, record %d", Path(f, i), g, k)
				}
				if FieldOfAll(f.PathOfAll()) != f {
					t.Fatalf("%s is not found", f.PathOfAll())
				}
			}
		}
	}
	for _, path := range []string{"", ".", "rows", "rows.", "rows.0.spacing", "rows.01.spacing", "rows.+1.spacing", "rows.61.spacing", "rows.1.", "rows.spacing", "place.1.length", ".name", "nothing", "rows.1.spacing.x"} {
		if f, _ := fieldAt(path); f != nil {
			t.Errorf("%q is found as %s", path, Path(f, 0))
		}
	}
}

// Of a plan of which nothing is known, what is its default is assumed, and all
// else is typed.
func TestByRule(t *testing.T) {
	p := Default()
	if got, want := originsAt(t, p, "name", "units", "place.water", "runs.1.rise", "runs.1.length", "rows.1.gap", "rows.2.gap", "points.2.head", "rows.3.crop"), "typed assumed assumed typed assumed typed assumed typed typed"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	p.Propose()
	if got, want := originsAt(t, p, "name", "runs.1.rise", "runs.1.length"), "assumed assumed assumed"; got != want {
		t.Errorf("proposed: %s, want %s", got, want)
	}
}

func TestOriginsAreKept(t *testing.T) {
	p := Default()
	f, _ := at(t, "rows.1.spacing")
	rise, _ := at(t, "runs.1.rise")
	p.SetOrigin(f, 2, Measured)
	p.SetOrigin(rise, 0, LookedUp)
	paths := []string{"rows.1.spacing", "rows.2.spacing", "rows.3.spacing", "rows.4.spacing", "runs.1.rise"}
	if got, want := originsAt(t, p, paths...), "assumed assumed measured assumed looked-up"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	if got, want := p.How.String(), "runs.rise=l;rows.spacing=--m-"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	c := p.Clone()
	c.SetOrigin(f, 2, Typed)
	c.SetOrigin(rise, 0, ByRule)
	if got, want := originsAt(t, p, paths...), "assumed assumed measured assumed looked-up"; got != want {
		t.Errorf("a change of the copy shows: %s, want %s", got, want)
	}
	if got, want := originsAt(t, c, paths...), "assumed assumed typed assumed typed"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	// What is taken back leaves nothing.
	p.SetOrigin(f, 2, ByRule)
	p.SetOrigin(rise, 0, ByRule)
	if !reflect.DeepEqual(p, Default()) {
		t.Errorf("%v is left", p.How)
	}
	// New records are like the last, and what is said of records goes with them.
	rows := SectionNamed("rows")
	p.SetOrigin(f, 3, Measured)
	rows.Resize(p, 6)
	if got, want := p.How.String(), "rows.spacing=---m"; got != want || p.Origin(f, 5) != Measured {
		t.Errorf("%q, want %q, and %v", got, want, p.Origin(f, 5))
	}
	rows.Resize(p, 3)
	rows.Resize(p, 6)
	if !reflect.DeepEqual(p.How, History{}) {
		t.Errorf("of rows that are gone stays %q", p.How.String())
	}
}

// What a form tells of values, beside their text.
func TestFormsTellOrigins(t *testing.T) {
	for _, c := range []struct {
		form, paths, want string
	}{
		{"touched=rows.2.spacing", "rows.1.spacing rows.2.spacing rows.3.spacing", "assumed typed assumed"},
		{"touched=rows.2.spacing+place.water+nothing", "rows.2.spacing place.water", "typed typed"},
		{"how=rows.spacing%3Dm", "rows.1.spacing rows.4.spacing", "measured measured"},
		{"how=rows.spacing%3Dm&touched=rows.2.spacing", "rows.1.spacing rows.2.spacing rows.3.spacing", "measured typed measured"},
		{"how=rows.spacing%3Dm&touched=rows.2.spacing&how.rows.2.spacing=measured", "rows.1.spacing rows.2.spacing", "measured measured"},
		{"how=rows.spacing%3Dm&how.rows.2.spacing=typed", "rows.1.spacing rows.2.spacing", "measured typed"},
		{"how.rows.2.spacing=looked-up&touched=rows.2.spacing", "rows.2.spacing", "typed"},
		{"how.rows.2.spacing=assumed&how.place.water=measured", "rows.2.spacing place.water", "assumed measured"},
		{"how=*%3Da%3Brows.spacing%3Datm", "rows.1.spacing rows.2.spacing rows.3.spacing rows.4.spacing runs.1.rise", "assumed typed measured measured assumed"},
		{"how=rows.spacing%3D-t", "rows.1.spacing rows.2.spacing", "assumed typed"},
		{"how=rows.spacing%3Dq%3Brows.%3Bplace.water%3D%3B%3D%3B%3Dt%3Brows.1.spacing%3Dt", "rows.1.spacing place.water", "assumed assumed"},
		{"how.rows.2.spacing=guessed&how.=typed&how.rows=typed", "rows.2.spacing", "assumed"},
		// What is done to a row is done to what is known of it.
		{"how=rows.spacing%3Datm&action=remove-row.1", "rows.1.spacing rows.2.spacing rows.3.spacing", "typed measured measured"},
		{"how=rows.spacing%3Datm&action=copy-row.2", "rows.1.spacing rows.2.spacing rows.3.spacing rows.4.spacing rows.5.spacing", "assumed typed typed measured measured"},
		{"how=rows.spacing%3Datma&action=row-down.2", "rows.1.spacing rows.2.spacing rows.3.spacing rows.4.spacing", "assumed measured typed assumed"},
		{"touched=rows.4.spacing&action=remove-row.1", "rows.1.spacing rows.2.spacing rows.3.spacing", "assumed assumed typed"},
		{"touched=rows.4.spacing&action=add-row", "rows.3.spacing rows.4.spacing rows.5.spacing", "assumed typed typed"},
		// The usual exponent of another kind is nobody's word.
		{"emitters.1.kind=plain&emitters.1.kind-was=compensating&touched=emitters.1.kind", "emitters.1.kind emitters.1.exponent", "typed assumed"},
	} {
		d := ParseDraft(DraftOf(Default()).Encode() + "&" + c.form)
		d.Apply()
		p, errs := d.Read()
		if len(errs) > 0 {
			t.Fatalf("%s: %v", c.form, errs)
		}
		if got := originsAt(t, p, strings.Fields(c.paths)...); got != c.want {
			t.Errorf("%s: %s of %s, want %s", c.form, got, c.paths, c.want)
		}
		// It is all in one place now, and stays.
		for name := range d.values {
			if strings.HasPrefix(name, HowOf) || name == TouchedName {
				t.Errorf("%s: %s is left", c.form, name)
			}
		}
		again, _ := ParseDraft(DraftOf(p).Encode()).Read()
		if !reflect.DeepEqual(p, again) {
			t.Errorf("%s: %q became %q", c.form, p.How.String(), again.How.String())
		}
	}
}

// Reading a form tells the same as applying it first.
func TestReadingAloneTellsOrigins(t *testing.T) {
	d := ParseDraft("how=rows.spacing%3Dm&touched=rows.1.spacing+place.length")
	p, _ := d.Read()
	if got := originsAt(t, p, "rows.1.spacing", "rows.2.spacing", "place.length"); got != "typed measured typed" {
		t.Error(got)
	}
}

// Choosing other units is no typing, and what is assumed stays so.
func TestUnitsChangeNoOrigin(t *testing.T) {
	p := Default()
	want := originsAt(t, p, "place.water", "runs.1.length", "runs.1.rise", "filter.clean")
	d := DraftOf(p)
	d.Set(UnitsWas, "metric")
	d.Set("units", "us")
	d.TypedSince(p)
	d.Apply()
	q, errs := d.Read()
	if len(errs) > 0 || q.Units != unit.US {
		t.Fatal(errs)
	}
	if got := originsAt(t, q, "place.water", "runs.1.length", "runs.1.rise", "filter.clean"); got != want {
		t.Errorf("%s, was %s", got, want)
	}
	if got := q.How.String(); got != "" {
		t.Errorf("%q is known now", got)
	}
}

// A form without scripts does not say what was typed in.
func TestTypedSince(t *testing.T) {
	p := Default()
	p.Propose()
	d := DraftOf(p)
	d.Set("rows.2.spacing", "0,40")
	d.Set("rows.3.spacing", "0,3330") // the same, otherwise written
	d.Set("runs.1.rise", "0.4 m")
	d.Set("place.length", "twelve")
	d.Set("header.tube", "20")
	d.Set("name", "Mine")
	d.Set("how.rows.1.spacing", "measured")
	d.Set(ActionName, "remove-row.1")
	d.TypedSince(p)
	d.Apply()
	if got, want := d.Get(HowName), "*=a;name=t;place.length=t;header.tube=t;rows.spacing=t-"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	d = DraftOf(p)
	d.TypedSince(p)
	d.Apply()
	if got := d.Get(HowName); got != "*=a" {
		t.Errorf("nothing was typed, and %q is known", got)
	}
	// What was measured and is typed anew is typed, unless it is said to be measured.
	f, _ := at(t, "runs.1.rise")
	p.SetOrigin(f, 0, Measured)
	for _, c := range []struct{ said, want string }{{"", "t"}, {"measured", "m"}, {"typed", "t"}} {
		d = DraftOf(p)
		d.Set("runs.1.rise", "0.7")
		d.Set(HowOf+"runs.1.rise", c.said)
		d.TypedSince(p)
		d.Apply()
		if got, want := d.Get(HowName), "*=a;runs.rise="+c.want; got != want {
			t.Errorf("said to be %q: %q, want %q", c.said, got, want)
		}
	}
}

// Ranges hold what is assumed and are within the form's limits; both ends are a
// plan that Check finds nothing wrong with.
func TestRangesArePlans(t *testing.T) {
	ranged := 0
	for _, x := range Examples() {
		for _, f := range Fields() {
			if f.Range == nil {
				continue
			}
			for i := range SectionNamed(f.Section).Records(x.Plan) {
				if !f.Applies(x.Plan, i) {
					continue
				}
				ranged++
				low, high := f.Range(x.Plan, i)
				if v := f.Value(x.Plan, i); !(low <= v && v <= high) || low < f.Min || high > f.Max {
					t.Errorf("%s: %s is from %g to %g, and %g is assumed", x.Key, Path(f, i), low, high, v)
				}
				for _, end := range []float64{low, high} {
					p := x.Plan.Clone()
					if f.Section == "points" { // in proportion
						low, high := f.Range(p, len(p.Supply.Points)/2)
						share := low / f.Value(p, len(p.Supply.Points)/2)
						if end != low {
							share = high / f.Value(p, len(p.Supply.Points)/2)
						}
						for k := range p.Supply.Points {
							f.SetValue(p, k, share*f.Value(p, k))
						}
					} else {
						f.SetValue(p, i, end)
					}
					if errs := p.Check(); len(errs) > 0 {
						t.Errorf("%s: %s at %g: %v", x.Key, Path(f, i), end, errs[0])
					}
				}
			}
		}
	}
	if ranged < 100 {
		t.Errorf("only %d values have a range", ranged)
	}
}

// What is said of fields is of fields that there are, and of numbers.
func TestSpreadsAndMeasuresAreOfFields(t *testing.T) {
	for i := range Spreads {
		sp := &Spreads[i]
		switch f := FieldOfAll(sp.Path); {
		case f == nil:
			t.Errorf("%s is no field", sp.Path)
		case f.Range == nil || f.Type != Number && f.Type != Whole || sp.Low >= sp.High:
			t.Errorf("%s has no range", sp.Path)
		}
	}
	for _, m := range measures {
		path, text := m.path, m.text
		if FieldOfAll(path) == nil || !strings.HasSuffix(string(text), ".") {
			t.Errorf("%s is no field, or %q no sentence", path, text)
		}
	}
}

func TestDoubted(t *testing.T) {
	p := Default()
	p.Supply.Kind = Mains
	length, _ := at(t, "runs.1.length")
	static, _ := at(t, "supply.static")
	head, _ := at(t, "points.1.head")
	name, _ := at(t, "name")
	for _, c := range []struct {
		f    *Field
		o    Origin
		want bool
	}{
		{length, Assumed, true}, {length, LookedUp, true}, {length, Typed, false}, {length, Measured, false},
		{static, Assumed, true}, {static, LookedUp, true}, {static, Typed, true}, {static, Measured, false},
		{head, Assumed, false}, // of no pump
		{name, Assumed, false},
	} {
		q := p.Clone()
		q.SetOrigin(c.f, 0, c.o)
		low, high, got := c.f.Doubted(q, 0)
		if got != c.want || got != (low < high) {
			t.Errorf("%s, %s: %v, from %g to %g", Path(c.f, 0), c.o.Code(), got, low, high)
		}
	}
	// A typed pressure is known better than an assumed one.
	p.Supply.Static = metric(unit.Pressure, 3)
	p.SetOrigin(static, 0, Typed)
	low, high, _ := static.Doubted(p, 0)
	p.SetOrigin(static, 0, Assumed)
	if l, h, _ := static.Doubted(p, 0); !(l < low && high < h) {
		t.Errorf("typed %g to %g, assumed %g to %g", low, high, l, h)
	}
}

// FuzzHow reads what forms may tell of values. It is understood or left out, and
// stays the same once it was written.
func FuzzHow(f *testing.F) {
	f.Add("*=a;rows.spacing=tta", "rows.1.spacing", "rows.2.spacing", "measured", "remove-row.2")
	f.Add("rows.spacing=----m;;=;name=t", " name  units points.3.head", "name", "typed", "add-row")
	f.Add("rows.spacing="+strings.Repeat("t", 61), "rows.99.spacing", "", "", "row-up.2")
	f.Fuzz(func(t *testing.T, how, touched, path, code, action string) {
		d := DraftOf(Default())
		d.Set(HowName, how)
		d.Set(TouchedName, touched)
		d.Set(HowOf+path, code)
		before, _ := d.Read()
		d.Set(ActionName, action)
		d.Apply()
		p, errs := d.Read()
		if len(errs) == 0 && !strings.Contains(action, "-") && !reflect.DeepEqual(before, p) {
			t.Fatalf("%q before, %q after", before.How.String(), p.How.String())
		}
		again, _ := ParseDraft(DraftOf(p).Encode()).Read()
		if !reflect.DeepEqual(p, again) {
			t.Fatalf("%q became %q", p.How.String(), again.How.String())
		}
		for _, f := range Fields() {
			for i := range SectionNamed(f.Section).Records(p) {
				if o := p.Origin(f, i); o == ByRule || o >= Origins {
					t.Fatalf("%s came to be %d", Path(f, i), o)
				}
			}
		}
	})
}
