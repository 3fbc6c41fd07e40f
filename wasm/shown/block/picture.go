package block

// Narrow is the class of pictures for narrow screens.
const Narrow Markup = "narrow"

// The two widths of every picture, in px. The page shows one of them.
var widths = [...]struct {
	width float64
	class Markup
}{{340, Narrow}, {760, "wide"}}

// Picture writes a figure with a picture for each width, and its caption below.
func (w *Writer) Picture(caption string, draw func(class Markup, width float64)) {
	w.PictureWith(func() { w.Text(caption) }, draw)
}

// PictureWith is [Writer.Picture] with a caption that is more than a text.
func (w *Writer) PictureWith(caption func(), draw func(class Markup, width float64)) {
	w.HTML(`<figure>`)
	for _, of := range widths {
		draw(of.class, of.width)
	}
	w.HTML(`<figcaption>`)
	caption()
	w.HTML(`</figcaption></figure>`)
}

// SVG is a picture of a size in px, which draw draws. title is read aloud in its
// place.
func (w *Writer) SVG(class Markup, width, height float64, title string, draw func()) {
	w.svg("img", class, width, height, title, draw)
}

// SVGOfParts is [Writer.SVG] of parts that are read aloud too, after title.
func (w *Writer) SVGOfParts(class Markup, width, height float64, title string, draw func()) {
	w.svg("group", class, width, height, title, draw)
}

func (w *Writer) svg(role, class Markup, width, height float64, title string, draw func()) {
	w.HTML(`<svg class="picture `).HTML(class).HTML(`" width="`).At(width).HTML(`" height="`).At(height).
		HTML(`" viewBox="0 0 `).At(width).HTML(` `).At(height).HTML(`" role="`).HTML(role).HTML(`"`).Attr("aria-label", title).HTML(`>`)
	draw()
	w.HTML(`</svg>`)
}
