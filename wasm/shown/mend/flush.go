package mend

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/pipe"
	"evenrow/wasm/works/flush"
)

// Flush says how fast the water runs at each end of the tubing when it is
// opened.
func Flush(the *scene.Scene) {
	sc := part{the}
	f := sc.S.Flush
	if f == nil {
		sc.Tag("p", "This is worked out as soon as the plan says what drives the water.")
		return
	}
	slow := &f.Ends[f.Told]
	wanted, speed := sc.Amount(unit.Speed, flush.Wanted), sc.Amount(unit.Speed, slow.Speed)
	words := "Yes. With one end open at a time, the water runs at " + speed + " or more at each of them, and " + wanted + " carries the dirt out."
	slowly := strconv.Itoa(f.Slow) + " of " + wording.Count(len(f.Ends), "end", "ends") + ", opened alone, the water runs too slowly to carry the dirt out: " +
		sc.endName(slow) + " reaches " + speed + ", and " + wanted + " is wanted."
	switch flow := sc.Amount(unit.Flow, pipe.FlowAt(flush.Wanted, slow.Bore)); f.Verdict {
	case flush.CleanShut:
		words = "Yes, with the other rows shut: then the water runs at " + sc.Amount(unit.Speed, f.Least) + " or more at each end. While they run it does not: at " + slowly +
			" Keep the water out of the other rows meanwhile, with a valve at each or by folding them."
	case flush.Dry:
		words = "Not everywhere. No water comes to " + sc.endName(slow) + " when it is opened alone: the water has to stand higher, or be pumped higher, first."
	case flush.Shared:
		words = "Not everywhere. At " + slowly + " The rows share what leaves the far header. Fold the other rows shut while one is flushed, or give each row an end of its own."
	case flush.Weak, flush.WeakShut:
		words = "Not everywhere. At " + slowly
		if f.Verdict == flush.WeakShut {
			words += " With the other rows shut it reaches " + sc.Amount(unit.Speed, slow.Alone) + ", which is still too little."
		}
		words += " It takes " + flow + " at that end. A clean filter, wider tubing on the way to it, or a stronger supply helps."
	}
	sc.Tag("p", words)
	sc.together(f)
	if f.Guess > 0 {
		sc.Tag("p", "An open end draws up to "+sc.Amount(unit.Flow, f.Draws)+", and the pump's curve that you typed ends at "+sc.Amount(unit.Flow, f.Guess)+". Beyond that the speeds are a guess.")
	}
	caption := "Each line is one end, opened alone, as high as the water then runs fast."
	if f.Every > 1 {
		caption += " Of the rows, one in " + strconv.Itoa(f.Every) + " is worked out."
	}
	sc.Picture(caption, func(class block.Markup, width float64) {
		sc.ends(class, width, f)
	})
	sc.SameAsTable(func() {
		sc.Table("Speed of the water at each end, opened alone", "End", "#Speed", "#With the other rows shut", "#Flow at the end", "#Given by the "+sc.SourceName(), "#Emitters that shut meanwhile").Rows(func(t *block.Table) {
			for i := range f.Ends {
				e := &f.Ends[i]
				shut := "–" // as fast or faster
				if e.TooSlow() {
					shut = sc.Amount(unit.Speed, e.Alone)
				}
				t.Row(unit.Capital(sc.endName(e)), sc.Amount(unit.Speed, e.Speed), shut, sc.Amount(unit.Flow, pipe.FlowAt(e.Speed, e.Bore)), sc.Amount(unit.Flow, e.Flow), strconv.Itoa(e.Shut))
			}
		})
	})
	sc.Working(func() {
		sc.Tag("p", "What the end of "+sc.endName(slow)+" must give to be clean:")
		sc.Formula(pipe.FlowAtVelocityFormula, flush.Wanted, slow.Bore)
	})
	sc.HTML(`<p>How to flush, and how often: <a href="flushing.html">Flushing</a>.</p>`)
}

// together says how many ends of the rows may be open at once.
func (sc part) together(f *flush.Flush) {
	words := ""
	for _, z := range f.Zones {
		if z.Ends < 2 || z.Most == 0 {
			continue
		}
		most := "all " + strconv.Itoa(z.Ends)
		if z.Most < z.Ends {
			most = strconv.Itoa(z.Most) + " of the " + strconv.Itoa(z.Ends)
		}
		if words != "" {
			words += ", "
		}
		words += most
		if len(f.Zones) > 1 {
			words += " in zone " + strconv.Itoa(z.Zone)
		}
	}
	if words != "" {
		sc.Tag("p", "Ends of rows that may be open at once: "+words+".")
	}
}

// endName names an end by what it belongs to.
func (sc part) endName(e *flush.End) string {
	row := "row " + strconv.Itoa(e.Row+1)
	switch {
	case e.Place == flush.OfHeader:
		return "the header at " + row
	case e.Place == flush.OfFar:
		return "the far header at " + row
	case sc.S.Plan.Header.Layout == plan.OneLine:
		return "the line"
	}
	return row
}

// ends draws the speed at each end over the speed that is wanted.
func (sc part) ends(class block.Markup, width float64, f *flush.Flush) {
	p := block.Plot{Left: 56, Right: width - 12, Top: 22, Bottom: 180, Y1: 2 * flush.Wanted}
	for i := range f.Ends {
		p.Y1 = max(p.Y1, f.Ends[i].Speed)
	}
	sc.SVG(class, width, p.Bottom+40, "Speed of the water at each end, opened alone", func() {
		sc.Side(&p, unit.Speed)
		var bars block.Path
		const words = 54.0 // of the dashed line, at the right
		room, last := (p.Right-words-p.Left)/float64(len(f.Ends)), 0.0
		for i := range f.Ends {
			e := &f.Ends[i]
			x := p.Left + room*(float64(i)+0.5)
			bars.Move(x, p.Bottom)
			bars.Line(x, p.Y(e.Speed))
			name, wide := strconv.Itoa(e.Row+1), 22.0
			if e.Place == flush.OfHeader || e.Place == flush.OfFar {
				name, wide = "header", 48
			}
			if x-last >= wide || room >= wide {
				sc.Label(x, p.Bottom+16, "middle", name)
				last = x
			}
		}
		sc.Label(p.Right, p.Bottom+32, "end", "row")
		sc.Draw("line line--lead", &bars)
		sc.Limits(&p, 0, block.Limit{At: flush.Wanted, Text: "wanted"})
	})
}
