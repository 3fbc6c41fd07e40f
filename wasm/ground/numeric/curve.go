package numeric

// A Curve passes smoothly through points whose values only rise or only fall,
// and rises or falls between them likewise: it never overshoots. Make one with
// [NewCurve].
type Curve struct {
	x, y, d []float64 // places, values and slopes there
}

// NewCurve returns the curve through the points (x[i], y[i]): two or more, x
// rising, y rising throughout or falling throughout. It keeps the slices.
//
// Between two points it is the cubic that has their values and slopes. The
// slope at an inner point is the harmonic mean of the two chords (Fritsch and
// Butland 1984), at an end that of the parabola through the three nearest
// points. Each is then held between 1/20 of the smaller adjoining chord and
// twice it, which is within the region where Fritsch and Carlson (1980) prove
// the cubic monotone, and keeps its slope from touching zero.
func NewCurve(x, y []float64) *Curve {
	n := len(x)
	d := make([]float64, n)
	chord := func(i int) float64 { return (y[i+1] - y[i]) / (x[i+1] - x[i]) }
	if n == 2 {
		d[0] = chord(0)
		d[1] = d[0]
		return &Curve{x, y, d}
	}
	end := func(h0, h1, c0, c1 float64) float64 {
		return hold(((2*h0+h1)*c0-h0*c1)/(h0+h1), c0)
	}
	d[0] = end(x[1]-x[0], x[2]-x[1], chord(0), chord(1))
	d[n-1] = end(x[n-1]-x[n-2], x[n-2]-x[n-3], chord(n-2), chord(n-3))
	for i := 1; i < n-1; i++ {
		c0, c1 := chord(i-1), chord(i)
		small := c0
		if c0*c0 > c1*c1 {
			small = c1
		}
		d[i] = hold(2*c0*c1/(c0+c1), small)
	}
	return &Curve{x, y, d}
}

// hold returns the slope d held between 1/20 of a chord's slope and twice it.
func hold(d, chord float64) float64 {
	r := d / chord
	return chord * min(max(r, 0.05), 2)
}

// At returns the value of the curve and its slope at x. Beyond its ends it
// goes on straight with the slope it has there.
func (c *Curve) At(x float64) (y, slope float64) {
	n := len(c.x)
	if x <= c.x[0] {
		return c.y[0] + c.d[0]*(x-c.x[0]), c.d[0]
	}
	if x >= c.x[n-1] {
		return c.y[n-1] + c.d[n-1]*(x-c.x[n-1]), c.d[n-1]
	}
	i := 0
	for x >= c.x[i+1] {
		i++
	}
	h := c.x[i+1] - c.x[i]
	t := (x - c.x[i]) / h
	s := 1 - t
	y0, y1, d0, d1 := c.y[i], c.y[i+1], c.d[i], c.d[i+1]
	y = s*s*((1+2*t)*y0+t*h*d0) + t*t*((3-2*t)*y1-s*h*d1)
	slope = 6*s*t*(y1-y0)/h + s*(1-3*t)*d0 + t*(3*t-2)*d1
	return y, slope
}
