package judge

import (
	"testing"

	"evenrow/build/hostile"
	"evenrow/wasm/shown/sheet"
)

// The headline speaks of plants, and is true of them, of whatever kind it is:
// examples whose rows have few plants, emitters of several kinds and zones of
// their own, and a supply of about what they need.
func TestTheHeadlineIsTrueOfThePlants(t *testing.T) {
	same := map[string]int{}
	for n := range 500 {
		p := hostile.Uneven(hostile.Numbered(5, n))
		kind, fault := headline(sheet.Answer(p))
		if same[kind]++; fault != "" {
			t.Errorf("plan %d: %s", n, fault)
		}
	}
	t.Log(same)
	for _, kind := range []string{"same", "nearly", "zone", "nearly zone", "not", "its"} {
		if same[kind] == 0 {
			t.Errorf("no plan of the kind %q among them: %v", kind, same)
		}
	}
}
