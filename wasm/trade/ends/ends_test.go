package ends

import (
	"math"
	"testing"

	"evenrow/wasm/trade/catalogue"
)

// Whatever two families meet has a rule, the same from either side.
func TestTheTableIsWholeAndSymmetric(t *testing.T) {
	used := map[Rule]bool{SameSex: true, OtherSize: true, OtherBore: true, OtherOutside: true, StraightInTaper: true}
	for a := range Family(Families) {
		for b := range Family(Families) {
			rule := Table[a][b]
			if rule == Undeclared {
				t.Errorf("nobody has said what becomes of families %d and %d", a, b)
			}
			if rule != Table[b][a] {
				t.Errorf("families %d and %d: %d, the other way round %d", a, b, rule, Table[b][a])
			}
			used[rule] = true
		}
	}
	for rule := Undeclared + 1; rule < Rules; rule++ {
		if !used[rule] {
			t.Errorf("rule %d is of no pair", rule)
		}
		if held := rule < HoseOnPipe; held != (Whys[rule] == "") || held != (held && Seals[rule].Name != "" && Seals[rule].How != "" && Seals[rule].Pressure > 0 && Seals[rule].Temperature > 0 && Seals[rule].Source.String() != "") {
			t.Errorf("rule %d has not what it needs", rule)
		}
	}
	if Undeclared.Holds(0) {
		t.Error("what nobody has declared holds")
	}
	var nothing [Families][Families]Rule
	if nothing[PipeThread][PipeThread].Holds(0) {
		t.Error("a table without entries lets ends mate")
	}
}

// Every pair of ends is looked at from both sides.
func TestMatingIsSymmetric(t *testing.T) {
	mates := 0
	for _, a := range All {
		holds := 0
		for _, b := range All {
			rule := Mate(a, b)
			if rule != Mate(b, a) {
				t.Errorf("%s and %s: %d, the other way round %d", a.Name(""), b.Name(""), rule, Mate(b, a))
			}
			if rule.Holds(0) {
				mates++
				holds++
				// One of the two is male, or is tubing, and neither is both.
				if a.Threaded() && (a.Sex == b.Sex || a.Sex == Neither || a.Size != b.Size) || !a.Threaded() && a.Pipe() == b.Pipe() {
					t.Errorf("%s holds %s", a.Name(""), b.Name(""))
				}
			}
		}
		if holds == 0 {
			t.Errorf("nothing mates with %s", a.Name(""))
		}
	}
	if all := len(All) * len(All); mates*20 > all {
		t.Errorf("%d of %d pairs mate: most must not", mates, all)
	}
}

// All has each end once, threads first, and keeps its order, which links hold.
func TestAllEnds(t *testing.T) {
	had, names := map[End]bool{}, map[string]bool{}
	for i, e := range All {
		if had[e] || names[e.Name("")] {
			t.Errorf("%s stands twice", e.Name(""))
		}
		had[e], names[e.Name("")] = true, true
		if e.Threaded() != (i < Threads) {
			t.Errorf("%d, %s", i, e.Name(""))
		}
	}
	for i, want := range map[int]string{
		0: "1/2 in pipe thread (NPT), male", 3: "3/4 in pipe thread (NPT), female", 10: "G 1/2 parallel thread, male", 25: "Rc 1 taper thread, female",
		31: "3/4 in hose thread, female, with its washer", 32: "socket for PVC pipe of 1/2 in", 40: "drip tubing of measured", 42: "drip tubing of 16 mm", 43: "barb for drip tubing of 16 mm",
	} {
		if got := All[i].Name(""); got != want {
			t.Errorf("end %d is %q, want %q", i, got, want)
		}
	}
	for i := range catalogue.Tubes {
		if !Mate(Tubing(i), Holder(i)).Holds(0) || !had[Tubing(i)] || !had[Holder(i)] {
			t.Errorf("tubing %d is not held by what holds it", i)
		}
	}
	if Tubing(catalogue.Custom).Name("18.0 mm") != "drip tubing of 18.0 mm" {
		t.Error("measured tubing has no name of its own")
	}
}

func end(f Family, s Sex, size int) End { return End{f, s, size} }

// C05 of the reference, from ASME B1.20.1, ISO 228 and ASME B1.20.7: hose thread and NPT
// of 3/4 do not mate, nor do NPT and BSP of 1/2, 3/4 and 1. A parallel male thread in a
// tapered female one: ISO 7-1 has no such joint (from memory).
func TestWhatSeemsToMate(t *testing.T) {
	for _, c := range []struct {
		a, b End
		want Rule
	}{
		{end(HoseThread, Male, ThreeQuarter), end(PipeThread, Female, ThreeQuarter), HoseOnPipe},
		{end(PipeThread, Male, ThreeQuarter), end(HoseThread, Female, ThreeQuarter), HoseOnPipe},
		{end(PipeThread, Male, ThreeQuarter), end(Parallel, Female, ThreeQuarter), MixedPipes},
		{end(PipeThread, Male, Half), end(Taper, Female, Half), MixedPipes},
		{end(PipeThread, Male, One), end(Parallel, Female, One), MixedPipes},
		{end(HoseThread, Female, ThreeQuarter), end(Parallel, Male, ThreeQuarter), HoseOnParallel},
		{end(Parallel, Male, ThreeQuarter), end(Taper, Female, ThreeQuarter), StraightInTaper},
		{end(Taper, Male, ThreeQuarter), end(Parallel, Female, ThreeQuarter), Tape},
		{end(Taper, Male, ThreeQuarter), end(Taper, Female, ThreeQuarter), Tape},
		{end(PipeThread, Male, ThreeQuarter), end(PipeThread, Female, ThreeQuarter), Tape},
		{end(PipeThread, Male, ThreeQuarter), end(PipeThread, Female, One), OtherSize},
		{end(PipeThread, Male, ThreeQuarter), end(PipeThread, Male, ThreeQuarter), SameSex},
		{end(HoseThread, Male, ThreeQuarter), end(HoseThread, Female, ThreeQuarter), Washer},
		{end(Parallel, Male, One), end(Parallel, Female, One), Washer},
		// C06: a barb for 0.600 does not enter tubing of 0.520; the one outside of 0.700
		// is that of two of the five.
		{end(Barb, Neither, 10), Tubing(7), OtherBore},
		{end(Barb, Neither, 10), Tubing(10), OneClamp},
		{end(Barb, Neither, 9), Tubing(8), OtherBore},
		{end(TubeGrip, Neither, 9), Tubing(10), Collar},
		{end(TubeGrip, Neither, 8), Tubing(9), OtherOutside},
		// Drip tubing of 20 mm in a compression fitting for PE pipe.
		{end(PipeGrip, Neither, 3), Tubing(2), SoftInGrip},
		{end(PipeGrip, Neither, 3), Tubing(3), Nut},
		{end(PipeGrip, Neither, 3), Tubing(4), OtherOutside},
		{end(Barb, Neither, 2), Tubing(3), HardOnBarb},
		{end(Insert, Neither, 14), Tubing(14), TwoClamps},
		{end(Insert, Neither, 14), Tubing(12), WrongGrip}, // 0.824 and 0.820 in
		{end(Socket, Neither, One), end(Rigid, Neither, One), Cement},
		{end(Socket, Neither, One), end(Rigid, Neither, ThreeQuarter), OtherSize},
		{end(Socket, Neither, One), Tubing(4), PlasticsMixed},
		{Tubing(1), Tubing(1), TwoTubes},
		{Tubing(catalogue.Custom), end(Barb, Neither, 1), OtherBore},
		{end(Taper, Male, Half), end(Barb, Neither, 1), NothingHolds},
	} {
		if got := Mate(c.a, c.b); got != c.want {
			t.Errorf("%s on %s: rule %d, want %d", c.a.Name(""), c.b.Name(""), got, c.want)
		}
	}
}

// The five tubes that are sold as 1/2 in: no barb of one goes into another.
func TestBarbsOfHalfInchTubing(t *testing.T) {
	for a := 7; a <= 11; a++ {
		for b := 7; b <= 11; b++ {
			if holds := Mate(End{Barb, Neither, a}, Tubing(b)).Holds(0); holds != (a == b) {
				t.Errorf("a barb for tube %d in tube %d: %v", a, b, holds)
			}
		}
	}
}

func near3(a, b, by float64) bool { return math.Abs(a-b) <= by }

// C01, C03, C04 and C08 of the reference, as they are printed there.
func TestThreadsAndPVC(t *testing.T) {
	in := func(v float64) float64 { return v * 0.0254 }
	for i, c := range []struct{ npt, npTurns, bsp, bspMM, bspTurns, pvc, pvcPSI float64 }{
		{0.840, 14, 0.825, 20.955, 14, 0.602, 600},
		{1.050, 14, 1.041, 26.441, 14, 0.804, 480},
		{1.315, 11.5, 1.309, 33.249, 11, 1.029, 450},
		{1.660, 11.5, 1.650, 41.910, 11, 1.360, 370},
	} {
		npt := Cuts[PipeThread]
		if !near3(npt.Of[i].Major, in(c.npt), 1e-9) || npt.Of[i].Turns != c.npTurns || npt.Taper != 1.0/16 || npt.Angle != 60 {
			t.Errorf("NPT %s: %+v (ASME B1.20.1, table 2)", Sizes[i], npt.Of[i])
		}
		for _, f := range []Family{Parallel, Taper} {
			bsp := Cuts[f]
			if !near3(bsp.Of[i].Major, in(c.bsp), in(0.001)) || !near3(bsp.Of[i].Major, c.bspMM/1000, 0.5e-6) || bsp.Of[i].Turns != c.bspTurns || bsp.Angle != 55 || (bsp.Taper > 0) != (f == Taper) {
				t.Errorf("BSP %s: %+v (ISO 228-1, ISO 7-1)", Sizes[i], bsp.Of[i])
			}
		}
		// Another table prints bores up to 0.01 in wider.
		if !near3(PVC[i].Bore, in(c.pvc), in(0.01)) || !near3(PVC[i].Rating, c.pvcPSI*6894.757, 10) || !near3(PVC[i].Outside, in(c.npt), 1e-9) {
			t.Errorf("PVC %s: %+v (schedule 40)", Sizes[i], PVC[i])
		}
	}
	hose := Cuts[HoseThread]
	if !near3(hose.Of[ThreeQuarter].Major, in(1.0625), in(0.005)) || hose.Of[ThreeQuarter].Turns != 11.5 || hose.Taper != 0 {
		t.Errorf("hose thread: %+v (ASME B1.20.7)", hose.Of[ThreeQuarter])
	}
	// Each family is refused the others because it is cut otherwise, not by a list.
	for a := range Taper + 1 {
		for b := range Taper + 1 {
			x, y := Cuts[a], Cuts[b]
			same := x.Angle == y.Angle && x.Of[ThreeQuarter] == y.Of[ThreeQuarter]
			if same == (Table[a][b] >= HoseOnPipe) {
				t.Errorf("families of threads %d and %d: cut alike %v, rule %d", a, b, same, Table[a][b])
			}
		}
	}
}

// No two parts are alike, and each mates with something at either end.
func TestPartsAreWhole(t *testing.T) {
	had := map[[2]End]bool{}
	all := map[End]bool{}
	for _, e := range All {
		all[e] = true
	}
	for _, p := range Parts {
		if had[[2]End{p.A, p.B}] || p.A != p.B && had[[2]End{p.B, p.A}] {
			t.Errorf("%s to %s stands twice", p.A.Name(""), p.B.Name(""))
		}
		had[[2]End{p.A, p.B}] = true
		if p.Price <= 0 || !all[p.A] || !all[p.B] {
			t.Errorf("%s to %s: %+v", p.A.Name(""), p.B.Name(""), p)
		}
	}
	if n := len(Parts); n < 150 || n > 400 {
		t.Errorf("%d parts", n)
	}
	t.Logf("%d ends, %d parts", len(All), len(Parts))
}
