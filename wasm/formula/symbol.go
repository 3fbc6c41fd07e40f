package formula

import "evenrow/wasm/unit"

// Quantity returns the symbol of a quantity that the page has a unit for.
func Quantity(name, letter, meaning string, kind unit.Kind, min, max float64) Symbol {
	return Symbol{Name: name, Letter: letter, Meaning: meaning, Kind: kind, Min: min, Max: max}
}

// Number returns the symbol of a plain number, or of one with a unit that is
// the same in both systems, such as "Pa s".
func Number(name, letter, meaning, symbol string, min, max float64) Symbol {
	return Symbol{Name: name, Letter: letter, Meaning: meaning, Unit: symbol, Min: min, Max: max}
}

// Result returns the symbol of a formula's result.
func Result(letter, meaning string, kind unit.Kind) Symbol {
	return Symbol{Letter: letter, Meaning: meaning, Kind: kind}
}
