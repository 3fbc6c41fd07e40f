package words

import (
	"slices"
	"strings"
	"sync"
	"testing"
)

func TestSay(t *testing.T) {
	for _, tt := range []struct {
		text Text
		args []string
		want string
	}{
		{"Nothing runs yet.", nil, "Nothing runs yet."},
		{"Row {row} ends at {end}.", []string{"3", "12 m"}, "Row 3 ends at 12 m."},
		{"{n} {n|row|rows}", []string{"1"}, "1 row"},
		{"{n} {n|row|rows}", []string{"0"}, "0 rows"},
		{"{n|One row lacks|Rows lack} {head}, {n} in all.", []string{"21", "3 m"}, "Rows lack 3 m, 21 in all."},
		{"{a} and {b}, {a} first", []string{"x", "{b}"}, "x and {b}, x first"}, // what fills a place is no text
		{"{a} without", nil, "{a} without"},
		{"{a", []string{"x"}, "{a"},
		{"}{a}", []string{"x"}, "}{a}"},
	} {
		if got := Say(tt.text, tt.args...); got != tt.want {
			t.Errorf("Say(%q, %q) = %q, want %q", tt.text, tt.args, got, tt.want)
		}
	}
}

func TestPlaces(t *testing.T) {
	if got := Places("{n|a|b} of {all} {n}, {n|c|d} {x"); !slices.Equal(got, []string{"n", "all"}) {
		t.Errorf("%q", got)
	}
}

func TestRemarksAreOfWhatIsNamedLater(t *testing.T) {
	r := About("{field} must be in {unit}, not in {typed}.", "m", `"{field}"`)
	if got, want := r.Of("Row 2: spacing"), `Row 2: spacing must be in m, not in "{field}".`; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// A label within a sentence: what begins with an abbreviation keeps it.
func TestWithin(t *testing.T) {
	for label, want := range map[Text]string{
		"Spacing": "spacing", "UTC offset in winter": "UTC offset in winter", "pH of the drain": "pH of the drain", "120 mesh": "120 mesh", "": "",
	} {
		if got := Within(label); got != want {
			t.Errorf("%s: %s, want %s", label, got, want)
		}
	}
	if got := Within("Tubing, {size}", "A 1"); got != "tubing, A 1" {
		t.Error(got)
	}
	l, _ := Read("counts: one many\n\nSpacing\nAbstand\n")
	Use(l)
	defer Use(nil)
	if got := Within("Spacing"); got != "Abstand" {
		t.Errorf("in German: %s", got)
	}
}

const polish = `counts: one few many

{n} {n|row|rows} of {all}
z {all}: {n} {n|rząd|rzędy|rzędów}

Yes
Tak
`

func TestAnotherLanguage(t *testing.T) {
	l, problem := Read(polish)
	if problem != "" {
		t.Fatal(problem)
	}
	Use(l)
	defer Use(nil)
	// The forms of 1, 2 to 4 and the rest, but 12 to 14 with the rest: CLDR plural
	// rules, Polish, whole numbers (from memory).
	for n, want := range map[int]string{0: "rzędów", 1: "rząd", 2: "rzędy", 4: "rzędy", 5: "rzędów", 11: "rzędów", 12: "rzędów", 14: "rzędów", 21: "rzędów", 22: "rzędy", 112: "rzędów", 122: "rzędy"} {
		if got := Say("{n} {n|row|rows} of {all}", N(n), "9"); got != "z 9: "+N(n)+" "+want {
			t.Errorf("%d: %s", n, got)
		}
	}
	if got := Say("Yes") + Say("No"); got != "TakNo" {
		t.Errorf("%s: what is missing stays English", got)
	}
}

func TestWaysOfCounting(t *testing.T) {
	for way, forms := range Ways() {
		for _, number := range []string{"0", "1", "2", "12", "25", "1.5", "", "–"} {
			if got := ways[way](number); got < 0 || got >= forms {
				t.Errorf("%s: form %d of %d for %q", way, got, forms, number)
			}
		}
	}
	if noneAndMany("0") != 0 || noneAndMany("1") != 0 || noneAndMany("2") != 1 {
		t.Error("French counts 0 as one: CLDR plural rules (from memory)")
	}
}

func TestBadLists(t *testing.T) {
	for _, list := range []string{"", "counts: dozens", "Yes\nTak", "counts: one\nYes\nTak", "counts: one\n\nYes", "counts: one\n\nYes\n\n\nNo\nNie"} {
		if l, problem := Read(list); l != nil || problem == "" {
			t.Errorf("%q is taken", list)
		}
	}
	if _, problem := Read(strings.ReplaceAll(polish, "\n", "\r\n")); problem != "" {
		t.Error(problem)
	}
}

func TestLanguagesAtOnce(t *testing.T) {
	l, _ := Read(polish)
	defer Use(nil)
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			for range 200 {
				Use(l)
				if got := Say("Yes"); got != "Yes" && got != "Tak" {
					t.Error(got)
				}
				Use(nil)
			}
		})
	}
	all.Wait()
}

func FuzzSay(f *testing.F) {
	f.Add("{n} {n|row|rows}", "1")
	f.Fuzz(func(t *testing.T, text, arg string) {
		Say(Text(text), arg, arg)
		Read(text)
	})
}
