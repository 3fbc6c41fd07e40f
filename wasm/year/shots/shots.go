// Package shots sets the timer: how many shots of how many minutes, and when,
// for each zone on each kind of day, so that no plant lacks water and a wanted
// share of it drains. It knows what timers cannot do, and what then becomes of
// the plants.
//
// Volumes are in m³, those of use and medium for one plant; flows in m³/s, of
// one plant; times in s after midnight on the clock of the place.
package shots

import "evenrow/wasm/grower/plan"

// A Sky is a kind of day.
type Sky int

const (
	Dull Sky = iota
	Typical
	Hot
	Record // as hot as it has been
	Skies  = iota
)

// Least and greatest time of a shot, in s: shorter ones are uneven, because the
// lines fill and the emitters open meanwhile, longer ones run through (common
// practice, no source).
const (
	LeastShot = 2 * 60
	MostShot  = 6 * 60
)

// Quarter is the step of a dial with pins, in s.
const Quarter = 15 * 60

// A Bed is plants of one planting in one zone.
type Bed struct {
	Zone     int   // number of the zone
	Rows     []int // from 0
	Planting int   // index into Season.Plantings
	Medium   int   // index into catalogue.Media
	Plants   int
	Root     float64        // m³ of medium for each plant
	Easy     float64        // m³ of it that is easily available water
	Least    float64        // m³/s, of the plant that gets least
	Mean     float64        // m³/s, of all
	Use      [Skies]float64 // m³ a plant takes up that day, not falling from one sky to the next
	Young    bool           // still rooting in: its drain is that of a dull day

	days  int     // of the line, on which it stands there
	taken float64 // m³ that a plant takes up on all of them, were each a typical one
}

// Wanted is the share that is to drain.
func (b *Bed) Wanted(t *plan.Timer, sky Sky) float64 {
	switch {
	case b.Young || sky == Dull:
		return t.DrainLow
	case sky == Typical:
		return t.Drain
	}
	return t.DrainHot
}

// A Shot is one opening of a zone's valve.
type Shot struct {
	At  float64 // s after midnight
	For float64 // s
}

// A Note is what a setting cannot do.
type Note uint8

const (
	Few     Note = 1 << iota // fewer shots than wanted: the timer holds no more start times
	Short                    // a shot is shorter than LeastShot, because the plants need so little
	Long                     // a shot is longer than MostShot
	Crowded                  // fewer shots than wanted: no more rounds of all zones fit between the first and the last
	Dry                      // between two shots some bed's plants take up more than their medium gives easily
)

// A Setting is what one zone's timer is set to on one day.
type Setting struct {
	Zone   int
	Run    float64 // s, that the thirstiest plants need in all
	Given  float64 // s, that the timer gives in all: at least Run, and more by less than a step
	Wanted int     // shots, were the timer no limit
	Most   float64 // s, that one of these takes at most
	Shots  []Shot  // in order
	Off    float64 // s of rest between two shots; OnAndOff only
	Lead   int     // index into Beds of those that need most time
	Beds   []Fare
	Notes  Note
}

// A Fare is what one bed gets of a setting.
type Fare struct {
	Bed   *Bed
	Use   float64 // m³, of a plant
	Given float64 // m³, of a plant of the mean flow
	Worst float64 // m³, of the plant that gets least
	Drain float64 // share of Given that drains
	Gap   float64 // m³, that a plant takes up between the two shots that are furthest apart
}

// A Day is the settings of all zones on one day.
type Day struct {
	Sky   Sky
	Zones []Setting
	Round float64 // s, of the longest round: one shot of each zone in turn
	Over  float64 // s, by which the last round starts later than it should, because the rounds before it take so long
}

// Given returns the water that all zones take on a day, and the part of it that
// drains, in m³.
func (d *Day) Given() (given, drained float64) {
	for i := range d.Zones {
		for _, f := range d.Zones[i].Beds {
			n := float64(f.Bed.Plants)
			given += n * f.Given
			drained += n * f.Given * f.Drain
		}
	}
	return given, drained
}

// Lengths counts the shots of a setting by their time in s: the step of the
// timer makes some longer than others. few may be 0.
func (s *Setting) Lengths() (many, few int, long, short float64) {
	long = s.Longest()
	for _, shot := range s.Shots {
		if shot.For == long {
			many++
		} else {
			few++
			short = shot.For
		}
	}
	return many, few, long, short
}

// Longest is the time in s of the longest shot.
func (s *Setting) Longest() (long float64) {
	for _, shot := range s.Shots {
		long = max(long, shot.For)
	}
	return long
}
