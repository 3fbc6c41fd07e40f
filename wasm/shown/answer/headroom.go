package answer

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/headroom"
)

// Headroom says how much more the system can carry.
func Headroom(the *scene.Scene) {
	sc := part{the}
	rooms := sc.S.Headroom
	if len(rooms) == 0 {
		if sc.S.Wanted != nil && sc.S.Verdict == sheet.Yes {
			sc.Say("p", "The pump is sought for the plan as it stands. Put in more plants, and the answer says which pump they take.")
			return
		}
		sc.Tag("p", words.Sentences(words.Say("None: the answer is not Yes."), sc.Helped()))
		return
	}
	first := &rooms[0]
	switch more := words.N(first.Most); {
	case first.Why.Limit == headroom.Enough:
		sc.Say("p", "A lot: with {n} more {n|plant|plants}, one more in each row in turn, the answer is still Yes.", more)
	case first.Most == 0:
		sc.Say("p", "Not one more plant. What ends it: {end}.", sc.bound(first))
	default:
		sc.Say("p", "The answer stays Yes with up to {n} more {n|plant|plants}, one more in each row in turn. What ends it: {end}.", more, sc.bound(first))
	}
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
		bs = append(bs, block.Bar{Name: sc.roomName(r, false), Text: sc.room(r), Solid: share, All: share})
	}
	sc.Picture(words.Say("Each line is how much more there may be, as a share of what the plan has: the longest stands for as much again, or more. Rise is measured against the head of {source}.", sc.TheSource()), func(class block.Markup, width float64) {
		p := block.Plot{Left: 8, Right: width - 84, X1: 1, Bottom: block.BarHeight * float64(len(bs))}
		sc.SVG(class, width, p.Bottom+6, words.Say("How much more the system can carry"), func() {
			sc.Bars(&p, bs)
		})
	})
	sc.SameAsTable(func() {
		sc.Say("p", "Each alone, the plan otherwise as it stands, found by working the plan out again with it.")
		sc.Table(words.Say("How much more the system can carry"), words.Say("More of, and what ends it"), block.Figures(words.Say("Yes with")), block.Figures(words.Say("Row longer by"))).Rows(func(t *block.Table) {
			for i := range rooms {
				r := &rooms[i]
				longer := ""
				if r.Kind == headroom.InRow {
					longer = sc.Amount(unit.Length, float64(r.Most)*sc.S.Plan.Rows[r.Row].Spacing)
				}
				t.Explained(sc.roomName(r, true), sc.bound(r), sc.room(r), longer)
			}
		})
	})
	e := sc.EmitterOf(sc.Zone.Worst)
	sc.Working(func() {
		sc.Say("p", "The plan is worked out again with more of each, until the answer is no longer Yes, and then between the two. What there is to use up is what the weakest emitter has, {head}, over your safety margin of {margin} and what it needs:",
			sc.Amount(unit.Head, sc.Plants[sc.Zone.Worst].Head), sc.Amount(unit.Head, sc.S.Plan.Limits.Reserve))
		w := &sc.S.Layout.Network.Water
		sc.Formula(water.HeadOfPressureFormula, w.Density, e.Lowest*sc.Weight)
	})
}

// roomName is what there may be more of; begins at the beginning of a line.
func (sc part) roomName(r *headroom.Room, begins bool) string {
	type name struct{ within, begin words.Text }
	row := words.N(r.Row + 1)
	var is name
	switch {
	case r.Kind == headroom.InRow && len(sc.S.Plan.Rows) > 1 && begins:
		return words.Say("Plants in row {row}", row)
	case r.Kind == headroom.InRow && len(sc.S.Plan.Rows) > 1:
		return words.Say("plants in row {row}", row)
	case r.Kind == headroom.InRow:
		is = name{"plants in the row", "Plants in the row"}
	case r.Kind == headroom.Rise:
		is = name{"rise of the supply line", "Rise of the supply line"}
	case r.Kind == headroom.Fouling:
		is = name{"loss of the filter", "Loss of the filter"}
	default:
		is = name{"plants in all", "Plants in all"}
	}
	if begins {
		return words.Say(is.begin)
	}
	return words.Say(is.within)
}

// room is how much more there may be.
func (sc part) room(r *headroom.Room) string {
	switch {
	case r.Kind == headroom.Rise:
		return sc.Amount(unit.Head, r.Value())
	case r.Kind == headroom.Fouling:
		return sc.Amount(unit.Pressure, r.Value())
	case r.Why.Limit == headroom.Enough:
		return words.Say("{n} or more", words.N(r.Most))
	}
	return words.Say("{n} {n|plant|plants}", words.N(r.Most))
}

// bound says what ends a room.
func (sc part) bound(r *headroom.Room) string {
	by, judged := sheet.EndedBy(r.Why)
	switch {
	case r.Why.Limit == headroom.Enough:
		return words.Say("more is not looked for")
	case !judged:
		return words.Say("the most that the form takes")
	case r.Fails > r.Most+1:
		more := headroom.Room{Kind: r.Kind, Most: r.Fails}
		return words.Say("{end}, at {room} or before", words.Say(tellings[by].end), sc.room(&more))
	}
	return words.Say(tellings[by].end)
}
