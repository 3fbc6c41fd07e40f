package unit

import (
	"math"
	"strconv"
)

// Clock returns a time of day, in s after midnight, to the minute as the
// readers of a system write it: "06:12" or "6:12 am". Times outside the day are
// those of the day before or after, of which the reader is not told.
func Clock(sys System, s float64) string {
	if !(math.Abs(s) < 1e9) {
		return "none"
	}
	const day = 24 * 60
	m := (int(math.Floor(s/60+0.5))%day + day) % day
	h := m / 60
	m %= 60
	minutes := ":" + string([]byte{byte('0' + m/10), byte('0' + m%10)})
	if sys == US {
		half := " am"
		if h >= 12 {
			half = " pm"
		}
		return strconv.Itoa((h+11)%12+1) + minutes + half
	}
	return string([]byte{byte('0' + h/10), byte('0' + h%10)}) + minutes
}

// HoursMinutes returns a length of time as "14 h 06 min", for the length of a
// day.
func HoursMinutes(s float64) string {
	if !(math.Abs(s) < 1e9) {
		return "none"
	}
	m := int(math.Round(s / 60))
	h := m / 60
	m %= 60
	return strconv.Itoa(h) + " h " + string([]byte{byte('0' + m/10), byte('0' + m%10)}) + " min"
}
