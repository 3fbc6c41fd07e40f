package why

import (
	"strconv"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/layout"
)

// stepName names a step of the water's way.
func (sc part) stepName(s *sheet.Step) string {
	switch s.Kind {
	case layout.Source:
		if sc.S.Regulated() {
			return sc.SourceName() + ", regulator"
		}
		if sc.S.Layout.Curve == nil {
			return "regulator" // of a tank
		}
		return sc.SourceName()
	case layout.RunOf:
		return sc.runName(s.Index)
	case layout.Filter:
		return "filter"
	case layout.HeaderOf:
		return "header"
	case layout.Devices:
		return "devices"
	case layout.FarOf:
		return "far header"
	case layout.RowOf, layout.Between:
		return sc.rowName(s.Index)
	}
	return ""
}

// rowName names a row, or the line that all rows are.
func (sc part) rowName(i int) string {
	if sc.S.Plan.Header.Layout == plan.OneLine {
		return "line"
	}
	return "row " + strconv.Itoa(i+1)
}

func (sc part) runName(i int) string {
	if len(sc.S.Plan.Runs) < 2 {
		return "supply line"
	}
	return "run " + strconv.Itoa(i+1)
}
