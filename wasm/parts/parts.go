// Package parts counts what has to be bought to build a plan, from its layout.
package parts

// A Group is a heading of the list.
type Group uint8

const (
	Tubing Group = iota
	Fittings
	EmittersGroup
	WaterPath
	Growing
	Tools
)

// A Line is one thing to buy.
type Line struct {
	Group  Group
	Name   string  // "Tee, 25 mm to 16 mm"
	Count  int     // pieces; 0 for tubing, which has a length
	Length float64 // m, for tubing: the exact sum
	Spare  int     // included in Count
	Why    string  // where the number comes from: "one at each of 4 rows"
}
