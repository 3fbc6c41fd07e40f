// Package sun knows where the sun stands: when it rises and sets at a place,
// and how much of its radiation meets the top of the air above.
//
// Latitudes are in degrees, north positive; longitudes in degrees, east
// positive. Times are seconds of universal time, UT.
package sun

import (
	"math"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/numeric"
)

// Horizon is the altitude of the sun's centre, in degrees, at which its upper
// edge is seen on the horizon: 34 minutes of arc of refraction and 16 of its
// own radius, as almanacs count sunrise and sunset.
const Horizon = -0.8333

// A Kind says what the sun does between two midnights.
type Kind uint8

const (
	RisesAndSets Kind   = iota
	Up                  // it stays up
	Down                // it stays down
	RisesOnly           // it rises and does not set again
	SetsOnly            // it sets and does not rise before that
	Kinds        = iota // how many there are
)

// Times are those of one day at one place.
type Times struct {
	Kind   Kind
	Rise   float64 // s after 0 h UT of the day; 0 when it does not rise
	Set    float64 // s after 0 h UT of the day; 0 when it does not set
	Noon   float64 // s after 0 h UT of the day, when it stands in the meridian
	Length float64 // s between two midnights that it is up, 0 to 86400
}

// spin is the length of a day in s.
const spin = 86400

// Of returns the sun's times on a day at a place, the day being from solar
// midnight to solar midnight about the noon whose local mean time is nearest
// to 12 h of that date. East of Greenwich a sunrise may therefore be before
// 0 h UT, a negative time, and west of it a sunset after 24 h.
//
// The position is that of Meeus, Astronomical Algorithms (1998), chapter 25,
// low accuracy, good to 0.01 degrees of arc; crossings are found to far less
// than a second. On the open sea at 0 to 65 degrees of latitude almanacs agree
// to within a minute; hills, and air that refracts unusually, shift it more.
func Of(d day.Day, lat, lon float64) Times {
	noon, at := about(d, lat, lon)
	t := Times{Noon: noon}
	before, high, after := at(noon-spin/2), at(noon), at(noon+spin/2)
	if before < 0 && high > 0 {
		t.Rise = numeric.Root(at, noon-spin/2, noon)
	}
	if high > 0 && after < 0 {
		t.Set = numeric.Root(at, noon, noon+spin/2)
	}
	switch {
	case high <= 0:
		t.Kind = Down
	case before >= 0 && after >= 0:
		t.Kind, t.Length = Up, spin
	case after >= 0:
		t.Kind, t.Length = RisesOnly, noon+spin/2-t.Rise
	case before >= 0:
		t.Kind, t.Length = SetsOnly, t.Set-(noon-spin/2)
	default:
		t.Length = t.Set - t.Rise
	}
	return t
}

// OnClock returns the sun's times on a day of a clock that runs ahead s before
// universal time, in s after 0 h of that clock. Noon lies between 0 h and 24 h,
// whatever side of the date line the clock keeps to.
func OnClock(d day.Day, lat, lon, ahead float64) Times {
	t := Of(d, lat, lon)
	off := math.Floor((t.Noon + ahead) / spin)
	if off != 0 {
		t = Of(d-day.Day(off), lat, lon)
		ahead -= off * spin
	}
	t.Noon += ahead
	if t.Kind == RisesAndSets || t.Kind == RisesOnly {
		t.Rise += ahead
	}
	if t.Kind == RisesAndSets || t.Kind == SetsOnly {
		t.Set += ahead
	}
	return t
}

// An Event is one crossing of the horizon.
type Event struct {
	At    float64 // s after 0 h of the clock's day
	Rises bool
}

// Events returns every sunrise and sunset in a day of a clock that runs offset
// seconds ahead of UT, in order, from 0 h to 24 h. Near a pole there may be none,
// one, or more than two.
func Events(d day.Day, lat, lon, offset float64) []Event {
	at := altitude(d, lat, lon)
	var list []Event
	const step = spin / 144 // shorter than the time between any two crossings that an almanac would list
	was := at(-offset)
	for i := range 144 {
		from := float64(i)*step - offset
		is := at(from + step)
		if was < 0 != (is < 0) {
			list = append(list, Event{numeric.Root(at, from, from+step) + offset, is >= 0})
		}
		was = is
	}
	return list
}

// altitude returns the sine of the sun's altitude less that of the horizon of
// almanacs, as a function of the seconds after 0 h UT of a day.
func altitude(d day.Day, lat, lon float64) func(t float64) float64 {
	sinLat, cosLat := math.Sincos(lat * rad)
	return func(t float64) float64 {
		p := at(d, t)
		return sinLat*p.sine + cosLat*math.Sqrt(1-p.sine*p.sine)*math.Cos(hourAngle(t, lon, p.equation)) - math.Sin(Horizon*rad)
	}
}

// about returns when the sun stands in the meridian, in s after 0 h UT, and
// altitude between the two midnights about it. The position is worked out at the
// noon of local mean time and half a day before and after; a parabola through
// the three is off by 2e-8 in between, which is a thousandth of a second of a
// sunrise. It goes as far beyond as noon is from its mean, 17 minutes.
func about(d day.Day, lat, lon float64) (noon float64, altitude func(t float64) float64) {
	const half = spin / 2
	mean := (180 - lon) * 240
	a, b, c := at(d, mean-half), at(d, mean), at(d, mean+half)
	equation := func(t float64) float64 {
		x := (t - mean) / half
		return b.equation + x/2*(c.equation-a.equation+x*(c.equation-2*b.equation+a.equation))
	}
	// The equation of time changes by less than 30 s a day, so that two passes
	// leave nothing.
	noon = mean
	for range 2 {
		noon = mean - equation(noon)/rad*240
	}
	sinLat, cosLat := math.Sincos(lat * rad)
	sinHorizon := math.Sin(Horizon * rad)
	return noon, func(t float64) float64 {
		x := (t - mean) / half
		sine := b.sine + x/2*(c.sine-a.sine+x*(c.sine-2*b.sine+a.sine))
		return sinLat*sine + cosLat*math.Sqrt(1-sine*sine)*math.Cos(hourAngle(t, lon, equation(t))) - sinHorizon
	}
}

// hourAngle returns how far the sun is past the meridian, in radians.
func hourAngle(t, lon, equation float64) float64 {
	return (t/240+lon-180)*rad + equation
}
