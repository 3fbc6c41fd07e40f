package unit

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/words"
)

// Clock returns a time of day, in s after midnight, to the minute as the
// readers of a system write it: "06:12" or "6:12 am". Times outside the day are
// those of the day before or after, of which the reader is not told.
func Clock(sys System, s float64) string {
	if !(math.Abs(s) < 1e9) {
		return words.Say("none")
	}
	const day = 24 * 60
	m := (int(math.Floor(s/60+0.5))%day + day) % day
	h := m / 60
	m %= 60
	if sys != US {
		return twoDigits(h) + ":" + twoDigits(m)
	}
	time := strconv.Itoa((h+11)%12+1) + ":" + twoDigits(m)
	if h >= 12 {
		return words.Say("{time} pm", time)
	}
	return words.Say("{time} am", time)
}

// HoursMinutes returns a length of time as "14 h 06 min", for the length of a
// day.
func HoursMinutes(s float64) string {
	if !(math.Abs(s) < 1e9) {
		return words.Say("none")
	}
	m := int(math.Round(s / 60))
	h := m / 60
	m %= 60
	return words.Say("{hours} h {minutes} min", strconv.Itoa(h), twoDigits(m))
}

// MinutesSeconds returns a length of time as a timer is set to it, exactly:
// "5 min", "4 min 40 s", "45 s".
func MinutesSeconds(s float64) string {
	if !(math.Abs(s) < 1e9) {
		return words.Say("none")
	}
	n := int(math.Round(s))
	m, rest := words.N(n/60), words.N(n%60)
	minutes, seconds := m+"\u00a0min", rest+"\u00a0s"
	switch {
	case n%60 == 0:
		return minutes
	case n < 60:
		return seconds
	}
	return words.Say("{minutes} {seconds}", minutes, seconds)
}

// twoDigits writes a number below 100.
func twoDigits(n int) string { return string([]byte{byte('0' + n/10), byte('0' + n%10)}) }
