package view

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/headroom"
)

// bounds names what ends a room, by finding.
var bounds = [...]string{
	sheet.NeverOpen:    "emitters that no longer open",
	sheet.Unsteady:     "emitters that no longer stay open",
	sheet.BelowRange:   "the lower end of an emitter's range",
	sheet.AboveRange:   "the upper end of an emitter's range",
	sheet.ShortReserve: "your safety margin",
	sheet.Uneven:       "your limit of evenness",
	sheet.FastLead:     "your limit of speed",
	sheet.OffCurve:     "the end of the pump's curve",
	sheet.OverRating:   "what the tubing may carry in the sun",
	sheet.Fouled:       "the emitters' range once the filter is due for cleaning",
	sheet.OutsidePlace: "the size of the place",
	sheet.Unsolved:     "flows that do not settle",
	sheet.TooHigh:      "a height on the way that the water does not get over",
	sheet.Suction:      "a height on the way where the water is sucked",
	sheet.Unlike:       "shares of what rows need",
}

// headroom says how much more the system can carry.
func (sc *scene) headroom() {
	rooms := sc.s.Headroom
	if len(rooms) == 0 {
		sc.tag("p", "None: the answer is not Yes."+sc.helped())
		return
	}
	first := &rooms[0]
	words := "The answer stays Yes with up to " + count(first.Most, "more plant", "more plants") + ", one more in each row in turn. What ends it: " + sc.bound(first) + "."
	switch {
	case first.Why == headroom.Enough:
		words = "A lot: with " + count(first.Most, "more plant", "more plants") + ", one more in each row in turn, the answer is still Yes."
	case first.Most == 0:
		words = "Not one more plant. What ends it: " + sc.bound(first) + "."
	}
	sc.tag("p", words)
	var bs []bar
	for i := range rooms {
		r := &rooms[i]
		has := 0.0
		switch r.Kind {
		case headroom.InRow:
			has = float64(sc.s.Plan.Rows[r.Row].Plants)
		case headroom.Rise:
			has = sc.zone.Head
		case headroom.Fouling:
			has = sc.s.Plan.Filter.Fouling
		default:
			has = float64(len(sc.plants))
		}
		share := 1.0
		if v := r.Value(); v < has {
			share = v / has
		}
		bs = append(bs, bar{name: sc.roomName(r), text: sc.room(r), solid: share, all: share})
	}
	sc.html(`<figure>`)
	for _, w := range widths {
		p := plot{left: 8, right: w.width - 84, x1: 1, bottom: barHeight * float64(len(bs))}
		sc.svg(w.class, w.width, p.bottom+6, "How much more the system can carry")
		sc.bars(&p, bs)
		sc.html(`</svg>`)
	}
	sc.tag("figcaption", "Each line is how much more there may be, as a share of what the plan has: the longest stands for as much again, or more. Rise is measured against the head of the "+sc.sourceName()+".")
	sc.html(`</figure>`)
	sc.fold("The same as a table")
	sc.tag("p", "Each alone, the plan otherwise as it stands, found by working the plan out again with it.")
	t := sc.table("How much more the system can carry", "More of, and what ends it", "#Yes with", "#Row longer by")
	for i := range rooms {
		r := &rooms[i]
		longer := ""
		if r.Kind == headroom.InRow {
			longer = sc.amount(unit.Length, float64(r.Most)*sc.s.Plan.Rows[r.Row].Spacing)
		}
		t.explained(unit.Capital(sc.roomName(r)), sc.bound(r), sc.room(r), longer)
	}
	t.end()
	sc.html(`</details>`)
	e := sc.emitterOf(sc.zone.Worst)
	sc.fold("Show the working")
	sc.tag("p", "The plan is worked out again with more of each, until the answer is no longer Yes, and then between the two. What there is to use up is what the weakest emitter has, "+
		sc.amount(unit.Head, sc.plants[sc.zone.Worst].head)+", over your safety margin of "+sc.amount(unit.Head, sc.s.Plan.Limits.Reserve)+" and what it needs:")
	w := &sc.s.Layout.Network.Water
	sc.formula(water.HeadOfPressureFormula, w.Density, e.Lowest*sc.weight)
	sc.html(`</details>`)
}

func (sc *scene) roomName(r *headroom.Room) string {
	switch r.Kind {
	case headroom.InRow:
		if len(sc.s.Plan.Rows) > 1 {
			return "plants in row " + strconv.Itoa(r.Row+1)
		}
		return "plants in the row"
	case headroom.Rise:
		return "rise of the supply line"
	case headroom.Fouling:
		return "loss of the filter"
	}
	return "plants in all"
}

// room is how much more there may be.
func (sc *scene) room(r *headroom.Room) string {
	switch {
	case r.Kind == headroom.Rise:
		return sc.amount(unit.Head, r.Value())
	case r.Kind == headroom.Fouling:
		return sc.amount(unit.Pressure, r.Value())
	case r.Why == headroom.Enough:
		return strconv.Itoa(r.Most) + " or more"
	}
	return count(r.Most, "plant", "plants")
}

// bound says what ends a room.
func (sc *scene) bound(r *headroom.Room) string {
	switch {
	case r.Why == headroom.Enough:
		return "more is not looked for"
	case r.Why < 0 || r.Why >= len(bounds):
		return "the most that the form takes"
	case r.Fails > r.Most+1:
		more := headroom.Room{Kind: r.Kind, Most: r.Fails}
		return bounds[r.Why] + ", at " + sc.room(&more) + " or before"
	}
	return bounds[r.Why]
}
