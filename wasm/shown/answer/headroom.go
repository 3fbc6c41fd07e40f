package answer

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/headroom"
)

// Headroom says how much more the system can carry.
func Headroom(the *scene.Scene) {
	sc := part{the}
	rooms := sc.S.Headroom
	if len(rooms) == 0 {
		sc.Tag("p", words.Sentences(words.Say("None: the answer is not Yes."), sc.Helped()))
		return
	}
	first := &rooms[0]
	words := "The answer stays Yes with up to " + wording.Count(first.Most, "more plant", "more plants") + ", one more in each row in turn. What ends it: " + sc.bound(first) + "."
	switch {
	case first.Why.Limit == headroom.Enough:
		words = "A lot: with " + wording.Count(first.Most, "more plant", "more plants") + ", one more in each row in turn, the answer is still Yes."
	case first.Most == 0:
		words = "Not one more plant. What ends it: " + sc.bound(first) + "."
	}
	sc.Tag("p", words)
	var bs []block.Bar
	for i := range rooms {
		r := &rooms[i]
		has := 0.0
		switch r.Kind {
		case headroom.InRow:
			has = float64(sc.S.Plan.Rows[r.Row].Plants)
		case headroom.Rise:
			has = sc.Zone.Head
		case headroom.Fouling:
			has = sc.S.Plan.Filter.Fouling
		default:
			has = float64(len(sc.Plants))
		}
		share := 1.0
		if v := r.Value(); v < has {
			share = v / has
		}
		bs = append(bs, block.Bar{Name: sc.roomName(r), Text: sc.room(r), Solid: share, All: share})
	}
	sc.Picture("Each line is how much more there may be, as a share of what the plan has: the longest stands for as much again, or more. Rise is measured against the head of the "+sc.SourceName()+".", func(class block.Markup, width float64) {
		p := block.Plot{Left: 8, Right: width - 84, X1: 1, Bottom: block.BarHeight * float64(len(bs))}
		sc.SVG(class, width, p.Bottom+6, "How much more the system can carry", func() {
			sc.Bars(&p, bs)
		})
	})
	sc.SameAsTable(func() {
		sc.Tag("p", "Each alone, the plan otherwise as it stands, found by working the plan out again with it.")
		t := sc.Table("How much more the system can carry", "More of, and what ends it", "#Yes with", "#Row longer by")
		for i := range rooms {
			r := &rooms[i]
			longer := ""
			if r.Kind == headroom.InRow {
				longer = sc.Amount(unit.Length, float64(r.Most)*sc.S.Plan.Rows[r.Row].Spacing)
			}
			t.Explained(unit.Capital(sc.roomName(r)), sc.bound(r), sc.room(r), longer)
		}
		t.End()
	})
	e := sc.EmitterOf(sc.Zone.Worst)
	sc.Working(func() {
		sc.Tag("p", "The plan is worked out again with more of each, until the answer is no longer Yes, and then between the two. What there is to use up is what the weakest emitter has, "+
			sc.Amount(unit.Head, sc.Plants[sc.Zone.Worst].Head)+", over your safety margin of "+sc.Amount(unit.Head, sc.S.Plan.Limits.Reserve)+" and what it needs:")
		w := &sc.S.Layout.Network.Water
		sc.Formula(water.HeadOfPressureFormula, w.Density, e.Lowest*sc.Weight)
	})
}

func (sc part) roomName(r *headroom.Room) string {
	switch r.Kind {
	case headroom.InRow:
		if len(sc.S.Plan.Rows) > 1 {
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
func (sc part) room(r *headroom.Room) string {
	switch {
	case r.Kind == headroom.Rise:
		return sc.Amount(unit.Head, r.Value())
	case r.Kind == headroom.Fouling:
		return sc.Amount(unit.Pressure, r.Value())
	case r.Why.Limit == headroom.Enough:
		return strconv.Itoa(r.Most) + " or more"
	}
	return wording.Count(r.Most, "plant", "plants")
}

// bound says what ends a room.
func (sc part) bound(r *headroom.Room) string {
	by, judged := sheet.EndedBy(r.Why)
	switch {
	case r.Why.Limit == headroom.Enough:
		return "more is not looked for"
	case !judged:
		return "the most that the form takes"
	case r.Fails > r.Most+1:
		more := headroom.Room{Kind: r.Kind, Most: r.Fails}
		return words.Say(tellings[by].end) + ", at " + sc.room(&more) + " or before"
	}
	return words.Say(tellings[by].end)
}
