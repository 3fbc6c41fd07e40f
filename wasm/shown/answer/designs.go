package answer

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/limit"
)

// Designs says which tubing, feed and zones would serve for the least money,
// and which for the least pump.
func Designs(the *scene.Scene) {
	sc := part{the}
	d := sc.S.Designs
	if d == nil {
		sc.Say("p", "This is worked out as soon as the plan can be.")
		return
	}
	if len(d.Best) == 0 {
		sc.Tag("p", sc.noDesign(d))
		sc.counted(d)
		return
	}
	sc.Tag("p", sc.concludes(d))
	sc.HTML(`<ol class="findings">`)
	for i := range d.Best {
		b := &d.Best[i]
		sc.HTML(`<li>`).Text(sc.designWords(b, i, d))
		if sc.Link != nil {
			sc.HTML(` <a`).Attr("href", sc.Link(b.Take)).HTML(`>`).Text(words.Say("Use design {n}", words.N(i+1))).HTML(`</a>`)
		}
		sc.HTML(`</li>`)
	}
	sc.HTML(`</ol>`)
	if len(d.Best) > 1 {
		sc.Picture(words.Say("Each mark is a design with its number: further left is cheaper, further down needs less of {source}. Full marks work with what you have. The vertical dashes stand at what your plan costs.", sc.TheSource()), func(class block.Markup, width float64) {
			sc.tradeOff(class, width, d)
		})
	}
	sc.SameAsTable(func() {
		head := sc.Symbol(unit.Head)
		sc.Table(words.Say("Designs that serve"), words.Say("Design, and what it is"), block.Figures(words.Say("Cost")),
			block.Figures(words.Say("Head wanted, {unit}", head)), block.Figures(words.Say("Flow wanted, {unit}", sc.Symbol(unit.Flow))),
			block.Figures(words.Say("Power in the water, W")), block.Figures(words.Say("To spare, {unit}", head)),
			block.Figures(words.Say("EU")), block.Figures(words.Say("A round")), words.Say("Works with what you have")).Rows(func(t *block.Table) {
			for i := range d.Best {
				b := &d.Best[i]
				t.Explained(words.N(i+1), sc.made(&b.Design, false), sc.Bare(unit.Money, b.Cost), sc.Bare(unit.Head, b.Head), sc.Bare(unit.Flow, b.Flow),
					wording.Watts(b.Power), sc.Bare(unit.Head, b.Margin), sc.Amount(unit.Share, b.Even), sc.Amount(unit.Duration, b.Round), carried(b))
			}
		})
		sc.Say("p", "Cost is that of the tubing, and with several zones of the valves and the places at the timer, at the prices under Prices; fittings, emitters and {source} are left out. Your plan as it stands costs {cost}. Head and flow wanted are the least that serve, above {level}. To spare, EU and the round are those of the design as the link opens it.",
			sc.TheSource(), sc.Amount(unit.Money, d.Now), sc.level())
	})
	if b := &d.Best[0]; b.Head > 0 && sc.S.Plan.Supply.Kind != plan.GravityTank {
		sc.Working(func() {
			sc.Say("p", "Power that the water takes up with design 1, at the least that serves:")
			sc.Formula(pump.HydraulicPowerFormula, sc.Weight/water.Gravity, b.Flow, b.Head)
		})
	}
	sc.counted(d)
}

// carried says whether the supply that stands carries a design.
func carried(b *sheet.Best) string {
	switch {
	case b.Present:
		return words.Say("yes")
	case b.Regulator > 0:
		return words.Say("behind a regulator")
	}
	return words.Say("no")
}

// level is what a head is counted above.
func (sc part) level() string {
	switch sc.S.Plan.Supply.Kind {
	case plan.Mains:
		return words.Say("the tap")
	case plan.GravityTank:
		return words.Say("the water in the tank as it stands")
	}
	return words.Say("the water in the tank")
}

// concludes says what the designs come to.
func (sc part) concludes(d *sheet.Designs) string {
	b := &d.Best[0]
	cost, now := sc.Amount(unit.Money, b.Cost), sc.Amount(unit.Money, d.Now)
	all := sc.S.AllCompared() // else something cheaper may have been missed
	switch sc.S.Concluded() {
	case sheet.SoughtPump:
		return words.Say("The pump is yet to be chosen, and each design says which it takes. The cheapest costs {cost} without it; your plan costs {now}.", cost, now)
	case sheet.AnotherRegulator:
		return words.Sentences(sc.regulated(sc.HeadOf(b.Regulator), all), words.Say("It costs {cost} without the regulator; your plan costs {now}.", cost, now))
	case sheet.AnotherSupply:
		none := words.Say("No design was found that works with {source}.", sc.OwnSource())
		if all {
			none = words.Say("No design works with {source}.", sc.OwnSource())
		}
		return words.Sentences(none, words.Say("Each needs another; the cheapest costs {cost} without it.", cost))
	case sheet.NoneCheaper:
		if all {
			return words.Say("Your plan costs {now}, and nothing cheaper works with {source}.", now, sc.OwnSource())
		}
		return words.Say("Your plan costs {now}, and nothing cheaper was found that works with {source}.", now, sc.OwnSource())
	case sheet.SomeCheaper:
		return words.Say("With {source} it could cost {cost} instead of {now}.", sc.OwnSource(), cost, now)
	case sheet.NoneServes:
		return sc.noDesign(d)
	case sheet.SomeServes:
		return sc.serves(cost, now, all)
	}
	return ""
}

// serves says that the supply carries a design, which the plan is not.
func (sc part) serves(cost, now string, all bool) string {
	serves := words.Say("Design 1 serves with {source}, and is the cheapest that was found.", sc.OwnSource())
	if all {
		serves = words.Say("Design 1 serves with {source}, and is the cheapest that does.", sc.OwnSource())
	}
	return words.Sentences(serves, words.Say("It costs {cost}; your plan costs {now}.", cost, now))
}

// regulated says that design 1 serves behind a regulator, set to a pressure; all
// says that no cheaper one was missed.
func (sc part) regulated(set string, all bool) string {
	switch has := sc.S.Plan.Supply.Regulator > 0; {
	case has && all:
		return words.Say("None serves with the regulator as you have set it. With it set to {pressure} design 1 serves, and is the cheapest that does.", set)
	case has:
		return words.Say("None serves with the regulator as you have set it. With it set to {pressure} design 1 serves, and is the cheapest that was found.", set)
	case all:
		return words.Say("{source} is too strong for any of them as it stands. Behind a regulator set to {pressure} design 1 serves, and is the cheapest that does.", sc.YourSource(), set)
	}
	return words.Say("{source} is too strong for any of them as it stands. Behind a regulator set to {pressure} design 1 serves, and is the cheapest that was found.", sc.YourSource(), set)
}

// designWords says one design, what it costs and what it wins.
func (sc part) designWords(b *sheet.Best, i int, d *sheet.Designs) string {
	is := ""
	if b.Fix != nil {
		is = sc.remedy(b.Fix)
	} else {
		is = words.Say("{design}.", sc.made(&b.Design, true))
	}
	said := []string{is, sc.priced(d.Now, b.Cost)}
	if p := sc.S.Plan; b.Fix == nil && p.Prices.Flush != 0 && p.Header.Layout != plan.Ring {
		if p.Header.Layout == plan.OneLine || len(p.Rows) == 1 {
			said = append(said, words.Say("Its end flushes clean."))
		} else {
			said = append(said, words.Say("Each row flushes clean with the other rows shut."))
		}
	}
	if b.Fix == nil || !b.Fix.Driven() {
		said = append(said, sc.driven(b))
		if b.Regulator > 0 && b.Fix == nil {
			said = append(said, words.Say("A regulator set to {pressure} makes it fit.", sc.HeadOf(b.Regulator)))
		}
		if less := d.Best[0].Power - b.Power; i > 0 && less > 0 && sc.S.Plan.Supply.Kind != plan.GravityTank && !b.ByItself() {
			said = append(said, words.Say("The water takes {power} W less than with design 1.", wording.Watts(less)))
		}
	}
	return words.Sentences(said...)
}

// priced says what a design costs, and how that compares with the plan.
func (sc part) priced(now, cost float64) string {
	all := sc.Amount(unit.Money, cost)
	switch more := sheet.DearerBy(now, cost); {
	case more > 0:
		return words.Say("It costs {cost}, {more} more than your plan.", all, sc.Amount(unit.Money, more))
	case more < 0:
		return words.Say("It costs {cost}, {less} less than your plan.", all, sc.Amount(unit.Money, -more))
	}
	return words.Say("It costs {cost}.", all)
}

// driven says what a design takes of what drives the water.
func (sc part) driven(b *sheet.Best) string {
	carried := b.Carried()
	if sc.S.Plan.Supply.Kind == plan.GravityTank {
		lower := 0.0
		if b.Regulator == 0 {
			lower = -design.Rise(sc.Sys, b.Head)
		}
		switch {
		case !carried:
			return words.Say("Raise the tank by {length}.", sc.Amount(unit.Length, sc.S.Plan.Runs[0].Rise-b.Take.Runs[0].Rise))
		case lower > 0:
			return words.Say("The tank stands high enough; it could stand {length} lower.", sc.Amount(unit.Length, lower))
		}
		return words.Say("The tank stands high enough.")
	}
	if b.Wanted != nil {
		return sc.wish(&taking, b.Wanted)
	}
	if b.ByItself() {
		return words.Say("The water falls far enough by itself: the link puts a very weak pump in the place of {source}.", sc.OwnSource())
	}
	head, flow := sc.Head(max(0, b.Head)), sc.Amount(unit.Flow, b.Flow)
	switch {
	case carried:
		return words.Say("It takes {head} at {flow}, which {source} gives.", head, flow, sc.OwnSource())
	case b.Weak:
		return words.Say("It takes {head} at {flow}, more than {source} gives: the link puts a pump of that duty in its place.", head, flow, sc.OwnSource())
	}
	return words.Say("It takes {head} at {flow}, and {source} gives too much: the link puts a pump of that duty in its place.", head, flow, sc.OwnSource())
}

// made says what a design is made of; begins at the beginning of a sentence.
func (sc part) made(b *design.Design, begins bool) string {
	kept := func(size int) string {
		if size == design.Kept {
			return words.Say("as it stands")
		}
		return tube(size)
	}
	parts := []string{words.Say("rows: {size}", kept(b.Rows))}
	if begins {
		parts[0] = words.Say("Rows: {size}", kept(b.Rows))
	}
	several := len(sc.S.Plan.Rows) > 1
	switch header := several && sc.S.Plan.Header.Layout != plan.OneLine; {
	case header && b.Middle:
		parts = append(parts, words.Say("header: {size}, fed in its middle", kept(b.Header)))
	case header:
		parts = append(parts, words.Say("header: {size}, fed at its end", kept(b.Header)))
	}
	line := ""
	for i, size := range b.Runs {
		switch {
		case i == 0:
			line = kept(size)
		case size != b.Runs[i-1]:
			line = words.Say("{these}, then {next}", line, kept(size))
		}
	}
	parts = append(parts, words.Say("supply line: {sizes}", line))
	if several && sc.S.Plan.Header.Layout == plan.HeaderAndRows {
		parts = append(parts, words.Say("{n} {n|zone|zones}", words.N(b.Zones)))
	}
	return words.Notes(parts...)
}

// broken says which limits designs fail, in the order of [limit.Names]: without one
// at the end it does not compile, and TestEveryLimitIsTold names what else is
// missing.
var broken [limit.Limits]words.Text = [...]words.Text{
	limit.Reach:    "No supply that the form takes gives enough pressure or flow.",
	limit.Speed:    "The water runs faster in the supply line or the header than your limit.",
	limit.Evenness: "The water is less even than your limit.",
	limit.Range:    "Emitters run above the pressure that they are made for.",
	limit.Rating:   "The pressure with every valve shut is more than the tubing may carry in the sun.",
	limit.Flushing: "The ends of the rows do not flush clean.",
	limit.Place:    "A row does not fit the place.",
}

// noDesign says why nothing serves.
func (sc part) noDesign(d *sheet.Designs) string {
	var forbidden []string
	for l, fails := range broken {
		if d.Forbids.Has(limit.Limit(l)) {
			forbidden = append(forbidden, words.Say(fails))
		}
	}
	switch why, most := d.Barrier(); why {
	case sheet.OtherEmitters:
		if len(sc.S.Fixes) == 0 {
			return words.Say("No design serves. No tubing changes that rows watered together have different emitters.")
		}
		return words.Say("No design serves. No tubing changes that rows watered together have different emitters: see What helps, below the answer.")
	case sheet.CutShort:
		return words.Say("The plan is too large for a search: none of the designs that were compared serves.")
	case sheet.Forbidden:
		return words.Say("No design serves, whatever the tubing, the feed and the zones. {why}", words.Sentences(forbidden...))
	case sheet.NoneCompared:
		return words.Say("No design was looked at: under Prices there is no tubing for some part.")
	case sheet.AllUnequal:
		return words.Say("No design serves: worked out emitter by emitter, none gave the answer Yes.")
	case sheet.OneOrAnother:
		return words.Say("No design serves. No limit alone forbids it; most often it is this one. {why}", words.Say(broken[most]))
	}
	return ""
}

// counted says how the designs were found.
func (sc part) counted(d *sheet.Designs) {
	if d.Counted == 0 {
		return
	}
	said := []string{words.Say("{n} {n|design was|designs were} compared: {solved} worked out to the end, and {pruned} passed over because a design that serves costs no more and takes no more of {source}.",
		words.N(d.Counted), words.N(d.Solved), words.N(d.Pruned), sc.TheSource())}
	if n := len(d.List); n > len(d.Best) {
		said = append(said, words.Say("{n} {n|is|are} beaten by none; those that differ most are listed.", words.N(n)))
	}
	if len(d.Best) > 0 {
		said = append(said, words.Say("The ones listed were then worked out again emitter by emitter."))
	}
	if d.Cut {
		said = append(said, words.Say("The plan is large, and the search was ended before all sizes were compared with all numbers of zones: something cheaper may have been missed."))
	}
	if d.Unequal > 0 {
		said = append(said, words.Say("{n} {n|was|were} left out because that gave another answer.", words.N(d.Unequal)))
	}
	sc.Tag("p", words.Sentences(said...))
}
