package filter

// Share is how much of an emitter's smallest passage a filter's opening may be
// at most, unless the maker of the emitter allows more. Grains bridge a gap
// several times their size, so the filter must stop what is far smaller than
// the passage.
//
// The value is that of USDA-NRCS National Engineering Handbook 623, chapter 7,
// from memory. Some texts take 1/7, and makers allow up to 1/4.
const Share = 0.1

// Loosest is the share above which an opening is called too coarse: a seventh,
// the loosest that texts give. Between it and [Share] the maker's data sheet
// decides.
const Loosest = 1.0 / 7

// LargestOpening returns the largest fitting opening in m of a filter before
// emitters whose smallest passage is passage m, with a share of it as [Share]
// is.
func LargestOpening(passage, share float64) float64 { return passage * share }

// A Mesh is a count of wires to the inch with the openings sold under it. A
// count is not one opening: the wire's thickness differs. Take the opening
// that the maker states.
type Mesh struct {
	Count int
	Sieve float64 // m, of a laboratory sieve after ASTM E11, from memory; 0 for none
	Least float64 // m, of filters of the irrigation trade, from memory
	Most  float64
}

// Meshes are the counts in common use, coarsest first.
var Meshes = []Mesh{
	{40, 425e-6, 400e-6, 425e-6},
	{60, 250e-6, 250e-6, 250e-6},
	{80, 180e-6, 178e-6, 200e-6},
	{100, 150e-6, 150e-6, 150e-6},
	{120, 125e-6, 125e-6, 130e-6},
	{140, 106e-6, 105e-6, 115e-6},
	{155, 0, 100e-6, 100e-6},
	{170, 90e-6, 90e-6, 90e-6},
	{200, 75e-6, 75e-6, 75e-6},
}

// MeshFor returns the coarsest mesh whose openings, by whatever maker, are at
// most opening m, and false when none of the table is as fine.
func MeshFor(opening float64) (Mesh, bool) {
	for _, m := range Meshes {
		// The tolerance lets 150 µm fit a tenth of 1.5 mm, which is not
		// exact in binary.
		if max(m.Sieve, m.Most) <= opening*(1+1e-9) {
			return m, true
		}
	}
	return Mesh{}, false
}
