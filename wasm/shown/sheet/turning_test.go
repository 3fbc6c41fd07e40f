package sheet_test

import (
	"math"
	"slices"
	"testing"

	"evenrow/build/hostile"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// verdict works a plan out with other values of one field, each by itself: on no
// path that looks for turns. A curve is stretched as a whole.
func verdict(t *testing.T, p *plan.Plan, f *plan.Field, records []int, v float64) sheet.Verdict {
	t.Helper()
	q := p.Clone()
	for _, i := range records {
		x := v
		if f.Section == "points" {
			greatest := 0.0
			for k := range p.Supply.Points {
				greatest = max(greatest, f.Value(p, k))
			}
			x = f.Value(p, i) * (v / greatest)
		}
		f.SetValue(q, i, x)
	}
	if errs := q.Check(); len(errs) > 0 {
		t.Fatalf("%s at %g: %v", plan.Path(f, records[0]), v, errs[0])
	}
	return sheet.AnswerWithin(0, q, nil).Verdict
}

// rested are plans of which not everything is known: the examples as they are and
// as if nothing had been told, and drawn ones.
func rested(drawn int) (list []*plan.Plan) {
	for _, x := range plan.Examples() {
		proposed := x.Plan.Clone()
		proposed.Propose()
		list = append(list, x.Plan, proposed)
	}
	for n := range drawn {
		p, _ := hostile.Plan(hostile.Numbered(61, n))
		list = append(list, p)
		p = hostile.Ordinary(hostile.Numbered(62, n))
		p.Propose()
		list = append(list, p)
		p = hostile.Uneven(hostile.Numbered(63, n))
		p.Propose()
		list = append(list, p)
	}
	return list
}

func turned(p *plan.Plan) *sheet.Sheet {
	s := sheet.AnswerWithin(0, p, nil)
	s.ExploreWithin(1<<40, sheet.Turning)
	return s
}

// On the two sides of each value at which the answer is said to turn it is
// another, on the near side that which it is; and the first of the list turns
// soonest.
func TestWhatTurnsTheAnswerTurnsIt(t *testing.T) {
	to := map[[2]sheet.Verdict]int{}
	fields := map[string]int{}
	for n, p := range rested(25) {
		s := turned(p)
		last := 0.0
		for _, turn := range s.Rest.Turns {
			path := plan.Path(turn.Field, turn.Records[0])
			if turn.Margin < last || turn.Margin > 1 {
				t.Errorf("plan %d: %s turns at a share of %g of its range, behind %g", n, path, turn.Margin, last)
			}
			last = turn.Margin
			least := math.Inf(1)
			if turn.From != turn.Field.Value(p, turn.Records[0]) {
				t.Errorf("plan %d: %s is %g, and %g is told", n, path, turn.Field.Value(p, turn.Records[0]), turn.From)
			}
			for side, e := range turn.Ends {
				if !e.Turns {
					continue
				}
				end := [...]float64{turn.Low, turn.High}[side]
				share := (e.At - turn.From) / (end - turn.From)
				least = min(least, share)
				fields[turn.Field.PathOfAll()]++
				to[[2]sheet.Verdict{s.Verdict, e.To}]++
				// A step is at most a twentieth of the way, or one of what is counted.
				step := math.Abs(e.At-e.Still) / math.Abs(end-turn.From)
				near := (e.Still - turn.From) / (end - turn.From)
				if !(0 <= near && near < share && share <= 1) || step > 0.0501 && math.Abs(e.At-e.Still) != 1 {
					t.Errorf("plan %d: %s from %g to %g is still at %g and turns at %g", n, path, turn.From, end, e.Still, e.At)
				}
				if got := verdict(t, p, turn.Field, turn.Records, e.Still); got != s.Verdict {
					t.Errorf("plan %d: %s at %g: %d, want still %d", n, path, e.Still, got, s.Verdict)
				}
				if got := verdict(t, p, turn.Field, turn.Records, e.At); got != e.To || got == s.Verdict {
					t.Errorf("plan %d: %s at %g: %d, want %d and not %d", n, path, e.At, got, e.To, s.Verdict)
				}
				// What is printed is one of the two, and short.
				said := e.Said(s.Verdict)
				if text := unit.Exact(turn.Field.Kind, p.Units, said); said != turn.From && said != end && len(text) > 9 {
					t.Errorf("plan %d: %s is printed as %s", n, path, text)
				}
			}
			if math.Abs(least-turn.Margin) > 1e-12 {
				t.Errorf("plan %d: %s turns at %g of its range, and %g is told", n, path, least, turn.Margin)
			}
		}
	}
	for _, way := range [][2]sheet.Verdict{{sheet.Yes, sheet.Nearly}, {sheet.Nearly, sheet.Yes}, {sheet.Nearly, sheet.No}, {sheet.No, sheet.Nearly}} {
		if to[way] == 0 {
			t.Errorf("no answer turns from %d to %d", way[0], way[1])
		}
	}
	if len(fields) < 12 {
		t.Errorf("only %d fields turn an answer", len(fields))
	}
}

// What is not said to turn the answer does not, anywhere in its range. Everything
// that is doubted is one or the other, and nothing else is.
func TestWhatCannotTurnTheAnswerDoesNot(t *testing.T) {
	steady, whole := 0, 0
	for n, p := range rested(9) {
		s := turned(p)
		if s.Verdict == sheet.Cannot || s.Rest.Untested > 0 { // and so it is not told of which
			continue
		}
		whole++
		told := map[string]bool{}
		for _, turn := range s.Rest.Turns {
			for _, i := range turn.Records {
				told[plan.Path(turn.Field, i)] = true
			}
		}
		things := len(s.Rest.Turns)
		for _, f := range plan.Fields() {
			alike := map[float64][]int{}
			for i := range plan.SectionNamed(f.Section).Records(p) {
				_, _, doubted := f.Doubted(p, i)
				switch {
				case told[plan.Path(f, i)] && !doubted && f.Section != "points": // which are one thing
					t.Errorf("plan %d: %s is known, and is said to turn the answer", n, plan.Path(f, i))
				case f.Section == "points":
					if doubted && !told[plan.Path(f, i)] {
						alike[0] = []int{0, 1, 2}
						for k := 3; k < len(p.Supply.Points); k++ {
							alike[0] = append(alike[0], k)
						}
					}
				case doubted && !told[plan.Path(f, i)]:
					alike[f.Value(p, i)] = append(alike[f.Value(p, i)], i)
				}
			}
			for v, records := range alike {
				things++
				low, high := math.Inf(-1), math.Inf(1)
				if f.Section == "points" {
					slices.SortFunc(records, func(a, b int) int { return int(math.Copysign(1, f.Value(p, b)-f.Value(p, a))) })
					v = f.Value(p, records[0])
					low, high = f.Range(p, records[0])
				}
				for _, i := range records {
					if l, h := f.Range(p, i); f.Section != "points" {
						low, high = max(low, l), min(high, h)
					}
				}
				for _, share := range []float64{-1, -0.61, -0.29, -0.1, 0.1, 0.29, 0.61, 1} {
					x := v + share*(high-v)
					if share < 0 {
						x = v - share*(low-v)
					}
					if f.Type == plan.Whole {
						x = math.Round(x)
					}
					steady++
					if got := verdict(t, p, f, records, x); got != s.Verdict {
						t.Errorf("plan %d: %s at %g, from %g in %g to %g: %d, want still %d", n, plan.Path(f, records[0]), x, v, low, high, got, s.Verdict)
					}
				}
			}
		}
		if things != len(s.Rest.Turns)+s.Rest.Steady || s.Rest.Untested != 0 {
			t.Errorf("plan %d: %d things are doubted, and %d turn the answer, %d do not, %d were not tried", n, things, len(s.Rest.Turns), s.Rest.Steady, s.Rest.Untested)
		}
	}
	if steady < 1000 || whole < 15 {
		t.Errorf("only %d values of %d plans were tried", steady, whole)
	}
}

// A plain yes stands where nothing that is assumed can turn it, and nowhere else.
func TestWhenTheAnswerIsSure(t *testing.T) {
	p := plan.Default()
	p.Propose()
	rise := plan.FieldNamed("runs", "rise")
	s := turned(p)
	if s.Verdict != sheet.Yes || s.Sure() || len(s.Rest.Turns) == 0 || s.Rest.Turns[0].Field != rise {
		t.Fatalf("%d, sure %v, %+v", s.Verdict, s.Sure(), s.Rest)
	}
	if fresh := sheet.Answer(p); fresh.Sure() || !fresh.Doubted() {
		t.Error("it is sure before anybody looked")
	}
	// The one thing measured, nothing is left.
	p.SetOrigin(rise, 0, plan.Measured)
	if s := turned(p); !s.Sure() || len(s.Rest.Turns) != 0 || s.Rest.Steady == 0 {
		t.Errorf("with the rise measured: %+v", s.Rest)
	}
	// With everything measured there is nothing to look at.
	for _, f := range plan.Fields() {
		for i := range plan.SectionNamed(f.Section).Records(p) {
			p.SetOrigin(f, i, plan.Measured)
		}
	}
	if s := sheet.Answer(p); !s.Sure() || s.Doubted() {
		t.Error("everything is measured, and it is not sure")
	}
	if s := turned(p); !s.Sure() || len(s.Rest.Turns)+s.Rest.Steady != 0 {
		t.Errorf("with everything measured: %+v", s.Rest)
	}
	// A tap whose pressure was typed is not known until it is measured.
	for _, f := range plan.Fields() {
		p.SetOrigin(f, 0, plan.Typed)
	}
	p.Supply.Kind, p.Supply.Static, p.Supply.TapFlow = plan.Mains, 3e5, 25/6e4
	p.Rows = p.Rows[:1]
	for _, c := range []struct {
		o    plan.Origin
		want int
	}{{plan.Typed, 2}, {plan.Measured, 0}} {
		for _, name := range []string{"static", "tap-flow"} {
			p.SetOrigin(plan.FieldNamed("supply", name), 0, c.o)
		}
		if s := turned(p); len(s.Rest.Turns)+s.Rest.Steady != c.want {
			t.Errorf("a tap, %s: %+v", c.o.Code(), s.Rest)
		}
	}
	// A pump that is still to be bought is another for what is assumed otherwise.
	p.Propose()
	p.Supply.Kind = plan.PumpPower
	if s := turned(p); s.Sure() || s.Wanted == nil || len(s.Rest.Turns)+s.Rest.Steady != 0 || s.Rest.Untested == 0 {
		t.Errorf("a pump of which only the power is known: %+v", s.Rest)
	}
}

// Rows that share an assumed value are one thing, and so is a curve.
func TestSharedValuesAreOneThing(t *testing.T) {
	p := plan.Examples()[4].Plan // six rows alike
	s := turned(p)
	for _, turn := range s.Rest.Turns {
		if turn.Field.Section == "rows" && len(turn.Records) != 6 {
			t.Errorf("%s is of the rows %v", turn.Field.PathOfAll(), turn.Records)
		}
	}
	q := p.Clone()
	q.Rows[2].Slope = 0.004
	q.SetOrigin(plan.FieldNamed("rows", "slope"), 2, plan.Assumed)
	if n, m := s.Rest, turned(q).Rest; len(m.Turns)+m.Steady != len(n.Turns)+n.Steady+1 {
		t.Errorf("with one row of another slope: %d things, were %d", len(m.Turns)+m.Steady, len(n.Turns)+n.Steady)
	}
}

// A plan of so many plants that not everything can be tried says how much was not,
// and says of nothing else that it cannot turn the answer.
func TestWhatIsNotTriedIsCounted(t *testing.T) {
	p := hostile.Ring(hostile.Numbered(12, 3), plan.MaxPlants)
	p.Propose()
	s := sheet.AnswerWithin(0, p, nil)
	s.Explore(sheet.Turning)
	if s.Left[sheet.Turning] || s.Rest.Untested == 0 || s.Sure() {
		t.Errorf("left out %v, sure %v, %d not tried", s.Left[sheet.Turning], s.Sure(), s.Rest.Untested)
	}
	full := len(s.Rest.Turns) + s.Rest.Steady + s.Rest.Untested
	small := turned(plan.Default()).Rest
	if full < 15 || small.Untested != 0 {
		t.Errorf("%d things, and %d of a small plan are not tried", full, small.Untested)
	}
	_, bound := sheet.Bounds()
	s.ExploreWithin(bound/100, sheet.Turning)
	if !s.Left[sheet.Turning] || s.Sure() {
		t.Error("with a hundredth of the work it is not left out")
	}
}
