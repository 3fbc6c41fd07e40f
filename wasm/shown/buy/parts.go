// Package buy lists what has to be bought.
package buy

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/works/parts"
)

// GroupNames are the headings of the list of parts, by [parts.Group].
var GroupNames [parts.Groups]words.Text = [...]words.Text{
	parts.Tubing:        "Tubing",
	parts.Fittings:      "Fittings",
	parts.EmittersGroup: "Emitters",
	parts.WaterPath:     "Water path",
	parts.Electrics:     "Electrics",
	parts.Growing:       "Growing",
	parts.Tools:         "Tools",
}

// Parts lists what to buy, by counter, with what it costs.
func Parts(the *scene.Scene) {
	sc := part{the}
	if len(sc.S.Parts) == 0 {
		sc.Say("p", "There is nothing to buy yet.")
		return
	}
	shop := parts.Shop(sc.S.Parts, sc.S.Plan)
	sc.Say("p", "Counted from the layout, spares included. Where a thread is assumed, hold the part that you have against the new one before you pay: see What joins what. Not on this list: seeds, what is mixed into the water, the way from a tank into its pump, the wires behind an outlet, goggles and gloves.")
	if shop.Invented > 0 {
		sc.Say("p", "Prices with a star are invented: press one, and type what a shop asks.")
	}
	for g := range parts.Group(parts.Groups) {
		sc.counter(shop, g)
	}
	sc.Tag("p", words.Say("All together {sum}", money(shop.Total)))
	sc.sum(shop)
	sc.Saves("parts")
}

// counter folds the lines of one counter of a shop below what they come to, so that a phone
// has the whole list in sight.
func (sc *part) counter(shop *parts.Shopping, g parts.Group) {
	n := 0
	for i := range shop.Lines {
		if shop.Lines[i].Group == g {
			n++
		}
	}
	if n == 0 {
		return
	}
	name := words.Say(GroupNames[g])
	sc.HTML(`<details class="counter"`).Attr("id", "counter-"+words.N(int(g)+1)).HTML(`><summary><h3>`).Text(name).HTML(`</h3> <span class="fold__is">`).
		Text(words.Say("{n} {n|part|parts}, {sum}", words.N(n), money(shop.Groups[g]))).HTML(`</span></summary>`)
	sc.Table(words.Say("Parts to buy: {counter}", name), words.Say("Part"), block.Figures(words.Say("To buy")), block.Figures(sc.priced())).Rows(func(t *block.Table) {
		for i := range shop.Lines {
			if b := &shop.Lines[i]; b.Group == g {
				t.Name = func() { sc.named(i) }
				sc.line(t, b)
				t.Name = nil
			}
		}
		t.Total(words.Say("{counter} in all", name), "", money(shop.Groups[g]))
	})
	sc.HTML(`</details>`)
}

// priced names the column of prices.
func (sc *part) priced() string {
	if cur := sc.S.Plan.Prices.Currency; cur != "" {
		return words.Say("Price, {currency}", cur)
	}
	return words.Say("Price")
}

// money is an amount, without its currency.
func money(v float64) string { return unit.Text(unit.Money, unit.Metric, v) }

// line writes what is bought for a line, and what it costs.
func (sc *part) line(t *block.Table, b *parts.Buy) {
	cost, aloud := money(b.Cost), words.Say("for {part}: say what it costs", b.Name)
	switch {
	case b.None:
		cost, aloud = words.Say("none"), words.Say("known for {part}: say what it costs", b.Name)
	case b.Invented:
		cost, aloud = words.Say("{price}*", cost), words.Say("invented, for {part}: say what it costs", b.Name)
	}
	if b.Said < 0 && len(sc.S.Plan.Bought) >= plan.MaxBought {
		t.Explained(b.Name, sc.notes(b), sc.bought(b), cost)
		return
	}
	t.Pressed(b.Name, sc.notes(b), plan.ActionName, plan.PriceOf+b.Key(), aloud, sc.bought(b), cost)
}

// bought is how many of what is bought, as a shop counts it.
func (sc *part) bought(b *parts.Buy) string {
	n := words.N(b.Packs)
	switch {
	case b.Packs == 0:
		return words.Say("none")
	case b.Rolls > 0:
		return words.Say("{n} {n|roll|rolls} of {roll}", n, sc.Amount(unit.Length, b.Pack))
	case b.ByLength():
		return sc.Amount(unit.Length, float64(b.Packs)*b.Pack)
	case b.Pack > 1:
		return words.Say("{n} {n|pack|packs} of {pack}", n, words.N(int(b.Pack)))
	}
	return n
}

// notes say of what is bought what it is for, what is over, and what one pack costs.
func (sc *part) notes(b *parts.Buy) string {
	amount := func(v float64) string {
		if b.ByLength() {
			return sc.Amount(unit.Length, v)
		}
		return words.N(int(v))
	}
	var notes []string
	if b.ByLength() || b.Pack > 1 || b.Have > 0 {
		notes = append(notes, words.Say("{n} needed", amount(b.Need)))
	}
	if b.Spare > 0 && b.Spare < b.Count {
		notes = append(notes, words.Say("{n} spare", words.N(b.Spare)))
	}
	if b.Have > 0 {
		notes = append(notes, words.Say("you have {n}", amount(b.Have)))
	}
	if b.Over > 0 && (b.Rolls > 0 || b.Pack > 1 && !b.ByLength()) {
		notes = append(notes, words.Say("{n} over", amount(b.Over)))
	}
	if b.Packs > 1 && !b.None && b.Price > 0 {
		switch {
		case b.Rolls > 0:
			notes = append(notes, words.Say("{price} a roll", money(b.Price)))
		case b.ByLength():
			notes = append(notes, sc.Amount(unit.Price, b.Price/b.Pack))
		case b.Pack > 1:
			notes = append(notes, words.Say("{price} a pack", money(b.Price)))
		default:
			notes = append(notes, words.Say("{price} each", money(b.Price)))
		}
	}
	return words.List(notes...)
}

// sum says what the total rests on.
func (sc *part) sum(shop *parts.Shopping) {
	var said []string
	if shop.Invented > 0 {
		said = append(said, words.Say("Of all that, {share} % is by invented prices.", wording.Percent(shop.Share())))
	} else if shop.Total > 0 {
		said = append(said, words.Say("No price in it is invented."))
	}
	if shop.None > 0 {
		said = append(said, words.Say("{n} {n|line has|lines have} no price, and {n|is|are} in no sum.", words.N(shop.None)))
	}
	if n := len(shop.Lost); n > 0 {
		said = append(said, words.Say("What you said of {n} {n|part|parts} does not count here: {n|it is|they are} not on this list, or you said it twice. It stands where you typed it.", words.N(n)))
	}
	if cur := sc.S.Plan.Prices.Currency; cur != "" {
		said = append(said, words.Say("Amounts are in {currency} as they were typed: nothing is converted.", cur))
	}
	sc.Tag("p", words.Sentences(said...))
}

// Counts says where the number of each part comes from.
func Counts(the *scene.Scene) {
	sc := part{the}
	if len(sc.S.Parts) == 0 {
		sc.Say("p", "There is nothing to buy yet.")
		return
	}
	sc.Table(words.Say("Where the numbers come from"), words.Say("Part"), words.Say("Counted")).Rows(func(t *block.Table) {
		for i := range sc.S.Parts {
			t.Row(sc.S.Parts[i].Name, sc.S.Parts[i].Why)
		}
	})
}
