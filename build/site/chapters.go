package site

// A Chapter is a group of parts of the page about a plan.
type Chapter struct {
	Title string
	Parts []Part
}

// A Part is one section of that page. Its title stands here alone: over the
// section, and in the list of what is on the page.
type Part struct {
	ID, Title string
	Places    []string // ids of the elements that hold its fragments
	Card      bool     // hangs on the wall: on paper a page of its own, with the link below
	Screen    bool     // is not printed
	Script    bool     // takes longer than the answer, or keeps something: only where a script asks for it
}

// Chapters returns the parts in the order in which a grower asks, all of them
// or those of a page without scripts.
func Chapters(script bool) []Chapter {
	all := []Chapter{
		{"The answer, in full", []Part{
			{ID: "findings", Title: "What to look at"},
			{ID: "pressure", Title: "Where the pressure goes", Places: []string{"pressure", "budget"}},
			{ID: "rows", Title: "The rows"},
			{ID: "along", Title: "Along each row"},
			{ID: "pump", Title: "What drives the water"},
			{ID: "evenness", Title: "How even it is"},
			{ID: "speeds", Title: "How fast the water runs"},
		}},
		{"Put to the test", []Part{
			{ID: "zones", Title: "Zones"},
			{ID: "ring", Title: "What a loop gains"},
			{ID: "flush", Title: "Can it be flushed?"},
			{ID: "starting", Title: "Starting and stopping", Places: []string{"starting", "stopping"}, Script: true},
			{ID: "surge", Title: "When a valve shuts at once"},
			{ID: "faults", Title: "What wear and faults do", Script: true},
			{ID: "chance", Title: "When emitters differ", Script: true},
			{ID: "headroom", Title: "How much more it can carry", Script: true},
			{ID: "designs", Title: "Cheaper designs", Script: true},
		}},
		{"The season", []Part{
			{ID: "season", Title: "The season"},
			{ID: "crops", Title: "Which method for which crop"},
			{ID: "weather", Title: "Sun and water"},
			{ID: "shots", Title: "What to set the timer to"},
			{ID: "tank", Title: "Tank and drain, day by day"},
			{ID: "outage", Title: "If the pump stops"},
			{ID: "log", Title: "After a few days: what the drain says", Places: []string{"log", "advice"}, Screen: true, Script: true},
		}},
		{"To print and keep", []Part{
			{ID: "parts", Title: "Parts", Card: true},
			{ID: "tasks", Title: "What to do, week by week", Card: true},
			{ID: "timer", Title: "Card for the timer", Card: true},
		}},
	}
	for i := range all {
		var shown []Part
		for _, p := range all[i].Parts {
			if p.Places == nil {
				p.Places = []string{p.ID}
			}
			if script || !p.Script {
				shown = append(shown, p)
			}
		}
		all[i].Parts = shown
	}
	return all
}
