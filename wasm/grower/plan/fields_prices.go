package plan

import (
	"strconv"
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
)

// Says returns what the page calls the field.
func (f *Field) Says() string { return words.Say(f.Label, f.size()) }

// Within is [Field.Says] as it stands within a sentence.
func (f *Field) Within() string { return words.Within(f.Label, f.size()) }

// size fills the place in the label of tubing, without parentheses: units stand
// in them.
//
// A [strings.Replacer] adds 8 kB to the download.
func (f *Field) size() string {
	return strings.ReplaceAll(strings.ReplaceAll(words.Say(f.Size), "(", ""), ")", "")
}

// The defaults of prices are invented: common practice, no source.
var priceFields = func() []*Field {
	list := []*Field{
		number(1, "valve", "Valve of a row", unit.Money, 0, 1e5, 8,
			"With its fittings; each row has one when there are several zones.", func(p *Plan, _ int) *float64 { return &p.Prices.Valve }).when(zoned),
		number(2, "zone", "Each zone, when there are several", unit.Money, 0, 1e5, 25,
			"Its place at the timer and its cable.", func(p *Plan, _ int) *float64 { return &p.Prices.Zone }).when(zoned),
		choice(3, "flush", "Must each row flush clean?", []Option{{Code: "no", Label: "no"}, {Code: "yes", Label: "yes, one at a time, the others shut"}}, 1,
			"", func(p *Plan, _ int) *int { return &p.Prices.Flush }),
		{ID: 4, Name: "currency", Label: "Currency", Type: Text, Max: 4, Help: "As it is to stand beside amounts, such as EUR. Nothing is converted when it changes.",
			Text: func(p *Plan, _ int) *string { return &p.Prices.Currency }},
	}
	for i := range catalogue.Tubes {
		c := &catalogue.Tubes[i]
		label, name := words.Text("Tubing, {size}"), "tube-"+strconv.Itoa(i)
		if i == catalogue.Custom {
			label = "Tubing that you measured"
		}
		f := number(10+i, name, label, unit.Price, 0, 1e4, c.Price,
			"0 when it is not available.", func(p *Plan, _ int) *float64 { return &p.Prices.Tubes[i] })
		f.Size = c.Short
		list = append(list, f.when(func(p *Plan, _ int) bool {
			return p.Uses(i) || i != catalogue.Custom && c.Metric() == (p.Units == unit.Metric)
		}))
	}
	for i := range catalogue.Tubes {
		c := &catalogue.Tubes[i]
		label := words.Text("A roll of tubing, {size}")
		if i == catalogue.Custom {
			label = "A roll of the tubing that you measured"
		}
		f := number(40+i, "roll-"+strconv.Itoa(i), label, unit.Length, 0, 1000, c.Roll,
			"0 when it is sold by the metre or foot.", func(p *Plan, _ int) *float64 { return &p.Prices.Rolls[i] })
		f.Size = c.Short
		list = append(list, f.when(func(p *Plan, _ int) bool { return p.Uses(i) }).must(func(p *Plan, _ int) *words.Remark {
			if roll := p.Prices.Rolls[i]; 0 < roll && roll < ShortestRoll {
				return words.About("{field} must be 0 or at least {least}.", unit.Text(unit.Length, p.Units, ShortestRoll))
			}
			return nil
		}))
	}
	return list
}()
