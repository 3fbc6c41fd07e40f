package texts

import (
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/ground/words"
)

// program is what the repository says, read once.
func program(t *testing.T) *Program {
	t.Helper()
	p, err := Find("../..")
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestTextsAreWhole(t *testing.T) {
	p := program(t)
	for _, problem := range p.Problems {
		t.Error(problem)
	}
	if len(p.Texts) < 5 {
		t.Errorf("only %d texts were found", len(p.Texts))
	}
	list := p.Pseudo()
	if _, problem := words.Read(list); problem != "" {
		t.Fatal(problem)
	}
	for _, problem := range p.Check(list) {
		t.Error(problem)
	}
}

// done are the rooms whose words are whole texts. A room comes here when it has
// no others left.
var done = []string{
	"ground/unit",
	"grower/plan",
	"grower/carry",
	"shown/form",
	"shown/page",
	"shown/propose",
	"shown/answer",
	"shown/buy",
	"shown/grow",
	"shown/scene",
	"works/parts",
	"ground/day",
	"works/layout",
	"year/demand",
	"year/drain",
	"year/ical",
	"year/season",
}

// codes are strings of those rooms that nobody reads.
var codes = []string{
	// units as they are typed, and the symbols that all languages share
	"m metre metres", "ft foot feet ' ′", "in inch inches \" ″", "L/h L/hr L/hour lph litres/h liters/h", "L/min L/minute lpm litres/min liters/min",
	"gal/min gpm gallons/min", "gal/h gal/hr gal/hour gph gallons/h", "mbar hPa", "litre litres liter liters", "gallon gallons", "watt watts", "minute minutes",
	"Pa", "Btu/ft²", "fl oz",
	// the mark of a file
	"evenrow plan ",
	// names of plans: their growers gave them, and links hold them
	"Millrace tunnel", "The wrong pump", "Balcony", "Long field", "Loop",
}

func TestDoneRoomsSayNothingElse(t *testing.T) {
	for _, loose := range program(t).Loose(done, func(s string) bool { return slices.Contains(codes, s) }) {
		t.Error(loose)
	}
}

func TestWhatIsWrongWithATextIsNamed(t *testing.T) {
	for text, want := range map[string]string{
		" and more": "space", "a\nb": "one line", "{a": "brace", "a}": "brace", "{a{b}}": "brace",
		"{}": "name", "{A}": "name", "{n|one}": "two forms", "{n|a|b|c}": "two forms",
		"{n} {n|row|rows} at {place2}.": "",
	} {
		if got := malformed(text); (got == "") != (want == "") || !strings.Contains(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func TestWhatIsWrongWithAListIsNamed(t *testing.T) {
	p := &Program{Texts: []Text{{"a.go:1", "Yes"}, {"a.go:2", "{n} {n|row|rows}"}}}
	good := "counts: one few many\n\nYes\nTak\n\n{n} {n|row|rows}\n{n} {n|rząd|rzędy|rzędów}\n"
	if got := p.Check(good); len(got) > 0 {
		t.Error(got)
	}
	for change, want := range map[[2]string]string{
		{"counts: one few many", "counts: some"}: "how the language counts",
		{"Yes\nTak", "Yo\nTak"}:                  "does not say this",
		{"Yes\nTak\n", "Yes\nTak\n\nYes\nTak\n"}: "twice",
		{"rząd|rzędy|rzędów", "rząd|rzędy"}:      "3 forms",
		{"\n{n} {n|rząd", "\n{m} {n|rząd"}:       "the places are {n}",
		{"\nYes\nTak\n", ""}:                     "it lacks: Yes",
	} {
		if got := strings.Join(p.Check(strings.Replace(good, change[0], change[1], 1)), "; "); !strings.Contains(got, want) {
			t.Errorf("%q: %q, want %q", change, got, want)
		}
	}
}

func TestPseudo(t *testing.T) {
	for text, want := range map[string]string{
		"Yes":                    "⟦Ýéš ~⟧",
		"{n} {n|row|rows} {end}": "⟦{n} {n|ŕöŵ|ŕöŵš} {end} ~⟧",
	} {
		if got := pseudo(text); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}
