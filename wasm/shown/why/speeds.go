package why

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/layout"
)

var (
	ranks                     = [...]string{layout.Lead: "Supply line", layout.Main: "Header", layout.Lateral: "Rows"}
	paces [sheet.Paces]string = [...]string{sheet.NoLimit: "no limit set", sheet.SlowEnough: "within", sheet.TooFast: "too fast"}
)

// Speeds compares the water's speeds with the limit.
func Speeds(the *scene.Scene) {
	sc := part{the}
	if len(sc.S.Zones) == 0 {
		sc.Tag("p", "Nothing runs yet.")
		return
	}
	sc.Tag("p", "Slow water costs little pressure. Fast water costs much, and causes water hammer when a valve shuts.")
	sc.Table("Greatest speeds of the water", "Where", "#Speed", "#Limit", "Verdict").Rows(func(t *block.Table) {
		for i := range sc.S.Zones {
			z := &sc.S.Zones[i]
			zone := ""
			if len(sc.S.Zones) > 1 {
				zone = ", zone " + strconv.Itoa(z.Zone)
			}
			for rank, name := range ranks {
				if rank == layout.Main && sc.S.Plan.Header.Layout == plan.OneLine {
					continue
				}
				v, is := sc.S.Pace(z, rank)
				most := "–"
				if is != sheet.NoLimit {
					most = sc.Amount(unit.Speed, sc.S.Plan.Limits.Speed)
				}
				t.Row(name+zone, sc.Amount(unit.Speed, v), most, paces[is])
			}
		}
	})
}
