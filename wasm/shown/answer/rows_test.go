package answer

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
)

// drawnRows is the plan view of the tunnel after a change of its place.
func drawnRows(change func(*plan.Place)) string {
	p := plan.Default()
	change(&p.Place)
	sc := scene.New(sheet.Answer(p), nil)
	Map(sc)
	return sc.String()
}

// points are those of each path of a class, in order, picture by picture, and
// whether it is closed.
func points(html, class string) (paths [][][2]float64, closed []bool) {
	for _, m := range regexp.MustCompile(`<path class="`+class+`" d="([^"]*)"`).FindAllStringSubmatch(html, -1) {
		var path [][2]float64
		for _, at := range regexp.MustCompile(`[ML]([-\d.]+) ([-\d.]+)`).FindAllStringSubmatch(m[1], -1) {
			x, _ := strconv.ParseFloat(at[1], 64)
			y, _ := strconv.ParseFloat(at[2], 64)
			path = append(path, [2]float64{x, y})
		}
		paths, closed = append(paths, path), append(closed, strings.HasSuffix(m[1], "Z"))
	}
	return paths, closed
}

// The door is a gap as wide as it is, to scale, in the middle of the near end, and
// where rows may begin is a thin line; without them there are neither.
func TestWallsAreOpenAtTheDoor(t *testing.T) {
	plain := drawnRows(func(p *plan.Place) {})
	walls, closed := points(plain, "place")
	if len(walls) != 2 || !closed[0] || !closed[1] {
		t.Fatalf("walls %v, closed %v", walls, closed)
	}
	if strips, _ := points(plain, "grid"); len(strips) != 0 || strings.Contains(plain, "door") {
		t.Error("a strip is drawn that nobody asked for")
	}
	html := drawnRows(func(p *plan.Place) { p.Door, p.Margin, p.Path = 1, 0.5, 0.6 })
	walls, closed = points(html, "place")
	strips, _ := points(html, "grid")
	if len(walls) != 2 || len(strips) != 2 || closed[0] || closed[1] {
		t.Fatalf("%d walls, %d strips, closed %v", len(walls), len(strips), closed)
	}
	apart := func(a, b [2]float64) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }
	for i, w := range walls {
		const drawn = 0.3 // px: coordinates are in tenths
		metre := apart(w[2], w[3]) / 5
		if got := apart(w[0], w[len(w)-1]); math.Abs(got-metre) > drawn {
			t.Errorf("picture %d: the door is %v px wide, and a metre is %v px", i, got, metre)
		}
		if a, b := apart(w[0], w[1]), apart(w[4], w[5]); math.Abs(a-b) > drawn || math.Abs(a-2*metre) > drawn {
			t.Errorf("picture %d: the door stands %v and %v px from the side walls", i, a, b)
		}
		if got := strips[i][0][0] - w[4][0]; math.Abs(got-metre/2) > drawn {
			t.Errorf("picture %d: the strip is %v px wide, and half a metre is %v px", i, got, metre/2)
		}
	}
	for _, said := range []string{"The gap in the wall is the door, 1\u00a0m wide.", "The thin line keeps 0.5\u00a0m from the walls.", "The narrowest path between rows is 0.9\u00a0m wide"} {
		if !strings.Contains(html, said) {
			t.Errorf("nothing says %q", said)
		}
	}
}
