package propose

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/catalogue"
)

const units = Units

// some returns answers that somebody may give: whole and half, tiny and large.
func some(r *rand.Rand) Answers {
	a := Empty(unit.System(r.IntN(unit.Systems)))
	// between draws from low to high, small numbers as often as large ones.
	between := func(low, high float64) float64 { return low * math.Pow(high/low, r.Float64()) }
	maybe := func(v *float64, x float64) {
		if r.IntN(6) > 0 {
			*v = x
		}
	}
	for range 1 + r.IntN(3) {
		a.Crops = append(a.Crops, Count{r.IntN(len(catalogue.Crops)), int(between(1, 1001))})
	}
	if r.IntN(3) > 0 { // hardly anybody fills a field
		for i := range a.Crops {
			a.Crops[i].Plants = 1 + a.Crops[i].Plants/20
		}
	}
	a.Medium = r.IntN(len(catalogue.Media))
	a.Length, a.Width = between(0.5, 60), between(0.5, 20)
	a.Supply = supplies[r.IntN(len(supplies))].kind
	switch a.Supply {
	case plan.Mains:
		maybe(&a.Static, between(0.3e5, 14e5))
		maybe(&a.TapFlow, between(1.1, 100)/6e4)
	case plan.PumpTwo:
		maybe(&a.Power, between(2, 7000))
		if r.IntN(4) > 0 {
			a.ShutOff, a.MaxFlow = between(0.5, 150), between(1.1, 1000)/6e4
		}
	case plan.GravityTank:
		maybe(&a.TankHeight, between(0.1, 30))
	}
	maybe(&a.Distance, max(0.1, between(0.05, 300)))
	maybe(&a.Rise, r.Float64()*60-20)
	return a
}

// grid returns every kind of each answer beside every other's, in one system of
// units or the other.
func grid() (list []Answers) {
	for medium := range catalogue.Media {
		for i, place := range [][2]float64{{0.5, 0.5}, {4.5, 1.2}, {6, 3}, {60, 20}} {
			for k, crops := range [][]Count{{{0, 1}}, {{1, 10}, {0, 10}}, {{2, 1000}, {7, 40}, {1, 1}}} {
				for n, supply := range supplies {
					a := Empty(unit.System((medium + i + k + n) % unit.Systems))
					a.Crops, a.Medium, a.Length, a.Width = crops, medium, place[0], place[1]
					a.Supply, a.Distance, a.Rise = supply.kind, 8, 0.4
					a.TankHeight = 2
					if a.Supply == plan.PumpTwo {
						a.ShutOff, a.MaxFlow = 25, 40.0/6e4
					}
					list = append(list, a)
				}
			}
		}
	}
	return list
}

func TestEveryAnswerGivesAPlan(t *testing.T) {
	r := rand.New(rand.NewPCG(20261130, 7))
	list := grid()
	for range 200 {
		list = append(list, some(r))
	}
	var verdicts [sheet.Verdicts]int
	full, narrowed, none, plain, zoned := 0, 0, 0, 0, 0
	for i, a := range list {
		p, o := Of(work.New(units, nil), a, Known{})
		whole(t, fmt.Sprintf("answers %d: %+v", i, a), a, p, o)
		verdicts[o.Verdict]++
		count := func(is bool, n *int) {
			if is {
				*n++
			}
		}
		count(total(o.Planned) == total(o.Asked), &full)
		count(o.Room != o.Usual, &narrowed)
		count(o.None, &none)
		count(o.Plain, &plain)
		count(len(p.Zones()) > 1, &zoned)
	}
	t.Logf("%d answers: verdicts %v, all planted %d, narrowed %d, none %d, plain %d, zones %d", len(list), verdicts, full, narrowed, none, plain, zoned)
	for what, n := range map[string]int{"Yes": verdicts[sheet.Yes], "another verdict": len(list) - verdicts[sheet.Yes], "all planted": full, "narrowed": narrowed, "none": none, "plain": plain, "zones": zoned} {
		if n < 5 {
			t.Errorf("%s: %d of %d answers", what, n, len(list))
		}
	}
}

func FuzzAnswers(f *testing.F) {
	f.Add(uint64(1))
	f.Fuzz(func(t *testing.T, seed uint64) {
		a := some(rand.New(rand.NewPCG(seed, 1)))
		p, o := Of(work.New(units, nil), a, Known{})
		whole(t, fmt.Sprintf("%+v", a), a, p, o)
	})
}

// whole says what is wrong with a proposal.
func whole(t *testing.T, name string, a Answers, p *plan.Plan, o Outcome) {
	t.Helper()
	if errs := p.Check(); len(errs) > 0 {
		t.Fatalf("%s\nis no plan: %v", name, errs)
	}
	s := sheet.Answer(p)
	if s.Verdict != o.Verdict {
		t.Errorf("%s\nis said to be %d, and is %d: %v", name, o.Verdict, s.Verdict, s.Findings)
	}
	if o.Verdict != sheet.Yes && len(o.Fixes) == 0 && !o.Cut {
		t.Errorf("%s\nverdict %d, and nothing says what would help: %+v, cut %v", name, o.Verdict, s.Findings, o.Cut)
	}
	for _, f := range s.Findings {
		switch f.Kind {
		case sheet.NarrowPath, sheet.NearWall, sheet.InTheDoor, sheet.OutsidePlace, sheet.SmallTank, sheet.NoFilter, sheet.NoBackflow, sheet.CoarseFilter:
			if !o.None || f.Kind != sheet.OutsidePlace {
				t.Errorf("%s\nfinds %v: %+v", name, f.Kind, f)
			}
		}
	}
	power := p.Supply.Power
	if p.Supply.Kind == plan.PumpTwo {
		power = p.Supply.Label
	}
	for what, v := range map[string][2]float64{
		"length": {a.Length, p.Place.Length}, "width": {a.Width, p.Place.Width}, "static": {a.Static, p.Supply.Static}, "tap flow": {a.TapFlow, p.Supply.TapFlow},
		"shut-off": {a.ShutOff, p.Supply.ShutOff}, "greatest flow": {a.MaxFlow, p.Supply.MaxFlow}, "power": {a.Power, power},
		"medium": {float64(a.Medium), float64(p.Rows[0].Medium)}, "units": {float64(a.Units), float64(p.Units)},
	} {
		if v[0] != plan.Unset && v[0] != v[1] {
			t.Errorf("%s\n%s: %v was answered, and %v is planned", name, what, v[0], v[1])
		}
	}
	flow := 0.0
	for i := range p.Rows {
		flow += float64(p.Rows[i].Plants) * p.Emitters[0].Flow
	}
	if p.Filter.Rated < flow*(1-1e-9) {
		t.Errorf("%s\nthe filter is for %v, and all plants take %v", name, p.Filter.Rated, flow)
	}
	planted := map[int]int{}
	for i := range p.Rows {
		planted[p.Rows[i].Crop] += p.Rows[i].Plants
	}
	asked := map[int]int{}
	for _, c := range a.Crops {
		asked[c.Crop] += c.Plants
	}
	if len(asked) == 0 {
		return
	}
	for _, c := range o.Planned {
		if planted[c.Crop] != c.Plants {
			t.Errorf("%s\nplants %d of crop %d, and says %d", name, planted[c.Crop], c.Crop, c.Plants)
		}
	}
	n, all := total(o.Planned), total(o.Asked)
	sum := 0
	for _, n := range asked {
		sum += n
	}
	if all != sum || len(planted) != len(o.Planned) {
		t.Errorf("%s\nis said to ask for %d, of %v", name, all, planted)
	}
	if a.Medium < 0 {
		return
	}
	stands(t, name, p, o)
	if o.None {
		if n != 1 {
			t.Errorf("%s\nno plant finds a place, and %d are planned", name, n)
		}
		return
	}
	// All are planted, or of each crop that is short one more finds no place.
	var order []int
	for _, c := range o.Asked {
		order = append(order, c.Crop)
	}
	for _, crop := range order {
		if planted[crop] > asked[crop] {
			t.Errorf("%s\nplants %d of crop %d", name, planted[crop], crop)
		}
		if planted[crop] == asked[crop] || n == plan.MaxPlants {
			continue
		}
		more := map[int]int{}
		for c, n := range planted {
			more[c] = n
		}
		more[crop]++
		if finds(&a, p, order, more) {
			t.Errorf("%s\nplants %v of %v, and crop %d has room for one more", name, planted, asked, crop)
		}
	}
	if !finds(&a, p, order, planted) {
		t.Errorf("%s\nplants %v, which do not fit", name, planted)
	}
}

// stands looks at each piece of the medium, from the plan alone: within the place
// and its margin, out of the door's way, and with the path free to the next line.
func stands(t *testing.T, name string, p *plan.Plan, o Outcome) {
	t.Helper()
	const slack = 1e-6
	type piece struct{ x0, x1, y0, y1 float64 }
	var pieces []piece
	var lines []float64
	y := 0.0
	for i := range p.Rows {
		r := &p.Rows[i]
		m := &catalogue.Media[r.Medium]
		if y += r.Gap; i == 0 || r.Gap > 0 {
			lines = append(lines, y)
		}
		for n := 0; n < r.Plants; n += r.PerPiece {
			middle := r.First + (float64(n)+float64(r.PerPiece-1)/2)*r.Spacing
			pieces = append(pieces, piece{middle - m.Length/2, middle + m.Length/2, y - m.Width/2, y + m.Width/2})
		}
	}
	m := &catalogue.Media[p.Rows[0].Medium]
	for i := 1; i < len(lines); i++ {
		if free := lines[i] - lines[i-1] - m.Width; free < p.Place.Path-slack {
			t.Errorf("%s\nlines %d and %d leave %v", name, i, i+1, free)
		}
	}
	if o.None {
		return
	}
	for i, b := range pieces {
		in := p.Place.Margin - slack
		if b.x0 < in || b.y0 < in || b.x1 > p.Place.Length-in || b.y1 > p.Place.Width-in {
			t.Fatalf("%s\npiece %d stands at %+v of %+v", name, i, b, p.Place)
		}
		if b.x0 < p.Place.Door-slack {
			t.Fatalf("%s\npiece %d stands in the way in", name, i)
		}
		if i > 0 && b.y0 == pieces[i-1].y0 && b.x0 < pieces[i-1].x1-slack {
			t.Fatalf("%s\npieces %d and %d stand in one another: %+v, %+v", name, i, i+1, pieces[i-1], b)
		}
	}
}

// finds says whether so many plants find a place, counted anew: each line is cut
// into the crops' pieces, one after another, in whole tenths of a millimetre.
func finds(a *Answers, p *plan.Plan, order []int, want map[int]int) bool {
	fine := func(m float64) int { return int(math.Round(m * 1e6)) }
	m := catalogue.Media[a.Medium]
	margin, door, path := fine(p.Place.Margin), fine(p.Place.Door), fine(p.Place.Path)
	wide := fine(a.Width) - 2*margin - fine(m.Width)
	room := fine(a.Length) - max(margin, door) - margin
	if wide < 0 {
		return false
	}
	lines := 60
	if apart := path + fine(m.Width); wide/apart+1 < lines {
		lines = wide/apart + 1
	}
	if lines > 61-len(order) {
		lines = 61 - len(order)
	}
	total := 0
	for _, n := range want {
		total += n
	}
	if total > 4000 {
		return false
	}
	line, at, here := 1, 0, 0
	for _, crop := range order {
		each, spacing := 1, fine(catalogue.Crops[crop].Of(catalogue.Spacing))
		if m.Along {
			each = int(catalogue.Crops[crop].Of(catalogue.PerSlab))
		}
		if spacing*each < fine(m.Length) {
			grain := 1000.0
			if a.Units == unit.US {
				grain = 3048
			}
			spacing = int(math.Ceil(float64(fine(m.Length))/float64(each)/grain-1e-6) * grain)
		}
		first := true
		for left := want[crop]; left > 0; {
			n := min(each, left)
			for {
				begins := max(margin, door) + at + fine(m.Length)/2
				if at+fine(m.Length) <= room && here+n <= 400 && (!first || begins <= 30e6) {
					break
				}
				if at == 0 {
					return false
				}
				line, at, here, first = line+1, 0, 0, true
			}
			left, at, here, first = left-n, at+each*spacing, here+n, false
		}
	}
	return line <= lines
}
