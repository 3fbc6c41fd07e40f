package shots

// A Filling is how often a tank has to be filled.
type Filling uint8

const (
	NoTank       Filling = iota // there is none, or nothing is taken from it
	MoreThanOnce                // a typical day takes more than it holds
	TwiceWhenHot                // a hot day takes more than it holds
	EveryDays                   // see [Refill.Typical]
	Seldom                      // it holds more than is taken in a fortnight
	Fillings     = iota         // how many there are
)

// fortnight is for how many days it is not said any more when to fill a tank.
const fortnight = 15

// A Refill is how a tank goes with what is taken from it in a day.
type Refill struct {
	Filling Filling
	Typical int     // EveryDays: the whole days that it lasts in typical weather, at least 1
	Hot     int     // likewise in hot weather
	Holds   bool    // it holds a record-hot day
	Wanted  float64 // m³, which would
}

// RefillOf says how often a tank of so many m³ has to be filled from which given
// is taken in a day.
func RefillOf(tank float64, given [Skies]float64) Refill {
	r := Refill{Holds: tank >= given[Record], Wanted: given[Record]}
	hot, typical := given[Hot], given[Typical]
	switch {
	case !(tank > 0) || !(hot > 0):
		return r
	case tank < typical:
		r.Filling = MoreThanOnce
		return r
	case tank < hot:
		r.Filling = TwiceWhenHot
		return r
	case tank/typical >= fortnight:
		r.Filling = Seldom
		return r
	}
	r.Filling, r.Typical, r.Hot = EveryDays, int(tank/typical), int(tank/hot)
	return r
}

// Given is what all zones take on a day under each sky, and the part of it that
// drains, in m³.
func (l *Line) Given() (given, drained [Skies]float64) {
	for sky := range given {
		given[sky], drained[sky] = l.Sets[sky].Given()
	}
	return given, drained
}

// Thirstiest is the line that takes most from the tank on a hot day: that of
// greatest need, but where crops share a valve another may give more, of which
// more drains.
func (c *Card) Thirstiest() *Line {
	at := &c.Lines[c.Peak]
	most, _ := at.Sets[Hot].Given()
	for i := range c.Lines {
		if given, _ := c.Lines[i].Sets[Hot].Given(); given > most*(1+1e-9) { // sums differ in their last bits
			at, most = &c.Lines[i], given
		}
	}
	return at
}
