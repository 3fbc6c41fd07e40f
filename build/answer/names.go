package answer

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/works/headroom"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/parts"
)

// A kindOf is how a kind is called, and the unit of its value and limit.
type kindOf struct{ name, unit string }

// Each name stands at its constant, so that none slips when the constants are
// put in another order; a test counts them.
var (
	verdicts = [...]string{
		sheet.Yes:    "yes",
		sheet.Nearly: "nearly",
		sheet.No:     "no",
		sheet.Cannot: "cannot",
	}

	fixes = [...]kindOf{
		sheet.NewPump:       {"new-pump", "m"},
		sheet.RaiseTank:     {"raise-tank", "m"},
		sheet.MorePressure:  {"more-pressure", "Pa"},
		sheet.AddRegulator:  {"add-regulator", "Pa"},
		sheet.WiderLead:     {"wider-supply-line", ""},
		sheet.WiderHeader:   {"wider-header", ""},
		sheet.WiderRows:     {"wider-rows", ""},
		sheet.MiddleFeed:    {"middle-feed", ""},
		sheet.MoreZones:     {"more-zones", ""},
		sheet.CleanerFilter: {"cleaner-filter", "Pa"},
		sheet.LowerEmitters: {"lower-emitters", "Pa"},
		sheet.CloseRing:     {"close-loop", ""},
		sheet.OneEmitter:    {"one-emitter", ""},
		sheet.OwnZones:      {"own-zones", ""},
		sheet.Redesign:      {"redesign", ""},
	}

	samenesses = [...]string{
		sheet.Differs:    "differs",
		sheet.Same:       "same",
		sheet.NearlySame: "nearly-same",
		sheet.SameInZone: "same-in-zone",
		sheet.NearInZone: "nearly-same-in-zone",
		sheet.AsNeeded:   "as-needed",
	}

	states = [...]string{
		sheet.Unknown: "not-worked-out",
		sheet.Shut:    "shut",
		sheet.Below:   "below-range",
		sheet.Within:  "in-range",
		sheet.Above:   "above-range",
	}
	reliefs = [...]string{
		sheet.LowerRegulator: "lower-regulator",
		sheet.FitRegulator:   "regulator",
		sheet.LowerTank:      "regulator-or-lower-tank",
		sheet.WeakerPump:     "regulator-or-weaker-pump",
	}

	ends = [...]string{
		flush.OfRow:    "row",
		flush.OfHeader: "header",
		flush.OfFar:    "far-header",
		flush.RowInto:  "row-into-far-header",
	}
	rooms = [...]kindOf{
		headroom.Plants:  {"plants", ""},
		headroom.InRow:   {"plants-in-row", ""},
		headroom.Rise:    {"rise", "m"},
		headroom.Fouling: {"filter-loss", "Pa"},
	}
	losses = [...]string{
		sheet.Lift:        "lift",
		sheet.InRun:       "run",
		sheet.InFilter:    "filter",
		sheet.InHeader:    "header",
		sheet.InRow:       "row",
		sheet.InFittings:  "fittings",
		sheet.Needed:      "needed",
		sheet.Reserve:     "safety-margin",
		sheet.Spare:       "spare",
		sheet.InDevices:   "devices",
		sheet.InRegulator: "regulator",
	}
	stretches = [...]string{
		layout.Source:   "source",
		layout.RunOf:    "run",
		layout.Filter:   "filter",
		layout.HeaderOf: "header",
		layout.RowOf:    "row",
		layout.Between:  "between",
		layout.FarOf:    "far-header",
		layout.Devices:  "devices",
	}
	groups = [...]string{
		parts.Tubing:        "tubing",
		parts.Fittings:      "fittings",
		parts.EmittersGroup: "emitters",
		parts.WaterPath:     "water-path",
		parts.Growing:       "growing",
		parts.Tools:         "tools",
	}
)

// inner are the units of what findings are of. Their names stand in
// [sheet.Kinds].
var inner = map[unit.Kind]string{
	unit.None: "", unit.Share: "", unit.Head: "m", unit.Length: "m", unit.Opening: "m", unit.Speed: "m/s", unit.Flow: "m³/s", unit.Power: "W", unit.Duration: "s",
}

func name(names []string, i int) string {
	if i < len(names) {
		return names[i]
	}
	return "other"
}

func kind(kinds []kindOf, i int) kindOf {
	if i < len(kinds) {
		return kinds[i]
	}
	return kindOf{name: "other"}
}
