package view

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/buy"
	"evenrow/wasm/shown/grow"
	"evenrow/wasm/shown/mend"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/watering"
	"evenrow/wasm/shown/why"
)

// A Section is one place on the page: everything about it stands in its row
// below, and nowhere else.
type Section struct {
	ID     string     // of the element that holds it, and of its fragment
	Title  words.Text // its heading; empty where it stands below that of the section before
	With   When       // what works it out
	draw   func(*scene.Scene)
	Card   bool // hangs on the wall: on paper a page of its own, with the link below
	Screen bool // is not printed
}

// A When is what works a section out.
type When int

// What is worked out with an exploration is 1 more than [sheet.Exploration].
const (
	Never     When = 0  // nobody has said
	Answered  When = -1 // comes with the answer
	OnRequest When = -2 // the page asks for it, and package page has it drawn
)

// by is what an exploration works out.
func by(which sheet.Exploration) When { return When(which) + 1 }

// Prompt says whether a section takes no longer than the answer, so that a page
// that is made at once has it.
func (s *Section) Prompt() bool {
	return s.With == Answered || s.With > 0 && sheet.Exploration(s.With-1).Prompt()
}

// A Chapter is a group of sections.
type Chapter struct {
	Title    words.Text
	Sections []Section
}

// Chapters are the sections in the order in which a grower asks. Those of the
// first have places in the page's own frame.
var Chapters = []Chapter{
	{"", []Section{
		{ID: "answer", With: Answered, draw: answer.Answer},
		{ID: "always", With: Answered, draw: answer.Always},
		{ID: "cautions", With: Answered, draw: (*scene.Scene).Cautions},
	}},
	{"The answer, in full", []Section{
		{ID: "findings", Title: "What to look at", With: Answered, draw: answer.Findings},
		{ID: "pressure", Title: "Where the pressure goes", With: Answered, draw: why.Pressure},
		{ID: "budget", With: Answered, draw: why.Budget},
		{ID: "rows", Title: "The rows", With: Answered, draw: answer.Rows},
		{ID: "along", Title: "Along each row", With: Answered, draw: why.Along},
		{ID: "pump", Title: "What drives the water", With: Answered, draw: why.Pump},
		{ID: "evenness", Title: "How even it is", With: Answered, draw: why.Evenness},
		{ID: "speeds", Title: "How fast the water runs", With: Answered, draw: why.Speeds},
	}},
	{"Put to the test", []Section{
		{ID: "zones", Title: "Zones", With: by(sheet.Looping), draw: why.Zones},
		{ID: "ring", Title: "What a loop gains", With: by(sheet.Looping), draw: why.Ring},
		{ID: "flush", Title: "Can it be flushed?", With: by(sheet.Flushing), draw: mend.Flush},
		{ID: "starting", Title: "Starting and stopping", With: by(sheet.Starting), draw: why.Starting},
		{ID: "stopping", With: by(sheet.Starting), draw: why.Stopping},
		{ID: "surge", Title: "When a valve shuts at once", With: Answered, draw: why.Surge},
		{ID: "faults", Title: "What wear and faults do", With: by(sheet.Faulting), draw: mend.Faults},
		{ID: "chance", Title: "When emitters differ", With: by(sheet.Chancing), draw: why.Chance},
		{ID: "headroom", Title: "How much more it can carry", With: by(sheet.Carrying), draw: answer.Headroom},
		{ID: "designs", Title: "Cheaper designs", With: by(sheet.Searching), draw: answer.Designs},
	}},
	{"The season", []Section{
		{ID: "season", Title: "The season", With: by(sheet.Season), draw: grow.Season},
		{ID: "crops", Title: "Which method for which crop", With: by(sheet.Season), draw: grow.Crops},
		{ID: "weather", Title: "Sun and water", With: by(sheet.Season), draw: grow.Weather},
		{ID: "shots", Title: "What to set the timer to", With: by(sheet.Season), draw: watering.Shots},
		{ID: "tank", Title: "Tank and drain, day by day", With: by(sheet.Season), draw: watering.Tank},
		{ID: "outage", Title: "If the pump stops", With: by(sheet.Season), draw: watering.Outage},
		{ID: "log", Title: "After a few days: what the drain says", With: OnRequest, Screen: true},
		{ID: "advice", With: OnRequest, Screen: true},
	}},
	{"To print and keep", []Section{
		{ID: "parts", Title: "Parts", With: Answered, draw: buy.Parts, Card: true},
		{ID: "tasks", Title: "What to do, week by week", With: by(sheet.Season), draw: grow.Tasks, Card: true},
		{ID: "timer", Title: "Card for the timer", With: by(sheet.Season), draw: watering.Timer, Card: true},
	}},
}
