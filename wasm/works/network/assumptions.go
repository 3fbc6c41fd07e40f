package network

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/source"
)

// Assumptions are what this package goes by and no formula shows.
func Assumptions() []formula.Assumption {
	return []formula.Assumption{
		{
			Code: "network.Solver.openReady", Title: "The order in which emitters open",
			Rule:   "At first all compensating emitters are shut. With those that are open settled, the shut ones that see their opening pressure are put in order, those with most above it first, and among equals the one nearer along the way. As many open, from the first, as leave every open one above its closing pressure. This is repeated until no more open. One that would open, and pull itself or another below its closing pressure, counts as shut.",
			Used:   "Which emitters are open, where a supply cannot open all that it could keep open.",
			Source: source.Ref{At: "as when the pressure rises slowly from nothing; others may open first where it does not", Standing: source.Choice},
		},
		{
			Code: "network.Solver.shutLow", Title: "The order in which emitters shut",
			Rule:   "All that see less than their closing pressure shut together, and the network is settled again, until the others keep theirs. Then those that see their opening pressure open as above.",
			Used:   "Opened ends, breaks and leaks, and how a system stops.",
			Source: source.Ref{Standing: source.Choice},
		},
		{
			Code: "network.Drop.Loss", Title: "What a device at the supply takes",
			Rule:   "All of the loss in the plan as soon as water flows, however little, and nothing from still water. Where the water does not flow against the whole of it, none flows.",
			Used:   "Backflow devices, meters and timer valves.",
			Source: source.Ref{At: "as the spring of a check valve does, for want of a curve", Standing: source.Choice},
		},
		{
			Code: "network.leastSlope", Title: "Resistance that every link has besides its own",
			Values: []float64{leastSlope}, Unit: "m per m³/s",
			Used:   "A thousandth of a millimetre of head at 1 L/s.",
			Source: source.Ref{Standing: source.Choice},
		},
	}
}
