package answer

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/catalogue"
)

// A told is what is said of a kind of finding: a plain text, or where it has
// figures a function that says it.
type told struct {
	line   words.Text // the answer, where this is the gravest finding; none for advice
	lineOf func(sc part, f *sheet.Finding) string
	why    words.Text // what was found and what was wanted
	whyOf  func(sc part, f *sheet.Finding) string
	end    words.Text // what ends a room, as a name; none for advice
}

// tellings has a row for each kind of finding, in the order of [sheet.Kinds]:
// without one at the end it does not compile, and TestEveryFindingIsTold names
// what else is missing.
var tellings [sheet.FindingKinds]told = [...]told{
	sheet.PowerOnly: {
		whyOf: part.powerOnly,
	},
	sheet.LabelFigures: {
		whyOf: part.labelFigures,
	},
	sheet.LabelShort: {
		whyOf: part.labelShort,
	},
	sheet.NeverOpen: {
		lineOf: part.shutLine,
		whyOf:  part.neverOpen,
		end:    "emitters that no longer open",
	},
	sheet.Unsteady: {
		lineOf: part.unsteadyLine,
		whyOf:  part.unsteady,
		end:    "emitters that no longer stay open",
	},
	sheet.Suction: {
		line:  "A part of the line lies too high and draws air, and what lies beyond it may get no water.",
		whyOf: part.suction,
		end:   "a height on the way where the water is sucked",
	},
	sheet.BelowRange: {
		lineOf: part.belowLine,
		whyOf:  part.belowRange,
		end:    "the lower end of an emitter's range",
	},
	sheet.AboveRange: {
		lineOf: part.aboveLine,
		whyOf:  part.aboveRange,
		end:    "the upper end of an emitter's range",
	},
	sheet.Uneven: {
		line:  "Every plant gets water, but not evenly enough.",
		whyOf: part.uneven,
		end:   "your limit of evenness",
	},
	sheet.Unlike: {
		line:  "Every emitter opens, but rows that are watered together get different shares of what they need.",
		whyOf: part.unlike,
		end:   "shares of what rows need",
	},
	sheet.ShortReserve: {
		line:  "Every plant gets its water, but with less than your safety margin.",
		whyOf: part.shortReserve,
		end:   "your safety margin",
	},
	sheet.FastLead: {
		line:  "Every plant gets its water, but it runs too fast on the way.",
		whyOf: part.fastLead,
		end:   "your limit of speed",
	},
	sheet.OffCurve: {
		line:  "The pump would have to run beyond the last point of its curve, where nobody knows what it gives.",
		whyOf: part.offCurve,
		end:   "the end of the pump's curve",
	},
	sheet.NarrowPump: {
		line:  "There is a head at which every plant gets its water, but no pump can be told so exactly.",
		whyOf: part.narrowPump,
		end:   "heads that lie too close together to ask for a pump",
	},
	sheet.CoarseFilter: {
		whyOf: part.coarseFilter,
	},
	sheet.NoFilter: {
		why: "There is no filter. The narrow passages of drip emitters block without one.",
	},
	sheet.OverRating: {
		line:  "Every plant gets its water, but the pressure can be more than the tubing may carry in the sun.",
		whyOf: part.overRating,
		end:   "what the tubing may carry in the sun",
	},
	sheet.OutsidePlace: {
		line:  "Every plant gets its water, but a row does not fit the place.",
		whyOf: part.outsidePlace,
		end:   "the size of the place",
	},
	sheet.SmallTank: {
		whyOf: part.smallTank,
	},
	sheet.Fouled: {
		line:  "Every plant gets its water now, but not once the filter is due for cleaning.",
		whyOf: part.fouled,
		end:   "the emitters' range once the filter is due for cleaning",
	},
	sheet.Unsolved: {
		line: "The flows of this plan do not settle.",
		why:  "No state was found in which the water comes to rest. Look at the figures for one that is far from the others.",
		end:  "flows that do not settle",
	},
	sheet.TooHigh: {
		line:  "The water does not get over the highest point of its way.",
		whyOf: part.tooHigh,
		end:   "a height on the way that the water does not get over",
	},
	sheet.NoBackflow: {
		why: "No loss is counted for a backflow device. A tap usually needs one, your water supplier says which, and it takes head: enter it under Supply from its data sheet.",
	},
	sheet.NarrowPath: {
		whyOf: part.narrowPath,
	},
	sheet.NearWall: {
		whyOf: part.nearWall,
	},
	sheet.NoChain: {
		why: "Some parts cannot be joined: Buy names the two ends, and what would help.",
	},
	sheet.WeakJoint: {
		whyOf: part.weakJoint,
	},
	sheet.InTheDoor: {
		whyOf: part.inTheDoor,
	},
}

// headline is the answer with a finding as the gravest.
func (sc part) headline(f *sheet.Finding) string {
	t := &tellings[f.Kind]
	if t.lineOf != nil {
		return t.lineOf(sc, f)
	}
	return words.Say(t.line)
}

// explain says a finding in plain words, with what was found and what was
// wanted.
func (sc part) explain(f *sheet.Finding) string {
	t := &tellings[f.Kind]
	if t.whyOf != nil {
		return t.whyOf(sc, f)
	}
	return words.Say(t.why)
}

// emitters counts those of the whole plan.
func (sc part) emitters() int {
	all := 0
	for i := range sc.S.Zones {
		all += sc.S.Zones[i].Emitters
	}
	return all
}

// The answers that have figures.

func (sc part) shutLine(f *sheet.Finding) string {
	all := sc.emitters()
	if f.Count >= all {
		return words.Say("No emitter opens, and no plant gets water.")
	}
	n, of := words.N(f.Count), words.N(all)
	if sc.S.MoreShut() {
		return words.Say("At least {n} of {all} emitters stay shut, and their plants get no water.", n, of)
	}
	return words.Say("{n} of {all} emitters stay shut, and their plants get no water.", n, of)
}

func (sc part) unsteadyLine(f *sheet.Finding) string {
	return words.Say("{n} {n|emitter opens and shuts|emitters open and shut} in turn, and you cannot count on them.", words.N(f.Count))
}

func (sc part) belowLine(f *sheet.Finding) string {
	if f.Count == sc.emitters() && f.Count > 1 {
		return words.Say("Every emitter opens, but all of them run below the pressure that keeps the water even.")
	}
	return words.Say("Every emitter opens, but {n} {n|runs|run} below the pressure that keeps the water even.", words.N(f.Count))
}

func (sc part) aboveLine(f *sheet.Finding) string {
	if f.Count == sc.emitters() && f.Count > 1 {
		return words.Say("Every emitter opens, but all of them run above the pressure that such emitters are made for.")
	}
	return words.Say("Every emitter opens, but {n} {n|runs|run} above the pressure that such emitters are made for.", words.N(f.Count))
}

// What was found and what was wanted. Where there are several zones, a finding
// says in which one it is.

// inZone picks what is said of one zone of several, or of all rows.
func (sc part) inZone(f *sheet.Finding, one, all string) string {
	if f.Zone > 0 && len(sc.S.Zones) > 1 {
		return one
	}
	return all
}

func (sc part) powerOnly(f *sheet.Finding) string {
	return words.Say("Power is flow times head: {power} can be much water lifted a little, or a little water lifted high, and only the second opens emitters. Whether your pump is such a one its curve says, or its greatest head and its greatest flow: look them up, and type them in.", sc.Amount(unit.Power, f.Value))
}

func (sc part) labelFigures(f *sheet.Finding) string {
	p := &sc.S.Plan.Supply
	not := words.Say("The figures on the pump's label cannot all be so. A pump of {head} and {flow} puts up to {power} into the water, and one with {label} on its label at most {most}.",
		sc.Amount(unit.Head, p.ShutOff), sc.Amount(unit.Flow, p.MaxFlow), sc.Amount(unit.Power, f.Value), sc.Amount(unit.Power, p.Label), sc.Amount(unit.Power, f.Limit))
	if sc.S.FlowOfAnHour() {
		return words.Sentences(not, words.Say("If the flow is that of an hour, type it with its unit: {flow}.", sc.Amount(unit.EmitterFlow, p.MaxFlow/60)))
	}
	return not
}

func (sc part) labelShort(f *sheet.Finding) string {
	w := sc.S.Wanted
	return words.Say("A pump of {power} cannot be such a one: {head} at {flow} are {water} in the water alone, and of what is on a label at most {most} gets there.",
		sc.Amount(unit.Power, sc.S.Plan.Supply.Power), sc.Amount(unit.Head, w.Least), sc.Amount(unit.Flow, w.Flow), sc.Amount(unit.Power, f.Value), sc.Amount(unit.Power, f.Limit))
}

func (sc part) narrowPump(f *sheet.Finding) string {
	return words.Say("At {head} at the pump all is well. With a little less some emitter has too little, and with a little more another has too much, or the tubing.", sc.Amount(unit.Head, f.Value))
}

func (sc part) neverOpen(f *sheet.Finding) string {
	zone := words.N(f.Zone)
	switch {
	case sheet.Nothing(f.Value):
		return sc.inZone(f,
			words.Say("Nothing of the head of the supply is left for the shut emitters in zone {zone}.", zone),
			words.Say("Nothing of the head of the supply is left for the shut emitters."))
	case f.Value < 0:
		lacks := sc.Amount(unit.Head, -f.Value)
		return sc.inZone(f,
			words.Say("The water stands {head} below the lowest of the shut emitters in zone {zone}.", lacks, zone),
			words.Say("The water stands {head} below the lowest of the shut emitters.", lacks))
	}
	opens, most := sc.Head(f.Limit), sc.Head(f.Value)
	return sc.inZone(f,
		words.Say("Emitters open at {opens}; those that are shut get at most {most} in zone {zone}.", opens, most, zone),
		words.Say("Emitters open at {opens}; those that are shut get at most {most}.", opens, most))
}

func (sc part) unsteady(f *sheet.Finding) string {
	n, zone, shut, closes := words.N(f.Count), words.N(f.Zone), sc.Head(f.Value), sc.Head(f.Limit)
	return sc.inZone(f,
		words.Say("{n} {n|emitter has|emitters have} enough to open but not enough to stay open in zone {zone}: {head} while shut, and once open the head falls below the {closes} at which they shut.", n, zone, shut, closes),
		words.Say("{n} {n|emitter has|emitters have} enough to open but not enough to stay open: {head} while shut, and once open the head falls below the {closes} at which they shut.", n, shut, closes))
}

func (sc part) suction(f *sheet.Finding) string {
	zone, lacks := words.N(f.Zone), sc.Amount(unit.Head, -f.Value)
	return sc.inZone(f,
		words.Say("At the highest point of its way in zone {zone} the running water lacks {head}, so it draws in air at the joints there. Lay the tubing lower or make it wider, or give the system more head.", zone, lacks),
		words.Say("At the highest point of its way the running water lacks {head}, so it draws in air at the joints there. Lay the tubing lower or make it wider, or give the system more head.", lacks))
}

func (sc part) belowRange(f *sheet.Finding) string {
	n, zone, least, from := words.N(f.Count), words.N(f.Zone), sc.Head(f.Value), sc.Head(f.Limit)
	return sc.inZone(f,
		words.Say("{n} {n|emitter runs|emitters run} below the range in zone {zone}: the lowest has {least}, and they keep their flow from {from} on.", n, zone, least, from),
		words.Say("{n} {n|emitter runs|emitters run} below the range: the lowest has {least}, and they keep their flow from {from} on.", n, least, from))
}

func (sc part) aboveRange(f *sheet.Finding) string {
	n, zone, most, made := words.N(f.Count), words.N(f.Zone), sc.Head(f.Value), sc.Head(f.Limit)
	return sc.inZone(f,
		words.Say("{n} {n|emitter runs|emitters run} above the range in zone {zone}: the highest has {most}, and they are made for {made} at most.", n, zone, most, made),
		words.Say("{n} {n|emitter runs|emitters run} above the range: the highest has {most}, and they are made for {made} at most.", n, most, made))
}

func (sc part) uneven(f *sheet.Finding) string {
	even, zone, limit := sc.Amount(unit.Share, f.Value), words.N(f.Zone), sc.Amount(unit.Share, f.Limit)
	return sc.inZone(f,
		words.Say("The evenness (EU) is {even} in zone {zone}, and your limit is {limit}.", even, zone, limit),
		words.Say("The evenness (EU) is {even}, and your limit is {limit}.", even, limit))
}

func (sc part) unlike(f *sheet.Finding) string {
	a, b := &sc.S.Water[f.Row], &sc.S.Water[f.Base]
	much, little := words.N(f.Row+1), words.N(f.Base+1)
	return words.Say("Row {row} gets {flow} a plant and row {base} {other}, from the same shots. On a typical day their plants take up {need} and {less} at most. So when row {base} has what it needs, row {row} gets {times} its need, and the rest drains.",
		much, sc.Amount(unit.EmitterFlow, a.Mean), little, sc.Amount(unit.EmitterFlow, b.Mean),
		sc.Amount(unit.PlantWater, a.Need), sc.Amount(unit.PlantWater, b.Need), times(f.Value))
}

// times says how many times as much, to two figures.
func times(v float64) string {
	return words.Say("{n} times", strconv.FormatFloat(v, 'g', max(2, len(strconv.Itoa(int(v)))), 64))
}

func (sc part) shortReserve(f *sheet.Finding) string {
	spare, zone, wanted := sc.Head(f.Value), words.N(f.Zone), sc.Head(f.Limit)
	return words.Sentences(sc.inZone(f,
		words.Say("The weakest emitter has {head} to spare in zone {zone}, and your safety margin is {margin}.", spare, zone, wanted),
		words.Say("The weakest emitter has {head} to spare, and your safety margin is {margin}.", spare, wanted)),
		words.Say("A fouled filter or a warm day uses it up."))
}

func (sc part) fastLead(f *sheet.Finding) string {
	speed, zone, limit := sc.Amount(unit.Speed, f.Value), words.N(f.Zone), sc.Amount(unit.Speed, f.Limit)
	return words.Sentences(sc.inZone(f,
		words.Say("The water runs at {speed} in the supply line or the header in zone {zone}, and your limit is {limit}.", speed, zone, limit),
		words.Say("The water runs at {speed} in the supply line or the header, and your limit is {limit}.", speed, limit)),
		words.Say("Fast water costs head and causes water hammer when a valve shuts."))
}

func (sc part) offCurve(f *sheet.Finding) string {
	flow, zone, last := sc.Amount(unit.Flow, f.Value), words.N(f.Zone), sc.Amount(unit.Flow, f.Limit)
	return words.Sentences(sc.inZone(f,
		words.Say("The rows draw {flow} in zone {zone}, and the curve that you typed ends at {last}.", flow, zone, last),
		words.Say("The rows draw {flow}, and the curve that you typed ends at {last}.", flow, last)),
		words.Say("Add points, or split the rows into zones."))
}

func (sc part) coarseFilter(f *sheet.Finding) string {
	return words.Say("The filter lets through {opening}, and the narrowest passage of your emitters needs {fit} at most.", sc.Amount(unit.Opening, f.Value), sc.Amount(unit.Opening, f.Limit))
}

func (sc part) overRating(f *sheet.Finding) string {
	return words.Sentences(
		words.Say("With every valve shut the pressure reaches {head}. Warm tubing carries less: in the sun, taken to be {warm} warm, the weakest may carry {rating} for long.",
			sc.Head(f.Value), sc.Amount(unit.Temperature, catalogue.Sun), sc.Head(f.Limit)),
		sc.Relief())
}

func (sc part) outsidePlace(f *sheet.Finding) string {
	row := words.N(f.Row + 1)
	if f.Value < 0 {
		return words.Say("Row {row} begins {far} before the place.", row, sc.Amount(unit.Length, -f.Value))
	}
	return words.Say("Row {row} reaches {far}, and the place ends at {end}.", row, sc.Amount(unit.Length, f.Value), sc.Amount(unit.Length, f.Limit))
}

// narrowPath names two rows, the nearest of all that are too near.
func (sc part) narrowPath(f *sheet.Finding) string {
	row, before, wanted := words.N(f.Row+1), words.N(f.Base+1), sc.Amount(unit.Length, f.Limit)
	if f.Value <= 0 {
		return words.Say("Nothing is free between rows {before} and {row}, and you want a path of {path}.", before, row, wanted)
	}
	return words.Say("Between rows {before} and {row} there is {free}, and you want a path of {path}.", before, row, sc.Amount(unit.Length, f.Value), wanted)
}

func (sc part) nearWall(f *sheet.Finding) string {
	row, wanted := words.N(f.Row+1), sc.Amount(unit.Length, f.Limit)
	switch {
	case sheet.Nothing(f.Value):
		return words.Say("Row {row} touches a wall, and you want {strip} to be free there.", row, wanted)
	case f.Value < 0:
		return words.Say("Row {row} reaches {far} beyond a wall with its slabs, bags, buckets or pots, and you want {strip} to be free before it.", row, sc.Amount(unit.Length, -f.Value), wanted)
	}
	return words.Say("Row {row} comes within {near} of a wall, and you want {strip} to be free there.", row, sc.Amount(unit.Length, f.Value), wanted)
}

func (sc part) weakJoint(f *sheet.Finding) string {
	return words.Say("A joint between the supply and the tubing carries {carries}, and {stands} may stand there with every outlet shut: Buy names it.", sc.Amount(unit.Pressure, f.Limit), sc.Amount(unit.Pressure, f.Value))
}

func (sc part) inTheDoor(f *sheet.Finding) string {
	return words.Say("Row {row} stands in the way in: nothing should stand within {far} of the door.", words.N(f.Row+1), sc.Amount(unit.Length, f.Limit))
}

func (sc part) smallTank(f *sheet.Finding) string {
	return words.Say("At this flow the tank is empty after {time} of watering. Keep it filled, or take a larger one.", sc.Amount(unit.Duration, f.Value))
}

func (sc part) fouled(f *sheet.Finding) string {
	lacks, zone := sc.Head(-f.Value), words.N(f.Zone)
	return words.Sentences(sc.inZone(f,
		words.Say("When the filter has fouled as far as you let it, the weakest emitter lacks {head} in zone {zone}.", lacks, zone),
		words.Say("When the filter has fouled as far as you let it, the weakest emitter lacks {head}.", lacks)),
		words.Say("Clean the filter sooner, or give the system more head."))
}

func (sc part) tooHigh(f *sheet.Finding) string {
	lacks, zone := sc.Amount(unit.Head, -f.Value), words.N(f.Zone)
	return words.Sentences(sc.inZone(f,
		words.Say("With nothing flowing the water stays {head} below the highest point of its way in zone {zone}, so it never gets over it.", lacks, zone),
		words.Say("With nothing flowing the water stays {head} below the highest point of its way, so it never gets over it.", lacks)),
		words.Say("Lay the tubing lower, or give the system more head."))
}
