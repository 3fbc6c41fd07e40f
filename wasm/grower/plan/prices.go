package plan

import "evenrow/wasm/trade/catalogue"

// Prices are what a search for cheaper designs reckons with, in any currency,
// and what it keeps to beside [Limits].
type Prices struct {
	Valve float64                       // of a row's valve, with its fittings; wanted at each row when there are several zones
	Zone  float64                       // of a further place at the timer, with its cable; wanted for each zone when there are several
	Flush int                           // 0 no, 1 yes: the water at each row's end is to run fast enough to carry dirt out
	Tubes [len(catalogue.Tubes)]float64 // of one metre, by index into catalogue.Tubes; 0 for a size that is not to be had
	Rolls [len(catalogue.Tubes)]float64 // m of a roll, likewise, [ShortestRoll] or more; 0 for what is sold by the metre

	Currency string // as the grower writes it; nothing is ever converted
}

// ShortestRoll is the length in m that a roll of tubing has at the least.
const ShortestRoll = 5

// Had says whether a size of tubing, an index into catalogue.Tubes, may be
// proposed: it has a price, and belongs to the trade's family of the plan's
// units.
func (p *Plan) Had(tube int) bool {
	c := &catalogue.Tubes[tube]
	return tube != catalogue.Custom && p.Prices.Tubes[tube] > 0 && c.Metric() == (p.Units == 0)
}

// Uses says whether a plan has tubing of a size.
func (p *Plan) Uses(tube int) bool {
	for i := range p.Runs {
		if p.Runs[i].Tube == tube {
			return true
		}
	}
	for i := range p.Rows {
		if p.Rows[i].Tube == tube {
			return true
		}
	}
	return p.Header.Tube == tube
}
