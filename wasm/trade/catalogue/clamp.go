package catalogue

import (
	"math"

	"evenrow/wasm/ground/source"
)

// A Clamp is one size of worm-drive hose clamp.
type Clamp struct {
	SAE         string  // the number that it is sold by; empty where it is sold by its range
	Range       string  // as it is printed on it: "12-20 mm"
	Least, Most float64 // m, of the outside of tubing on its barb
}

// ClampsSAE are the sizes of shops in the United States, and ClampsMM those of shops
// elsewhere, from the smallest on. Makers differ by 1/16 in and by a millimetre or two.
var (
	ClampsSAE = []Clamp{
		{"4", "7/32-5/8 in", inch * 7 / 32, inch * 5 / 8},
		{"6", "3/8-7/8 in", inch * 3 / 8, inch * 7 / 8},
		{"8", "7/16-1 in", inch * 7 / 16, inch},
		{"10", "1/2-1 1/16 in", inch / 2, inch * 17 / 16},
		{"12", "11/16-1 1/4 in", inch * 11 / 16, inch * 5 / 4},
		{"16", "13/16-1 1/2 in", inch * 13 / 16, inch * 3 / 2},
		{"20", "3/4-1 3/4 in", inch * 3 / 4, inch * 7 / 4},
		{"24", "1-2 in", inch, inch * 2},
	}
	ClampsMM = []Clamp{
		{"", "8-12 mm", 0.008, 0.012},
		{"", "10-16 mm", 0.010, 0.016},
		{"", "12-20 mm", 0.012, 0.020},
		{"", "16-27 mm", 0.016, 0.027},
		{"", "20-32 mm", 0.020, 0.032},
		{"", "25-40 mm", 0.025, 0.040},
		{"", "32-50 mm", 0.032, 0.050},
	}
)

// Where the sizes come from.
var (
	ClampsSAESource = source.Ref{Work: "SAE J1508, worm-drive clamps", At: "ranges; those of makers differ by 1/16 in", Standing: source.Memory}
	ClampsMMSource  = source.Ref{At: "ranges as commonly printed on worm-drive clamps", Standing: source.Practice}
)

// ClampFor returns the size among sizes whose range has the outside in m, and its
// middle closest to it; nil where none has it.
func ClampFor(sizes []Clamp, outside float64) *Clamp {
	var best *Clamp
	off := math.Inf(1)
	for i := range sizes {
		s := &sizes[i]
		if d := math.Abs((s.Least+s.Most)/2 - outside); s.Least <= outside && outside <= s.Most && d < off {
			best, off = s, d
		}
	}
	return best
}
