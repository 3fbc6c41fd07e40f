package evapo

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Formulas are the formulas of this package. A part of the page that shows one
// names its variable instead, so that the browser need not load the rest.
var Formulas = []*formula.Formula{
	saturationFormula, slopeFormula, airPressureFormula, wetBulbFormula, vapourOfExtremesFormula, vapourOfMeanFormula,
	depthFormula, emissionFormula, angstromFormula, fromTemperaturesFormula, clearFormula, netShortFormula, netLongFormula,
	PenmanFormula, HargreavesFormula,
	CropCoefficientFormula, forClimateFormula, mulchedFormula, cropUseFormula, PlantWaterFormula,
}

var (
	air      = formula.Symbol{Name: "temperature", Letter: "T", Meaning: "temperature of the air", Kind: unit.Temperature, Min: -50, Max: 60}
	low      = formula.Symbol{Name: "low", Letter: "Tmin", Meaning: "lowest temperature of the day", Kind: unit.Temperature, Min: -50, Max: 60}
	high     = formula.Symbol{Name: "high", Letter: "Tmax", Meaning: "highest temperature of the day", Kind: unit.Temperature, Min: -50, Max: 60}
	height   = formula.Symbol{Name: "height", Letter: "z", Meaning: "height above the sea", Kind: unit.Length, Min: -500, Max: 6000}
	above    = formula.Symbol{Name: "above", Letter: "Ra", Meaning: "radiation above the air in a day", Kind: unit.Radiation, Max: 60e6}
	ground   = formula.Symbol{Name: "ground", Letter: "Rs", Meaning: "radiation at the ground in a day", Kind: unit.Radiation, Max: 60e6}
	vapour   = formula.Symbol{Name: "vapour", Letter: "ea", Meaning: "pressure of vapour in the air", Kind: unit.Vapour, Max: 20e3}
	humid    = formula.Symbol{Name: "humidity", Letter: "RH", Meaning: "mean humidity", Kind: unit.Share, Max: 1}
	wind     = formula.Symbol{Name: "wind", Letter: "u", Meaning: "wind at 2 m", Kind: unit.Wind, Max: 20}
	coeff    = formula.Symbol{Name: "coefficient", Letter: "Kt", Meaning: "crop coefficient of the table", Min: 0.05, Max: 2}
	vaporous = formula.Symbol{Letter: "ea", Meaning: "pressure of vapour in the air", Kind: unit.Vapour}
	atGround = formula.Symbol{Letter: "Rs", Meaning: "radiation at the ground in a day", Kind: unit.Radiation}
	water    = formula.Symbol{Letter: "ETo", Meaning: "reference evapotranspiration of the day", Kind: unit.Evaporation}
)

var saturationFormula = &formula.Formula{
	Name:   "saturation-vapour",
	Title:  "Pressure of vapour over water",
	Text:   "e° = 0.6108 exp(17.27 T/(T + 237.3)), kPa",
	Result: formula.Symbol{Letter: "e°", Meaning: "pressure of vapour over water", Kind: unit.Vapour},
	In:     []formula.Symbol{air},
	Source: source.Ref{Work: source.FAO56, At: "equation 11"},
	Eval:   func(in []float64) float64 { return Saturation(in[0]) },
}

var slopeFormula = &formula.Formula{
	Name:   "vapour-slope",
	Title:  "Slope of the curve of vapour pressure",
	Text:   "Δ = 4098 e°/(T + 237.3)², e° of saturation-vapour",
	Result: formula.Symbol{Letter: "Δ", Meaning: "rise of the pressure for each °C", Unit: "Pa/°C"},
	In:     []formula.Symbol{air},
	Source: source.Ref{Work: source.FAO56, At: "equation 13"},
	Eval:   func(in []float64) float64 { return Slope(in[0]) },
}

var airPressureFormula = &formula.Formula{
	Name:   "air-pressure",
	Title:  "Pressure of the air at a height",
	Text:   "P = 101.3 ((293 - 0.0065 z)/293)^5.26, kPa",
	Result: formula.Symbol{Letter: "P", Meaning: "pressure of the air", Kind: unit.Vapour},
	In:     []formula.Symbol{height},
	Source: source.Ref{Work: source.FAO56, At: "equation 7"},
	Eval:   func(in []float64) float64 { return AirPressure(in[0]) },
}

var wetBulbFormula = &formula.Formula{
	Name:   "vapour-wet-bulb",
	Title:  "Vapour in the air by a dry and a wet thermometer",
	Text:   "ea = e°(Tw) - 0.000662 P (Td - Tw), e° of saturation-vapour, P of air-pressure",
	Result: vaporous,
	In: []formula.Symbol{
		{Name: "dry", Letter: "Td", Meaning: "dry thermometer", Kind: unit.Temperature, Min: 0, Max: 60},
		{Name: "wet", Letter: "Tw", Meaning: "wet thermometer, ventilated", Kind: unit.Temperature, Min: 0, Max: 60},
		height,
	},
	Source: source.Ref{Work: source.FAO56, At: "equation 15"},
	Eval:   func(in []float64) float64 { return WetBulb(in[0], in[1], in[2]) },
}

var vapourOfExtremesFormula = &formula.Formula{
	Name:   "vapour-extremes",
	Title:  "Vapour in the air by the humidity at the coldest and the warmest hour",
	Text:   "ea = (e°(Tmin) RHmax + e°(Tmax) RHmin)/2",
	Result: vaporous,
	In: []formula.Symbol{
		low, {Name: "humidity-high", Letter: "RHmax", Meaning: "humidity when it is coldest", Kind: unit.Share, Max: 1},
		high, {Name: "humidity-low", Letter: "RHmin", Meaning: "humidity when it is warmest", Kind: unit.Share, Max: 1},
	},
	Source: source.Ref{Work: source.FAO56, At: "equation 17"},
	Eval:   func(in []float64) float64 { return VapourOfExtremes(in[0], in[1], in[2], in[3]) },
}

var vapourOfMeanFormula = &formula.Formula{
	Name:   "vapour-mean",
	Title:  "Vapour in the air by the mean humidity",
	Text:   "ea = RH (e°(Tmin) + e°(Tmax))/2",
	Result: vaporous,
	In:     []formula.Symbol{low, high, humid},
	Source: source.Ref{Work: source.FAO56, At: "equation 19"},
	Eval:   func(in []float64) float64 { return VapourOfMean(in[0], in[1], in[2]) },
}

var depthFormula = &formula.Formula{
	Name:   "radiation-depth",
	Title:  "Water that radiation can turn into vapour",
	Text:   "E = R/2.45, mm from MJ/m²",
	Result: formula.Symbol{Letter: "E", Meaning: "depth of water in a day", Kind: unit.Evaporation},
	In:     []formula.Symbol{{Name: "radiation", Letter: "R", Meaning: "radiation in a day", Kind: unit.Radiation, Max: 60e6}},
	Source: source.Ref{Work: source.FAO56, At: "equation 20"},
	Eval:   func(in []float64) float64 { return Depth(in[0]) },
}

var emissionFormula = &formula.Formula{
	Name:   "emission",
	Title:  "Heat that a black body sends out in a day",
	Text:   "M = 4.903·10⁻⁹ (T + 273.16)⁴, MJ/m²",
	Result: formula.Symbol{Letter: "M", Meaning: "heat sent out in a day", Kind: unit.Radiation},
	In:     []formula.Symbol{air},
	Source: source.Ref{Work: source.FAO56, At: "annex 2, table 2.8"},
	Eval:   func(in []float64) float64 { return Emission(in[0]) },
}

var angstromFormula = &formula.Formula{
	Name:   "radiation-sunshine",
	Title:  "Radiation at the ground by the hours of sunshine",
	Text:   "Rs = (0.25 + 0.50 n/N) Ra",
	Result: atGround,
	In:     []formula.Symbol{above, {Name: "sunshine", Letter: "n/N", Meaning: "hours of sunshine over hours of daylight", Kind: unit.Share, Max: 1}},
	Source: source.Ref{Work: source.FAO56, At: "equation 35"},
	Eval:   func(in []float64) float64 { return Angstrom(in[0], in[1]) },
}

var fromTemperaturesFormula = &formula.Formula{
	Name:   "radiation-temperatures",
	Title:  "Radiation at the ground by the day's temperatures",
	Text:   "Rs = k √(Tmax - Tmin) Ra",
	Result: atGround,
	In: []formula.Symbol{above, low, high,
		{Name: "coefficient", Letter: "k", Meaning: "0.16 far from the sea, 0.19 by the sea", Min: 0.1, Max: 0.25}},
	Source: source.Ref{Work: source.FAO56, At: "equation 50"},
	Eval:   func(in []float64) float64 { return FromTemperatures(in[0], in[1], in[2], in[3]) },
}

var clearFormula = &formula.Formula{
	Name:   "clear-radiation",
	Title:  "Radiation at the ground under a clear sky",
	Text:   "Rso = (0.75 + 2·10⁻⁵ z) Ra",
	Result: formula.Symbol{Letter: "Rso", Meaning: "radiation at the ground under a clear sky", Kind: unit.Radiation},
	In:     []formula.Symbol{above, height},
	Source: source.Ref{Work: source.FAO56, At: "equation 37"},
	Eval:   func(in []float64) float64 { return Clear(in[0], in[1]) },
}

var netShortFormula = &formula.Formula{
	Name:   "net-short",
	Title:  "Sunshine that a green crop keeps",
	Text:   "Rns = (1 - 0.23) Rs",
	Result: formula.Symbol{Letter: "Rns", Meaning: "sunshine that the crop keeps", Kind: unit.Radiation},
	In:     []formula.Symbol{ground},
	Source: source.Ref{Work: source.FAO56, At: "equation 38"},
	Eval:   func(in []float64) float64 { return NetShort(in[0]) },
}

var netLongFormula = &formula.Formula{
	Name:   "net-long",
	Title:  "Heat that the ground sends to the sky",
	Text:   "Rnl = (M(Tmin) + M(Tmax))/2 (0.34 - 0.14 √ea) (1.35 c - 0.35), M of emission, ea in kPa",
	Result: formula.Symbol{Letter: "Rnl", Meaning: "heat sent to the sky in a day", Kind: unit.Radiation},
	In: []formula.Symbol{low, high, vapour,
		{Name: "clearness", Letter: "c", Meaning: "radiation at the ground over that under a clear sky", Kind: unit.Share, Max: 1}},
	Source: source.Ref{Work: source.FAO56, At: "equation 39"},
	Eval:   func(in []float64) float64 { return NetLong(in[0], in[1], in[2], in[3]) },
}

// PenmanFormula is the formula "penman-monteith".
var PenmanFormula = &formula.Formula{
	Name:   "penman-monteith",
	Title:  "Reference evapotranspiration after Penman and Monteith",
	Text:   "ETo = (0.408 Δ (Rn - G) + γ 900/(T + 273) u (es - ea))/(Δ + γ (1 + 0.34 u)), T and es the means, γ = 0.000665 P",
	Result: water,
	In: []formula.Symbol{low, high, vapour,
		{Name: "net", Letter: "Rn", Meaning: "radiation that the crop keeps in a day", Kind: unit.Radiation, Min: -20e6, Max: 40e6},
		{Name: "soil", Letter: "G", Meaning: "heat that goes into the ground in a day", Kind: unit.Radiation, Min: -10e6, Max: 10e6},
		wind, height},
	Source: source.Ref{Work: source.FAO56, At: "equation 6"},
	Eval: func(in []float64) float64 {
		return Penman(in[0], in[1], in[2], in[3], in[4], in[5], in[6])
	},
}

// HargreavesFormula is the formula "hargreaves-samani".
var HargreavesFormula = &formula.Formula{
	Name:   "hargreaves-samani",
	Title:  "Reference evapotranspiration by temperatures, after Hargreaves and Samani",
	Text:   "ETo = 0.0023 ((Tmin + Tmax)/2 + 17.8) √(Tmax - Tmin) Ra/2.45",
	Result: water,
	In:     []formula.Symbol{low, high, above},
	Source: source.Ref{Work: source.FAO56, At: "equation 52"},
	Eval:   func(in []float64) float64 { return Hargreaves(in[0], in[1], in[2]) },
}

// CropCoefficientFormula is the formula "crop-coefficient".
var CropCoefficientFormula = &formula.Formula{
	Name:   "crop-coefficient",
	Title:  "Crop coefficient on a day of its life",
	Text:   "Kc = K1 until L1, then straight to K2 at L1 + L2, level for L3, then straight to K3 in L4",
	Result: formula.Symbol{Letter: "Kc", Meaning: "crop coefficient"},
	In: []formula.Symbol{
		{Name: "days", Letter: "i", Meaning: "days since planting", Kind: unit.Count, Max: 2000},
		{Name: "initial", Letter: "L1", Meaning: "days just planted", Kind: unit.Count, Min: 1, Max: 400},
		{Name: "growing", Letter: "L2", Meaning: "days until the canopy is full", Kind: unit.Count, Min: 1, Max: 400},
		{Name: "grown", Letter: "L3", Meaning: "days grown", Kind: unit.Count, Min: 1, Max: 400},
		{Name: "late", Letter: "L4", Meaning: "days to the end", Kind: unit.Count, Min: 1, Max: 400},
		{Name: "kc-initial", Letter: "K1", Meaning: "coefficient just planted", Min: 0.05, Max: 2},
		{Name: "kc-grown", Letter: "K2", Meaning: "coefficient grown", Min: 0.05, Max: 2},
		{Name: "kc-end", Letter: "K3", Meaning: "coefficient at the end", Min: 0.05, Max: 2},
	},
	Source: source.Ref{Work: source.FAO56, At: "equation 66"},
	Eval: func(in []float64) float64 {
		s := Stages{in[1], in[2], in[3], in[4], in[5], in[6], in[7]}
		return s.Kc(in[0])
	},
}

var forClimateFormula = &formula.Formula{
	Name:   "coefficient-climate",
	Title:  "Crop coefficient for a windy or a dry climate",
	Text:   "Kc = Kt + (0.04 (u - 2) - 0.004 (RHmin - 45)) (h/3)^0.3, RHmin in %",
	Result: formula.Symbol{Letter: "Kc", Meaning: "crop coefficient"},
	In: []formula.Symbol{coeff, wind,
		{Name: "humidity", Letter: "RHmin", Meaning: "lowest humidity of the day", Kind: unit.Share, Max: 1},
		{Name: "height", Letter: "h", Meaning: "height of the crop", Kind: unit.Length, Min: 0.01, Max: 10}},
	Note:   "For the grown stage, winds of 1 to 6 m/s, humidities of 20 to 80 % and crops of 0.1 to 10 m.",
	Source: source.Ref{Work: source.FAO56, At: "equation 62"},
	Eval:   func(in []float64) float64 { return ForClimate(in[0], in[1], in[2], in[3]) },
}

var mulchedFormula = &formula.Formula{
	Name:   "coefficient-mulched",
	Title:  "Crop coefficient on plastic mulch",
	Text:   "Kc = 0.85 Kt",
	Result: formula.Symbol{Letter: "Kc", Meaning: "crop coefficient"},
	In:     []formula.Symbol{coeff},
	Source: source.Ref{Work: source.FAO56, At: "example 45"},
	Eval:   func(in []float64) float64 { return Mulched(in[0]) },
}

var cropUseFormula = &formula.Formula{
	Name:   "crop-use",
	Title:  "Water that a full field of a crop uses",
	Text:   "ETc = Kc ETo",
	Result: formula.Symbol{Letter: "ETc", Meaning: "water that the crop uses in a day", Kind: unit.Evaporation},
	In: []formula.Symbol{
		{Name: "coefficient", Letter: "Kc", Meaning: "crop coefficient", Min: 0.05, Max: 2},
		{Name: "reference", Letter: "ETo", Meaning: "reference evapotranspiration of the day", Kind: unit.Evaporation, Max: 0.03}},
	Source: source.Ref{Work: source.FAO56, At: "equation 58"},
	Eval:   func(in []float64) float64 { return in[0] * in[1] },
}
