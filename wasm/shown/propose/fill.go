package propose

import (
	"math"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// A Room is what is kept free of plants, in m.
type Room struct {
	Path   float64 // between two lines of plants, from medium to medium
	Margin float64 // along the walls
	Door   float64 // of the near end, which takes as much ground before it
}

// rooms are what is tried, the next where not all plants find a place: what one
// walks in with a bucket in each hand, what one squeezes through, and nothing, for
// plants on a shelf that are reached from outside. In both systems of units.
var rooms = [unit.Systems][3]Room{
	unit.Metric: {{0.60, 0.10, 0.80}, {0.45, 0.05, 0.60}, {}},
	unit.US:     {{2 * foot, 0.3 * foot, 2.5 * foot}, {1.5 * foot, 0.2 * foot, 2 * foot}, {}},
}

const foot = 0.3048

// A kind is one crop with the way it stands in its medium.
type kind struct {
	crop, asked int
	each        int     // plants to a piece
	spacing     float64 // m, between plants
	pitch       float64 // m, from piece to piece
	across      float64 // m, between lines, by the crop table
}

// A segment is a stretch of a line with plants of one kind.
type segment struct {
	kind, plants int
	line         int
	at           float64 // m, from the start of the line to that of its first piece
}

// A field is the ground that plants are put on.
type field struct {
	Room
	medium *catalogue.Medium
	kinds  []kind
	begins float64 // m, where lines begin
	long   float64 // m, of each line
	lines  int     // that find room
	have   []int   // how many of each kind are planted
}

// near is what lengths in m are not told apart by.
const near = 1e-9

// fieldOf returns the ground of a place and what is to stand on it.
func fieldOf(a *Answers, r Room, before kept) *field {
	f := &field{Room: r, medium: &catalogue.Media[a.Medium]}
	f.begins = max(r.Margin, r.Door)
	f.long = a.Length - f.begins - r.Margin
	f.lines = 0
	if wide := a.Width - 2*r.Margin - f.medium.Width; wide >= -near {
		f.lines = int(min(plan.MaxRows, 1+math.Floor(wide/(r.Path+f.medium.Width)+near)))
	}
	for _, c := range a.Crops {
		f.add(c, a.Units, before)
	}
	// Each crop but the first may begin in the line of another, which takes a row
	// of the plan more.
	f.lines = min(f.lines, plan.MaxRows+1-len(f.kinds))
	return f
}

// add puts a crop on the list, or more plants of one that is on it.
func (f *field) add(c Count, sys unit.System, before kept) {
	for i := range f.kinds {
		if f.kinds[i].crop == c.Crop {
			f.kinds[i].asked += c.Plants
			return
		}
	}
	crop, m := &catalogue.Crops[c.Crop], f.medium
	k := kind{crop: c.Crop, asked: c.Plants, each: 1}
	if m.Along {
		k.each = int(crop.Of(catalogue.PerSlab))
	}
	k.spacing = before.spacing(c.Crop, crop.Of(catalogue.Spacing))
	if least := m.Length / float64(k.each); k.spacing < least {
		k.spacing = numeric.RoundUp(least, step(sys))
	}
	k.pitch = float64(k.each) * k.spacing
	k.across = 1 / (crop.Of(catalogue.Crowd) * k.spacing)
	f.kinds = append(f.kinds, k)
}

// step is what proposed lengths are round to, in m.
func step(sys unit.System) float64 {
	if sys == unit.US {
		return foot / 100
	}
	return 1e-3
}

// most returns how many plants of a kind a line holds.
func (f *field) most(k *kind) int {
	if f.long < f.medium.Length-near {
		return 0
	}
	return k.each * min(int(math.Floor((f.long-f.medium.Length)/k.pitch+near))+1, longest/k.each)
}

// longest is how many plants a row of a plan may have.
var longest = int(plan.FieldNamed("rows", "plants").Max)

// furthest is how far from the header in m a row's first plant may stand.
var furthest = plan.FieldNamed("rows", "first").Max

// counts returns how many plants of each kind are planted where n are in all: each
// has its share of what was asked, and one more in all takes none from any.
func (f *field) counts(n int) []int {
	have := make([]int, len(f.kinds))
	for range n {
		next := -1
		for i := range f.kinds {
			// The kind of which the smallest share would stand there.
			if k := &f.kinds[i]; have[i] < k.asked && (next < 0 || (have[i]+1)*f.kinds[next].asked < (have[next]+1)*k.asked) {
				next = i
			}
		}
		if next < 0 {
			break
		}
		have[next]++
	}
	return have
}

// fit returns how many plants of each kind find a place: all, or as many as do in
// the same shares, and then of each kind whatever is still left.
func (f *field) fit() []int {
	all := 0
	for i := range f.kinds {
		all += f.kinds[i].asked
	}
	lo, hi := 0, min(all, plan.MaxPlants)+1
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; f.holds(f.counts(mid)) {
			lo = mid
		} else {
			hi = mid
		}
	}
	have := f.counts(lo)
	for n := range f.kinds {
		for have[n] < f.kinds[n].asked && lo < plan.MaxPlants {
			if have[n]++; !f.holds(have) {
				have[n]--
				break
			}
			lo++
		}
	}
	return have
}

// holds says whether so many of each kind find a place.
func (f *field) holds(have []int) bool {
	_, ok := f.after(have)
	return ok
}

// apart gives each kind lines of its own, as few as hold it, and each of them as
// many pieces as the others, or one fewer; it is not ok where there are too few
// lines.
func (f *field) apart(have []int) (list []segment, ok bool) {
	line := 0
	for i := range f.kinds {
		if have[i] == 0 {
			continue
		}
		k := &f.kinds[i]
		most := f.most(k)
		if most == 0 {
			return nil, false
		}
		pieces := (have[i] + k.each - 1) / k.each
		lines := (pieces*k.each + most - 1) / most
		left := have[i]
		for n := range lines {
			here := min(left, (pieces+lines-1-n)/lines*k.each)
			list = append(list, segment{kind: i, plants: here, line: line})
			left -= here
			line++
		}
	}
	return list, line <= f.lines
}

// after lets the kinds follow one another, line after line, so that one may begin
// in the line in which another ends.
func (f *field) after(have []int) (list []segment, ok bool) {
	line, at, here := 0, 0.0, 0
	for i := range f.kinds {
		k := &f.kinds[i]
		begun := false
		for left := have[i]; left > 0; {
			n := min(left, k.each)
			if at+f.medium.Length > f.long+near || here+n > longest || !begun && f.begins+at+f.medium.Length/2 > furthest {
				if at == 0 {
					return nil, false
				}
				line, at, here, begun = line+1, 0, 0, false
				continue
			}
			if !begun {
				list = append(list, segment{kind: i, line: line, at: at})
				begun = true
			}
			list[len(list)-1].plants += n
			left, here, at = left-n, here+n, at+k.pitch
		}
	}
	return list, line < f.lines
}

// planted returns where the plants stand.
func (f *field) planted(have []int) []segment {
	list, ok := f.apart(have)
	if !ok {
		list, _ = f.after(have)
	}
	return list
}
