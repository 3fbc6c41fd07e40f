package flush

import (
	"math"
	"testing"
)

// 1 ft/s, as 0.3 m/s: at the border, on either side, and whatever it would be with
// the other rows shut.
func TestTooSlow(t *testing.T) {
	const border = 0.3
	for _, tt := range []struct {
		end  End
		want bool
	}{
		{End{}, true},
		{End{Speed: math.Nextafter(border, 0)}, true},
		{End{Speed: border}, false},
		{End{Speed: math.Nextafter(border, 1)}, false},
		{End{Speed: 2}, false},
		{End{Speed: 0.2, Alone: 0.4}, true},
		{End{Speed: 0.4, Alone: 0.2}, false},
		{End{Place: RowInto, Speed: 0.2}, true},
		{End{Place: OfHeader, Speed: border}, false},
	} {
		if got := tt.end.TooSlow(); got != tt.want {
			t.Errorf("%+v: too slow: %t", tt.end, got)
		}
	}
}
