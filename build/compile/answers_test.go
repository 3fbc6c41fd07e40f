package compile

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/page"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

type question struct {
	Ask  string `json:"ask"`
	Text string `json:"text"`
}

// questions are what a page can ask of the planner for each example, and with
// a form and a file in which something is wrong.
func questions() []question {
	q := []question{
		{"open", "#"},
		{"openFile", `{"format":`},
	}
	for _, e := range plan.Examples() {
		d := plan.DraftOf(e.Plan)
		form := d.Encode()
		q = append(q,
			question{"open", carry.Link(e.Plan)},
			question{"openFile", string(carry.JSON(e.Plan))},
			question{"answer", form},
			question{"answer", form + "&" + plan.AtName + "=why"},
			question{"save", form},
			question{"calendar", form},
			question{"feedback", form},
		)
		for step := range sheet.Explorations {
			for i := range view.Jobs {
				if view.Jobs[i].Needs(sheet.Exploration(step)) {
					q = append(q, question{"rest", form + "&" + page.StepName + "=" + strconv.Itoa(int(step)+1) + "&" + plan.AtName + "=" + view.Jobs[i].ID})
				}
			}
		}
		q = append(q, question{"answer", strings.Replace(form, "place.length=", "place.length=%C2%B5x", 1)})
	}
	return q
}

// What makes the program smaller changes none of its answers: the program as
// Go compiles it gives the same bytes.
func TestSmallerAnswersTheSame(t *testing.T) {
	root, err := Root()
	if err != nil {
		t.Fatal(err)
	}
	smaller, glue, err := Program(root, false)
	if err != nil {
		t.Fatal(err)
	}
	plain, err := wasm(root, "./wasm/cmd/planner")
	if err != nil {
		t.Fatal(err)
	}
	list, err := json.Marshal(questions())
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	for name, content := range map[string][]byte{"glue.js": glue, "plain.wasm": plain, "smaller.wasm": smaller, "questions.json": list} {
		if err := os.WriteFile(filepath.Join(dir, name), content, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	answers := func(program string) string {
		cmd := exec.Command("node", filepath.Join(root, "build", "compile", "testdata", "answers.js"),
			filepath.Join(dir, "glue.js"), filepath.Join(dir, program), filepath.Join(dir, "questions.json"))
		cmd.Stderr = os.Stderr
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("%s: %v\n%s", program, err, out)
		}
		return string(out)
	}
	want, got := answers("plain.wasm"), answers("smaller.wasm")
	lines := strings.Split(strings.TrimSpace(want), "\n")
	if len(lines) != len(questions()) {
		t.Errorf("%d answers to %d questions", len(lines), len(questions()))
	}
	short := 0
	for i, line := range lines {
		if !strings.HasPrefix(got, line+"\n") {
			other, _, _ := strings.Cut(got, "\n")
			t.Errorf("question %d, %s, is answered otherwise:\n%s\nwant\n%s", i, questions()[i].Ask, other, line)
		}
		_, got, _ = strings.Cut(got, "\n")
		if n, _ := strconv.Atoi(strings.Fields(line)[1]); n < 1000 {
			short++
		}
	}
	if short > len(lines)/4 {
		t.Errorf("%d of %d answers say next to nothing:\n%s", short, len(lines), want)
	}
}
