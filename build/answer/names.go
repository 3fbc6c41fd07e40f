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
// put in another order. Without one at the end it does not compile, and
// TestEveryKindHasItsName says which else is missing.
var (
	verdicts [sheet.Verdicts]string = [...]string{
		sheet.Yes:    "yes",
		sheet.Nearly: "nearly",
		sheet.No:     "no",
		sheet.Cannot: "cannot",
	}

	samenesses [sheet.Samenesses]string = [...]string{
		sheet.Differs:    "differs",
		sheet.Same:       "same",
		sheet.NearlySame: "nearly-same",
		sheet.SameInZone: "same-in-zone",
		sheet.NearInZone: "nearly-same-in-zone",
		sheet.AsNeeded:   "as-needed",
	}

	states [sheet.States]string = [...]string{
		sheet.Unknown: "not-worked-out",
		sheet.Shut:    "shut",
		sheet.Below:   "below-range",
		sheet.Within:  "in-range",
		sheet.Above:   "above-range",
	}
	reliefs [sheet.Reliefs]string = [...]string{
		sheet.LowerRegulator: "lower-regulator",
		sheet.FitRegulator:   "regulator",
		sheet.LowerTank:      "regulator-or-lower-tank",
		sheet.WeakerPump:     "regulator-or-weaker-pump",
	}

	ends [flush.Places]string = [...]string{
		flush.OfRow:    "row",
		flush.OfHeader: "header",
		flush.OfFar:    "far-header",
		flush.RowInto:  "row-into-far-header",
	}
	rooms [headroom.Kinds]kindOf = [...]kindOf{
		headroom.Plants:  {"plants", ""},
		headroom.InRow:   {"plants-in-row", ""},
		headroom.Rise:    {"rise", "m"},
		headroom.Fouling: {"filter-loss", "Pa"},
	}
	losses [sheet.LossKinds]string = [...]string{
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
	stretches [layout.StretchKinds]string = [...]string{
		layout.Source:   "source",
		layout.RunOf:    "run",
		layout.Filter:   "filter",
		layout.HeaderOf: "header",
		layout.RowOf:    "row",
		layout.Between:  "between",
		layout.FarOf:    "far-header",
		layout.Devices:  "devices",
	}
	groups [parts.Groups]string = [...]string{
		parts.Tubing:        "tubing",
		parts.Fittings:      "fittings",
		parts.EmittersGroup: "emitters",
		parts.WaterPath:     "water-path",
		parts.Electrics:     "electrics",
		parts.Growing:       "growing",
		parts.Tools:         "tools",
	}
)

// inner are the units of what findings and changes are of. Their names stand in
// [sheet.Kinds] and [sheet.FixesOf].
var inner = map[unit.Kind]string{
	unit.None: "", unit.Share: "", unit.Head: "m", unit.Length: "m", unit.Opening: "m", unit.Speed: "m/s", unit.Pressure: "Pa", unit.Flow: "m³/s", unit.Power: "W", unit.Duration: "s",
}
