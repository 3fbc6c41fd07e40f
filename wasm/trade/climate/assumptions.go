package climate

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "climate.offsets", Title: "What cool, hot and record-hot days add to the usual high",
			Values: []float64{offsets[Cool].high, offsets[Hot].high, offsets[Record].high}, Unit: "°C",
			Used:   "The water of those days.",
			Source: source.Ref{At: "one day in ten is 6 °C above the mean high of its month, and records lie some 11 °C above", Standing: source.Practice},
		},
		{
			Code: "climate.offsets", Title: "What cool, hot and record-hot days add to the usual low",
			Values: []float64{offsets[Cool].low, offsets[Hot].low, offsets[Record].low}, Unit: "°C",
			Used:   "The water of those days.",
			Source: source.Ref{At: "fine weather warms the day more than the night", Standing: source.Practice},
		},
		{
			Code: "climate.through", Title: "Days between the middles of the months",
			Rule:   "A smooth curve through the middles of the months, raised until its mean over each month is that of the month.",
			Used:   "The highs and lows of each day.",
			Source: source.Ref{Work: "Catmull and Rom (1974)", Standing: source.Memory},
		},
	}
}
