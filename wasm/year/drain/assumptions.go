package drain

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "drain.Usual", Title: "How far drain EC is above the feed's, at least",
			Values: []float64{Usual}, Unit: "mS/cm",
			Used:   "Advice from the log of the drain.",
			Source: source.Ref{Work: "handbooks", Standing: source.Memory},
		},
		{
			Code: "drain.High", Title: "How far drain EC is above the feed's, at most",
			Values: []float64{High}, Unit: "mS/cm",
			Used:   "Advice from the log of the drain.",
			Source: source.Ref{Work: "handbooks", Standing: source.Memory},
		},
		{
			Code: "drain.Salty", Title: "Drain EC above the feed's from which salt builds up",
			Values: []float64{Salty}, Unit: "mS/cm",
			Used:   "Advice from the log of the drain.",
			Source: source.Ref{Work: "handbooks", Standing: source.Memory},
		},
		{
			Code: "drain.Sour", Title: "pH of the drain below which roots suffer",
			Values: []float64{Sour},
			Used:   "Advice from the log of the drain.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "drain.Sweet", Title: "pH above which iron and phosphorus are locked up",
			Values: []float64{Sweet},
			Used:   "Advice from the log of the drain.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "drain.Most", Title: "Most that the water is changed from one day to the next",
			Values: []float64{Most}, Kind: unit.Share,
			Used:   "Advice from the log of the drain.",
			Source: source.Ref{At: "10 to 20 %", Standing: source.Practice},
		},
		{
			Code: "drain.Close", Title: "Difference of drain that a tray and a jug do not show",
			Values: []float64{Close}, Kind: unit.Share,
			Used:   "Advice from the log of the drain.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "drain.More", Title: "Further share to drain while salt is washed out",
			Values: []float64{More}, Kind: unit.Share,
			Used:   "Advice from the log of the drain.",
			Source: source.Ref{Standing: source.Practice},
		},
		{
			Code: "drain.Days", Title: "Days that an advice looks back on",
			Values: []float64{Days}, Unit: "days",
			Used:   "Advice from the log of the drain.",
			Source: source.Ref{Work: "handbooks", Standing: source.Memory},
		},
		{
			Code: "drain.nothing", Title: "Drain that counts as none",
			Values: []float64{nothing}, Kind: unit.Share,
			Used:   "Advice from the log of the drain.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "drain.mostWanted", Title: "Most that is to drain while salt is washed out",
			Values: []float64{mostWanted}, Kind: unit.Share,
			Used:   "Advice from the log of the drain.",
			Source: source.Ref{Standing: source.Choice},
		},
	}
}
