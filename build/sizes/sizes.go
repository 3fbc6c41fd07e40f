// Package sizes measures what a reader has to download, and holds it against
// the budget.
package sizes

import (
	"bytes"
	"cmp"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"

	"github.com/andybalholm/brotli"
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

// A Part is a part of the program: what it belongs to, and its code or data.
type Part struct {
	Group, Name string
	Content     []byte
}

// Weights prints what each part of the program weighs, raw and compressed by
// itself, the heaviest group and the heaviest part of each first. Together the
// parts are more than the program, because alike ones share.
func Weights(parts []Part, cache Cache) string {
	groups := map[string][]Row{}
	sums := map[string]Row{}
	for _, p := range parts {
		r := Row{Name: p.Name, Raw: len(p.Content), Brotli: cache.Brotli(p.Content)}
		groups[p.Group] = append(groups[p.Group], r)
		sum := sums[p.Group]
		sums[p.Group] = Row{Name: p.Group, Raw: sum.Raw + r.Raw, Brotli: sum.Brotli + r.Brotli}
	}
	heaviest := func(a, b Row) int {
		return cmp.Or(cmp.Compare(b.Brotli, a.Brotli), cmp.Compare(a.Name, b.Name))
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "%-28s %8s %8s\n", "kB of the program", "raw", "brotli")
	for _, g := range slices.SortedFunc(maps.Values(sums), heaviest) {
		fmt.Fprintf(&b, "%-28s %8.1f %8.1f\n", g.Name, kB(g.Raw), kB(g.Brotli))
		rows := groups[g.Name]
		slices.SortFunc(rows, heaviest)
		for i, r := range rows {
			if r.Brotli < 1000 && i < len(rows)-1 { // the many small ones in one line
				fmt.Fprintf(&b, "  %-26s %8.1f %8.1f\n", fmt.Sprintf("%d others", len(rows)-i), kB(sum(rows[i:]).Raw), kB(sum(rows[i:]).Brotli))
				break
			}
			fmt.Fprintf(&b, "  %-26s %8.1f %8.1f\n", r.Name, kB(r.Raw), kB(r.Brotli))
		}
	}
	return b.String()
}

func sum(rows []Row) (s Row) {
	for _, r := range rows {
		s.Raw += r.Raw
		s.Brotli += r.Brotli
	}
	return s
}

func kB(bytes int) float64 { return float64(bytes) / 1000 }
