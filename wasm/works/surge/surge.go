// Package surge compares the blow of a valve that shuts at once with what the
// tubing may carry in the sun.
package surge

import (
	"math"

	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// Short-term elastic moduli of tubing in Pa, from memory: soft drip tubing of
// low density 0.2 to 0.3 GPa, PE pipe about 1 GPa. The stiffer end, where there
// is a range, and where the kind is not known, is the safe side: a stiff wall
// lets a surge run faster, and a fast surge is a strong one.
const (
	softWall  = 0.3e9
	stiffWall = 1e9
)

// unknownRatio is the outside diameter over the wall of measured tubing, of
// which only the bore is known: that of PE pipe SDR 11, thicker than most.
const unknownRatio = 11

// A Blow is the worst that a size of tubing sees when a valve at the end of one
// of its stretches shuts at once. Pressures are in Pa.
type Blow struct {
	Stretch  int     // index into Layout.Stretches
	Speed    float64 // m/s, the greatest in it, that is stopped
	Celerity float64 // m/s, at which the surge runs
	Rise     float64 // of the surge
	Rest     float64 // at the lowest point of it when nothing flows
	Rated    float64 // what it may carry at 20 °C
	Carries  float64 // and in the sun, which is what counts
	Closing  float64 // s, over which the valve must shut so that all stretches of this size stay within Carries; 0 where at once is slow enough, infinite where Rest alone is more
}

// Over says by how much a blow passes what the tubing may carry, in Pa.
func (b *Blow) Over() float64 { return b.Rest + b.Rise - b.Carries }

// Worse says whether a blow is worse than another: what does not even carry the
// pressure at rest is, and else what passes it by more.
func (b *Blow) Worse(a *Blow) bool {
	if rest := math.IsInf(b.Closing, 1); rest != math.IsInf(a.Closing, 1) {
		return rest
	}
	return b.Over() > a.Over()
}

// Worst returns the blow that is nearest to what its tubing may carry, or most
// beyond it, and the time in s over which a valve must shut so that all tubing
// stands it.
func Worst(blows []Blow) (worst *Blow, closing float64) {
	worst = &blows[0]
	for i := range blows {
		if b := &blows[i]; b.Worse(worst) {
			worst = b
		}
		closing = max(closing, blows[i].Closing)
	}
	return worst, closing
}

// Of returns the worst blow of each size of tubing, in the order of the water,
// given the solution of each zone. The surge is added to the pressure at rest
// and not to the lower one of flowing water, and the rating is not stretched
// for short blows: both the safe side, and our own choice.
//
// The closing time takes all the water from the source to the stretch's end
// for as fast as the stretch's: SlowSurge turned round.
func Of(l *layout.Layout, zones []*network.Solution) []Blow {
	worst := make([]Blow, len(l.Tubes))
	for i := range worst {
		worst[i].Stretch = -1
	}
	w := l.Network.Water
	along := make([]float64, len(l.Points)) // m from the source
	for i := range l.Stretches {
		st := &l.Stretches[i]
		if st.Tube == layout.NoTube {
			continue
		}
		tube := &l.Tubes[st.Tube]
		b := Blow{Stretch: i}
		lowest, far := math.Inf(1), 0.0
		for _, k := range st.Links {
			link := &l.Network.Links[k]
			// The links that close rings come last and lead to nodes with a way.
			along[link.To] = max(along[link.To], along[link.From]+link.Length)
			far = max(far, along[link.To])
			lowest = min(lowest, l.Network.Nodes[link.From].Z, l.Network.Nodes[link.To].Z)
			for _, sol := range zones {
				b.Speed = max(b.Speed, math.Abs(pipe.Velocity(sol.Flow[k], link.Bore)))
			}
		}
		b.Celerity = Celerity(tube)
		b.Rise = pipe.Surge(w.Density, b.Celerity, b.Speed)
		b.Rest = w.Density * water.Gravity * (l.Still(st) - lowest)
		c := &catalogue.Tubes[tube.Entry]
		b.Rated, b.Carries = c.Rating, c.InSun()
		if b.Over() > 0 {
			b.Closing = math.Inf(1)
			if room := b.Carries - b.Rest; room > 0 {
				b.Closing = 2 * far * w.Density * b.Speed / room
			}
		}
		// The stretch that needs most time to shut may be another.
		old := &worst[st.Tube]
		longest := max(old.Closing, b.Closing)
		if old.Stretch < 0 || b.Worse(old) {
			*old = b
		}
		old.Closing = longest
	}
	return worst
}

// Celerity returns the speed in m/s of a surge in a tube.
func Celerity(t *layout.Tube) float64 {
	if t.Entry == catalogue.Custom {
		return pipe.Celerity(stiffWall, unknownRatio)
	}
	e := stiffWall
	if catalogue.Tubes[t.Entry].Row {
		e = softWall
	}
	return pipe.Celerity(e, 2*t.Outside/(t.Outside-t.Bore))
}
