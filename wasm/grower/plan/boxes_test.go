package plan

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"evenrow/wasm/ground/unit"
)

// A number that is typed, kept, printed into its box and read again is the same
// number to the last bit, at the limits of its field, next to them, near its
// default and between, in both systems of units: the plan on the page is the
// plan in the link.
func TestBoxesKeepEveryBit(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 3))
	for _, s := range Sections() {
		for _, f := range s.Fields() {
			if f.Type != Number {
				continue
			}
			for _, sys := range []unit.System{unit.Metric, unit.US} {
				p := Default()
				p.Units = sys
				if s.List {
					s.Resize(p, 1)
				}
				s.SetDefaults(p, 0)
				u := unit.Of(f.Kind, sys)
				for n := range 400 {
					x := u.FromInner(between(r, f, n))
					typed := strconv.FormatFloat(x, 'g', 1+r.IntN(17), 64)
					if n%20 == 0 {
						typed = strconv.FormatFloat(x, 'g', -1, 64)
					}
					if problem := f.Read(p, 0, typed); problem != nil {
						t.Fatalf("%s %q: %s", Path(f, 0), typed, said(problem))
					}
					v := *f.Number(p, 0)
					if v != f.Default && v != u.ToInner(read(t, typed)) {
						t.Fatalf("%s, system %d: %q is read as %v", Path(f, 0), sys, typed, v)
					}
					box := f.Typed(p, 0)
					if problem := f.Read(p, 0, box); problem != nil {
						t.Fatalf("%s %q became %q, which %s", Path(f, 0), typed, box, said(problem))
					}
					if got := *f.Number(p, 0); got != v {
						t.Fatalf("%s, system %d: %q is %v, stands in its box as %q and is then %v", Path(f, 0), sys, typed, v, box, got)
					}
				}
			}
		}
	}
}

func read(t *testing.T, typed string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(typed, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// Nothing is typed in the unit inside but by hand, or by a link that was made
// up: its number is shown in a way that reads as the same one, where there is
// one, and the form does not wander off from there.
func TestBoxesOfNumbersThatNobodyTyped(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 4))
	for _, s := range Sections() {
		for _, f := range s.Fields() {
			if f.Type != Number {
				continue
			}
			for _, sys := range []unit.System{unit.Metric, unit.US} {
				p := Default()
				p.Units = sys
				if s.List {
					s.Resize(p, 1)
				}
				s.SetDefaults(p, 0)
				for n := range 400 {
					v := between(r, f, n)
					*f.Number(p, 0) = v
					box := f.Typed(p, 0)
					if problem := f.Read(p, 0, box); problem != nil {
						t.Fatalf("%s, system %d: %v stands in its box as %q, which %s", Path(f, 0), sys, v, box, said(problem))
					}
					got := *f.Number(p, 0)
					if got == f.Default && box == f.usual(sys) {
						continue // in the other system the default has a tidier neighbour, whose text it takes
					}
					// Shares, slopes and hours are typed in one unit, in which
					// not every number of the unit inside can be written.
					if near := max(2e-16*math.Abs(v), 1e-307); got != v && (math.Abs(got-v) > near || f.Kind != unit.Share && f.Kind != unit.Slope && f.Kind != unit.Hours) {
						t.Fatalf("%s, system %d: %v stands in its box as %q and is then %v", Path(f, 0), sys, v, box, got)
					}
					if again := f.Typed(p, 0); f.Read(p, 0, again) != nil || *f.Number(p, 0) != got {
						t.Fatalf("%s, system %d: %q goes on to %q", Path(f, 0), sys, box, again)
					}
				}
			}
		}
	}
}

// between returns a value of a field, in the inner unit: by turns a limit, its
// neighbours, near the default, and anything, evenly or by orders of magnitude.
func between(r *rand.Rand, f *Field, n int) float64 {
	lo, hi := f.Min, f.Max
	switch n % 8 {
	case 0:
		return lo
	case 1:
		return hi
	case 2:
		return math.Nextafter(lo, hi)
	case 3:
		return math.Nextafter(hi, lo)
	case 4:
		return f.Default * (1 + (r.Float64()-0.5)*math.Pow(10, -float64(3+r.IntN(13))))
	case 5:
		if lo > 0 {
			return lo * math.Pow(hi/lo, r.Float64())
		}
		return hi * math.Pow(10, -12*r.Float64())
	}
	return lo + (hi-lo)*r.Float64()
}
