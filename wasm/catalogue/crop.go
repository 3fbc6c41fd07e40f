package catalogue

import "evenrow/wasm/source"

// Advice on the growing method, shared by crops of one habit.
const (
	slabFirst  = "Drip on slabs, bags or buckets suits it best."
	slabOrDeep = "Drip on slabs, bags or buckets suits it best; deep water also works."
	slabOrFilm = "Drip on slabs, bags or buckets suits it best; deep water and thin-film channels also work."
	bedOrDrip  = "A bed of loose medium suits it best; drip on bags or troughs also works."
	dripTrough = "Drip on troughs or bags suits it best; thin-film channels also work."
	filmFirst  = "Thin-film channels suit it best; deep water, a bed of loose medium and drip also work."
	deepFirst  = "Deep water suits it best; thin-film channels, a bed of loose medium and drip also work."
	loose      = "A bed of loose medium suits it best; thin-film channels and drip also work."
)

// Crops is the list of crops. Spacing is within the usual range of each crop,
// for plants trained to as many stems as is usual for it; PerSlab is for a slab
// or bag of one metre.
var Crops = []Crop{
	{"sweet pepper", 0.333, 3, true, slabOrDeep, source.Ref{At: "30 to 40 cm in the row", Standing: source.Practice}},
	{"tomato", 0.40, 3, true, slabOrFilm, source.Ref{At: "35 to 50 cm in the row", Standing: source.Practice}},
	{"cucumber", 0.45, 2, true, slabOrFilm, source.Ref{At: "35 to 50 cm in the row", Standing: source.Practice}},
	{"cherry tomato", 0.40, 3, true, slabOrFilm, source.Ref{At: "35 to 50 cm in the row", Standing: source.Practice}},
	{"hot pepper", 0.45, 3, true, slabOrDeep, source.Ref{At: "40 to 60 cm in the row", Standing: source.Practice}},
	{"aubergine (eggplant)", 0.40, 3, true, slabOrDeep, source.Ref{At: "30 to 50 cm in the row", Standing: source.Practice}},
	{"melon, trained up", 0.25, 4, true, slabFirst, source.Ref{At: "20 to 33 cm in the row; a study of 2019 on coir slabs tried 20, 25 and 33 cm", Standing: source.Practice}},
	{"strawberry", 0.12, 8, false, dripTrough, source.Ref{At: "10 to 20 cm in the row; 8 to 13 plants to a bag of one metre", Standing: source.Practice}},
	{"bush bean", 0.15, 6, false, bedOrDrip, source.Ref{At: "10 to 15 cm in the row", Standing: source.Practice}},
	{"pole bean", 0.20, 5, false, slabFirst, source.Ref{At: "15 to 25 cm in the row", Standing: source.Practice}},
	{"basil", 0.20, 6, false, filmFirst, source.Ref{Work: "FAO Fisheries and Aquaculture Technical Paper 589 (2014)", At: "appendix 1: 15 to 25 cm"}},
	{"lettuce", 0.25, 4, false, filmFirst, source.Ref{Work: "FAO Fisheries and Aquaculture Technical Paper 589 (2014)", At: "appendix 1: 18 to 30 cm"}},
	{"kale", 0.30, 4, false, deepFirst, source.Ref{At: "25 to 40 cm in the row", Standing: source.Practice}},
	{"spinach", 0.12, 8, false, filmFirst, source.Ref{At: "8 to 15 cm in the row", Standing: source.Practice}},
	{"mint and other perennial herbs", 0.30, 4, false, loose, source.Ref{At: "25 to 40 cm in the row", Standing: source.Practice}},
}
