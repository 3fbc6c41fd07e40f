// Package evapo reckons how much water the air takes up: pressures of vapour,
// radiation at the ground, the reference evapotranspiration of a short green
// crop in the open, and what a crop takes up of it by its stage.
//
// It is FAO Irrigation and Drainage Paper 56 in SI units: pressures in Pa,
// radiation in J/m² a day, depths of water in m a day, temperatures in °C.
package evapo

import "evenrow/wasm/ground/numeric"

// Saturation returns the pressure of vapour over water at a temperature in °C,
// -50 to 60, in Pa: equation 11.
func Saturation(t float64) float64 { return 610.8 * numeric.Exp(17.27*t/(t+237.3)) }

// Slope returns how fast [Saturation] rises at a temperature, in Pa for each
// °C: equation 13.
func Slope(t float64) float64 { return 4098 * Saturation(t) / ((t + 237.3) * (t + 237.3)) }

// AirPressure returns the pressure of the air at a height above the sea in m,
// in Pa: equation 7.
func AirPressure(height float64) float64 {
	return 101300 * numeric.Pow((293-0.0065*height)/293, 5.26)
}

// Psychrometric returns the psychrometric constant at a height above the sea,
// in Pa for each °C: equation 8.
func Psychrometric(height float64) float64 { return 0.665e-3 * AirPressure(height) }

// WetBulb returns the pressure of vapour in air that a ventilated
// psychrometer reads, in Pa: equation 15. dry and wet are in °C.
func WetBulb(dry, wet, height float64) float64 {
	return Saturation(wet) - 0.000662*AirPressure(height)*(dry-wet)
}

// VapourOfExtremes returns the pressure of vapour in the air of a day, in Pa,
// by its lowest and highest temperature and the humidity at each, shares of
// one: equation 17.
func VapourOfExtremes(low, humidAtLow, high, humidAtHigh float64) float64 {
	return (Saturation(low)*humidAtLow + Saturation(high)*humidAtHigh) / 2
}

// VapourOfMean returns the same by the mean humidity of the day: equation 19.
func VapourOfMean(low, high, humid float64) float64 {
	return humid * MeanSaturation(low, high)
}

// MeanSaturation returns the mean of the pressures of vapour over water at the
// lowest and the highest temperature of a day, in Pa: equation 12.
func MeanSaturation(low, high float64) float64 { return (Saturation(low) + Saturation(high)) / 2 }
