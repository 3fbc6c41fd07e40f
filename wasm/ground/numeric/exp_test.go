package numeric

import (
	"math"
	"testing"
)

func TestExp(t *testing.T) {
	for x := -50.0; x <= 50; x += 0.37 {
		if got, want := Exp(x), math.Exp(x); math.Abs(got-want) > want*(2e-16*math.Abs(x)+1e-15) {
			t.Errorf("Exp(%g) = %.17g, want %.17g", x, got, want)
		}
	}
	if Exp(0) != 1 {
		t.Errorf("Exp(0) = %g, want 1", Exp(0))
	}
}
