package form

import (
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/propose"
)

// drafted is a draft of names and texts.
func drafted(pairs ...string) (d plan.Draft) {
	for i := 0; i < len(pairs); i += 2 {
		d.Set(pairs[i], pairs[i+1])
	}
	return d
}

var inputs = regexp.MustCompile(`<(input|select)( type="[a-z]*")?( id="([^"]*)")? name="([^"]*)"`)

// Empty, every question has its inputs, each with a label and a place for what is
// wrong; twenty at most are to be filled in, and a set of radio buttons is one.
func TestQuestionsThatNobodyHasAnswered(t *testing.T) {
	html := Questions(plan.Draft{}, nil, false)
	names := map[string]bool{}
	for _, m := range inputs.FindAllStringSubmatch(html, -1) {
		kind, id, name := m[2], m[4], m[5]
		if kind == ` type="hidden"` {
			if strings.HasPrefix(name, propose.Prefix) {
				t.Errorf("%s is hidden before anything is chosen", name)
			}
			continue
		}
		names[name] = true
		if name == "units" {
			continue // its own radio buttons, which cannot be wrong
		}
		if kind != ` type="radio"` && !strings.Contains(html, `<label for="`+id+`">`) {
			t.Errorf("%s has no label", id)
		}
		if !strings.Contains(html, `id="e-`+name+`" hidden>`) {
			t.Errorf("%s has no place for what is wrong", name)
		}
	}
	if len(names) < 12 || len(names) > 20 {
		t.Errorf("%d inputs: %v", len(names), names)
	}
	list, _ := propose.Drawn(plan.Draft{})
	for _, q := range list {
		if !names[q.Name] {
			t.Errorf("%s is not asked", q.Name)
		}
	}
	for _, title := range propose.Asks {
		if !strings.Contains(html, `<legend>`+string(title)+`</legend>`) {
			t.Errorf("no heading %q", title)
		}
	}
	for _, said := range []string{"Tap: pressure with every tap closed", "Pump: greatest head", "Tank: height of the water above the rows", `name="action" value="ask-more"`, `name="action" value="propose"`} {
		if !strings.Contains(html, said) {
			t.Errorf("nothing says %q", said)
		}
	}
	if strings.Count(html, " checked") != 1 || strings.Contains(html, "aria-invalid") { // the units
		t.Error("something is answered, or wrong")
	}
	// With a script the figures come once a supply is chosen, and there are twenty boxes
	// and buttons at most before a first answer, each radio button for itself.
	short := Questions(plan.Draft{}, nil, true)
	if n := len(regexp.MustCompile(`<select|<input (type="radio"|id=)`).FindAllString(short, -1)); n > 20 || strings.Contains(short, "Greatest head") {
		t.Errorf("%d boxes stand before the first answer", n)
	}
	for _, s := range []string{"mains", "pump", "gravity", "pump-wanted"} {
		one := Questions(drafted(propose.SupplyAt, s), nil, true)
		if n := len(regexp.MustCompile(`<select|<input (type="radio"|id=)`).FindAllString(one, -1)); n > 20 {
			t.Errorf("%s: %d boxes", s, n)
		}
	}
}

// Typed text comes back as it is, wrong or not, with what is wrong beside it; the
// figures of another supply are kept and not shown.
func TestQuestionsWithAnswers(t *testing.T) {
	d := drafted("ask.crop.1", "tomato", "ask.plants.1", `"8 or 9"`, "ask.crop.2", "cucumber", "ask.medium", "pot", "ask.supply", "gravity", "ask.shut-off", "3", "ask.tank-height", "99")
	_, errs, _ := propose.Read(d)
	html := Questions(d, errs, false)
	for _, want := range []string{
		`value="&#34;8 or 9&#34;"`, `<option value="tomato" selected>`, `<option value="cucumber" selected>`,
		`id="f-ask.medium-pot" name="ask.medium" value="pot" checked`, `value="gravity" checked`,
		`name="rest" value="ask.shut-off=3"`, `name="ask.tank-height"`, `aria-label="Crop 2"`,
	} {
		if !strings.Contains(html, want) {
			t.Errorf("nothing has %s", want)
		}
	}
	if len(errs) < 3 {
		t.Errorf("only %v is wrong", errs)
	}
	for _, e := range errs {
		if !regexp.MustCompile(`id="e-` + regexp.QuoteMeta(e.Path) + `">[^<]`).MatchString(html) {
			t.Errorf("%s does not say what is wrong", e.Path)
		}
	}
	if strings.Contains(html, `for="f-ask.shut-off"`) || strings.Contains(html, `for="f-ask.rise"`) || strings.Contains(html, "Tank: height") {
		t.Error("figures of another supply are asked for")
	}
	for range propose.MaxCrops {
		propose.More(&d)
	}
	if html = Questions(d, nil, false); strings.Contains(html, AskMore) || strings.Count(html, `class="ask__crop"`) != propose.MaxCrops {
		t.Error("more crops may be added than are taken")
	}
	if strings.Count(html, "<div") != strings.Count(html, "</div>") || strings.Count(html, "<fieldset") != strings.Count(html, "</fieldset>") {
		t.Error("elements do not end")
	}
}
