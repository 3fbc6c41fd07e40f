package view

import (
	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/layout"
)

// working opens the main figures to their formulas: the head lost in the first
// length of the row with the weakest emitter, that emitter's flow, and the
// evenness.
func (sc *scene) working() {
	z := sc.zone
	_, steps := sc.trail(z, z.Worst)
	e := sc.emitterOf(z.Worst)
	if len(steps) == 0 || e == nil {
		return
	}
	sc.fold("Show the working")
	n := &sc.s.Layout.Network
	last := &steps[len(steps)-1]
	if link := &n.Links[last.links[0]]; last.kind == layout.RowOf && link.Law == nil {
		if q := z.Solution.Flow[last.links[0]]; q > 0 {
			sc.tag("p", "Friction in the first "+sc.amount(unit.Length, link.Length)+" of "+sc.stepName(last)+":")
			sc.friction(sc.s.Layout, last.links[0], q)
		}
	}
	if h := sc.plants[z.Worst].head; h > 0 && sc.plants[z.Worst].state > shut {
		sc.tag("p", "Flow of the weakest emitter, "+sc.place(z.Worst)+":")
		f, at := emitter.EmitterFlowFormula, e.Nominal
		if e.Kind == emitter.Compensating {
			f, at = emitter.CompensatingFlowFormula, e.Lowest
		}
		sc.formula(f, e.Flow, at, e.Exponent, h)
	}
	z = sc.least()
	if least := z.Least / z.Alike.Mean; finite(least) {
		sc.tag("p", "Emission uniformity:")
		sc.formula(evenness.EmissionUniformityFormula, z.CV, z.PerPlant, least)
	}
	sc.html(`</details>`)
}

// friction prints what a link of tubing loses at a flow.
func (sc *scene) friction(l *layout.Layout, link int, q float64) {
	k := &l.Network.Links[link]
	sc.formula(pipe.TubingHeadFormula, q, k.Length, k.Bore, k.Roughness, l.Network.Water.Kinematic)
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

// formula prints a formula with the values that went in, the result and its
// source.
func (sc *scene) formula(f *formula.Formula, in ...float64) {
	if f == nil {
		return
	}
	w := formula.Of(f, in...)
	sc.html(`<div class="working"><p class="working__text">`).text(f.Text).html(`</p><dl>`)
	for _, l := range append(w.Lines(sc.sys), w.Answer(sc.sys)) {
		sc.html(`<div><dt>`).text(l.Letter).html(`</dt><dd>`).text(l.Value).html(`</dd><dd>`).text(l.Meaning).html(`</dd></div>`)
	}
	sc.html(`</dl><cite>Source: `).text(f.Source.String()).html(`</cite></div>`)
}
