// Package crops makes the table of crops that the calculation has from the two
// files that people edit: wasm/trade/catalogue/crops.csv, a line for each crop
// with a source beside each value, and crop-sources.csv, what these sources are.
// The calculation itself reads no files, and a reader of CSV would be downloaded
// by everybody.
package crops

import (
	"encoding/csv"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"io/fs"
	"math"
	"slices"
	"strconv"
	"strings"

	"evenrow/build/problem"
	"evenrow/wasm/trade/catalogue"
)

// The files, in the folder of package catalogue.
const (
	List    = "crops.csv"
	Sources = "crop-sources.csv"
	Made    = "crop_table.go"
)

// A column is how a trait stands in the list.
type column struct {
	head string  // its name, and the unit at its end
	per  float64 // of the whole numbers in the table, to one of the unit
}

var columns = [catalogue.Traits]column{
	catalogue.Spacing:  {"spacing in the row, cm", 10},
	catalogue.Crowd:    {"plants to a square metre", 100},
	catalogue.PerSlab:  {"plants to a slab of 1 m", 1},
	catalogue.Medium1:  {"medium for one plant, L", 1000},
	catalogue.Height:   {"height, m", 100},
	catalogue.Emerge:   {"to emergence, days", 1},
	catalogue.InPlug:   {"in the plug, days", 1},
	catalogue.InBlock:  {"in the block, days", 1},
	catalogue.Wait:     {"planting out to first harvest, days", 1},
	catalogue.Picking:  {"harvest, weeks", 1},
	catalogue.KcIni:    {"Kc just planted", 100},
	catalogue.KcMid:    {"Kc grown", 100},
	catalogue.KcTied:   {"Kc grown and tied up", 100},
	catalogue.KcEnd:    {"Kc at the end", 100},
	catalogue.Ini:      {"just planted, days", 1},
	catalogue.Dev:      {"canopy filling, days", 1},
	catalogue.Mid:      {"grown, days", 1},
	catalogue.Late:     {"ending, days", 1},
	catalogue.Young:    {"water just planted, L/day", 1000},
	catalogue.Grown:    {"water grown in full sun, L/day", 1000},
	catalogue.SeedLow:  {"seeds come up well from, °C", 1},
	catalogue.SeedHigh: {"seeds come up well to, °C", 1},
	catalogue.Least:    {"suffers below, °C", 1},
	catalogue.Most:     {"suffers above, °C", 1},
}

// methods are the columns of why a method suits a crop, or does not.
var methods = [catalogue.Methods]string{catalogue.Drip: "drip on a medium", catalogue.DeepBed: "deep water", catalogue.ThinFilm: "nutrient film"}

// rising are pairs of traits of which the second must be the greater.
var rising = [...][2]catalogue.Trait{
	{catalogue.Young, catalogue.Grown},
	{catalogue.Least, catalogue.Most},
	{catalogue.KcIni, catalogue.KcMid},
}

// notFalling are pairs of which the second must not be the lesser, unless it is
// 0, which says that there is none.
var notFalling = [...][2]catalogue.Trait{
	{catalogue.SeedLow, catalogue.SeedHigh},
	{catalogue.KcMid, catalogue.KcTied},
}

// sourceHead is the head of the column beside each value, and the first one of
// the file of sources.
const sourceHead = "source"

// The columns of a crop before its ratings and traits, and those of a source.
var (
	cropHeads   = []string{"crop", "seed"}
	sourceHeads = []string{sourceHead, "work", "at", "standing"}
)

// standings are the names of source.Standing by the words of the file.
var standings = map[string]string{"published": "Published", "memory": "Memory", "practice": "Practice", "derived": "Derived", "choice": "Choice"}

// Table returns the Go file made of the two files in folder, which is that of
// package catalogue, or everything that is wrong in them.
func Table(folder fs.FS) ([]byte, error) {
	m := &maker{folder: folder}
	m.seeds = m.constants("seed.go", func(name, _ string) bool { return strings.HasSuffix(name, "Seed") })
	m.reasons = m.constants("fitness.go", func(_, of string) bool { return of == "reason" })
	m.line("// Code generated from %s and %s by go test ./build/crops -update. DO NOT EDIT.\n\npackage catalogue\n\nimport \"evenrow/wasm/ground/source\"\n", List, Sources)
	m.sources()
	m.crops()
	if err := m.problems.Err(); err != nil {
		return nil, err
	}
	return format.Source([]byte(m.out.String()))
}

// A maker reads the two files and writes the third.
type maker struct {
	folder   fs.FS
	problems problem.List
	out      strings.Builder
	known    []string // sources, by the letter that stands for them from a on
	seeds    []string // names of constants of package catalogue
	reasons  []string
}

func (m *maker) line(form string, args ...any) { fmt.Fprintf(&m.out, form+"\n", args...) }

// constants returns the names of the constants in a file of the folder that are
// wanted, by their name and that of the type of their group.
func (m *maker) constants(file string, wanted func(name, of string) bool) []string {
	text, err := fs.ReadFile(m.folder, file)
	if err != nil {
		m.problems.Add(file, 0, err.Error())
		return nil
	}
	tree, err := parser.ParseFile(token.NewFileSet(), file, text, 0)
	if err != nil {
		m.problems.Add(file, 0, err.Error())
		return nil
	}
	var names []string
	for _, d := range tree.Decls {
		group, ok := d.(*ast.GenDecl)
		if !ok || group.Tok != token.CONST {
			continue
		}
		of := ""
		for _, spec := range group.Specs {
			v := spec.(*ast.ValueSpec)
			if id, ok := v.Type.(*ast.Ident); ok {
				of = id.Name
			}
			for _, n := range v.Names {
				if wanted(n.Name, of) {
					names = append(names, n.Name)
				}
			}
		}
	}
	return names
}

// read calls do for each line of a file after its heads, which must be as
// given; a line with fewer or more cells is a problem.
func (m *maker) read(file string, heads []string, do func(line int, cells []string)) {
	f, err := m.folder.Open(file)
	if err != nil {
		m.problems.Add(file, 0, err.Error())
		return
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.FieldsPerRecord = -1
	for first := true; ; first = false {
		cells, err := r.Read()
		if cells == nil {
			if err != nil && err.Error() != "EOF" {
				m.problems.Add(file, 0, err.Error())
			}
			return
		}
		line, _ := r.FieldPos(0)
		switch {
		case err != nil:
			m.problems.Add(file, line, err.Error())
		case first && !slices.Equal(cells, heads):
			m.problems.Add(file, line, "its heads must be "+strings.Join(heads, " | "))
			return
		case first:
		case len(cells) != len(heads):
			m.problems.Add(file, line, fmt.Sprintf("%s has %d cells and must have %d, one under each head", cells[0], len(cells), len(heads)))
		default:
			do(line, cells)
		}
	}
}

// sources writes the list of sources.
func (m *maker) sources() {
	m.line("// cropSources are the works that traits are from.\nvar cropSources = [...]source.Ref{")
	m.read(Sources, sourceHeads, func(line int, cells []string) {
		key, work, at := cells[0], cells[1], cells[2]
		standing, known := standings[cells[3]]
		switch {
		case key == "":
			m.problems.Add(Sources, line, "a source must have a name")
		case slices.Contains(m.known, key):
			m.problems.Add(Sources, line, key+" is there twice")
		case !known:
			m.problems.Add(Sources, line, key+" has the standing "+strconv.Quote(cells[3])+", which is none of published, memory, practice, derived and choice")
		case standing == "Published" && work == "":
			m.problems.Add(Sources, line, key+" is published and names no work")
		}
		m.line("{Work: %q, At: %q, Standing: source.%s}, // %s", work, at, standing, key)
		m.known = append(m.known, key)
	})
	m.line("}\n")
	if len(m.known) > 'z'-'a'+1 {
		m.problems.Add(Sources, 0, "there are more sources than letters for them")
	}
}

// crops writes the list of crops.
func (m *maker) crops() {
	heads := slices.Clone(cropHeads)
	for _, head := range methods {
		heads = append(heads, head, sourceHead)
	}
	for t, c := range columns {
		if c.head == "" {
			m.problems.Add(List, 0, fmt.Sprintf("trait %d has no column", t))
		}
		heads = append(heads, c.head, sourceHead)
	}
	var names []string
	used := map[string]bool{}
	m.line("// Crops is the list of crops.\nvar Crops = []Crop{")
	m.read(List, heads, func(line int, cells []string) {
		name := cells[0]
		wrong := func(form string, args ...any) { m.problems.Add(List, line, name+": "+fmt.Sprintf(form, args...)) }
		switch {
		case name == "":
			wrong("a crop must have a name")
		case slices.Contains(names, name):
			wrong("is there twice")
		}
		names = append(names, name)
		if own := strings.HasPrefix(name, "own crop "); own != catalogue.Own(len(names)-1) {
			wrong("stands at position %d: crops of the grower's own are those from %d on, %d of them, for links hold positions", len(names)-1, catalogue.FirstOwn, catalogue.OwnCrops)
		}
		seed := cells[1] + "Seed"
		if cells[1] == "none" {
			seed = "noSeed"
		}
		if !slices.Contains(m.seeds, seed) {
			wrong("the seed %q is no row of the table of emergence in seed.go", cells[1])
		}
		cells = cells[len(cropHeads):]
		for _, c := range cells {
			used[c] = true
		}
		fit, fitMarks := m.ratings(cells, wrong)
		values, marks := m.traits(cells[2*len(methods):], wrong)
		m.line("{%q, %s, [Methods]reason{%s}, [Traits]int16{%s}, %q},", name, seed, strings.Join(fit, ", "), strings.Join(values, ", "), marks+fitMarks)
	})
	m.line("}")
	for i, key := range m.known {
		if !used[key] {
			m.problems.Add(Sources, 0, m.known[i]+" is the source of nothing")
		}
	}
}

// ratings returns why each method suits a crop, or does not, by the names of the
// table, and a letter for the source of each.
func (m *maker) ratings(cells []string, wrong func(form string, args ...any)) (fit []string, marks string) {
	for i, head := range methods {
		why := cells[2*i]
		if !slices.Contains(m.reasons, why) {
			wrong("%s: %q is no reason of fitness.go", head, why)
		}
		fit = append(fit, why)
		marks += m.mark(head, cells[2*i+1], wrong)
	}
	return fit, marks
}

// mark returns the letter of a source that stands beside what is under a head.
func (m *maker) mark(head, key string, wrong func(form string, args ...any)) string {
	at := slices.Index(m.known, key)
	switch {
	case key == "":
		wrong("%s has no source beside it", head)
	case at < 0:
		wrong("%s: the source %q is not in %s", head, key, Sources)
	}
	return string(rune('a' + max(at, 0)))
}

// traits returns a crop's traits as whole numbers, and a letter for the source
// of each.
func (m *maker) traits(cells []string, wrong func(form string, args ...any)) (values []string, marks string) {
	var read [catalogue.Traits]float64
	sound := true
	for t, c := range columns {
		typed := cells[2*t]
		x, err := strconv.ParseFloat(typed, 64)
		whole := math.Round(x * c.per)
		switch {
		case typed == "":
			wrong("%s is missing", c.head)
		case err != nil:
			wrong("%s: %q is no number", c.head, typed)
		case x < 0 && catalogue.Trait(t) != catalogue.Least:
			wrong("%s: %s is below 0", c.head, typed)
		case math.Abs(x*c.per-whole) > 1e-6 || math.Abs(whole) > math.MaxInt16: // 1e-6 is more than rounding leaves of 32,767
			wrong("%s: %s is too large, or has too many digits: the table holds steps of %g", c.head, typed, 1/c.per)
		}
		sound = sound && err == nil
		read[t] = x
		values = append(values, strconv.Itoa(int(whole)))
		marks += m.mark(c.head, cells[2*t+1], wrong)
	}
	if !sound {
		return values, marks
	}
	for _, p := range rising {
		if read[p[0]] >= read[p[1]] {
			wrong("%s must be less than %s", columns[p[0]].head, columns[p[1]].head)
		}
	}
	for _, p := range notFalling {
		if read[p[1]] != 0 && read[p[0]] > read[p[1]] {
			wrong("%s must not be more than %s", columns[p[0]].head, columns[p[1]].head)
		}
	}
	return values, marks
}
