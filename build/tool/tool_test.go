package tool

import (
	"os"
	"strings"
	"testing"

	"evenrow/build/guide"
	"evenrow/build/problem"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/method/check"
)

func TestStartHasEveryPart(t *testing.T) {
	fragments := New().Start()
	for _, id := range []string{"ask", "job", "head", "line", "share", "examples", "always"} {
		if fragments[id] == "" {
			t.Errorf("the first page has nothing for %s", id)
		}
	}
	if fragments["errors"] != "" {
		t.Errorf("the default plan has errors: %s", fragments["errors"])
	}
}

func TestAnswerOfAnExample(t *testing.T) {
	got, err := New().Guides.Plan("wrong-pump", "answer")
	if err != nil || !strings.Contains(got, "No") {
		t.Errorf("the wrong pump is answered by %q, %v", got, err)
	}
	// A link of an answer must lead out of the guide, to the tool.
	for _, e := range plan.Examples() {
		got, err := New().Guides.Plan(e.Key, "answer")
		if err != nil {
			t.Errorf("%s: %v", e.Key, err)
		}
		if strings.Contains(got, `href="#1`) {
			t.Errorf("%s: the answer links to a plan on the guide's own page", e.Key)
		}
	}
}

func TestWhatIsNotThereIsNamed(t *testing.T) {
	_, err := New().Guides.Plan("mill", "answer")
	if err == nil || !strings.HasPrefix(err.Error(), "there is no example mill; there are millrace, ") {
		t.Errorf("no such example: %v", err)
	}
	_, err = New().Guides.Plan("millrace", "question")
	if err == nil || !strings.HasPrefix(err.Error(), "an answer has no question; it has answer, ") {
		t.Errorf("no such part: %v", err)
	}
}

func TestEveryNameSaysWhereItIsFrom(t *testing.T) {
	names := New().Names
	if len(names) < len(plan.Sections())+len(plan.Fields()) {
		t.Fatalf("%d names of %d sections and %d fields", len(names), len(plan.Sections()), len(plan.Fields()))
	}
	for _, n := range names {
		if !strings.HasPrefix(n.From, "section ") && !strings.HasPrefix(n.From, "field ") {
			t.Errorf("%+v", n)
		}
	}
}

func TestTableOfChecksHasEveryRow(t *testing.T) {
	table := checks()
	for _, r := range check.Rows {
		if !strings.Contains(table, r.ID+": ") {
			t.Errorf("the table lacks %s", r.ID)
		}
	}
	if strings.Count(table, "<tr") != strings.Count(table, "</tr>") || strings.Count(table, "<tbody") != strings.Count(table, "</tbody>") ||
		strings.Count(table, "<td") != strings.Count(table, "</td>") {
		t.Error("the table does not close what it opens")
	}
}

func TestDigits(t *testing.T) {
	for _, tt := range []struct {
		v, tolerance float64
		want         string
	}{
		{0.0185139123, 1e-5, "0.018514"},
		{96.21234, 0.965, "96.21"},
		{6894.757293, 3.4e-3, "6894.7573"},
		{0.5, 0, "0.5"},
		{134131.7, 100, "134132"},
	} {
		if got := digits(tt.v, tt.tolerance); got != tt.want {
			t.Errorf("digits(%g, %g) = %s, want %s", tt.v, tt.tolerance, got, tt.want)
		}
	}
}

// What nobody could check: the method page prints it from the code's own
// declarations, with its standing.
func TestAssumptionsAreOnTheMethodPage(t *testing.T) {
	var report problem.List
	content := os.DirFS("../../content")
	page := ""
	for _, g := range guide.Read(content, guide.Cautions(content, &report), New().Guides, &report) {
		if g.Name == "sources" {
			page = g.HTML
		}
	}
	if err := report.Err(); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"<td>0.75</td>", "Each piece of the header and of the far header of a loop counts one.",
		"Loss coefficient: tee, through its branch</th>\n<td>2</td>", "Loss coefficient: ball valve, open</th>\n<td>0.05</td>",
		"Loss coefficient: check valve</th>\n<td>2.5</td>", "Loss coefficient: inlet from a tank, flush</th>\n<td>0.5</td>",
		"2 c₀ c₁/(c₀ + c₁)", "those with most above it first", "Loss coefficient of an end that is open</th>\n<td>2</td>",
		"0.3 m/s (0.9843 ft/s)", "20260101", "0.617, 0.624, 0.632", "(our own choice)", "common practice, no source",
		"It takes compression fittings.", "-6, 6, 11 °C", "<td>20260101</td>", "6.895 bar (100 psi)",
		"at most the second with everything shut",
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the method page does not say %q", want)
		}
	}
}
