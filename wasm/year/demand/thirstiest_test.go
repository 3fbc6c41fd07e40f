package demand

import (
	"math/rand/v2"
	"slices"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/climate"
)

// Those that take most are the first of all, sorted by the most that one of their
// plants takes on any day of the season, were it hot. Half of the plantings are
// listed twice, in the same rows, so that many take the same.
func TestThirstiestAreTheFirstOfAllSorted(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	same, moved := 0, 0
	for n := range 40 {
		p := randomSky(r)
		for i := range p.Rows {
			g := plan.Planting{Crop: p.Rows[i].Crop, From: i + 1, To: i + 1, Mode: plan.FromPlanting + 1,
				Date: int(day.Of(2027, 1, 1)) + r.IntN(365), Times: 1, Every: 1}
			p.Plantings = append(p.Plantings, g)
			if r.IntN(2) == 0 {
				p.Plantings = slices.Insert(p.Plantings, r.IntN(len(p.Plantings)), g)
			}
		}
		d := of(p)
		want, peaks := make([]int, len(d.Plantings)), make([]float64, len(d.Plantings))
		for i := range want {
			want[i] = i
			for at := d.From; at < d.To; at++ {
				peaks[i] = max(peaks[i], d.Use(i, at)[climate.Hot])
			}
		}
		slices.SortStableFunc(want, func(i, j int) int {
			switch {
			case peaks[i] > peaks[j]:
				return -1
			case peaks[i] < peaks[j]:
				return 1
			}
			return 0
		})
		for k := range max(0, len(want)-1) {
			if peaks[want[k]] == peaks[want[k+1]] {
				same++
			}
			if want[k] > want[k+1] {
				moved++
			}
		}
		for most := range len(want) + 3 {
			if got := d.Thirstiest(most); !slices.Equal(got, want[:min(most, len(want))]) {
				t.Fatalf("plan %d: the %d thirstiest are %v, want the first of %v, which take %v", n, most, got, want, peaks)
			}
		}
	}
	if same < 20 || moved < 20 {
		t.Errorf("only %d take the same as another, and %d stand elsewhere in the season: the test tests little", same, moved)
	}
}

// Where none takes anything, the first of the season are named; of a season
// without plants, none.
func TestThirstiestWithoutAnyNeed(t *testing.T) {
	_, d := two(t)
	d.Sky = &plan.Sky{}
	for most, want := range [][]int{{}, {0}, {0, 1}} {
		if got := d.Thirstiest(most); !slices.Equal(got, want) {
			t.Errorf("without any need the %d thirstiest are %v, want %v", most, got, want)
		}
	}
	if got := (&Demand{}).Thirstiest(3); len(got) != 0 {
		t.Errorf("of no plantings %v are the thirstiest", got)
	}
}
