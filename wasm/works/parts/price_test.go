package parts

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/layout"
)

// boughtAtRandom has a plan say something of some of its lines, and of a few of no line.
func boughtAtRandom(rnd *rand.Rand, p *plan.Plan, lines []Line) {
	p.Bought = nil
	for i := range lines {
		if rnd.IntN(3) > 0 || len(p.Bought) == plan.MaxBought-2 {
			continue
		}
		b := plan.Bought{Part: lines[i].Key(), Price: plan.Unset, Each: plan.Unset}
		if rnd.IntN(2) == 0 {
			b.Price = float64(rnd.IntN(2000)) / 100
			b.Each = float64(rnd.IntN(500)) / 100
		}
		if rnd.IntN(2) == 0 {
			b.Pack = rnd.IntN(30)
		}
		if rnd.IntN(2) == 0 {
			b.Have = rnd.IntN(2 * (lines[i].Count + 1))
			b.Length = float64(rnd.IntN(2000)) / 1000 * (lines[i].Length + 1)
		}
		p.Bought = append(p.Bought, b)
	}
	for range rnd.IntN(3) {
		p.Bought = append(p.Bought, plan.Bought{Part: "no such thing", Price: 1})
	}
	for i := range p.Prices.Tubes {
		p.SetOrigin(plan.FieldNamed("prices", "tube-"+strconv.Itoa(i)), 0, plan.Origin(1+rnd.IntN(4)))
		if rnd.IntN(20) == 0 {
			p.Prices.Tubes[i] = 0
		} else if p.Prices.Tubes[i] == 0 {
			p.Prices.Tubes[i] = 1.25
		}
	}
}

// What is bought and what one has cover what is needed, with no pack too many; and what it
// costs is what a person adds up with the receipt in hand, line by line, in hundredths.
func TestShoppingIsAddedUpAgain(t *testing.T) {
	rnd := rand.New(rand.NewPCG(11, 12))
	rolls, saved, packs, lost, none := 0, 0, 0, 0, 0
	for seed := range uint64(400) {
		p := randomPlan(seed)
		lines := Count(layout.New(p), 0, 0)
		boughtAtRandom(rnd, p, lines)
		s := Shop(lines, p)
		if len(s.Lines) != len(lines) {
			t.Fatalf("plan %d: %d lines of %d", seed, len(s.Lines), len(lines))
		}
		said := map[string]plan.Bought{}
		unlike := 0
		for _, b := range p.Bought {
			_, twice := said[b.Part]
			if twice || !slices.ContainsFunc(lines, func(n Line) bool { return n.Key() == b.Part }) {
				unlike++
			}
			if !twice {
				said[b.Part] = b
			}
		}
		if len(s.Lost) != unlike {
			t.Errorf("plan %d: %d that count for nothing, want %d", seed, len(s.Lost), unlike)
		}
		lost += unlike
		cents, invented, counters := 0, 0, [Groups]int{}
		for i := range s.Lines {
			b, n := &s.Lines[i], &lines[i]
			say, has := said[n.Key()]
			if !has {
				say = plan.Bought{Price: plan.Unset, Each: plan.Unset}
			}
			got := float64(b.Packs) * b.Pack
			if n.Length > 0 {
				if got+say.Length < n.Length-1e-6 {
					t.Errorf("plan %d, %s: %g m bought and %g m had for %g m", seed, n.Name, got, say.Length, n.Length)
				}
				cut := max(0, n.Length-say.Length) // from what is bought
				packs := math.Ceil(cut - 1e-6)
				if n.Rolls > 0 {
					uses := slices.Sorted(slices.Values(n.Uses))
					if len(uses) != n.Rolls {
						t.Errorf("plan %d, %s: %d rolls, %d are cut", seed, n.Name, n.Rolls, len(uses))
					}
					packs, cut = 0, 0
					for k, all := 0, 0.0; k < len(uses); k++ {
						if all += uses[k]; all > say.Length {
							packs++
							cut += uses[k]
						}
					}
				}
				if float64(b.Packs) != packs || math.Abs(b.Over-max(0, got-cut)) > 1e-6 {
					t.Errorf("plan %d, %s: %d of %g m, %g m over; want %g, %g m", seed, n.Name, b.Packs, b.Pack, b.Over, packs, max(0, got-cut))
				}
				if n.Rolls > 0 {
					rolls++
					if b.Packs < n.Rolls {
						saved++
					}
				}
			} else {
				if int(got)+say.Have < n.Count || b.Packs > 0 && int(got-b.Pack)+say.Have >= n.Count {
					t.Errorf("plan %d, %s: %d packs of %g, and %d had, for %d", seed, n.Name, b.Packs, b.Pack, say.Have, n.Count)
				}
				if over := int(got) - max(0, n.Count-say.Have); int(b.Over) != over {
					t.Errorf("plan %d, %s: %g over, want %d", seed, n.Name, b.Over, over)
				}
				if say.Pack > 0 && int(b.Pack) != say.Pack {
					t.Errorf("plan %d, %s: packs of %g, said are %d", seed, n.Name, b.Pack, say.Pack)
				}
				if b.Pack > 1 {
					packs++
				}
			}
			// The price on the shelf, in the ways that a grower can have said it.
			known, each := false, b.Price
			switch {
			case n.Item == ATube:
				entry, err := strconv.Atoi(n.Size)
				if err != nil {
					entry = catalogue.Custom
				}
				if p.Prices.Tubes[entry] == 0 {
					none++
					if !b.None {
						t.Errorf("plan %d, %s: tubing that is not to be had costs %g", seed, n.Name, b.Cost)
					}
					continue
				}
				each = p.Prices.Tubes[entry] * b.Pack
				known = p.Origin(plan.FieldNamed("prices", "tube-"+strconv.Itoa(entry)), 0) != plan.Assumed
			case n.Length > 0 && say.Each != plan.Unset:
				known, each = true, say.Each*b.Pack
			case n.Length == 0 && say.Price != plan.Unset:
				known, each = true, say.Price
			}
			if math.Abs(each-b.Price) > 1e-9 || known == b.Invented || b.None || !known && !(b.Price > 0) {
				t.Errorf("plan %d, %s: %g a pack, want %g; invented %v, said %v", seed, n.Name, b.Price, each, b.Invented, known)
			}
			cost := int(math.Round(100 * each * float64(b.Packs)))
			cents += cost
			counters[n.Group] += cost
			if !known {
				invented += cost
			}
		}
		sum := func(what string, got float64, want int) {
			if math.Abs(got-float64(want)/100) > 1e-6 {
				t.Errorf("plan %d: %s %g, want %d hundredths", seed, what, got, want)
			}
		}
		sum("total", s.Total, cents)
		sum("invented", s.Invented, invented)
		for g := range counters {
			sum("counter "+strconv.Itoa(g), s.Groups[g], counters[g])
		}
	}
	if rolls < 100 || saved < 20 || packs < 100 || lost < 50 || none < 10 {
		t.Errorf("seen are %d lines in rolls, %d with fewer for what one has, %d in packs, %d lost, %d without a price", rolls, saved, packs, lost, none)
	}
}

// Of a plan of which nobody has said a price all of the total is invented, and none once all
// are said; in between it never grows.
func TestShareOfInventedPrices(t *testing.T) {
	p := plan.Default()
	lines := Count(layout.New(p), 0, 0)
	if s := Shop(lines, p); s.Share() != 1 || s.Total <= 0 {
		t.Fatalf("%g of %g is invented", s.Share(), s.Total)
	}
	before := 2.0
	for i := range lines {
		if n := &lines[i]; n.Item == ATube {
			p.SetOrigin(plan.FieldNamed("prices", "tube-"+n.Size), 0, plan.Typed)
		} else {
			p.Bought = append(p.Bought, plan.Bought{Part: n.Key(), Price: 2.5, Each: plan.Unset})
		}
		s := Shop(lines, p)
		if s.Share() >= before {
			t.Errorf("with %s said, %g is invented, and was %g before", lines[i].Name, s.Share(), before)
		}
		before = s.Share()
	}
	if before != 0 {
		t.Errorf("%g is invented of prices that are all said", before)
	}
	for i := range p.Bought {
		p.Bought[i].Price = 0 // a gift is a price
	}
	if s := Shop(lines, p); s.Invented != 0 || s.Groups[Tools] != 0 {
		t.Errorf("%g invented, %g for tools, of what costs nothing", s.Invented, s.Groups[Tools])
	}
}

// By hand, on paper: 42 emitters with 2 at hand and packs of 25 are 2 packs, 10 over.
func TestPacksByHand(t *testing.T) {
	p := plan.Default()
	line := func(n Line) *Buy {
		p.Units = 0
		return &Shop([]Line{n}, p).Lines[0]
	}
	p.Bought = []plan.Bought{{Part: "emitter 0", Price: 7.5, Pack: 25, Have: 2}}
	if b := line(Line{Item: AnEmitter, Size: "0", Count: 42}); b.Packs != 2 || b.Over != 10 || b.Cost != 15 || b.Invented {
		t.Errorf("%+v", b)
	}
	if b := line(Line{Item: AStake, Count: 26}); b.Packs != 2 || b.Pack != 25 || b.Over != 24 || b.Cost != 10 || !b.Invented {
		t.Errorf("%+v", b) // two packs of 25 at 0.20 a piece
	}
	// Three rolls of which 12, 40 and 49 m are used: who has 12 m saves one, who has 53 m two.
	p.Prices.Tubes[1] = 0.5
	tube := Line{Item: ATube, Size: "1", Length: 101, Rolls: 3, Roll: 50, Uses: []float64{12, 40, 49}}
	for _, c := range []struct{ have, packs, over float64 }{{0, 3, 49}, {11.9, 3, 49}, {12, 2, 11}, {51.9, 2, 11}, {52, 1, 1}, {101, 0, 0}} {
		p.Bought = []plan.Bought{{Part: "tube 1", Length: c.have}}
		if b := line(tube); float64(b.Packs) != c.packs || math.Abs(b.Over-c.over) > 1e-9 || b.Cost != c.packs*25 {
			t.Errorf("with %g m: %d rolls, %g m over, %g", c.have, b.Packs, b.Over, b.Cost)
		}
	}
	p.Bought = []plan.Bought{{Part: "tube 1", Length: 1.5}}
	if b := line(Line{Item: ATube, Size: "1", Length: 10.2}); b.Packs != 9 || math.Abs(b.Over-0.3) > 1e-9 || b.Cost != 4.5 {
		t.Errorf("by the metre: %+v", b)
	}
	p.Bought = []plan.Bought{{Part: "micro-tubing", Length: 1, Each: 0.8}}
	if b := line(Line{Item: AMicroTubing, Length: 2.2}); b.Packs != 2 || b.Cost != 1.6 || b.Invented {
		t.Errorf("micro tubing: %+v", b)
	}
}

// Each item has a price and a pack, each fitting its part of it, and a key that a plan may
// hold; what the plan takes to be sold by its length is so.
func TestItemsHavePrices(t *testing.T) {
	for i := range Kinds {
		if k := &Kinds[i]; (k.Price > 0) == (Item(i) == ATube) || k.Pack < 1 {
			t.Errorf("%s: %g in packs of %d", k.Key, k.Price, k.Pack)
		}
	}
	for i := range layout.Fittings {
		if noun := strings.ReplaceAll(string(layout.Fittings[i].Noun.Name), " ", "-"); times[noun] == 0 && noun != "adapter" {
			t.Errorf("a %s costs nothing", noun)
		}
	}
	part := plan.FieldNamed("bought", "part")
	for seed := range uint64(300) {
		p := randomPlan(seed)
		lines := Count(layout.New(p), 0, 0)
		for i := range lines {
			p.Bought = []plan.Bought{{Part: lines[i].Key()}}
			if b := &p.Bought[0]; part.Problem(p, 0) != nil || b.ByLength() != (lines[i].Length > 0) || b.Tubing() != (lines[i].Item == ATube) {
				t.Fatalf("%q: %v, by length %v", b.Part, part.Problem(p, 0), b.ByLength())
			}
			for k := range i {
				if lines[k].Key() == lines[i].Key() {
					t.Fatalf("plan %d: %q is %s and %s", seed, lines[i].Key(), lines[k].Name, lines[i].Name)
				}
			}
		}
	}
}

// Invented prices rise with size.
func TestInventedPricesRise(t *testing.T) {
	price := func(change func(*plan.Plan), item Item) float64 {
		p := plan.Default()
		change(p)
		most := 0.0
		s := Shop(Count(layout.New(p), 0, 0), p)
		for i := range s.Lines {
			if s.Lines[i].Item == item {
				most = max(most, s.Lines[i].Price/s.Lines[i].Pack)
			}
		}
		return most
	}
	tank := func(v float64) func(*plan.Plan) { return func(p *plan.Plan) { p.Supply.Tank = v } }
	tube := func(n int) func(*plan.Plan) { return func(p *plan.Plan) { p.Header.Tube, p.Runs[0].Tube = n, n } }
	pots := func(n int) func(*plan.Plan) {
		return func(p *plan.Plan) {
			p.Rows[0].Medium, p.Rows[0].PerPiece, p.Rows[0].Plants = plan.Pot, 1, n
		}
	}
	for _, c := range []struct {
		what        string
		item        Item
		small, wide func(*plan.Plan)
	}{
		{"a tank", ATank, tank(0.2), tank(1)},
		{"a fitting", AJoint, tube(1), tube(4)},
		{"a clamp", AClamp, tube(1), tube(2)},
		{"what fills pots", AFilling, pots(5), pots(20)},
	} {
		if small, wide := price(c.small, c.item), price(c.wide, c.item); !(0 < small && small < wide) {
			t.Errorf("%s: %g, and the larger one %g", c.what, small, wide)
		}
	}
}
