package carry

import (
	"encoding/base64"
	"flag"
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/fxamacker/cbor/v2"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
)

var update = flag.Bool("update", false, "rewrite the expected files")

// mixed is a plan of twelve rows no two of which are alike.
func mixed() *plan.Plan {
	p := plan.Default()
	p.Name = "Twelve mixed rows"
	plan.SectionNamed("emitters").Resize(p, 2)
	p.Emitters[1].Flow = unit.Of(unit.EmitterFlow, unit.Metric).ToInner(4)
	plan.SectionNamed("rows").Resize(p, 12)
	spacing := []float64{0.333, 0.4, 0.45, 0.25}
	for i := range p.Rows {
		r := &p.Rows[i]
		r.Crop = i % 5
		r.Plants = 20 + 3*i
		r.Spacing = spacing[i%4]
		r.First = unit.Of(unit.Length, unit.Metric).ToInner(float64(20+5*(i%3)) / 100)
		r.Medium = i % 3
		r.PerPiece = 2 + i%2
		r.Emitter = i % 2
		r.Zone = 1 + i%3
		r.Height = unit.Of(unit.Length, unit.Metric).ToInner(float64(i%4) / 10)
		r.Slope = unit.Of(unit.Slope, unit.Metric).ToInner(0.5 * float64(i%2))
	}
	return p
}

func TestLinksAreShort(t *testing.T) {
	for _, c := range []struct {
		name string
		p    *plan.Plan
		most int
	}{
		{"the default plan", plan.Default(), 300},
		{"twelve mixed rows", mixed(), 700},
		{"the long field", plan.Examples()[3].Plan, 300},
	} {
		if errs := c.p.Check(); len(errs) > 0 {
			t.Fatalf("%s: %v", c.name, errs[0])
		}
		n := len(Link(c.p))
		t.Logf("%s: %d characters", c.name, n)
		if n > c.most {
			t.Errorf("%s takes %d characters, want at most %d", c.name, n, c.most)
		}
	}
}

// The links in testdata/links.txt are of version 1 as it was first published.
// They must open for ever as the plans in testdata/*.json, which say the same
// in words. A new version gets a file of its own.
func TestPublishedLinks(t *testing.T) {
	const name = "testdata/links.txt"
	plans := map[string]*plan.Plan{"mixed": mixed()}
	keys := []string{"mixed"}
	for _, x := range plan.Examples() {
		plans[x.Key] = x.Plan
		keys = append(keys, x.Key)
	}
	if *update {
		var b strings.Builder
		for _, key := range keys {
			b.WriteString(key + " " + Link(plans[key]) + "\n")
			if err := os.WriteFile("testdata/"+key+".json", JSON(plans[key]), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if err := os.WriteFile(name, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Fields(string(text))
	if len(lines) < 2*5 {
		t.Fatalf("%d links in %s, want five", len(lines)/2, name)
	}
	for i := 0; i < len(lines); i += 2 {
		key, link := lines[i], lines[i+1]
		got, err := ReadLink(link)
		if err != nil {
			t.Errorf("%s: %v", key, err)
			continue
		}
		file, err := os.ReadFile("testdata/" + key + ".json")
		if err != nil {
			t.Fatal(err)
		}
		want, errs := ReadJSON(file)
		if len(errs) > 0 {
			t.Errorf("%s.json: %v", key, errs)
			continue
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%s opens as\n%s\nwant\n%s", key, JSON(got), file)
		}
		// The program still writes what it wrote, so that a plan has one link.
		if Link(want) != link {
			t.Errorf("%s is now written %s, was %s", key, Link(want), link)
		}
	}
}

// A general CBOR decoder and encoding/base64 judge the writing: it is CBOR,
// deterministic (RFC 8949, section 4.2.1), and says what the format promises.
func TestLinksAreCBOR(t *testing.T) {
	strict, err := cbor.DecOptions{DupMapKey: cbor.DupMapKeyEnforcedAPF, IndefLength: cbor.IndefLengthForbidden}.DecMode()
	if err != nil {
		t.Fatal(err)
	}
	canonical, err := cbor.CoreDetEncOptions().EncMode()
	if err != nil {
		t.Fatal(err)
	}
	p := mixed()
	p.Name = "Ærø 12"
	link := Link(p)
	data, err := base64.RawURLEncoding.Strict().DecodeString(link[1:])
	if link[0] != '1' || err != nil {
		t.Fatalf("link %q: %v", link, err)
	}
	var tree map[int]any
	if err := strict.Unmarshal(data, &tree); err != nil {
		t.Fatal(err)
	}
	again, err := canonical.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	if string(again) != string(data) {
		t.Errorf("the deterministic encoding is\n%x, want\n%x", data, again)
	}
	if got := tree[0].(map[any]any)[uint64(1)]; got != "Ærø 12" {
		t.Errorf("name %v", got)
	}
	rows := tree[8].([]any)
	if len(rows) != 12 {
		t.Fatalf("%d rows, want 12", len(rows))
	}
	// Row 2: spacing 0.4 m is the decimal fraction 4 e-1; 23 plants.
	second := rows[1].(map[any]any)
	want := cbor.Tag{Number: 4, Content: []any{int64(-1), uint64(4)}}
	if !reflect.DeepEqual(second[uint64(3)], want) || second[uint64(2)] != uint64(23) {
		t.Errorf("row 2 is %v", second)
	}
	// The gap of row 1 is its own, and that of row 3 holds for row 4.
	if _, has := second[uint64(5)]; !has {
		t.Error("row 2 leaves out a gap that differs from row 1's")
	}
	if _, has := rows[3].(map[any]any)[uint64(5)]; has {
		t.Error("row 4 repeats the gap of row 3")
	}
}

func TestAnyNumberSurvives(t *testing.T) {
	p := plan.Default()
	for _, sys := range []unit.System{unit.Metric, unit.US} {
		p.Units = sys
		for _, v := range []float64{1.1, math.Nextafter(1.1, 2), math.Nextafter(1.1, 0), 1.0 / 3, math.Pi, 0.1 + 0.2} {
			p.Rows[1].Gap = v
			p.Filter.Fouling = 1e4 * v
			p.Emitters[0].Flow = v / 1e6
			p.Place.Water = 10 * v
			p.Emitters[0].CV = v / 20
			p.Runs[0].Rise = -v
			got, err := ReadLink(Link(p))
			if err != nil || !reflect.DeepEqual(got, p) {
				t.Errorf("%.17g in system %d: %v, %+v", v, sys, err, got)
			}
			got, errs := ReadJSON(JSON(p))
			if len(errs) > 0 || !reflect.DeepEqual(got, p) {
				t.Errorf("%.17g in system %d, as a file: %v, %s", v, sys, errs, JSON(p))
			}
		}
	}
}

// Of some numbers inside there is none in feet that reads back as them.
func TestANumberWithoutADecimalSurvives(t *testing.T) {
	const v = 0.050000000000000024
	if s, ok := unit.Shortest(unit.Length, unit.US, v); ok {
		t.Fatalf("%q ft reads back as %g m: the test needs another number", s, v)
	}
	p := plan.Default()
	p.Units = unit.US
	p.Rows[1].Gap = v
	if file := string(JSON(p)); !strings.Contains(file, `"gap": "SI 0.050000000000000024"`) {
		t.Errorf("no such gap in\n%s", file)
	}
	carriesBack(t, p)
	for _, c := range []struct{ text, want string }{
		{"SI inf", "Row 2: from the row before must be a number"},
		{"SI ten", "Row 2: from the row before must be a number"},
		{"SI 100", "Row 2: from the row before must be from 0 to 65.6 ft"},
	} {
		file := strings.Replace(string(JSON(p)), "SI 0.050000000000000024", c.text, 1)
		if _, errs := ReadJSON([]byte(file)); len(errs) != 1 || errs[0].Error() != c.want+"." {
			t.Errorf("%s: %v, want %q", c.text, errs, c.want)
		}
	}
}

func b64(t *testing.T, v any) string {
	t.Helper()
	data, err := cbor.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return base64.RawURLEncoding.EncodeToString(data)
}

func TestReadLinkRefuses(t *testing.T) {
	type m = map[int]any
	link := Link(plan.Default())
	change := func(set func(p *plan.Plan)) string {
		p := plan.Default()
		set(p)
		return Link(p)
	}
	const bad = "The link is damaged: some of it is missing or changed"
	const new = "The link was made by a newer Evenrow: reload the page to get it"
	for _, c := range []struct{ name, link, want string }{
		{"nothing", "", "The link is empty"},
		{"only a version", "1", bad},
		{"a later version", "2" + link[1:], new},
		{"no version", "x" + link[1:], bad},
		{"the version before the first", "0" + link[1:], bad},
		{"too long", "1" + strings.Repeat("A", MaxLink), "The link is longer than the longest plan, 40960 characters"},
		{"cut short", link[:len(link)-5], bad},
		{"a stop behind it", link + ".", bad},
		{"more behind it", link + "AAAA", bad},
		{"bits of no byte", "1" + "pQ" + "B", bad},
		{"no map", "1" + b64(t, []int{1}), bad},
		{"a key that is no number", "1" + b64(t, map[string]int{"a": 1}), bad},
		{"a list that is no list", "1" + b64(t, m{8: 1}), bad},
		{"a record that is no map", "1" + b64(t, m{8: []int{1}}), bad},
		{"a number that is text", "1" + b64(t, m{1: m{1: "12"}}), bad},
		{"a text that is a number", "1" + b64(t, m{0: m{1: 12}}), bad},
		{"a name that is no text", "1" + b64(t, m{0: m{1: []byte("x")}}), bad},
		{"a choice beyond all", "1" + b64(t, m{6: m{1: 9}}), bad},
		{"units beyond all", "1" + b64(t, m{0: m{2: 7}, 1: m{1: 5}}), bad},
		{"more rows than may be", "1" + b64(t, m{8: make([]m, 61)}), bad},
		{"keys that fall", "1" + base64.RawURLEncoding.EncodeToString([]byte{0xa2, 5, 0xa0, 1, 0xa0}), bad},
		{"a key twice", "1" + base64.RawURLEncoding.EncodeToString([]byte{0xa2, 1, 0xa0, 1, 0xa0}), bad},
		{"a map without end", "1" + base64.RawURLEncoding.EncodeToString([]byte{0xbf, 0xff}), bad},
		{"a map of 2⁶⁴ pairs", "1" + base64.RawURLEncoding.EncodeToString([]byte{0xbb, 255, 255, 255, 255, 255, 255, 255, 255}), bad},
		{"a list of 2³² rows", "1" + base64.RawURLEncoding.EncodeToString([]byte{0xa1, 8, 0x9a, 255, 255, 255, 255}), bad},
		{"a decimal of three parts", "1" + b64(t, m{1: m{1: cbor.Tag{Number: 4, Content: []int{1, 2, 3}}}}), bad},
		{"a decimal beyond all", "1" + b64(t, m{1: m{1: cbor.Tag{Number: 4, Content: []int{999, 2}}}}), bad},
		{"a date", "1" + b64(t, m{1: m{1: cbor.Tag{Number: 1, Content: 5}}}), bad},
		{"a section not known yet", "1" + b64(t, m{77: m{}}), new},
		{"a field not known yet", "1" + b64(t, m{1: m{77: 1}}), new},
		{"not a number", "1" + b64(t, m{1: m{1: math.NaN()}}), bad}, // as a float16, which is never written
		{"no rows", change(func(p *plan.Plan) { p.Rows = nil }),
			"The link holds a plan with something out of range: Number of rows must be from 1 to 60, not 0"},
		{"a value out of range", change(func(p *plan.Plan) { p.Rows[1].Spacing = 5 }),
			"The link holds a plan with something out of range: Row 2: spacing must be from 0.05 to 3 m"},
		{"not a number, written whole", change(func(p *plan.Plan) { p.Place.Length = math.NaN() }),
			"The link holds a plan with something out of range: Place: length along the rows must be from 0.5 to 300 m"},
	} {
		p, err := ReadLink(c.link)
		if err == nil || err.Error() != c.want+"." || p != nil {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}

// Every link cut anywhere, and every link with one character changed, is
// either refused or opens as a sound plan.
func TestHurtLinks(t *testing.T) {
	link := Link(mixed())
	for n := range len(link) {
		if _, err := ReadLink(link[:n]); err == nil {
			t.Errorf("the first %d of %d characters open", n, len(link))
		}
		for _, c := range "A_z5" {
			p, err := ReadLink(link[:n] + string(c) + link[n+1:])
			if err == nil && len(p.Check()) > 0 {
				t.Errorf("character %d as %c: %v", n, c, p.Check()[0])
			}
		}
	}
}

func FuzzReadLink(f *testing.F) {
	for _, x := range plan.Examples() {
		f.Add(Link(x.Plan))
	}
	f.Add("1")
	f.Add(Link(told()))
	f.Fuzz(func(t *testing.T, link string) {
		p, err := ReadLink(link)
		if err != nil {
			if p != nil || !strings.HasPrefix(err.Error(), "The link ") {
				t.Fatalf("%v, %v", p, err)
			}
			return
		}
		carriesBack(t, p)
	})
}

// Numbers of any size come back, those too that take more digits than a typed
// number may have.
func TestNumbersOfAnySizeSurvive(t *testing.T) {
	for _, f := range plan.Fields() {
		if f.Type != plan.Number {
			continue
		}
		for _, sys := range []unit.System{unit.Metric, unit.US} {
			for _, v := range []float64{5e-324, 1e-320, 1e-300, 1e-50, 1.5e-41, 1e-39, 1.2345678901234567e-30, 1e-20, 1e15, 1e21, 1e25} {
				p := plan.Default()
				p.Units = sys
				if s := plan.SectionNamed(f.Section); s.Records(p) == 0 {
					s.Resize(p, 1)
					s.SetDefaults(p, 0)
				}
				if *f.Number(p, 0) = v; len(p.Check()) == 0 {
					carriesBack(t, p)
				}
			}
		}
	}
}

// A file with a list that is too long is refused, whether the plan uses it or not.
func TestNoListIsTooLong(t *testing.T) {
	for _, s := range plan.Sections() {
		if !s.List {
			continue
		}
		p := plan.Default()
		s.Resize(p, s.Max+1)
		if s.Applies(p) != (s.Name != "months") {
			t.Errorf("%s: applies: %v", s.Name, s.Applies(p))
		}
		if q, errs := ReadJSON(JSON(p)); q != nil || len(errs) == 0 || errs[0].Path != s.Name {
			t.Errorf("%s: a file with %d is read, with %v", s.Name, s.Max+1, errs)
		}
	}
}

// A date that cannot be written could not be typed either, nor kept in a file.
func TestNoDateIsRefused(t *testing.T) {
	date := plan.FieldNamed("season", "date")
	for _, c := range []struct {
		day  day.Day
		want bool
	}{{day.First, true}, {day.Last, true}, {day.First - 1, false}, {day.Last + 1, false}, {989_938_747, false}} {
		p := plan.Default()
		p.Season.Mode = plan.FromFrost // and so the date is not asked for
		*date.Int(p, 0) = int(c.day)
		if _, err := ReadLink(Link(p)); (err == nil) != c.want {
			t.Errorf("a link with the date %s opens: %v", c.day.ISO(), err)
		}
	}
}

// FuzzDecode changes bytes rather than characters, and so reaches deeper.
func FuzzDecode(f *testing.F) {
	for _, x := range plan.Examples() {
		data, _ := fromBase64(Link(x.Plan)[1:])
		f.Add(data)
	}
	data, _ := fromBase64(Link(told())[1:])
	f.Add(data)
	f.Fuzz(func(t *testing.T, data []byte) {
		text := string(toBase64([]byte{version}, data))
		if want := base64.RawURLEncoding.EncodeToString(data); text[1:] != want {
			t.Fatalf("base64 %q, want %q", text[1:], want)
		}
		p, err := ReadLink(text)
		if err != nil {
			return
		}
		var any any
		if err := cbor.Unmarshal(data, &any); err != nil {
			t.Fatalf("%x opens, and is not CBOR: %v", data, err)
		}
		carriesBack(t, p)
	})
}

// carriesBack checks that a sound plan comes back from a link and from a file,
// bit for bit, and from a form as it was typed.
func carriesBack(t *testing.T, p *plan.Plan) {
	t.Helper()
	if errs := p.Check(); len(errs) > 0 {
		t.Fatalf("an unsound plan: %v", errs[0])
	}
	again, err := ReadLink(Link(p))
	if err != nil || !reflect.DeepEqual(again, p) {
		t.Fatalf("by link: %v\n%s\nwant\n%s", err, JSON(again), JSON(p))
	}
	again, errs := ReadJSON(JSON(p))
	if len(errs) > 0 || !reflect.DeepEqual(again, p) {
		t.Fatalf("by file: %v\n%s", errs, JSON(p))
	}
	// A form keeps what can be typed, which is all but the last bits of numbers
	// that a link made up; see TestBoxesOfNumbersThatNobodyTyped.
	typed, errs := plan.ParseDraft(plan.DraftOf(p).Encode()).Read()
	if len(errs) > 0 {
		t.Fatalf("by form: %v\n%s", errs, JSON(p))
	}
	if again, errs := plan.ParseDraft(plan.DraftOf(typed).Encode()).Read(); len(errs) > 0 || !reflect.DeepEqual(again, typed) {
		t.Fatalf("by form, twice: %v\n%s\nwant\n%s", errs, JSON(again), JSON(typed))
	}
}
