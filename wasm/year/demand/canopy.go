package demand

import "evenrow/wasm/trade/evapo"

// Shares of its full canopy that a crop has when it is planted out, and when it
// begins to grow fast. Plants come from blocks and are some weeks old then; the
// shares are chosen so that a new one takes up 0.05 to 0.1 L a day in May, which
// is what handbooks give (from memory).
const (
	planted = 0.10
	rooted  = 0.18
)

// Canopy returns the share of its full canopy that a crop has grown so many
// days after planting out. It grows straight through the first stage, straight
// and faster through the second, and stays full from then on: what becomes of
// old leaves is in the crop coefficient.
func Canopy(s *evapo.Stages, days float64) float64 {
	switch {
	case days <= 0:
		return planted
	case days < s.Ini:
		return planted + (rooted-planted)*days/s.Ini
	}
	return min(1, rooted+(1-rooted)*(days-s.Ini)/s.Dev)
}
