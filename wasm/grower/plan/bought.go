package plan

import (
	"strconv"
	"strings"
)

// A Bought is what a grower says of one line of the list of parts.
type Bought struct {
	Part   string  // the line's key; it may stand on the list no more
	Have   int     // pieces that one has already
	Length float64 // m, likewise, of what is sold by its length
	Price  float64 // of a pack, in the currency of [Prices]; Unset where nobody has said
	Pack   int     // pieces in a pack; 0 as it is usually sold
	Each   float64 // of one metre, of what is sold by its length and is no tubing of [Prices]; Unset likewise
}

// MaxBought is how many lines a plan may say something of.
const MaxBought = 60

// Tubing says whether a line is of tubing that [Prices] has, by its length or its rolls.
func (b *Bought) Tubing() bool { return strings.HasPrefix(b.Part, "tube ") }

// ByLength says whether a line is of what is sold by its length.
func (b *Bought) ByLength() bool { return b.Tubing() || b.Part == "micro-tubing" }

// PriceOf begins the action that looks for what is said of a line of the list of parts, whose
// key follows, and makes a record for it where there is none: "price-of.pump".
const PriceOf = "price-of."

// priceOf does what [PriceOf] asks for, and returns the path of the record; "" where there
// can be none.
func (d *Draft) priceOf(h *History, key string) string {
	s, part := SectionNamed("bought"), FieldNamed("bought", "part")
	n := d.Records(s)
	at := 0
	for at < n && d.Get(Path(part, at)) != key {
		at++
	}
	if at == n {
		fresh := &Plan{Units: d.system("units")}
		s.Resize(fresh, 1)
		s.SetDefaults(fresh, 0)
		fresh.Bought[0].Part = key
		if n >= s.Max || part.rangeProblem(fresh, 0) != nil || key == "" {
			return ""
		}
		for _, f := range s.Fields() {
			d.Set(Path(f, n), f.Typed(fresh, 0))
			if n > 0 {
				h.put(f, n, n+1, ByRule) // not as the one before
			}
		}
		d.settle(h)
	}
	return s.Name + "." + strconv.Itoa(at+1)
}
