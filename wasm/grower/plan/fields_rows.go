package plan

import (
	"math"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
)

func compensating(p *Plan, i int) bool    { return p.Emitters[i].Kind == Compensating }
func notCompensating(p *Plan, i int) bool { return p.Emitters[i].Kind == NonCompensating }

var emitterFields = []*Field{
	choice(1, "kind", "Kind", []Option{
		Compensating:    {Code: "compensating", Label: "pressure-compensating"},
		NonCompensating: {Code: "plain", Label: "not compensating"},
	}, Compensating, "", func(p *Plan, i int) *int { return &p.Emitters[i].Kind }),
	number(2, "flow", "Flow", unit.EmitterFlow, 0.1, 100, 2,
		"The number printed on the emitter.", func(p *Plan, i int) *float64 { return &p.Emitters[i].Flow }),
	number(3, "opens", "Opening pressure", unit.Pressure, 0, 4, 0.7,
		"Below it, a shut emitter stays shut.", func(p *Plan, i int) *float64 { return &p.Emitters[i].Opens }).when(compensating).must(func(p *Plan, i int) *words.Remark {
		if e := &p.Emitters[i]; e.Opens > e.Lowest {
			return words.About("{field} must not exceed the lowest pressure, {limit}.", unit.Text(unit.Pressure, p.Units, e.Lowest))
		}
		return nil
	}),
	number(4, "closes", "Closing pressure", unit.Pressure, 0, 4, 0.5,
		"Below it, an open emitter shuts and the row stays full.", func(p *Plan, i int) *float64 { return &p.Emitters[i].Closes }).when(compensating).must(func(p *Plan, i int) *words.Remark {
		if e := &p.Emitters[i]; e.Closes > e.Opens {
			return words.About("{field} must not exceed the opening pressure, {limit}.", unit.Text(unit.Pressure, p.Units, e.Opens))
		}
		return nil
	}),
	number(5, "lowest", "Lowest pressure", unit.Pressure, 0.01, 6, 1.03,
		"The lower end of the range on the data sheet.", func(p *Plan, i int) *float64 { return &p.Emitters[i].Lowest }),
	number(6, "highest", "Highest pressure", unit.Pressure, 0.05, 10, 4,
		"The upper end of the range.", func(p *Plan, i int) *float64 { return &p.Emitters[i].Highest }).must(func(p *Plan, i int) *words.Remark {
		if e := &p.Emitters[i]; e.Highest <= e.Lowest {
			return words.About("{field} must be more than the lowest pressure, {limit}.", unit.Text(unit.Pressure, p.Units, e.Lowest))
		}
		return nil
	}),
	number(7, "nominal", "Pressure at that flow", unit.Pressure, 0.02, 6, 1,
		"", func(p *Plan, i int) *float64 { return &p.Emitters[i].Nominal }).when(notCompensating),
	number(8, "exponent", "Exponent", unit.None, 0, 1, 0,
		"How strongly the flow follows the pressure: 0 when compensating, about 0.5 when not.",
		func(p *Plan, i int) *float64 { return &p.Emitters[i].Exponent }).must(func(p *Plan, i int) *words.Remark {
		e := &p.Emitters[i]
		low, high, _ := exponents(e.Kind)
		if low <= e.Exponent && e.Exponent <= high {
			return nil
		}
		from, to := unit.Exact(unit.None, unit.Metric, low), unit.Exact(unit.None, unit.Metric, high)
		if e.Kind == NonCompensating {
			return words.About("{field} must be from {low} to {high} for an emitter that is not compensating.", from, to)
		}
		return words.About("{field} must be from {low} to {high} for a compensating emitter.", from, to)
	}),
	number(9, "cv", "Variation in manufacture", unit.Share, 0, 30, 3,
		"The coefficient of variation, CV, on the data sheet.", func(p *Plan, i int) *float64 { return &p.Emitters[i].CV }),
	number(10, "passage", "Smallest passage", unit.Bore, 0.1, 5, 1,
		"The smaller side of its narrowest place.", func(p *Plan, i int) *float64 { return &p.Emitters[i].Passage }),
	choice(11, "barb", "Barb", []Option{
		BarbSmall:    {Code: "small", Label: "small"},
		BarbStandard: {Code: "standard", Label: "standard"},
		BarbLarge:    {Code: "large", Label: "large"},
	}, BarbStandard, "The part that sticks into the tubing.", func(p *Plan, i int) *int { return &p.Emitters[i].Barb }),
	choice(12, "flushes", "Flushes itself", []Option{
		Never:   {Code: "never", Label: "no"},
		WhenLow: {Code: "low", Label: "at low pressure"},
	}, Never, "Some stand wide open until the pressure is up.", func(p *Plan, i int) *int { return &p.Emitters[i].Flushes }).when(compensating).guide("starting#flushing"),
	number(13, "gush", "Flow while it flushes", unit.EmitterFlow, 0.1, 400, 8,
		"Just below the pressure at which it stops.", func(p *Plan, i int) *float64 { return &p.Emitters[i].Gush }).when(flushing),
	number(14, "regulates", "Flushes below", unit.Pressure, 0.01, 4, 0.3,
		"Above it, the emitter gives its flow.", func(p *Plan, i int) *float64 { return &p.Emitters[i].Regulates }).when(flushing).must(func(p *Plan, i int) *words.Remark {
		if e := &p.Emitters[i]; e.Regulates > e.Lowest {
			return words.About("{field} must not exceed the lowest pressure, {limit}.", unit.Text(unit.Pressure, p.Units, e.Lowest))
		}
		return nil
	}),
	number(15, "micro", "Micro tubing to each emitter", unit.Length, 0, 3, 0,
		"From the row's tubing to the plant; 0 where the emitter sits in the tubing.", func(p *Plan, i int) *float64 { return &p.Emitters[i].Micro }).must(func(p *Plan, i int) *words.Remark {
		most := mostMicro(&p.Emitters[i])
		if p.Emitters[i].Micro <= most {
			return nil
		}
		u := unit.Of(unit.Length, p.Units) // to be typed as it is read
		return words.About("{field} must not exceed {limit}: more would take over {share} of the emitter's lowest pressure.",
			unit.Text(unit.Length, p.Units, u.ToInner(math.Floor(10*u.FromInner(most))/10)), unit.Text(unit.Share, p.Units, MicroShare))
	}),
}

// MicroBore is the bore in m of micro tubing (common practice, no source: 4 mm, or
// 0.170 in, a little more).
const MicroBore = 0.004

// MicroShare is the share of an emitter's lowest pressure up to which the loss in its
// micro tubing is left out: a plan with more is refused. The emitter then gives less
// by a share of 0.02 at most, and all give less alike.
const MicroShare = 0.02

// MicroLoss returns the pressure in Pa that a metre of micro tubing takes from a flow
// in m³/s: of smooth walls, laminar or turbulent, whichever is more, in water of 5 °C.
func MicroLoss(flow float64) float64 {
	const rho, nu = 1000, 1.52e-6 // kg/m³, m²/s
	v := flow / (math.Pi / 4 * MicroBore * MicroBore)
	re := v * MicroBore / nu
	return max(64/re, 0.3164/math.Sqrt(math.Sqrt(re))) / MicroBore * rho * v * v / 2
}

// leastForMicro is the lowest pressure in Pa at which an emitter's micro tubing may be as
// long as it is.
func leastForMicro(e *Emitter) float64 {
	return e.Micro * MicroLoss(e.Flow) / MicroShare * (1 + 1e-9)
}

// mostMicro is how long an emitter's micro tubing may be, in m.
func mostMicro(e *Emitter) float64 {
	least := e.Lowest
	if e.Kind == NonCompensating {
		least = min(least, e.Nominal)
	}
	return MicroShare * least / MicroLoss(e.Flow)
}

// exponents is the range of an emitter's exponent by its kind, and the usual
// one: flow through a plain orifice goes with the root of the pressure.
func exponents(kind int) (low, high, usual float64) {
	if kind == NonCompensating {
		return 0.3, 1, 0.5
	}
	return 0, 0.2, 0
}

func flushing(p *Plan, i int) bool { return compensating(p, i) && p.Emitters[i].Flushes == WhenLow }

// zoned says whether a valve can shut off a row alone: not in one line, and
// not where the far ends are tied.
func zoned(p *Plan, _ int) bool { return p.Header.Layout == HeaderAndRows }

// emitterOptions are the emitters of a plan, whether it describes them or not.
var emitterOptions = []Option{{Code: "1", Label: "emitter 1"}, {Code: "2", Label: "emitter 2"}, {Code: "3", Label: "emitter 3"}, {Code: "4", Label: "emitter 4"}}

var rowFields = []*Field{
	choice(1, "crop", "Crop", cropOptions, 0,
		"", func(p *Plan, i int) *int { return &p.Rows[i].Crop }),
	whole(2, "plants", "Plants", 1, 400, 30,
		"", func(p *Plan, i int) *int { return &p.Rows[i].Plants }),
	number(3, "spacing", "Spacing", unit.Length, 0.05, 3, 0.333,
		"From plant to plant.", func(p *Plan, i int) *float64 { return &p.Rows[i].Spacing }),
	number(4, "first", "To the first plant", unit.Length, 0, 30, 0.167,
		"From the header.", func(p *Plan, i int) *float64 { return &p.Rows[i].First }),
	number(5, "gap", "From the row before", unit.Length, 0, 20, 1.1,
		"For row 1, from the side wall.", func(p *Plan, i int) *float64 { return &p.Rows[i].Gap }),
	choice(6, "medium", "Medium", []Option{
		CocoSlab:      {Code: "coco-slab", Label: catalogue.Media[CocoSlab].Name},
		StoneWoolSlab: {Code: "stone-wool-slab", Label: catalogue.Media[StoneWoolSlab].Name},
		GrowBag:       {Code: "grow-bag", Label: catalogue.Media[GrowBag].Name},
		Bucket:        {Code: "bucket", Label: catalogue.Media[Bucket].Name},
		Pot:           {Code: "pot", Label: catalogue.Media[Pot].Name},
	}, CocoSlab, "", func(p *Plan, i int) *int { return &p.Rows[i].Medium }),
	whole(7, "per-piece", "Plants in one slab, bag or bucket", 1, 20, 3,
		"", func(p *Plan, i int) *int { return &p.Rows[i].PerPiece }).must(func(p *Plan, i int) *words.Remark {
		if r := &p.Rows[i]; r.PerPiece > r.Plants {
			return words.About("{field} must not exceed the number of plants, {limit}.", words.N(r.Plants))
		}
		return nil
	}),
	choice(8, "emitter", "Emitter", emitterOptions, 0,
		"", func(p *Plan, i int) *int { return &p.Rows[i].Emitter }).must(func(p *Plan, i int) *words.Remark {
		switch n := len(p.Emitters); {
		case p.Rows[i].Emitter < n:
			return nil
		case n == 1:
			return words.About("{field} must be emitter 1, the only one described.")
		default:
			return words.About("{field} must be one of the {n} emitters described.", words.N(n))
		}
	}),
	whole(9, "per-plant", "Emitters for each plant", 1, 4, 1,
		"", func(p *Plan, i int) *int { return &p.Rows[i].PerPlant }),
	choice(10, "tube", "Tubing", tubeOptions, tube16,
		"", func(p *Plan, i int) *int { return &p.Rows[i].Tube }).must(func(p *Plan, i int) *words.Remark {
		if !catalogue.Tubes[p.Rows[i].Tube].Row {
			return words.About("{field} must be a size that emitters can be punched into.")
		}
		return nil
	}),
	number(11, "bore", "Measured bore", unit.Bore, minBore, maxBore, 13.6,
		"", func(p *Plan, i int) *float64 { return &p.Rows[i].Bore }).when(func(p *Plan, i int) bool { return p.Rows[i].Tube == 0 }),
	number(12, "height", "Height of its start", unit.Length, -10, 10, 0,
		"Above the header, with a minus sign below it.", func(p *Plan, i int) *float64 { return &p.Rows[i].Height }),
	number(13, "slope", "Slope", unit.Slope, -30, 30, 0,
		"Rising away from the header, with a minus sign when it falls.", func(p *Plan, i int) *float64 { return &p.Rows[i].Slope }),
	whole(14, "zone", "Zone", 1, MaxZones, 1,
		"Rows of one zone are watered together.", func(p *Plan, i int) *int { return &p.Rows[i].Zone }).when(zoned),
}
