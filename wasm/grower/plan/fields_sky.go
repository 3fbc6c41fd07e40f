package plan

import (
	"math"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
)

func ownSummer(p *Plan, _ int) bool { return p.Sky.Summer == OwnSummer }

// optional lets a number be left empty.
func (f *Field) optional() *Field {
	f.Empty, f.Default = true, Unset
	return f
}

var skyFields = []*Field{
	number(1, "latitude", "Latitude", unit.Angle, -90, 90, 47.2,
		"South of the equator with a minus sign.", func(p *Plan, _ int) *float64 { return &p.Sky.Latitude }),
	number(2, "longitude", "Longitude", unit.Angle, -180, 180, 8.3,
		"West of Greenwich with a minus sign.", func(p *Plan, _ int) *float64 { return &p.Sky.Longitude }),
	number(3, "offset", "UTC offset in winter", unit.Hours, -12, 14, 1,
		"How far your clock is ahead of universal time, UTC; with a minus sign when it is behind, as in the Americas.", func(p *Plan, _ int) *float64 { return &p.Sky.Offset }).must(func(p *Plan, _ int) *words.Remark {
		if q := p.Sky.Offset / 900; math.Abs(q-math.Round(q)) > 1e-6 {
			return words.About("{field} must be in whole quarters of an hour, such as 5.75.")
		}
		return nil
	}),
	choice(4, "summer", "Summer time, clocks an hour ahead", []Option{
		NoSummer:     {Code: "none", Label: "none"},
		MarchOctober: {Code: "march-october", Label: "last Sundays of March and October"},
		MarchNov:     {Code: "march-november", Label: "2nd Sunday of March, 1st of Nov."},
		OctoberApril: {Code: "october-april", Label: "first Sundays of October and April"},
		OwnSummer:    {Code: "own", Label: "other dates"},
	}, MarchOctober, "", func(p *Plan, _ int) *int { return &p.Sky.Summer }),
	date(5, "summer-from", "First day of summer time", "2027-03-28",
		"The same day in every year.", func(p *Plan, _ int) *int { return &p.Sky.SummerFrom }).when(ownSummer),
	date(6, "summer-to", "First day without it", "2027-10-31",
		"", func(p *Plan, _ int) *int { return &p.Sky.SummerTo }).when(ownSummer),
	number(7, "cover", "Light let through by the cover", unit.Share, 5, 100, 70,
		"One clean layer of film or glass 65 to 75 %, two layers 55 to 65 %, old and dirty 50 %, none 100 %.", func(p *Plan, _ int) *float64 { return &p.Sky.Cover }),
	choice(8, "climate", "Climate", climates(), 0,
		"The sketches are of no real place.", func(p *Plan, _ int) *int { return &p.Sky.Climate }),
	number(9, "humidity", "Mean humidity, if you know it", unit.Share, 5, 100, 50,
		"Over the season, out of doors.", func(p *Plan, _ int) *float64 { return &p.Sky.Humidity }).optional(),
	number(10, "wind", "Mean wind, if you know it", unit.Wind, 0, 15, 2,
		"At a height of 2 m, out of doors.", func(p *Plan, _ int) *float64 { return &p.Sky.Wind }).optional(),
	number(11, "sunshine", "Sunshine, of the daylight hours, if you know it", unit.Share, 0, 100, 50,
		"Over the season.", func(p *Plan, _ int) *float64 { return &p.Sky.Sunshine }).optional(),
	number(12, "height", "Height above the sea", unit.Length, -430, 5000, 400,
		"", func(p *Plan, _ int) *float64 { return &p.Sky.Height }).when(func(p *Plan, _ int) bool { return p.Sky.Known() }),
	number(13, "adjust", "Correction from your drain readings", unit.Share, 20, 400, 100,
		"Measure for a week what is given and what drains, and correct it here.", func(p *Plan, _ int) *float64 { return &p.Sky.Adjust }),
	date(14, "since", "First day of that correction", "2000-01-01",
		"A drain reading that is used sets it; in 2000 for all days.", func(p *Plan, _ int) *int { return &p.Sky.Since }).when(func(p *Plan, _ int) bool { return p.Sky.Since != Always }),
	number(15, "before", "Correction before that day", unit.Share, 20, 400, 100,
		"", func(p *Plan, _ int) *float64 { return &p.Sky.Before }).when(func(p *Plan, _ int) bool { return p.Sky.Since != Always }),
}

var monthFields = []*Field{
	number(1, "high", "Mean daily high", unit.Temperature, -40, 55, 20,
		"", func(p *Plan, i int) *float64 { return &p.Months[i].High }),
	number(2, "low", "Mean daily low", unit.Temperature, -60, 45, 10,
		"", func(p *Plan, i int) *float64 { return &p.Months[i].Low }).must(func(p *Plan, i int) *words.Remark {
		if m := &p.Months[i]; m.Low > m.High {
			return words.About("{field} must not exceed the mean daily high, {limit}.", unit.Text(unit.Temperature, p.Units, m.High))
		}
		return nil
	}),
}

// climates lists the sketches, and among them what was typed.
func climates() []Option {
	var list []Option
	for i, c := range catalogue.Climates {
		if i == OwnClimate {
			list = append(list, Option{Code: "own", Label: "twelve months that I type or paste"})
		}
		list = append(list, Option{Code: c.Code, Label: c.Name})
	}
	return list
}
