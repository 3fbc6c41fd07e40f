package drain

import (
	"testing"

	"evenrow/wasm/ground/day"
)

// No day holds more than a day of watering: the length of the shots is at fault.
func TestNoDayHoldsSoManyShots(t *testing.T) {
	for minutes, wrong := range map[string]bool{"90": true, "60": false} {
		typed := map[string]string{Path(1, DayName): "2027-07-15", Path(1, "shots"): "12", Path(1, "minutes"): minutes}
		_, slips := Read(func(path string) string { return typed[path] }, false, day.Of(2027, 7, 1))
		if got := len(slips) == 1 && slips[0].Path == Path(1, "minutes"); got != wrong || !wrong && len(slips) > 0 {
			t.Errorf("12 shots of %s minutes: %v", minutes, slips)
		}
	}
}
