package startup

import (
	"math"

	"evenrow/wasm/trade/emitter"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/network"
)

// Waterless says whether the water comes to no row of a zone.
func (z *Zone) Waterless() bool {
	for _, r := range z.Rows {
		if !math.IsInf(r.Start, 1) {
			return false
		}
	}
	return len(z.Rows) > 0
}

// LastRow returns the row whose end the water comes to last, the first of such;
// ends that it never comes to come after all others.
func (z *Zone) LastRow() Row {
	last := z.Rows[0]
	for _, r := range z.Rows {
		if r.End > last.End {
			last = r
		}
	}
	return last
}

// NeverFull counts the rows whose end the water never comes to.
func (z *Zone) NeverFull() (n int) {
	for _, r := range z.Rows {
		if math.IsInf(r.End, 1) {
			n++
		}
	}
	return n
}

// FillsOn says whether all is full noticeably later than the ends of the rows:
// by more than a second, because a far header fills on.
func (z *Zone) FillsOn() bool { return z.Filled > z.LastRow().End+1 }

// An Order is the way in which emitters open as the pressure builds.
type Order uint8

const (
	Nobody       Order = iota // there are none
	NoneOpens                 // at any pressure that the supply gives
	NoneByItself              // but some stay open that were opened
	AtOnce                    // they drip as soon as the water is there
	Sooner                    // they open as soon as the pressure stands, and would at less; of a tank
	Together                  // all at one head
	SomeAtOnce                // some drip as soon as the water is there
	OneByOne
	Orders = iota // how many there are
)

// An Opening is in which order some plants' emitters open.
type Opening struct {
	Order       Order
	Plants      int     // with emitters
	Shut        int     // of them, whose emitters stay shut
	First, Last int     // indices into Layout.Plants of those that open first and last; -1 for none
	Least, Most float64 // m of the supply at which they do; NaN for none
}

// Opening says in which order the emitters of the plants open that are among
// those that are asked for, by their index into Layout.Plants.
func (z *Zone) Opening(among func(plant int) bool) Opening {
	o := Opening{First: -1, Last: -1, Least: math.NaN(), Most: math.NaN()}
	for i, h := range z.Opens {
		if math.IsNaN(h) || !among(i) {
			continue
		}
		o.Plants++
		if math.IsInf(h, 1) {
			o.Shut++
			continue
		}
		if !(h >= o.Least) {
			o.Least, o.First = h, i
		}
		if !(h < o.Most) {
			o.Most, o.Last = h, i
		}
	}
	o.Order = o.order(z.States.Held)
	return o
}

// order names the order. held is how many emitters stay open once they are.
func (o *Opening) order(held int) Order {
	switch {
	case o.Plants == 0:
		return Nobody
	case o.Shut == o.Plants && held == 0:
		return NoneOpens
	case o.Shut == o.Plants:
		return NoneByItself
	case o.Most == 0:
		return AtOnce
	case o.Most < 0:
		return Sooner
	case o.Most == o.Least && o.Shut == 0:
		return Together
	case o.Least == 0:
		return SomeAtOnce
	}
	return OneByOne
}

// All is for [Zone.Opening]: all plants.
func All(int) bool { return true }

// Heads returns the least and the greatest head above 0 at which an emitter
// opens; least is infinite where none does.
func (s *Startup) Heads() (least, greatest float64) {
	least, greatest = math.Inf(1), math.Inf(-1)
	for i := range s.Zones {
		for _, h := range s.Zones[i].Opens {
			if h > 0 && !math.IsInf(h, 1) {
				least, greatest = min(least, h), max(greatest, h)
			}
		}
	}
	return least, greatest
}

// A Route is how to get from fewer emitters open to more.
type Route uint8

const (
	ByRows      Route  = iota // letting the rows in one after another opens all that can stay open
	ByRowsPart                // that opens some more
	ByMorePower               // only more pressure does
	Routes      = iota        // how many there are
)

// Route says how to get from the state with fewer emitters open to that with more.
func (s *States) Route() Route {
	switch {
	case s.InTurn >= s.Held:
		return ByRows
	case s.InTurn > s.Few:
		return ByRowsPart
	}
	return ByMorePower
}

// A Stay is why nothing runs out of a zone's emitters after a shot.
type Stay uint8

const (
	RunsOut    Stay   = iota // something does
	NoWater                  // no water came to the rows
	NoneOpen                 // no emitter was open
	HeldBack                 // each shuts while what stands above it is no more than its closing head
	NoneHigher               // no tubing lies above the emitters
	Stays      = iota        // how many there are
)

// stay says why nothing runs out.
func (z *Zone) stay(l *layout.Layout) Stay {
	switch {
	case z.Drain.Most >= 0:
		return RunsOut
	case z.Waterless():
		return NoWater
	case z.States.Opened == 0:
		return NoneOpen
	}
	for i := range l.Plants {
		e := l.Network.Nodes[l.Plants[i].Node].Emitter
		if e != network.None && l.ZoneOf(l.Plants[i].Row) == z.Zone && l.Network.Emitters[e].Kind == emitter.Compensating {
			return HeldBack
		}
	}
	return NoneHigher
}

// After sums up what happens after a shot: whether the tank runs on through the
// pump in some zone, how much runs back at most, and how much stays level with
// emitters of all zones, in m³.
func (s *Startup) After() (siphon bool, back, level float64) {
	for i := range s.Zones {
		d := &s.Zones[i].Drain
		siphon = siphon || d.Siphon
		back = max(back, d.Back)
		level += d.Level
	}
	return siphon, back, level
}
