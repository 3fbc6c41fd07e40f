package demand

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/climate"
	"evenrow/wasm/trade/evapo"
	"evenrow/wasm/year/season"
)

const litre = 1e-3

// of returns the demand of a plan.
func of(p *plan.Plan) *Demand { return Of(p, season.Of(p)) }

// name is the crop of a planting.
func name(p *plan.Plan, i int) string {
	return string(catalogue.Crops[season.Of(p).Plantings[i].Crop].Name)
}

// What growers' handbooks give for a plant and day, in L. All three are from
// memory: Snyder, Greenhouse Tomato Handbook, Mississippi State University P1828;
// Papadopoulos, Agriculture Canada 1902/E; and, for peppers, common practice.
var handbook = map[string]struct {
	young, grown [2]float64
	density      [2]float64 // plants to a m² that it is for
}{
	"tomato":       {[2]float64{0.05, 0.10}, [2]float64{1.1, 2.8}, [2]float64{2.0, 3.5}},
	"sweet pepper": {[2]float64{0.05, 0.10}, [2]float64{1.0, 1.8}, [2]float64{2.5, 3.5}},
	"cucumber":     {[2]float64{0.05, 0.15}, [2]float64{2.0, 3.5}, [2]float64{1.4, 2.0}},
}

// The default plan by crop and stage against those ranges. A typical day at
// planting out must lie in the range of young plants. The range of grown plants
// is held against each kind of day from typical to hot at the peak. Plants closer
// together than the range is for share the floor: it is scaled by the density,
// which is why cucumbers, at 2.7 to a m² here and usually at 1.4 to 2, are
// allowed less each.
func TestDefaultPlanAgainstHandbooks(t *testing.T) {
	p := plan.Default()
	d := of(p)
	if len(d.Plantings) != 3 {
		t.Fatalf("%d plantings", len(d.Plantings))
	}
	for i := range d.Plantings {
		g := &d.Plantings[i]
		crop := name(p, g.Index)
		h := handbook[crop]
		on, typical := d.Peak(i, climate.Typical)
		young, peak := d.Use(i, g.From), d.Use(i, on)
		density := 1 / g.Area
		low, high := h.grown[0], h.grown[1]
		if density > h.density[1] {
			low *= h.density[0] / density // what the sparsest of them would take for each m²
		}
		t.Logf("%-12s planted out %s: %.3f L, handbooks %.2f to %.2f; %s: cool %.2f, typical %.2f, hot %.2f, record %.2f L, handbooks %.2f to %.2f L",
			crop, g.From.ISO(), young[climate.Typical]/litre, h.young[0], h.young[1],
			on.ISO(), peak[climate.Cool]/litre, typical/litre, peak[climate.Hot]/litre, peak[climate.Record]/litre, low, high)
		if v := young[climate.Typical] / litre; v < h.young[0] || v > h.young[1] {
			t.Errorf("%s: %g L just planted out, handbooks give %v", crop, v, h.young)
		}
		for _, k := range []climate.Kind{climate.Typical, climate.Hot} {
			if v := peak[k] / litre; v < low || v > high {
				t.Errorf("%s: %g L on %s, handbooks give %g to %g", crop, v, k, low, high)
			}
		}
		// An outside check of another kind: a full crop under cover takes up 1.5
		// to 2.5 mL for each m² and J/cm² of radiation out of doors (de Graaf, Acta
		// Horticulturae 229, 1988, from memory), and never more than the 4.08 mL
		// that the heat suffices for (FAO-56, table 3).
		w := Weather(p, on, d.Days[on-d.From].High[climate.Typical], d.Days[on-d.From].Low[climate.Typical])
		perJoule := typical / g.Area / (w.Ground() / 1e4) * 1e6
		t.Logf("%-12s %.2f mL for each m² and J/cm²", crop, perJoule)
		if perJoule < 1.5 || perJoule > 2.5 {
			t.Errorf("%s: %g mL for each m² and J/cm², want 1.5 to 2.5", crop, perJoule)
		}
	}
}

// Every crop at its usual density under the default sky: a hot day must lie
// between half and twice of what the table of crops says that a grown plant
// takes in full sun. The table is from memory, for plants of many sizes.
func TestEveryCropAgainstItsTable(t *testing.T) {
	for crop := range catalogue.Crops {
		c := &catalogue.Crops[crop]
		p := plan.Default()
		for i := range p.Rows {
			r := &p.Rows[i]
			r.Crop = crop
			r.Spacing = 1 / c.Of(catalogue.Crowd) / 1.1
		}
		d := of(p)
		if len(d.Plantings) == 0 {
			t.Errorf("%s is not planted", c.Name)
			continue
		}
		_, hot := d.Peak(0, climate.Hot)
		grown := c.Of(catalogue.Grown)
		t.Logf("%-32s hot day %.3f L, table %.3f L", c.Name, hot/litre, grown/litre)
		if r := hot / grown; r < 0.5 || r > 2 {
			t.Errorf("%s: %g L on a hot day, %g of the table's", c.Name, hot/litre, r)
		}
	}
}

// A formula of one line checks the whole chain on one day.
func TestOneDayByHand(t *testing.T) {
	// SB-04, derived: a depth of 1 mm is a litre on a m².
	for _, c := range []struct{ mm, density, want float64 }{{4.0, 2.5, 1.60}, {5.5, 3.2, 1.719}} {
		if got := evapo.PlantWater(c.mm*1e-3, 1, 1, 1, 1/c.density, 1) / litre; math.Abs(got-c.want) > 0.001 {
			t.Errorf("SB-04: %g mm at %g to a m² is %g L, want %g", c.mm, c.density, got, c.want)
		}
	}
	p := plan.Default()
	d := of(p)
	at := d.Plantings[1].From + 40 // tomato: 30 days, then 10 of 40 growing
	kc, canopy := d.Plantings[1].At(at)
	if want := 0.6 + (1.2-0.6)/4; math.Abs(kc-want) > 1e-12 {
		t.Errorf("Kc is %g, want %g", kc, want)
	}
	if want := rooted + (1-rooted)/4; math.Abs(canopy-want) > 1e-12 {
		t.Errorf("the canopy is %g, want %g", canopy, want)
	}
	w, _ := d.On(at)
	for k, use := range d.Use(1, at) {
		if want := w.Reference[k] * 0.70 * kc * canopy * 0.333 * 1.1; math.Abs(use-want) > 1e-12 {
			t.Errorf("%s: %g m³, want %g", climate.Kind(k), use, want)
		}
	}
}

// randomSky is a plan of the examples with any sky that may be typed.
func randomSky(r *rand.Rand) *plan.Plan {
	all := plan.Examples()
	p := all[r.IntN(len(all))].Plan
	for _, f := range plan.SectionNamed("sky").Fields() {
		if f.Empty && r.IntN(2) == 0 {
			continue
		}
		v := f.Min + (f.Max-f.Min)*r.Float64()
		if f.Type != plan.Number {
			v = float64(int(f.Min) + r.IntN(int(f.Max-f.Min)+1))
		}
		f.SetValue(p, 0, v)
	}
	plan.SectionNamed("months").Resize(p, 12)
	for i := range p.Months {
		m := &p.Months[i]
		m.High = 95*r.Float64() - 40
		m.Low = m.High - 20*r.Float64()
	}
	p.Season.Mode = plan.FromPlanting
	p.Season.Date = int(day.Of(2027, 1, 1)) + r.IntN(800) // over leap days and New Years
	p.Season.Shelter = plan.Heated
	for i := range p.Rows {
		p.Rows[i].Gap = 20 * r.Float64() * r.Float64()
		p.Rows[i].Crop = r.IntN(len(catalogue.Crops))
	}
	return p
}

func TestAnySky(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 150 {
		p := randomSky(r)
		d := of(p)
		if len(d.Days) != int(d.To-d.From) {
			t.Fatalf("%d days from %s to %s", len(d.Days), d.From.ISO(), d.To.ISO())
		}
		for i := range d.Plantings {
			g := &d.Plantings[i]
			if !(g.Area > 0 && g.Area < 20) {
				t.Fatalf("planting %d has %g m² for a plant", i, g.Area)
			}
			for at := g.From - 2; at < g.To+2; at++ {
				for k, u := range d.Use(i, at) {
					// 30 mm a day on 20 m² at twice any coefficient is 600 L.
					if inside := at >= g.From && at < g.To; !(u >= 0 && u < 0.6) || !inside && u != 0 {
						t.Fatalf("planting %d on %s, %s: %g m³", i, at.ISO(), climate.Kind(k), u)
					}
				}
			}
		}
	}
}

// A hotter day never takes less, nor more sun through the cover, in the season
// that a place has: the sketches, north and south of the equator.
func TestMoreTakesNoLess(t *testing.T) {
	for c := range plan.FieldNamed("sky", "climate").Options {
		if c == plan.OwnClimate {
			continue
		}
		for _, lat := range []float64{-45, -20, 0, 30, 47, 60} {
			p := plan.Default()
			p.Sky.Climate, p.Sky.Latitude = c, lat
			p.Season.Mode, p.Season.Shelter = plan.FromPlanting, plan.Heated
			p.Season.Date = int(day.Of(2027, 4, 15))
			if lat < 0 {
				p.Season.Date = int(day.Of(2027, 10, 15)) // over New Year into a leap year
			}
			d := of(p)
			q := p.Clone()
			q.Sky.Cover = 0.75
			brighter := of(q)
			for i := range d.Plantings {
				for at := d.From; at < d.To; at++ {
					was := 0.0
					bright := brighter.Use(i, at)
					for k, u := range d.Use(i, at) {
						if u < was {
							t.Fatalf("climate %d at %g on %s: %s takes %g, less than %g", c, lat, at.ISO(), climate.Kind(k), u, was)
						}
						if bright[k] < u {
							t.Fatalf("climate %d at %g on %s: under a brighter cover %g, before %g", c, lat, at.ISO(), bright[k], u)
						}
						was = u
					}
				}
			}
		}
	}
}

// Where humidity and sunshine are known, a cool day still takes clearly less
// and a hot one clearly more: growers see half on cool and cloudy days and half
// as much again in warm full sun (common practice, no source), under any
// equation.
func TestKindsOfDayDifferByAnyEquation(t *testing.T) {
	for _, c := range []struct{ humidity, wind, sunshine float64 }{
		{plan.Unset, plan.Unset, plan.Unset}, {0.65, plan.Unset, plan.Unset}, {plan.Unset, 2, plan.Unset}, {plan.Unset, plan.Unset, 0.5}, {0.65, 1.5, 0.5},
	} {
		p := plan.Default()
		p.Sky.Humidity, p.Sky.Wind, p.Sky.Sunshine = c.humidity, c.wind, c.sunshine
		d := of(p)
		on, typical := d.Peak(0, climate.Typical)
		use := d.Use(0, on)
		t.Logf("%+v: %.2f %.2f %.2f %.2f L", c, use[0]/litre, use[1]/litre, use[2]/litre, use[3]/litre)
		if r := use[climate.Cool] / typical; r < 0.4 || r > 0.9 {
			t.Errorf("%+v: a cool day takes %g of a typical one", c, r)
		}
		if r := use[climate.Hot] / typical; r < 1.1 || r > 1.6 {
			t.Errorf("%+v: a hot day takes %g of a typical one", c, r)
		}
	}
}

// The same season in the south, half a year on, is nearly the same: the sun is
// 3 % nearer in January.
func TestTheSouth(t *testing.T) {
	north, south := plan.Default(), plan.Default()
	north.Season.Mode, south.Season.Mode = plan.FromPlanting, plan.FromPlanting
	north.Season.Shelter, south.Season.Shelter = plan.Heated, plan.Heated
	north.Season.Date, south.Season.Date = int(day.Of(2027, 5, 15)), int(day.Of(2027, 11, 14))
	south.Sky.Latitude = -47.2
	_, a := of(north).Peak(0, climate.Typical)
	_, b := of(south).Peak(0, climate.Typical)
	if r := b / a; r < 1 || r > 1.10 {
		t.Errorf("a pepper takes %g L in the north and %g L in the south", a/litre, b/litre)
	}
}

func TestAreaCountsTheFloor(t *testing.T) {
	for _, c := range []struct {
		name  string
		width float64
		gaps  []float64
		want  []float64 // m that each row reaches, both sides together
	}{
		{"the default", 5, []float64{0.85, 1.1, 1.1, 1.1}, []float64{1.1, 1.1, 1.1, 1.1}},
		{"a row close to the wall", 5, []float64{0.3, 1}, []float64{0.8, 1}},
		{"rows far apart", 20, []float64{5, 5, 5}, []float64{1.6, 1.6, 1.6}},
		{"one row", 1.2, []float64{0.6}, []float64{1.2}},
		{"one row by the wall", 3, []float64{0.2}, []float64{1.0}},
		{"more rows than fit", 2, []float64{0.5, 1, 1}, []float64{1, 1, 0.5}},
		{"pairs", 6, []float64{0.8, 0.5, 1.1, 0.5}, []float64{0.5, 0.8, 0.8, 0.5}},
	} {
		p := plan.Default()
		p.Place.Width = c.width
		plan.SectionNamed("rows").Resize(p, len(c.gaps))
		for i, g := range c.gaps {
			p.Rows[i].Gap = g
		}
		for i, want := range c.want {
			before, after := halves(p, i)
			if math.Abs(before+after-want) > 1e-9 {
				t.Errorf("%s: row %d reaches %g and %g, want %g in all", c.name, i+1, before, after, want)
			}
		}
	}
}

func TestCanopyOnlyGrows(t *testing.T) {
	s := &evapo.Stages{Ini: 20, Dev: 30, Mid: 40, Late: 15}
	was := 0.0
	for d := -5.0; d < 200; d += 0.25 {
		c := Canopy(s, d)
		if c < was || c > 1 || c < planted || c-was > 0.1 && d > -5 {
			t.Fatalf("after %g days %g, before %g", d, c, was)
		}
		was = c
	}
	if was != 1 {
		t.Errorf("it ends at %g", was)
	}
}
