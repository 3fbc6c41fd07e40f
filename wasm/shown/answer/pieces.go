package answer

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/works/cuts"
)

// Pieces draws the rows from above with the name of each piece of tubing beside it, as
// the cut list has it, and the numbers of the list of parts. A number leads to the steps.
func Pieces(the *scene.Scene) {
	numbered(the, "take", "Seen from above, to scale except for the supply line. A letter with a number names a piece of tubing, as the cut list has it; a number in a ring is that of the list of parts, also in the steps.",
		"The letter is the size of the tubing, the number behind it counts its pieces along the water. Where two would stand on one another, only the first is written.", true)
}

// Spots draws them with the numbers alone, each of which leads to its line of the list.
func Spots(the *scene.Scene) {
	numbered(the, "line", "Seen from above, to scale except for the supply line. The numbers are those of the list below.",
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
	all := cuts.Of(l)
	sc.Picture(words.Say(caption), func(class block.Markup, width float64) {
		sc.ground(class, width, sc.S.Rows, func(at func(x, y float64) (float64, float64)) {
			var had taken
			if named {
				sc.names(all, at, &had)
			}
			sc.spots(to, at, &had)
		})
	})
}

// taken are the places of a picture where something is written.
type taken [][2]float64

// free takes a place for what is so many px wide and high, unless something is written
// near it.
func (had *taken) free(x, y, wide, high float64) bool {
	for _, o := range *had {
		if x-o[0] < wide && o[0]-x < wide && y-o[1] < high && o[1]-y < high {
			return false
		}
	}
	*had = append(*had, [2]float64{x, y})
	return true
}

// spots marks the places of the parts, with the number of the first line of the list
// that stands there. What is lit is chosen by the page.
func (sc part) spots(to block.Markup, at func(x, y float64) (float64, float64), had *taken) {
	l := sc.S.Layout
	lines := make([][]int, len(l.Points))
	for i := range sc.S.Parts {
		nodes, stretches := sc.Spots(i)
		for _, n := range nodes {
			lines[n] = append(lines[n], i)
		}
		if len(stretches) == 0 {
			continue
		}
		path := &block.Path{}
		for _, s := range stretches {
			for k, link := range l.Stretches[s].Links {
				from, end := &l.Points[l.Network.Links[link].From], &l.Points[l.Network.Links[link].To]
				if k == 0 {
					x, y := at(from.X, from.Y)
					path.Move(x, y)
				}
				if k == len(l.Stretches[s].Links)-1 {
					path.Line(at(end.X, end.Y))
				}
			}
		}
		sc.HTML(`<g class="spot spot--long" data-spot=" `).Num(i+1).HTML(` ">`).Draw("spot__way", path).HTML(`</g>`)
	}
	// Those without a number lie below.
	var told []int
	for n := range lines {
		if len(lines[n]) == 0 {
			continue
		}
		if x, y := at(l.Points[n].X, l.Points[n].Y); had.free(x, y+5, 20, 22) {
			told = append(told, n)
			continue
		}
		sc.HTML(`<g class="spot spot--bare"`)
		sc.spot(lines[n], n, at, `4`)
		sc.HTML(`</g>`)
	}
	for _, n := range told {
		number := words.N(lines[n][0] + 1)
		sc.HTML(`<a class="spot" href="#`).HTML(to).HTML(`-`).Text(number).HTML(`"`).Attr("aria-label", words.Say("{number}: {part}", number, sc.S.Parts[lines[n][0]].Name))
		sc.spot(lines[n], n, at, `10`)
		x, y := at(l.Points[n].X, l.Points[n].Y)
		sc.Label(x, y+5, "middle", number).HTML(`</a>`)
	}
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

// names writes the name of each piece at its middle. Where names would stand on one
// another only the first is written.
func (sc part) names(all []cuts.Cutting, at func(x, y float64) (float64, float64), had *taken) {
	l := sc.S.Layout
	for i := range all {
		for k := range all[i].Pieces {
			p := &all[i].Pieces[k]
			if p.Part > 1 {
				continue // its name is that of the whole with a number behind
			}
			var x, y float64
			if p.Stretch < 0 {
				x, y = at(l.Points[l.Joints[p.Joint].Node].X, l.Points[l.Joints[p.Joint].Node].Y)
				y -= 8
			} else {
				links := l.Stretches[p.Stretch].Links
				from, to := &l.Points[l.Network.Links[links[0]].From], &l.Points[l.Network.Links[links[len(links)-1]].To]
				x0, y0 := at(from.X, from.Y)
				x1, y1 := at(to.X, to.Y)
				x, y = (x0+x1)/2, (y0+y1)/2+4
			}
			if had.free(x, y, 24, 13) {
				sc.Label(x, y, "middle", all[i].Whole(p))
			}
		}
	}
}
