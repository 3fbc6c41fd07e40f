package view

// A bar is a line of a picture of bars: from the left to solid, and thinner on
// to all, both as shares of the width.
type bar struct {
	name, text string // above it, and behind it
	solid, all float64
	limit      float64 // where an upright stands; 0 for none
}

// barHeight is the room of a bar in px, with its name.
const barHeight = 40.0

// bars draws bars in the frame of a plot, which runs from 0 to 1.
func (sc *scene) bars(p *plot, bars []bar) {
	var solid, thin, limits path
	for i := range bars {
		b := &bars[i]
		y := p.top + barHeight*float64(i) + 28
		sc.label(p.left, y-10, "start", b.name)
		if b.text != "" {
			sc.label(p.x(b.all)+8, y+4, "start", b.text)
		}
		solid.move(p.left, y)
		solid.line(p.x(b.solid), y)
		thin.move(p.x(b.solid), y)
		thin.line(p.x(b.all), y)
		if b.limit > 0 {
			limits.move(p.x(b.limit), y-8)
			limits.add('v', 16)
		}
	}
	sc.draw("line line--lead", &solid).draw("line", &thin).draw("bar", &limits)
}
