package buy

import (
	"encoding/csv"
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/parts"
)

// random is an example of which something is said of some of its parts, and the tubing of which
// is priced or not.
func random(rnd *rand.Rand) *sheet.Sheet {
	all := plan.Examples()
	p := all[rnd.IntN(len(all))].Plan.Clone()
	p.Rows = p.Rows[:1+rnd.IntN(len(p.Rows))]
	for i := range p.Rows {
		p.Rows[i].Zone = 1
	}
	if rnd.IntN(2) == 0 {
		p.Prices.Currency = "NOK"
	}
	for i := range p.Prices.Tubes {
		switch rnd.IntN(4) {
		case 0:
			p.Prices.Tubes[i] = 0
		case 1:
			p.Prices.Tubes[i] = float64(rnd.IntN(300)) / 100
			p.SetOrigin(plan.FieldNamed("prices", "tube-"+strconv.Itoa(i)), 0, plan.Typed)
		}
		if rnd.IntN(2) == 0 {
			p.Prices.Rolls[i] = 0
		}
	}
	s := sheet.Bare(p)
	for i := range s.Parts {
		if rnd.IntN(2) == 0 && len(p.Bought) < plan.MaxBought-3 {
			b := plan.Bought{Part: s.Parts[i].Key(), Price: plan.Unset, Each: plan.Unset, Have: rnd.IntN(6), Pack: rnd.IntN(8)}
			if rnd.IntN(3) > 0 {
				b.Price = float64(rnd.IntN(3000)) / 100
			}
			p.Bought = append(p.Bought, b)
		}
	}
	if rnd.IntN(3) == 0 {
		p.Bought = append(p.Bought, plan.Bought{Part: "gone"})
	}
	return s
}

var (
	aRow  = regexp.MustCompile(`<tr.*?</tr>`)
	aTag  = regexp.MustCompile(`<span class="out">.*?</span>|<[^>]*>`)
	aCell = regexp.MustCompile(`<t[hd][^>]*>.*?</t[hd]>`)
)

// cells are the texts of the cells of a row.
func cells(row string) (list []string) {
	for _, c := range aCell.FindAllString(row, -1) {
		list = append(list, strings.TrimSpace(strings.ReplaceAll(aTag.ReplaceAllString(c, ""), "\u00a0", " ")))
	}
	return list
}

// Who adds up the last column with a pencil finds each sum of a counter and the last of all, and
// the share that is said of those with a star.
func TestTheListAddsUp(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	shares, nones, lost := map[string]bool{}, 0, 0
	for n := range 150 {
		s := random(rnd)
		sc := scene.New(s, nil)
		Parts(sc)
		html := sc.String()
		counter, all, starred, none, totals := 0, 0, 0, 0, 0
		for _, row := range aRow.FindAllString(html, -1)[1:] {
			c := cells(row)
			if strings.Contains(row, `scope="col"`) {
				counter = 0
				continue
			}
			last := c[len(c)-1]
			if last == "none" {
				none++
				continue
			}
			price, err := strconv.ParseFloat(strings.TrimSuffix(last, "*"), 64)
			if err != nil {
				t.Fatalf("plan %d: %q in %q", n, last, c)
			}
			cents := int(math.Round(100 * price))
			if strings.Contains(row, `class="total"`) {
				totals++
				if cents != counter {
					t.Errorf("plan %d: %s is %d hundredths, and adds up to %d", n, c[0], cents, counter)
				}
				continue
			}
			counter += cents
			all += cents
			if strings.HasSuffix(last, "*") {
				starred += cents
			}
		}
		if want := fmt.Sprintf("All together %d.%02d<", all/100, all%100); !strings.Contains(html, want) {
			t.Errorf("plan %d: want %q", n, want)
		}
		said := ""
		if starred > 0 {
			share := 100 * float64(starred) / float64(all)
			said = fmt.Sprintf("Of all that, %.0f %% is by invented prices.", share)
			if math.Abs(share-math.Floor(share)-0.5) < 1e-6 {
				said = "% is by invented prices."
			}
			shares[said] = true
		} else {
			said = "No price in it is invented."
		}
		if all > 0 && !strings.Contains(html, said) {
			t.Errorf("plan %d: it does not say %q: %s", n, said, html[max(0, len(html)-400):])
		}
		if strings.Contains(html, "no price, and") != (none > 0) {
			t.Errorf("plan %d: %d have no price", n, none)
		}
		if gone := strings.Contains(html, "does not count here"); gone != (len(s.Plan.Bought) > 0 && s.Plan.Bought[len(s.Plan.Bought)-1].Part == "gone") {
			t.Errorf("plan %d: what is of no line: %v", n, gone)
		} else if gone {
			lost++
		}
		if none > 0 {
			nones++
		}
		if cur := s.Plan.Prices.Currency; cur != "" && !(strings.Contains(html, "Price, "+cur) && strings.Contains(html, "Amounts are in "+cur)) || cur == "" && strings.Contains(html, "converted") {
			t.Errorf("plan %d: currency %q", n, cur)
		}
		if totals < 6 {
			t.Errorf("plan %d: %d sums", n, totals)
		}
		// The table for a spreadsheet says the same.
		records, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(Table(s), "\ufeff"))).ReadAll()
		if err != nil || len(records) != len(s.Parts)+1 {
			t.Fatalf("plan %d: %d rows, %v", n, len(records), err)
		}
		sum := 0
		for _, r := range records[1:] {
			if r[13] == "" {
				continue
			}
			cost, err := strconv.ParseFloat(r[13], 64)
			if err != nil || records[0][13] != "Price in all" || r[14] != s.Plan.Prices.Currency || r[15] != "yes" && r[15] != "no" {
				t.Fatalf("plan %d: %q", n, r)
			}
			sum += int(math.Round(100 * cost))
		}
		if sum != all {
			t.Errorf("plan %d: the table adds up to %d hundredths, the list to %d", n, sum, all)
		}
	}
	if len(shares) < 20 || nones == 0 || lost == 0 {
		t.Errorf("%d shares, %d without a price, %d lost", len(shares), nones, lost)
	}
}

// What is said in a shop has the figures of the plan. Those of the default plan are by hand: 120
// emitters of 2 L/h take 4 L/min, at which the parabola through the first points of its pump, 34,
// 29 and 19 m at 0, 20 and 40 L/min, is at 34 - 4/8 - 16/160 = 33.4 m.
func TestAsks(t *testing.T) {
	want := func(s *sheet.Sheet, item parts.Item, size, said string) {
		t.Helper()
		for i := range s.Parts {
			if n := &s.Parts[i]; n.Item == item && (size == "" || n.Size == size) {
				if got := strings.ReplaceAll(Ask(s, n), "\u00a0", " "); !strings.Contains(got, said) {
					t.Errorf("%s: %q, want %q", n.Name, got, said)
				}
				return
			}
		}
		t.Errorf("no %s %s", parts.Kinds[item].Key, size)
	}
	p := plan.Default()
	s := sheet.Bare(p)
	want(s, parts.ATube, "3", "a bore of 20.4 mm and 25.0 mm outside")
	want(s, parts.ATube, "1", "a bore of 13.6 mm and 16.0 mm outside")
	want(s, parts.AnEmitter, "", "give 2.0 L/h at any pressure from 1.03 bar to 4.00 bar, and open at 0.70 bar or less")
	want(s, parts.ATank, "", "400 L")
	want(s, parts.APump, "", "lifts 33.4 m at 4.00 L/min, and 34.0 m with everything shut")
	want(s, parts.AFilter, "", "openings of 130 µm")
	want(s, parts.AFilter, "", "no more than 0.07 bar while 20.00 L/min runs through it")
	want(s, parts.ARegulator, "", "keeps 2.00 bar behind it while 4.00 L/min runs")
	want(s, parts.AMedium, "0", "Coco slab of 16 L once it is wet, about 1 m long")
	want(s, parts.AGauge, "4 bar", "ends at 4 bar")

	p = plan.Default()
	p.Units = unit.US
	p.Header.Tube, p.Header.Bore = 0, 0.0191
	p.Rows[0].Zone, p.Rows[1].Zone, p.Rows[1].Plants = 2, 2, 15
	p.Emitters[0].Kind, p.Emitters[0].Exponent, p.Emitters[0].Nominal = plan.NonCompensating, 0.5, 1e5
	s = sheet.Bare(p)
	want(s, parts.ATube, "19.1mm", "a bore of 0.752 in, measured")
	want(s, parts.AnEmitter, "", "give 0.53 gal/h at 14.5 psi")
	least, most := s.Zones[0].Flow, s.Zones[0].Flow
	for _, z := range s.Zones {
		least, most = min(least, z.Flow), max(most, z.Flow)
	}
	gal := func(v float64) string { return fmt.Sprintf("%.2f gal/min", v*60000/3.785411784) }
	want(s, parts.ARegulator, "", "keeps 29.0 psi behind it while from "+gal(least)+" to "+gal(most)+" run")

	p = plan.Default()
	p.Supply.Kind = plan.PumpWanted
	s = sheet.Bare(p)
	want(s, parts.APump, "", fmt.Sprintf("lifts %.1f m at %.2f L/min", s.Wanted.Least, s.Wanted.Flow*60000))
	// The pump that is asked for does it: the plan with one that gives just that is a Yes.
	q := plan.Default()
	q.Supply = s.Layout.Plan.Supply
	if again := sheet.Bare(q); again.Verdict != sheet.Yes {
		t.Errorf("with the pump that is asked for the answer is %v", again.Verdict)
	}
	p = plan.Default()
	p.Supply.Kind, p.Supply.Static = plan.Mains, 4e5
	want(sheet.Bare(p), parts.ATimerValve, "", "4.00 bar of pressure when nothing flows")
}
