package catalogue

import "evenrow/wasm/ground/words"

// A Climate is a sketch of a year: mean daily highs and lows in °C from January
// on, north of the equator. None is of a real place.
type Climate struct {
	Name      words.Text
	Code      string
	High, Low [12]int8
}

// Climates are sketches to start from, invented so that each is like many
// places. Positions are permanent.
var Climates = []Climate{
	{"cool inland valley (invented)", "valley", [12]int8{3, 5, 10, 15, 19, 23, 25, 25, 20, 14, 7, 4}, [12]int8{-3, -2, 1, 4, 9, 12, 14, 14, 10, 6, 1, -2}},
	{"warm dry plain (invented)", "plain", [12]int8{13, 16, 19, 23, 28, 32, 35, 34, 31, 26, 18, 13}, [12]int8{4, 5, 7, 9, 12, 15, 17, 16, 15, 11, 6, 3}},
	{"mild coast (invented)", "coast", [12]int8{8, 8, 10, 13, 16, 19, 21, 21, 19, 15, 11, 9}, [12]int8{3, 3, 4, 5, 8, 11, 13, 13, 11, 8, 5, 4}},
	{"warm wet lowland (invented)", "lowland", [12]int8{12, 14, 18, 23, 27, 31, 33, 32, 29, 24, 18, 13}, [12]int8{1, 2, 6, 11, 16, 20, 22, 22, 18, 12, 6, 2}},
	{"cold north (invented)", "north", [12]int8{-4, -3, 2, 8, 15, 20, 23, 21, 15, 8, 2, -2}, [12]int8{-11, -11, -6, -1, 4, 10, 12, 11, 6, 2, -3, -8}},
}
