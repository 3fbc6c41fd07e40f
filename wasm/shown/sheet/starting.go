package sheet

import (
	"evenrow/wasm/works/network"
	"evenrow/wasm/works/startup"
)

// started works out how the plan starts and stops; nil where no water flows.
func started(s *Sheet) *startup.Startup {
	if len(s.Zones) == 0 || len(s.Zones) < len(s.Layout.Zones) {
		return nil
	}
	running := make([]*network.Solution, len(s.Zones))
	for i := range s.Zones {
		running[i] = s.Zones[i].Solution
	}
	return startup.Of(s.Layout, running)
}
