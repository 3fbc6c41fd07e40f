// Package golden holds what the calculation says today: the words of every
// example as a listing, and marks of the answers to five hundred plans. A
// change that moves a number or mends a wording shows here, and nowhere else
// unasked.
//
// What a listing says may be wrong: the other tests are for that. This one only
// makes visible what a change did. Look at the difference, then write it anew:
//
//	go test ./build/golden -update
package golden

import (
	"crypto/sha256"
	"encoding/hex"
	"flag"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenrow/build/answer"
	"evenrow/build/hostile"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

var (
	update = flag.Bool("update", false, "write the listings anew")
	plans  = flag.Int("plans", 25, "how many of the random plans to look at; those of the listing are written anew all")
	texts  = flag.String("texts", "", "a folder to write the words, the answers and the markup of the random plans to, for a comparison of two versions")
)

const many = 500 // random plans in the listing

// The words of each example, place by place, as someone reads them.
func TestWordsOfTheExamples(t *testing.T) {
	for _, x := range plan.Examples() {
		t.Run(x.Key, func(t *testing.T) {
			same(t, x.Key+".txt", words(shown(x.Plan)))
		})
	}
}

// The answers to random plans, every digit of every number.
func TestAnswersToRandomPlans(t *testing.T) {
	n := *plans
	if *update || *texts != "" {
		n = many
	}
	var b strings.Builder
	for i := range n {
		p := random(i)
		data, err := answer.JSON(p)
		if err != nil {
			t.Fatal(err)
		}
		if *texts != "" {
			page := shown(p)
			var markup strings.Builder
			for _, f := range page {
				markup.WriteString(f.HTML + "\n")
			}
			for ending, content := range map[string]string{"txt": words(page), "json": string(data), "html": markup.String()} {
				if err := os.WriteFile(filepath.Join(*texts, fmt.Sprintf("%03d.%s", i, ending)), []byte(content), 0o666); err != nil {
					t.Fatal(err)
				}
			}
		}
		fmt.Fprintf(&b, "%03d %s\n", i, mark(string(data)))
	}
	name := filepath.Join("testdata", "random.txt")
	if *update {
		if err := os.WriteFile(name, []byte(b.String()), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	wanted := strings.Split(string(want), "\n")
	if len(wanted) != many+1 {
		t.Fatalf("%s has %d lines", name, len(wanted))
	}
	differ := 0
	for i, line := range strings.Split(strings.TrimSuffix(b.String(), "\n"), "\n") {
		if line != wanted[i] {
			if differ++; differ < 5 {
				t.Errorf("was  %s\nnow  %s", wanted[i], line)
			}
		}
	}
	if differ > 0 {
		t.Errorf("%d of %d plans have another answer", differ, n)
	}
}

// random returns the plan of a number: ordinary ones and some that nobody would
// think of.
func random(n int) *plan.Plan {
	for run := 1; ; run++ {
		s := hostile.Numbered(run, n)
		switch n % 5 {
		case 0, 1, 2:
			return hostile.Ordinary(s)
		case 3:
			return hostile.Uneven(s)
		}
		if p, accepted := hostile.Plan(s); accepted {
			return p
		}
	}
}

// shown is everything that the page shows of a plan.
func shown(p *plan.Plan) []block.Fragment {
	link := func(p *plan.Plan) string { return "#" + carry.Link(p) }
	all := view.Everything(sheet.Work(p), link)
	all = append(all, block.Fragment{ID: "ask", HTML: form.Ask(p, plan.DraftOf(p), nil, view.Groups(), form.Place{})},
		block.Fragment{ID: "share", HTML: form.Share(link(p))})
	// By name, so that a section that moves on the page moves no line here.
	slices.SortStableFunc(all, func(a, b block.Fragment) int { return strings.Compare(a.ID, b.ID) })
	return all
}

var (
	// Elements that stand within a sentence.
	within  = regexp.MustCompile(`</?(?:a|b|strong|small|span|cite|label)\b[^>]*>`)
	element = regexp.MustCompile(`<[^>]*>`)
	named   = regexp.MustCompile(` (?:aria-label|title|placeholder)="([^"]*)"`)
	spaces  = regexp.MustCompile(`[ \t]+`)
)

// words is what stands in fragments, a line for each run of text, with the names
// that only a screen reader says.
func words(fragments []block.Fragment) string {
	var b strings.Builder
	for _, f := range fragments {
		b.WriteString("== " + f.ID + "\n")
		text := named.ReplaceAllString(f.HTML, `>`+"\n[$1]\n"+`<x`)
		text = element.ReplaceAllString(within.ReplaceAllString(text, ""), "\n")
		for line := range strings.SplitSeq(text, "\n") {
			if line = strings.TrimSpace(spaces.ReplaceAllString(html.UnescapeString(line), " ")); line != "" && line != ">" {
				b.WriteString(line + "\n")
			}
		}
	}
	return b.String()
}

func mark(text string) string {
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:6])
}

// same compares a text with a listing, and names the first line that differs.
func same(t *testing.T, name, text string) {
	t.Helper()
	name = filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if string(data) == text {
		return
	}
	was, now := strings.Split(string(data), "\n"), strings.Split(text, "\n")
	place := ""
	for i := range min(len(was), len(now)) {
		if strings.HasPrefix(now[i], "== ") {
			place = now[i][3:]
		}
		if was[i] != now[i] {
			t.Fatalf("%s, line %d, in %q:\nwas  %s\nnow  %s", name, i+1, place, was[i], now[i])
		}
	}
	t.Errorf("%s has %d lines, and now there are %d", name, len(was), len(now))
}
