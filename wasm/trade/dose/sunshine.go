package dose

import "math"

// A Sunlit is a day between sunrise and sunset, in s after midnight; Set is
// after Rise.
type Sunlit struct{ Rise, Set float64 }

// shortest is the least time, in s, between the sunrise and the sunset of a day
// that water is spread over: days near a pole that are shorter, or have none,
// are taken for so long. Plants have lamps then, or rest.
const shortest = 3600

const spin = 86400 // s in a day

// Of returns the day with its sunrise and sunset, or one about noon where the
// sun hardly rises or hardly sets.
func Of(rise, set float64) Sunlit {
	switch length := set - rise; {
	case !(length >= shortest): // and what is no number
		noon := (rise + set) / 2
		if !(noon >= 0 && noon < spin) {
			noon = spin / 2
		}
		return Sunlit{noon - shortest/2, noon + shortest/2}
	case length > spin:
		return Sunlit{(rise + set - spin) / 2, (rise + set + spin) / 2}
	}
	return Sunlit{rise, set}
}

// Share returns the share of the day's radiation that has come by the time t:
// 0 at sunrise, 1 at sunset. Above the air, and by the sine of the sun's
// altitude, which goes as cos ω - cos ωs with the hour angle ω from noon and ωs
// at sunset; its sum is sin ω - ω cos ωs. A clear day keeps to it, clouds do
// not.
func (d Sunlit) Share(t float64) float64 {
	switch {
	case t <= d.Rise:
		return 0
	case t >= d.Set:
		return 1
	}
	cos, whole := d.half()
	return d.part(t, cos, whole)
}

// turn is the angle that the earth turns in a second.
const turn = 2 * math.Pi / spin

// half returns cos ωs, and the sum of the radiation from noon to sunset.
func (d Sunlit) half() (cos, whole float64) {
	end := (d.Set - d.Rise) / 2 * turn
	cos = math.Cos(end)
	return cos, math.Sin(end) - end*cos
}

// part is Share at a time between sunrise and sunset, with what half returns.
func (d Sunlit) part(t, cos, whole float64) float64 {
	at := (t - (d.Rise+d.Set)/2) * turn
	return 0.5 + 0.5*(math.Sin(at)-at*cos)/whole
}

// Time is the inverse of [Sunlit.Share], to a hundredth of a second.
func (d Sunlit) Time(share float64) float64 {
	cos, whole := d.half()
	lo, hi := d.Rise, d.Set
	for hi-lo > 0.01 {
		if mid := (lo + hi) / 2; d.part(mid, cos, whole) < share {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// Peak returns the share of the day's radiation that comes in a second of its
// noon.
func (d Sunlit) Peak() float64 {
	noon := (d.Rise + d.Set) / 2
	return (d.Share(noon+300) - d.Share(noon-300)) / 600
}
