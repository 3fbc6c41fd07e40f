package plan

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// date declares a Date with an ISO date as its default.
func date(id int, name string, label words.Text, def string, help words.Text, at func(p *Plan, i int) *int) *Field {
	d, _ := day.Parse(def)
	return &Field{ID: id, Name: name, Label: label, Type: Date, Kind: unit.Count, Help: help, Int: at,
		Min: float64(firstDate), Max: float64(lastDate), Default: float64(d)}
}

// apart is how many days before or after the season's date a planting may be
// dated: a plan is of one season, and each of its days is worked out.
const apart = 2 * 365

// around returns the first and the last date that a planting may have.
func around(p *Plan) (from, to int) {
	at := p.anchor()
	return at - apart, at + apart
}

func frosty(p *Plan, _ int) bool { return p.Season.Frost != 0 }

// dated names the ways to date a planting, in the order of FromFrost and so on.
var dated = []Option{
	FromFrost:    {Code: "frost", Label: "from the last frost"},
	FromSowing:   {Code: "sowing", Label: "forwards from sowing"},
	FromPlanting: {Code: "planting", Label: "back from planting out"},
	FromHarvest:  {Code: "harvest", Label: "back from the first harvest"},
}

var needsFrost = words.About("{field} must be another: the place has no frost.")

var seasonFields = []*Field{
	choice(1, "mode", "How dates are found", dated, FromFrost,
		"", func(p *Plan, _ int) *int { return &p.Season.Mode }).must(func(p *Plan, i int) *words.Remark {
		if p.Season.Mode == FromFrost && !frosty(p, 0) {
			return needsFrost
		}
		return nil
	}),
	date(2, "date", "Date of sowing, planting out or first harvest", "2027-05-15",
		"Count dates from this day.", func(p *Plan, _ int) *int { return &p.Season.Date }).when(func(p *Plan, _ int) bool { return p.Season.Mode != FromFrost }),
	choice(3, "frost", "Is there frost in the year?", []Option{{Code: "no", Label: "no"}, {Code: "yes", Label: "yes"}}, 1,
		"", func(p *Plan, _ int) *int { return &p.Season.Frost }),
	date(4, "last-frost", "Last frost", "2027-05-12",
		"Before the season.", func(p *Plan, _ int) *int { return &p.Season.LastFrost }).when(frosty),
	date(5, "first-frost", "First frost", "2027-10-08",
		"After the season.", func(p *Plan, _ int) *int { return &p.Season.FirstFrost }).when(frosty).must(func(p *Plan, _ int) *words.Remark {
		last := day.Day(p.Season.LastFrost)
		if first := day.Day(p.Season.FirstFrost); first <= last || first > last+yearLong {
			return words.About("{field} must be after the last frost and within a year of it, from {first} to {last}.", (last + 1).ISO(), (last + yearLong).ISO())
		}
		return nil
	}),
	whole(6, "after", "Days from the last frost to planting out", -120, 120, 3,
		"In a tunnel a few, in the open one to three weeks; before it with a minus sign.", func(p *Plan, _ int) *int { return &p.Season.After }).when(frosty),
	choice(7, "shelter", "What keeps frost out", []Option{
		OpenAir:  {Code: "open", Label: "nothing"},
		Unheated: {Code: "unheated", Label: "an unheated tunnel or greenhouse"},
		Heated:   {Code: "heated", Label: "heating"},
	}, Unheated, "", func(p *Plan, _ int) *int { return &p.Season.Shelter }),
	number(8, "seedbed", "Temperature where seeds come up", unit.Temperature, 1, 45, 25,
		"Of the medium, not of the air.", func(p *Plan, _ int) *float64 { return &p.Season.Seedbed }),
	whole(9, "places", "Places for blocks", 0, 10000, 0,
		"Where plants are raised; 0 when there is room for all.", func(p *Plan, _ int) *int { return &p.Season.Places }),
	date(10, "start", "The system can be built from", "2027-03-01",
		"", func(p *Plan, _ int) *int { return &p.Season.Start }),
	whole(11, "build", "Days to build it", 1, 200, 14,
		"", func(p *Plan, _ int) *int { return &p.Season.Build }),
	whole(12, "flush", "Days from one flushing to the next", 0, 365, 28,
		"0 for the start and the end only.", func(p *Plan, _ int) *int { return &p.Season.Flush }),
	whole(13, "treat", "Days from one cleaning of the lines to the next", 0, 365, 0,
		"0 for the end only.", func(p *Plan, _ int) *int { return &p.Season.Treat }),
	whole(14, "edition", "Calendar version number", 0, mostEditions, 0,
		"Count up by one before you save it again, so that calendars take the new dates.", func(p *Plan, _ int) *int { return &p.Season.Edition }),
}

var plantingFields = []*Field{
	choice(1, "crop", "Crop", cropOptions, 0,
		"", func(p *Plan, i int) *int { return &p.Plantings[i].Crop }),
	whole(2, "from", "First row", 0, MaxRows, 0,
		"0 for every row of that crop.", func(p *Plan, i int) *int { return &p.Plantings[i].From }),
	whole(3, "to", "Last row", 0, MaxRows, 0,
		"0 when it is the first.", func(p *Plan, i int) *int { return &p.Plantings[i].To }).when(func(p *Plan, i int) bool { return p.Plantings[i].From > 0 }).must(func(p *Plan, i int) *words.Remark {
		if g := &p.Plantings[i]; g.To > 0 && g.To < g.From {
			return words.About("{field} must be 0 or at least the first row.")
		}
		return nil
	}),
	choice(4, "mode", "How dates are found", append([]Option{{Code: "season", Label: "as for the season"}}, dated...), AsSeason,
		"", func(p *Plan, i int) *int { return &p.Plantings[i].Mode }).must(func(p *Plan, i int) *words.Remark {
		if p.Plantings[i].Mode != FromFrost+1 {
			return nil
		}
		if from, to := around(p); p.Season.LastFrost < from || p.Season.LastFrost > to {
			return words.About("{field} must be another: the last frost is more than two years from the season's date.")
		}
		if !frosty(p, 0) {
			return needsFrost
		}
		return nil
	}),
	date(5, "date", "Date of sowing, planting out or first harvest", "2027-05-15",
		"Count dates from this day.", func(p *Plan, i int) *int { return &p.Plantings[i].Date }).when(func(p *Plan, i int) bool { return p.Plantings[i].Mode > FromFrost+1 }).must(func(p *Plan, i int) *words.Remark {
		if from, to := around(p); p.Plantings[i].Date < from || p.Plantings[i].Date > to {
			return words.About("{field} must be within two years of the season's date, from {first} to {last}.", day.Day(from).ISO(), day.Day(to).ISO())
		}
		return nil
	}),
	whole(6, "times", "How often, one after another", 1, MaxTimes, 1,
		"", func(p *Plan, i int) *int { return &p.Plantings[i].Times }),
	whole(7, "every", "Days from one to the next", 1, 365, 21,
		"", func(p *Plan, i int) *int { return &p.Plantings[i].Every }).when(func(p *Plan, i int) bool { return p.Plantings[i].Times > 1 }),
}
