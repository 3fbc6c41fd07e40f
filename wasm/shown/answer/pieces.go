package answer

import (
	"slices"
	"unicode/utf8"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/works/cuts"
	"evenrow/wasm/works/layout"
)

// Pieces draws the rows from above with the name of each piece of tubing beside it, as
// the cut list has it, and the numbers of the list of parts. A number leads to the steps.
func Pieces(the *scene.Scene) {
	numbered(the, "take", "Seen from above, to scale except for the supply line. A letter with a number names a piece of tubing, as the cut list has it; a number in a ring is that of the list of parts, also in the steps; one without a ring is that of a row.",
		"The letter is the size of the tubing, the number behind it counts its pieces along the water. What would stand on something else is left out.", true)
}

// Spots draws them with the numbers alone, each of which leads to its line of the list.
func Spots(the *scene.Scene) {
	numbered(the, "line", "Seen from above, to scale except for the supply line. The numbers in rings are those of the list below; one without a ring is that of a row.",
		"Where two numbers would stand on one another, only the first is written: the other lights up when it is picked in the list.", false)
}

func numbered(the *scene.Scene, to block.Markup, says, caption words.Text, named bool) {
	sc := part{the}
	l := sc.S.Layout
	if l == nil || len(l.Plants) == 0 {
		sc.Say("p", "There are no rows to draw yet.")
		return
	}
	sc.Say("p", says)
	if sc.Link != nil && !sc.Still {
		sc.HTML(`<p class="screen">`).Text(words.Say("Pick a number to find its place, here or in the list.")).HTML(`</p>`)
	}
	of := &numbers{to: to, lines: make([][]int, len(l.Points))}
	for i := range sc.S.Parts {
		nodes, _ := sc.Spots(i)
		for _, n := range nodes {
			of.lines[n] = append(of.lines[n], i)
		}
	}
	if named {
		of.pieces = cuts.Of(l)
	}
	sc.Picture(words.Say(caption), func(class block.Markup, width float64) {
		sc.ground(class, width, sc.S.Rows, of)
	})
}

// numbers are what a plan view says besides rows and plants.
type numbers struct {
	to     block.Markup   // where a number leads to, before a stroke and the number
	lines  [][]int        // by node, the lines of the list that stand there
	pieces []cuts.Cutting // whose names are written

	told []int // nodes with a number; others have a dot
}

// A taken is where on a picture something is written. With none there is room everywhere.
type taken struct {
	wide, high float64      // px, of the picture
	boxes      [][4]float64 // left, top, right, bottom
}

// free takes a box, unless it leaves the picture or something is written there.
func (had *taken) free(x0, y0, x1, y1 float64) bool {
	if had == nil {
		return true
	}
	if x0 < 0 || y0 < 0 || x1 > had.wide || y1 > had.high {
		return false
	}
	for _, o := range had.boxes {
		if x0 < o[2] && o[0] < x1 && y0 < o[3] && o[1] < y1 {
			return false
		}
	}
	had.boxes = append(had.boxes, [4]float64{x0, y0, x1, y1})
	return true
}

// letter is about how wide a letter of a picture is, in px, a little more than most.
const letter = 9.5

// clear is how far a name stands from the middle of what has a ring, in px.
const clear = 11.0

// text takes the place of a text as [block.Writer.Label] writes it.
func (had *taken) text(x, y float64, anchor block.Markup, s string) bool {
	long := letter * float64(utf8.RuneCountInString(s))
	switch anchor {
	case "middle":
		x -= long / 2
	case "end":
		x -= long
	}
	return had.free(x, y-11, x+long, y+3)
}

// rings takes the places of the numbers, and then those of the dots of parts whose
// number would stand on another.
func (of *numbers) rings(l *layout.Layout, at func(x, y float64) (float64, float64), had *taken) {
	of.told = of.told[:0]
	var dots [][4]float64
	for n := range of.lines {
		if len(of.lines[n]) == 0 {
			continue
		}
		x, y := at(l.Points[n].X, l.Points[n].Y)
		if had.free(x-10.5, y-10.5, x+10.5, y+10.5) {
			of.told = append(of.told, n)
		} else {
			dots = append(dots, [4]float64{x - 4, y - 4, x + 4, y + 4})
		}
	}
	had.boxes = append(had.boxes, dots...)
}

// spots marks the places of the parts, with the number of the first line of the list
// that stands there. What is lit is chosen by the page.
func (sc part) spots(of *numbers, at func(x, y float64) (float64, float64)) {
	l := sc.S.Layout
	for i := range sc.S.Parts {
		_, stretches := sc.Spots(i)
		if len(stretches) == 0 {
			continue
		}
		path := &block.Path{}
		for _, s := range stretches {
			from, to := ends(l, s)
			path.Move(at(from.X, from.Y))
			path.Line(at(to.X, to.Y))
		}
		sc.HTML(`<g class="spot spot--long" data-spot=" `).Num(i+1).HTML(` ">`).Draw("spot__way", path).HTML(`</g>`)
	}
	// Those without a number lie below.
	for n := range of.lines {
		if len(of.lines[n]) > 0 && !slices.Contains(of.told, n) {
			sc.HTML(`<g class="spot spot--bare"`)
			sc.spot(of.lines[n], n, at, `4`)
			sc.HTML(`</g>`)
		}
	}
	for _, n := range of.told {
		number := words.N(of.lines[n][0] + 1)
		sc.HTML(`<a class="spot" href="#`).HTML(of.to).HTML(`-`).Text(number).HTML(`"`).Attr("aria-label", words.Say("{number}: {part}", number, sc.S.Parts[of.lines[n][0]].Name))
		sc.spot(of.lines[n], n, at, `10`)
		x, y := at(l.Points[n].X, l.Points[n].Y)
		sc.Label(x, y+5, "middle", number).HTML(`</a>`)
	}
}

// ends are where a stretch begins and ends.
func ends(l *layout.Layout, stretch int) (from, to layout.Point) {
	links := l.Stretches[stretch].Links
	return l.Points[l.Network.Links[links[0]].From], l.Points[l.Network.Links[links[len(links)-1]].To]
}

// spot goes on with the places of some lines of the list, at a node, as a ring.
func (sc part) spot(lines []int, n int, at func(x, y float64) (float64, float64), radius block.Markup) {
	sc.HTML(` data-spot=" `)
	for _, i := range lines {
		sc.Num(i + 1).HTML(` `)
	}
	x, y := at(sc.S.Layout.Points[n].X, sc.S.Layout.Points[n].Y)
	sc.HTML(`"><circle cx="`).At(x).HTML(`" cy="`).At(y).HTML(`" r="`).HTML(radius).HTML(`"/>`)
}

// stub is where the short piece at a joint begins and ends. What closes the header lies
// beyond its last tee, and what joins it to a supply line of another size before its
// first one.
func stub(l *layout.Layout, j *layout.Joint) (from, to layout.Point) {
	from = l.Points[j.Node]
	to = from
	begins, other := ends(l, j.Stretch)
	if begins != from {
		other = begins
	}
	if j.Kind == layout.HeaderJoiner || other.Y > from.Y {
		to.Y -= layout.Stub
	} else {
		to.Y += layout.Stub
	}
	return from, to
}

// stubs draws them.
func (sc part) stubs(at func(x, y float64) (float64, float64)) {
	l, path := sc.S.Layout, &block.Path{}
	for i := range l.Joints {
		if j := &l.Joints[i]; j.Kind == layout.HeaderCap {
			from, to := stub(l, j)
			path.Move(at(from.X, from.Y))
			path.Line(at(to.X, to.Y))
		}
	}
	sc.Draw("line line--head", path)
}

// Where along a piece its name may stand, and where beside that, clear of a ring: on it, and
// then above, left, below and right. The first of all that is free is taken.
var (
	alongPiece = [...]float64{0.5, 0.35, 0.65, 0.2, 0.8}
	besideIt   = [...][2]float64{{}, {0, -1}, {-1, 0}, {0, 1}, {1, 0}}
)

// names writes the name of each piece on it or beside it, where nothing else is written;
// those for which there is no such place are left out.
func (sc part) names(all []cuts.Cutting, at func(x, y float64) (float64, float64), had *taken) {
	l := sc.S.Layout
	for i := range all {
		for k := range all[i].Pieces {
			p := &all[i].Pieces[k]
			if p.Part > 1 {
				continue // its name is that of the whole with a number behind
			}
			along, beside := alongPiece[:], besideIt[:]
			var from, to layout.Point
			if p.Stretch < 0 {
				// It is shorter than its name, which stands at its end.
				from, to = stub(l, &l.Joints[p.Joint])
				along, beside = []float64{1}, besideIt[1:]
			} else {
				from, to = ends(l, p.Stretch)
			}
			x0, y0 := at(from.X, from.Y)
			x1, y1 := at(to.X, to.Y)
			sc.name(all[i].Whole(p), along, beside, x0, y0, x1-x0, y1-y0, had)
		}
	}
}

// name writes the name of a piece that goes from a point of the picture by so much.
func (sc part) name(name string, along []float64, beside [][2]float64, x, y, dx, dy float64, had *taken) {
	for _, b := range beside {
		for _, share := range along {
			if share == 1 && b[0]*dx+b[1]*dy <= 0 {
				continue // back over what the piece begins at
			}
			x := x + share*dx + b[0]*(letter/2*float64(len(name))+clear)
			y := y + share*dy + 4 + b[1]*(7+clear)
			if had.text(x, y, "middle", name) {
				sc.Label(x, y, "middle", name)
				return
			}
		}
	}
}
