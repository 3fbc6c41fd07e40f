package sun

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Formulas are the formulas of this package. A part of the page that shows one
// names its variable instead, so that the browser need not load the rest.
var Formulas = []*formula.Formula{
	radiansFormula,
	distanceFormula,
	declinationFormula,
	sunsetAngleFormula,
	ExtraterrestrialFormula,
	DayHoursFormula,
}

var (
	latitude = formula.Symbol{Name: "latitude", Letter: "φ", Meaning: "latitude, negative south of the equator", Kind: unit.Angle, Min: -90, Max: 90}
	ofYear   = formula.Symbol{Name: "day", Letter: "J", Meaning: "number of the day in the year", Kind: unit.Count, Min: 1, Max: 366}
)

var radiansFormula = &formula.Formula{
	Name:   "radians",
	Title:  "Latitude in radians",
	Text:   "ψ = π/180 φ",
	Result: formula.Symbol{Letter: "ψ", Meaning: "latitude in radians", Unit: "rad"},
	In:     []formula.Symbol{latitude},
	Source: source.Ref{Work: source.FAO56, At: "equation 22"},
	Eval:   func(in []float64) float64 { return in[0] * rad },
}

var distanceFormula = &formula.Formula{
	Name:   "sun-distance",
	Title:  "Inverse relative distance of the sun, squared",
	Text:   "dr = 1 + 0.033 cos(2π J/365)",
	Result: formula.Symbol{Letter: "dr", Meaning: "inverse relative distance of the sun, squared"},
	In:     []formula.Symbol{ofYear},
	Source: source.Ref{Work: source.FAO56, At: "equation 23"},
	Eval:   func(in []float64) float64 { return Distance(in[0]) },
}

var declinationFormula = &formula.Formula{
	Name:   "declination",
	Title:  "Declination of the sun",
	Text:   "δ = 0.409 sin(2π J/365 - 1.39)",
	Result: formula.Symbol{Letter: "δ", Meaning: "declination of the sun", Unit: "rad"},
	In:     []formula.Symbol{ofYear},
	Source: source.Ref{Work: source.FAO56, At: "equation 24"},
	Eval:   func(in []float64) float64 { return Declination(in[0]) },
}

var sunsetAngleFormula = &formula.Formula{
	Name:   "sunset-angle",
	Title:  "Hour angle of sunset",
	Text:   "ωs = arccos(-tan φ tan δ), δ of declination at J",
	Result: formula.Symbol{Letter: "ωs", Meaning: "angle from noon to sunset", Unit: "rad"},
	In:     []formula.Symbol{latitude, ofYear},
	Note:   "0 where the sun stays down all day, π where it stays up.",
	Source: source.Ref{Work: source.FAO56, At: "equation 25"},
	Eval:   func(in []float64) float64 { return SunsetAngle(in[0], Declination(in[1])) },
}

// ExtraterrestrialFormula is the formula "extraterrestrial-radiation".
var ExtraterrestrialFormula = &formula.Formula{
	Name:   "extraterrestrial-radiation",
	Title:  "Radiation above the air in a day",
	Text:   "Ra = 24·60/π Gsc dr (ωs sin φ sin δ + cos φ cos δ sin ωs), Gsc = 0.0820 MJ/m² a minute; dr, δ and ωs at J",
	Result: formula.Symbol{Letter: "Ra", Meaning: "radiation above the air in a day", Kind: unit.Radiation},
	In:     []formula.Symbol{latitude, ofYear},
	Source: source.Ref{Work: source.FAO56, At: "equation 21"},
	Eval:   func(in []float64) float64 { return Extraterrestrial(in[0], in[1]) },
}

// DayHoursFormula is the formula "day-hours".
var DayHoursFormula = &formula.Formula{
	Name:   "day-hours",
	Title:  "Hours of daylight",
	Text:   "N = 24/π ωs, ωs of sunset-angle at J",
	Result: formula.Symbol{Letter: "N", Meaning: "hours of daylight", Kind: unit.Hours},
	In:     []formula.Symbol{latitude, ofYear},
	Note:   "Of the sun's centre, without refraction: some minutes less than from sunrise to sunset of an almanac.",
	Source: source.Ref{Work: source.FAO56, At: "equation 34"},
	Eval:   func(in []float64) float64 { return DayHours(in[0], in[1]) },
}
