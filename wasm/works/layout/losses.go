package layout

import (
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/pipe"
)

// InsertShare is the bore of a fitting that is pushed into tubing, as a share
// of the tubing's bore: common practice, no source. A 16 mm fitting has about
// 10 to 11 mm where the tubing has 13.6. The loss goes with the fourth power of
// it.
const InsertShare = 0.75

// insert returns the loss coefficient of one such fitting in a tube, on the
// velocity in the tube. Compression fittings grip its outside and leave the
// bore free.
func insert(t *Tube) float64 {
	if catalogue.Tubes[t.Entry].Takes == catalogue.Compression {
		return 0
	}
	return pipe.Insert(InsertShare*t.Bore, t.Bore)
}

// barb returns the length of tubing in m that stands for the barb of an
// emitter in tubing of a bore in m.
func barb(e *plan.Emitter, bore float64) float64 { return pipe.BarbLength(barbs[e.Barb], bore) }

// barbs holds package pipe's size of barb for that of a plan.
var barbs = [...]int{
	plan.BarbSmall:    pipe.SmallBarb,
	plan.BarbStandard: pipe.StandardBarb,
	plan.BarbLarge:    pipe.LargeBarb,
}
