// Package catalogue holds the tables of generic parts: tubing with its real
// bores, loss coefficients of fittings, media and crops. No brands.
//
// The position of an entry in a table is permanent, because links hold it: new
// entries go to the end.
package catalogue

import (
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/words"
)

// A Tube is one size of tubing.
type Tube struct {
	Name      words.Text // as the trade says it, such as "16 mm drip tubing (13.6 mm bore)"
	Short     words.Text // for lists, such as "16 mm"
	Bore      float64    // m
	Outside   float64    // m
	Roughness float64    // m, absolute
	Rating    float64    // Pa at [Rated], the pressure that it may carry for long
	Row       bool       // emitters can be punched into it
	PE100     bool       // of that grade, whose loss of strength with warmth is published
	Source    source.Ref
	Takes     Joining // the fittings that hold it
	Price     float64 // of a metre, in no currency, that a plan starts with
	Roll      float64 // m of a roll, that a plan starts with
}

// A Joining is how fittings hold tubing. Common practice, no source, but for
// the two clamps of an insert fitting, which is what those who sell PE pipe of
// ASTM D2239 ask for.
type Joining uint8

const (
	Barbs       Joining = iota // pushed into the bore and clamped around the outside: soft tubing, which is sold by its bore
	Inserts                    // barbs too, longer, with two clamps: PE pipe that is made to its bore
	Compression                // a ring and a nut around the outside, which leave the bore free: PE pipe that is made to its outside
)

// Clamps returns how many clamps an end of tubing takes.
func (j Joining) Clamps() int { return [...]int{Barbs: 1, Inserts: 2, Compression: 0}[j] }

// Word returns what the trade calls fittings of this kind: "barbed".
func (j Joining) Word() string {
	return [...]string{Barbs: "barbed", Inserts: "insert", Compression: "compression"}[j]
}

// Custom is the index in Tubes of tubing whose bore the grower has measured.
const Custom = 0

// A Fitting is a part in the water's way that costs head.
type Fitting struct {
	Name   string
	K      float64 // loss coefficient on the velocity in the tubing
	Source source.Ref
}

// A Piece is what media are counted in.
type Piece struct {
	Count words.Text // "{n} {n|slab|slabs}"
	Whole words.Text // "whole slabs"
	Each  words.Text // "{n} {n|plant|plants} to a slab"
}

// A Medium is what roots grow in.
type Medium struct {
	Name   words.Text // "coco slab"
	Begin  words.Text // "Coco slab", at the beginning of a line or a sentence
	Piece  *Piece     // what is counted
	Length float64
	Width  float64
	Height float64 // m, expanded
	Volume float64 // m³, expanded, of one piece
	Water  float64 // m³ of water to expand or wet one piece
	Along  bool    // lies along the row, for as many plants as the crop is planted in its length; what does not is for one
	Empty  bool    // comes empty, and is filled with a loose medium
	Easy   float64 // share of the volume that is water which roots take up easily: given up between 10 and 50 cm of suction
	Source source.Ref
	Holds  source.Ref // where Easy comes from
}
