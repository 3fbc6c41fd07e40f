package sun

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"evenrow/wasm/ground/day"
)

// dm returns degrees and minutes of arc.
func dm(degrees, minutes float64) float64 { return degrees + minutes/60 }

// clock returns "07:25" in minutes.
func clock(t *testing.T, s string) float64 {
	t.Helper()
	h, err1 := strconv.Atoi(s[:2])
	m, err2 := strconv.Atoi(s[3:5])
	if err1 != nil || err2 != nil || s[2] != ':' {
		t.Fatalf("%q is no time", s)
	}
	v := float64(h*60 + m)
	if len(s) == 8 {
		sec, _ := strconv.Atoi(s[6:])
		v += float64(sec) / 60
	}
	return v
}

func mustDay(t *testing.T, s string) day.Day {
	t.Helper()
	d, ok := day.Parse(s)
	if !ok {
		t.Fatalf("%q is no day", s)
	}
	return d
}

// Sunrise and sunset against almanacs. Tables of the U.S. Naval Observatory
// round to whole minutes, and both methods agree to well below one: within a
// minute. Lengths differ by what two roundings can, and one more.
func TestAlmanac(t *testing.T) {
	const (
		sf = "U.S. Naval Observatory, annual table of sunrise and sunset, San Francisco, 2012"
		fr = "U.S. Naval Observatory, annual table of sunrise and sunset, Fredonia AZ, 2023"
		no = "U.S. Naval Observatory, annual table of sunrise and sunset, 60 N, 2019"
		fl = "U.S. Naval Observatory, annual table of sunrise and sunset, 29 N, 2019"
		to = "U.S. Naval Observatory, annual table of sunrise and sunset, Toronto, 2001"
	)
	tests := []struct {
		id, source, date string
		lat, lon, hours  float64
		rise, set        string
		length           float64 // min
	}{
		{"SU-00", sf, "2012-01-01", dm(37, 46), -dm(122, 26), -8, "07:25", "17:01", 576},
		{"SU-01", sf, "2012-02-29", dm(37, 46), -dm(122, 26), -8, "06:42", "18:03", 681},
		{"SU-03", sf, "2012-06-20", dm(37, 46), -dm(122, 26), -8, "04:48", "19:35", 887},
		{"SU-04", sf, "2012-09-22", dm(37, 46), -dm(122, 26), -8, "05:58", "18:06", 728},
		{"SU-06", sf, "2012-12-21", dm(37, 46), -dm(122, 26), -8, "07:22", "16:55", 573},
		{"SU-07", fr, "2023-01-01", dm(36, 57), -dm(112, 31), -7, "07:43", "17:24", 581},
		{"SU-08", fr, "2023-03-20", dm(36, 57), -dm(112, 31), -7, "06:34", "18:42", 728},
		{"SU-10", fr, "2023-07-15", dm(36, 57), -dm(112, 31), -7, "05:22", "19:49", 867},
		{"SU-11", fr, "2023-09-23", dm(36, 57), -dm(112, 31), -7, "06:19", "18:26", 727},
		{"SU-13", fr, "2023-12-21", dm(36, 57), -dm(112, 31), -7, "07:39", "17:17", 578},
		{"SU-14", no, "2019-01-01", 60, 0, 0, "09:02", "15:05", 363},
		{"SU-15", no, "2019-03-20", 60, 0, 0, "06:03", "18:14", 731},
		{"SU-17", no, "2019-06-21", 60, 0, 0, "02:36", "21:28", 1132},
		{"SU-18", no, "2019-09-23", 60, 0, 0, "05:46", "17:58", 732},
		{"SU-20", fl, "2019-01-01", 29, -81, -5, "07:18", "17:38", 620},
		{"SU-22", fl, "2019-06-21", 29, -81, -5, "05:26", "19:26", 840},
		{"SU-23", fl, "2019-12-22", 29, -81, -5, "07:14", "17:31", 617},
		{"SU-24", to, "2001-04-01", dm(43, 40), -dm(79, 25), -4, "06:59", "19:45", 766},
		{"SU-26", to, "2001-04-30", dm(43, 40), -dm(79, 25), -4, "06:11", "20:19", 848},
		{"SU-27", "U.S. Naval Observatory, 60 S, 150 W, 2019", "2019-06-21", -60, -150, -10, "09:06", "14:58", 352},
		{"SU-29", "U.S. Naval Observatory, 15 N, 75 E, 1750", "1750-06-21", 15, 75, 5, "05:31", "18:32", 781},
		// Its altitude of 1830 m does not enter: sunrise is defined on a level horizon.
		{"SU-40", "NREL/TP-560-34302 (Reda and Andreas, 2004), reference case", "2003-10-17", 39.742476, -105.1786, -7, "06:12:43", "17:20:19", 0},
	}
	const minute = 1.0
	for _, tt := range tests {
		got := Of(mustDay(t, tt.date), tt.lat, tt.lon)
		rise, set := got.Rise/60+tt.hours*60, got.Set/60+tt.hours*60
		near := minute
		if tt.id == "SU-40" {
			// The reference case takes refraction and radius at that altitude
			// and air pressure; its sunset is 1.5 minutes after the sea's.
			near = 1.5
		}
		if got.Kind != RisesAndSets || math.Abs(rise-clock(t, tt.rise)) > near || math.Abs(set-clock(t, tt.set)) > near {
			t.Errorf("%s: on %s the sun is of kind %d, at %.2f and %.2f min, want %s and %s (%s)", tt.id, tt.date, got.Kind, rise, set, tt.rise, tt.set, tt.source)
		}
		if tt.length > 0 && math.Abs(got.Length/60-tt.length) > 3 {
			t.Errorf("%s: on %s it is up for %.2f min, want %g (%s)", tt.id, tt.date, got.Length/60, tt.length, tt.source)
		}
	}
}

func TestJulianDay(t *testing.T) {
	// SU-42: 12:30:30 at UTC-7, of the reference case of NREL/TP-560-34302.
	const want = 2452930.312847
	if got := JulianDay(mustDay(t, "2003-10-17"), (12+7)*3600+30*60+30); math.Abs(got-want) > 1e-5 {
		t.Errorf("SU-42: Julian day %.6f, want %.6f", got, want)
	}
}

// Near a pole the sun creeps along the horizon, and a hundredth of a degree is
// many minutes: the tolerance is 20 minutes, as the reference grants to a simple
// formula.
func TestNearThePoles(t *testing.T) {
	const source = "U.S. Naval Observatory, tables of 2022"
	tests := []struct {
		id, date string
		lat, lon float64
		up       bool // at 0 h
		want     []string
	}{
		{"SU-50", "2022-01-01", 89, 30, false, nil},
		{"SU-51", "2022-04-01", 89, 30, true, nil},
		{"SU-53", "2022-03-20", 89, 30, false, []string{"01:39", "20:31", "23:14"}},
		{"SU-55", "2022-03-22", -90, 0, true, []string{"18:07"}},
		{"SU-55", "2022-09-20", -90, 0, false, []string{"21:52"}},
		{"SU-56", "2022-09-24", -88, 45, false, []string{"00:24", "18:06", "23:23"}},
	}
	for _, tt := range tests {
		d := mustDay(t, tt.date)
		if got := altitude(d, tt.lat, tt.lon)(0) > 0; got != tt.up {
			t.Errorf("%s: at 0 h of %s the sun is up: %t, want %t (%s)", tt.id, tt.date, got, tt.up, source)
		}
		events := Events(d, tt.lat, tt.lon, 0)
		if len(events) != len(tt.want) {
			t.Errorf("%s: %v on %s, want %v (%s)", tt.id, events, tt.date, tt.want, source)
			continue
		}
		rises := !tt.up
		for i, e := range events {
			t.Logf("%s: %.1f min, want %s", tt.id, e.At/60, tt.want[i])
			if e.Rises != rises || math.Abs(e.At/60-clock(t, tt.want[i])) > 20 {
				t.Errorf("%s: event %d on %s is %+v, want %s (%s)", tt.id, i, tt.date, e, tt.want[i], source)
			}
			rises = !rises
		}
	}
	// The pole has one sunrise and one sunset in the whole year.
	rises, sets := 0, 0
	for d := mustDay(t, "2022-01-01"); d.Year() == 2022; d++ {
		for _, e := range Events(d, -90, 0, 0) {
			if e.Rises {
				rises++
			} else {
				sets++
			}
		}
	}
	if rises != 1 || sets != 1 {
		t.Errorf("SU-55: %d sunrises and %d sunsets at the pole in 2022, want one of each (%s)", rises, sets, source)
	}
}

func TestPolarKinds(t *testing.T) {
	// SU-57, derived: by the definition of the horizon.
	for _, tt := range []struct {
		date string
		lat  float64
		want Kind
	}{
		{"2023-12-21", 70, Down},
		{"2023-06-21", 70, Up},
		{"2023-12-21", 66, RisesAndSets},
	} {
		if got := Of(mustDay(t, tt.date), tt.lat, 0); got.Kind != tt.want {
			t.Errorf("SU-57: at %g N on %s the sun is of kind %d, want %d", tt.lat, tt.date, got.Kind, tt.want)
		}
	}
	// At 66 N the sun rises at 634.635 min by the definition at one fixed
	// declination; a minute off is what the declination's change until then
	// can do where the sun grazes.
	if got := Of(mustDay(t, "2023-12-21"), 66, 0); math.Abs(got.Rise/60-634.635) > 1 {
		t.Errorf("SU-57: sunrise at %.3f min, want 634.635", got.Rise/60)
	}
}

// Between the polar circles the day of the page and the list of crossings of a
// clock agree, whatever clock it is.
func TestEventsAgreeWithTimes(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		d := day.Of(1900+r.IntN(300), 1, 1+r.IntN(366))
		lat, lon := 128*r.Float64()-64, 360*r.Float64()-180
		got := Of(d, lat, lon)
		offset := 12*3600 - got.Noon
		events := Events(d, lat, lon, offset)
		if got.Kind != RisesAndSets || len(events) != 2 || !events[0].Rises || events[1].Rises ||
			math.Abs(events[0].At-offset-got.Rise) > 0.01 || math.Abs(events[1].At-offset-got.Set) > 0.01 {
			t.Fatalf("at %g, %g on %s: %+v, and %+v of a clock %g s ahead", lat, lon, d.ISO(), got, events, offset)
		}
		if !(got.Rise < got.Noon && got.Noon < got.Set) || got.Length != got.Set-got.Rise {
			t.Fatalf("at %g, %g on %s: %+v", lat, lon, d.ISO(), got)
		}
	}
}

// Clocks on either side of the date line, and ones that have nothing to do with
// the sun: the times are those of the clock's own day, as its list of crossings
// has them.
func TestOnClock(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 1000 {
		d := day.Of(2027, 1, 1+r.IntN(700))
		lat, lon := 100*r.Float64()-50, 360*r.Float64()-180
		ahead := 3600 * float64(r.IntN(27)-12)
		got := OnClock(d, lat, lon, ahead)
		if got.Noon < 0 || got.Noon >= spin {
			t.Fatalf("noon at %g h", got.Noon/3600)
		}
		for _, e := range Events(d, lat, lon, ahead) {
			want := got.Set
			if e.Rises {
				want = got.Rise
			}
			// An event of the clock's day may belong to the noon before it or after.
			diff := math.Abs(e.At - want)
			if diff > 0.01 && math.Abs(diff-spin) > 240 {
				t.Fatalf("at %g, %g on %s, %g h ahead: %+v, and %+v", lat, lon, d.ISO(), ahead/3600, got, e)
			}
		}
	}
	// Apia is at 171.8 degrees west and keeps a clock 13 h ahead: noon of the
	// clock's day comes at 23:27 UT of the day before.
	if got := OnClock(mustDay(t, "2027-04-15"), -13.8, -171.8, 13*3600); math.Abs(got.Noon-12.45*3600) > 300 {
		t.Errorf("noon at %g h, want about 12:27", got.Noon/3600)
	}
}

// Wherever and whenever, times are numbers and the kind fits them.
func TestEverywhere(t *testing.T) {
	for lat := -90.0; lat <= 90; lat += 2.5 {
		for n := range 367 {
			d := day.Of(2027, 12, 20) + day.Day(n) // over New Year and a leap day
			got := Of(d, lat, lat*2)
			if !(got.Length >= 0 && got.Length <= spin) || math.IsNaN(got.Rise+got.Set+got.Noon) || got.Kind >= Kinds {
				t.Fatalf("at %g on %s: %+v", lat, d.ISO(), got)
			}
			// FAO-56 leaves out refraction and the sun's radius, 7 minutes at the
			// equator and 17 at 60 degrees, and its declination is within 1.3
			// degrees, 20 minutes more there.
			if more := got.Length - DayHours(lat, float64(d.OfYear())); math.Abs(lat) <= 60 && math.Abs(more) > 37*60 {
				t.Fatalf("at %g on %s the almanac's day is %.1f min longer than that of FAO-56", lat, d.ISO(), more/60)
			}
			if ra := Extraterrestrial(lat, float64(d.OfYear())); !(ra >= 0 && ra < 50e6) {
				t.Errorf("at %g on %s the radiation is %g", lat, d.ISO(), ra)
			}
		}
	}
}

// The southern summer is the northern winter, half a year on, but for the
// distance of the sun.
func TestTheSouthHasTheOtherSeasons(t *testing.T) {
	for _, lat := range []float64{5, 34, 52} {
		north, south := Of(mustDay(t, "2027-06-21"), lat, 0), Of(mustDay(t, "2027-12-22"), -lat, 0)
		if math.Abs(north.Length-south.Length) > 60 {
			t.Errorf("the longest day at %g is %g s, in the south %g s", lat, north.Length, south.Length)
		}
		j, s := Extraterrestrial(lat, 172)/Distance(172), Extraterrestrial(-lat, 355)/Distance(355)
		if math.Abs(j-s) > 0.001*j {
			t.Errorf("at %g: %g in the north, %g in the south", lat, j, s)
		}
	}
}

// Between two midnights the sun's position is drawn through three of them. Its
// times are those of the position worked out at each of them, to a hundredth of
// a second where it crosses the horizon at an angle that an almanac would list.
func TestTimesAreThoseOfThePositionItself(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 9))
	worst := 0.0
	for range 3000 {
		d := day.Of(1990+rng.IntN(80), 1+rng.IntN(12), 1+rng.IntN(28))
		lat, lon := 120*rng.Float64()-60, 360*rng.Float64()-180
		got, itself := Of(d, lat, lon), altitude(d, lat, lon)
		if got.Kind != RisesAndSets {
			t.Fatalf("day %d at %g degrees: %v", d, lat, got.Kind)
		}
		for _, at := range []float64{got.Rise, got.Set} {
			const h = 10
			off := itself(at) / (itself(at+h) - itself(at-h)) * 2 * h
			worst = max(worst, math.Abs(off))
		}
	}
	if worst > 0.01 {
		t.Errorf("a sunrise or sunset is off by %g s", worst)
	}
	t.Logf("off by %g s at most", worst)
}
