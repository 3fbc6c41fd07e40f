package plan

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// singly says whether a line is sold by the piece.
func singly(p *Plan, i int) bool { return !p.Bought[i].ByLength() }

// orNothing has a number that may be left empty be so at first.
func (f *Field) orNothing() *Field {
	f.Empty, f.Default = true, Unset
	return f
}

var boughtFields = []*Field{
	(&Field{ID: 1, Name: "part", Label: "Part", Type: Text, Max: 48, Text: func(p *Plan, i int) *string { return &p.Bought[i].Part }}).must(func(p *Plan, i int) *words.Remark {
		for _, c := range []byte(p.Bought[i].Part) {
			if c > '~' { // no key has such letters, and they take more room than a form has
				return words.About("{field} must be one of the list of parts.")
			}
		}
		return nil
	}),
	number(2, "price", "Price", unit.Money, 0, 1e5, 0,
		"Of a pack, or of one where they are sold singly. Empty for an invented one.", func(p *Plan, i int) *float64 { return &p.Bought[i].Price }).when(singly).orNothing(),
	number(3, "each", "Price", unit.Price, 0, 1e4, 0,
		"Empty for an invented one.", func(p *Plan, i int) *float64 { return &p.Bought[i].Each }).when(func(p *Plan, i int) bool {
		return p.Bought[i].ByLength() && !p.Bought[i].Tubing()
	}).orNothing(),
	whole(4, "pack", "How many in a pack", 0, 10000, 0,
		"0 for as many as in the list.", func(p *Plan, i int) *int { return &p.Bought[i].Pack }).when(singly),
	whole(5, "have", "How many you have", 0, 10000, 0,
		"They are not bought.", func(p *Plan, i int) *int { return &p.Bought[i].Have }).when(singly),
	number(6, "length", "How much you have", unit.Length, 0, 10000, 0,
		"In one piece. It is not bought.", func(p *Plan, i int) *float64 { return &p.Bought[i].Length }).when(func(p *Plan, i int) bool { return p.Bought[i].ByLength() }),
}
