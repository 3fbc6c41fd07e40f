package sizes

import (
	"bytes"
	"os"
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

func TestBudgetNamesAllThatIsOver(t *testing.T) {
	if _, err := Budget(MaxProgram, MaxScript, MaxStyle); err != nil {
		t.Errorf("within the budget: %v", err)
	}
	_, err := Budget(MaxProgram+100, MaxScript, MaxStyle+1000)
	const want = "program, brotli: 780.1 kB is over the budget of 780 kB\nstyle, minified: 17.0 kB is over the budget of 16 kB"
	if err == nil || err.Error() != want {
		t.Errorf("%v\nwant\n%s", err, want)
	}
}
