package ends

import "evenrow/wasm/ground/source"

const inch = 0.0254

// A Thread is how a family of threads is cut in one size.
type Thread struct {
	Major float64 // m, across the male thread; of a tapered one as its pipe is
	Turns float64 // threads to the inch
}

// A Cut is how all threads of a family are cut.
type Cut struct {
	Angle  float64 // degrees between the flanks
	Taper  float64 // how much wider in diameter for each length; 0 for straight ones
	Of     [len(Sizes)]Thread
	Source source.Ref
}

var (
	bsp = [len(Sizes)]Thread{{0.020955, 14}, {0.026441, 14}, {0.033249, 11}, {0.041910, 11}, {0.047803, 11}}

	// Cuts are the families of threads. The last size of each is from memory.
	Cuts = [Taper + 1]Cut{
		PipeThread: {60, 1.0 / 16, [len(Sizes)]Thread{{0.840 * inch, 14}, {1.050 * inch, 14}, {1.315 * inch, 11.5}, {1.660 * inch, 11.5}, {1.900 * inch, 11.5}},
			source.Ref{Work: "ASME B1.20.1", At: "table 2"}},
		HoseThread: {60, 0, [len(Sizes)]Thread{ThreeQuarter: {1.0625 * inch, 11.5}},
			source.Ref{Work: "ASME B1.20.7", At: "3/4-11.5 NH, as quoted"}},
		Parallel: {55, 0, bsp, source.Ref{Work: "ISO 228-1"}},
		Taper:    {55, 1.0 / 16, bsp, source.Ref{Work: "ISO 7-1"}},
	}
)

// A Rigidity is one size of PVC pipe of schedule 40.
type Rigidity struct {
	Outside, Bore float64 // m
	Rating        float64 // Pa at 73 °F
}

const psi = 44482216152605.0 / 6451600000

// PVC are the sizes of PVC pipe, schedule 40, by nominal size.
var PVC = [len(Sizes)]Rigidity{
	Half:         {0.840 * inch, 0.602 * inch, 600 * psi},
	ThreeQuarter: {1.050 * inch, 0.804 * inch, 480 * psi},
	One:          {1.315 * inch, 1.029 * inch, 450 * psi},
	OneQuarter:   {1.660 * inch, 1.360 * inch, 370 * psi},
}

// PVCSource is where PVC is from.
var PVCSource = source.Ref{Work: "ASTM D1785", At: "schedule 40, as a workshop table quotes it; another has bores up to 0.01 in wider"}
