package sizes

import (
	"bytes"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
)

func TestMeasureAddsUpByKind(t *testing.T) {
	text := []byte(strings.Repeat("every plant in the row ", 100))
	rows := Measure(map[string][]byte{"a.js": text, "b/c.js": text, "d.css": []byte("x")}, "")
	if len(rows) != 2 || rows[0].Name != "css" || rows[1].Name != "js" {
		t.Fatalf("rows %v", rows)
	}
	js := rows[1]
	if js.Raw != 2*len(text) || js.Gzip >= js.Raw/10 || js.Brotli >= js.Raw/10 || js.Gzip <= 0 || js.Brotli <= 0 {
		t.Errorf("two scripts of %d bytes measure %+v", len(text), js)
	}
	if table := Table(rows); !strings.Contains(table, "js") || !strings.Contains(table, "\nall ") {
		t.Errorf("table\n%s", table)
	}
}

// What is measured must be what can be unpacked again.
func TestBrotliUnpacks(t *testing.T) {
	text := []byte(strings.Repeat("head, lateral, emitter; ", 500))
	var out bytes.Buffer
	w := brotli.NewWriterOptions(&out, brotli.WriterOptions{Quality: brotli.BestCompression, LGWin: 24})
	w.Write(text)
	w.Close()
	if got := Cache("").Brotli(text); got != out.Len() {
		t.Errorf("%d bytes, want %d", got, out.Len())
	}
	var back bytes.Buffer
	if _, err := back.ReadFrom(brotli.NewReader(&out)); err != nil || !bytes.Equal(back.Bytes(), text) {
		t.Errorf("unpacks to %d bytes, %v", back.Len(), err)
	}
}

func TestCacheRemembersBySum(t *testing.T) {
	c := Cache(t.TempDir())
	a := c.Brotli([]byte("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"))
	entries, err := os.ReadDir(string(c))
	if err != nil || len(entries) != 1 {
		t.Fatalf("%d entries, %v", len(entries), err)
	}
	// The remembered number is used, and only for the same content.
	if err := os.WriteFile(string(c)+"/"+entries[0].Name(), []byte("12345"), 0o666); err != nil {
		t.Fatal(err)
	}
	if got := c.Brotli([]byte("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa")); got != 12345 {
		t.Errorf("measured again: %d", got)
	}
	if got := c.Brotli([]byte("b")); got == 12345 || got == a {
		t.Errorf("other content measures %d", got)
	}
}

func last(limits []Limit) int { return limits[len(limits)-1].KB * 1000 }

func TestBudgetNamesAllThatIsOver(t *testing.T) {
	if _, err := Budget(last(Program), last(Script), last(Style)); err != nil {
		t.Errorf("within the budget: %v", err)
	}
	defer func(p, s []Limit) { Program, Style = p, s }(Program, Style)
	Program = []Limit{{700, "at first"}, {640, "for less"}}
	Style = []Limit{{16, "at first"}}
	_, err := Budget(640_100, last(Script), 17_000)
	const want = `program, brotli: 640.1 kB is over the budget of 640 kB: win it back, or add a line {641, "what for"} in build/sizes/budget.go
style, minified: 17.0 kB is over the budget of 16 kB: win it back, or add a line {17, "what for"} in build/sizes/budget.go`
	if err == nil || err.Error() != want {
		t.Errorf("%v\nwant\n%s", err, want)
	}
}

// Each line of the budget says what its kB are for, and no reason stands for two.
func TestEveryLineOfTheBudgetHasAReason(t *testing.T) {
	for name, limits := range map[string][]Limit{"program": Program, "script": Script, "style": Style} {
		seen := map[string]bool{}
		for i, l := range limits {
			if len(l.Reason) < 20 || seen[l.Reason] {
				t.Errorf("%s, line %d: %q is no reason, or that of another line", name, i+1, l.Reason)
			}
			if i > 0 && l.KB == limits[i-1].KB {
				t.Errorf("%s, line %d: nothing changes", name, i+1)
			}
			seen[l.Reason] = true
		}
	}
}

func TestWeightsPutTheHeaviestFirst(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2)) // which does not compress
	of := func(size int) []byte {
		b := make([]byte, size)
		for i := range b {
			b[i] = byte(random.Uint32())
		}
		return b
	}
	got := strings.Fields(Weights([]Part{
		{"works", "layout", of(2000)}, {"shown", "view", of(3000)}, {"shown", "page", of(400)},
		{"works", "network", of(5000)}, {"shown", "sheet", of(500)},
	}, ""))
	want := strings.Fields(`kB of the program raw brotli
works 7.0 7.0 network 5.0 5.0 layout 2.0 2.0
shown 3.9 3.9 view 3.0 3.0 2 others 0.9 0.9`)
	if !slices.Equal(got, want) {
		t.Errorf("%q, want\n%q", got, want)
	}
}
