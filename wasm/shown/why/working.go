package why

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/layout"
)

// working opens the main figures to their formulas: the head lost in the first
// length of the row with the weakest emitter, that emitter's flow, and the
// evenness.
func (sc part) working() {
	z := sc.Zone
	trail := sc.S.Trail(z, z.Worst)
	e := sc.EmitterOf(z.Worst)
	if trail == nil || e == nil {
		return
	}
	sc.Working(func() {
		n := &sc.S.Layout.Network
		last := &trail.Steps[len(trail.Steps)-1]
		if link := &n.Links[last.Links[0]]; last.Kind == layout.RowOf && link.Law == nil {
			if q := z.Solution.Flow[last.Links[0]]; q > 0 {
				sc.Tag("p", "Friction in the first "+sc.Amount(unit.Length, link.Length)+" of "+sc.stepName(last)+":")
				sc.friction(sc.S.Layout, last.Links[0], q)
			}
		}
		if h := sc.Plants[z.Worst].Head; h > 0 && sc.Plants[z.Worst].State > sheet.Shut {
			sc.Tag("p", "Flow of the weakest emitter, "+sc.Place(z.Worst)+":")
			f, at := emitter.EmitterFlowFormula, e.Nominal
			if e.Kind == emitter.Compensating {
				f, at = emitter.CompensatingFlowFormula, e.Lowest
			}
			sc.Formula(f, e.Flow, at, e.Exponent, h)
		}
		z = sc.S.LeastAlike()
		if least := z.Least / z.Alike.Mean; wording.Finite(least) {
			sc.Tag("p", "Emission uniformity:")
			sc.Formula(evenness.EmissionUniformityFormula, z.CV, z.PerPlant, least)
		}
	})
}

// friction prints what a link of tubing loses at a flow.
func (sc part) friction(l *layout.Layout, link int, q float64) {
	k := &l.Network.Links[link]
	sc.Formula(pipe.TubingHeadFormula, q, k.Length, k.Bore, k.Roughness, l.Network.Water.Kinematic)
}

// firstLink returns the first link of the tubing of a kind, of row or run i;
// -1 when there is none.
func firstLink(l *layout.Layout, kind layout.StretchKind, i int) int {
	for k := range l.Stretches {
		if s := &l.Stretches[k]; s.Kind == kind && s.Index == i && len(s.Links) > 0 {
			return s.Links[0]
		}
	}
	return -1
}
