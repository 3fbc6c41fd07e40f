package shots

import (
	"math"
	"slices"

	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/dose"
)

// Night is what a plant takes up in an hour of the night, as a share of the hour
// about noon: the upper end of 5 to 15 % (Caird, Richards and Donovan, Plant
// Physiology 143, 2007; from memory).
const Night = 0.15

// Lasts returns how long plants have easily available water, in s from the time
// at when nothing is given any more: easy m³ then, and use m³ taken up a day. It
// errs to the short side: all day long they are taken to use as much as in the
// hour about noon, because warm afternoons take more than the sun tells, and
// [Night] of that in the dark. It is infinite where a week does not empty the
// medium, or there is no use.
func Lasts(lit dose.Sunlit, at, easy, use float64) float64 {
	const day = 24 * 60 * 60
	noon := use * lit.Peak()
	if !(noon > 0) {
		return math.Inf(1)
	}
	easy = max(0, easy)
	t := at
	for k := -1.0; k < 8; k++ {
		for _, part := range [...]struct{ end, rate float64 }{{lit.Set + k*day, noon}, {lit.Rise + (k+1)*day, Night * noon}} {
			long := max(0, part.end-t)
			takes := long * part.rate
			if takes >= easy {
				return t + easy/part.rate - at
			}
			easy -= takes
			t += long
		}
	}
	return math.Inf(1)
}

// Zone returns the setting of a zone, or nil.
func (d *Day) Zone(zone int) *Setting {
	for i := range d.Zones {
		if d.Zones[i].Zone == zone {
			return &d.Zones[i]
		}
	}
	return nil
}

// Lasts returns how long a bed of the line has easily available water, in s from
// a time of the day at which a shot is due that does not come.
func (l *Line) Lasts(b *Bed, sky Sky, at float64) float64 {
	left := b.Easy // where nothing was set, the medium may be full
	if s := l.Sets[sky].Zone(b.Zone); s != nil {
		left = Left(b, b.Use[sky], len(s.Shots))
	}
	return Lasts(l.Lit, at, left, b.Use[sky])
}

// Worst returns the bed of the line that is out of water first, when the water
// stops in the morning of a hot day.
func (l *Line) Worst() *Bed { return l.First(Morning) }

// First returns the bed that is out of water first, when the water stops at a time
// of a hot day.
func (l *Line) First(at float64) *Bed {
	worst := &l.Beds[0]
	for i := range l.Beds {
		if b := &l.Beds[i]; l.Lasts(b, Hot, at) < l.Lasts(worst, Hot, at) {
			worst = b
		}
	}
	return worst
}

// Morning is the time for which it is said how long the plants last, in s.
const Morning = 9 * 60 * 60

// Left returns the easily available water of a bed when a shot is due that does
// not come, with n shots a day, in m³ a plant.
func Left(b *Bed, use float64, n int) float64 {
	return max(0, b.Easy-use/float64(max(n, 1)))
}

// A Rescue is how to water by hand meanwhile.
type Rescue struct {
	Each  float64 // m³ a plant at a time: half of what the medium gives easily, so that it is taken in
	Every float64 // s from one time to the next about noon
	Hour  float64 // m³ that a plant takes up in the hour about noon
}

// ByHand returns how to water a bed by hand on a day.
func ByHand(lit dose.Sunlit, b *Bed, use float64) Rescue {
	r := Rescue{Each: b.Easy / 2, Hour: use * lit.Peak() * 3600}
	if r.Hour > 0 {
		r.Every = r.Each / r.Hour * 3600
	}
	return r
}

// Hour returns the water that all plants of the line take up in the hour about
// noon, in m³.
func (l *Line) Hour(sky Sky) float64 {
	all := 0.0
	for i := range l.Beds {
		b := &l.Beds[i]
		all += ByHand(l.Lit, b, b.Use[sky]).Hour * float64(b.Plants)
	}
	return all
}

// A Seedling is a bed that roots in, in the first line in which it stands.
type Seedling struct {
	Line *Line
	Bed  *Bed
}

// young lists the beds that root in, each once, first of all those that are out
// of water first when it stops in the morning of a hot day.
func (c *Card) young() []Seedling {
	var list []Seedling
	for i := range c.Lines {
		l := &c.Lines[i]
		for k := range l.Beds {
			b := &l.Beds[k]
			seen := func(y Seedling) bool { return y.Bed.Zone == b.Zone && y.Bed.Planting == b.Planting }
			if !b.Young || slices.ContainsFunc(list, seen) {
				continue
			}
			list = append(list, Seedling{l, b})
			if n := len(list) - 1; l.Lasts(b, Hot, Morning) < list[0].Line.Lasts(list[0].Bed, Hot, Morning) {
				list[0], list[n] = list[n], list[0]
			}
		}
	}
	return list
}

// A Choice is a bed as it would be in another medium.
type Choice struct {
	Medium   int // index into catalogue.Media
	PerPiece int // plants in a piece: what lies along the row holds as many as its crop is planted in a metre, what else there is one
	Bed      Bed
}

// choices puts a bed into each medium.
func (y *Year) choices(b *Bed) []Choice {
	list := make([]Choice, len(catalogue.Media))
	row := y.Plan.Rows[b.Rows[0]]
	for i := range list {
		m := &catalogue.Media[i]
		row.Medium, row.PerPiece = i, 1
		if m.Along {
			row.PerPiece = max(1, int(m.Length*y.Plan.Trait(y.Season.Plantings[b.Planting].Crop, catalogue.PerSlab)))
		}
		other := *b
		other.Medium, other.Root = i, Root(&row)
		other.Easy = other.Root * m.Easy
		list[i] = Choice{i, row.PerPiece, other}
	}
	return list
}
