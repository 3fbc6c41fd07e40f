// Package work bounds how much a calculation does. It counts and asks no
// clock, so that a plan's results are the same on every machine.
//
// A unit is what one node, or one link, costs in one step of the solver, which
// is most of what any plan costs; what costs else is counted in units that take
// about as long.
package work

// A Meter counts one calculation's work, and ends the calculation when it has
// done as much as it may, or when nobody waits for it any more. A nil meter
// lets everything through. It is of one goroutine.
type Meter struct {
	left   int
	ask    int // as many units left, or fewer: it is time to ask
	nobody func() bool
	gone   bool
}

// often is how many units lie between two questions whether anybody waits:
// about a millisecond.
const often = 50_000

// New returns a meter of so many units. gone, if it is not nil, is asked now and
// then whether nobody waits any more.
func New(units int, gone func() bool) *Meter {
	return &Meter{left: units, ask: units, nobody: gone}
}

// Spend counts n units more. Where they are not to be had it does not return:
// the calculation ends, and with it [Meter.Within].
func (m *Meter) Spend(n int) {
	if m == nil {
		return
	}
	m.left -= n
	if m.nobody != nil && m.left <= m.ask && !m.gone {
		m.ask = m.left - often
		m.gone = m.nobody()
	}
	if m.left < 0 || m.gone {
		panic(m)
	}
}

// Within does something that spends from the meter, and returns whether it was
// done to the end. What it had found until then stands as it was left.
func (m *Meter) Within(do func()) (whole bool) {
	defer func() {
		if !whole {
			if fault := recover(); fault != nil && fault != m {
				panic(fault)
			}
		}
	}()
	do()
	return true
}

// Gone says whether the calculation was ended because nobody waits.
func (m *Meter) Gone() bool { return m != nil && m.gone }

// Left returns how many units are left, negative where more were asked for.
func (m *Meter) Left() int { return m.left }
