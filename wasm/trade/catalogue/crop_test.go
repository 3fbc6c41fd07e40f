package catalogue

import (
	"math"
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/ground/source"
)

func cropNamed(t *testing.T, name string) *Crop {
	t.Helper()
	for i := range Crops {
		if string(Crops[i].Name) == name {
			return &Crops[i]
		}
	}
	t.Fatalf("no crop %s", name)
	return nil
}

// Days to emergence, sown 12 mm deep, at 10, 15, 20, 25, 30 and 35 °C:
// Harrington and Minges, Vegetable Seed Germination (1954), as given in Knott's
// Handbook (1997). Whole days as printed, so they are met exactly. -1 is "none
// germinated", 0 "not tested".
func TestEmergence(t *testing.T) {
	temps := []float64{10, 15, 20, 25, 30, 35}
	for _, c := range []struct {
		id, crop string
		days     [6]float64
	}{
		{"GE-00", "tomato", [6]float64{43, 14, 8, 6, 6, 9}},
		{"GE-00", "cherry tomato", [6]float64{43, 14, 8, 6, 6, 9}},
		{"GE-01", "sweet pepper", [6]float64{-1, 25, 13, 8, 8, 9}},
		{"GE-03", "aubergine (eggplant)", [6]float64{0, 0, 13, 8, 5, 0}},
		{"GE-05", "bush bean", [6]float64{-1, 16, 11, 8, 6, 6}}, // another printing: none at 35 °C
		{"GE-06", "lettuce", [6]float64{7, 4, 3, 2, 3, -1}},
		{"", "cucumber", [6]float64{-1, 13, 6, 4, 3, 3}},
		{"", "melon, trained up", [6]float64{0, 0, 8, 4, 3, 0}},
		{"", "spinach", [6]float64{12, 7, 6, 5, 6, -1}},
	} {
		crop := cropNamed(t, c.crop)
		for i, temp := range temps {
			days, how := crop.Emergence(temp)
			switch want := c.days[i]; {
			case want < 0:
				if how != Dead {
					t.Errorf("%s: %s at %g °C: %g days, %d, want none", c.id, c.crop, temp, days, how)
				}
			case want == 0:
				if how != Untested || days < 3 {
					t.Errorf("%s: %s at %g °C: %g days, %d, want not tested", c.id, c.crop, temp, days, how)
				}
			case how != Tested || math.Abs(days-want) > 1e-9: // the last bits of 1/(1/d)
				t.Errorf("%s: %s at %g °C: %g days, %d, want %g", c.id, c.crop, temp, days, how, want)
			}
		}
	}
}

// Between tested temperatures the days lie between those of both, and nothing
// jumps.
func TestEmergenceIsSmooth(t *testing.T) {
	for i := range Crops {
		c := &Crops[i]
		if _, how := c.Emergence(20); how == Bought {
			continue
		}
		was := 0.0
		for temp := 0.0; temp <= 50; temp += 0.01 {
			days, how := c.Emergence(temp)
			if !(days >= 1 && days < 2000) {
				t.Fatalf("%s at %g °C: %g days", c.Name, temp, days)
			}
			if how == Tested && was > 0 && math.Abs(1/days-1/was) > 0.002 { // 0.01 °C of the steepest, 1/2 a day in 5 °C, with room
				t.Fatalf("%s at %g °C: %g days after %g", c.Name, temp, days, was)
			}
			was = 0
			if how == Tested {
				was = days
			}
		}
	}
	// Halfway between none at 10 °C and 25 days at 15 °C a seed takes twice as
	// long (derived: half the speed).
	if days, how := cropNamed(t, "sweet pepper").Emergence(12.5); how != Tested || math.Abs(days-50) > 1e-9 {
		t.Errorf("pepper at 12.5 °C: %g days", days)
	}
}

// Values that were read in the works that the table names. Where a work prints
// a range the value lies in it.
func TestPublishedTraits(t *testing.T) {
	for _, c := range []struct {
		crop      string
		trait     Trait
		low, high float64
		work      string
	}{
		{"tomato", KcIni, 0.6, 0.6, fao56}, {"tomato", KcMid, 1.15, 1.15, fao56}, {"tomato", KcTied, 1.20, 1.20, fao56}, {"tomato", KcEnd, 0.70, 0.90, fao56},
		{"sweet pepper", KcIni, 0.6, 0.6, fao56}, {"sweet pepper", KcMid, 1.05, 1.05, fao56}, {"sweet pepper", KcTied, 1.15, 1.15, fao56}, {"sweet pepper", KcEnd, 0.90, 0.90, fao56},
		{"aubergine (eggplant)", KcMid, 1.05, 1.05, fao56}, {"aubergine (eggplant)", KcEnd, 0.90, 0.90, fao56},
		{"cucumber", KcIni, 0.6, 0.6, fao56}, {"cucumber", KcMid, 1.00, 1.00, fao56}, {"cucumber", KcTied, 1.15, 1.15, fao56}, {"cucumber", KcEnd, 0.75, 0.75, fao56},
		{"melon, trained up", KcIni, 0.5, 0.5, fao56}, {"melon, trained up", KcMid, 1.05, 1.05, fao56}, {"melon, trained up", KcEnd, 0.75, 0.75, fao56},
		{"strawberry", KcIni, 0.40, 0.40, fao56}, {"strawberry", KcMid, 0.85, 0.85, fao56}, {"strawberry", KcEnd, 0.75, 0.75, fao56},
		{"bush bean", KcIni, 0.5, 0.5, fao56}, {"bush bean", KcMid, 1.05, 1.05, fao56}, {"pole bean", KcTied, 1.15, 1.15, fao56}, {"bush bean", KcEnd, 0.90, 0.90, fao56},
		{"lettuce", KcIni, 0.7, 0.7, fao56}, {"lettuce", KcMid, 1.00, 1.00, fao56}, {"lettuce", KcEnd, 0.95, 0.95, fao56},
		{"spinach", KcMid, 1.00, 1.00, fao56}, {"kale", KcMid, 1.05, 1.05, fao56}, {"basil", KcIni, 0.60, 0.60, fao56}, {"basil", KcEnd, 1.10, 1.10, fao56},
		{"tomato", Ini, 30, 30, fao56}, {"tomato", Dev, 40, 40, fao56}, {"tomato", Mid, 45, 45, fao56}, {"tomato", Late, 30, 30, fao56},
		{"sweet pepper", Ini, 25, 30, fao56}, {"sweet pepper", Dev, 35, 35, fao56}, {"sweet pepper", Mid, 40, 40, fao56}, {"sweet pepper", Late, 20, 20, fao56},
		{"aubergine (eggplant)", Ini, 30, 30, fao56}, {"aubergine (eggplant)", Dev, 45, 45, fao56}, {"aubergine (eggplant)", Mid, 40, 40, fao56}, {"aubergine (eggplant)", Late, 25, 25, fao56},
		{"cucumber", Ini, 20, 20, fao56}, {"cucumber", Dev, 30, 30, fao56}, {"cucumber", Mid, 40, 40, fao56}, {"cucumber", Late, 15, 15, fao56},
		{"melon, trained up", Ini, 25, 25, fao56}, {"melon, trained up", Dev, 35, 35, fao56}, {"melon, trained up", Mid, 40, 40, fao56}, {"melon, trained up", Late, 20, 20, fao56},
		{"bush bean", Ini, 20, 20, fao56}, {"bush bean", Dev, 30, 30, fao56}, {"bush bean", Mid, 30, 30, fao56}, {"bush bean", Late, 10, 10, fao56},
		{"lettuce", Ini, 20, 20, fao56}, {"lettuce", Dev, 30, 30, fao56}, {"lettuce", Mid, 15, 15, fao56}, {"lettuce", Late, 10, 10, fao56},
		{"spinach", Mid, 15, 15, fao56}, {"kale", Mid, 20, 20, fao56},
		{"tomato", Crowd, 2.5, 2.8, "Xu"}, {"melon, trained up", Crowd, 2.7, 2.7, "melon density"}, {"lettuce", Crowd, 20, 25, fao589}, {"basil", Crowd, 8, 40, fao589},
		{"tomato", Medium1, 5e-3, 10e-3, "Pires"}, {"strawberry", Medium1, 2.4e-3, 2.4e-3, "Kubota"},
		{"tomato", SeedLow, 24, 24, "Texas"}, {"tomato", SeedHigh, 29, 29, "Texas"}, {"lettuce", SeedLow, 13, 13, fao589}, {"lettuce", SeedHigh, 21, 21, fao589},
		{"basil", SeedLow, 20, 20, fao589}, {"basil", SeedHigh, 25, 25, fao589}, {"basil", Most, 30, 30, fao589},
		{"kale", SeedLow, 15.5, 16, "Oregon"}, {"spinach", SeedHigh, 23.9, 24, "Oregon"}, // 60 °F and 75 °F, in whole degrees
		{"lettuce", Wait, 24, 32, fao589}, {"sweet pepper", Wait, 85, 100, "Alberta"},
	} {
		crop := cropNamed(t, c.crop)
		if v := crop.Of(c.trait); v < c.low || v > c.high {
			t.Errorf("%s, trait %d: %g, want %g to %g (%s)", c.crop, c.trait, v, c.low, c.high, c.work)
		}
		if ref := crop.Ref(c.trait); ref.Standing != source.Published || !strings.Contains(ref.Work, c.work) {
			t.Errorf("%s, trait %d is from %s, want %s", c.crop, c.trait, ref, c.work)
		}
	}
}

// Lengths of the four stages, in days, are those of one printed row: FAO-56,
// table 11, pages 104 and 105. For spinach it prints two, of 60 and of 70 days;
// the table of crops has the first.
func TestStageLengthsAreOnePrintedRow(t *testing.T) {
	printed := map[string][][4]float64{
		"tomato":               {{30, 40, 45, 30}, {35, 40, 50, 30}, {35, 45, 70, 30}},
		"cherry tomato":        {{30, 40, 45, 30}, {35, 40, 50, 30}, {35, 45, 70, 30}},
		"sweet pepper":         {{25, 35, 40, 20}, {30, 35, 40, 20}, {30, 40, 110, 30}},
		"hot pepper":           {{25, 35, 40, 20}, {30, 35, 40, 20}, {30, 40, 110, 30}},
		"aubergine (eggplant)": {{30, 40, 40, 20}, {30, 45, 40, 25}},
		"cucumber":             {{20, 30, 40, 15}, {25, 35, 50, 20}},
		"melon, trained up":    {{25, 35, 40, 20}},
		"bush bean":            {{20, 30, 30, 10}, {15, 25, 25, 10}},
		"pole bean":            {{20, 30, 30, 10}, {15, 25, 25, 10}},
		"lettuce":              {{20, 30, 15, 10}},
		"kale":                 {{20, 30, 20, 10}}, // crucifers
		"spinach":              {{20, 20, 15, 5}},
	}
	for i := range Crops {
		c := &Crops[i]
		if !strings.Contains(c.Ref(Ini).String(), "table 11") {
			if printed[string(c.Name)] != nil {
				t.Errorf("%s is not from table 11", c.Name)
			}
			continue
		}
		if row := [4]float64{c.Of(Ini), c.Of(Dev), c.Of(Mid), c.Of(Late)}; !slices.Contains(printed[string(c.Name)], row) {
			t.Errorf("%s: %v, want one of %v", c.Name, row, printed[string(c.Name)])
		}
	}
}

// Ages at planting out, in weeks: published ones by extension services and
// tables of seed houses, as ranges.
func TestAges(t *testing.T) {
	for _, c := range []struct {
		crop      string
		low, high float64
	}{
		{"tomato", 4, 7}, {"sweet pepper", 5.8, 8}, {"hot pepper", 8, 10}, {"aubergine (eggplant)", 6, 9}, {"cucumber", 2, 4}, {"melon, trained up", 3, 4}, {"lettuce", 2, 5}, {"kale", 4, 6},
	} {
		crop := cropNamed(t, c.crop)
		if age := (crop.Of(InPlug) + crop.Of(InBlock)) / 7; age < c.low || age > c.high {
			t.Errorf("%s is planted out at %.1f weeks, want %g to %g", c.crop, age, c.low, c.high)
		}
	}
}

func TestEveryCropIsWhole(t *testing.T) {
	for i := range Crops {
		c := &Crops[i]
		if len(c.marks) != Traits+Methods || len(c.fit) != Methods || Own(i) != strings.HasPrefix(string(c.Name), "own crop") {
			t.Fatalf("%s: %d marks, %d methods", c.Name, len(c.marks), len(c.fit))
		}
		for k := range Traits {
			if ref := c.Ref(Trait(k)); ref.Standing == source.Published && ref.Work == "" {
				t.Errorf("%s, trait %d: no source", c.Name, k)
			}
		}
		better := false
		for m := range Method(Methods) {
			how, why := c.Suits(m)
			if why == "" {
				t.Errorf("%s: nothing said of %s", c.Name, MethodNames[m])
			}
			if ref := c.SuitsRef(m); ref.Standing == source.Published && ref.Work == "" {
				t.Errorf("%s, %s: no source", c.Name, MethodNames[m])
			}
			better = better || how < Poor
		}
		if !better || !Own(i) && c.seed == noSeed && c.Of(InPlug) > 0 || c.seed != noSeed && c.SeedRef().String() == "" {
			t.Errorf("%s is suited by nothing, or comes up by nothing", c.Name)
		}
		for _, pair := range [][2]Trait{{Young, Grown}, {Least, Most}, {KcIni, KcMid}} {
			if c.Of(pair[0]) >= c.Of(pair[1]) {
				t.Errorf("%s: %g is not below %g", c.Name, c.Of(pair[0]), c.Of(pair[1]))
			}
		}
	}
}
