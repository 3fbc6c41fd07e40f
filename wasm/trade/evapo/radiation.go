package evapo

import "math"

// latent is the heat that turns water into vapour: 2.45 MJ/kg, in J for each m³
// of water.
const latent = 2.45e6 * 1000

// Depth returns the depth of water, in m, that radiation of so many J/m² could
// turn into vapour: equation 20.
func Depth(radiation float64) float64 { return radiation / latent }

// Emission returns the radiation of a black body at a temperature in °C, in
// J/m² a day, with 273.16 K at 0 °C as in the tables of FAO-56.
func Emission(t float64) float64 {
	k := t + 273.16
	k *= k
	return 4.903e-3 * k * k
}

// Angstrom returns the radiation that meets the ground, from that above the air
// and the share of the daylight hours with sunshine, 0 to 1: equation 35 with the
// constants that it names for places without measurements.
func Angstrom(above, sunshine float64) float64 { return (0.25 + 0.50*sunshine) * above }

// Coefficients of [FromTemperatures].
const (
	Inland  = 0.16 // far from the sea
	Coastal = 0.19 // by the sea
)

// FromTemperatures returns the radiation that meets the ground, from that above
// the air and the lowest and highest temperature of the day, in °C: equation 50.
// Clear days are warm and clear nights cold. k is [Inland] or [Coastal].
func FromTemperatures(above, low, high, k float64) float64 {
	return k * math.Sqrt(max(0, high-low)) * above
}

// Clear returns the radiation that meets the ground under a clear sky at a
// height above the sea in m: equation 37.
func Clear(above, height float64) float64 { return (0.75 + 2e-5*height) * above }

// albedo is the share of sunshine that a short green crop throws back.
const albedo = 0.23

// NetShort returns the radiation of the sun that a green crop keeps: equation 38.
func NetShort(ground float64) float64 { return (1 - albedo) * ground }

// NetLong returns the heat that the ground sends to the sky in a day: equation
// 39. vapour is in Pa; clearness is the radiation at the ground over that under
// a clear sky, of which no more than 1 is counted.
func NetLong(low, high, vapour, clearness float64) float64 {
	return (Emission(low) + Emission(high)) / 2 * (0.34 - 0.14*math.Sqrt(max(0, vapour)/1000)) * (1.35*min(1, clearness) - 0.35)
}
