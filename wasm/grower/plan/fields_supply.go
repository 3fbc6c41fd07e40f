package plan

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

var planFields = []*Field{
	{ID: 1, Name: "name", Label: "Name of the plan", Type: Text, Max: 60,
		Text: func(p *Plan, _ int) *string { return &p.Name }},
	choice(2, "units", "Units", []Option{{Code: "metric", Label: "metric: metres, litres, bar"}, {Code: "us", Label: "US: feet, gallons, psi"}}, 0,
		"A unit typed after a number is taken too, such as 40 ft or 15 psi.", func(p *Plan, _ int) *int { return (*int)(&p.Units) }),
}

var placeFields = []*Field{
	number(1, "length", "Length along the rows", unit.Length, 0.5, 300, 12,
		"", func(p *Plan, _ int) *float64 { return &p.Place.Length }),
	number(2, "width", "Width across the rows", unit.Length, 0.5, 200, 5,
		"", func(p *Plan, _ int) *float64 { return &p.Place.Width }),
	number(3, "water", "Water temperature", unit.Temperature, 1, 40, 20,
		"Cold water is thicker and loses more on the way.", func(p *Plan, _ int) *float64 { return &p.Place.Water }),
	// Their defaults are those of links from before there were doors.
	number(4, "door", "Width of the door", unit.Length, 0, 10, 0,
		"In the middle of the near end; 0 for none.", func(p *Plan, _ int) *float64 { return &p.Place.Door }),
	number(5, "path", "Path between rows", unit.Length, 0, 5, 0,
		"The free strip that you walk in, from slab to slab; 0 when it does not matter.", func(p *Plan, _ int) *float64 { return &p.Place.Path }),
	number(6, "margin", "Free strip at the walls", unit.Length, 0, 5, 0,
		"0 when rows may touch the walls.", func(p *Plan, _ int) *float64 { return &p.Place.Margin }),
}

// supplied returns the condition that the supply is one of some kinds.
func supplied(kinds ...int) func(*Plan, int) bool {
	return func(p *Plan, _ int) bool {
		for _, k := range kinds {
			if p.Supply.Kind == k {
				return true
			}
		}
		return false
	}
}

var supplyFields = []*Field{
	choice(1, "kind", "Kind of supply", []Option{
		PumpPoints:  {Code: "pump-points", Label: "a pump: points of its curve"},
		PumpTwo:     {Code: "pump-two", Label: "a pump: its greatest head and flow"},
		PumpPower:   {Code: "pump-power", Label: "a pump: only its power is known"},
		GravityTank: {Code: "gravity", Label: "a tank above the rows"},
		Mains:       {Code: "mains", Label: "a tap"},
		PumpWanted:  {Code: "pump-wanted", Label: "a pump that I have yet to buy"},
	}, PumpPoints, "", func(p *Plan, _ int) *int { return &p.Supply.Kind }),
	number(2, "tank", "Tank volume", unit.Volume, 5, 100000, 400,
		"", func(p *Plan, _ int) *float64 { return &p.Supply.Tank }).when(supplied(PumpPoints, PumpTwo, PumpPower, PumpWanted, GravityTank)),
	number(3, "shut-off", "Greatest head", unit.Head, 0.5, maxHead, 34,
		"The head at no flow, often printed as H max.", func(p *Plan, _ int) *float64 { return &p.Supply.ShutOff }).when(supplied(PumpTwo)),
	number(4, "max-flow", "Greatest flow", unit.Flow, 1, maxFlow, 60,
		"The flow at no head, often printed as Q max.", func(p *Plan, _ int) *float64 { return &p.Supply.MaxFlow }).when(supplied(PumpTwo)),
	number(5, "power", "Power on the label", unit.Power, 2, 7500, 750,
		"Power says nothing of pressure: look for the curve. 1 hp is 746 W.", func(p *Plan, _ int) *float64 { return &p.Supply.Power }).when(supplied(PumpPower)),
	number(6, "static", "Pressure with every tap closed", unit.Pressure, 0.2, 15, 3,
		"Read it off a gauge on the tap.", func(p *Plan, _ int) *float64 { return &p.Supply.Static }).when(supplied(Mains)),
	number(7, "tap-flow", "Flow of the open tap", unit.Flow, 1, maxFlow, 20,
		"Time a bucket under the wide open tap.", func(p *Plan, _ int) *float64 { return &p.Supply.TapFlow }).when(supplied(Mains)),
	number(8, "regulator", "Pressure after the regulator", unit.Pressure, 0, 10, 0,
		"0 when there is none.", func(p *Plan, _ int) *float64 { return &p.Supply.Regulator }).when(supplied(PumpPoints, PumpTwo, GravityTank, Mains)),
	number(9, "devices", "Loss in other devices", unit.Pressure, 0, 3, 0,
		"What a backflow device, a meter or a timer valve takes: see its data sheet.", func(p *Plan, _ int) *float64 { return &p.Supply.Devices }).when(supplied(PumpPoints, PumpTwo, GravityTank, Mains)),
	number(10, "label", "Power on the label, if it is there", unit.Power, 2, 7500, 0,
		"Only to see whether the figures on the label can all be so.", func(p *Plan, _ int) *float64 { return &p.Supply.Label }).optional().when(supplied(PumpTwo)),
	choice(11, "fill", "How is the tank filled?", []Option{
		FilledByHand:  {Code: "hand", Label: "by hand, or from a hose that is held"},
		FilledByFloat: {Code: "float", Label: "from a tap, by a float valve"},
	}, FilledByHand, "A hose that lies in the tank can draw feed into drinking water.", func(p *Plan, _ int) *int { return &p.Supply.Fill }).when(supplied(PumpPoints, PumpTwo, PumpPower, PumpWanted, GravityTank)),
}

var pointFields = []*Field{
	number(1, "flow", "Flow", unit.Flow, 0, maxFlow, 0,
		"", func(p *Plan, i int) *float64 { return &p.Supply.Points[i].Flow }).must(func(p *Plan, i int) *words.Remark {
		flow := p.Supply.Points[i].Flow
		switch {
		case i == 0 && flow != 0:
			return words.About("{field} must be 0 at the first point.")
		case i > 0 && flow <= p.Supply.Points[i-1].Flow:
			return words.About("{field} must be more than at the point before.")
		}
		return nil
	}),
	number(2, "head", "Head", unit.Head, 0, maxHead, 0,
		"", func(p *Plan, i int) *float64 { return &p.Supply.Points[i].Head }).must(func(p *Plan, i int) *words.Remark {
		if i > 0 && p.Supply.Points[i].Head >= p.Supply.Points[i-1].Head {
			return words.About("{field} must be less than at the point before.")
		}
		return nil
	}),
}

var runFields = []*Field{
	number(1, "length", "Length", unit.Length, 0.1, 500, 8,
		"", func(p *Plan, i int) *float64 { return &p.Runs[i].Length }),
	number(2, "rise", "Rise", unit.Length, -30, 60, 0,
		"From its start to its end, with a minus sign when it falls; the first starts at the water in the half-full tank, or at the tap.",
		func(p *Plan, i int) *float64 { return &p.Runs[i].Rise }),
	choice(3, "tube", "Tubing", tubeOptions, tube25,
		"", func(p *Plan, i int) *int { return &p.Runs[i].Tube }),
	number(4, "bore", "Measured bore", unit.Bore, minBore, maxBore, 20.4,
		"", func(p *Plan, i int) *float64 { return &p.Runs[i].Bore }).when(func(p *Plan, i int) bool { return p.Runs[i].Tube == 0 }),
	whole(5, "elbows", "Bends of 90 degrees", 0, 40, 2,
		"", func(p *Plan, i int) *int { return &p.Runs[i].Elbows }),
	whole(6, "tees", "Tees passed straight through", 0, 40, 0,
		"", func(p *Plan, i int) *int { return &p.Runs[i].Tees }),
	whole(7, "valves", "Ball valves", 0, 20, 1,
		"", func(p *Plan, i int) *int { return &p.Runs[i].Valves }),
	whole(8, "checks", "Check valves", 0, 10, 0,
		"", func(p *Plan, i int) *int { return &p.Runs[i].Checks }),
}

func filtered(p *Plan, _ int) bool { return p.Filter.Present != 0 }

var filterFields = []*Field{
	choice(1, "present", "Is there a filter?", []Option{{Code: "no", Label: "no"}, {Code: "yes", Label: "yes"}}, 1,
		"", func(p *Plan, _ int) *int { return &p.Filter.Present }),
	number(2, "rated", "Flow that the loss below is for", unit.Flow, 1, maxFlow, 20,
		"", func(p *Plan, _ int) *float64 { return &p.Filter.Rated }).when(filtered),
	number(3, "clean", "Loss when clean", unit.Pressure, 0, 2, 0.07,
		"", func(p *Plan, _ int) *float64 { return &p.Filter.Clean }).when(filtered),
	number(4, "fouling", "Further loss before cleaning", unit.Pressure, 0, 3, 0.25,
		"Clean it when the gauges differ by this much more than when it was clean.", func(p *Plan, _ int) *float64 { return &p.Filter.Fouling }).when(filtered),
	number(5, "opening", "Opening", unit.Opening, 20, 2000, 130,
		"120 mesh is about 130 µm.", func(p *Plan, _ int) *float64 { return &p.Filter.Opening }).when(filtered),
}

func headed(p *Plan, _ int) bool { return p.Header.Layout != OneLine }

var headerFields = []*Field{
	choice(1, "layout", "Layout", []Option{
		HeaderAndRows: {Code: "rows", Label: "a header across, rows from it"},
		OneLine:       {Code: "line", Label: "one line: up one row, down the next"},
		Ring:          {Code: "ring", Label: "a loop: headers at both ends of rows"},
	}, HeaderAndRows, "", func(p *Plan, _ int) *int { return &p.Header.Layout }),
	choice(2, "feed", "The water comes in", []Option{
		FeedEnd:    {Code: "end", Label: "at the end, by row 1"},
		FeedMiddle: {Code: "middle", Label: "in the middle"},
	}, FeedEnd, "", func(p *Plan, _ int) *int { return &p.Header.Feed }).when(headed),
	choice(3, "tube", "Tubing", tubeOptions, tube25,
		"", func(p *Plan, _ int) *int { return &p.Header.Tube }).when(headed),
	number(4, "bore", "Measured bore", unit.Bore, minBore, maxBore, 20.4,
		"", func(p *Plan, _ int) *float64 { return &p.Header.Bore }).when(func(p *Plan, i int) bool { return headed(p, i) && p.Header.Tube == 0 }),
}

var limitFields = []*Field{
	number(1, "reserve", "Safety margin", unit.Head, 0, 30, 1,
		"Above the lowest that the emitters need.", func(p *Plan, _ int) *float64 { return &p.Limits.Reserve }),
	number(2, "evenness", "Least evenness", unit.Share, 50, 99, 90,
		"Emission uniformity: 90 % is usual for new systems.", func(p *Plan, _ int) *float64 { return &p.Limits.Evenness }),
	number(3, "speed", "Greatest speed in supply line and header", unit.Speed, 0.3, 3, 1.5,
		"Faster water causes water hammer when a valve shuts.", func(p *Plan, _ int) *float64 { return &p.Limits.Speed }),
}
