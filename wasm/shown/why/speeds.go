package why

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
)

// Speeds compares the water's speeds with the limit.
func Speeds(the *scene.Scene) {
	sc := part{the}
	if len(sc.S.Zones) == 0 {
		sc.Tag("p", "Nothing runs yet.")
		return
	}
	limit := sc.S.Plan.Limits.Speed
	sc.Tag("p", "Slow water costs little pressure. Fast water costs much, and causes water hammer when a valve shuts.")
	t := sc.Table("Greatest speeds of the water", "Where", "#Speed", "#Limit", "Verdict")
	for i := range sc.S.Zones {
		z := &sc.S.Zones[i]
		zone := ""
		if len(sc.S.Zones) > 1 {
			zone = ", zone " + strconv.Itoa(z.Zone)
		}
		for _, r := range [...]struct {
			name    string
			v       float64
			limited bool
		}{{"Supply line", z.LeadSpeed, true}, {"Header", z.HeaderSpeed, true}, {"Rows", z.RowSpeed, false}} {
			if r.name == "Header" && sc.S.Plan.Header.Layout == plan.OneLine {
				continue
			}
			most, verdict := "–", "no limit set"
			if r.limited {
				most, verdict = sc.Amount(unit.Speed, limit), "within"
				if r.v > limit {
					verdict = "too fast"
				}
			}
			t.Row(r.name+zone, sc.Amount(unit.Speed, r.v), most, verdict)
		}
	}
	t.End()
}
