package pump

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "pump.ByPoints", Title: "A pump's curve between its points",
			Rule:   "A cubic from point to point that never rises. With c the slope of the straight line from one point to the next and h its width in flow, the slope at an inner point is 2 c₀ c₁/(c₀ + c₁), and at an end ((2 h₀ + h₁) c₀ - h₀ c₁)/(h₀ + h₁), h₀ and c₀ being those next to it. Each is held between a twentieth and twice the flatter c beside it. Two points make a straight line. Beyond the last point the curve goes on straight.",
			Used:   "The head that a pump known by points gives at every flow.",
			Source: source.Ref{Work: "Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300, and Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238", Standing: source.Memory},
		},
		{
			Code: "pump.ByTwo", Title: "A pump's curve from its shut-off head and greatest flow, and a tap's",
			Rule:   "A parabola: see the formulas for the head of a pump and of a tap.",
			Used:   "The head of a pump known by two figures, of a tap, and of a pump that the answer asks for.",
			Source: source.Ref{At: "real curves lie on both sides of it", Standing: source.Practice},
		},
		{
			Code: "pump.MostToWater", Title: "Share of the power on a pump's label that gets into the water at best",
			Values: []float64{MostToWater}, Kind: unit.Share,
			Used:   "Whether the figures on a label can all be so. A good pump of 13 hp reaches 85 %, without the loss of its motor; small pumps reach less than half (from memory). Labels say what the motor takes up or what it gives, so nothing less would be wrong for certain.",
			Source: source.Ref{Work: source.Munson, At: "example 12.5: CQ CH/CP = 0.85, a pump of 13 hp", Standing: source.Choice},
		},
		{
			Code: "pump.backflow", Title: "Steepness of a supply for water that runs back, as a multiple of shut-off head over last flow",
			Values: []float64{backflow},
			Used:   "No state at rest: only the steps on the way to one.",
			Source: source.Ref{At: "as a check valve", Standing: source.Choice},
		},
		{
			Code: "pump.lowShare", Title: "Share of the greatest flow below which a parabola is straight",
			Values: []float64{lowShare},
			Used:   "Less than a millionth of the head.",
			Source: source.Ref{At: "so that it has a slope at no flow", Standing: source.Choice},
		},
		{
			Code: "pump.droop", Title: "How far a regulator falls below its set pressure, as a share of it, from no flow to its supply's last",
			Values: []float64{droop},
			Used:   "The head behind a regulator.",
			Source: source.Ref{At: "real ones fall by some per cent, which makers seldom state; this only keeps the curve falling", Standing: source.Choice},
		},
	}
}
