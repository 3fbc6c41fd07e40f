package carry

import (
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
)

// Dates, plantings and crops come back, also numbers that are left empty after
// a record in which they are not, in both systems of units.
func TestSeasonsSurvive(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 12))
	for i := range 60 {
		p := plan.Default()
		p.Units = unit.System(i % unit.Systems)
		for _, f := range plan.SectionNamed("season").Fields() {
			f.SetValue(p, 0, f.Min+float64(int((f.Max-f.Min)*r.Float64())))
		}
		p.Season.Mode, p.Season.Frost = plan.FromSowing, 1
		p.Season.FirstFrost = p.Season.LastFrost + 1
		p.Season.Date = p.Season.LastFrost - 700 + r.IntN(1400)
		for _, name := range []string{"plantings", "crops"} {
			s := plan.SectionNamed(name)
			s.Resize(p, r.IntN(s.Max+1))
			for k := range s.Records(p) {
				s.SetDefaults(p, k)
				for _, f := range s.Fields() {
					if f.Type != plan.Text && r.IntN(2) == 0 {
						f.SetValue(p, k, f.Min+float64(int((f.Max-f.Min)*r.Float64())))
					}
				}
			}
		}
		for k := range p.Plantings {
			p.Plantings[k].To = 0
			p.Plantings[k].Date = p.Season.Date - 700 + r.IntN(1400)
		}
		if errs := p.Check(); len(errs) > 0 {
			if errs[0].Path == "season.first-frost" || p.Season.Date < int(plan.FieldNamed("season", "date").Min) {
				continue // the last days of all, or the first
			}
			t.Fatal(errs[0].Path, errs[0])
		}
		carriesBack(t, p)
	}
}
