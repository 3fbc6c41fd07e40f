package carry

import (
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
)

// told is a plan that was proposed, of which a grower has told a little.
func told() *plan.Plan {
	p := plan.Default()
	p.Propose()
	p.SetOrigin(plan.FieldNamed("runs", "rise"), 0, plan.Measured)
	p.SetOrigin(plan.FieldNamed("rows", "spacing"), 2, plan.Typed)
	p.SetOrigin(plan.FieldNamed("", "name"), 0, plan.Typed)
	return p
}

// What is known of values takes a link little: a plan of which a grower typed
// fifteen values is a line of text longer.
func TestOriginsAreShort(t *testing.T) {
	p := plan.Default()
	without := len(Link(p))
	p.Propose()
	if n := len(Link(p)) - without; n > 8 {
		t.Errorf("a plan that was proposed takes %d characters more", n)
	}
	n := 0
	for _, f := range plan.Fields() {
		if (f.Section == "rows" || f.Section == "supply" || f.Section == "place" || f.Section == "runs") && n < 15 {
			p.SetOrigin(f, 0, plan.Typed)
			n++
		}
	}
	more := len(Link(p)) - without
	t.Logf("%d values of which something is known take %d characters", n, more)
	if more > 110 {
		t.Errorf("%d values of which something is known take %d characters", n, more)
	}
}

func TestOriginsInAFile(t *testing.T) {
	file := string(JSON(told()))
	const want = ",\n\t\"came\": {\"*\": \"assumed\", \"name\": \"typed\", \"runs.rise\": \"measured\", \"rows.spacing\": [\"\", \"\", \"typed\", \"\"]}\n}\n"
	if !strings.HasSuffix(file, want) {
		t.Errorf("the file ends %q, want %q", file[max(0, len(file)-len(want)-20):], want)
	}
	if strings.Contains(string(JSON(plan.Default())), "came") {
		t.Error("a plan of which nothing is known tells how its values came")
	}
	for _, c := range []struct{ came, want string }{
		{`5`, "came: came must be an object in { }."},
		{`{"rows.1.spacing": "typed"}`, "came.rows.1.spacing: came.rows.1.spacing is not part of a plan."},
		{`{"*": ["typed"]}`, "came.*: came.* is not part of a plan."},
		{`{"rows.spacing": "guessed"}`, "came.rows.spacing: came.rows.spacing must be assumed, looked-up, typed or measured, in quotes."},
		{`{"rows.spacing": ["typed", 1]}`, "came.rows.spacing: came.rows.spacing must be assumed, looked-up, typed or measured, in quotes."},
		{`{"rows.spacing": "typed", "rows.spacing": "typed"}`, "came.rows.spacing: came.rows.spacing must come only once."},
		{`{` + strings.Repeat(`"a": "typed", `, 400) + `"b": "typed"}`, "came: came must have fewer names: a plan has less than"},
	} {
		_, errs := ReadJSON([]byte(strings.TrimSuffix(file, want) + ",\"came\": " + c.came + "}"))
		if len(errs) == 0 || !strings.HasPrefix(errs[0].Path+": "+errs[0].Text, c.want) {
			t.Errorf("%.60s: %v, want %s", c.came, errs, c.want)
		}
	}
}

// What is known of values comes back from a link, a file and a form, whatever it is.
func TestOriginsComeBack(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for n := range 300 {
		p := plan.Examples()[n%5].Plan
		if n%3 == 0 {
			p.Propose()
		}
		for _, f := range plan.Fields() {
			for i := range plan.SectionNamed(f.Section).Records(p) {
				if r.IntN(1+n%20) == 0 {
					p.SetOrigin(f, i, plan.Origin(r.IntN(plan.Origins)))
				}
			}
		}
		carriesBack(t, p)
		if q, errs := plan.ParseDraft(plan.DraftOf(p).Encode()).Read(); len(errs) > 0 || !reflect.DeepEqual(p, q) {
			t.Fatalf("by form: %v", errs)
		}
		// A link says the same twice, and one bit that changes never passes unsound.
		data, _ := fromBase64(Link(p)[1:])
		for range 20 {
			data := append([]byte(nil), data...)
			data[len(data)-1-r.IntN(min(40, len(data)))] ^= 1 << r.IntN(8)
			if q, err := ReadLink(string(toBase64([]byte{version}, data))); err == nil {
				carriesBack(t, q)
			}
		}
	}
}

// A newer program's words for how values came are not taken for a plan without.
func TestOriginsOfANewerProgramAreRefused(t *testing.T) {
	origins := func(b ...byte) string {
		return string(toBase64([]byte{version}, append([]byte{0xa1, 0x18, originsID}, b...)))
	}
	for _, c := range []struct {
		link, want string
	}{
		{origins(0xa1, 0x18, 99, 0xa0), "newer"},             // a section
		{origins(0xa1, 1, 0xa1, 0x18, 99, 3), "newer"},       // a field
		{origins(0xa1, 1, 0xa1, 1, plan.Origins), "damaged"}, // an origin
		{origins(0xa1, 1, 0xa1, 1, 0x82, 1, 2), "damaged"},   // two origins of one place
		{origins(0xa2, 1, 0xa0, 0, 0xa0), "damaged"},         // out of order
		{origins(0xa1, 0x21, 1), "damaged"},                  // -2
	} {
		if _, err := ReadLink(c.link); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", c.link, err, c.want)
		}
	}
}
