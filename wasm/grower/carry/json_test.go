package carry

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
)

// Package encoding/json judges the writing.
func TestFilesAreJSON(t *testing.T) {
	p := mixed()
	// Lists that may be empty have something in them here, and a date.
	for _, sec := range plan.Sections() {
		if sec.Records(p) == 0 {
			sec.Resize(p, 2)
			sec.SetDefaults(p, 0)
			sec.SetDefaults(p, 1)
		}
	}
	p.Plantings[1].Mode, p.Plantings[1].Date = 2, 20990
	p.Crops[0].Name, p.Crops[0].Traits[3] = "physalis", 0.006
	p.Crops[1].Of = 1
	p.Name = "a \"b\" \\ c\u2028 <é> \U0001f345"
	var tree map[string]any
	if err := json.Unmarshal(JSON(p), &tree); err != nil {
		t.Fatalf("%v in\n%s", err, JSON(p))
	}
	if tree["format"] != "evenrow plan 1" || tree["units"] != "metric" || tree["name"] != p.Name {
		t.Errorf("format %v, units %v, name %q", tree["format"], tree["units"], tree["name"])
	}
	rows := tree["rows"].([]any)
	row := rows[1].(map[string]any)
	if len(rows) != 12 || row["crop"] != "tomato" || row["plants"] != 23.0 || row["spacing"] != 0.4 || row["slope"] != 0.5 {
		t.Errorf("%d rows, the second %v", len(rows), row)
	}
	// Every field is there under the parts of its path.
	for _, f := range plan.Fields() {
		at := any(tree)
		for _, part := range strings.Split(plan.Path(f, 0), ".") {
			if list, ok := at.([]any); ok && part == "1" {
				at = list[0]
				continue
			}
			value, has := at.(map[string]any)[part]
			if !has {
				t.Errorf("%s is missing", plan.Path(f, 0))
				break
			}
			at = value
		}
	}
	// Written anew by another program, in another order, it opens the same.
	other, err := json.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	got, errs := ReadJSON(other)
	if len(errs) > 0 || !reflect.DeepEqual(got, p) {
		t.Errorf("%v, %+v", errs, got)
	}
}

func TestShortFiles(t *testing.T) {
	got, errs := ReadJSON([]byte(`{"units": "us", "format": "evenrow plan 1", "place": {"length": 40},
		"points": [{"head": 70}, {"flow": 10, "head": 50}, {"flow": 20, "head": 20}],
		"runs": [{}], "emitters": [{}], "rows": [{}, {"plants": 2.0e1, "per-piece": 2}]}`))
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	if got.Place.Length != 40*3048/10000.0 || got.Place.Width != 5 || got.Rows[1].Plants != 20 || got.Rows[0].Plants != 30 || got.Supply.Points[0].Flow != 0 {
		t.Errorf("%+v", got)
	}
}

// A list that is left out is that of the default plan, as in a form; one that
// is there and empty is not. The shortest file is a plan.
func TestListsLeftOutOfAFile(t *testing.T) {
	want, errs := plan.Draft{}.Read()
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	got, errs := ReadJSON([]byte(`{"format": "evenrow plan 1"}`))
	if len(errs) > 0 || !reflect.DeepEqual(got, want) {
		t.Errorf("%v, %+v, want %+v", errs, got, want)
	}
	got, errs = ReadJSON([]byte(`{"format": "evenrow plan 1", "rows": [{}]}`))
	if len(errs) > 0 || len(got.Rows) != 1 || !reflect.DeepEqual(got.Supply.Points, plan.Default().Supply.Points) {
		t.Errorf("one row and nothing else: %v, %+v", errs, got)
	}
}

func TestReadJSONRefuses(t *testing.T) {
	const frame = `{"format": "evenrow plan 1", "points": [{"head": 9}, {"flow": 1, "head": 8}, {"flow": 2, "head": 7}], "runs": [{}], "emitters": [{}], "rows": [{}]`
	const notJSON = "The file is not JSON, or only part of it: see line "
	const notPlan = `The file is not a plan: it must say "format": "evenrow plan 1"`
	for _, c := range []struct {
		name, file string
		want       []string
	}{
		{"nothing", "", []string{": " + notJSON + "1"}},
		{"cut short", "{\n\t\"format\": \"evenrow plan 1\",\n", []string{": " + notJSON + "3"}},
		{"more behind it", "{}\n{}", []string{": " + notJSON + "2"}},
		{"a comma too many", `{"a": 1,}`, []string{": " + notJSON + "1"}},
		{"no JSON number", `{"a": 01}`, []string{": " + notJSON + "1"}},
		{"a lone point", `{"a": 1.}`, []string{": " + notJSON + "1"}},
		{"a text without end", `{"a": "b`, []string{": " + notJSON + "1"}},
		{"half a pair", `{"a": "\ud83c"}`, []string{": " + notJSON + "1"}},
		{"a pair taken apart", `{"a": "\ud83c \udf45"}`, []string{": " + notJSON + "1"}},
		{"too deep", strings.Repeat("[", 9) + strings.Repeat("]", 9), []string{": " + notJSON + "1"}},
		{"a list", "[]", []string{": " + notPlan}},
		{"another object", `{"format": "garden 3"}`, []string{": " + notPlan}},
		{"a number for its format", `{"format": 1}`, []string{": " + notPlan}},
		{"a later format", `{"format": "evenrow plan 2"}`, []string{": The file was made by a newer Evenrow: reload the page to get it"}},
		{"too long", strings.Repeat(" ", MaxFile+1), []string{": The file must be at most 256 kB"}},
		{"empty lists", `{"format": "evenrow plan 1", "points": [], "runs": [], "emitters": [], "rows": []}`, []string{
			"points: Number of points must be from 3 to 12, not 0",
			"runs: Number of runs must be from 1 to 8, not 0",
			"emitters: Number of emitters must be from 1 to 4, not 0",
			"rows: Number of rows must be from 1 to 60, not 0",
		}},
		{"too many rows", strings.Replace(frame, `"rows": [{}`, `"rows": [{}`+strings.Repeat(", {}", 99), 1) + "}",
			[]string{"rows: Number of rows must be from 1 to 60, not 61"}},
		{"everything at once", frame + `, "colour": 1, "name": 5, "units": "feet", "place": {"length": "12", "width": 5000, "depth": 2},
			"filter": [], "limits": {"speed": 1e999, "reserve": 1, "reserve": 2}, "header": {"layout": "star", "feed": null}, "units": "us"}`,
			[]string{
				"place.depth: place.depth is not part of a plan",
				"filter: filter must be an object in { }",
				"limits.reserve: limits.reserve must come only once",
				"colour: colour is not part of a plan",
				"units: units must come only once",
				"name: Name of the plan must be text in quotes",
				"units: Units must be one of the choices",
				"place.length: Place: length along the rows must be a number, without quotes",
				"place.width: Place: width across the rows must be from 0.5 to 200 m",
				"header.layout: Header: layout must be one of the choices",
				"header.feed: Header: the water comes in must be text in quotes",
				"limits.speed: Your limits: greatest speed in supply line and header must be a smaller number",
			}},
		{"in the lists", `{"format": "evenrow plan 1", "points": 3, "runs": [1], "emitters": [{"flow": true}], "rows": [{"plants": 2.5, "sun": 1, "spacing": 9}]}`,
			[]string{
				"points: points must be a list in [ ]",
				"runs.1: runs.1 must be an object in { }",
				"rows.1.sun: rows.1.sun is not part of a plan",
				"points: Number of points must be from 3 to 12, not 0",
				"emitters.1.flow: Emitter 1: flow must be a number, without quotes",
				"rows.1.plants: Row 1: plants must be a whole number from 1 to 400",
				"rows.1.spacing: Row 1: spacing must be from 0.05 to 3 m",
			}},
		{"a flood of names", frame + `, "place": {` + strings.Repeat(`"a": 1, `, 70) + `"length": 5}}`,
			[]string{"place: place must have fewer names: a plan has less than 64 in one place"}},
		{"a flood of names in the file", frame + strings.Repeat(`, "a": 1`, 70) + `}`,
			[]string{": The file must have fewer names: a plan has less than 64 in one place"}},
	} {
		p, errs := ReadJSON([]byte(c.file))
		var got []string
		for _, e := range errs {
			text, whole := strings.CutSuffix(e.Error(), ".")
			if !whole {
				t.Errorf("%s: %q is no sentence", c.name, e.Error())
			}
			got = append(got, e.Path+": "+text)
		}
		if !reflect.DeepEqual(got, c.want) || p != nil {
			t.Errorf("%s:\n got %q\nwant %q", c.name, got, c.want)
		}
	}
}

// Package encoding/json judges the reading: what it refuses is refused, and of
// what it accepts only size, depth and lone surrogates are.
func FuzzReadJSON(f *testing.F) {
	for _, x := range plan.Examples() {
		f.Add(JSON(x.Plan))
	}
	f.Add(JSON(told()))
	for _, s := range []string{`{"a": [1, -0.5e+3, "\u00e9\ud83c\udf45\n", true, null]}`, `"\ud83c"`, "[[[[[[[[[]]]]]]]]]", `"\ud83c \udf45"`, `"\udc00\ud83c"`, `"\ud83c\`, `"\ud83c`, "\"\xff\"", "-", "1e", "{\"a\"}"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		in := parser{data: data}
		root := in.document()
		var want any
		err := json.Unmarshal(data, &want)
		if err != nil && !in.bad && !strings.Contains(err.Error(), "cannot unmarshal number") {
			t.Fatalf("%q is read, and is not JSON: %v", data, err)
		}
		if err == nil && !in.bad && !same(&root, want) {
			t.Fatalf("%q is read as %+v, want %v", data, root, want)
		}
		text := string(data)
		if err == nil && in.bad && !strings.Contains(strings.ToLower(text), `\ud`) && strings.ToValidUTF8(text, "") == text &&
			strings.Count(text, "[")+strings.Count(text, "{") <= maxDepth-1 {
			t.Fatalf("%q is JSON, and is refused", data)
		}
		p, errs := ReadJSON(data)
		if (p == nil) != (len(errs) > 0) {
			t.Fatalf("%v, %v", p, errs)
		}
		if p != nil {
			carriesBack(t, p)
		}
	})
}

// same compares a node with what encoding/json made of the same text.
func same(n *node, want any) bool {
	switch w := want.(type) {
	case string:
		return n.kind == 's' && n.text == w
	case float64:
		return n.kind == 'n'
	case []any:
		for i := range w {
			if !same(&n.list[i], w[i]) {
				return false
			}
		}
		return n.kind == 'a' && len(n.list) == len(w)
	case map[string]any:
		last := map[string]*node{}
		for i, k := range n.keys {
			last[k] = &n.list[i]
		}
		for k, v := range w {
			if last[k] == nil {
				return false
			}
			// Where a name comes twice, encoding/json mixes objects.
			if len(n.keys) == len(w) && !same(last[k], v) {
				return false
			}
		}
		return n.kind == 'o' && len(last) == len(w)
	}
	return n.kind == 'c'
}
