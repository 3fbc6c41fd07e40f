package answer

import "evenrow/wasm/shown/sheet"

// A kindOf is how a kind is called, and the unit of its value and limit.
type kindOf struct{ name, unit string }

// The names follow the order of the constants in packages sheet, layout and
// parts; a test counts them.
var (
	verdicts = [...]string{"yes", "nearly", "no", "cannot"}

	explorations = [sheet.Explorations]string{
		sheet.Season: "season", sheet.Flushing: "flushing", sheet.Looping: "zones-and-loops", sheet.Starting: "starts", sheet.Faulting: "faults",
		sheet.Carrying: "headroom", sheet.Searching: "designs", sheet.Chancing: "chance",
	}

	findings = [...]kindOf{
		{"power-only", "W"},
		{"never-open", "m"},
		{"unsteady", "m"},
		{"below-range", "m"},
		{"above-range", "m"},
		{"short-margin", "m"},
		{"uneven", ""},
		{"fast-supply-line", "m/s"},
		{"off-curve", "m³/s"},
		{"coarse-filter", "m"},
		{"no-filter", ""},
		{"over-rating", "m"},
		{"outside-place", "m"},
		{"small-tank", "s"},
		{"fouled", "m"},
		{"unsolved", ""},
		{"too-high", "m"},
		{"suction", "m"},
		{"no-backflow", ""},
		{"unlike", ""},
	}

	fixes = [...]kindOf{
		{"new-pump", "m"},
		{"raise-tank", "m"},
		{"more-pressure", "Pa"},
		{"add-regulator", "Pa"},
		{"wider-supply-line", ""},
		{"wider-header", ""},
		{"wider-rows", ""},
		{"middle-feed", ""},
		{"more-zones", ""},
		{"cleaner-filter", "Pa"},
		{"lower-emitters", "Pa"},
		{"close-loop", ""},
		{"one-emitter", ""},
		{"own-zones", ""},
		{"redesign", ""},
	}

	samenesses = [...]string{"differs", "same", "nearly-same", "same-in-zone", "nearly-same-in-zone", "as-needed"}

	ends      = [...]string{"row", "header", "far-header", "row-into-far-header"}
	rooms     = [...]kindOf{{"plants", ""}, {"plants-in-row", ""}, {"rise", "m"}, {"filter-loss", "Pa"}}
	losses    = [...]string{"lift", "run", "filter", "header", "row", "fittings", "needed", "safety-margin", "spare", "devices", "regulator"}
	stretches = [...]string{"source", "run", "filter", "header", "row", "between", "far-header", "devices"}
	groups    = [...]string{"tubing", "fittings", "emitters", "water-path", "growing", "tools"}
)

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
