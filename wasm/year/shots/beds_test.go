package shots

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/season"
)

// apart is a year of two plantings, the second in its row long after the first
// is cleared, and one that stands in no row before both.
func apart(t *testing.T) *Year {
	t.Helper()
	p := plan.Default()
	plan.SectionNamed("rows").Resize(p, 2)
	p.Rows[0].Crop, p.Rows[1].Crop = 11, 1
	y := year(p)
	if len(y.Season.Plantings) != 2 {
		t.Fatalf("%d plantings", len(y.Season.Plantings))
	}
	early, late := &y.Season.Plantings[0], &y.Season.Plantings[1]
	for k := range early.Dates {
		early.Dates[k], late.Dates[k] = day.Of(2027, 5, 10), day.Of(2027, 7, 20)
	}
	early.Dates[season.End], late.Dates[season.End] = day.Of(2027, 6, 7), day.Of(2027, 8, 12) // 28 and 23 days
	none := *early
	none.Rows, none.Plants = nil, 0
	for k := range none.Dates {
		none.Dates[k] -= 40
	}
	y.Season.Plantings = append(y.Season.Plantings, none)
	return y
}

// By hand: fortnights from 10 May on, of which those from 7 June to 18 July have
// no plants; the last ends on 12 August.
func TestLinesByHand(t *testing.T) {
	y := apart(t)
	var asked []day.Day
	y.Sun = func(d day.Day) dose.Sunlit {
		asked = append(asked, d)
		return dose.Of(6*hour+float64(d-day.Of(2027, 5, 1)), 21*hour)
	}
	c := y.Card()
	on := func(m, d int) day.Day { return day.Of(2027, m, d) }
	want := []struct {
		from day.Day
		days int
		sun  day.Day // in the middle, or the last day of a short one
	}{{on(5, 10), 14, on(5, 17)}, {on(5, 24), 14, on(5, 31)}, {on(7, 19), 14, on(7, 26)}, {on(8, 2), 10, on(8, 9)}}
	if len(c.Lines) != len(want) {
		t.Fatalf("%d lines, want %d", len(c.Lines), len(want))
	}
	for i, w := range want {
		l := &c.Lines[i]
		if l.From != w.from || l.Days != w.days || l.Lit != y.Sun(w.sun) || len(l.Beds) != 1 {
			t.Errorf("line %d is %d days from %s, %d beds, the sun %+v; want %d from %s, the sun of %s", i, l.Days, l.From.ISO(), len(l.Beds), l.Lit, w.days, w.from.ISO(), w.sun.ISO())
		}
	}
	// Of a last line that ends before its middle, the last day.
	y.Season.Plantings[1].Dates[season.End] = on(8, 6)
	c = y.Card()
	if l := &c.Lines[3]; l.Days != 4 || l.Lit != y.Sun(on(8, 5)) {
		t.Errorf("of four days the sun is %+v", l.Lit)
	}
	if slices.Max(asked) > on(8, 9) {
		t.Errorf("the sun of %s was asked for", slices.Max(asked).ISO())
	}
	// The line that holds the day of greatest need, its first and last day included.
	for most, peak := range map[day.Day]int{on(5, 10): 0, on(5, 23): 0, on(5, 24): 1, on(7, 19): 2, on(8, 1): 2, on(8, 2): 3, on(8, 5): 3} {
		if y.Most = most; y.Card().Peak != peak {
			t.Errorf("most on %s: line %d, want %d", most.ISO(), y.Card().Peak, peak)
		}
	}
	y.Plan.Timer.Every = plan.Week
	if c := y.Card(); c.Lines[0].Days != 7 || c.Lines[1].From != on(5, 17) || c.Lines[0].Lit != y.Sun(on(5, 13)) || len(c.Lines) != 4+3 {
		t.Errorf("%d lines of a week, the first %+v", len(c.Lines), c.Lines[0])
	}
}

// A bed has the greatest use of the days on which it stands within its line, and
// not less under a hotter sky.
func TestUseOfABed(t *testing.T) {
	y := apart(t)
	y.Use = func(g int, d day.Day) [Skies]float64 {
		dates := &y.Season.Plantings[g].Dates
		if d < dates[season.Slab] || d >= dates[season.End] {
			return [Skies]float64{99, 99, 99, 99} // nobody asks for these
		}
		u := litre * (1 + float64(d-dates[season.Slab])) // a litre more each day
		return [Skies]float64{u / 2, u, u * 0.8, u * 1.5}
	}
	c := y.Card()
	// 14 and 28 days of the first; of the second, planted out on 20 July, the 13
	// days to 1 August, and all 23.
	for i, want := range []float64{14, 28, 13, 23} {
		want *= litre
		if got := c.Lines[i].Beds[0].Use; got != [Skies]float64{want / 2, want, want, want * 1.5} {
			t.Errorf("line %d: %v m³, want up to %g", i, got, want)
		}
	}
}

// A bed is young on lines that end up to 14 days after planting out, and lives on
// its block then, or on its medium where that is smaller.
func TestYoungBeds(t *testing.T) {
	y := apart(t)
	late := &y.Season.Plantings[1]
	for _, c := range []struct {
		out   int // July
		young bool
	}{{18, false}, {19, true}, {20, true}} { // the line ends with 1 August, so on the 15th, 14th or 13th day
		late.Dates[season.Slab] = day.Of(2027, 7, c.out)
		lines := y.Card().Lines // planted out on the 18th it stands in the line before, too
		l := lines[slices.IndexFunc(lines, func(l Line) bool { return l.From == day.Of(2027, 7, 19) })]
		b := &l.Beds[0]
		root := Root(&y.Plan.Rows[1])
		easy := root * catalogue.Media[y.Plan.Rows[1].Medium].Easy
		if c.young {
			root, easy = min(root, catalogue.BlockVolume), min(easy, catalogue.BlockEasy)
		}
		if b.Young != c.young || math.Abs(b.Root-root) > 1e-15 || math.Abs(b.Easy-easy) > 1e-15 {
			t.Errorf("planted out on %d July, from %s on: %+v, want young %t, %g m³ of which %g are easy", c.out, l.From.ISO(), b, c.young, root, easy)
		}
	}
	if root := Root(&y.Plan.Rows[1]); root <= catalogue.BlockVolume {
		t.Errorf("a plant has %g m³, and its block as much: the test tests nothing", root)
	}
	// Of less medium than a block.
	late.Dates[season.Slab] = day.Of(2027, 7, 20)
	y.Plan.Rows[1].PerPiece = 1000
	b := y.Card().Lines[2].Beds[0]
	if root := Root(&y.Plan.Rows[1]); !b.Young || b.Root != root || root >= catalogue.BlockVolume || b.Easy != root*catalogue.Media[b.Medium].Easy {
		t.Errorf("in %g m³: %+v", root, b)
	}
}

// Of rows that differ a bed has the least flow, the smallest medium, and the mean
// flow by plants.
func TestBedOfRowsThatDiffer(t *testing.T) {
	p := plan.Default()
	plan.SectionNamed("rows").Resize(p, 4)
	for i := range p.Rows {
		p.Rows[i].Crop, p.Rows[i].Plants, p.Rows[i].Medium, p.Rows[i].PerPiece = 1, 10*(i+1), p.Rows[0].Medium, 3
		p.Rows[i].Zone = plan.MaxZones
	}
	p.Rows[3].Zone = 1
	p.Rows[0].PerPiece, p.Rows[1].Medium, p.Rows[1].PerPiece = 2, plan.Bucket, 60
	y := year(p)
	for i, mean := range []float64{4, 3, 6, 5} {
		y.Flows[i] = Flow{Zone: p.Rows[i].Zone, Mean: mean, Least: []float64{3, 2.5, 2, 5}[i]}
	}
	if a, b, c := Root(&p.Rows[0]), Root(&p.Rows[1]), Root(&p.Rows[2]); !(b < c && c < a) {
		t.Fatalf("the rows have %g, %g and %g m³ a plant: the test tests nothing", a, b, c)
	}
	planted := make([]bool, 4)
	b, ok := y.bed(plan.MaxZones, 0, planted)
	// (10 · 4 + 20 · 3 + 30 · 6)/60 = 280/60.
	want := Root(&p.Rows[1])
	if !ok || b.Zone != plan.MaxZones || b.Plants != 60 || math.Abs(b.Mean-28.0/6) > 1e-12 || b.Least != 2 || !slices.Equal(b.Rows, []int{0, 1, 2}) ||
		b.Medium != plan.Bucket || b.Root != want || b.Easy != want*catalogue.Media[plan.Bucket].Easy || !slices.Equal(planted, []bool{true, true, true, false}) {
		t.Errorf("%+v, %t, rows %v", b, ok, planted)
	}
	if b, ok := y.bed(2, 0, planted); ok {
		t.Errorf("in a zone without rows: %+v", b)
	}
	// Both zones have beds, in their order, and the lowest flow may be the first's.
	l := y.Card().Lines[0]
	if len(l.Beds) != 2 || l.Beds[0].Zone != 1 || l.Beds[1].Zone != plan.MaxZones || len(l.Bare) != 0 {
		t.Errorf("%+v, bare %v", l.Beds, l.Bare)
	}
	y.Flows[0].Least = 1
	if b, _ := y.bed(plan.MaxZones, 0, planted); b.Least != 1 {
		t.Errorf("least %g, want that of the first row, 1", b.Least)
	}
	p.Rows[0].PerPiece = 1e6
	if b, _ := y.bed(plan.MaxZones, 0, planted); b.Medium != p.Rows[0].Medium || b.Root != Root(&p.Rows[0]) {
		t.Errorf("the smallest medium is that of the first row: %+v", b)
	}
	// By definition, a piece's volume over the plants that share it.
	if got, want := Root(&plan.Row{Medium: plan.Bucket, PerPiece: 4}), catalogue.Media[plan.Bucket].Volume/4; got != want {
		t.Errorf("a quarter of a bucket is %g m³, want %g", got, want)
	}
}

// Rows of a zone that is not watered are not bare.
func TestOnlyRowsOfWateredZonesAreBare(t *testing.T) {
	y := apart(t)
	y.Flows[1].Zone = 2
	for i, l := range y.Card().Lines {
		if len(l.Bare) != 0 {
			t.Errorf("line %d: bare rows %v, and their zone is not watered", i, l.Bare)
		}
	}
	y.Flows[1].Zone = 1
	for i, l := range y.Card().Lines {
		if want := []int{1, 1, 0, 0}[i]; len(l.Bare) != 1 || l.Bare[0] != want {
			t.Errorf("line %d: bare rows %v, want %d", i, l.Bare, want)
		}
	}
}
