package evapo

import "evenrow/wasm/ground/numeric"

// A Stages is the life of a crop as FAO-56 sees it: days just planted, growing,
// grown and ageing, and the crop coefficient in the first, the third and at
// the end.
type Stages struct {
	Ini, Dev, Mid, Late float64 // days, each above 0
	KcIni, KcMid, KcEnd float64
}

// Total returns the days from planting to the end.
func (s *Stages) Total() float64 { return s.Ini + s.Dev + s.Mid + s.Late }

// Kc returns the crop coefficient after so many days: equation 66. It is level
// in the first and the third stage, and straight between.
func (s *Stages) Kc(days float64) float64 {
	switch grown := s.Ini + s.Dev; {
	case days <= s.Ini:
		return s.KcIni
	case days < grown:
		return s.KcIni + (days-s.Ini)/s.Dev*(s.KcMid-s.KcIni)
	case days <= grown+s.Mid:
		return s.KcMid
	}
	return s.KcMid + min(1, (days-s.Ini-s.Dev-s.Mid)/s.Late)*(s.KcEnd-s.KcMid)
}

// ForClimate returns a coefficient of the table for a climate that is windier
// or drier than the table's: equation 62. wind is in m/s at 2 m, humid the lowest
// humidity of the day as a share of one, height that of the crop in m.
func ForClimate(kc, wind, humid, height float64) float64 {
	return kc + (0.04*(wind-2)-0.4*(humid-0.45))*numeric.Pow(height/3, 0.3)
}

// Mulched returns the coefficient of a crop on plastic mulch, under which little
// water leaves but through the plants: 15 % less.
func Mulched(kc float64) float64 { return 0.85 * kc }
