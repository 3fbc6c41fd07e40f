package formula

import (
	"strings"

	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// An Assumption is what the calculation takes for granted and no formula shows:
// a number, a few numbers, or a rule. It moves numbers on the page, so whoever
// checks them must know it.
//
// Numbers are those that the calculation itself uses, named and not typed a
// second time. A package returns its assumptions from a function named
// Assumptions that only the method page and its tests call, so that the
// browser's program carries none of their words.
type Assumption struct {
	Code   string    // the declaration that the calculation uses: "layout.InsertShare"
	Title  string    // what it is, such as "Bore of a fitting in tubing, as a share of the tubing's"
	Values []float64 // in the inner unit of Kind; none where Rule says all
	Kind   unit.Kind
	Unit   string // its unit in both systems when Kind is unit.None and it has one
	Rule   string // what holds, in words; may stand beside numbers
	Used   string // where, and what it moves
	Source source.Ref
}

// Text returns the numbers with their unit, or nothing where there are none: as
// they are declared, or to four digits in a system in which that is no short number.
func (a *Assumption) Text(sys unit.System) string {
	symbol := Symbol{Kind: a.Kind, Unit: a.Unit}
	texts := make([]string, len(a.Values))
	for i, v := range a.Values {
		texts[i] = unit.Exact(a.Kind, sys, v)
		if _, part, _ := strings.Cut(texts[i], "."); len(part) > 0 && len(strings.TrimLeft(texts[i], "-0.")) > 6 {
			texts[i] = strings.TrimSuffix(symbol.Text(v, sys), symbol.suffix(sys))
		}
	}
	if len(texts) == 0 {
		return ""
	}
	return strings.Join(texts, ", ") + symbol.suffix(sys)
}
