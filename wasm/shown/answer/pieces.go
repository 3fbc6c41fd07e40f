package answer

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/works/cuts"
)

// Pieces draws the rows from above with the name of each piece of tubing beside it, as
// the cut list has it.
func Pieces(the *scene.Scene) {
	sc := part{the}
	l := sc.S.Layout
	if l == nil || len(l.Plants) == 0 {
		sc.Say("p", "There are no rows to draw yet.")
		return
	}
	sc.Say("p", "Seen from above, to scale except for the supply line, with the name of each piece of tubing as the cut list has it.")
	all := cuts.Of(l)
	sc.Picture(words.Say("The letter is the size of the tubing, the number counts its pieces along the water."), func(class block.Markup, width float64) {
		sc.ground(class, width, sc.S.Rows, func(at func(x, y float64) (float64, float64)) { sc.names(all, at) })
	})
}

// names writes the name of each piece at its middle. Where names would stand on one
// another only the first is written.
func (sc part) names(all []cuts.Cutting, at func(x, y float64) (float64, float64)) {
	l := sc.S.Layout
	var had [][2]float64
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
			near := false
			for _, o := range had {
				near = near || x-o[0] < 24 && o[0]-x < 24 && y-o[1] < 13 && o[1]-y < 13
			}
			if !near {
				had = append(had, [2]float64{x, y})
				sc.Label(x, y, "middle", all[i].Whole(p))
			}
		}
	}
}
