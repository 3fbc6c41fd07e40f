// Package sizes measures what a reader has to download, and holds it against
// the budget.
package sizes

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"

	"github.com/andybalholm/brotli"
)

// The budget, in bytes. A reader on a field's edge has little signal; a change
// that needs more than this has to win it back elsewhere.
const (
	MaxProgram = 780_000 // WebAssembly, compressed by brotli
	MaxScript  = 24_000  // scripts written by hand, minified: a third of that once it is compressed
	MaxStyle   = 16_000  // styles, minified
)

// A Row is one kind of file, added up.
type Row struct {
	Name              string
	Raw, Gzip, Brotli int
}

// A Cache remembers the compressed size of content by its hash, in a folder,
// because brotli takes seconds for a program. An empty name remembers nothing.
type Cache string

// Measure returns a row for each kind of file, by ending, each file compressed
// by itself as a server would send it.
func Measure(files map[string][]byte, cache Cache) []Row {
	kinds := map[string]*Row{}
	for name, content := range files {
		kind := path.Ext(name)
		if kinds[kind] == nil {
			kinds[kind] = &Row{Name: kind[min(1, len(kind)):]}
		}
		row := kinds[kind]
		row.Raw += len(content)
		row.Gzip += zipped(content)
		row.Brotli += cache.Brotli(content)
	}
	rows := []Row{}
	for _, kind := range slices.Sorted(maps.Keys(kinds)) {
		rows = append(rows, *kinds[kind])
	}
	return rows
}

func zipped(content []byte) int {
	var out bytes.Buffer
	w, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		panic(err) // the level is a constant
	}
	w.Write(content) // a buffer takes everything
	w.Close()
	return out.Len()
}

// Brotli is the size of content compressed as hard as brotli can, with a
// window of 16 MiB, as a static host would.
func (c Cache) Brotli(content []byte) int {
	sum := sha256.Sum256(content)
	name := filepath.Join(string(c), "brotli-"+hex.EncodeToString(sum[:]))
	if c != "" {
		if size, err := os.ReadFile(name); err == nil {
			if n, err := strconv.Atoi(string(size)); err == nil {
				return n
			}
		}
	}
	var out bytes.Buffer
	w := brotli.NewWriterOptions(&out, brotli.WriterOptions{Quality: brotli.BestCompression, LGWin: 24})
	w.Write(content)
	w.Close()
	if c != "" {
		// What cannot be remembered is measured again the next time.
		if os.MkdirAll(string(c), 0o777) == nil {
			os.WriteFile(name, []byte(strconv.Itoa(out.Len())), 0o666)
		}
	}
	return out.Len()
}

// Table prints the rows in kB, with their sum.
func Table(rows []Row) string {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%-12s %10s %10s %10s\n", "kB", "raw", "gzip", "brotli")
	var sum Row
	for _, r := range rows {
		fmt.Fprintf(&b, "%-12s %10.1f %10.1f %10.1f\n", r.Name, kB(r.Raw), kB(r.Gzip), kB(r.Brotli))
		sum.Raw += r.Raw
		sum.Gzip += r.Gzip
		sum.Brotli += r.Brotli
	}
	fmt.Fprintf(&b, "%-12s %10.1f %10.1f %10.1f\n", "all", kB(sum.Raw), kB(sum.Gzip), kB(sum.Brotli))
	return b.String()
}

// Budget prints what is measured against the budget, and names all that is
// over it. program is the size compressed by brotli.
func Budget(program, script, style int) (string, error) {
	var b bytes.Buffer
	var errs []error
	for _, line := range []struct {
		name      string
		size, max int
	}{
		{"program, brotli", program, MaxProgram},
		{"scripts by hand, minified", script, MaxScript},
		{"style, minified", style, MaxStyle},
	} {
		fmt.Fprintf(&b, "%-26s %7.1f of %5.0f kB\n", line.name, kB(line.size), kB(line.max))
		if line.size > line.max {
			errs = append(errs, fmt.Errorf("%s: %.1f kB is over the budget of %.0f kB", line.name, kB(line.size), kB(line.max)))
		}
	}
	return b.String(), errors.Join(errs...)
}

func kB(bytes int) float64 { return float64(bytes) / 1000 }
