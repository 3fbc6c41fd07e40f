package grow

import (
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/year/season"
)

// letterWidth is about that of a letter in a picture, in px.
const letterWidth = 7.0

// calendar draws the plantings as bars over the year, and the system below.
func (sc part) calendar(class block.Markup, width float64, s *season.Season) {
	n := min(len(s.Plantings), mostBars)
	end := s.Last + 1
	if _, first, ok := season.Frosts(sc.S.Plan, s.Last); ok && int(first-end) < 30 { // the frost that ends it
		end = max(end, first+1)
	}
	p := block.Plot{Left: 10, Right: width - 10, Top: 24, X0: float64(s.First), X1: float64(end)}
	p.Bottom = p.Top + block.BarHeight*float64(n+1)
	sc.SVG(class, width, p.Bottom+36, words.Say("The season: from {first} to {last}", s.First.Words(), s.Last.Words()), func() {
		sc.months(&p)
		sc.frosts(&p, s, n)
		var dots, dashes, thin, thick, marks block.Path
		for i := range n {
			g := &s.Plantings[i]
			y := p.Top + block.BarHeight*float64(i) + 28
			name := s.Name(sc.S.Plan, i)
			if len(g.Rows) > 0 {
				name = words.Say("{planting}, {rows}", name, wording.Rows(g.Rows))
			}
			// The name stands over its bar, or ends where the paper ends.
			letters := []rune(name)
			if most := int((p.Right - p.Left) / letterWidth); len(letters) > most {
				letters = append(letters[:most-1], '…')
			}
			x := min(p.Day(g.Dates[season.Sow]), p.Right-letterWidth*float64(len(letters)))
			sc.Label(max(x, p.Left), y-11, "start", string(letters))
			for _, part := range [...]struct {
				path     *block.Path
				from, to season.Stage
			}{{&dots, season.Sow, season.Block}, {&dashes, season.Block, season.Slab}, {&thin, season.Slab, season.Harvest}, {&thick, season.Harvest, season.End}} {
				if a, b := g.Dates[part.from], min(g.Dates[part.to], g.Dates[season.End]); a < b {
					part.path.Move(p.Day(a), y)
					part.path.Line(p.Day(b), y)
				}
			}
			marks.Move(p.Day(g.Dates[season.Slab]), y-7)
			marks.Add('v', 14)
		}
		sc.Draw("line line--plug", &dots).Draw("line line--block", &dashes).Draw("line", &thin).Draw("line line--full", &thick)
		sc.Draw("bar", &marks)
		sc.system(&p, s, p.Bottom-12)
	})
}

// months draws the first days of months, as many as there is room for.
func (sc part) months(p *block.Plot) {
	year, month, _ := day.Day(p.X0).Date()
	step := 1
	for _, step = range [...]int{1, 2, 3, 6, 12, 24, 60, 120} {
		if (p.Right-p.Left)/(p.X1-p.X0)*30*float64(step) >= 34 {
			break
		}
	}
	month = (month-1)/step*step + 1
	grid := &block.Path{}
	for first := true; ; month += step {
		d := day.Of(year, month, 1)
		if float64(d) > p.X1 {
			break
		}
		if float64(d) < p.X0 {
			continue
		}
		grid.Move(p.Day(d), p.Top)
		grid.Line(p.Day(d), p.Bottom)
		if p.Day(d) > p.Right-20 {
			continue // there is no room for its name
		}
		y, m, _ := d.Date()
		sc.Label(p.Day(d), p.Bottom+16, "start", day.MonthShort(m))
		if first || m <= step {
			sc.Label(p.Day(d), p.Bottom+31, "start", strconv.Itoa(y))
		}
		first = false
	}
	sc.Draw("grid", grid)
}

// frosts draws the frosts of every year in the picture, beside n bars but not
// through their names.
func (sc part) frosts(p *block.Plot, s *season.Season, n int) {
	dash := &block.Path{}
	taken := p.Left - 1000
	for d := s.First; ; {
		last, first, ok := season.Frosts(sc.S.Plan, d)
		if !ok || float64(last) > p.X1 {
			break
		}
		for i, frost := range [...]day.Day{last, first} {
			x := p.Day(frost)
			if frost < s.First || float64(frost) > p.X1 {
				continue
			}
			for k := range n {
				dash.Move(x, p.Top+block.BarHeight*float64(k)+19)
				dash.Add('v', 24)
			}
			dash.Move(x, p.Top-6)
			dash.Add('v', 12)
			name, anchor := words.Say("last frost"), block.Markup("start")
			if i == 1 {
				name = words.Say("first frost")
			}
			if x > p.Right-90 {
				anchor = "end"
			}
			if x-taken > 90 || anchor == "end" && x-taken > 160 {
				sc.Label(x, p.Top-10, anchor, name)
				taken = x
			}
		}
		d = last + 366 // into the next year's
		if d <= first {
			d = first + 1
		}
	}
	sc.Draw("dash", dash)
}

// system draws what is done for the system as uprights with a letter.
func (sc part) system(p *block.Plot, s *season.Season, y float64) {
	letters := [season.TaskKinds]string{season.Building: "B", season.Leaks: "T", season.Flushing: "F", season.Storing: "D"}
	var line, marks block.Path
	line.Move(p.Left, y)
	line.Line(p.Right, y)
	taken, end := p.Left-100, p.Right
	for i := range s.Tasks {
		if t := &s.Tasks[i]; t.Kind == season.Storing {
			end = min(p.Day(t.Day), p.Right-5)
		}
	}
	for i := range s.Tasks {
		t := &s.Tasks[i]
		letter := letters[t.Kind]
		if letter == "" {
			continue
		}
		for n := range t.Times {
			x := min(p.Day(t.Day+day.Day(n*t.Every)), p.Right-5)
			marks.Move(x, y-6)
			marks.Add('v', 12)
			if x-taken >= 11 && end-x >= 11 || t.Kind == season.Storing {
				sc.Label(x, y-10, "middle", letter)
				taken = x
			}
		}
	}
	sc.Draw("grid", &line).Draw("bar", &marks)
}
