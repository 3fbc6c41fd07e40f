package plan

import (
	"slices"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// An Example is a plan to start from or to learn by.
type Example struct {
	Key     string     // in links: "millrace"
	Title   string     // the plan's name
	Summary words.Text // one sentence
	Plan    *Plan
}

// Clone returns a copy that shares nothing with p.
func (p *Plan) Clone() *Plan {
	c := *p
	c.Supply.Points = slices.Clone(p.Supply.Points)
	c.Runs = slices.Clone(p.Runs)
	c.Emitters = slices.Clone(p.Emitters)
	c.Rows = slices.Clone(p.Rows)
	c.Plantings = slices.Clone(p.Plantings)
	c.Crops = slices.Clone(p.Crops)
	c.Bought = slices.Clone(p.Bought)
	c.Fittings = slices.Clone(p.Fittings)
	c.Months = slices.Clone(p.Months)
	return &c
}

// blank returns a plan with the field defaults and one record in each list that
// must have any.
func blank() *Plan {
	p := new(Plan)
	for _, s := range sections {
		if s.List {
			if s.Min == 0 || !s.Applies(p) {
				continue
			}
			s.Resize(p, 1)
		}
		s.SetDefaults(p, 0)
	}
	return p
}

// Values of the examples, through the same conversion as typed text.
func metric(kind unit.Kind, x float64) float64 { return unit.Of(kind, unit.Metric).ToInner(x) }
func us(kind unit.Kind, x float64) float64     { return unit.Of(kind, unit.US).ToInner(x) }

func curve(at func(unit.Kind, float64) float64, flowHead ...float64) []Point {
	var points []Point
	for i := 0; i+1 < len(flowHead); i += 2 {
		points = append(points, Point{at(unit.Flow, flowHead[i]), at(unit.Head, flowHead[i+1])})
	}
	return points
}

// Default returns the plan that the page opens with: the Millrace tunnel, an
// invented place with four rows of thirty plants.
func Default() *Plan {
	p := blank()
	p.Name = "Millrace tunnel"
	p.Supply.Points = curve(metric, 0, 34, 20, 29, 40, 19, 50, 12)
	// Shut, the pump alone would give more than the rows may carry in the sun.
	p.Supply.Regulator = metric(unit.Pressure, 2)
	p.Runs[0].Rise = metric(unit.Length, 0.4)
	rowSection := SectionNamed("rows")
	rowSection.Resize(p, 4)
	p.Rows[0].Gap = metric(unit.Length, 0.85)
	p.Rows[2].Crop = 1
	p.Rows[3].Crop = 2
	return p
}

// Examples returns the plans to start from, [Default] first. Each call makes
// them anew.
func Examples() []Example {
	return []Example{
		{"millrace", "Millrace tunnel", "Four rows in a polytunnel, with a pump that suits them.", Default()},
		{"wrong-pump", "The wrong pump", "The same rows with a fountain pump: plenty of flow, too little head.", wrongPump()},
		{"balcony", "Balcony", "Eight buckets on one line, fed by a tank that stands higher.", balcony()},
		{"long-field", "Long field", "Twelve long rows on a slope, too much for the pump at once.", longField()},
		{"ring", "Loop", "Six rows between two narrow headers, closed into loops that share the load.", ring()},
	}
}

func wrongPump() *Plan {
	p := Default()
	p.Name = "The wrong pump"
	p.Supply.Kind = PumpTwo
	p.Supply.ShutOff = metric(unit.Head, 6.5)
	p.Supply.MaxFlow = metric(unit.Flow, 90)
	p.Supply.Regulator = 0
	return p
}

func balcony() *Plan {
	p := blank()
	p.Name = "Balcony"
	p.Place.Length = metric(unit.Length, 4.5)
	p.Place.Width = metric(unit.Length, 1.2)
	p.Supply.Kind = GravityTank
	p.Supply.Tank = metric(unit.Volume, 60)
	p.Supply.Points = Default().Supply.Points

	p.Runs[0] = Run{Length: metric(unit.Length, 3), Rise: metric(unit.Length, -1.6), Tube: tube16, Bore: p.Runs[0].Bore, Elbows: 2, Valves: 1}
	p.Filter.Rated = metric(unit.Flow, 5)
	p.Filter.Clean = metric(unit.Pressure, 0.01)
	p.Filter.Fouling = metric(unit.Pressure, 0.02)
	p.Header.Layout = OneLine
	p.Header.Tube = tube16

	e := &p.Emitters[0]
	e.Kind = NonCompensating
	e.Flow = metric(unit.EmitterFlow, 2)
	e.Nominal = metric(unit.Pressure, 0.1)
	e.Exponent = 0.5
	e.Lowest = metric(unit.Pressure, 0.05)
	e.Highest = metric(unit.Pressure, 1)
	e.CV = metric(unit.Share, 5)
	e.Passage = metric(unit.Bore, 1.3)

	r := &p.Rows[0]
	r.Crop = 1
	r.Plants = 8
	r.Spacing = metric(unit.Length, 0.5)
	r.First = metric(unit.Length, 0.25)
	r.Gap = metric(unit.Length, 0.6)
	r.Medium = Bucket
	r.PerPiece = 1
	p.Limits.Reserve = metric(unit.Head, 0.5)
	p.Season.Shelter = OpenAir
	p.Season.After = 10
	p.Sky.Cover = 1
	return p
}

func longField() *Plan {
	p := blank()
	p.Name = "Long field"
	p.Units = unit.US
	p.Place.Length = us(unit.Length, 140)
	p.Place.Width = us(unit.Length, 62)
	p.Place.Water = us(unit.Temperature, 68)
	p.Supply.Tank = us(unit.Volume, 1000)
	p.Supply.Points = curve(us, 0, 72, 5, 66, 10, 52, 15, 30, 18, 12)

	r := &p.Runs[0]
	r.Length = us(unit.Length, 100)
	r.Rise = us(unit.Length, 2)
	r.Tube = tubeOne
	p.Filter.Rated = us(unit.Flow, 10)
	p.Filter.Clean = us(unit.Pressure, 1)
	p.Filter.Fouling = us(unit.Pressure, 3)
	p.Header.Tube = tubeOneTwo

	e := &p.Emitters[0]
	e.Flow = us(unit.EmitterFlow, 0.5)
	e.Opens = us(unit.Pressure, 10)
	e.Closes = us(unit.Pressure, 7)
	e.Lowest = us(unit.Pressure, 15)
	e.Highest = us(unit.Pressure, 58)
	e.Passage = us(unit.Bore, 0.045)

	row := &p.Rows[0]
	row.Plants = 130
	row.Spacing = us(unit.Length, 1)
	row.First = us(unit.Length, 0.5)
	row.Gap = us(unit.Length, 3)
	row.Tube = tubeHalf
	row.Slope = us(unit.Slope, 2)
	SectionNamed("rows").Resize(p, 12)
	for i := range p.Rows {
		if i > 0 {
			p.Rows[i].Gap = us(unit.Length, 5)
		}
		if i >= 6 {
			p.Rows[i].Crop = 1
		}
	}
	p.Limits.Reserve = us(unit.Head, 3)
	p.Limits.Speed = us(unit.Speed, 5)
	p.Season.LastFrost = isoDay(2027, 3, 10)
	p.Season.FirstFrost = isoDay(2027, 11, 25)
	p.Season.After = 21
	p.Season.Shelter = OpenAir
	p.Season.Start = isoDay(2027, 2, 1)
	p.Sky.Latitude, p.Sky.Longitude = 38.5, -121.5
	p.Sky.Offset = us(unit.Hours, -8)
	p.Sky.Summer = MarchNov
	p.Sky.Cover = 1
	p.Sky.Climate = 2 // the warm dry plain
	return p
}

// ring is a plan that its rings carry over the line: without the far header
// the weakest emitter has less than the reserve.
func ring() *Plan {
	p := blank()
	p.Name = "Loop"
	p.Place.Length = metric(unit.Length, 27)
	p.Place.Width = metric(unit.Length, 8)
	p.Supply.Kind = PumpTwo
	p.Supply.Tank = metric(unit.Volume, 1000)
	p.Supply.ShutOff = metric(unit.Head, 16.4)
	p.Supply.MaxFlow = metric(unit.Flow, 40)
	p.Supply.Points = Default().Supply.Points
	p.Runs[0].Rise = metric(unit.Length, 0.4)
	p.Filter.Fouling = metric(unit.Pressure, 0.05)
	p.Header.Layout = Ring
	p.Header.Tube = tube16
	r := &p.Rows[0]
	r.Plants = 75
	r.Gap = metric(unit.Length, 1.2)
	SectionNamed("rows").Resize(p, 6)
	return p
}
