package parts

import (
	"math"
	"strconv"
	"strings"

	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

// A Buy is what is bought for a line after what one has already, in packs or rolls.
// Of a line by its length all amounts are in m, and a pack is a roll, or where it is sold by
// the metre a whole metre or foot.
type Buy struct {
	*Line
	Said  int     // place in Plan.Bought of what the grower says of it; -1 for nothing
	Need  float64 // that the plan takes
	Have  float64 // that one has
	Packs int
	Pack  float64 // in each
	Over  float64 // of what is bought, once all is built

	Price    float64 // of a pack
	Cost     float64 // of all packs, to a hundredth
	Invented bool    // nobody has said the price
	None     bool    // there is no price, not even an invented one
}

// ByLength says whether the line is of what is sold by its length.
func (b *Buy) ByLength() bool { return b.Length > 0 }

// A Shopping is a list of parts with its packs and prices.
type Shopping struct {
	Lines    []Buy
	Groups   [Groups]float64 // what each counter costs
	Total    float64
	Invented float64 // of the total, by prices that nobody has said
	None     int     // lines without a price, which no total holds
	Lost     []int   // places in Plan.Bought of what is of no line, or of one that another is of already
}

// Share is how much of the total is by invented prices; 0 where nothing costs anything.
func (s *Shopping) Share() float64 {
	if s.Total == 0 {
		return 0
	}
	return s.Invented / s.Total
}

// Shop returns what is bought for a list of parts of a plan.
func Shop(lines []Line, p *plan.Plan) *Shopping {
	s := &Shopping{Lines: make([]Buy, len(lines))}
	at := make(map[string]int, len(p.Bought)) // by key
	for i := range p.Bought {
		if _, twice := at[p.Bought[i].Part]; !twice {
			at[p.Bought[i].Part] = i
		}
	}
	used := make([]bool, len(p.Bought))
	for i := range lines {
		b := &s.Lines[i]
		b.Line, b.Said = &lines[i], -1
		say := &plan.Bought{Part: b.Key(), Price: plan.Unset, Each: plan.Unset}
		if k, said := at[say.Part]; said && !used[k] {
			b.Said, used[k], say = k, true, &p.Bought[k]
		}
		if b.ByLength() {
			b.byLength(p, say)
		} else {
			b.byPiece(p, say)
		}
		if b.None {
			s.None++
			continue
		}
		b.Cost = math.Round(float64(b.Packs)*b.Price*100) / 100
		s.Groups[b.Group] += b.Cost
		s.Total += b.Cost
		if b.Invented {
			s.Invented += b.Cost
		}
	}
	for k := range used {
		if !used[k] {
			s.Lost = append(s.Lost, k)
		}
	}
	return s
}

// byPiece fills in packs and price of what is sold by the piece.
func (b *Buy) byPiece(p *plan.Plan, say *plan.Bought) {
	kind := &Kinds[b.Item]
	pack := say.Pack
	if pack == 0 {
		pack = kind.Pack
	}
	left := max(0, b.Count-say.Have)
	b.Packs = (left + pack - 1) / pack
	b.Need, b.Have, b.Pack = float64(b.Count), float64(say.Have), float64(pack)
	b.Over = float64(b.Packs*pack - left)
	if b.Price = say.Price; b.Price == plan.Unset {
		b.Price, b.Invented = b.invented(p)*b.Pack, true
	}
	if b.Own && say.Price == plan.Unset {
		b.Price, b.Invented = b.Line.Price*b.Pack, false
	}
	if b.Item == AJoint && strings.HasPrefix(b.Size, "zone-valve ") && say.Price == plan.Unset {
		// The designs reckon with the same one.
		b.Price, b.Invented = p.Prices.Valve*b.Pack, p.Origin(plan.FieldNamed("prices", "valve"), 0) == plan.Assumed
	}
}

// byLength fills in rolls, or length, and price of what is sold by its length.
func (b *Buy) byLength(p *plan.Plan, say *plan.Bought) {
	b.Need, b.Have = b.Length, say.Length
	each := say.Each
	if b.Item == ATube {
		tube := tubeOf(b.Size)
		each = p.Prices.Tubes[tube]
		b.Invented = p.Origin(plan.FieldNamed("prices", "tube-"+strconv.Itoa(tube)), 0) == plan.Assumed
		b.None = each == 0 // of which the field says that it is not to be had
	} else if each == plan.Unset {
		each, b.Invented = b.invented(p), true
	}
	if b.Rolls == 0 {
		b.Pack = unit.Of(unit.Length, p.Units).ToInner(1)
		left := max(0, b.Length-b.Have)
		b.Packs = int(math.Ceil(left/b.Pack - tiny))
		b.Over = max(0, float64(b.Packs)*b.Pack-left)
	} else {
		// What one has is cut in place of those rolls of which least is taken.
		b.Pack, b.Packs = b.Roll, b.Rolls
		left, from := b.Length, b.Have
		for _, m := range b.Uses {
			if m > from+tiny {
				break
			}
			from -= m
			left -= m
			b.Packs--
		}
		b.Over = max(0, float64(b.Packs)*b.Pack-left)
	}
	b.Price = each * b.Pack
}

// tiny is what a length may be over by a rounding of its figures, in m.
const tiny = 1e-9

// invented is the price of a piece, or a metre, that nobody has said.
func (b *Buy) invented(p *plan.Plan) float64 {
	kind := &Kinds[b.Item]
	price := b.Line.Price
	if price == 0 {
		price = kind.Price
		if kind.By != nil {
			price *= kind.By(p, b.Line)
		}
	}
	// As a shop would write it.
	return math.Round(price*100) / 100
}

// tubeOf is the tubing that the size of a line names, as an index into catalogue.Tubes.
func tubeOf(size string) int {
	if n, err := strconv.Atoi(size); err == nil && 0 <= n && n < len(catalogue.Tubes) {
		return n
	}
	return catalogue.Custom
}

// How invented prices rise with size: common practice, no source.
const (
	usualBore   = 16e-3 // m, of tubing whose fittings cost what stands in [Kinds]
	usualTank   = 0.1   // m³
	usualMedium = 0.01  // m³
)

// byBore is how much more fittings of larger tubing cost, by the largest that a line names.
func byBore(_ *plan.Plan, n *Line) float64 {
	bore := 0.0
	for _, size := range strings.Split(n.Size, " ") {
		if mm, measured := strings.CutSuffix(size, "mm"); measured {
			v, _ := strconv.ParseFloat(mm, 64)
			bore = max(bore, v/1000)
		} else if tube := tubeOf(size); tube != catalogue.Custom {
			bore = max(bore, catalogue.Tubes[tube].Bore)
		}
	}
	if bore == 0 {
		return 1
	}
	return max(0.5, numeric.Pow(bore/usualBore, 1.5))
}

// byFitting is byBore for what a joint is, too.
func byFitting(p *plan.Plan, n *Line) float64 {
	noun, _, _ := strings.Cut(n.Size, " ")
	return byBore(p, n) * times[noun]
}

// times is how much more a fitting costs than a joiner.
var times = map[string]float64{"joiner": 1, "elbow": 1.2, "tee": 1.5, "end-cap": 0.8, "ball-valve": 4, "check-valve": 5, "zone-valve": 5}

func byTank(p *plan.Plan, _ *Line) float64 { return max(0.5, p.Supply.Tank/usualTank) }

func byMedium(_ *plan.Plan, n *Line) float64 {
	kind, err := strconv.Atoi(n.Size)
	if err != nil || kind >= len(catalogue.Media) {
		return 1
	}
	return catalogue.Media[kind].Volume / usualMedium
}

// byFilling is by the volume of all that comes empty.
func byFilling(p *plan.Plan, _ *Line) float64 {
	fill := 0.0
	for i := range p.Rows {
		if m := &catalogue.Media[p.Rows[i].Medium]; m.Empty {
			fill += m.Volume * float64((p.Rows[i].Plants+p.Rows[i].PerPiece-1)/p.Rows[i].PerPiece)
		}
	}
	return fill / usualMedium
}
