package plan

import (
	"flag"
	"os"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/trade/catalogue"
)

// full is blank with one record in every list.
func full() *Plan {
	p := blank()
	for _, s := range Sections() {
		if s.Records(p) == 0 {
			s.Resize(p, 1)
			s.SetDefaults(p, 0)
		}
	}
	return p
}

var update = flag.Bool("update", false, "rewrite the expected files")

// Links and files hold the numbers and names in testdata/fields.txt. A line may
// be added; a line that changes breaks what people have saved.
func TestFieldsArePermanent(t *testing.T) {
	var b strings.Builder
	for _, s := range Sections() {
		b.WriteString(strconv.Itoa(s.ID) + " " + s.Name + "\n")
		for _, f := range s.Fields() {
			b.WriteString(strconv.Itoa(s.ID) + "." + strconv.Itoa(f.ID) + " " + Path(f, 0) + " default " + strconv.FormatFloat(f.Default, 'g', -1, 64) + "\n")
			for i, o := range f.Options {
				b.WriteString("  " + strconv.Itoa(i) + " " + o.Code + "\n")
			}
		}
	}
	const name = "testdata/fields.txt"
	if *update {
		if err := os.WriteFile(name, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if b.String() != string(want) {
		t.Errorf("the fields are\n%s\nwant those of %s", b.String(), name)
	}
}

func TestFieldsAreComplete(t *testing.T) {
	guides := "method emitters pump-curve filter assembly media electricity flushing glossary layout sources season timer weather"
	p := full()
	for _, s := range Sections() {
		ids, names := map[int]bool{}, map[string]bool{}
		if s.Title == "" || !strings.Contains(guides, s.Guide) {
			t.Errorf("section %q: title %q, guide %q", s.Name, s.Title, s.Guide)
		}
		r := s.Record
		named := r.Begin != "" && r.Within != "" && r.Number != "" && r.Add != ""
		if s.List != (s.One != "" && named && s.Len != nil && s.Resize != nil && s.Min >= 0 && s.Max > 0 && s.Max >= s.Min) {
			t.Errorf("section %q is not a whole list", s.Name)
		}
		for _, f := range s.Fields() {
			path := Path(f, 0)
			if ids[f.ID] || names[f.Name] || f.ID == 0 || f.Section != s.Name {
				t.Errorf("%s: number %d or name is taken, or section %q is wrong", path, f.ID, f.Section)
			}
			ids[f.ID], names[f.Name] = true, true
			if f.Label == "" || strings.ContainsAny(f.Says(), "()[]") || len(f.Help) > 0 && !strings.HasSuffix(string(f.Help), ".") {
				t.Errorf("%s: label %q, help %q", path, f.Label, f.Help)
			}
			if (f.Number != nil) != (f.Type == Number) || (f.Text != nil) != (f.Type == Text) || (f.Int != nil) != (f.Type == Whole || f.Type == Choice || f.Type == Date) {
				t.Errorf("%s reaches its value in the wrong way", path)
			}
			if (f.Default < f.Min || f.Default > f.Max) && !(f.Empty && f.Default == Unset) || f.Type != Text && f.Max <= f.Min {
				t.Errorf("%s: default %g in %g to %g", path, f.Default, f.Min, f.Max)
			}
			if FieldNamed(s.Name, f.Name) != f {
				t.Errorf("%s is not found by its name", path)
			}
			// Each reaches a place of its own.
			if f.Type != Text {
				was := f.Value(p, 0)
				f.SetValue(p, 0, f.Max)
				for _, other := range Fields() {
					if other != f && other.Type != Text && other.Value(p, 0) != other.Default {
						t.Errorf("%s and %s share a place", path, Path(other, 0))
					}
				}
				f.SetValue(p, 0, was)
			}
			codes := map[string]bool{}
			for i, o := range f.Options {
				if o.Code == "" || o.Label == "" || codes[o.Code] {
					t.Errorf("%s: option %d %+v is empty or taken", path, i, o)
				}
				codes[o.Code] = true
				if v, ok := f.Option(o.Code); !ok || v != i {
					t.Errorf("%s: code %q is found as %d", path, o.Code, v)
				}
			}
		}
	}
	if FieldNamed("rows", "colour") != nil || SectionNamed("colour") != nil {
		t.Error("a name that no field has was found")
	}
}

// Both ends of a range, as they are written for the reader, may be typed.
func TestRangesCanBeTyped(t *testing.T) {
	for sys := range unit.System(unit.Systems) {
		for _, f := range Fields() {
			if f.Type != Number && f.Type != Whole && f.Type != Date {
				continue
			}
			low, high := f.Limits(sys)
			for _, typed := range []string{low, high} {
				p := full()
				p.Units = sys
				if problem := f.Read(p, 0, typed); problem != nil {
					t.Errorf("%s: %q %s", Path(f, 0), typed, said(problem))
				}
				if problem := f.rangeProblem(p, 0); problem != nil {
					t.Errorf("%s: %q %s", Path(f, 0), typed, said(problem))
				}
			}
		}
	}
}

func TestMediaStandInTheCataloguesOrder(t *testing.T) {
	for i, name := range []string{CocoSlab: "coco slab", StoneWoolSlab: "stone-wool slab", GrowBag: "grow bag", Bucket: "bucket", Pot: "pot"} {
		if string(catalogue.Media[i].Name) != name {
			t.Errorf("medium %d is %q, want %q", i, catalogue.Media[i].Name, name)
		}
	}
	for i, bore := range map[int]float64{tube16: 0.0136, tube25: 0.0204, tubeHalf: 0.600 * 0.0254, tubeOne: 1.049 * 0.0254, tubeOneTwo: 1.380 * 0.0254} {
		if catalogue.Tubes[i].Bore != bore {
			t.Errorf("tube %d, %s, has a bore of %g m, want %g m", i, catalogue.Tubes[i].Name, catalogue.Tubes[i].Bore, bore)
		}
	}
}
