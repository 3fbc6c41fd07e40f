package page

import (
	"net/url"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// seasonOf is what the page says of the season of a form, by fragment, without
// markup and with plain spaces.
func seasonOf(t *testing.T, data url.Values) map[string]string {
	t.Helper()
	if r := new(Session).Answer(data.Encode()); len(r.Errors) > 0 {
		t.Fatal(r.Errors)
	}
	var s Session
	data.Set(StepName, stepOf(sheet.Season))
	said := map[string]string{}
	var all []block.Fragment
	for i := range view.Jobs {
		data.Set(plan.AtName, view.Jobs[i].ID)
		all = append(all, s.Rest(data.Encode()).Fragments...)
	}
	data.Del(StepName)
	for _, f := range all {
		said[f.ID] = strings.Join(strings.Fields(regexp.MustCompile(`<svg.*?</svg>|<[^>]*>`).ReplaceAllString(f.HTML, " ")), " ") // no-break spaces too
	}
	if said["timer"] == "" || said["tasks"] == "" {
		t.Fatal("the season is not told")
	}
	return said
}

// north is the default plan at 65° N without heating: 2.5 months without frost.
func north(t *testing.T) url.Values {
	data := start(t)
	data.Set("sky.latitude", "65")
	data.Set("season.last-frost", "2027-06-10")
	data.Set("season.first-frost", "2027-08-25")
	return data
}

// Where the frost comes before the first harvest, the crop leaves the card, the
// tasks and the water. Derived: peppers are picked 95 days after planting out on
// 13 June, tomatoes 60, cucumbers 35.
func TestWhatFrostKillsIsNotWateredOn(t *testing.T) {
	said := seasonOf(t, north(t))
	for _, want := range []string{"2 things do not fit.", "Sweet pepper: the frost of 25 August 2027 kills it before the first harvest, which would be on 16 September 2027. The time without frost is 36 days too short for it: heat, or choose a quicker crop. Tasks and water end on 10 August 2027.",
		"Tomato: the first harvest would be on 12 August 2027, less than two weeks before the frost of 25 August 2027"} {
		if !strings.Contains(said["season"], want) {
			t.Errorf("not said: %s\nin %.1200s", want, said["season"])
		}
	}
	if strings.Contains(said["season"], "as if that frost did not come") {
		t.Error("the killed crop is counted on")
	}
	// Nothing is set, given, picked or tied up from the frost on.
	for _, id := range []string{"timer", "shots", "tasks", "weather", "tank", "outage"} {
		if late := regexp.MustCompile(`\d+ (Sep|Oct|Nov|Dec)[a-z]*\b|(2[5-9]|3[01]) Aug[a-z]*\b`).FindString(said[id]); late != "" {
			t.Errorf("%s goes on until %s", id, late)
		}
	}
	if n := strings.Count(said["tasks"], "First harvest"); n != 2 { // cucumbers', and how it is done
		t.Errorf("%d first harvests, want that of cucumbers alone:\n%s", n, said["tasks"])
	}
	if !strings.Contains(said["tasks"], "Wed 11 August Drain the system") {
		t.Errorf("not drained two weeks before the frost: %s", said["tasks"])
	}

	// A day more and the tomatoes can go out in time, on the day after the last
	// frost alone: that is advised, in any year, and holds.
	data := north(t)
	data.Set("season.first-frost", "2027-08-26")
	for _, year := range []string{"2027", "2028"} {
		data.Set("season.mode", "planting")
		data.Set("season.date", year+"-06-13")
		if said := seasonOf(t, data); !strings.Contains(said["season"], "Sow it 2 days earlier, or heat. Tasks and water end on 11 August "+year) || !strings.Contains(said["season"], "is 35 days too short for it") {
			t.Errorf("%s: %.1200s", year, said["season"])
		}
		data.Set("season.date", year+"-06-11")
		if said := seasonOf(t, data); strings.Contains(said["season"], "Tomato: the first harvest") || strings.Contains(said["season"], "planted out on") {
			t.Errorf("%s: %.1200s", year, said["season"])
		}
	}

	// Heated, all of it grows on.
	data = north(t)
	data.Set("season.shelter", "heated")
	if said := seasonOf(t, data); !strings.Contains(said["season"], "It fits together.") || !strings.Contains(said["timer"], "Oct") || !strings.Contains(said["tasks"], "First harvest: sweet pepper") {
		t.Errorf("heated: %.500s\n%.500s", said["season"], said["timer"])
	}
}

// A hardy crop in the open, whose water stands in the pipes through ten weeks
// of frost and more.
func TestAHardyCropKeepsTheSystemFullInFrost(t *testing.T) {
	hardy := func(shelter string) url.Values {
		data := start(t)
		for _, row := range []string{"1", "2", "3", "4"} {
			data.Set("rows."+row+".crop", "kale")
		}
		data.Set("season.shelter", shelter)
		data.Set("season.mode", "planting")
		data.Set("season.date", "2027-09-01")
		Reshape(t, data)
		return data
	}
	words := "The system stays full on 86 days on which there may be frost, from 8 October 2027 on"
	for _, shelter := range []string{"open", "unheated"} {
		if said := seasonOf(t, hardy(shelter)); !strings.Contains(said["season"], "One thing does not fit. ") || !strings.Contains(said["season"], words) || !strings.Contains(said["season"], "drain pump, filter and pipes on every evening") {
			t.Errorf("%s: %.900s", shelter, said["season"])
		}
	}
	if said := seasonOf(t, hardy("heated")); strings.Contains(said["season"], words) || !strings.Contains(said["season"], "It fits together.") {
		t.Errorf("heated: %.600s", said["season"])
	}
	if said := seasonOf(t, start(t)); strings.Contains(said["season"], "stays full") {
		t.Errorf("the default plan: %.600s", said["season"])
	}
}

// Reshape fills in what a change of a choice adds to the form.
func Reshape(t *testing.T, data url.Values) {
	t.Helper()
	if html, sent := fragment(new(Session).Answer(data.Encode()), "ask"); sent {
		for name, v := range filled(html) {
			if !data.Has(name) {
				data[name] = v
			}
		}
	}
	data.Del(plan.ActionName)
}

// The last treatment of the lines is followed by a flush, and the system is
// drained two weeks before the first frost.
func TestTheSeasonEndsInOrder(t *testing.T) {
	tasks := seasonOf(t, start(t))["tasks"]
	at := -1
	for _, what := range []string{"Thu 23 September Remove plants: sweet pepper", "Clean the lines", "Flush all ends", "Fri 24 September Drain the system and store it"} {
		i := strings.Index(tasks[max(at, 0):], what)
		if i < 0 {
			t.Fatalf("%q does not stand behind %d in %s", what, at, tasks)
		}
		at = max(at, 0) + i
	}
}
