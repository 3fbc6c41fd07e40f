package catalogue

import "evenrow/wasm/ground/source"

var (
	slab   = Piece{"{n} {n|slab|slabs}", "whole slabs", "{n} {n|plant|plants} to a slab"}
	bag    = Piece{"{n} {n|bag|bags}", "whole bags", "{n} {n|plant|plants} to a bag"}
	bucket = Piece{"{n} {n|bucket|buckets}", "whole buckets", "{n} {n|plant|plants} to a bucket"}
	pot    = Piece{"{n} {n|pot|pots}", "whole pots", "{n} {n|plant|plants} to a pot"}
)

var cocoHolds = source.Ref{At: "250 to 300 mL in a litre of coco, half as much in strong feed", Standing: source.Practice}

// Media is what roots can grow in, in the order of the constants in package
// plan.
var Media = []Medium{
	{"coco slab", "Coco slab", &slab, 1.0, 0.20, 0.08, 0.016, 0.011, true, false, 0.25, source.Ref{
		At: "sizes of 11 to 20 litres are sold; 8 to 14 litres of water expand a pressed slab", Standing: source.Practice}, cocoHolds},
	{"stone-wool slab", "Stone-wool slab", &slab, 1.0, 0.15, 0.075, 0.01125, 0.009, true, false, 0.50, source.Ref{
		At: "sizes of 11 to 20 litres are sold; a full slab holds 75 to 85 % of its volume", Standing: source.Practice}, source.Ref{At: "half of a stone-wool slab's volume", Standing: source.Practice}},
	{"grow bag", "Grow bag", &bag, 1.0, 0.18, 0.10, 0.018, 0.009, true, false, 0.25, source.Ref{
		At: "coco holds about half its volume", Standing: source.Practice}, cocoHolds},
	{"bucket", "Bucket", &bucket, 0.30, 0.30, 0.30, 0.015, 0.008, false, true, 0.25, source.Ref{
		At: "buckets of 10 to 19 litres are usual; coco holds about half its volume", Standing: source.Practice}, cocoHolds},
	{"pot", "Pot", &pot, 0.25, 0.25, 0.25, 0.010, 0.005, false, true, 0.25, source.Ref{
		At: "coco holds about half its volume", Standing: source.Practice}, cocoHolds},
}

// The block in which a plant stands at first, in m³: 10 cm a side and 6.5 cm
// high, and what it gives up easily (common practice, no source).
const (
	BlockVolume = 0.65e-3
	BlockEasy   = 0.33e-3
)
