package view

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/build"
	"evenrow/wasm/shown/buy"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/grow"
	"evenrow/wasm/shown/mend"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/watering"
	"evenrow/wasm/shown/why"
)

// A Job is one screen: what a grower asks, the inputs that bear on it, and the
// answers. Everything about which of them belong to it stands in its row below,
// and nowhere else: the page, the page of a host, paper and the form read it.
type Job struct {
	ID       string     // of its address: "water"
	Title    words.Text // a verb or a plain word: "Water"
	Asks     words.Text // what the grower asks
	Foot     bool       // has its own button at the foot of a phone
	InSeason bool       // is the first of these while the timer waters something
	Groups   []form.Group
	Sections []Section
}

// A Section is one place on a job's screen: everything about it stands in its row
// below, and nowhere else.
type Section struct {
	ID      string     // of the element that holds it, and of its fragment
	Title   words.Text // its heading; empty where it stands below that of the section before
	With    When       // what works it out
	draw    func(*scene.Scene)
	line    func(*scene.Scene) (said string, is sheet.Verdict) // what it comes to, in its line; nil where it is never folded
	Open    bool                                               // is what the job is for: never folded, but where folds says so
	folds   func(*sheet.Sheet) bool                            // of one that is open: another part says what of it matters now; nil where none ever does
	Card    bool                                               // hangs on the wall: on paper a page of its own, with the link below
	Screen  bool                                               // is not printed
	Hazards care.Set                                           // of what is done by it: their cautions stand at its head
	Long    bool                                               // as long as there are plants: what is folded away of it is not drawn, and it is never opened by itself
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

// Frame are the sections that stand around every job, in the page's own frame.
var Frame = []Section{
	{ID: "head", With: Answered, draw: answer.Head},
	{ID: "line", With: Answered, draw: answer.Line},
	{ID: "always", With: Answered, draw: answer.Always},
}

// The rows from above stand in several jobs.
var (
	fromAbove = Section{ID: "map", Title: "Plan view", With: Answered, draw: answer.Map, Open: true}
	inFigures = Section{ID: "fares", With: Answered, draw: answer.Fares}
)

// Jobs are the jobs in the order in which a grower asks.
var Jobs = []Job{
	{
		ID: "answer", Title: "Answer", Asks: "Does every plant get its water?", Foot: true,
		Groups: []form.Group{
			{ID: "place", Title: "Name, units and place", Sections: []string{"", "place"}, Hazards: 1<<care.Drowning | 1<<care.InTank},
			{ID: "supply", Title: "What drives the water", Sections: []string{"supply", "points"}, Hazards: 1<<care.Current | 1<<care.Height | 1<<care.Backflow},
			{ID: "rows", Title: "Rows", Sections: []string{"rows"}, Hazards: 1<<care.Weight | 1<<care.Dust},
			{ID: "limits", Title: "Your limits", Sections: []string{"limits"}},
		},
		Sections: []Section{
			{ID: "answer", With: Answered, draw: answer.Answer, Open: true},
			{ID: "helps", Title: "What helps", With: by(sheet.Helping), draw: answer.Helps, Open: true},
			{ID: "rests", Title: "What it rests on", With: by(sheet.Turning), draw: answer.Rests, line: answer.RestsLine},
			{ID: "findings", Title: "What to look at", With: Answered, draw: answer.Findings, line: answer.FindingsLine},
			fromAbove,
			inFigures,
			{ID: "rows", Title: "Plant by plant", With: Answered, draw: answer.Rows, line: answer.RowsLine, Long: true},
			{ID: "headroom", Title: "How much more it can carry", With: by(sheet.Carrying), draw: answer.Headroom, line: answer.HeadroomLine},
			{ID: "designs", Title: "Cheaper designs", With: by(sheet.Searching), draw: answer.Designs, line: answer.DesignsLine},
			{ID: "crops", Title: "Which method for which crop", With: by(sheet.Season), draw: grow.Crops, line: grow.CropsLine},
		},
	},
	{
		ID: "buy", Title: "Buy", Asks: "What do I take to the shop?", Foot: true,
		Groups: []form.Group{
			{ID: "bought", Title: "What you have and what it costs", Sections: []string{"bought"}},
			{ID: "prices", Title: "Prices", Sections: []string{"prices"}},
			{ID: "ends", Title: "Threads", Sections: []string{"ends", "fittings"}},
		},
		Sections: []Section{
			{ID: "parts", Title: "Parts", With: Answered, draw: buy.Parts, Open: true, Card: true},
			{ID: "spots", Title: "Plan view", With: Answered, draw: answer.Spots, Open: true, Screen: true},
			{ID: "asks", Title: "What to ask for", With: Answered, draw: buy.Asks, line: buy.AsksLine, Card: true},
			{ID: "chain", Title: "What joins what", With: Answered, draw: buy.Chain, line: buy.ChainLine},
			{ID: "counts", Title: "Where each number comes from", With: Answered, draw: buy.Counts, line: buy.CountsLine},
		},
	},
	{
		ID: "build", Title: "Build", Asks: "Where does each tube go?",
		Groups: []form.Group{
			{ID: "runs", Title: "Supply line", Sections: []string{"runs"}, Hazards: 1 << care.Slips},
			{ID: "filter", Title: "Filter", Sections: []string{"filter"}, Hazards: 1 << care.Pressure},
			{ID: "header", Title: "Header", Sections: []string{"header"}, Hazards: 1 << care.Heat},
			{ID: "emitters", Title: "Emitters", Sections: []string{"emitters"}, Hazards: 1 << care.Blades},
		},
		Sections: []Section{
			{ID: "pieces", Title: "Plan view", With: Answered, draw: answer.Pieces, Open: true},
			{ID: "steps", Title: "Steps", With: Answered, draw: build.Steps, line: build.StepsLine, Card: true},
			{ID: "cuts", Title: "Cut list", With: Answered, draw: build.Cuts, line: build.CutsLine, Card: true, Hazards: 1 << care.Blades},
			{ID: "marks", Title: "Where to punch", With: Answered, draw: build.Marks, line: build.MarksLine, Card: true, Hazards: 1 << care.Blades},
			{ID: "speeds", Title: "How fast the water runs", With: Answered, draw: why.Speeds, line: why.SpeedsLine},
		},
	},
	{
		ID: "grow", Title: "Grow", Asks: "When do I do what?",
		Groups: []form.Group{
			{ID: "season", Title: "Season", Sections: []string{"season"}, Hazards: 1<<care.Stored | 1<<care.Chemicals | 1<<care.Salts},
			{ID: "plantings", Title: "Plantings", Sections: []string{"plantings"}},
			{ID: "crops", Title: "Crops of your own", Sections: []string{"crops"}},
			{ID: "sky", Title: "Sun and weather", Sections: []string{"sky", "months"}, Hazards: 1 << care.Swelter},
		},
		Sections: []Section{
			{ID: "week", Title: "This week", With: by(sheet.Season), draw: grow.Week, Open: true, Screen: true},
			{ID: "season", Title: "The season", With: by(sheet.Season), draw: grow.Season, Open: true},
			{ID: "tasks", Title: "What to do, week by week", With: by(sheet.Season), draw: grow.Tasks, line: grow.TasksLine, Card: true},
		},
	},
	{
		ID: "water", Title: "Water", Asks: "What do I set the timer to?", Foot: true, InSeason: true,
		Groups: []form.Group{{ID: "timer", Title: "Timer", Sections: []string{"timer"}, Hazards: 1<<care.Current | 1<<care.Timer | 1<<care.Wiring | 1<<care.Drain | 1<<care.Drinking}},
		Sections: []Section{
			{ID: "today", Title: "Today", With: by(sheet.Season), draw: watering.Today, Open: true, Screen: true},
			{ID: "timer", Title: "Card for the timer", With: by(sheet.Season), draw: watering.Timer, line: watering.TimerLine, Open: true, folds: (*sheet.Sheet).WatersToday, Card: true},
			{ID: "cannot", Title: "What the timer cannot do", With: by(sheet.Season), draw: watering.Cannot, line: watering.CannotLine},
			{ID: "shots", Title: "What to set the timer to", With: by(sheet.Season), draw: watering.Shots, line: watering.ShotsLine},
			{ID: "tank", Title: "Tank and drain, day by day", With: by(sheet.Season), draw: watering.Tank, line: watering.TankLine, Hazards: 1<<care.Drain | 1<<care.Drinking},
			{ID: "weather", Title: "Sun and water", With: by(sheet.Season), draw: grow.Weather, line: grow.WeatherLine},
			{ID: "log", Title: "What the drain says", With: OnRequest, Screen: true},
			{ID: "advice", With: OnRequest, Screen: true},
		},
	},
	{
		ID: "mend", Title: "Mend", Asks: "What is wrong, and what now?",
		Sections: []Section{
			{ID: "stopped", Title: "If the water stops now", With: by(sheet.Season), draw: watering.Stopped, Open: true, Screen: true},
			{ID: "outage", Title: "If the pump stops", With: by(sheet.Season), draw: watering.Outage, Open: true, Hazards: 1 << care.Current},
			{ID: "flush", Title: "Can it be flushed?", With: by(sheet.Flushing), draw: mend.Flush, line: mend.FlushLine},
			{ID: "faults", Title: "What wear and faults do", With: by(sheet.Faulting), draw: mend.Faults, line: mend.FaultsLine},
		},
	},
	{
		ID: "why", Title: "Why", Asks: "How is it worked out?",
		Groups: []form.Group{{ID: "chance", Title: "Chance", Sections: []string{"chance"}}},
		Sections: []Section{
			{ID: "pressure", Title: "Where the pressure goes", With: Answered, draw: why.Pressure, Open: true},
			{ID: "budget", With: Answered, draw: why.Budget},
			{ID: "pump", Title: "What drives the water", With: Answered, draw: why.Pump, line: why.PumpLine},
			{ID: "along", Title: "Along each row", With: Answered, draw: why.Along, line: why.AlongLine},
			{ID: "evenness", Title: "How even it is", With: Answered, draw: why.Evenness, line: why.EvennessLine},
			{ID: "zones", Title: "Zones", With: by(sheet.Looping), draw: why.Zones, line: why.ZonesLine},
			{ID: "ring", Title: "What a loop gains", With: by(sheet.Looping), draw: why.Ring, line: why.RingLine},
			{ID: "starting", Title: "Starting and stopping", With: by(sheet.Starting), draw: why.Starting, line: why.StartingLine},
			{ID: "stopping", With: by(sheet.Starting), draw: why.Stopping},
			{ID: "surge", Title: "When a valve shuts at once", With: Answered, draw: why.Surge, line: why.SurgeLine},
			{ID: "chance", Title: "When emitters differ", With: by(sheet.Chancing), draw: why.Chance, line: why.ChanceLine},
		},
	},
}

// First is the ID of the job that comes first on the day of a sheet whose season was
// explored.
func First(s *sheet.Sheet) string {
	today := s.Today()
	for i := range Jobs {
		if Jobs[i].InSeason && today.Waters() {
			return Jobs[i].ID
		}
	}
	return Jobs[0].ID
}

// JobNamed returns the job of an ID, or nil.
func JobNamed(id string) *Job {
	for i := range Jobs {
		if Jobs[i].ID == id {
			return &Jobs[i]
		}
	}
	return nil
}

// Groups returns the groups of all jobs.
func Groups() []form.Group {
	var all []form.Group
	for i := range Jobs {
		all = append(all, Jobs[i].Groups...)
	}
	return all
}

// Needs reports whether something of the job takes an exploration. What the answer
// rests on is needed by each, because the answer stands above all.
func (j *Job) Needs(which sheet.Exploration) bool {
	if which == sheet.Turning {
		return true
	}
	for i := range j.Sections {
		if j.Sections[i].With == by(which) {
			return true
		}
	}
	return false
}

// Find returns the place that an address within the page names: a job,
// "water/timer"; a field or a section of the plan, "f-rows.7.spacing"; or a section of
// the page, "h-parts". Where it names none the place is that which is in sight.
func Find(to string, in form.Place) form.Place {
	if path, field := cut(to, "f-"); field {
		for i := range Jobs {
			if g, record := form.InGroups(Jobs[i].Groups, path); g != nil {
				return form.Place{Job: Jobs[i].ID, Group: g.ID, Record: record}
			}
		}
		if _, ofLog := cut(path, "log."); ofLog {
			return Find("h-log", in)
		}
		return in
	}
	id, heading := cut(to, "h-")
	for i := range Jobs {
		for k := range Jobs[i].Sections {
			if s := &Jobs[i].Sections[k]; s.ID == id && (heading || !known(to)) {
				return form.Place{Job: Jobs[i].ID}
			}
		}
	}
	if _, line := cut(to, "line-"); line { // of the list of parts
		return form.Place{Job: "buy"}
	}
	if _, take := cut(to, "take-"); take { // of the steps
		return form.Place{Job: "build"}
	}
	if _, plants := cut(to, "plants"); plants {
		return form.Place{Job: "answer"}
	}
	return Known(form.PlaceOf(to), in)
}

// LongAt is the ID of the long section that an address within the page leads into; empty
// for none.
func LongAt(to string) string {
	if _, plants := cut(to, "plants"); plants {
		return "rows"
	}
	id, _ := cut(to, "d-")
	for i := range Jobs {
		for k := range Jobs[i].Sections {
			if s := &Jobs[i].Sections[k]; s.Long && s.ID == id {
				return id
			}
		}
	}
	return ""
}

func known(to string) bool { return to == form.Start || JobNamed(form.PlaceOf(to).Job) != nil }

func cut(s, prefix string) (string, bool) {
	if len(s) >= len(prefix) && s[:len(prefix)] == prefix {
		return s[len(prefix):], true
	}
	return s, false
}

// Known returns a place if there is such a one, as far as there is, or else another.
func Known(at, other form.Place) form.Place {
	if at.Job == form.Start {
		return form.Place{Job: form.Start}
	}
	j := JobNamed(at.Job)
	if j == nil {
		return other
	}
	for i := range j.Groups {
		if j.Groups[i].ID == at.Group {
			return at
		}
	}
	return form.Place{Job: at.Job}
}
