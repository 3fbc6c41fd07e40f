package season_test

import (
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/year/season"
)

// How a season goes is what its list of tasks begins and ends with: of each kind
// the first, which is that of the planting that stands first where two are on the
// same day, and the last row that is cleared.
func TestTheCourseIsThatOfTheTasks(t *testing.T) {
	apart, unpicked, empty := 0, 0, 0
	for n, p := range plans(t) {
		s := season.Of(p)
		want := season.Course{Sown: -1, Out: -1, Picked: -1}
		first := func(at *int, k *season.Task) {
			if *at < 0 {
				*at = k.Planting
			}
		}
		for i := range s.Tasks {
			switch k := &s.Tasks[i]; k.Kind {
			case season.Sowing:
				first(&want.Sown, k)
			case season.Setting:
				first(&want.Out, k)
			case season.Picking:
				first(&want.Picked, k)
			case season.Clearing:
				want.End = k.Day
			}
		}
		if got := s.Course(); got != want {
			t.Errorf("plan %d: %+v, by its tasks %+v", n, got, want)
		}
		switch {
		case want.Out < 0:
			empty++
		case want.Picked < 0:
			unpicked++
		case want.Sown != want.Out && want.Out != want.Picked:
			apart++
		}
	}
	t.Logf("%d plans of which three plantings are the first, %d in which none is picked, %d in which none grows", apart, unpicked, empty)
	if apart < 10 || unpicked < 1 {
		t.Errorf("only %d plans of which three plantings are the first, and %d in which none is picked", apart, unpicked)
	}
}

// By hand, in two rows: tomatoes are sown 33 days before they go out, are picked
// 60 days after and for 16 weeks; lettuce waits 28 days and is picked for a week.
// Strawberries are bought as plants.
func TestCourseByHand(t *testing.T) {
	on := func(m, d int) day.Day { return day.Of(2027, m, d) }
	frost := func(p *plan.Plan) { p.Season.Frost = 1 } // 12 May and 8 October
	for _, c := range []struct {
		name      string
		plantings []plan.Planting
		change    func(*plan.Plan)
		want      season.Course
	}{
		{"the later one is sown first and picked last", []plan.Planting{out(lettuce, 1, 1, on(3, 1)), out(tomato, 2, 2, on(3, 4))}, nil,
			season.Course{Sown: 1, Out: 0, Picked: 0, End: on(3, 4) + 60 + 112}},
		{"on the same day the first of the list", []plan.Planting{out(tomato, 2, 2, on(3, 2)), out(tomato, 1, 1, on(3, 1)), out(tomato, 2, 2, on(3, 1))}, nil,
			season.Course{Sown: 1, Out: 1, Picked: 1, End: on(3, 2) + 60 + 112}},
		{"what stands in no row is not counted", []plan.Planting{out(tomato, 9, 9, on(2, 1)), out(lettuce, 1, 1, on(3, 1)), out(tomato, 9, 9, on(9, 1))}, nil,
			season.Course{Sown: 1, Out: 1, Picked: 1, End: on(3, 1) + 28 + 7}},
		{"nothing is sown of what is bought as plants", []plan.Planting{out(strawberry, 1, 1, on(3, 1))}, func(p *plan.Plan) {
			own(p, strawberry, nil)
		}, season.Course{Sown: -1, Out: 0, Picked: 0}},
		{"what is bought as plants is not sown before the rest", []plan.Planting{out(strawberry, 1, 1, on(1, 1)), out(lettuce, 2, 2, on(3, 1))}, nil,
			season.Course{Sown: 1, Out: 0, Picked: 0}},
		// Tomatoes out on 1 September would be picked on 31 October: the frost of 8
		// October, for which the rows are cleared on 23 September, comes before.
		{"what frost kills is not picked", []plan.Planting{out(tomato, 1, 1, on(9, 1))}, frost,
			season.Course{Sown: 0, Out: 0, Picked: -1, End: on(9, 23)}},
		{"but something else is, later", []plan.Planting{out(tomato, 1, 1, on(9, 1)), out(lettuce, 2, 2, on(11, 1))}, frost,
			season.Course{Sown: 0, Out: 0, Picked: 1, End: on(11, 1) + 28 + 7}},
		{"what frost kills at once does not grow", []plan.Planting{out(tomato, 1, 1, on(5, 12))}, frost,
			season.Course{Sown: -1, Out: -1, Picked: -1}},
	} {
		p := rows(on(3, 1), lettuce, lettuce)
		p.Rows[0].Crop, p.Rows[1].Crop = c.plantings[0].Crop, c.plantings[len(c.plantings)-1].Crop
		p.Plantings = c.plantings
		if c.change != nil {
			c.change(p)
		}
		got := season.Of(p).Course()
		if c.want.End == 0 && c.want.Out >= 0 {
			got.End = 0 // not by hand here
		}
		if got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}
