package unit

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

func TestTape(t *testing.T) {
	for _, c := range []struct {
		sys  System
		m    float64
		want string
	}{
		{Metric, 10.024, "10.024 m"}, {Metric, 0.0004, "0.000 m"}, {Metric, 0.0006, "0.001 m"},
		{US, 0, "0 in"}, {US, 0.3048, "1 ft"}, {US, 0.0254 * 5 / 8, "5/8 in"}, {US, 0.0254 * 2.5, "2 1/2 in"},
		{US, 0.3048*7 + 0.0254*0.5, "7 ft 1/2 in"}, {US, 0.3048*2 - 0.0001, "2 ft"}, {US, 0.3048 + 0.0254*11.75, "1 ft 11 3/4 in"},
	} {
		if got := strings.ReplaceAll(Tape(c.sys, c.m), "\u00a0", " "); got != c.want {
			t.Errorf("%g m is %q, want %q", c.m, got, c.want)
		}
	}
	// What is read off the tape is the length, to half of its last mark.
	for n := range 5000 {
		m := float64(n) * 0.0037
		read := 0.0
		whole := 0.0
		for _, word := range strings.Fields(strings.ReplaceAll(Tape(US, m), "\u00a0", " ")) {
			if a, b, part := strings.Cut(word, "/"); part {
				x, _ := strconv.ParseFloat(a, 64)
				y, _ := strconv.ParseFloat(b, 64)
				whole += x / y
				continue
			}
			switch word {
			case "ft":
				read += whole * 0.3048
				whole = 0
			case "in":
				read += whole * 0.0254
				whole = 0
			default:
				x, err := strconv.ParseFloat(word, 64)
				if err != nil {
					t.Fatal(word)
				}
				whole += x
			}
		}
		if math.Abs(read-m) > 0.0254/16+1e-9 {
			t.Fatalf("%g m reads %g", m, read)
		}
	}
}
