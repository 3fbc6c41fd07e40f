package crops

import (
	"bytes"
	"encoding/csv"
	"flag"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"evenrow/wasm/trade/catalogue"
)

var update = flag.Bool("update", false, "make the table of crops anew")

const folder = "../../wasm/trade/catalogue"

func TestTheTableIsMadeOfTheFiles(t *testing.T) {
	want, err := Table(os.DirFS(folder))
	if err != nil {
		t.Fatalf("in wasm/trade/catalogue:\n%v", err)
	}
	name := filepath.Join(folder, Made)
	if *update {
		if err := os.WriteFile(name, want, 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	got, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s is not what %s and %s say: run go test ./build/crops -update", Made, List, Sources)
	}
}

// inner is what one of each unit at the end of a head is in the inner unit of
// the calculation.
var inner = map[string]float64{"cm": 1e-2, "m": 1, "L": 1e-3, "L/day": 1e-3, "days": 1, "weeks": 1, "°C": 1}

// What a crop's line says is what the calculation takes from it, in inner
// units: the unit of each head, and no step or letter of the table, decides.
func TestCropsSayWhatTheirLinesSay(t *testing.T) {
	file, err := os.Open(filepath.Join(folder, List))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows)-1 != len(catalogue.Crops) {
		t.Fatalf("%d crops of %d lines", len(catalogue.Crops), len(rows)-1)
	}
	places := placesOf(t)
	for i, row := range rows[1:] {
		crop := &catalogue.Crops[i]
		if string(crop.Name) != row[0] {
			t.Errorf("crop %d is %s, and its line says %s", i, crop.Name, row[0])
		}
		for method := range catalogue.Method(catalogue.Methods) {
			at := len(cropHeads) + 2*int(method)
			if want := string(catalogue.MethodNames[method]); !strings.EqualFold(rows[0][at], want) {
				t.Fatalf("%s stands in the place of %s", rows[0][at], want)
			}
			if ref := crop.SuitsRef(method); ref.Work+"|"+ref.At != places[row[at+1]] {
				t.Errorf("%s, %s: the calculation has it from %s, the line from %s", row[0], rows[0][at], ref, row[at+1])
			}
		}
		for trait := range catalogue.Trait(catalogue.Traits) {
			at := len(cropHeads) + 2*catalogue.Methods + 2*int(trait)
			one := 1.0
			if _, unit, ok := strings.Cut(rows[0][at], ", "); ok {
				if one = inner[unit]; one == 0 {
					t.Fatalf("%s: what is a %s?", rows[0][at], unit)
				}
			}
			typed, err := strconv.ParseFloat(row[at], 64)
			if err != nil {
				t.Fatal(err)
			}
			// Two roundings of a float64 apart.
			if got, want := crop.Of(trait), typed*one; math.Abs(got-want) > 1e-15*math.Abs(want) {
				t.Errorf("%s, %s: the calculation has %g, the line %g", row[0], rows[0][at], got, want)
			}
			if ref := crop.Ref(trait); ref.Work+"|"+ref.At != places[row[at+1]] {
				t.Errorf("%s, %s: the calculation has it from %s, the line from %s", row[0], rows[0][at], ref, row[at+1])
			}
		}
	}
}

// placesOf returns work and place of each source by its name.
func placesOf(t *testing.T) map[string]string {
	file, err := os.Open(filepath.Join(folder, Sources))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	places := map[string]string{}
	for _, row := range rows[1:] {
		places[row[0]] = row[1] + "|" + row[2]
	}
	return places
}

// Whatever is half done is told with its file and line.
func TestHalfDoneCrops(t *testing.T) {
	read := func(name string) string {
		text, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	for _, tt := range []struct {
		name, file, old, new string
		want                 string
	}{
		{"no source", List, ",dams,practice,40,practice,2.7,xu,", ",dams,practice,40,,2.7,xu,",
			"crops.csv:3: tomato: spacing in the row, cm has no source beside it"},
		{"no source of a rating", List, ",practice,dams,practice,40,practice,2.7,xu,", ",practice,dams,,40,practice,2.7,xu,",
			"crops.csv:3: tomato: nutrient film has no source beside it"},
		{"an unknown source", List, ",2.7,xu,", ",2.7,hearsay,",
			`crops.csv:3: tomato: plants to a square metre: the source "hearsay" is not in crop-sources.csv`},
		{"no value", List, ",2.7,xu,", ",,xu,", "crops.csv:3: tomato: plants to a square metre is missing"},
		{"no number", List, ",2.7,xu,", ",many,xu,", `crops.csv:3: tomato: plants to a square metre: "many" is no number`},
		{"below nothing", List, ",2.7,xu,", ",-2.7,xu,", "crops.csv:3: tomato: plants to a square metre: -2.7 is below 0"},
		{"too fine", List, ",2.7,xu,", ",2.705,xu,", "crops.csv:3: tomato: plants to a square metre: 2.705 is too large, or has too many digits: the table holds steps of 0.01"},
		{"a cell too few", List, ",2.7,xu,", ",2.7,", "crops.csv:3: tomato has 55 cells and must have 56, one under each head"},
		{"a range the wrong way round", List, ",0.05,memory,2.7,memory,24,", ",2.7,memory,0.05,memory,24,",
			"crops.csv:3: tomato: water just planted, L/day must be less than water grown in full sun, L/day"},
		{"temperatures the wrong way round", List, ",24,texas,29,texas,", ",29,texas,24,texas,",
			"crops.csv:3: tomato: seeds come up well from, °C must not be more than seeds come up well to, °C"},
		{"a name twice", List, "\ncucumber,", "\ntomato,", "crops.csv:4: tomato: is there twice"},
		{"no name", List, "\ncucumber,", "\n,", "crops.csv:4: : a crop must have a name"},
		{"an unknown seed", List, "\ntomato,tomato,", "\ntomato,potato,", `crops.csv:3: tomato: the seed "potato" is no row of the table of emergence in seed.go`},
		{"an unknown reason", List, "\ntomato,tomato,base,", "\ntomato,tomato,b,", `crops.csv:3: tomato: drip on a medium: "b" is no reason of fitness.go`},
		{"a crop before the places of one's own", List, "\nown crop 1,", "\nphysalis,",
			"crops.csv:17: physalis: stands at position 15: crops of the grower's own are those from 15 on, 4 of them, for links hold positions"},
		{"another head", List, "height, m", "height, cm", "crops.csv:1: its heads must be "},
		{"a source without a work", Sources, `pires,"Pires et al., Scientia Agricola (2011)",`, "pires,,", "crop-sources.csv:17: pires is published and names no work"},
		{"an unknown standing", Sources, "memory,,,memory", "memory,,,hearsay", `crop-sources.csv:5: memory has the standing "hearsay"`},
		{"a source twice", Sources, "\nkubota,", "\npires,", "crop-sources.csv:17: pires is there twice"},
		{"a source of nothing", Sources, "\nxu,", "\nyu,", "crop-sources.csv: yu is the source of nothing"},
		{"an open quote", Sources, `Pires et al., Scientia Agricola (2011)",`, "Pires,", "crop-sources.csv:"},
	} {
		files := fstest.MapFS{}
		for _, name := range []string{List, Sources, "seed.go", "fitness.go"} {
			text := read(name)
			if name == tt.file {
				if strings.Count(text, tt.old) != 1 {
					t.Fatalf("%s: %q is not there once", tt.name, tt.old)
				}
				text = strings.Replace(text, tt.old, tt.new, 1)
			}
			files[name] = &fstest.MapFile{Data: []byte(text)}
		}
		_, err := Table(files)
		if err == nil || !strings.Contains("\n"+err.Error(), "\n"+tt.want) {
			t.Errorf("%s: %v, want %s", tt.name, err, tt.want)
		}
	}
}
