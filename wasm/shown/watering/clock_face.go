package watering

import (
	"math"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/year/shots"
)

// clockFace draws a stroke for each shot of a zone: lines of the card down the
// picture, hours across.
func (sc part) clockFace(class block.Markup, width float64, c *shots.Card, zone int) {
	room := 22.0
	if len(c.Lines) > 16 {
		room = 13
	}
	p := block.Plot{Left: 84, Right: width - 20, Top: 8, X0: math.Inf(1)}
	for i := range c.Lines {
		l := &c.Lines[i]
		p.X0, p.X1 = block.Span(p.X0, p.X1, l.Lit.Rise, l.Lit.Set)
		if s := l.Sets[shots.Typical].Zone(zone); s != nil {
			p.X0, p.X1 = block.Span(p.X0, p.X1, s.Shots[0].At, s.Shots[len(s.Shots)-1].At)
		}
	}
	p.X0, p.X1 = math.Floor(p.X0/hour)*hour, math.Ceil(p.X1/hour)*hour
	p.Bottom = p.Top + room*float64(len(c.Lines))
	sc.SVG(class, width, p.Bottom+40, "When the shots are, through the season", func() {
		var grid, rise, set, strokes block.Path
		every := 2.0
		if width < 400 || p.X1-p.X0 > 20*hour {
			every = 4
		}
		for p.X1-p.X0 > 24*every*hour { // shots that do not fit into the day
			every *= 2
		}
		for h := math.Ceil(p.X0/hour/every) * every; h*hour <= p.X1; h += every {
			grid.Move(p.X(h*hour), p.Top)
			grid.Line(p.X(h*hour), p.Bottom)
			sc.Label(p.X(h*hour), p.Bottom+16, "middle", sc.hourName(h))
		}
		last := -room
		for i := range c.Lines {
			l := &c.Lines[i]
			y := p.Top + room*(float64(i)+0.5)
			rise.To(p.X(l.Lit.Rise), y)
			set.To(p.X(l.Lit.Set), y)
			if y-last >= 18 {
				sc.Label(p.Left-8, y+4, "end", shortDate(l.From.Date()))
				last = y
			}
			s := l.Sets[shots.Typical].Zone(zone)
			if s == nil {
				continue
			}
			for _, shot := range s.Shots {
				strokes.Move(p.X(shot.At), y-room*0.36)
				strokes.Add('v', room*0.72)
			}
		}
		sc.Draw("grid", &grid).Draw("ground", &rise).Draw("ground", &set).Draw("line", &strokes)
		sc.Label(p.Right, p.Bottom+34, "end", "time of day")
	})
}

// hourName is a full hour, short.
func (sc part) hourName(h float64) string {
	n := (int(h)%24 + 24) % 24
	if sc.Sys == unit.US {
		half := " am"
		if n == 12 {
			return "noon"
		}
		if n > 12 {
			half = " pm"
		}
		return strconv.Itoa((n+11)%12+1) + half
	}
	return strconv.Itoa(n) + ":00"
}

var monthLetters = "JanFebMarAprMayJunJulAugSepOctNovDec"

// shortDate is a date in a few letters.
func shortDate(_, month, dom int) string {
	return strconv.Itoa(dom) + "\u00a0" + monthLetters[3*month-3:3*month]
}
