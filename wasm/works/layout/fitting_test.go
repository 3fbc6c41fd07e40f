package layout

import (
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// What a row of [Fittings] must say, so that one that is half done is named.
func TestFittingsAreWhole(t *testing.T) {
	for kind := range JointKind(JointKinds) {
		f := &Fittings[kind]
		if f.Noun == nil {
			t.Errorf("Fittings has no noun for kind of joint %d, so it has no row or half of one", kind)
			continue
		}
		name := string(f.Noun.Name)
		if name == "" || string(f.Noun.The) != "the "+name {
			t.Errorf("kind of joint %d is called %q and %q, want a name, and the name after \"the\"", kind, name, f.Noun.The)
		}
		for j, held := range f.Noun.Held {
			how := catalogue.Joining(j).Word()
			if !strings.HasPrefix(strings.ToLower(string(held)), how+" "+name) {
				t.Errorf("%s, kind of joint %d, is asked for as %q where tubing takes %s fittings", name, kind, held, how)
			}
		}
		if kind != Adapter && f.One == "" && f.Many == "" {
			t.Errorf("%s, kind of joint %d, does not say where it stands", name, kind)
		}
		if f.PerRun != nil && f.Many == "" {
			t.Errorf("%s, kind of joint %d, does not say where several in the supply line stand", name, kind)
		}
		if f.PerRun != nil && f.Through == nil {
			t.Errorf("%s, kind of joint %d, stands in runs and loses nothing", name, kind)
		}
	}
}

// Every coefficient of the catalogue is that of a kind of joint, save those of
// open ends.
func TestEveryCoefficientIsOfAJoint(t *testing.T) {
	for i := range catalogue.Fittings {
		c := &catalogue.Fittings[i]
		of := func(f Fitting) bool { return f.Through == c || f.Branch == c }
		open := i == catalogue.Entrance || i == catalogue.Exit
		if slices.ContainsFunc(Fittings[:], of) == open {
			t.Errorf("%s: want a kind of joint in layout.Fittings that it is the loss of, or an open end", c.Name)
		}
	}
}

// Every kind of joint is laid by some plan, and in runs as often as its row says.
func TestEveryKindIsLaid(t *testing.T) {
	var laid [JointKinds]int
	forRandom(t, func(t *testing.T, seed uint64, l *Layout) {
		var inRuns [JointKinds]int
		for _, j := range l.Joints {
			laid[j.Kind]++
			inRuns[j.Kind] += j.N
		}
		for kind, n := range inRuns {
			want := 0
			for i := range l.Plan.Runs {
				want += Fittings[kind].perRun(&l.Plan.Runs[i])
			}
			if Fittings[kind].PerRun != nil && n != want {
				t.Errorf("%d of %s, want %d", n, Fittings[kind].Noun.Name, want)
			}
		}
	})
	for kind, n := range laid {
		if n == 0 {
			t.Errorf("no plan lays kind of joint %d: it needs PerRun, or a place in header.go, rows.go or ring.go", kind)
		}
	}
}

// What water loses in a joint is what the catalogue says of the way it takes.
// That of a link is tested with the links.
func TestLossesOfJoints(t *testing.T) {
	var said [JointKinds]bool
	for _, tt := range []struct {
		kind            JointKind
		through, branch float64 // from the catalogue's sources
	}{
		{Adapter, 0, 0}, {Joiner, 0, 0}, {HeaderJoiner, 0, 0}, {HeaderCap, 0, 0}, {RowCap, 0, 0},
		{RunElbow, 1.5, 0}, {TurnElbow, 1.5, 0},
		{RunTee, 0.9, 0}, {EntryTee, 0, 2}, {RowTee, 0.9, 2}, {FarTee, 0.9, 2},
		{BallValve, 0.05, 0}, {ZoneValve, 0.05, 0}, {CheckValve, 2.5, 0},
	} {
		if through(tt.kind) != tt.through || branch(tt.kind) != tt.branch {
			t.Errorf("kind of joint %d loses %g straight on and %g by its branch, want %g and %g", tt.kind, through(tt.kind), branch(tt.kind), tt.through, tt.branch)
		}
		said[tt.kind] = true
	}
	for kind := range JointKind(JointKinds) {
		if !said[kind] {
			t.Errorf("what kind of joint %d loses does not stand here a second time", kind)
		}
	}
}

// One of a kind, and several, in words.
func TestWhereJointsStand(t *testing.T) {
	for _, tt := range []struct {
		kind JointKind
		n    int
		want string
	}{
		{RunElbow, 1, "1 bend in the supply line"},
		{RunElbow, 3, "3 bends in the supply line"},
		{BallValve, 1, "1 in the supply line"},
		{HeaderJoiner, 1, "from the supply line to the header"},
		{RowTee, 1, "one at the row"},
		{RowTee, 4, "one at each of 4 rows"},
		{HeaderCap, 3, "one at each closed end of the two headers, to flush them"},
	} {
		if got := Fittings[tt.kind].Why(tt.n); got != tt.want {
			t.Errorf("%d of kind %d: %q, want %q", tt.n, tt.kind, got, tt.want)
		}
	}
}

// Nothing stands in a run that a plan does not give it.
func TestAnEmptyRunHasNoFittings(t *testing.T) {
	for kind := range JointKind(JointKinds) {
		if n := Fittings[kind].perRun(&plan.Run{Length: 5}); n != 0 {
			t.Errorf("%d of %s", n, Fittings[kind].Noun.Name)
		}
	}
}
