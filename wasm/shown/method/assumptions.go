package method

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/propose"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/climate"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/ends"
	"evenrow/wasm/trade/evapo"
	"evenrow/wasm/trade/filter"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/works/chain"
	"evenrow/wasm/works/chance"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/fault"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/marks"
	"evenrow/wasm/works/network"
	"evenrow/wasm/works/parts"
	"evenrow/wasm/works/startup"
	"evenrow/wasm/works/steps"
	"evenrow/wasm/works/surge"
	"evenrow/wasm/year/demand"
	"evenrow/wasm/year/drain"
	"evenrow/wasm/year/season"
	"evenrow/wasm/year/shots"
)

// A Group is the assumptions of one noun of the trade.
type Group struct {
	Title string
	All   []formula.Assumption
}

// Assumptions returns what the calculation goes by and no formula shows, in the
// order of the water's way.
func Assumptions() []Group {
	group := func(title string, lists ...[]formula.Assumption) Group {
		g := Group{Title: title}
		for _, l := range lists {
			g.All = append(g.All, l...)
		}
		return g
	}
	return []Group{
		group("Tubing and fittings", fittings(), ends.Assumptions(), chain.Assumptions(), layout.Assumptions(), pipe.Assumptions()),
		group("Emitters", emitter.Assumptions(), network.Assumptions()),
		group("Pumps, taps and filters", pump.Assumptions(), filter.Assumptions()),
		group("Flushing, starting and stopping", flush.Assumptions(), startup.Assumptions()),
		group("Pressure", ratings(), surge.Assumptions()),
		group("Faults, chance, designs and parts", fault.Assumptions(), chance.Assumptions(), sheet.Assumptions(), design.Assumptions(), parts.Assumptions(), marks.Assumptions(), steps.Assumptions()),
		group("A plan from five answers", propose.Assumptions()),
		group("Weather and season", climate.Assumptions(), evapo.Assumptions(), demand.Assumptions(), season.Assumptions()),
		group("What is assumed", assumed()),
		group("Media, timer and drain", media(), shots.Assumptions(), dose.Assumptions(), drain.Assumptions()),
	}
}

// fittings are the coefficients of the catalogue, and what it says of tubing.
func fittings() []formula.Assumption {
	var all []formula.Assumption
	for i := range catalogue.Fittings {
		f := &catalogue.Fittings[i]
		a := formula.Assumption{
			Code: "catalogue.Fittings", Title: "Loss coefficient: " + f.Name, Values: []float64{f.K},
			Used: "As K in the formula for the head lost in fittings, at every speed. In slow flow the true values are higher.", Source: f.Source,
		}
		if i == catalogue.Exit {
			a.Used = "The head of the speed that is lost at an open end, as part of the coefficient of an end that is open."
		}
		all = append(all, a)
	}
	all = append(all, formula.Assumption{
		Code: "catalogue.Smooth", Title: "Roughness of tubing", Values: []float64{catalogue.Smooth * 1000}, Unit: "mm",
		Used: "As ε in the formulas for friction, for all tubing.", Source: catalogue.SmoothSource,
	})
	return all
}

// ratings are what tubing may carry.
func ratings() []formula.Assumption {
	const used = "The finding that the pressure is more than the tubing may carry, and pressure surges."
	all := []formula.Assumption{
		{Code: "catalogue.Sun", Title: "Temperature of black tubing in full sun", Values: []float64{catalogue.Sun}, Kind: unit.Temperature, Used: used, Source: catalogue.SunSource},
		{Code: "catalogue.LeftPE100", Title: "Share of its rating that PE 100 pipe carries then", Values: []float64{catalogue.LeftPE100}, Kind: unit.Share, Used: used, Source: catalogue.LeftPE100Source},
		{Code: "catalogue.LeftSoft", Title: "Share of its rating that other tubing carries then", Values: []float64{catalogue.LeftSoft}, Kind: unit.Share, Used: used, Source: catalogue.LeftSoftSource},
	}
	for i := range catalogue.Tubes {
		t := &catalogue.Tubes[i]
		all = append(all, formula.Assumption{
			Code: "catalogue.Tubes", Title: unit.Capital(string(t.Name)) + ": what it may carry at " + unit.Text(unit.Temperature, unit.Metric, catalogue.Rated), Values: []float64{t.Rating}, Kind: unit.Pressure,
			Rule: "It takes " + t.Takes.Word() + " fittings.", Used: used[:len(used)-1] + "; the list of parts.", Source: t.Source,
		})
	}
	return all
}

// media are the volumes of media and what they give up easily.
func media() []formula.Assumption {
	var all []formula.Assumption
	for i := range catalogue.Media {
		m := &catalogue.Media[i]
		all = append(all, formula.Assumption{
			Code: "catalogue.Media", Title: string(m.Begin) + ": volume", Values: []float64{m.Volume}, Kind: unit.Volume,
			Used: "What a shot is a share of, and how long plants last.", Source: m.Source,
		}, formula.Assumption{
			Code: "catalogue.Media", Title: string(m.Begin) + ": water that roots take up easily, as a share of the volume", Values: []float64{m.Easy}, Kind: unit.Share,
			Used: "How long plants last when nothing is given.", Source: m.Holds,
		})
	}
	practice := source.Ref{Standing: source.Practice}
	return append(all, formula.Assumption{
		Code: "catalogue.BlockVolume", Title: "Block that a plant is raised in: volume", Values: []float64{catalogue.BlockVolume}, Kind: unit.PlantWater,
		Used: "The shots of young plants.", Source: practice,
	}, formula.Assumption{
		Code: "catalogue.BlockEasy", Title: "Block that a plant is raised in: water that it gives up easily", Values: []float64{catalogue.BlockEasy}, Kind: unit.PlantWater,
		Used: "How long young plants last.", Source: practice,
	})
}
