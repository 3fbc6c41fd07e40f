package view

import (
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/year/season"
)

// letterWidth is about that of a letter in a picture, in px.
const letterWidth = 7.0

// A time axis runs in days.
func (p *plot) day(d day.Day) float64 { return p.x(float64(d)) }

// calendar draws the plantings as bars over the year, and the system below.
func (sc *scene) calendar(class markup, width float64, s *season.Season) {
	n := min(len(s.Plantings), mostBars)
	end := s.Last + 1
	if _, first, ok := season.Frosts(sc.s.Plan, s.Last); ok && int(first-end) < 30 { // the frost that ends it
		end = max(end, first+1)
	}
	p := plot{left: 10, right: width - 10, top: 24, x0: float64(s.First), x1: float64(end)}
	p.bottom = p.top + barHeight*float64(n+1)
	sc.svg(class, width, p.bottom+36, "The season: from "+s.First.Words()+" to "+s.Last.Words())
	sc.months(&p)
	sc.frosts(&p, s, n)
	var dots, dashes, thin, thick, marks path
	for i := range n {
		g := &s.Plantings[i]
		y := p.top + barHeight*float64(i) + 28
		name := s.Name(sc.s.Plan, i)
		if len(g.Rows) > 0 {
			name += ", " + rowWords(g.Rows)
		}
		// The name stands over its bar, or ends where the paper ends.
		letters := []rune(name)
		if most := int((p.right - p.left) / letterWidth); len(letters) > most {
			letters = append(letters[:most-1], '…')
		}
		x := min(p.day(g.Dates[season.Sow]), p.right-letterWidth*float64(len(letters)))
		sc.label(max(x, p.left), y-11, "start", string(letters))
		for _, part := range [...]struct {
			path     *path
			from, to season.Stage
		}{{&dots, season.Sow, season.Block}, {&dashes, season.Block, season.Slab}, {&thin, season.Slab, season.Harvest}, {&thick, season.Harvest, season.End}} {
			if a, b := g.Dates[part.from], min(g.Dates[part.to], g.Dates[season.End]); a < b {
				part.path.move(p.day(a), y)
				part.path.line(p.day(b), y)
			}
		}
		marks.move(p.day(g.Dates[season.Slab]), y-7)
		marks.add('v', 14)
	}
	sc.draw("line line--plug", &dots).draw("line line--block", &dashes).draw("line", &thin).draw("line line--full", &thick)
	sc.draw("bar", &marks)
	sc.system(&p, s, p.bottom-12)
	sc.html(`</svg>`)
}

// months draws the first days of months, as many as there is room for.
func (sc *scene) months(p *plot) {
	year, month, _ := day.Day(p.x0).Date()
	step := 1
	for _, step = range [...]int{1, 2, 3, 6, 12, 24, 60, 120} {
		if (p.right-p.left)/(p.x1-p.x0)*30*float64(step) >= 34 {
			break
		}
	}
	month = (month-1)/step*step + 1
	grid := &path{}
	for first := true; ; month += step {
		d := day.Of(year, month, 1)
		if float64(d) > p.x1 {
			break
		}
		if float64(d) < p.x0 {
			continue
		}
		grid.move(p.day(d), p.top)
		grid.line(p.day(d), p.bottom)
		if p.day(d) > p.right-20 {
			continue // there is no room for its name
		}
		y, m, _ := d.Date()
		sc.label(p.day(d), p.bottom+16, "start", day.MonthName(m)[:3])
		if first || m <= step {
			sc.label(p.day(d), p.bottom+31, "start", strconv.Itoa(y))
		}
		first = false
	}
	sc.draw("grid", grid)
}

// frosts draws the frosts of every year in the picture, beside n bars but not
// through their names.
func (sc *scene) frosts(p *plot, s *season.Season, n int) {
	dash := &path{}
	taken := p.left - 1000
	for d := s.First; ; {
		last, first, ok := season.Frosts(sc.s.Plan, d)
		if !ok || float64(last) > p.x1 {
			break
		}
		for i, frost := range [...]day.Day{last, first} {
			x := p.day(frost)
			if frost < s.First || float64(frost) > p.x1 {
				continue
			}
			for k := range n {
				dash.move(x, p.top+barHeight*float64(k)+19)
				dash.add('v', 24)
			}
			dash.move(x, p.top-6)
			dash.add('v', 12)
			name, anchor := "last frost", markup("start")
			if i == 1 {
				name = "first frost"
			}
			if x > p.right-90 {
				anchor = "end"
			}
			if x-taken > 90 || anchor == "end" && x-taken > 160 {
				sc.label(x, p.top-10, anchor, name)
				taken = x
			}
		}
		d = last + 366 // into the next year's
		if d <= first {
			d = first + 1
		}
	}
	sc.draw("dash", dash)
}

// system draws what is done for the system as uprights with a letter.
func (sc *scene) system(p *plot, s *season.Season, y float64) {
	letters := [season.TaskKinds]string{season.Building: "B", season.Leaks: "T", season.Flushing: "F", season.Storing: "D"}
	var line, marks path
	line.move(p.left, y)
	line.line(p.right, y)
	taken, end := p.left-100, p.right
	for i := range s.Tasks {
		if t := &s.Tasks[i]; t.Kind == season.Storing {
			end = min(p.day(t.Day), p.right-5)
		}
	}
	for i := range s.Tasks {
		t := &s.Tasks[i]
		letter := letters[t.Kind]
		if letter == "" {
			continue
		}
		for n := range t.Times {
			x := min(p.day(t.Day+day.Day(n*t.Every)), p.right-5)
			marks.move(x, y-6)
			marks.add('v', 12)
			if x-taken >= 11 && end-x >= 11 || t.Kind == season.Storing {
				sc.label(x, y-10, "middle", letter)
				taken = x
			}
		}
	}
	sc.draw("grid", &line).draw("bar", &marks)
}
