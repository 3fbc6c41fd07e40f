package unit

import "evenrow/wasm/ground/words"

// A Unit is one unit as it is shown, with the way to the inner unit:
//
//	inner = (shown - Zero) * num / den
type Unit struct {
	Symbol string     // "L/h"; empty for plain numbers
	Words  words.Text // "litres an hour", for labels; empty for plain numbers

	places int     // decimal places for reading; negative: that many significant digits
	trim   bool    // zeros at the end of the decimals are left out for reading
	zero   float64 // what is shown at the inner unit's zero
	num    float64
	den    float64
}

// The factors are exact by definition: the international foot, the avoirdupois
// pound with standard gravity, the US gallon of 231 cubic inches, and the
// horsepower of 550 foot pounds a second (NIST SP 811, 2008, appendix B).
// Numerator and denominator stand apart so that 13.6 mm is 13.6/1000, the
// float64 nearest to the true value.
const (
	gallon = 3785411784     // m³ times 10¹²
	psiNum = 44482216152605 // N in a pound of force times 10¹³
	psiDen = 6451600000     // m² in a square inch times 10¹³
)

var units = [kinds][Systems]Unit{
	None:        {plain, plain},
	Count:       {count, count},
	Length:      {{"m", "metres", 2, true, 0, 1, 1}, {"ft", "feet", 1, true, 0, 3048, 10000}},
	Bore:        {{"mm", "millimetres", 1, false, 0, 1, 1000}, {"in", "inches", 3, false, 0, 254, 10000}},
	Head:        {{"m", "metres of water", 1, false, 0, 1, 1}, {"ft", "feet of water", 1, false, 0, 3048, 10000}},
	Pressure:    {{"bar", "bar", 2, false, 0, 1e5, 1}, {"psi", "pounds a square inch", 1, false, 0, psiNum, psiDen}},
	EmitterFlow: {{"L/h", "litres an hour", 1, false, 0, 1, 3.6e6}, {"gal/h", "gallons an hour", 2, false, 0, gallon, 3.6e15}},
	Flow:        {{"L/min", "litres a minute", 2, false, 0, 1, 6e4}, {"gal/min", "gallons a minute", 2, false, 0, gallon, 6e13}},
	Speed:       {{"m/s", "metres a second", 2, false, 0, 1, 1}, {"ft/s", "feet a second", 2, false, 0, 3048, 10000}},
	Temperature: {{"°C", "degrees Celsius", 1, true, 0, 1, 1}, {"°F", "degrees Fahrenheit", 1, true, 32, 5, 9}},
	Volume:      {{"L", "litres", 1, true, 0, 1, 1000}, {"gal", "gallons", 1, true, 0, gallon, 1e12}},
	Share:       {{"%", "per cent", 1, true, 0, 1, 100}, {"%", "per cent", 1, true, 0, 1, 100}},
	Opening:     {{"µm", "micrometres", 0, false, 0, 1, 1e6}, {"µm", "micrometres", 0, false, 0, 1, 1e6}},
	Power:       {{"W", "watts", 0, false, 0, 1, 1}, {"hp", "horsepower", 2, false, 0, 745.69987158227022, 1}},
	Duration:    {{"min", "minutes", 1, true, 0, 60, 1}, {"min", "minutes", 1, true, 0, 60, 1}},
	Slope:       {{"%", "per cent", 1, true, 0, 1, 100}, {"%", "per cent", 1, true, 0, 1, 100}},
	Viscosity:   {{"mm²/s", "square millimetres a second", 3, false, 0, 1, 1e6}, {"mm²/s", "square millimetres a second", 3, false, 0, 1, 1e6}},
	Density:     {{"kg/m³", "kilograms a cubic metre", 1, false, 0, 1, 1}, {"lb/ft³", "pounds a cubic foot", 2, false, 0, 453592370000, 28316846592}},
	Angle:       {{"°", "degrees", 4, true, 0, 1, 1}, {"°", "degrees", 4, true, 0, 1, 1}},
	Hours:       {{"h", "hours", 2, true, 0, 3600, 1}, {"h", "hours", 2, true, 0, 3600, 1}},
	Radiation:   {{"MJ/m²", "megajoules a square metre", 1, false, 0, 1e6, 1}, {"Btu/ft²", "British thermal units a square foot", 0, false, 0, 105505585262, 9290304}},
	Evaporation: {{"mm", "millimetres", 1, false, 0, 1, 1000}, {"in", "inches", 2, false, 0, 254, 10000}},
	Vapour:      {{"kPa", "kilopascals", 2, false, 0, 1000, 1}, {"psi", "pounds a square inch", 3, false, 0, psiNum, psiDen}},
	Wind:        {{"m/s", "metres a second", 1, false, 0, 1, 1}, {"mph", "miles an hour", 1, false, 0, 1609344, 3.6e6}},
	Area:        {{"m²", "square metres", 2, false, 0, 1, 1}, {"ft²", "square feet", 1, false, 0, 9290304, 1e8}},
	PlantWater:  {{"L", "litres", 2, false, 0, 1, 1000}, {"gal", "gallons", 3, false, 0, gallon, 1e12}},
	Dose:        {{"mL", "millilitres", 0, false, 0, 1, 1e6}, {"fl oz", "fluid ounces", 1, false, 0, gallon, 128e12}},
	Crowd:       {{"/m²", "plants a square metre", -3, true, 0, 1, 1}, {"/ft²", "plants a square foot", -3, true, 0, 1e8, 9290304}},
	Money:       {{"", "", 2, false, 0, 1, 1}, {"", "", 2, false, 0, 1, 1}},
	Price:       {{"/m", "price per metre", 2, false, 0, 1, 1}, {"/ft", "price per foot", 2, false, 0, 10000, 3048}},
}

var (
	plain = Unit{"", "", -4, true, 0, 1, 1}
	count = Unit{"", "", 0, false, 0, 1, 1}
)

// Of returns the unit of a kind in a system.
func Of(kind Kind, sys System) Unit { return units[kind][sys] }

// ToInner returns the inner value of x, which is in the unit u.
func (u Unit) ToInner(x float64) float64 { return (x - u.zero) * u.num / u.den }

// FromInner returns the inner value v in the unit u.
func (u Unit) FromInner(v float64) float64 { return v*u.den/u.num + u.zero }

// Inner returns the symbol of a kind's unit inside the program, "1" for plain
// numbers and "" for money.
func Inner(kind Kind) string { return inner[kind] }

var inner = [kinds]string{
	None: "1", Count: "1", Length: "m", Bore: "m", Head: "m", Pressure: "Pa", EmitterFlow: "m³/s", Flow: "m³/s", Speed: "m/s",
	Temperature: "°C", Volume: "m³", Share: "1", Opening: "m", Power: "W", Duration: "s", Slope: "1", Viscosity: "m²/s",
	Density: "kg/m³", Angle: "°", Hours: "s", Radiation: "J/m²", Evaporation: "m", Vapour: "Pa", Wind: "m/s", Area: "m²",
	PlantWater: "m³", Dose: "m³", Crowd: "1/m²", Money: "", Price: "1/m",
}
