package view

// A path collects the d attribute of an SVG path.
type path struct {
	b []byte
}

func (p *path) add(letter byte, vs ...float64) {
	p.b = append(p.b, letter)
	for i, v := range vs {
		if i > 0 {
			p.b = append(p.b, ' ')
		}
		p.b = appendTenths(p.b, v)
	}
}

func (p *path) move(x, y float64) { p.add('M', x, y) }

func (p *path) line(x, y float64) { p.add('L', x, y) }
func (p *path) close()            { p.b = append(p.b, 'Z') }

// to moves to the first point and draws lines to the others.
func (p *path) to(x, y float64) {
	if len(p.b) == 0 {
		p.move(x, y)
	} else {
		p.line(x, y)
	}
}

// draw writes the path with a class. It writes nothing for an empty path.
func (w *writer) draw(class markup, p *path) *writer {
	if len(p.b) == 0 {
		return w
	}
	w.html(`<path class="`).html(class).html(`" d="`)
	w.b = append(w.b, p.b...) // only letters and numbers
	return w.html(`"/>`)
}

// label writes a text of a picture. anchor is "start", "middle" or "end".
func (w *writer) label(x, y float64, anchor markup, s string) *writer {
	w.html(`<text x="`).at(x).html(`" y="`).at(y).html(`"`)
	if anchor != "start" {
		w.html(` text-anchor="`).html(anchor).html(`"`)
	}
	return w.html(`>`).text(s).html(`</text>`)
}

// svg opens a picture of a size in px; close it with "</svg>". title is read
// aloud in place of the picture.
func (w *writer) svg(class markup, width, height float64, title string) *writer {
	w.html(`<svg class="picture `).html(class).html(`" width="`).at(width).html(`" height="`).at(height).
		html(`" viewBox="0 0 `).at(width).html(` `).at(height).html(`" role="img"`).attr("aria-label", title)
	return w.html(`>`)
}
