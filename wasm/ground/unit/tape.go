package unit

import (
	"math"
	"strconv"
)

// Tape is a length in m, 0 or more, as a tape measure shows it: to the millimetre, or
// in feet, inches and eighths.
func Tape(sys System, m float64) string {
	if sys == Metric {
		return strconv.FormatFloat(m, 'f', 3, 64) + "\u00a0m"
	}
	eighths := int(math.Round(8 * Of(Bore, US).FromInner(m)))
	feet, inches, part := eighths/96, eighths/8%12, eighths%8
	s := ""
	if feet > 0 {
		s = strconv.Itoa(feet) + "\u00a0ft"
	}
	if inches > 0 || part > 0 || feet == 0 {
		if s != "" {
			s += " "
		}
		if inches > 0 || part == 0 {
			s += strconv.Itoa(inches)
			if part > 0 {
				s += "\u00a0"
			}
		}
		s += eighth[part] + "\u00a0in"
	}
	return s
}

var eighth = [8]string{"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"}
