package catalogue

import "evenrow/wasm/ground/source"

// Smooth is the absolute roughness of polyethylene tubing, in m: that of drawn
// tubing. Textbooks call plastic smooth; at the speeds of drip lines the two
// give the same friction within a part in a hundred.
const Smooth = 1.5e-6

// SmoothSource is where [Smooth] comes from.
var SmoothSource = source.Ref{Work: "Munson, Young & Okiishi, Fundamentals of Fluid Mechanics", At: "example 8.8, drawn tubing, 5e-6 ft"}

const (
	inch = 0.0254
	feet = 12 * inch
	bar  = 1e5
	psi  = 44482216152605.0 / 6451600000
)

var (
	thinWall = source.Ref{At: "bore and outside as commonly sold; pressure as commonly printed on it", Standing: source.Practice}
	sdr11    = source.Ref{Work: "ISO 4427-2, PE 100, SDR 11 (PN 16)", At: "least wall 2.3 mm at 25 mm, 3.0 mm at 32 mm; bore is outside less two walls"}
	sdr11Mem = source.Ref{Work: "ISO 4427-2, PE 100, SDR 11 (PN 16)", At: "least wall 3.7 mm at 40 mm, 4.6 mm at 50 mm", Standing: source.Memory}
	halfInch = source.Ref{At: "bore and outside as printed on the tubing; no standard holds for it", Standing: source.Practice}
	sidr15   = source.Ref{Work: "ASTM D2239, SIDR 15 (100 psi)", At: "bores; the wall is a fifteenth of the bore", Standing: source.Memory}
)

// Sun is the temperature in °C that the wall of black tubing is taken to reach
// in full sun: an assumption.
const Sun = 50.0

// SunSource is where [Sun] comes from.
var SunSource = source.Ref{At: "which says 50 to 60 °C", Standing: source.Practice}

// Rated is the temperature in °C for which ratings of tubing are printed.
const Rated = 20.0

// What is left, at [Sun], of a rating at [Rated]. Of tubing other than PE 100 the
// grade is not known: it gets the lower factors of older tables, 0.87 at 30 °C
// and 0.74 at 40, continued in a straight line, which is our own choice. Soft
// tubing of low density may lose more.
const (
	LeftPE100 = 121.0 / 160
	LeftSoft  = 1 - 0.013*(Sun-Rated)
)

// Where the two factors come from.
var (
	LeftPE100Source = source.Ref{Work: "AS/NZS 4130, PE 100", At: "121 of 160 m at 50 °C"}
	LeftSoftSource  = source.Ref{Work: "ISO 4427, older edition", At: "0.87 at 30 °C and 0.74 at 40, continued in a straight line", Standing: source.Memory}
)

// Left returns the share of its rating that a tube carries at [Sun].
func (t *Tube) Left() float64 {
	if t.PE100 {
		return LeftPE100
	}
	return LeftSoft
}

// InSun returns the pressure in Pa that a tube may carry for long at [Sun]. It
// is what a plan's pressure is held against.
func (t *Tube) InSun() float64 { return t.Rating * t.Left() }

// Tubes is all tubing to choose from. The five sizes that are all sold as
// "1/2 in" stand apart, because the loss in the narrowest is about twice that
// in the second widest at the same flow, and their fittings do not mix.
//
// Rolls are of lengths that are common in shops, 50 m and 100 ft: common practice, no
// source; there are others.
//
// Prices are for comparing sizes with one another: invented figures that rise
// with the bore as those of shops do. Common practice, no source; growers type
// their own.
var Tubes = [...]Tube{
	Custom: {Name: "another size, with a measured bore", Short: "measured", Roughness: Smooth, Rating: 4 * bar, Row: true, Source: thinWall, Takes: Barbs, Price: 0.50, Roll: 50},

	{"16 mm drip tubing (13.6 mm bore)", "16 mm", 0.0136, 0.016, Smooth, 4 * bar, true, false, thinWall, Barbs, 0.35, 50},
	{"20 mm drip tubing (17.6 mm bore)", "20 mm", 0.0176, 0.020, Smooth, 4 * bar, true, false, thinWall, Barbs, 0.55, 50},
	{"25 mm PE pipe, SDR 11 (20.4 mm bore)", "25 mm", 0.0204, 0.025, Smooth, 16 * bar, false, true, sdr11, Compression, 0.90, 50},
	{"32 mm PE pipe, SDR 11 (26.0 mm bore)", "32 mm", 0.0260, 0.032, Smooth, 16 * bar, false, true, sdr11, Compression, 1.40, 50},
	{"40 mm PE pipe, SDR 11 (32.6 mm bore)", "40 mm", 0.0326, 0.040, Smooth, 16 * bar, false, true, sdr11Mem, Compression, 2.20, 50},
	{"50 mm PE pipe, SDR 11 (40.8 mm bore)", "50 mm", 0.0408, 0.050, Smooth, 16 * bar, false, true, sdr11Mem, Compression, 3.40, 50},

	{"1/2 in drip tubing, 0.520 x 0.620 in", "1/2 in (0.520)", 0.520 * inch, 0.620 * inch, Smooth, 50 * psi, true, false, halfInch, Barbs, 0.36, 100 * feet},
	{"1/2 in drip tubing, 0.570 x 0.670 in", "1/2 in (0.570)", 0.570 * inch, 0.670 * inch, Smooth, 50 * psi, true, false, halfInch, Barbs, 0.40, 100 * feet},
	{"1/2 in drip tubing, 0.580 x 0.700 in", "1/2 in (0.580)", 0.580 * inch, 0.700 * inch, Smooth, 50 * psi, true, false, halfInch, Barbs, 0.42, 100 * feet},
	{"1/2 in drip tubing, 0.600 x 0.700 in", "1/2 in (0.600)", 0.600 * inch, 0.700 * inch, Smooth, 50 * psi, true, false, halfInch, Barbs, 0.44, 100 * feet},
	{"1/2 in drip tubing, 0.620 x 0.710 in", "1/2 in (0.620)", 0.620 * inch, 0.710 * inch, Smooth, 50 * psi, true, false, halfInch, Barbs, 0.46, 100 * feet},
	{"3/4 in drip tubing, 0.820 x 0.940 in", "3/4 in (0.820)", 0.820 * inch, 0.940 * inch, Smooth, 50 * psi, true, false, thinWall, Barbs, 0.80, 100 * feet},
	{"1 in drip tubing, 1.060 x 1.200 in", "1 in (1.060)", 1.060 * inch, 1.200 * inch, Smooth, 50 * psi, true, false, thinWall, Barbs, 1.20, 100 * feet},

	{"3/4 in PE pipe, SIDR 15 (0.824 in bore)", "3/4 in PE (0.824)", 0.824 * inch, 0.824 * inch * 17 / 15, Smooth, 100 * psi, false, false, sidr15, Inserts, 0.95, 100 * feet},
	{"1 in PE pipe, SIDR 15 (1.049 in bore)", "1 in PE (1.049)", 1.049 * inch, 1.049 * inch * 17 / 15, Smooth, 100 * psi, false, false, sidr15, Inserts, 1.30, 100 * feet},
	{"1-1/4 in PE pipe, SIDR 15 (1.380 in bore)", "1-1/4 in PE (1.380)", 1.380 * inch, 1.380 * inch * 17 / 15, Smooth, 100 * psi, false, false, sidr15, Inserts, 2.10, 100 * feet},
}
