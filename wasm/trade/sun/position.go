package sun

import (
	"math"

	"evenrow/wasm/ground/day"
)

const rad = math.Pi / 180

// A position is where the sun stands in the sky of the whole earth.
type position struct {
	sine     float64 // of the declination, which is positive north of the equator
	equation float64 // rad, apparent less mean solar time
}

// j2000 is the Julian day number of 12 h UT on 1 January 2000.
const j2000 = 2451545

// JulianDay returns the Julian day at t seconds after 0 h UT of a day: days and
// parts of days since noon of 1 January of the year -4712 in the Julian
// calendar.
func JulianDay(d day.Day, t float64) float64 { return 2440587.5 + float64(d) + t/spin }

// at returns the sun's position at t seconds after 0 h UT of a day.
func at(d day.Day, t float64) position {
	// Dynamical time runs a minute or so ahead of UT: by then the sun has
	// moved 0.0007 degrees, which only a pole would notice.
	c := (JulianDay(d, t) + 69.0/spin - j2000) / 36525 // centuries

	mean := turn(280.46646 + c*(36000.76983+c*0.0003032)) // longitude
	anomaly := turn(357.52911+c*(35999.05029-c*0.0001537)) * rad
	e := 0.016708634 - c*(0.000042037+c*0.0000001267) // of the orbit
	sinA, cosA := math.Sincos(anomaly)
	sin2A := 2 * sinA * cosA
	centre := (1.914602-c*(0.004817+c*0.000014))*sinA + (0.019993-c*0.000101)*sin2A + 0.000289*sinA*(3-4*sinA*sinA)
	sinN, cosN := math.Sincos((125.04 - 1934.136*c) * rad) // of the moon's node
	longitude := (mean + centre - 0.00569 - 0.00478*sinN) * rad
	obliquity := (23 + (26+(21.448-c*(46.815+c*(0.00059-c*0.001813)))/60)/60 + 0.00256*cosN) * rad

	sinO, cosO := math.Sincos(obliquity)
	y := (1 - cosO) / (1 + cosO) // the square of the tangent of half of it
	sinL, cosL := math.Sincos(2 * mean * rad)
	return position{
		sine:     sinO * math.Sin(longitude),
		equation: y*sinL - 2*e*sinA + 4*e*y*sinA*cosL - y*y*sinL*cosL - 5*e*e/4*sin2A,
	}
}

// turn brings an angle in degrees to 0 to 360, so that sines lose no digits
// far from the year 2000.
func turn(x float64) float64 { return x - 360*math.Floor(x/360) }
