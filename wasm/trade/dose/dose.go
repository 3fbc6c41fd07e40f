// Package dose is how much water a plant is given, in how many shots, and when
// in the day: the arithmetic of drip on slabs, bags and buckets.
//
// Volumes are in m³ of one plant, flows in m³/s, times in s after midnight,
// shares as fractions of one.
package dose

// Applied returns the volume to give so that the share drain of it runs out
// when the plant takes up use; drain from 0 to below 1.
func Applied(use, drain float64) float64 { return use / (1 - drain) }

// Drain returns the share that runs out of what was given when the plant takes
// up use; 0 when it takes up all of it, or more.
func Drain(use, given float64) float64 {
	if !(given > use) {
		return 0
	}
	return 1 - use/given
}

// Next returns the volume that brings the drain to the share wanted, when
// given leaves the share measured, and the plant takes up as much as before.
func Next(given, measured, wanted float64) float64 {
	return given * (1 - measured) / (1 - wanted)
}

// Dry returns how long the water that a plant takes up easily lasts, in s, when
// nothing is given: of a volume of medium that holds the share easy, taken up
// at rate.
func Dry(volume, easy, rate float64) float64 { return volume * easy / rate }
