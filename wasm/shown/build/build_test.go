package build

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
)

// drawn is what a part of a plan says.
func drawn(p *plan.Plan, draw func(*scene.Scene)) string {
	sc := scene.New(sheet.Bare(p), nil)
	draw(sc)
	return strings.ReplaceAll(sc.String(), "\u00a0", " ")
}

var (
	strip = regexp.MustCompile(`<svg class="strip-of-marks" width="24mm" height="([\d.]+)mm" viewBox="0 0 24 ([\d.]+)"[^>]*>(.*?)</svg>`)
	lines = regexp.MustCompile(`M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)`)
)

// A strip is as long on paper as the spacing, in pieces that go on where the one before
// ends, and its ruler has a line wherever a ruler of one's own has: every half
// centimetre, or every quarter of an inch.
func TestStripsAreAtFullScale(t *testing.T) {
	for _, sys := range []unit.System{unit.Metric, unit.US} {
		for _, spacing := range []float64{0.15, 0.2, 0.333, 0.5, 0.6096, 0.79} {
			p := plan.Default()
			p.Units = sys
			for i := range p.Rows {
				p.Rows[i].Spacing, p.Rows[i].Plants = spacing, 9
			}
			step := 5.0
			if sys == unit.US {
				step = 25.4 / 4
			}
			long, ticks, want := 0.0, 0, 0
			all := strip.FindAllStringSubmatch(drawn(p, Marks), -1)
			for n, m := range all {
				paper, _ := strconv.ParseFloat(m[1], 64)
				// At both ends it is cut: at a thick line where a mark is, else at a dashed one.
				for end, thick := range []bool{n == 0, n == len(all)-1} {
					class := map[bool]string{true: "strip-mark", false: "strip-joint"}[thick]
					_, path, _ := strings.Cut(m[3], `class="`+class+`" d="`)
					path, _, _ = strings.Cut(path, `"`)
					found := 0
					for _, l := range lines.FindAllStringSubmatch(path, -1) {
						y, _ := strconv.ParseFloat(l[2], 64)
						if l[2] == l[4] && l[1] == "0" && l[3] == "24" && math.Abs(y-float64(end)*paper) < 1e-9 {
							found++
						}
					}
					if found != 1 {
						t.Errorf("%g m: end %d of piece %d has %d lines of %s", spacing, end, n+1, found, class)
					}
				}
				for k := 1; float64(k)*step < long+paper-0.06; k++ {
					if float64(k)*step > long+0.06 {
						want++
					}
				}
				if m[1] != m[2] || paper > 200 {
					t.Errorf("%g m: a piece of %s mm is drawn in %s", spacing, m[1], m[2])
				}
				_, ruler, _ := strings.Cut(m[3], `class="strip-fine" d="`)
				ruler, _, _ = strings.Cut(ruler, `"`)
				for _, l := range lines.FindAllStringSubmatch(ruler, -1) {
					if l[2] != l[4] {
						continue // the edge
					}
					y, _ := strconv.ParseFloat(l[2], 64)
					if at := (long + y) / step; math.Abs(at-math.Round(at)) > 0.05/step+1e-9 { // drawn to a tenth
						t.Errorf("%g m: the ruler has a line at %g mm", spacing, long+y)
					}
					ticks++
				}
				long += paper
			}
			if math.Abs(long-spacing*1000) > 0.2 {
				t.Errorf("%g m is %g mm on paper", spacing, long)
			}
			if ticks != want { // none on the lines at the ends
				t.Errorf("%g m: the ruler has %d lines, want %d", spacing, ticks, want)
			}
		}
	}
	// What is too long for a sheet, and a single plant, have none.
	p := plan.Default()
	for i := range p.Rows {
		p.Rows[i].Spacing = 0.9
	}
	if strings.Contains(drawn(p, Marks), "strip-of-marks") {
		t.Error("0.9 m has a strip")
	}
}

// Whether fewer rolls would do is said as it was found, and so is a piece that is longer
// than a roll.
func TestRollsAreTold(t *testing.T) {
	for _, c := range []struct {
		name   string
		roll   float64
		length float64 // of the supply line
		want   string
	}{
		{"one is enough", 50, 8, "One roll of 50 m holds it all; 9.9 m of it is left over."},
		{"two, by their sum", 25, 8, "2 rolls of 25 m, and no fewer do: every other way was ruled out. 9.9 m is left over."},
		{"by the metre", 0, 8, "It is sold by length"},
		{"longer than a roll", 10, 8, "4 pieces are longer than a roll: joiners go where they go on."},
	} {
		p := plan.Default()
		p.Runs[0].Length = c.length
		p.Prices.Rolls[p.Rows[0].Tube] = c.roll
		if errs := p.Check(); len(errs) > 0 {
			t.Fatal(errs[0])
		}
		if got := drawn(p, Cuts); !strings.Contains(got, c.want) {
			t.Errorf("%s: %q is not in\n%s", c.name, c.want, got)
		}
	}
	p := plan.Default()
	p.Prices.Rolls[p.Rows[0].Tube] = 4.9
	errs := p.Check()
	if len(errs) != 1 || !strings.Contains(strings.ReplaceAll(errs[0].Text, "\u00a0", " "), "must be 0 or at least 5 m") {
		t.Errorf("a roll of 4.9 m: %v", errs)
	}
}
