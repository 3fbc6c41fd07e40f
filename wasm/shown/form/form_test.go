package form

import (
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
)

// A guide that has no name here would be a link without words.
func TestEveryGuideHasAName(t *testing.T) {
	named := func(guide string) {
		page, _, _ := strings.Cut(guide, "#")
		if guide != "" && guideNames[page] == "" {
			t.Errorf("the guide %s has no name", page)
		}
	}
	for _, s := range plan.Sections() {
		named(s.Guide)
		for _, f := range s.Fields() {
			named(f.Guide)
		}
	}
}

// everyGroup is each section as a group of its own.
func everyGroup() []Group {
	var all []Group
	for _, s := range plan.Sections() {
		all = append(all, Group{ID: "x" + s.Name, Title: s.Title, Sections: []string{s.Name}})
	}
	return all
}

func TestSummaries(t *testing.T) {
	p := plan.Default()
	p.Rows[1].Zone = 2
	p.Rows[2].Crop, p.Rows[2].Plants = -1, 1 // a choice that is none
	p.Rows[3].Crop, p.Rows[3].Zone = -1, 3
	p.Crops = []plan.Crop{{Of: 0}, {Of: -1}}
	p.Plantings = []plan.Planting{{Crop: 0, Times: 1}, {Crop: 0, Times: 3}, {Crop: -1, Times: 2}}
	p.Months = []plan.Month{{High: 4.5, Low: -2}}
	crop := p.CropName(0)
	for _, tt := range []struct {
		section string
		i       int
		want    string
	}{
		{"rows", 0, "Row 1: " + crop + ", 30 plants"},
		{"rows", 1, "Row 2: " + crop + ", 30 plants, zone 2"},
		{"rows", 2, "Row 3"},
		{"rows", 3, "Row 4, zone 3"},
		{"plantings", 0, "Planting 1: " + crop},
		{"plantings", 1, "Planting 2: " + crop + ", 3 times"},
		{"plantings", 2, "Planting 3, 2 times"},
		{"crops", 0, "Crop 1: " + crop},
		{"crops", 1, "Crop 2"},
		{"runs", 0, "Run 1: 8 m"},
		{"months", 0, "January: 4.5 °C, −2 °C"},
		{"emitters", 0, "Emitter 1: 2.0 L/h"},
		{"points", 1, "Point 2: 20.00 L/min, 29.0 m"},
	} {
		if got := Summary(p, plan.SectionNamed(tt.section), tt.i); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.section, got, tt.want)
		}
	}
}

// What is heard of a label and of a button is more than what is seen.
func TestWhatIsHeard(t *testing.T) {
	p := plan.Default()
	asked := Ask(p, plan.DraftOf(p), nil, everyGroup(), Place{Record: "rows.2"})
	for _, want := range []string{
		`>Length along the rows<span class="out">, in metres</span></label>`,
		`<span class="out">, price per metre</span></label>`,
		`value="copy-row.2">Copy<span class="out"> row 2</span></button>`,
		`value="add-emitter">Add an emitter</button>`,
		`>From plant to plant. From 0.05 to 3 m. A unit may be typed after it: 3.5 m, 10 ft.</p>`,
		`<p class="section__guide"><a href="pump-curve.html">Guide: pump curve</a></p>`,
		`<a href="timer.html#drain">Guide: timer</a></p>`,
	} {
		if !strings.Contains(asked, want) {
			t.Errorf("the form lacks %s", want)
		}
	}
	p.Units = unit.US
	if asked = Ask(p, plan.DraftOf(p), nil, everyGroup(), Place{Record: "rows.2"}); !strings.Contains(asked, `<span class="out">, in feet</span>`) {
		t.Error("feet are not heard")
	}
}

func TestSentence(t *testing.T) {
	e := plan.Error{Path: "place.length", Text: "Place: length must be a number.", Typed: `a "b"`}
	if got, want := Sentence(e), `Place: length must be a number. "a "b"" is kept as you typed it.`; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	e.Typed = ""
	if got := Sentence(e); got != e.Text {
		t.Error(got)
	}
	e.Typed = strings.Repeat("µ", 300)
	if got := Sentence(e); strings.Count(got, "µ") != 50 || !strings.Contains(got, " …") {
		t.Errorf("%s: a hundred bytes are shown", got)
	}
	if got := Aloud([]plan.Error{{Text: "One."}, {Text: "Two."}}); got != "2 to put right: One." {
		t.Error(got)
	}
	if got := Foot([]plan.Error{{Text: "One."}}); got != `<strong class="word word--no">1 thing to put right:</strong> One.` {
		t.Error(got)
	}
}
