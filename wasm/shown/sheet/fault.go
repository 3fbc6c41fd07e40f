package sheet

import (
	"evenrow/wasm/works/chance"
	"evenrow/wasm/works/fault"
	"evenrow/wasm/works/network"
)

// solutions are those of the zones; none where no water flows.
func (s *Sheet) solutions() []*network.Solution {
	var flows []*network.Solution
	for i := range s.Zones {
		flows = append(flows, s.Zones[i].Solution)
	}
	return flows
}

// faulted says what wear, dirt and leaks do; nil where no water flows.
func faulted(s *Sheet) *fault.Faults {
	if len(s.Zones) == 0 {
		return nil
	}
	return fault.Of(s.Layout, s.solutions())
}

// chanced draws emitters that differ; nil where no water flows.
func chanced(s *Sheet) []chance.Zone {
	if len(s.Zones) == 0 {
		return nil
	}
	return chance.Of(s.Layout, s.solutions(), s.Plan.Chance.Blocked)
}
