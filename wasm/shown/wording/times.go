package wording

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// Lengths of time, each as somebody can keep to it or read it off a clock:
//
//	Closing   how slowly a valve shuts: counted aloud, up to the next tenth of a second
//	Elapsed   the first minutes of a shot, which are watched: seconds up to two minutes
//	Shot      what a timer is set to: minutes and seconds, exactly
//	Lasting   how long plants last: nobody knows it nearer than five minutes
//
// A length that is worked with and not kept to is an [Units.Amount] of
// [unit.Duration], and that of a day, or of what comes too late,
// [unit.HoursMinutes].

// Closing is the time over which a valve shuts: "2.4 s".
func Closing(s float64) string {
	switch {
	case s == 0:
		return words.Say("at once")
	case !Finite(s):
		return "–"
	}
	return seconds(unit.Figure(unit.None, unit.Metric, math.Ceil(s*10)/10))
}

// Elapsed is a time after the start of a shot: "8.5 s", "95 s", "never".
func (u Units) Elapsed(s float64) string {
	switch {
	case math.IsInf(s, 1):
		return words.Say("never")
	case s < 10:
		return seconds(strconv.FormatFloat(s, 'f', 1, 64))
	case s < 120:
		return seconds(strconv.FormatFloat(s, 'f', 0, 64))
	}
	return u.Amount(unit.Duration, s)
}

// Shot is the time of a shot: "5 min", "4 min 40 s".
func Shot(s float64) string { return unit.MinutesSeconds(s) }

// Lasting is a time in hours and minutes, to five minutes: "20 min", "3 h 05 min",
// "2 days".
func Lasting(s float64) string {
	const hour = 3600
	switch {
	case !Finite(s):
		return words.Say("more than a week")
	case s >= 48*hour:
		return words.Say("{n} {n|day|days}", words.N(int(s/(24*hour))))
	case s < hour:
		return minutes(words.N(int(math.Round(s/300)) * 5))
	}
	return unit.HoursMinutes(math.Round(s/300) * 300)
}

func seconds(figure string) string { return figure + "\u00a0s" }

func minutes(figure string) string { return figure + "\u00a0min" }
