package plan

import (
	"net/url"
	"reflect"
	"strconv"
	"strings"
	"testing"
)

func TestADraftOfAPlanReadsAsThePlan(t *testing.T) {
	for _, x := range Examples() {
		p, errs := DraftOf(x.Plan).Read()
		if len(errs) > 0 || !reflect.DeepEqual(p, x.Plan) {
			t.Errorf("%s: %v, got %+v", x.Key, errs, p)
		}
		p, errs = ParseDraft(DraftOf(x.Plan).Encode()).Read()
		if len(errs) > 0 || !reflect.DeepEqual(p, x.Plan) {
			t.Errorf("%s, as form data: %v", x.Key, errs)
		}
	}
}

func TestReadDraft(t *testing.T) {
	for _, c := range []struct {
		name string
		form string
		want []string
	}{
		{"nothing typed is the default", "", nil},
		{"decimal comma", "rows.1.spacing=0,333", nil},
		{"left empty", "place.length=&rows.1.plants=+&header.layout=",
			[]string{"place.length: Place: length along the rows is missing", "header.layout: Header: layout is missing", "rows.1.plants: Row 1: plants is missing"}},
		{"no numbers", "place.length=ten&rows.2.spacing=1,000&rows.1.plants=3.5&header.layout=star",
			[]string{
				"place.length: Place: length along the rows must be a number, such as 12.5",
				"header.layout: Header: layout must be one of the choices",
				"rows.1.plants: Row 1: plants must be a whole number from 1 to 400",
				"rows.2.spacing: Row 2: spacing may mean 1000 or 1.000: write one of these",
			}},
		{"what does not apply may hold anything", "supply.kind=mains&supply.tank=x&points.1.flow=y&filter.present=no&filter.rated=z&runs.1.bore=q", nil},
		{"what could not be read is not held against others", "emitters.1.opens=x&emitters.1.closes=3", []string{"emitters.1.opens: Emitter 1: opening pressure must be a number, such as 12.5"}},
		{"too many records", "rows.61.plants=3", []string{"rows: Number of rows must be from 1 to 60, not 61"}},
		{"numbers too great to be records", "rows.4000000000.plants=x&rows.1000.plants=x&rows.-3.plants=x&rows.x.plants=1", nil},
		{"names that are no fields", "colour=red&rows.61.colour=red&rows=1&rows.1=1", nil},
		{"a name is kept as typed", "name=%3Cb%3E+%26+caf%C3%A9", nil},
		{"too much in one field", "rows.2.plants=5&name=" + strings.Repeat("x", 73<<10) + "&place.length=" + strings.Repeat("+", MaxTyped) + "1&rows.1.plants=4&runs.1.rise=x",
			[]string{"name: Name of the plan must be at most 4 kB, not 73 kB", "place.length: Place: length along the rows must be at most 4 kB, not 5 kB", "runs.1.rise: Run 1: rise must be a number, such as 12.5"}},
		{"a table of days for one of months", TableName + "=" + strings.Repeat("2027-01-01+4.5+-2%0A", 3900) + "&rows.1.plants=4", []string{TableName + ": The pasted table must be at most 4 kB, not 69 kB: paste the means of twelve months, not every day"}},
		{"no field may hold anything", "colour=" + strings.Repeat("x", 73<<10), nil},
	} {
		d := ParseDraft(c.form)
		p, errs := d.Read()
		if got := texts(errs); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s:\n got %q\nwant %q", c.name, got, c.want)
		}
		for _, e := range errs {
			if d.Has(e.Path) && e.Typed != d.Get(e.Path) && e.Path != TableName {
				t.Errorf("%s: %s was typed %.99q, kept %.99q", c.name, e.Path, d.Get(e.Path), e.Typed)
			}
		}
		if p == nil || len(p.Rows) == 0 {
			t.Errorf("%s: no whole plan", c.name)
		}
	}
	p, _ := ParseDraft("name=%3Cb%3E+%26+caf%C3%A9").Read()
	if p.Name != "<b> & café" {
		t.Errorf("name %q", p.Name)
	}
}

func TestOutOfRangeKeepsWhatWasTyped(t *testing.T) {
	_, errs := ParseDraft("rows.1.spacing=00009,50").Read()
	if len(errs) != 1 || errs[0].Typed != "00009,50" {
		t.Errorf("got %+v", errs)
	}
}

// Package net/url judges the form data.
func FuzzForm(f *testing.F) {
	for _, s := range []string{"a=1&b=2&a=3", "a=%zz&%41=+%2B", "=x&&a", "a%3Db=c;d", "rows.2.spacing=0%2C3"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, form string) {
		d := ParseDraft(form)
		if again := ParseDraft(d.Encode()); !reflect.DeepEqual(d.values, again.values) {
			t.Fatalf("%q: %q became %q", form, d.values, again.values)
		}
		d.Read()
		got, err := url.ParseQuery(d.Encode())
		if err != nil || len(got) != len(d.values) {
			t.Fatalf("%q: encoded %q: %v", form, d.Encode(), err)
		}
		for k, v := range d.values {
			if got.Get(k) != v {
				t.Fatalf("%q: %q is %q, want %q", form, k, got.Get(k), v)
			}
		}
		if want, err := url.ParseQuery(form); err == nil {
			for k, v := range want {
				if k != "" && d.Get(k) != v[len(v)-1] {
					t.Fatalf("%q: %q is %q, want %q", form, k, d.Get(k), v[len(v)-1])
				}
			}
		}
	})
}

func TestSwitchingUnits(t *testing.T) {
	d := DraftOf(Default())
	d.Set("rows.2.spacing", "one foot")
	d.Set("rows.3.spacing", "")
	d.Set("place.length", "12,5")
	d.Set("units", "us")
	d.Set(UnitsWas, "metric")
	if focus := d.Apply(); focus != "" || d.Has(UnitsWas) {
		t.Errorf("focus %q", focus)
	}
	for path, want := range map[string]string{
		"rows.1.spacing":  "1.0925",
		"rows.2.spacing":  "one foot",
		"rows.3.spacing":  "",
		"place.length":    "41.01",
		"place.water":     "68",
		"supply.tank":     "105.67",
		"limits.evenness": "90",
		"rows.1.plants":   "30",
		"emitters.1.flow": "0.52834",
		"filter.opening":  "130",
		"supply.shut-off": "111.55", // it does not apply, and is changed all the same
		"runs.1.bore":     "0.80315",
	} {
		if got := d.Get(path); got != want {
			t.Errorf("%s is %q in US units, want %q", path, got, want)
		}
	}
	// Too large a number for the other system stays as it was typed, and is told of.
	huge := DraftOf(Default())
	huge.Set("supply.tank", "1e300")
	huge.Set("units", "us")
	huge.Set(UnitsWas, "metric")
	huge.Apply()
	if _, errs := huge.Read(); huge.Get("supply.tank") != "1e300" || len(errs) != 1 || errs[0].Text != "Supply: tank volume must be a smaller number." {
		t.Errorf("1e300 L is %q gal, %v", huge.Get("supply.tank"), errs)
	}
	d.Set("units", "metric")
	d.Set(UnitsWas, "us")
	d.Apply()
	want := DraftOf(Default())
	want.Set("rows.2.spacing", "one foot")
	want.Set("rows.3.spacing", "")
	want.Set("place.length", "12.5")
	if !reflect.DeepEqual(d, want) {
		t.Errorf("back in metric units it is\n%v, want\n%v", d.values, want.values)
	}
}

func TestActions(t *testing.T) {
	crops := func(d Draft) string {
		var list []string
		for i := range d.Records(SectionNamed("rows")) {
			list = append(list, d.Get("rows."+strconv.Itoa(i+1)+".crop"))
		}
		return strings.Join(list, ", ")
	}
	for _, c := range []struct {
		action, focus, want string
	}{
		{"add-row", "rows.5", "sweet pepper, oats, tomato, cucumber, cucumber"},
		{"copy-row.2", "rows.3", "sweet pepper, oats, oats, tomato, cucumber"},
		{"copy-row.4", "rows.5", "sweet pepper, oats, tomato, cucumber, cucumber"},
		{"remove-row.1", "rows.1", "oats, tomato, cucumber"},
		{"remove-row.4", "rows.3", "sweet pepper, oats, tomato"},
		{"row-up.2", "rows.1", "oats, sweet pepper, tomato, cucumber"},
		{"row-down.2", "rows.3", "sweet pepper, tomato, oats, cucumber"},
		{"row-up.1", "", "sweet pepper, oats, tomato, cucumber"},
		{"row-down.4", "", "sweet pepper, oats, tomato, cucumber"},
		{"remove-row.5", "", "sweet pepper, oats, tomato, cucumber"},
		{"copy-row.0", "", "sweet pepper, oats, tomato, cucumber"},
		{"copy-row", "", "sweet pepper, oats, tomato, cucumber"},
		{"burn-row.1", "", "sweet pepper, oats, tomato, cucumber"},
		{"", "", "sweet pepper, oats, tomato, cucumber"},
	} {
		d := DraftOf(Default())
		d.Set("rows.2.crop", "oats") // text that is no choice is kept
		d.Set(ActionName, c.action)
		if focus := d.Apply(); focus != c.focus || crops(d) != c.want || d.Has(ActionName) {
			t.Errorf("%q: looks at %q, has %s; want %q, %s", c.action, focus, crops(d), c.focus, c.want)
		}
	}
}

func TestActionsOnOtherLists(t *testing.T) {
	// A form that has no runs yet has those of the default plan.
	d := ParseDraft("action=add-run")
	if focus := d.Apply(); focus != "runs.2" || d.Get("runs.2.length") != "8" || d.Get("runs.1.length") != "8" {
		t.Errorf("looks at %q, has %v", focus, d.values)
	}
	d = ParseDraft("units=us&action=add-run")
	if d.Apply(); d.Get("runs.2.length") != "26.247" {
		t.Errorf("a run of %q ft", d.Get("runs.2.length"))
	}
	// The only run stays.
	d = ParseDraft("runs.1.length=3&action=remove-run.1")
	if focus := d.Apply(); focus != "" || d.Get("runs.1.length") != "3" {
		t.Errorf("looks at %q, has %v", focus, d.values)
	}
	// A new point is empty, because a copy would not fall.
	d = DraftOf(Default())
	d.Set(ActionName, "add-point")
	if focus := d.Apply(); focus != "points.5" || !d.Has("points.5.head") || d.Get("points.5.head") != "" {
		t.Errorf("looks at %q, new head %q", focus, d.Get("points.5.head"))
	}
	_, errs := d.Read()
	if got, want := texts(errs), []string{"points.5.flow: Point 5: flow is missing", "points.5.head: Point 5: head is missing"}; !reflect.DeepEqual(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	// A full list does not grow.
	d = ParseDraft("emitters.4.flow=2&action=copy-emitter.1")
	if focus := d.Apply(); focus != "" || d.Records(SectionNamed("emitters")) != MaxEmitters {
		t.Errorf("looks at %q, has %v", focus, d.values)
	}
}

func TestRowsKeepTheirEmitter(t *testing.T) {
	for _, c := range []struct{ action, want string }{
		{"remove-emitter.2", "1 1 2 4"}, // row 2 used it, and row 4 names one that never was
		{"remove-emitter.1", "1 1 2 4"},
		{"emitter-up.2", "2 1 3 4"},
		{"copy-emitter.1", "1 3 4 4"},
		{"add-emitter", "1 2 3 4"},
	} {
		d := DraftOf(Default())
		for _, set := range []string{"emitters.2.flow=4", "emitters.3.flow=8", "rows.2.emitter=2", "rows.3.emitter=3", "rows.4.emitter=4"} {
			path, text, _ := strings.Cut(set, "=")
			d.Set(path, text)
		}
		d.Set(ActionName, c.action)
		d.Apply()
		var got []string
		for i := range 4 {
			got = append(got, d.Get("rows."+strconv.Itoa(i+1)+".emitter"))
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: rows use %s, want %s", c.action, strings.Join(got, " "), c.want)
		}
	}
}

// No action loses text, but for the record that it removes.
func FuzzActions(f *testing.F) {
	f.Add("rows.1.crop=a&rows.2.crop=b&rows.3.plants=&action=row-up.2")
	f.Add("emitters.1.flow=q&emitters.2.flow=r&rows.1.emitter=2&action=remove-emitter.1")
	f.Add("points.999.flow=1&action=copy-point.999")
	f.Fuzz(func(t *testing.T, form string) {
		d := ParseDraft(form)
		if d.Has(UnitsWas) {
			return
		}
		before := map[string]bool{}
		d.each(func(fd *Field, i int) {
			if path := Path(fd, i); d.Has(path) && path != "rows."+strconv.Itoa(i+1)+".emitter" {
				before[fd.Section+fd.Name+"="+d.Get(path)] = true
			}
		})
		removes := strings.HasPrefix(d.Get(ActionName), "remove-")
		d.Apply()
		d.Read()
		d.each(func(fd *Field, i int) {
			delete(before, fd.Section+fd.Name+"="+d.Get(Path(fd, i)))
		})
		if len(before) > 0 && !removes {
			t.Errorf("%q lost %v", form, before)
		}
	})
}
