package block

// A Path collects the d attribute of an SVG path.
type Path struct {
	b []byte
}

func (p *Path) Add(letter byte, vs ...float64) {
	p.b = append(p.b, letter)
	for i, v := range vs {
		if i > 0 {
			p.b = append(p.b, ' ')
		}
		p.b = appendTenths(p.b, v)
	}
}

func (p *Path) Move(x, y float64) { p.Add('M', x, y) }

func (p *Path) Line(x, y float64) { p.Add('L', x, y) }

func (p *Path) Close() { p.b = append(p.b, 'Z') }

// Empty says whether nothing was added.
func (p *Path) Empty() bool { return len(p.b) == 0 }

// Copy is another path with the same beginning.
func (p *Path) Copy() *Path { return &Path{append([]byte(nil), p.b...)} }

// To moves to the first point and draws lines to the others.
func (p *Path) To(x, y float64) {
	if len(p.b) == 0 {
		p.Move(x, y)
	} else {
		p.Line(x, y)
	}
}

// Draw writes the path with a class. It writes nothing for an empty path.
func (w *Writer) Draw(class Markup, p *Path) *Writer {
	if len(p.b) == 0 {
		return w
	}
	w.HTML(`<path class="`).HTML(class).HTML(`" d="`)
	w.b = append(w.b, p.b...) // only letters and numbers
	return w.HTML(`"/>`)
}

// Label writes a text of a picture. anchor is "start", "middle" or "end".
func (w *Writer) Label(x, y float64, anchor Markup, s string) *Writer {
	w.HTML(`<text x="`).At(x).HTML(`" y="`).At(y).HTML(`"`)
	if anchor != "start" {
		w.HTML(` text-anchor="`).HTML(anchor).HTML(`"`)
	}
	return w.HTML(`>`).Text(s).HTML(`</text>`)
}
