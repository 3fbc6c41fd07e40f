package answer

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"evenrow/build/hostile"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/cuts"
	"evenrow/wasm/works/layout"
)

// A mark is a text, a ring or a dot of a picture, with the box that it fills.
type mark struct {
	text           string // empty for a dot
	ring           bool
	x0, y0, x1, y1 float64
}

var (
	pictures = regexp.MustCompile(`(?s)<svg class="picture (narrow|wide)" width="([\d.]+)" height="([\d.]+)".*?</svg>`)
	drawn    = regexp.MustCompile(`<circle cx="([-\d.]+)" cy="([-\d.]+)" r="([\d.]+)"/>(?:<text x="[-\d.]+" y="[-\d.]+"[^>]*>([^<]*)</text></a>)?|<text x="([-\d.]+)" y="([-\d.]+)"([^>]*)>([^<]*)</text>`)
)

// marks are all of a picture. Letters are as wide as those of a wide typeface: 0.64 of
// its 13 px, which digits have, and 0.69 for capitals; they reach 10 px above their line
// and 3 px below it.
func marks(t *testing.T, svg string) (all []mark) {
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for _, m := range drawn.FindAllStringSubmatch(svg, -1) {
		if m[1] != "" {
			x, y, r := number(m[1]), number(m[2]), number(m[3])
			all = append(all, mark{m[4], r == 10, x - r, y - r, x + r, y + r})
			continue
		}
		wide := 0.0
		for _, c := range m[8] {
			switch {
			case c >= '0' && c <= '9':
				wide += 13 * 0.64
			case c >= 'A' && c <= 'Z':
				wide += 13 * 0.69
			default:
				wide += 13 * 0.6
			}
		}
		x, y := number(m[5]), number(m[6])
		switch {
		case strings.Contains(m[7], `"middle"`):
			x -= wide / 2
		case strings.Contains(m[7], `"end"`):
			x -= wide
		}
		all = append(all, mark{m[8], false, x, y - 10, x + wide, y + 3})
	}
	return all
}

// over says whether a text or a ring lies over another by more than a rounding; of dots,
// whether a text lies over them.
func over(a, b *mark) bool {
	if (a.text == "" || b.text == "") && (a.ring || b.ring || a.text == b.text) {
		return false // dots may lie below rings and on one another
	}
	return min(a.x1, b.x1)-max(a.x0, b.x0) > 0.1 && min(a.y1, b.y1)-max(a.y0, b.y0) > 0.1
}

// numberedPlans are the examples, and others.
func numberedPlans() []*plan.Plan {
	var all []*plan.Plan
	for _, e := range plan.Examples() {
		all = append(all, e.Plan)
	}
	for n := range 50 {
		all = append(all, hostile.Ordinary(hostile.Numbered(77, n)))
	}
	return all
}

// No text and no ring stands on another, or reaches out of the picture.
func TestNothingIsWrittenOverAnything(t *testing.T) {
	names, rings := 0, 0
	for i, p := range numberedPlans() {
		answer := sheet.Answer(p)
		for _, draw := range []func(*scene.Scene){Pieces, Spots} {
			sc := scene.New(answer, nil)
			draw(sc)
			all := pictures.FindAllStringSubmatch(sc.String(), -1)
			if len(all) != 2 {
				t.Fatalf("plan %d: %d pictures", i, len(all))
			}
			for _, m := range all {
				wide, _ := strconv.ParseFloat(m[2], 64)
				high, _ := strconv.ParseFloat(m[3], 64)
				if strings.Contains(m[0], `class="ring"`) {
					t.Errorf("plan %d: the weakest plant has a ring among the numbers", i)
				}
				marks := marks(t, m[0])
				for k := range marks {
					a := &marks[k]
					if a.ring {
						rings++
					} else if utf8.RuneCountInString(a.text) > 1 {
						names++
					}
					if a.x0 < 0 || a.y0 < 0 || a.x1 > wide || a.y1 > high {
						t.Errorf("plan %d, %s: %q reaches out of the picture", i, m[1], a.text)
					}
					for l := range marks[:k] {
						if over(a, &marks[l]) {
							t.Errorf("plan %d, %s: %q stands on %q", i, m[1], a.text, marks[l].text)
						}
					}
				}
			}
		}
	}
	if names < 500 || rings < 500 {
		t.Errorf("only %d names and %d rings were found", names, rings)
	}
}

// Of the tunnel every piece is named at both widths, and what closes the header beyond
// the last row's tee: further along the header than the tee and every other piece of it.
func TestTheShortPieceLiesBeyondTheLastTee(t *testing.T) {
	p := plan.Default()
	s := sheet.Answer(p)
	sc := scene.New(s, nil)
	Pieces(sc)
	var last string
	var want []string
	for _, c := range cuts.Of(s.Layout) {
		for k := range c.Pieces {
			want = append(want, c.Name(&c.Pieces[k]))
			if j := c.Pieces[k].Joint; j >= 0 && s.Layout.Joints[j].Kind == layout.HeaderCap {
				last = c.Name(&c.Pieces[k])
			}
		}
	}
	if last == "" {
		t.Fatal("the tunnel has no short piece")
	}
	for _, m := range pictures.FindAllStringSubmatch(sc.String(), -1) {
		along := map[string]float64{}
		tee := math.Inf(-1)
		across := func(a *mark) float64 {
			if m[1] == "narrow" {
				return (a.x0 + a.x1) / 2
			}
			return (a.y0 + a.y1) / 2
		}
		all := marks(t, m[0])
		for k := range all {
			if all[k].ring || all[k].text == "" {
				tee = max(tee, across(&all[k])) // the last row's is furthest
			} else {
				along[all[k].text] = across(&all[k])
			}
		}
		for _, name := range want {
			if _, ok := along[name]; !ok {
				t.Errorf("%s: %s is not named", m[1], name)
			}
		}
		if along[last] < tee+10 {
			t.Errorf("%s: %s stands at %v, and the last tee at %v", m[1], last, along[last], tee)
		}
	}
}
