package block

// A Bar is a line of a picture of bars: from the left to solid, and thinner on
// to all, both as shares of the width.
type Bar struct {
	Name, Text string // above it, and behind it
	Solid, All float64
	Limit      float64 // where an upright stands; 0 for none
}

// BarHeight is the room of a bar in px, with its name.
const BarHeight = 40.0

// Bars draws bars in the frame of a plot, which runs from 0 to 1.
func (w *Writer) Bars(p *Plot, bars []Bar) {
	var solid, thin, limits Path
	for i := range bars {
		b := &bars[i]
		y := p.Top + BarHeight*float64(i) + 28
		w.Label(p.Left, y-10, "start", b.Name)
		if b.Text != "" {
			w.Label(p.X(b.All)+8, y+4, "start", b.Text)
		}
		solid.Move(p.Left, y)
		solid.Line(p.X(b.Solid), y)
		thin.Move(p.X(b.Solid), y)
		thin.Line(p.X(b.All), y)
		if b.Limit > 0 {
			limits.Move(p.X(b.Limit), y-8)
			limits.Add('v', 16)
		}
	}
	w.Draw("line line--lead", &solid).Draw("line", &thin).Draw("bar", &limits)
}
