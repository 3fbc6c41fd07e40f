package answer

import (
	"encoding/json"
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// The language of the keys: words in lower case, divided by underscores. A
// number ends in its unit, unless it is one of those below; nothing else does.
var (
	aKey  = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)
	aWord = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

	// Words that neither the trade nor a grower uses so: see build/content_test.go.
	stumbles = regexp.MustCompile(`(^|[_-])(lead|ring|clear|treat|reserve|upright|thirst|blow|dear|edition)([_-]|$)`)

	unitEnds = []string{"_m", "_m3", "_m3_s", "_m_s", "_s", "_pa", "_w", "_days", "_share"}

	// Numbers that places, zones and rows have, and counts.
	counted = []string{
		"zone", "row", "than_row", "like_row", "rows", "plant", "number", "weakest_zone", "least_alike_zone",
		"plants", "emitters", "emitters_open", "emitters_below_range", "emitters_above_range", "emitters_shut", "stuck",
		"count", "spare", "rolls", "have", "packs", "pack", "over", "parts_without_price", "records_of_no_part", "times", "draws", "draws_solved_in_full", "iterations", "zones", "zones_tried", "fewest_zones", "zones_that_help",
		"ends", "most_ends", "more_plants_a_row", "plants_cut_off", "other_plants_dry", "other_plants_below_range", "other_plants_above_range",
		"plants_that_get_it", "plants_not_worked_out", "plants_shut", "plants_below_range", "plants_in_range", "plants_above_range", "open_when_all_were", "open_when_pressure_builds_slowly", "open_when_turned_on", "open_when_rows_come_in_turn",
		"compared", "worked_out", "passed_over", "unbeaten", "deciding_rows", "valves_for_each", "settings", "settings_by_hand", "records", "values_that_cannot", "values_not_tried",
	}
	// In the currency of the plan's prices.
	money = []string{"price", "cost", "cost_more", "plan_cost"}
	// The trade's own measures of evenness, all shares of one.
	evennesses = []string{"cu", "cv", "du", "us", "eu", "eu_by_formula"}
	// Numbers whose unit stands beside them, under "unit"; none is a count or a share.
	beside = []string{"value", "limit", "yes_with", "ended_at", "from", "may_be_from", "may_be_to", "still_with", "turns_at"}

	// Text that names one of a few kinds.
	coded = []string{"kind", "verdict", "group", "sky", "ended_by", "stretch", "forbidden_by", "sameness", "place", "state", "relief", "told_by", "cleaned", "remedy", "conclusion", "weakest_emitter", "yes_only", "none_because", "most_failed", "filled", "came"}
)

// Every key of every example's answer, and of what no example has, speaks one
// language. The plan in it is a plan file, whose names are those of the form.
func TestKeysSpeakOneLanguage(t *testing.T) {
	for _, ends := range [][]string{counted, money, evennesses, beside} {
		for _, name := range ends {
			if slices.ContainsFunc(unitEnds, func(end string) bool { return strings.HasSuffix(name, end) }) {
				t.Errorf("%s ends in a unit and is listed as having none", name)
			}
		}
	}
	seen, told := map[string]bool{}, map[string]bool{}
	fault := func(where, is string) {
		if !told[where] { // once for all plants and days
			t.Errorf("%s %s", where, is)
		}
		told[where] = true
	}
	var walk func(where, key string, v any)
	walk = func(where, key string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for k, child := range v {
				if where == "" && k == "plan" {
					continue
				}
				if seen[k] = true; !aKey.MatchString(k) {
					fault(where+"."+k, "is no key of ours")
				}
				walk(where+"."+k, k, child)
			}
		case []any:
			for _, child := range v {
				walk(where, key, child)
			}
		case float64:
			if is := numberKey(key); is != "" {
				fault(where, is)
			}
		case string, bool:
			if slices.ContainsFunc(unitEnds, func(end string) bool { return strings.HasSuffix(key, end) }) {
				fault(where, fmt.Sprintf("ends in a unit and is %v", v))
			}
			if text, is := v.(string); is && slices.Contains(coded, key) && (!aWord.MatchString(text) || text == "other") {
				fault(where, fmt.Sprintf("is %q, want words in lower case with hyphens between them", text))
			}
		}
	}
	for _, e := range plan.Examples() {
		text, err := JSON(e.Plan)
		if err != nil {
			t.Fatal(err)
		}
		var d any
		if err := json.Unmarshal(text, &d); err != nil {
			t.Fatal(err)
		}
		walk("", "", d)
	}
	if len(seen) < 120 {
		t.Errorf("only %d keys were seen", len(seen))
	}
	// What is left out where it is empty, or null, is declared all the same.
	declared(t, reflect.TypeFor[document](), func(where, key string, of reflect.Kind) {
		if !aKey.MatchString(key) || stumbles.MatchString(key) {
			t.Errorf("%s.%s is no key of ours", where, key)
		}
		if of != reflect.Float64 && of != reflect.Int {
			return
		}
		if fault := numberKey(key); fault != "" {
			t.Errorf("%s.%s %s", where, key, fault)
		}
	})
	// Every kind has words for a name.
	for what, list := range named() {
		for _, name := range list {
			if !aWord.MatchString(name) || stumbles.MatchString(name) {
				t.Errorf("%s: %q is no name of a kind", what, name)
			}
		}
	}
	units := []unit.Kind{}
	for k := range sheet.Kinds {
		units = append(units, sheet.Kinds[k].Unit)
	}
	for k := range sheet.FixesOf {
		units = append(units, sheet.FixesOf[k].Unit)
	}
	known := []string{"", "m", "Pa", "W", "s", "m/s", "m³/s"}
	for _, u := range units {
		if name, ours := inner[u]; !ours || !slices.Contains(known, name) {
			t.Errorf("%d, the unit of a kind, is none of ours", u)
		}
	}
	for _, k := range rooms {
		if !slices.Contains(known, k.unit) {
			t.Errorf("%+v: its unit is none of ours", k)
		}
	}
	// The patterns refuse what stood here once.
	for _, old := range []string{"record-hot", "drain-hot", "imbalance", "draws_without_one", "until"} {
		if aKey.MatchString(old) && numberKey(old) == "" {
			t.Errorf("%s passes", old)
		}
	}
}

// numberKey says what is wrong with the key of a number.
func numberKey(key string) string {
	if slices.ContainsFunc(unitEnds, func(end string) bool { return strings.HasSuffix(key, end) }) ||
		slices.Contains(counted, key) || slices.Contains(money, key) || slices.Contains(evennesses, key) || slices.Contains(beside, key) {
		return ""
	}
	return fmt.Sprintf("ends in none of the units %v and is no known count", unitEnds)
}

// declared visits every key that a type is written with.
func declared(t *testing.T, of reflect.Type, visit func(where, key string, of reflect.Kind)) {
	t.Helper()
	for of.Kind() == reflect.Pointer || of.Kind() == reflect.Slice {
		of = of.Elem()
	}
	if of.Kind() != reflect.Struct {
		return
	}
	for i := range of.NumField() {
		f := of.Field(i)
		if f.Anonymous { // its keys are those of what it is embedded in
			declared(t, f.Type, visit)
			continue
		}
		key, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if key == "plan" {
			continue
		}
		inner := f.Type
		for inner.Kind() == reflect.Pointer || inner.Kind() == reflect.Slice {
			inner = inner.Elem()
		}
		if inner.Kind() == reflect.Map {
			t.Errorf("%s.%s is a map, whose keys nothing declares", of.Name(), key)
		}
		visit(of.Name(), key, inner.Kind())
		if inner != of { // a fix may hold another
			declared(t, inner, visit)
		}
	}
}
