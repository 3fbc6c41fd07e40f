package evapo

import (
	"math"

	"evenrow/wasm/trade/sun"
)

// Penman returns the reference evapotranspiration by the equation of Penman
// and Monteith, in m a day: equation 6. It can fall below 0, which is dew.
//
// low and high are in °C, vapour is that of the air in Pa, net is the net
// radiation and soil what warms the ground, in J/m² a day, wind is in m/s at 2 m,
// height above the sea in m.
func Penman(low, high, vapour, net, soil, wind, height float64) float64 {
	mean := (low + high) / 2
	slope, gamma := Slope(mean), Psychrometric(height)
	// 900 holds for kPa and mm.
	air := gamma * 900e-6 / (mean + 273) * wind * (MeanSaturation(low, high) - vapour)
	return (slope*Depth(net-soil) + air) / (slope + gamma*(1+0.34*wind))
}

// Hargreaves returns the reference evapotranspiration by temperatures alone,
// after Hargreaves and Samani, in m a day: equation 52. above is the radiation
// above the air.
func Hargreaves(low, high, above float64) float64 {
	return 0.0023 * ((low+high)/2 + 17.8) * math.Sqrt(max(0, high-low)) * Depth(above)
}

// Usual wind at 2 m in m/s where none was measured: FAO-56, chapter 3.
const UsualWind = 2

// A Weather is a day out of doors at a place.
type Weather struct {
	Latitude  float64 // degrees, north positive
	OfYear    int     // number of the day in its year, from 1
	Height    float64 // m above the sea
	Low, High float64 // °C

	// More says that one or more of what follows is known; each that is not is
	// below 0 and guessed as FAO-56, chapter 3, advises.
	More     bool
	Humidity float64 // mean, a share of one
	Wind     float64 // m/s at 2 m
	Sunshine float64 // hours of sunshine over daylight hours
}

// Above returns the radiation above the air in J/m².
func (w *Weather) Above() float64 { return sun.Extraterrestrial(w.Latitude, float64(w.OfYear)) }

// Ground returns the radiation that meets the ground in J/m²: by the hours of
// sunshine where they are known, else by the temperatures, and never more than
// under a clear sky.
func (w *Weather) Ground() float64 {
	above := w.Above()
	if w.More && w.Sunshine >= 0 {
		return Angstrom(above, w.Sunshine)
	}
	return min(FromTemperatures(above, w.Low, w.High, Inland), Clear(above, w.Height))
}

// Vapour returns the pressure of vapour in the air in Pa. Where no humidity is
// known, nights bring dew: it is that over water at the lowest temperature.
func (w *Weather) Vapour() float64 {
	if w.More && w.Humidity >= 0 {
		return VapourOfMean(w.Low, w.High, w.Humidity)
	}
	return Saturation(w.Low)
}

// Breeze returns the wind in m/s.
func (w *Weather) Breeze() float64 {
	if w.More && w.Wind >= 0 {
		return w.Wind
	}
	return UsualWind
}

// Net returns the radiation that a green crop keeps, in J/m² a day.
func (w *Weather) Net() float64 {
	ground, clearness := w.Ground(), 0.5 // in the polar night, where it hardly matters
	if clear := Clear(w.Above(), w.Height); clear > 0 {
		clearness = ground / clear
	}
	return NetShort(ground) - NetLong(w.Low, w.High, w.Vapour(), clearness)
}

// Reference returns the reference evapotranspiration of the day in m, never
// below 0: by [Penman] where more is known than temperatures, else by
// [Hargreaves].
func (w *Weather) Reference() float64 {
	if w.More {
		return max(0, Penman(w.Low, w.High, w.Vapour(), w.Net(), 0, w.Breeze(), w.Height))
	}
	return max(0, Hargreaves(w.Low, w.High, w.Above()))
}
