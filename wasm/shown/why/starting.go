package why

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/startup"
)

// Starting says how the system starts: how its lines fill, and which emitters
// open when.
func Starting(the *scene.Scene) {
	sc := part{the}
	u := sc.S.Startup
	if u == nil {
		sc.Tag("p", "This is worked out as soon as the plan says what drives the water.")
		return
	}
	for i := range u.Zones {
		z := &u.Zones[i]
		sc.Tag("p", sc.zoneAs(z)+sc.fills(z)+" "+sc.opens(z))
		for _, words := range sc.bothStates(z) {
			sc.Tag("p", words)
		}
		if z.Flood != nil {
			sc.Tag("p", sc.floods(z.Flood))
		}
		if i == scene.MostWords-1 && len(u.Zones) > scene.MostWords {
			sc.Tag("p", "The other zones stand in the table.")
			break
		}
	}
	// Where it was given up to follow the water a zone has no rows.
	if slices.ContainsFunc(u.Zones, func(z startup.Zone) bool { return len(z.Rows) > 0 }) {
		sc.Picture("Each line is a row, from when the water comes to its start to when it is at its end, all lines empty at first. A bar marks the end; an arrow, that the water never gets there.", func(class block.Markup, width float64) {
			sc.filling(class, width, u)
		})
	}
	lo, hi := u.Heads()
	if hi > lo {
		sc.Picture("The head at the supply at which each emitter opens, along the rows. What is lower opens first; where a line is missing the emitters stay shut or drip at any pressure. Of rows that open alike one is named.", func(class block.Markup, width float64) {
			sc.opening(class, width, lo, hi)
		})
	}
	sc.SameAsTable(func() {
		// Of a tank they are levels of its water.
		kind, per, words := unit.Pressure, sc.Weight, "Pressures are those at the supply's outlet, above the water it draws from; 0 means from the first drop."
		if sc.S.Plan.Supply.Kind == plan.GravityTank {
			kind, per, words = unit.Head, 1, "Opening heads are levels of the water in the tank, above where it stands; a minus sign means that a lower level would do, and 0 from the first drop."
		}
		sc.Table("Start of each row", "Row", "#Water at its start after", "#At its end after", "#Its first emitter opens at", "#Its last opens at", "#Plants whose emitters stay shut").Rows(func(t *block.Table) {
			for i := range u.Zones {
				z := &u.Zones[i]
				for row := range sc.S.Plan.Rows {
					if sc.S.Layout.ZoneOf(row) != z.Zone {
						continue
					}
					start, end := "–", "–"
					for _, r := range z.Rows {
						if r.Row == row {
							start, end = sc.Elapsed(r.Start), sc.Elapsed(r.End)
						}
					}
					o := z.Opening(func(i int) bool { return sc.S.Layout.Plants[i].Row == row })
					t.Row("Row "+strconv.Itoa(row+1), start, end, sc.Amount(kind, o.Least*per), sc.Amount(kind, o.Most*per), strconv.Itoa(o.Shut))
				}
			}
		})
		sc.Tag("p", words)
	})
	sc.Working(func() {
		sc.Tag("p", "The water that row 1 takes to fill, and how long the flow of a running shot would take to fill it alone:")
		row := &sc.S.Plan.Rows[0]
		bore := sc.S.Layout.Tubes[sc.rowTube()].Bore
		sc.Formula(pipe.VolumeFormula, row.Length(), bore)
		if f := sc.Zone; f != nil && wording.Finite(f.Flow) && f.Flow > 1e-9 { // the range of the formula
			sc.Formula(pipe.FillTimeFormula, row.Length(), bore, f.Flow)
		}
		sc.Tag("p", "The water is followed as it advances. At each moment it runs as fast as the supply's curve and the losses of the wet length let it, with air before it that leaves freely through emitters and open ends. Its inertia, and air that is trapped, are left out: both make the start slower. In tubing that falls the water is taken to fill the bore.")
	})
}

// rowTube is the tubing of row 1.
func (sc part) rowTube() int {
	l := sc.S.Layout
	n := l.Plants[0].Node - 1 // the link that leads to its first plant
	return l.Stretches[l.StretchOf(n)].Tube
}

func (sc part) zoneAs(z *startup.Zone) string {
	if len(sc.S.Layout.Zones) < 2 {
		return ""
	}
	return "Zone " + strconv.Itoa(z.Zone) + ": "
}
