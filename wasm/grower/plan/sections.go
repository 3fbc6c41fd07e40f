package plan

// sections stands in the order of the job, from the place to what is asked of
// the system.
var sections = []*Section{
	{ID: 0, Name: "", Title: "The plan"},
	{
		ID: 1, Name: "place", Title: "Place", Guide: "method",
		Intro: "The ground that the rows stand on.",
	},
	{
		ID: 2, Name: "supply", Title: "Supply", Guide: "pump-curve",
		Intro: "Where the water comes from and what drives it.",
	},
	{
		ID: 3, Name: "points", Title: "Pump curve", Guide: "pump-curve", List: true, One: "point", Min: 3, Max: MaxPoints,
		Record: Record{"Point {n}", "point {n}", "Number of points", "Add a point"},
		Intro:  "Read from the maker's curve, starting at no flow.",
		When:   func(p *Plan) bool { return p.Supply.Kind == PumpPoints },
		Len:    func(p *Plan) int { return len(p.Supply.Points) },
		Resize: func(p *Plan, n int) { p.Supply.Points = resize(p.Supply.Points, n) },
	},
	{
		ID: 4, Name: "runs", Title: "Supply line", Guide: "assembly", List: true, One: "run", Min: 1, Max: MaxRuns,
		Record: Record{"Run {n}", "run {n}", "Number of runs", "Add a run"},
		Intro:  "The tubing from the supply to the header, one run for each size.",
		Len:    func(p *Plan) int { return len(p.Runs) },
		Resize: func(p *Plan, n int) { p.Runs = resize(p.Runs, n) },
	},
	{
		ID: 5, Name: "filter", Title: "Filter", Guide: "filter",
		Intro: "It stands directly after the supply.",
	},
	{
		ID: 6, Name: "header", Title: "Header", Guide: "assembly",
		Intro: "The tubing across the rows that feeds them.",
	},
	{
		ID: 7, Name: "emitters", Title: "Emitters", Guide: "emitters", List: true, One: "emitter", Min: 1, Max: MaxEmitters,
		Record: Record{"Emitter {n}", "emitter {n}", "Number of emitters", "Add an emitter"},
		Intro:  "Copy these from the data sheet; each row chooses one.",
		Len:    func(p *Plan) int { return len(p.Emitters) },
		Resize: func(p *Plan, n int) { p.Emitters = resize(p.Emitters, n) },
	},
	{
		ID: 8, Name: "rows", Title: "Rows", Guide: "media", List: true, One: "row", Min: 1, Max: MaxRows,
		Record: Record{"Row {n}", "row {n}", "Number of rows", "Add a row"},
		Intro:  "In the order that the header feeds them.",
		Len:    func(p *Plan) int { return len(p.Rows) },
		Resize: func(p *Plan, n int) { p.Rows = resize(p.Rows, n) },
	},
	{
		ID: 9, Name: "limits", Title: "Your limits", Guide: "glossary",
		Intro: "How much more pressure than the emitters need, how even, how fast.",
	},
	{
		ID: 10, Name: "season", Title: "Season", Guide: "season",
		Intro: "When plants are sown, moved and picked, and when the system must be ready.",
	},
	{
		ID: 11, Name: "plantings", Title: "Plantings", Guide: "season", List: true, One: "planting", Max: MaxPlantings,
		Record: Record{"Planting {n}", "planting {n}", "Number of plantings", "Add a planting"},
		Intro:  "Every crop of the rows is planted once, unless you say otherwise here.",
		Len:    func(p *Plan) int { return len(p.Plantings) },
		Resize: func(p *Plan, n int) { p.Plantings = resize(p.Plantings, n) },
	},
	{
		ID: 12, Name: "crops", Title: "Crops of your own", Guide: "season", List: true, One: "crop", Max: MaxCrops,
		Record: Record{"Crop {n}", "crop {n}", "Number of crops", "Add a crop"},
		Intro:  "Change a number of a crop, or describe a crop that is not in the list. What you leave empty is as in the table; an own crop starts as a large fruiting one.",
		Len:    func(p *Plan) int { return len(p.Crops) },
		Resize: func(p *Plan, n int) { p.Crops = resize(p.Crops, n) },
	},
	{
		ID: 13, Name: "sky", Title: "Sun and weather", Guide: "weather",
		Intro: "Where the place is and what weather it has: how much water the plants need follows from it.",
	},
	{
		ID: 14, Name: "months", Title: "Months", Guide: "weather", List: true, One: "month", Min: 12, Max: 12,
		Record: Record{"Month {n}", "month {n}", "Number of months", "Add a month"},
		Intro:  "Mean daily high and low of each month, from a weather service or your own thermometer. They start as an invented sketch.",
		When:   func(p *Plan) bool { return p.Sky.Climate == OwnClimate },
		Len:    func(p *Plan) int { return len(p.Months) },
		Resize: func(p *Plan, n int) { p.Months = resize(p.Months, n) },
	},
	{
		ID: 15, Name: "timer", Title: "Timer", Guide: "timer",
		Intro: "What starts the water, how much of it is to drain, and when.",
	},
	{
		ID: 16, Name: "prices", Title: "Prices", Guide: "layout",
		Intro: "For comparing designs, in any currency. The figures here are invented: type your own.",
	},
	{
		ID: 17, Name: "chance", Title: "Chance", Guide: "emitters",
		Intro: "No two emitters are quite alike. How much they differ stands with each emitter, as CV.",
	},
	{
		ID: 18, Name: "ends", Title: "Threads", Guide: "assembly",
		Intro: "What the water passes through on its way to the tubing is joined by threads, and threads of two kinds never fit.",
	},
	{
		ID: 19, Name: "fittings", Title: "Fittings of your own", Guide: "assembly", List: true, One: "fitting", Max: MaxFittings,
		Record: Record{"Fitting {n}", "fitting {n}", "Number of fittings", "Add a fitting"},
		Intro:  "A fitting that you have or can have, beside the usual ones. It is used where it helps.",
		Len:    func(p *Plan) int { return len(p.Fittings) },
		Resize: func(p *Plan, n int) { p.Fittings = resize(p.Fittings, n) },
	},
	{
		ID: 20, Name: "bought", Title: "What you have and what it costs", Guide: "assembly", List: true, One: "part", Max: MaxBought,
		Record: Record{"Part {n}", "part {n}", "Number of parts", "Add a part"},
		Intro:  "Press a price in the list of parts to say what a part costs where you buy it, in what packs it comes, and how many you have already.",
		Len:    func(p *Plan) int { return len(p.Bought) },
		Resize: func(p *Plan, n int) { p.Bought = resize(p.Bought, n) },
	},
}

// Sections returns the sections in the order of the page. They are shared and
// must not be changed.
func Sections() []*Section { return sections }

// SectionNamed returns the section of a name, or nil.
func SectionNamed(name string) *Section {
	for _, s := range sections {
		if s.Name == name {
			return s
		}
	}
	return nil
}

// Fields returns the section's fields in the order of the page.
func (s *Section) Fields() []*Field { return fieldsOf[s.ID] }

// Records returns how many records of the section p holds; 1 outside lists.
func (s *Section) Records(p *Plan) int {
	if s.List {
		return s.Len(p)
	}
	return 1
}

// Applies reports whether the section is shown and checked for p.
func (s *Section) Applies(p *Plan) bool { return s.When == nil || s.When(p) }

// SetDefaults gives every field of record i its default.
func (s *Section) SetDefaults(p *Plan, i int) {
	for _, f := range s.Fields() {
		if f.Type == Text {
			*f.Text(p, i) = ""
		}
		f.SetValue(p, i, f.Default)
	}
}

// resize returns a copy of list with n records, the new ones like the last.
func resize[T any](list []T, n int) []T {
	if n == 0 {
		return nil
	}
	out := make([]T, n)
	for i := copy(out, list); 0 < i && i < n; i++ {
		out[i] = out[i-1]
	}
	return out
}
