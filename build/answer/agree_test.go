package answer

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// seasons are the examples and random plans: crops that share a valve or have
// their own, any timer, any place.
func seasons() []*plan.Plan {
	var list []*plan.Plan
	for _, x := range plan.Examples() {
		list = append(list, x.Plan)
	}
	r := rand.New(rand.NewPCG(24, 7))
	for len(list) < 45 {
		p := plan.Default()
		p.Rows = p.Rows[:1+r.IntN(4)]
		for i := range p.Rows {
			row := &p.Rows[i]
			row.Plants, row.Crop, row.Zone = 2+r.IntN(20), r.IntN(15), 1+r.IntN(2)
		}
		p.Season.LastFrost += r.IntN(60) - 30
		p.Season.Shelter = r.IntN(3)
		p.Sky.Latitude = 30 + 35*r.Float64()
		p.Timer.Kind, p.Timer.Every, p.Timer.Programmes = r.IntN(3), r.IntN(2), 4+r.IntN(20)
		if len(p.Check()) == 0 {
			list = append(list, p)
		}
	}
	return list
}

// The page names one day and one line of the card as those of greatest need, in
// every section, and so does the JSON, with the same litres.
func TestEverySectionNamesTheSameGreatestNeed(t *testing.T) {
	markup := regexp.MustCompile(`<svg.*?</svg>|<[^>]*>`)
	compared, takesMore := 0, 0
	for n, p := range seasons() {
		s := sheet.Answer(p)
		s.Explore(sheet.Season)
		said := map[string]string{}
		for _, f := range view.Explored(s, sheet.Season, nil) {
			said[f.ID] = strings.Join(strings.Fields(markup.ReplaceAllString(f.HTML, " ")), " ")
		}
		b, err := json.Marshal(document{Most: mostOf(s), Timer: linesOf(s.Shots)}) // what [JSON] writes of it
		if err != nil {
			t.Fatal(err)
		}
		var d struct {
			Need *struct {
				Day  string `json:"day"`
				Line string `json:"timer_from"`
			} `json:"greatest_need"`
			Timer []struct {
				From string `json:"from"`
				Days int    `json:"lasts_days"`
				Set  []struct {
					Sky   string  `json:"sky"`
					Given float64 `json:"given_m3"`
				} `json:"set"`
			} `json:"timer"`
		}
		if err := json.Unmarshal(b, &d); err != nil {
			t.Fatal(err)
		}
		if d.Need == nil || len(d.Timer) == 0 {
			continue
		}
		on, _ := day.Parse(d.Need.Day)
		from, _ := day.Parse(d.Need.Line)
		if want := "All plants together need most about " + on.Words() + ":"; !strings.Contains(said["weather"], want) {
			t.Fatalf("plan %d: the weather does not say %q: %.500s", n, want, said["weather"])
		}
		for _, line := range d.Timer {
			if line.From != d.Need.Line {
				continue
			}
			if on < from || int(on-from) >= line.Days {
				t.Fatalf("plan %d: most is needed on %s, not in the line from %s", n, on.ISO(), from.ISO())
			}
			if strings.Contains(said["shots"], "worked out as soon") {
				continue
			}
			for id, want := range map[string]string{"shots": " of greatest need, from " + from.Short() + ",", "tank": " of greatest need, from " + from.Short() + ", all plants", "outage": " from " + from.Short() + ", "} {
				if !strings.Contains(said[id], want) {
					t.Fatalf("plan %d: %s does not say %q: %.500s", n, id, want, said[id])
				}
			}
			if p.Units != 0 {
				continue
			}
			// The same litres, to what is printed.
			printed := regexp.MustCompile(`given ([\d.]+) L on a typical day, ([\d.]+) L on a hot day and ([\d.]+) L on a record-hot day`).FindStringSubmatch(said["tank"])
			for k, sky := range []string{"typical", "hot", "record-hot"} {
				for _, set := range line.Set {
					if printed == nil {
						t.Fatalf("plan %d: the tank gives no litres: %.300s", n, said["tank"])
					}
					if l, _ := strconv.ParseFloat(printed[k+1], 64); set.Sky == sky && math.Abs(l-1e3*set.Given) > 0.05+1e-9 {
						t.Fatalf("plan %d: the page gives %g L on a %s day, the JSON %g m³", n, l, sky, set.Given)
					}
				}
			}
			compared++
			if strings.Contains(said["tank"], " takes more from the tank, ") {
				takesMore++
			}
		}
	}
	t.Logf("%d plans, in %d another line takes more", compared, takesMore)
	if compared < 25 || takesMore == 0 || takesMore == compared {
		t.Errorf("%d plans compared, in %d another line takes more", compared, takesMore)
	}
}
