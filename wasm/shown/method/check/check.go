// Package check holds published values that the formulas must reproduce, as
// one table that the tests run and the method page prints.
//
// The browser does not link it: the site builder prints the table once.
package check

import (
	"errors"
	"math"
	"slices"

	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/method"
)

// A Row is one published, remembered or derived value, or a few from one place.
type Row struct {
	ID       string // permanent, such as "HY-016"
	Topic    string // such as "friction"
	Quantity string // what the value is
	Given    string // what goes in, as the source states it
	Source   source.Ref
	Note     string // such as a misprint in the source; may be empty
	Parts    []Part
}

// A Part is one number of a row.
type Part struct {
	Formula string    // name of a formula; empty for a conversion of Kind in System
	In      []float64 // in inner units, in the formula's order
	Kind    unit.Kind // without a formula: In[0] is in the unit that System shows
	System  unit.System

	Unit string  // of Want and Tol, as the source prints it; may be empty
	Per  float64 // inner units in one of Unit
	Want float64 // as printed
	Tol  float64 // greatest difference
}

// Got returns what the program computes, in the part's Unit.
func (p *Part) Got() (float64, error) {
	if p.Formula == "" {
		return unit.Of(p.Kind, p.System).ToInner(p.In[0]) / p.Per, nil
	}
	f := method.Find(p.Formula)
	if f == nil {
		return 0, errors.New("no formula is named " + p.Formula)
	}
	w, err := f.Evaluate(p.In, unit.Metric)
	return w.Result / p.Per, err
}

// Close reports whether got is within the part's tolerance.
func (p *Part) Close(got float64) bool { return math.Abs(got-p.Want) <= p.Tol }

// Rows is the whole table.
var Rows = slices.Concat(waterRows, frictionRows, tubingRows, outletRows, emitterRows, fittingRows, surgeRows, pumpRows, unitRows, doseRows, vapourRows, radiationRows, evapoRows, growingRows)

// Units of the sources, in inner units.
const (
	mm    = 1e-3
	inch  = 0.0254
	foot  = 0.3048
	psi   = 6894.757293168361
	kPa   = 1e3
	bar   = 1e5
	lph   = 1.0 / 3.6e6
	gpm   = 3.785411784e-3 / 60
	cfs   = 0.028316846592        // cubic feet a second
	slug  = 14.59390293720636     // kg
	pound = 0.45359237            // kg
	hp    = 745.6998715822702     // W, of 550 foot pounds a second
	rpm   = 2 * math.Pi / 60      // rad/s
	pcf   = pound / cfs           // pounds a cubic foot
	scf   = slug / cfs            // slugs a cubic foot
	pct   = 0.01                  // per cent
	m3h   = 1.0 / 3600            // cubic metres an hour
	barM  = bar / 998.2 / 9.80665 // m of water at 20 °C
)

// of returns a part of a formula with its inner units as printed.
func of(formula string, want, tol float64, in ...float64) Part {
	return Part{Formula: formula, In: in, Per: 1, Want: want, Tol: tol}
}

// in returns the part with its value printed in another unit.
func (p Part) in(symbol string, per float64) Part {
	p.Unit, p.Per = symbol, per
	return p
}
