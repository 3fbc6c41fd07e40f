package headroom

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenrow/wasm/grower/plan"
)

func total(p *plan.Plan) int {
	n := 0
	for i := range p.Rows {
		n += p.Rows[i].Plants
	}
	return n
}

// The bracket holds the turning point whatever the slack says, is one step wide
// or a thirty-second of the room, and few tests find it.
func TestSearchBracketsTheTurningPoint(t *testing.T) {
	p := plan.Default()
	r := rand.New(rand.NewPCG(1, 2))
	for _, slack := range []func(left float64) float64{
		func(left float64) float64 { return left },
		func(left float64) float64 { return left * math.Abs(left) },
		func(left float64) float64 { return 1 - math.Exp(-left/50) },
		func(float64) float64 { return 0 },
		func(float64) float64 { return r.Float64() - 0.5 },
		func(float64) float64 { return math.NaN() },
		func(float64) float64 { return math.Inf(-1) },
	} {
		for room := range 400 {
			tests := 0
			test := func(q *plan.Plan) Answer {
				tests++
				left := room - (total(q) - total(p))
				return Answer{Yes: left >= 0, Why: End{Judged, 3}, Slack: slack(float64(left) + 0.5)}
			}
			one := Room{Kind: Plants}
			one.search(p, 3*total(p), test(p), test)
			if room >= 3*total(p) {
				if one.Most != 3*total(p) || one.Why.Limit != Enough {
					t.Fatalf("room for %d: %+v, and more than thrice as many is not looked for", room, one)
				}
				continue
			}
			if one.Most > room || one.Fails <= room || one.Fails-one.Most > 1+room/tolerance || one.Why != (End{Judged, 3}) {
				t.Fatalf("room for %d: %+v", room, one)
			}
			if tests > 3*9 { // every third halves up to 361 steps
				t.Errorf("room for %d: %d tests", room, tests)
			}
		}
	}
}

func TestTheFormIsTheLimit(t *testing.T) {
	yes := func(*plan.Plan) Answer { return Answer{Yes: true, Slack: 1} }
	p := plan.Default()
	p.Rows[1].Plants = 390
	rooms := Of(p, 1, 0, yes(p), yes)
	for _, r := range rooms {
		if len(r.Plan(p, r.Most).Check()) > 0 {
			t.Errorf("%+v: the form refuses the most", r)
		}
		if r.Why.Limit == Refused && len(r.Plan(p, r.Fails).Check()) == 0 {
			t.Errorf("%+v: the form takes more", r)
		}
		if r.Kind == InRow && r.Row == 1 && (r.Most != 10 || r.Why.Limit != Refused) {
			t.Errorf("row 2 has 390 plants, and 400 are the most: %+v", r)
		}
		if r.Kind == Rise && math.Abs(r.Value()+p.Runs[0].Rise-60) > 0.1 {
			t.Errorf("the lead rises 60 m at most: %+v", r)
		}
	}
	if len(rooms) < 3 {
		t.Errorf("%d rooms", len(rooms))
	}
}

func TestPlansAreSpreadOverTheRows(t *testing.T) {
	p := plan.Default()
	for n := range 50 {
		q := (&Room{Kind: Plants}).Plan(p, n)
		if total(q) != total(p)+n {
			t.Errorf("%d more plants make %d of %d", n, total(q), total(p))
		}
		for i := range q.Rows {
			if more := q.Rows[i].Plants - p.Rows[i].Plants; more < n/4 || more > n/4+1 {
				t.Errorf("row %d gets %d of %d", i+1, more, n)
			}
		}
		row := (&Room{Kind: InRow, Row: 2}).Plan(p, n)
		if total(row) != total(p)+n || row.Rows[2].Plants != p.Rows[2].Plants+n {
			t.Errorf("row 3 with %d more has %d", n, row.Rows[2].Plants)
		}
	}
}

// A large plan is searched less, so that an answer does not wait for it.
func TestLargePlansAreSearchedLess(t *testing.T) {
	yes := func(*plan.Plan) Answer { return Answer{Yes: true, Slack: 1} }
	p := plan.Default()
	for zones, want := range map[int]int{1: 7, 6: 4, 10: 2, 12: 2, 100: 1} {
		if got := Of(p, zones, 0, yes(p), yes); len(got) != want {
			t.Errorf("120 plants in %d zones: %d rooms, want %d", zones, len(got), want)
		}
	}
}
