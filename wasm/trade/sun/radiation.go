package sun

import "math"

// solar is the radiation that meets the top of the air squarely, at the mean
// distance of the sun: 0.0820 MJ/m² a minute, in J/m² a second.
const solar = 0.0820e6 / 60

// Distance returns the inverse of the relative distance of the sun, squared,
// on a day of the year: 0.97 in July to 1.03 in January.
func Distance(ofYear float64) float64 { return 1 + 0.033*math.Cos(2*math.Pi/365*ofYear) }

// Declination returns how far north of the equator the sun stands on a day of
// the year, in radians.
func Declination(ofYear float64) float64 { return 0.409 * math.Sin(2*math.Pi/365*ofYear-1.39) }

// SunsetAngle returns the angle that the earth turns from noon to sunset, in
// radians: 0 where the sun stays down, π where it stays up. lat is in degrees,
// declination in radians.
func SunsetAngle(lat, declination float64) float64 {
	return math.Acos(max(-1, min(1, -math.Tan(lat*rad)*math.Tan(declination))))
}

// Extraterrestrial returns the radiation that meets the top of the air above a
// latitude, in degrees, on a day of the year, in J/m²: equations 21 to 25 of FAO-56.
func Extraterrestrial(lat, ofYear float64) float64 {
	declination := Declination(ofYear)
	angle := SunsetAngle(lat, declination)
	sinLat, cosLat := math.Sincos(lat * rad)
	sinDec, cosDec := math.Sincos(declination)
	// Around the pole in winter nothing is left, or less by rounding.
	return max(0, spin/math.Pi*solar*Distance(ofYear)*(angle*sinLat*sinDec+cosLat*cosDec*math.Sin(angle)))
}

// DayHours returns how long the sun's centre is above the horizon at a
// latitude, in degrees, on a day of the year, in s: equation 34 of FAO-56, which
// leaves refraction out. Almanacs count longer days: see [Of].
func DayHours(lat, ofYear float64) float64 {
	return spin / math.Pi * SunsetAngle(lat, Declination(ofYear))
}
