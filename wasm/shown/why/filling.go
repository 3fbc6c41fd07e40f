package why

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/works/startup"
)

// fills says how long the lines take to fill.
func (sc part) fills(z *startup.Zone) string {
	switch {
	case len(z.Rows) == 0:
		return "How the lines fill could not be worked out."
	case math.IsInf(z.Filled, 1):
		if len(z.Rows) == 1 {
			return "From empty lines, the water never reaches the end of the row."
		}
		return "From empty lines, the water never reaches the end of " + strconv.Itoa(z.NeverFull()) + " of " + wording.Count(len(z.Rows), "row", "rows") + "."
	}
	last := z.LastRow()
	words := "From empty lines, the water is at the end of every row after " + sc.Elapsed(last.End)
	if len(z.Rows) > 1 {
		words += ", in row " + strconv.Itoa(last.Row+1) + " last"
	}
	words += "."
	if z.FillsOn() {
		words += " All is full after " + sc.Elapsed(z.Filled) + "."
	}
	words += " That takes " + sc.Amount(unit.Volume, z.Holds) + "."
	if !math.IsInf(z.Swell, 1) {
		words += " When the lines are still full from the shot before, there is nothing to fill, and the pressure is up after " + sc.Elapsed(z.Swell) + "."
	}
	return words
}
