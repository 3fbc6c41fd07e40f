package buy

import (
	"evenrow/wasm/ground/csv"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/parts"
)

// Table is the parts as a file for a spreadsheet, lengths in the plan's units.
func Table(s *sheet.Sheet) string {
	sys := s.Plan.Units
	long := unit.Of(unit.Length, sys).Symbol
	var t csv.Table
	t.Row(words.Say("Group"), words.Say("Part"), words.Say("Number"), words.Say("Spare in it"),
		words.Say("Length, {unit}", long), words.Say("Rolls"), words.Say("Length of a roll, {unit}", long), words.Say("Where it comes from"),
		words.Say("You have"), words.Say("Packs to buy"), words.Say("In a pack"), words.Say("Left over"),
		words.Say("Price of a pack"), words.Say("Price in all"), words.Say("Currency"), words.Say("Is the price invented?"), words.Say("What to ask for"))
	amount := func(b *parts.Buy, v float64) string {
		switch {
		case v == 0:
			return ""
		case b.ByLength():
			return unit.Figure(unit.Length, sys, v)
		}
		return words.N(int(v))
	}
	count := func(n int) string {
		if n == 0 {
			return ""
		}
		return words.N(n)
	}
	shop := parts.Shop(s.Parts, s.Plan)
	for i := range shop.Lines {
		b := &shop.Lines[i]
		length, roll := "", ""
		if b.ByLength() {
			length = amount(b, b.Length)
		}
		if b.Roll > 0 {
			roll = amount(b, b.Roll)
		}
		price, cost, invented := money(b.Price), money(b.Cost), words.Say("no")
		switch {
		case b.None:
			price, cost, invented = "", "", ""
		case b.Invented:
			invented = words.Say("yes")
		}
		t.Row(words.Say(GroupNames[b.Group]), b.Name, count(b.Count), count(b.Spare), length, count(b.Rolls), roll, b.Why,
			amount(b, b.Have), words.N(b.Packs), amount(b, b.Pack), amount(b, b.Over), price, cost, s.Plan.Prices.Currency, invented, Ask(s, b.Line))
	}
	return t.String()
}
