package guide

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"evenrow/build/problem"
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

var update = flag.Bool("update", false, "rewrite the expected pages in testdata; read the diff before you commit")

// speed is a formula for the tests alone.
var speed = &formula.Formula{
	Name: "speed", Title: "Speed of a thing", Text: "v = s/t",
	Result: formula.Symbol{Name: "speed", Letter: "v", Meaning: "speed", Kind: unit.Speed},
	In: []formula.Symbol{
		{Name: "way", Letter: "s", Meaning: "way", Kind: unit.Length, Min: 1, Max: 100},
		{Name: "time", Letter: "t", Meaning: "time", Kind: unit.Duration, Min: 1, Max: 3600},
	},
	Note:   "it is steady",
	Source: source.Ref{Standing: source.Derived},
	Eval:   func(in []float64) float64 { return in[0] / in[1] },
}

var tools = Tools{
	Formulas: []*formula.Formula{speed},
	Plan: func(example, show string) (string, error) {
		if example != "millrace" || show != "answer" {
			return "", errors.New("there is no " + show + " of " + example)
		}
		return "<p>Yes.</p>", nil
	},
	Checks:  func() string { return "<p>Checks.</p>\n" },
	Figures: map[string]string{"lasts": "4 h < 5 h"},
}

const caution = "---\ntitle: Knives & punches\nstanding: practice\nsource: Common practice, no source\n---\nCut **away** from you.\n"

// read reads one guide of the name g with a caution called blades.
func read(body string) ([]*Guide, error) {
	return readAll(fstest.MapFS{
		"guides/g.md":        {Data: []byte("---\ntitle: T\nsummary: S\norder: 1\nsources:\n- W (published)\n---\n" + body)},
		"cautions/blades.md": {Data: []byte(caution)},
	})
}

func readAll(content fstest.MapFS) ([]*Guide, error) {
	var report problem.List
	guides := Read(content, Cautions(content, &report), tools, &report)
	return guides, report.Err()
}

// A figure stands where the author names it, in text and in blocks; a name that
// nobody knows is a problem of its line.
func TestFigures(t *testing.T) {
	guides, err := read("It lasts {{figure lasts}}, or {{figure lasts}}.\n")
	if err != nil || !strings.Contains(guides[0].HTML, "It lasts 4 h &lt; 5 h, or 4 h &lt; 5 h.") {
		t.Errorf("%v: %v", err, guides)
	}
	if _, err := read("One.\n\nIt lasts {{figure last}}.\n"); err == nil || !strings.Contains(err.Error(), "g.md:10: there is no figure last; there are lasts") {
		t.Errorf("%v", err)
	}
}

func TestEachConstruct(t *testing.T) {
	inputs, err := filepath.Glob("testdata/*.md")
	if err != nil || len(inputs) == 0 {
		t.Fatal("testdata holds no .md files")
	}
	for _, in := range inputs {
		t.Run(filepath.Base(in), func(t *testing.T) {
			body, err := os.ReadFile(in)
			if err != nil {
				t.Fatal(err)
			}
			guides, err := read(string(body))
			if err != nil {
				t.Fatal(err)
			}
			golden := strings.TrimSuffix(in, ".md") + ".html"
			if *update {
				if err := os.WriteFile(golden, []byte(guides[0].HTML), 0o666); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if guides[0].HTML != string(want) {
				t.Errorf("%s gives\n%s\nwant\n%s", in, guides[0].HTML, want)
			}
		})
	}
}

func TestProblemsNameTheirLine(t *testing.T) {
	const head = "content/guides/g.md:"
	tests := []struct{ name, body, want string }{
		{"unknown caution", "Text.\n\n> [!CAUTION] bears\n", head + "10: there is no caution bears in content/cautions"},
		{"caution without a name", "> [!CAUTION]\n", head + "8: [!CAUTION] must be followed by the name of a caution"},
		{"unknown box", "> [!TIP]\n> x\n", head + "8: there is no box [!TIP]; there are [!NOTE] and [!CAUTION]"},
		{"empty note", "> [!NOTE]\n", head + "8: the note says nothing"},
		{"unknown block", "```graph\nx\n```\n", head + "9: there is no block graph; there are worked and plan"},
		{"unknown table", "{{salts}}\n", head + "8: there is no table {{salts}}; there are {{formulas}}, {{assumptions}} and {{checks}}"},
		{"a table that nobody makes", "{{assumptions}}\n", head + "8: there are no assumptions to show"},
		{"unknown formula", "```worked\nformula: height\n```\n", head + "9: there is no formula height"},
		{"no formula", "```worked\nway: 3 m\n```\n", head + "9: the worked block lacks formula"},
		{"all inputs that are wrong", "```worked\nformula: speed\nway: 300 m\nweight: 3\n```\n",
			head + "9: time (time) is missing\n" +
				head + "9: way must be from 1 to 100 m, and is 300 m\n" +
				head + "9: weight is no symbol of speed"},
		{"no key", "```plan\nexample: millrace\nshow answer\n```\n",
			head + "9: the plan block lacks show\n" + head + `10: must be "key: value"`},
		{"key of another block", "```plan\nexample: millrace\nshow: answer\nhide: x\n```\n",
			head + "11: a plan block has no hide; it has example and show"},
		{"unknown plan", "```plan\nexample: mill\nshow: answer\n```\n", head + "9: there is no answer of mill"},
		{"markup", "a\n\nb <b>c</b>\n", head + "10: markup in HTML is not accepted"},
		{"a block of markup", "a\n\n<div>\n", head + "10: markup in HTML is not accepted"},
		{"picture", "![x](y.png)\n", head + "8: pictures are drawn by the planner; use a plan block"},
		{"title", "# T\n", head + "8: the title stands in the head of the file; headings begin with two signs"},
		{"skipped rank", "## A\n\n#### B\n", head + "10: the heading skips a rank"},
		{"skipped rank at the start", "### A\n", head + "8: the heading skips a rank"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := read(tt.body)
			if err == nil || err.Error() != tt.want {
				t.Errorf("%q:\n%v\nwant\n%s", tt.body, err, tt.want)
			}
		})
	}
}

func TestFrontMatter(t *testing.T) {
	tests := []struct{ name, guide, want string }{
		{"none", "Text.\n", "content/guides/g.md:1: must begin with a line of three dashes, then title and the other keys"},
		{"no end", "---\ntitle: T\n", "content/guides/g.md:1: the block of keys must end with a line of three dashes"},
		{"everything wrong",
			"---\ntitle:\nsumary: S\norder: one\ntitle: T\nsources: W\n---\n",
			"content/guides/g.md:1: summary is missing\n" +
				"content/guides/g.md:2: title is missing\n" +
				"content/guides/g.md:3: there is no key sumary; the keys are title, summary, order, hazards, sources\n" +
				"content/guides/g.md:4: order must be a whole number\n" +
				"content/guides/g.md:5: title stands here twice\n" +
				"content/guides/g.md:6: sources must be a list, one \"- item\" a line\n" +
				"content/guides/g.md:6: sources must have at least one item"},
		{"item under nothing", "---\ntitle: T\n- x\nsummary: S\norder: 1\nsources:\n- W\n---\n",
			"content/guides/g.md:3: a list item must stand under sources"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := readAll(fstest.MapFS{
				"guides/g.md":        {Data: []byte(tt.guide)},
				"cautions/blades.md": {Data: []byte(caution)},
			})
			if err == nil || err.Error() != tt.want {
				t.Errorf("%v\nwant\n%s", err, tt.want)
			}
		})
	}
}

func TestHeadingsAndLinks(t *testing.T) {
	guides, err := read("## Lime *and* slime\n\nSee [a](b.md#c) and [d](index.html).\n\n### Third\n\n## Short name of a long one {#short}\n")
	if err != nil {
		t.Fatal(err)
	}
	g := guides[0]
	if len(g.Headings) != 2 || g.Headings[0] != (Heading{"lime-and-slime", "Lime and slime"}) || g.Headings[1].ID != "short" {
		t.Errorf("headings %v", g.Headings)
	}
	if len(g.Links) != 2 || g.Links[0] != (Link{"b.html#c", 10}) || g.Links[1] != (Link{"index.html", 10}) {
		t.Errorf("links %v", g.Links)
	}
	if g.Name != "g" || g.Title != "T" || g.Summary != "S" || g.Order != 1 || len(g.Sources) != 1 {
		t.Errorf("head %+v", g)
	}
}

func TestOrder(t *testing.T) {
	file := func(order string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte("---\ntitle: T\nsummary: S\norder: " + order + "\nsources:\n- W\n---\nText.\n")}
	}
	content := fstest.MapFS{"guides/a.md": file("20"), "guides/b.md": file("10"), "cautions/blades.md": {Data: []byte(caution)}}
	guides, err := readAll(content)
	if err != nil || guides[0].Name != "b" || guides[1].Name != "a" {
		t.Errorf("%v, %v; want b before a", guides, err)
	}
	content["guides/b.md"] = file("20")
	if _, err := readAll(content); err == nil || !strings.Contains(err.Error(), "has the same order as") {
		t.Errorf("two guides of one order: %v", err)
	}
}
