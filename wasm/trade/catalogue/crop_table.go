// Code generated from crops.csv and crop-sources.csv by go test ./build/crops -update. DO NOT EDIT.

package catalogue

import "evenrow/wasm/ground/source"

// cropSources are the works that traits are from.
var cropSources = [...]source.Ref{
	{Work: "FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes and Smith, 1998)", At: "table 12: in the open air, for a standard climate", Standing: source.Published}, // fao56-12
	{Work: "FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes and Smith, 1998)", At: "table 11: a guide only", Standing: source.Published},                            // fao56-11
	{Work: "", At: "", Standing: source.Practice}, // practice
	{Work: "", At: "", Standing: source.Memory},   // memory
	{Work: "", At: "", Standing: source.Derived},  // derived
	{Work: "FAO Fisheries and Aquaculture Technical Paper 589 (2014)", At: "appendix 1", Standing: source.Published},                                                            // fao589-1
	{Work: "Xu et al., dynamic planting density of long-season tomato", At: "2.5 to 2.8 plants to a square metre", Standing: source.Published},                                  // xu
	{Work: "Texas A and M extension, Growing Greenhouse Tomato Transplants", At: "", Standing: source.Published},                                                                // texas
	{Work: "Alberta Agriculture, Production of Sweet Bell Peppers", At: "transplants of six weeks, about 20 weeks from seed to the first pick", Standing: source.Published},     // alberta
	{Work: "University of California Master Gardeners of Santa Clara, March advice", At: "peppers of eight to ten weeks", Standing: source.Published},                           // santa-clara
	{Work: "University of Florida extension HS790", At: "", Standing: source.Published},                                                                                         // florida-790
	{Work: "Trial of melon density on coco slabs (2019)", At: "", Standing: source.Published},                                                                                   // melon-trial
	{Work: "Kubota and Kroggel, University of Arizona (2014)", At: "2.4 litres a plant; harvest from November to April", Standing: source.Published},                            // kubota
	{Work: "Oregon State University, table of germination temperatures", At: "as reproduced", Standing: source.Published},                                                       // oregon
	{Work: "Resh, Hobby Hydroponics", At: "plants kept for three to four months", Standing: source.Published},                                                                   // resh
	{Work: "Pires et al., Scientia Agricola (2011)", At: "5 to 10 litres of coco a plant", Standing: source.Published},                                                          // pires
	{Work: "FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes and Smith, 1998)", At: "table 12: mint, which stands in for it", Standing: source.Published},             // fao56-12-mint
	{Work: "Cantliffe et al., Proc. Florida State Hort. Soc. 120 (2007)", At: "21 to a square metre in several tiers; one tier holds half of them", Standing: source.Published}, // cantliffe
	{Work: "FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes and Smith, 1998)", At: "table 11: the shorter of two rows, of 60 days", Standing: source.Published},      // fao56-11-short
}

// Crops is the list of crops.
var Crops = []Crop{
	{"sweet pepper", pepperSeed, [Methods]reason{base, air, seldom}, [Traits]int16{333, 320, 3, 5000, 200, 0, 16, 25, 95, 20, 60, 105, 115, 90, 30, 35, 40, 20, 50, 1800, 27, 32, 12, 32}, "ccdddeccidaaaabbbbddccddccc"},
	{"tomato", tomatoSeed, [Methods]reason{base, air, dams}, [Traits]int16{400, 270, 3, 6000, 220, 0, 14, 19, 60, 16, 60, 115, 120, 80, 30, 40, 45, 30, 50, 2700, 24, 29, 10, 32}, "cgdpdeccddaaaabbbbddhhddccc"},
	{"cucumber", cucumberSeed, [Methods]reason{base, air, dams}, [Traits]int16{450, 250, 2, 6000, 200, 0, 10, 13, 35, 12, 60, 100, 115, 75, 20, 30, 40, 15, 100, 3000, 27, 29, 14, 35}, "dcddceccdcaaaabbbbddkkcdccc"},
	{"cherry tomato", tomatoSeed, [Methods]reason{base, air, dams}, [Traits]int16{400, 270, 3, 6000, 220, 0, 14, 19, 55, 16, 60, 115, 120, 80, 30, 40, 45, 30, 50, 2500, 20, 30, 10, 32}, "cddddeccfdaaaabbbbddffddccc"},
	{"hot pepper", pepperSeed, [Methods]reason{base, air, seldom}, [Traits]int16{450, 250, 3, 6000, 120, 0, 21, 35, 75, 16, 60, 105, 115, 90, 30, 35, 40, 20, 50, 1500, 27, 32, 12, 32}, "dddddejjddaaaabbbbddccddccc"},
	{"aubergine (eggplant)", aubergineSeed, [Methods]reason{base, air, seldom}, [Traits]int16{400, 250, 3, 6000, 200, 0, 16, 28, 70, 14, 60, 105, 0, 90, 30, 45, 40, 25, 100, 2000, 27, 32, 12, 33}, "ccdddeccddaaeabbbbddccddccc"},
	{"melon, trained up", melonSeed, [Methods]reason{base, seldom, heavy}, [Traits]int16{250, 270, 4, 7000, 200, 0, 10, 14, 80, 3, 50, 105, 115, 75, 25, 35, 40, 20, 100, 2000, 27, 32, 12, 35}, "lllldecccdaadabbbbddccddccc"},
	{"strawberry", noSeed, [Methods]reason{trough, seldom, gutter}, [Traits]int16{120, 1000, 8, 2400, 30, 0, 0, 0, 50, 22, 40, 85, 0, 75, 25, 35, 60, 30, 75, 300, 0, 0, -2, 30}, "crcmdeccdmaaeaddddddeeddccc"},
	{"bush bean", beanSeed, [Methods]reason{bed, seldom, seldom}, [Traits]int16{150, 3000, 6, 2500, 50, 0, 9, 0, 46, 4, 50, 105, 0, 90, 20, 30, 30, 10, 50, 250, 24, 29, 10, 32}, "dddddeccddaaeabbbbddnnddccc"},
	{"pole bean", beanSeed, [Methods]reason{base, seldom, seldom}, [Traits]int16{200, 1100, 5, 3000, 200, 0, 9, 0, 55, 8, 50, 105, 115, 90, 20, 30, 30, 10, 100, 800, 24, 29, 10, 32}, "dddddeccddaaaabbbbddnnddccc"},
	{"basil", basilSeed, [Methods]reason{costly, raft, channel}, [Traits]int16{200, 2000, 6, 1500, 40, 0, 24, 0, 30, 10, 60, 115, 0, 110, 20, 30, 40, 20, 50, 300, 20, 25, 10, 30}, "ffdddeccdoqqeqddddddffdfcff"},
	{"lettuce", lettuceSeed, [Methods]reason{costly, raft, channel}, [Traits]int16{250, 2200, 4, 1000, 25, 0, 21, 0, 28, 1, 70, 100, 0, 95, 20, 30, 15, 10, 30, 150, 13, 21, -1, 24}, "ffdddeccffaaeabbbbddffdfcff"},
	{"kale", kaleSeed, [Methods]reason{costly, raft, channel}, [Traits]int16{300, 1200, 4, 3000, 60, 0, 32, 0, 38, 12, 70, 105, 0, 95, 20, 30, 20, 10, 100, 500, 16, 29, -5, 27}, "dddddeccddaaeabbbbddnnddccc"},
	{"spinach", spinachSeed, [Methods]reason{costly, raft, channel}, [Traits]int16{120, 6000, 8, 500, 25, 0, 21, 0, 30, 3, 70, 100, 0, 95, 20, 20, 15, 5, 20, 100, 18, 24, -5, 24}, "dddddeccddaaeassssddnnddccc"},
	{"mint and other perennial herbs", herbSeed, [Methods]reason{perennial, seldom, channel}, [Traits]int16{300, 900, 4, 3000, 50, 0, 45, 0, 50, 39, 60, 115, 0, 110, 30, 40, 100, 30, 50, 300, 18, 24, -5, 30}, "dddddeddddaaeaddddddddddccc"},
	{"own crop 1", noSeed, [Methods]reason{base, air, seldom}, [Traits]int16{400, 250, 3, 6000, 180, 8, 14, 18, 60, 12, 60, 110, 115, 85, 30, 40, 45, 25, 75, 2000, 22, 28, 10, 32}, "ccccccccccccccccccccccccccc"},
	{"own crop 2", noSeed, [Methods]reason{base, air, seldom}, [Traits]int16{400, 250, 3, 6000, 180, 8, 14, 18, 60, 12, 60, 110, 115, 85, 30, 40, 45, 25, 75, 2000, 22, 28, 10, 32}, "ccccccccccccccccccccccccccc"},
	{"own crop 3", noSeed, [Methods]reason{base, air, seldom}, [Traits]int16{400, 250, 3, 6000, 180, 8, 14, 18, 60, 12, 60, 110, 115, 85, 30, 40, 45, 25, 75, 2000, 22, 28, 10, 32}, "ccccccccccccccccccccccccccc"},
	{"own crop 4", noSeed, [Methods]reason{base, air, seldom}, [Traits]int16{400, 250, 3, 6000, 180, 8, 14, 18, 60, 12, 60, 110, 115, 85, 30, 40, 45, 25, 75, 2000, 22, 28, 10, 32}, "ccccccccccccccccccccccccccc"},
}
