package plan

import (
	"math"
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// A Meaning is how the numbers of a [Spread] are meant.
type Meaning uint8

const (
	Within   Meaning = iota // the range itself, in the metric unit of the page; what is assumed beyond it widens it
	Added                   // to be added to what is assumed, in that unit
	Times                   // to be multiplied with it
	Meanings = iota
)

// A Spread is what a value may really be while it is assumed. Why it is so wide
// stands in the list of assumptions of package method.
type Spread struct {
	Path      string // in all records
	As        Meaning
	Low, High float64

	// unproven is the share by which a value that was typed, and not measured, may
	// be off as well: few read a gauge where they are asked for a pressure, and a
	// tap gives at noon in July what it does not give on an evening in March. 0
	// where what is typed is known.
	unproven float64

	// bound keeps the range within the relations to other values.
	bound func(p *Plan, i int, low, high float64) (float64, float64)
}

// Spreads are those of all fields that can turn an answer. They must not be
// changed.
var Spreads = []Spread{
	{Path: "place.water", As: Within, Low: 5, High: 30},
	{Path: "supply.shut-off", As: Times, Low: 0.8, High: 1.1},
	{Path: "supply.max-flow", As: Times, Low: 0.8, High: 1.1},
	{Path: "supply.static", As: Within, Low: 1.5, High: 6, unproven: 0.3},
	{Path: "supply.tap-flow", As: Within, Low: 6, High: 40, unproven: 0.3},
	{Path: "supply.regulator", As: Times, Low: 0.85, High: 1.15},
	{Path: "supply.devices", As: Within, Low: 0, High: 0.8},
	{Path: "points.flow", As: Times, Low: 0.8, High: 1.1, bound: func(p *Plan, i int, low, high float64) (float64, float64) {
		return inProportion(p, i, low, high, metric(unit.Flow, maxFlow), func(at Point) float64 { return at.Flow })
	}},
	{Path: "points.head", As: Times, Low: 0.8, High: 1.1, bound: func(p *Plan, i int, low, high float64) (float64, float64) {
		return inProportion(p, i, low, high, metric(unit.Head, maxHead), func(at Point) float64 { return at.Head })
	}},
	{Path: "runs.length", As: Times, Low: 0.5, High: 2},
	{Path: "runs.rise", As: Added, Low: -3, High: 12},
	{Path: "runs.bore", As: Times, Low: 0.9, High: 1.1},
	{Path: "runs.elbows", As: Added, Low: -2, High: 6},
	{Path: "runs.tees", As: Added, Low: 0, High: 4},
	{Path: "runs.valves", As: Added, Low: -1, High: 2},
	{Path: "runs.checks", As: Added, Low: 0, High: 1},
	{Path: "filter.rated", As: Times, Low: 0.5, High: 2},
	{Path: "filter.clean", As: Times, Low: 0.3, High: 3},
	{Path: "filter.fouling", As: Times, Low: 0.5, High: 2},
	{Path: "header.bore", As: Times, Low: 0.9, High: 1.1},
	{Path: "emitters.flow", As: Times, Low: 0.93, High: 1.07, bound: func(p *Plan, i int, low, high float64) (float64, float64) {
		// No more than its micro tubing lets through at so little loss.
		e := p.Emitters[i]
		for e.Flow = high; e.Micro > mostMicro(&e) && e.Flow > p.Emitters[i].Flow; e.Flow -= (high - p.Emitters[i].Flow) / 16 {
		}
		return low, max(e.Flow, p.Emitters[i].Flow)
	}},
	{Path: "emitters.opens", As: Times, Low: 0.5, High: 1.5, bound: func(p *Plan, i int, low, high float64) (float64, float64) {
		e := &p.Emitters[i]
		return max(low, e.Closes), min(high, e.Lowest)
	}},
	{Path: "emitters.lowest", As: Times, Low: 0.5, High: 1.5, bound: func(p *Plan, i int, low, high float64) (float64, float64) {
		e := &p.Emitters[i]
		if compensating(p, i) {
			low = max(low, e.Opens)
		}
		if flushing(p, i) {
			low = max(low, e.Regulates)
		}
		return max(low, leastForMicro(e)), min(high, math.Nextafter(e.Highest, 0))
	}},
	{Path: "emitters.highest", As: Times, Low: 0.75, High: 1.5, bound: func(p *Plan, i int, low, high float64) (float64, float64) {
		return max(low, math.Nextafter(p.Emitters[i].Lowest, math.Inf(1))), high
	}},
	{Path: "emitters.nominal", As: Times, Low: 0.8, High: 1.2, bound: func(p *Plan, i int, low, high float64) (float64, float64) {
		return max(low, leastForMicro(&p.Emitters[i])), high
	}},
	{Path: "emitters.exponent", As: Added, Low: -0.1, High: 0.1, bound: func(p *Plan, i int, low, high float64) (float64, float64) {
		least, most, _ := exponents(p.Emitters[i].Kind)
		return max(low, least), min(high, most)
	}},
	{Path: "emitters.cv", As: Within, Low: 2, High: 7},
	{Path: "emitters.gush", As: Times, Low: 0.5, High: 2},
	{Path: "emitters.regulates", As: Times, Low: 0.5, High: 1.5, bound: func(p *Plan, i int, low, high float64) (float64, float64) {
		return low, min(high, p.Emitters[i].Lowest)
	}},
	{Path: "rows.spacing", As: Times, Low: 0.8, High: 1.2, bound: func(p *Plan, i int, low, high float64) (float64, float64) {
		// Nobody plants on beyond the end of the place.
		r := &p.Rows[i]
		if n := float64(r.Plants - 1); n > 0 {
			high = min(high, (p.Place.Length-r.First)/n)
		}
		return low, high
	}},
	{Path: "rows.bore", As: Times, Low: 0.9, High: 1.1},
	{Path: "rows.height", As: Added, Low: -0.5, High: 0.5},
	{Path: "rows.slope", As: Added, Low: -3, High: 3},
}

// inProportion keeps the points of a curve in proportion where the greatest of
// them comes to the limit.
func inProportion(p *Plan, i int, low, high, most float64, of func(Point) float64) (float64, float64) {
	greatest := 0.0
	for _, at := range p.Supply.Points {
		greatest = max(greatest, of(at))
	}
	if greatest > 0 {
		high = min(high, of(p.Supply.Points[i])*max(1, most/greatest))
	}
	return low, high
}

// spans gives each field its range, and how it is found on the spot.
func spans(all []*Field) {
	for k := range Spreads {
		sp := &Spreads[k]
		f := in(all, sp.Path)
		f.Unproven = sp.unproven > 0
		f.Range = func(p *Plan, i int) (low, high float64) { return sp.around(f, p, i) }
	}
	for i := range measures {
		in(all, measures[i].path).Measure = measures[i].text
	}
}

// in returns the field of a path of all records, before there is a list to look
// it up in; one that nobody sees for a path of no field, which a test names.
func in(all []*Field, path string) *Field {
	section, name, _ := strings.Cut(path, ".")
	for _, f := range all {
		if f.Section == section && f.Name == name {
			return f
		}
	}
	return new(Field)
}

// around is the range around the value in record i, which is in it.
func (sp *Spread) around(f *Field, p *Plan, i int) (low, high float64) {
	v := f.Value(p, i)
	inner := func(x float64) float64 { return metric(f.Kind, x) }
	if f.Type == Whole {
		inner = func(x float64) float64 { return x }
	}
	switch o := p.Origin(f, i); {
	case sp.unproven > 0 && o == Typed:
		low, high = v*(1-sp.unproven), v*(1+sp.unproven)
	case sp.As == Within:
		low, high = inner(sp.Low), inner(sp.High)
	case sp.As == Added:
		low, high = v+inner(sp.Low), v+inner(sp.High)
	default:
		low, high = v*sp.Low, v*sp.High
	}
	low, high = max(low, f.Min), min(high, f.Max)
	if sp.bound != nil {
		low, high = sp.bound(p, i, low, high)
	}
	return min(low, v), max(high, v)
}

// Doubted reports whether the value in record i is not known, though it bears on
// the plan and may be another: it is assumed or looked up, or typed where only a
// measurement is proof; and then what it may really be.
func (f *Field) Doubted(p *Plan, i int) (low, high float64, doubted bool) {
	if f.Range == nil || !f.Applies(p, i) {
		return 0, 0, false
	}
	switch p.Origin(f, i) {
	case Measured:
		return 0, 0, false
	case Typed:
		if !f.Unproven {
			return 0, 0, false
		}
	}
	low, high = f.Range(p, i)
	return low, high, low < high
}

const (
	tape     words.Text = "Measure it with a tape."
	calliper words.Text = "Measure its inside with a calliper."
	printed  words.Text = "Read what is printed on it, or measure its inside with a calliper."
	count    words.Text = "Count them."
	hose     words.Text = "Fill a clear hose with water and hold its ends at both places: the water stands level in it."
	throttle words.Text = "Shut a valve behind the pump step by step: at each, read a gauge before the valve and time a bucket behind it."
	apartOf  words.Text = "Read a gauge before it and one behind it while water flows: what they differ by."
)

// measures are how values are found on the spot, by path in all records.
var measures = [...]struct {
	path string
	text words.Text
}{
	{"place.length", tape},
	{"place.width", tape},
	{"place.water", "Hold a thermometer into the water where it leaves the supply."},
	{"supply.tank", "Count the buckets of known size that fill it."},
	{"supply.shut-off", "Shut a valve behind the pump for a moment and read a gauge before it."},
	{"supply.max-flow", "Let the pump run into a bucket of known size, without tubing, and take the time."},
	{"supply.static", "Screw a gauge to the tap and open it, with every other tap shut, at the hour at which you will water."},
	{"supply.tap-flow", "Take the time in which the wide open tap fills a bucket of known size, at the hour at which you will water."},
	{"supply.regulator", "Read a gauge behind it while water flows."},
	{"supply.devices", apartOf},
	{"points.flow", throttle},
	{"points.head", throttle},
	{"runs.length", "Lay a tape, or a string, along the way."},
	{"runs.rise", hose},
	{"runs.tube", printed},
	{"runs.bore", calliper},
	{"runs.elbows", count},
	{"runs.tees", count},
	{"runs.valves", count},
	{"runs.checks", count},
	{"filter.clean", apartOf},
	{"filter.opening", "Read it off the screen or the label."},
	{"header.tube", printed},
	{"header.bore", calliper},
	{"emitters.flow", "Catch what one gives in six minutes, and take it ten times."},
	{"emitters.opens", "Raise the pressure slowly and read a gauge at the row when the first one drips."},
	{"emitters.closes", "Let the pressure fall slowly and read a gauge at the row when the last one stops."},
	{"emitters.cv", "Catch the water of twenty new ones at one place for the same time: the spread of the amounts, as a share of their mean."},
	{"emitters.micro", tape},
	{"rows.plants", count},
	{"rows.spacing", "Measure from the first plant to the last, and divide by one less than there are plants."},
	{"rows.first", tape},
	{"rows.gap", tape},
	{"rows.per-piece", count},
	{"rows.per-plant", count},
	{"rows.tube", printed},
	{"rows.bore", calliper},
	{"rows.height", hose},
	{"rows.slope", "Find how much higher its far end is with a clear hose full of water, and divide by the length."},
	{"timer.programmes", "Set as many as it takes."},
}
