package view

import (
	"math"
	"regexp"
	"strconv"
	"testing"
	"unicode/utf8"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// Below the line of heads the stretches of the way have their names.
func TestNamesOfStretchesDoNotTouch(t *testing.T) {
	mixed := plan.Default()
	mixed.Emitters = append(mixed.Emitters, mixed.Emitters[0])
	mixed.Emitters[1].Flow *= 4
	mixed.Rows[1].Emitter = 1
	plans := []*plan.Plan{mixed}
	for _, e := range plan.Examples() {
		plans = append(plans, e.Plan)
	}
	picture := regexp.MustCompile(`(?s)<svg.*?</svg>`)
	name := regexp.MustCompile(`<text x="([\d.]+)" y="([\d.]+)" text-anchor="middle">([^<]+)</text>`)
	const letter = 6.5 // px, at 12 px
	for n, p := range plans {
		s := sheet.Answer(p)
		for _, svg := range picture.FindAllString(said(t, s, "pressure"), -1) {
			names := name.FindAllStringSubmatch(svg, -1)
			for i := range names {
				for j := range i {
					var x, y [2]float64
					wide := 0.0
					for k, m := range [][]string{names[i], names[j]} {
						x[k], _ = strconv.ParseFloat(m[1], 64)
						y[k], _ = strconv.ParseFloat(m[2], 64)
						wide += letter / 2 * float64(utf8.RuneCountInString(m[3]))
					}
					if math.Abs(y[0]-y[1]) < 12 && math.Abs(x[0]-x[1]) < wide+3 {
						t.Errorf("plan %d: %q touches %q: %v, %v", n, names[j][3], names[i][3], x, y)
					}
				}
			}
		}
	}
}
