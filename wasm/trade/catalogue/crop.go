package catalogue

import "evenrow/wasm/ground/words"

// OwnCrops is how many crops a grower can add, and FirstOwn the position of
// the first of them in [Crops].
const (
	OwnCrops = 4
	FirstOwn = 15
)

// A Crop is one crop of the list. Its numbers are its traits; see [Crop.Of].
type Crop struct {
	Name   words.Text // "sweet pepper"
	seed   int        // row of the table of emergence
	fit    string     // see [Crop.Suits]
	traits [Traits]int16
	marks  string // by trait, a letter for a place in cropSources
}

// Own reports whether position i in [Crops] is a place for a crop of the
// grower's own.
func Own(i int) bool { return i >= FirstOwn && i < FirstOwn+OwnCrops }

// Crops is the list of crops. Numbers lie within the usual range of each, for
// plants trained to as many stems as is usual for it.
var Crops = []Crop{
	//                                                 spacing crowd slab medium height emerge plug block wait weeks    Kc ini mid tied end     ini dev mid late  young grown   seed     least most
	{"sweet pepper", pepperSeed, "btu", [Traits]int16{333, 320, 3, 5000, 200, 0, 16, 25, 95, 20, 60, 105, 115, 90, 30, 35, 40, 20, 50, 1800, 27, 32, 12, 32}, "ccddd" + "eccid" + "aaaa" + "bbbb" + "dd" + "cc" + "dd"},
	{"tomato", tomatoSeed, "btv", [Traits]int16{400, 270, 3, 6000, 220, 0, 14, 19, 60, 16, 60, 115, 120, 80, 30, 40, 45, 30, 50, 2700, 24, 29, 10, 32}, "cgdpd" + "eccdd" + "aaaa" + "bbbb" + "dd" + "hh" + "dd"},
	{"cucumber", cucumberSeed, "btv", [Traits]int16{450, 250, 2, 6000, 200, 0, 10, 13, 35, 12, 60, 100, 115, 75, 20, 30, 40, 15, 100, 3000, 27, 29, 14, 35}, "dcddc" + "eccdc" + "aaaa" + "bbbb" + "dd" + "kk" + "cd"},
	{"cherry tomato", tomatoSeed, "btv", [Traits]int16{400, 270, 3, 6000, 220, 0, 14, 19, 55, 16, 60, 115, 120, 80, 30, 40, 45, 30, 50, 2500, 20, 30, 10, 32}, "cdddd" + "eccfd" + "aaaa" + "bbbb" + "dd" + "ff" + "dd"},
	{"hot pepper", pepperSeed, "btu", [Traits]int16{450, 250, 3, 6000, 120, 0, 21, 35, 75, 16, 60, 105, 115, 90, 30, 35, 40, 20, 50, 1500, 27, 32, 12, 32}, "ddddd" + "ejjdd" + "aaaa" + "bbbb" + "dd" + "cc" + "dd"},
	{"aubergine (eggplant)", aubergineSeed, "btu", [Traits]int16{400, 250, 3, 6000, 200, 0, 16, 28, 70, 14, 60, 105, 0, 90, 30, 45, 40, 25, 100, 2000, 27, 32, 12, 33}, "ccddd" + "eccdd" + "aaea" + "bbbb" + "dd" + "cc" + "dd"},
	{"melon, trained up", melonSeed, "bux", [Traits]int16{250, 270, 4, 7000, 200, 0, 10, 14, 80, 3, 50, 105, 115, 75, 25, 35, 40, 20, 100, 2000, 27, 32, 12, 35}, "lllld" + "ecccd" + "aada" + "bbbb" + "dd" + "cc" + "dd"},
	{"strawberry", noSeed, "cuw", [Traits]int16{120, 1000, 8, 2400, 30, 0, 0, 0, 50, 22, 40, 85, 0, 75, 25, 35, 60, 30, 75, 300, 0, 0, -2, 30}, "crcmd" + "eccdm" + "aaea" + "dddd" + "dd" + "ee" + "dd"},
	{"bush bean", beanSeed, "euu", [Traits]int16{150, 3000, 6, 2500, 50, 0, 9, 0, 46, 4, 50, 105, 0, 90, 20, 30, 30, 10, 50, 250, 24, 29, 10, 32}, "ddddd" + "eccdd" + "aaea" + "bbbb" + "dd" + "nn" + "dd"},
	{"pole bean", beanSeed, "buu", [Traits]int16{200, 1100, 5, 3000, 200, 0, 9, 0, 55, 8, 50, 105, 115, 90, 20, 30, 30, 10, 100, 800, 24, 29, 10, 32}, "ddddd" + "eccdd" + "aaaa" + "bbbb" + "dd" + "nn" + "dd"},
	{"basil", basilSeed, "grf", [Traits]int16{200, 2000, 6, 1500, 40, 0, 24, 0, 30, 10, 60, 115, 0, 110, 20, 30, 40, 20, 50, 300, 20, 25, 10, 30}, "ffddd" + "eccdo" + "qqeq" + "dddd" + "dd" + "ff" + "df"},
	{"lettuce", lettuceSeed, "grf", [Traits]int16{250, 2200, 4, 1000, 25, 0, 21, 0, 28, 1, 70, 100, 0, 95, 20, 30, 15, 10, 30, 150, 13, 21, -1, 24}, "ffddd" + "eccff" + "aaea" + "bbbb" + "dd" + "ff" + "df"},
	{"kale", kaleSeed, "grf", [Traits]int16{300, 1200, 4, 3000, 60, 0, 32, 0, 38, 12, 70, 105, 0, 95, 20, 30, 20, 10, 100, 500, 16, 29, -5, 27}, "ddddd" + "eccdd" + "aaea" + "bbbb" + "dd" + "nn" + "dd"},
	{"spinach", spinachSeed, "grf", [Traits]int16{120, 6000, 8, 500, 25, 0, 21, 0, 30, 3, 70, 100, 0, 95, 20, 20, 15, 5, 20, 100, 18, 24, -5, 24}, "ddddd" + "eccdd" + "aaea" + "ssss" + "dd" + "nn" + "dd"},
	{"mint and other perennial herbs", herbSeed, "muf", [Traits]int16{300, 900, 4, 3000, 50, 0, 45, 0, 50, 39, 60, 115, 0, 110, 30, 40, 100, 30, 50, 300, 18, 24, -5, 30}, "ddddd" + "edddd" + "aaea" + "dddd" + "dd" + "dd" + "dd"},
	own("own crop 1"), own("own crop 2"), own("own crop 3"), own("own crop 4"),
}

// own is a place for a crop of the grower's own. It starts as a usual large
// fruiting crop.
func own(name words.Text) Crop {
	return Crop{name, noSeed, "btu", [Traits]int16{400, 250, 3, 6000, 180, 8, 14, 18, 60, 12, 60, 110, 115, 85, 30, 40, 45, 25, 75, 2000, 22, 28, 10, 32}, "cccccccccccccccccccccccc"}
}
