package watering

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/dose"
	"evenrow/wasm/year/shots"
)

const hour = 3600.0

// morning is [shots.Morning] on the clock, in h.
const morning = shots.Morning / hour

// outages are the hours of the clock that the table is for.
var outages = [...]float64{morning, 12, 15, 18}

// Outage says how long the plants last when nothing is given any more, and how
// to water by hand.
func Outage(the *scene.Scene) {
	sc := part{the}
	c := sc.S.Shots
	if !c.Ready() {
		sc.Say("p", TimerWaits)
		return
	}
	l := &c.Lines[c.Peak]
	b := c.First
	giver, look, spare := sc.giver()
	sc.Tag("p", "If the "+giver+" stops at "+sc.hourName(morning)+" of a hot day in the "+sc.lineWord()+" from "+l.From.Short()+", "+sc.bedName(b)+" has water that is easy to take up "+sc.until(l, b, shots.Hot, morning)+", and "+sc.until(l, b, shots.Typical, morning)+" on a typical day. If it stops at noon of a hot day, it has water "+sc.until(l, b, shots.Hot, 12)+". After that growth suffers, then leaves and fruit. This errs to the short side: by day plants are counted to take up as much as in the hour about noon, and at night a little. In strong feed count with half of the time.")
	r := shots.ByHand(l.Lit, b, b.Use[shots.Hot])
	sc.Tag("p", "Then water by hand: give each plant of "+sc.bedName(b)+" "+sc.Amount(unit.PlantWater, r.Each)+" every "+wording.Lasting(r.Every)+" about noon. All plants together need "+sc.Amount(unit.Volume, l.Hour(shots.Hot))+" an hour then."+look+" Shade and mist gain time. Look in at noon on every hot day, and keep "+spare+".")
	sc.Picture("How long the water lasts for "+sc.bedName(b)+" when the "+giver+" stops at a time of the day: thick on a hot day, thin on a typical one. In the afternoon the night comes to help.", func(class block.Markup, width float64) {
		sc.lastingPicture(class, width, l, b)
	})
	sc.SameAsTable(func() {
		columns := []string{"Plants"}
		for _, h := range outages {
			columns = append(columns, "#Stops at "+sc.hourName(h))
		}
		sc.Table("How long plants last when the "+giver+" stops", columns...).Rows(func(t *block.Table) {
			row := func(l *shots.Line, b *shots.Bed, name string) {
				for _, sky := range [...]shots.Sky{shots.Typical, shots.Hot} {
					var cells []string
					for _, h := range outages {
						cells = append(cells, wording.Lasting(l.Lasts(b, sky, h*hour)))
					}
					t.Explained(name, words.Say(skies[sky])+", "+l.From.Short(), cells...)
				}
			}
			for i := range l.Beds {
				row(l, &l.Beds[i], unit.Capital(sc.bedName(&l.Beds[i])))
			}
			for _, y := range c.Young {
				row(y.Line, y.Bed, "Just planted: "+sc.bedName(y.Bed))
			}
		})
		sc.otherMedia(c)
		sc.Table("Water by hand about noon of a hot day", "Plants", "#Each plant", "#Every", "#All of them, an hour").Rows(func(t *block.Table) {
			for i := range l.Beds {
				b := &l.Beds[i]
				r := shots.ByHand(l.Lit, b, b.Use[shots.Hot])
				t.Row(unit.Capital(sc.bedName(b)), sc.Amount(unit.PlantWater, r.Each), wording.Lasting(r.Every), sc.Amount(unit.Volume, r.Hour*float64(b.Plants)))
			}
		})
	})
	sc.Working(func() {
		sc.Tag("p", "Counted from the moment when a shot is due and does not come. By day plants are taken to use as much as in the hour about noon, when they use most, and at night "+sc.Amount(unit.Share, shots.Night)+" of that (from memory). At noon's rate on a hot day, "+sc.bedName(b)+" empties a full medium in:")
		if r.Hour > 0 {
			sc.Formula(dose.DryFormula, b.Root, b.Easy/b.Root, r.Hour/hour)
		}
	})
}

// giver is what may stop, what to mind before one looks at it, and what to keep
// in case.
func (sc part) giver() (name, look, spare string) {
	if supply := sc.S.Plan.Supply.Kind; supply != plan.Mains && supply != plan.GravityTank {
		return "pump", " Unplug the pump before you look at it.", "a spare pump or a way to feed the rows from a tank that stands high"
	}
	return "water", "", "a watering can and a full barrel"
}

// otherMedia compares what the plants that are out of water first would last in
// each medium.
func (sc part) otherMedia(c *shots.Card) {
	l := &c.Lines[c.Peak]
	giver, _, _ := sc.giver()
	sc.Tag("p", unit.Capital(sc.bedName(c.First))+" in other media, the "+giver+" stopping at "+sc.hourName(morning)+":")
	sc.Table("How long the same plants last in other media", "Medium, and plants in one", "#Easy to take up, a plant", "#Typical day", "#Hot day").Rows(func(t *block.Table) {
		for i := range c.Others {
			o := &c.Others[i]
			t.Row(words.Say(catalogue.Media[o.Medium].Begin)+", "+strconv.Itoa(o.PerPiece), sc.Amount(unit.PlantWater, o.Bed.Easy),
				wording.Lasting(l.Lasts(&o.Bed, shots.Typical, shots.Morning)), wording.Lasting(l.Lasts(&o.Bed, shots.Hot, shots.Morning)))
		}
	})
}

// until says when that water is gone.
func (sc part) until(l *shots.Line, b *shots.Bed, sky shots.Sky, h float64) string {
	long := l.Lasts(b, sky, h*hour)
	at := h*hour + long
	switch {
	case !(at < 48*hour):
		return "for " + wording.Lasting(long)
	case at >= 24*hour:
		return "until " + sc.clock(at) + " the next day"
	}
	return "until " + sc.clock(at) + " (" + wording.Lasting(long) + ")"
}

// lastingPicture draws how long the water lasts over the time at which the
// pump stops.
func (sc part) lastingPicture(class block.Markup, width float64, l *shots.Line, b *shots.Bed) {
	const most = 24 * hour
	giver, _, _ := sc.giver()
	p := block.Plot{Left: 56, Right: width - 20, Top: 22, Bottom: 190, X0: math.Floor(l.Lit.Rise/hour) * hour, X1: math.Ceil(l.Lit.Set/hour) * hour}
	for sky := shots.Typical; sky <= shots.Hot; sky++ {
		for at := p.X0; at <= p.X1; at += hour / 2 {
			p.Y1 = max(p.Y1, min(most, l.Lasts(b, sky, at)))
		}
	}
	p.Y1 = max(p.Y1, hour)
	sc.SVG(class, width, p.Bottom+40, "How long plants last when the "+giver+" stops, by the time of day", func() {
		sc.Side(&p, unit.Hours)
		every := 3.0
		if width < 400 {
			every = 6
		}
		for h := math.Ceil(p.X0/hour/every) * every; h*hour <= p.X1; h += every {
			sc.Label(p.X(h*hour), p.Bottom+16, "middle", sc.hourName(h))
		}
		sc.Label(p.Right, p.Bottom+34, "end", "the "+giver+" stops at")
		for _, line := range [...]struct {
			sky   shots.Sky
			class block.Markup
		}{{shots.Typical, "line"}, {shots.Hot, "line line--lead"}} {
			var curve block.Path
			for at := p.X0; at <= p.X1; at += hour / 4 {
				curve.To(p.X(at), p.Y(min(most, l.Lasts(b, line.sky, at))))
			}
			sc.Draw(line.class, &curve)
		}
	})
}
