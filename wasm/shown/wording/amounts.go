// Package wording writes amounts, counts and places, each in one way on the
// whole page.
package wording

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

// Units says how a plan's amounts are written.
type Units struct {
	Sys    unit.System
	Weight float64 // Pa, of one metre of the plan's water
}

// Finite says whether v can be printed.
func Finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// Amount is v with its unit, as the page prints it.
func (u Units) Amount(k unit.Kind, v float64) string {
	if !Finite(v) {
		return "–"
	}
	s := Minus(unit.Figure(k, u.Sys, v))
	if symbol := u.Symbol(k); symbol != "" {
		s += "\u00a0" + symbol // a figure and its unit stay on one line
	}
	return s
}

// Bare is v without its unit, for a table whose heading names it.
func (u Units) Bare(k unit.Kind, v float64) string {
	if !Finite(v) {
		return "–"
	}
	return Minus(unit.Figure(k, u.Sys, v))
}

// Head is the pressure that a gauge would show, with its head: "3.2 bar (32.2 m)".
func (u Units) Head(v float64) string {
	if !Finite(v) {
		return "–"
	}
	return u.Amount(unit.Pressure, v*u.Weight) + " (" + u.Amount(unit.Head, v) + ")"
}

// HeadOf is a pressure with its head.
func (u Units) HeadOf(pascals float64) string { return u.Head(pascals / u.Weight) }

// Warmer is how far apart two temperatures are, in whole degrees: "5 °C".
func (u Units) Warmer(by float64) string {
	of := unit.Of(unit.Temperature, u.Sys)
	return words.N(int(math.Abs(math.Round(of.FromInner(by)-of.FromInner(0))))) + "\u00a0" + of.Symbol
}

// Days is a number of days to a tenth: "1.5 days".
func (u Units) Days(n float64) string {
	return words.Say("{n}\u00a0{n|day|days}", u.Bare(unit.None, math.Round(n*10)/10))
}

// Percent is a share in whole per cent, without its unit.
func Percent(share float64) string { return words.N(int(math.Round(share * 100))) }

// Watts is a power in watts, which it is in either system, without its unit: the
// water's share of a pump is a small part of a horsepower.
func Watts(v float64) string {
	if !Finite(v) {
		return "–"
	}
	return strconv.FormatFloat(v, 'f', 1, 64)
}

// Odds is a share of plants, up to the verb: "1 in 20 plants gets".
func Odds(share float64) string {
	if share > 0.3 {
		return words.Say("{n} in 100 plants get", words.N(int(share*100+0.5)))
	}
	return words.Say("1 in {n} plants gets", words.N(int(1/share+0.5)))
}

// Symbol is the unit of a kind, for a heading.
func (u Units) Symbol(k unit.Kind) string { return unit.Of(k, u.Sys).Symbol }

// Count is a number with its noun.
func Count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// Minus turns a hyphen before a number into a minus sign.
func Minus(s string) string {
	if len(s) > 0 && s[0] == '-' {
		return "−" + s[1:]
	}
	return s
}
