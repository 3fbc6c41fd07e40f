package hostile

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/water"
)

// Plan returns a plan that Check finds nothing wrong with: one of the examples
// of which few or all fields were drawn from their limits, with a supply that
// fits it more or less in two cases of three. accepted says whether it was drawn
// as it is; otherwise fields that did not go together were drawn again.
func Plan(s *Source) (p *plan.Plan, accepted bool) {
	p = example(s)
	p.Units = unit.System(s.below(unit.Systems))
	wild := [...]float64{0.01, 0.01, 0.03, 0.03, 0.1, 0.3, 1}[s.below(7)]
	for _, sec := range plan.Sections() {
		drawSection(s, p, sec, wild)
	}
	order(p)
	crowd(s, p)
	if s.oneIn(3) {
		mix(s, p)
	}
	if !s.oneIn(3) {
		fit(s, p)
	}
	errs := p.Check()
	accepted = len(errs) == 0
	for try := 0; len(errs) > 0; try++ {
		for _, e := range errs {
			mend(s, p, e.Path, try)
		}
		errs = p.Check()
	}
	history(s, p)
	// As it would have been typed: a share has numbers inside that no box holds.
	typed, errs := plan.ParseDraft(plan.DraftOf(p).Encode()).Read()
	if len(errs) > 0 {
		panic(errs[0].Error())
	}
	return typed, accepted
}

// Uneven returns a plan that Check finds nothing wrong with, whose few plants get
// unlike amounts of water: an example with emitters of several kinds, zones of
// their own and a supply of about what they need.
func Uneven(s *Source) *plan.Plan {
	for {
		p := example(s)
		p.Place.Length, p.Place.Width = 90, 90
		p.Limits.Reserve = 0
		p.Header.Layout, p.Header.Feed = s.below(3), s.below(2)
		p.Header.Tube, p.Runs[0].Tube = 1+s.below(6), 1+s.below(6)
		for i := range p.Rows {
			p.Rows[i].Plants = 1 + s.below(20)
			p.Rows[i].PerPiece = 1
		}
		mix(s, p)
		fit(s, p)
		if len(p.Check()) == 0 {
			return p
		}
	}
}

// Ordinary returns a plan as most growers have one, which Check finds nothing
// wrong with: an example with up to ten rows, another supply and up to three
// zones.
func Ordinary(s *Source) *plan.Plan {
	for {
		p := example(s)
		p.Place.Length, p.Place.Width = 60, 40
		plan.SectionNamed("rows").Resize(p, 1+s.below(10))
		zones := 1 + s.below(3)
		for i := range p.Rows {
			r := &p.Rows[i]
			r.Plants, r.PerPiece = 4+s.below(40), 1
			r.Emitter = s.below(len(p.Emitters))
			r.Gap = 0.8 + s.share()
			r.Zone = 1 + i*zones/len(p.Rows)
			r.Slope = 0.02 * (s.share() - 0.5)
		}
		fit(s, p)
		if len(p.Check()) == 0 {
			return p
		}
	}
}

// Ring returns a plan of forty to sixty uneven rows between two headers, of up to
// so many plants, 60 or more, which Check finds nothing wrong with. No layout
// takes longer to work out.
func Ring(s *Source, plants int) *plan.Plan {
	for {
		p := example(s)
		p.Header.Layout, p.Header.Feed = plan.Ring, s.below(2)
		p.Place.Length, p.Place.Width = 300, 200
		plan.SectionNamed("emitters").Resize(p, 1+s.below(2))
		for i := range p.Emitters {
			e := &p.Emitters[i]
			e.Kind = s.below(2)
			e.Exponent = 0.5 * float64(e.Kind)
		}
		const fewest = 40
		plan.SectionNamed("rows").Resize(p, fewest+s.below(plan.MaxRows-fewest+1))
		n, left := len(p.Rows), plants
		even := s.oneIn(4)
		for i := range p.Rows {
			r := &p.Rows[i]
			// Each row that follows takes a plant at least, and none over its
			// share by more than twice.
			most := min(400, left-(n-i-1), 1+2*left/(n-i))
			if r.Plants = max(1, min(most, left/(n-i))); !even {
				r.Plants = 1 + s.below(max(1, most))
			}
			left -= r.Plants
			r.PerPiece, r.PerPlant = 1, 1+s.below(2)
			r.Spacing = 0.1 + 0.4*s.share()
			r.First, r.Gap = 2*s.share(), 0.5+s.share()
			r.Emitter, r.Zone = s.below(len(p.Emitters)), 1
			r.Slope = 0.04 * (s.share() - 0.5)
			r.Height = s.share() - 0.5
			if tube := s.below(len(catalogue.Tubes)); catalogue.Tubes[tube].Row {
				r.Tube = tube
			}
		}
		fit(s, p)
		if len(p.Check()) == 0 {
			return p
		}
	}
}

// example returns one of the examples, as a plan of one's own.
func example(s *Source) *plan.Plan {
	examples := plan.Examples()
	return examples[s.below(len(examples))].Plan.Clone()
}

// history draws how the values of a plan came to be; of half the plans nothing is
// known.
func history(s *Source, p *plan.Plan) {
	if s.oneIn(2) {
		return
	}
	if s.oneIn(2) {
		p.Propose()
	}
	often := 1 + s.below(30)
	for _, f := range plan.Fields() {
		for i := range plan.SectionNamed(f.Section).Records(p) {
			if s.oneIn(often) {
				p.SetOrigin(f, i, plan.Origin(s.below(plan.Origins)))
			}
		}
	}
}

// drawSection draws how many records a section has and what stands in them.
func drawSection(s *Source, p *plan.Plan, sec *plan.Section, wild float64) {
	if sec.Name == "points" && p.Supply.Kind != plan.PumpPoints {
		return
	}
	if sec.List && sec.Max > sec.Min && s.share() < 2*wild {
		n := sec.Min + s.below(sec.Max-sec.Min+1)
		if s.oneIn(2) {
			n = min(n, sec.Min+s.below(4))
		}
		fresh := sec.Records(p) == 0
		sec.Resize(p, n)
		for i := range n {
			if fresh {
				sec.SetDefaults(p, i)
			}
		}
	}
	if sec.Name == "months" && len(p.Months) != 12 {
		high, low := p.Year()
		sec.Resize(p, 12)
		for i := range p.Months {
			p.Months[i] = plan.Month{High: high[i], Low: low[i]}
		}
	}
	for i := range sec.Records(p) {
		for _, f := range sec.Fields() {
			if s.share() < wild {
				draw(s, f, p, i)
			}
		}
	}
}

// bought are keys of parts: most of many plans, one of none.
var bought = [...]string{"tube 1", "tube 3", "tube 10", "micro-tubing", "emitter 0", "stake", "hole-plug", "clamp 1", "pump", "tank", "filter",
	"medium 0", "sowing-plug", "joint tee 3 3 1", "joint end-cap 1", "punch 1", "cutter", "no such thing", ""}

// draw gives a field a value: by turns a limit, one next to it, the default, one
// near it, or any.
func draw(s *Source, f *plan.Field, p *plan.Plan, i int) {
	low, high := f.Min, f.Max
	switch f.Type {
	case plan.Text:
		if f.Name == "part" {
			*f.Text(p, i) = bought[s.below(len(bought))]
			return
		}
		name := []rune(names[s.below(len(names))])
		*f.Text(p, i) = string(name[:min(len(name), int(f.Max))])
		return
	case plan.Choice:
		*f.Int(p, i) = s.below(len(f.Options))
		return
	case plan.Whole, plan.Date:
		var v float64
		switch s.below(6) {
		case 0:
			v = low
		case 1:
			v = high
		case 2:
			v = low + 1
		case 3:
			v = high - 1
		case 4:
			v = math.Round(low + (high-low)*s.share())
		default:
			v = math.Round(f.Value(p, i) + 40*(s.share()-0.5))
		}
		f.SetValue(p, i, min(max(v, low), high))
		return
	}
	if f.Empty && s.oneIn(3) {
		*f.Number(p, i) = plan.Unset
		return
	}
	v := f.Value(p, i)
	switch s.below(9) {
	case 0:
		v = low
	case 1:
		v = high
	case 2:
		v = math.Nextafter(low, high)
	case 3:
		v = math.Nextafter(high, low)
	case 4:
		v = low + (high-low)*s.share()
	case 5:
		v = s.between(max(low, 1e-6*high), high)
	case 6: // as short as it is typed
		x, problem := unit.ParseNumber(unit.Figure(f.Kind, p.Units, s.between(low, high)))
		if problem == nil {
			v = unit.Of(f.Kind, p.Units).ToInner(x)
		}
	default:
		if v == plan.Unset || v == 0 {
			v = f.Default
		}
		v *= 0.5 + 1.5*s.share()
	}
	*f.Number(p, i) = min(max(v, low), high) + 0
}

// names are what a name may be, and must not do anything but stand there.
var names = [...]string{
	"", "Tunnel 3", "<script>alert(1)</script>", `"><img src=x onerror=alert(1)>`, "a & b &amp; &lt;c&gt;", "' onload='x", "]]>", "<!--", "-->",
	"=1+1", "@x", "-2", "e\u0301\u202eabc\u200f", "\U0001F345\U0001F469\u200d\U0001F33E", strings.Repeat("W", 60), strings.Repeat("\U0001F345", 60),
	"BEGIN:VEVENT", `a\,b;c\n`, "%22%3E", "&#60;b&#62;", "NULL", "\u2028", " ", "../../x", "plan.json",
}

// order puts values that have to rise or fall into order.
func order(p *plan.Plan) {
	for i := range p.Emitters {
		e := &p.Emitters[i]
		if top := plan.FieldNamed("emitters", "closes").Max; e.Closes == top { // which seldom is the least of four
			e.Opens, e.Lowest, e.Highest = top, max(e.Lowest, top), max(e.Highest, 2*top)
		}
		v := []float64{e.Closes, e.Opens, e.Lowest, e.Highest}
		slices.Sort(v)
		e.Closes, e.Opens, e.Lowest, e.Highest = v[0], v[1], v[2], v[3]
		e.Regulates = min(e.Regulates, e.Lowest)
		if e.Micro*plan.MicroLoss(e.Flow) > plan.MicroShare*min(e.Lowest, e.Nominal) {
			e.Micro = 0
		}
		if e.Kind == plan.NonCompensating && e.Exponent < 0.3 {
			e.Exponent = 0.5
		} else if e.Kind == plan.Compensating && e.Exponent > 0.2 {
			e.Exponent = 0
		}
	}
	flows, heads := []float64{}, []float64{}
	for _, at := range p.Supply.Points {
		flows, heads = append(flows, at.Flow), append(heads, at.Head)
	}
	slices.Sort(flows)
	slices.Sort(heads)
	for i := range p.Supply.Points {
		p.Supply.Points[i] = plan.Point{Flow: flows[i], Head: heads[len(heads)-1-i]}
	}
	if len(flows) > 0 {
		p.Supply.Points[0].Flow = 0
	}
	for i := range p.Months {
		m := &p.Months[i]
		m.High, m.Low = max(m.High, m.Low), min(m.High, m.Low)
	}
	t := &p.Timer
	if t.DrainLow == plan.FieldNamed("timer", "drain-low").Max { // likewise
		t.Drain, t.DrainHot = max(t.Drain, t.DrainLow), max(t.DrainHot, t.DrainLow)
	}
	v := []float64{t.DrainLow, t.Drain, t.DrainHot}
	slices.Sort(v)
	t.DrainLow, t.Drain, t.DrainHot = v[0], v[1], v[2]
	t.LastHot = min(t.LastHot, t.Last)
	for i := range p.Plantings {
		if a := &p.Plantings[i]; a.To > 0 && a.To < a.From {
			a.From, a.To = a.To, a.From
		}
	}
	for i := range p.Rows {
		r := &p.Rows[i]
		r.Emitter %= len(p.Emitters)
		if !catalogue.Tubes[r.Tube].Row {
			r.Tube = 0
		}
	}
	p.Sky.Offset = math.Round(p.Sky.Offset/900) * 900
	y := &p.Season
	if days := y.FirstFrost - y.LastFrost; days < 1 || days > 365 {
		y.LastFrost = y.FirstFrost - 1 - (days%365+365)%365
		y.LastFrost = max(y.LastFrost, int(plan.FieldNamed("season", "last-frost").Min))
	}
	const apart = 2 * 365 // about what dates may lie apart
	y.Date = y.LastFrost + (y.Date-y.LastFrost)%apart
	for i := range p.Plantings {
		a := &p.Plantings[i]
		a.Date = y.Date + (a.Date-y.Date)%apart
	}
	if y.Frost == 0 {
		if y.Mode == plan.FromFrost {
			y.Mode = plan.FromSowing
		}
		for i := range p.Plantings {
			if a := &p.Plantings[i]; a.Mode == plan.FromFrost+1 {
				a.Mode = plan.AsSeason
			}
		}
	}
}

// crowd spreads a number of plants over the rows: mostly few, now and then as
// many as a plan may hold.
func crowd(s *Source, p *plan.Plan) {
	u := s.share()
	total := int(math.Pow(plan.MaxPlants, u*u*u))
	if s.below(250) == 0 {
		total = plan.MaxPlants - s.below(2)
	}
	const most = 400 // in one row
	rows := plan.SectionNamed("rows")
	if least := (total + most - 1) / most; len(p.Rows) < least {
		rows.Resize(p, min(plan.MaxRows, least+s.below(5)))
	}
	even := s.oneIn(2)
	for i := range p.Rows {
		r := &p.Rows[i]
		left := len(p.Rows) - i - 1 // rows that need a plant each, and take most
		n := total / (left + 1)
		if !even {
			n = int(float64(n) * 2 * s.share())
		}
		n = min(max(n, total-left*most, 1), most, max(1, total-left))
		r.Plants = n
		r.PerPiece = min(r.PerPiece, n)
		total -= n
	}
}

// mix has rows of several kinds of emitter, and of several at a plant, in zones
// of their own or not, and emitters that hardly differ.
func mix(s *Source, p *plan.Plan) {
	for kinds := 1 + s.below(3); len(p.Emitters) < kinds; {
		e := p.Emitters[0]
		f := plan.FieldNamed("emitters", "flow")
		e.Flow = min(max(e.Flow*[]float64{0.5, 0.9, 1.05, 2, 4}[s.below(5)], f.Min), f.Max)
		p.Emitters = append(p.Emitters, e)
	}
	for i := range p.Emitters {
		p.Emitters[i].CV = []float64{0, 0, 0.005, 0.03}[s.below(4)]
	}
	zones, apart, several := 1+s.below(3), s.oneIn(2), s.oneIn(3)
	for i := range p.Rows {
		r := &p.Rows[i]
		r.Emitter, r.Zone, r.PerPlant = s.below(len(p.Emitters)), 1+s.below(zones), 1
		if apart {
			r.Emitter = r.Zone % len(p.Emitters)
		}
		if several {
			r.PerPlant = 1 + s.below(3)
		}
	}
	p.Limits.Evenness = 0.5 + 0.45*s.share()
}

// fit gives the plan a supply of about what it needs, so that water flows.
func fit(s *Source, p *plan.Plan) {
	flow, head := 0.0, 0.0
	for i := range p.Rows {
		r := &p.Rows[i]
		e := &p.Emitters[r.Emitter]
		flow += float64(r.Plants*r.PerPlant) * e.Flow
		head = max(head, e.Lowest/1e4/(water.Gravity/10)+max(0, r.Height)+max(0, r.Slope*r.Length()))
	}
	for i := range p.Runs {
		head += max(0, p.Runs[i].Rise)
	}
	flow *= s.between(0.4, 8)
	head *= s.between(0.7, 4)
	kept := *p
	kept.Supply.Points = slices.Clone(p.Supply.Points)
	set := func(name string, v float64) {
		f := plan.FieldNamed("supply", name)
		f.SetValue(p, 0, min(max(v, f.Min), f.Max))
	}
	switch p.Supply.Kind = []int{plan.PumpPoints, plan.PumpTwo, plan.GravityTank, plan.Mains, plan.PumpWanted}[s.below(5)]; p.Supply.Kind {
	case plan.PumpPoints:
		p.Supply.Points = []plan.Point{{Flow: 0, Head: head}, {Flow: 0.6 * flow, Head: head * 0.8}, {Flow: flow, Head: head * 0.5 * s.share()}}
	case plan.PumpTwo:
		set("shut-off", head)
		set("max-flow", flow)
	case plan.GravityTank:
		p.Runs[0].Rise = max(-head, plan.FieldNamed("runs", "rise").Min)
	case plan.Mains:
		set("static", head*1e4)
		set("tap-flow", flow)
	}
	if s.oneIn(2) {
		p.Supply.Regulator = 0
	}
	if s.oneIn(2) {
		set("tank", flow*3600*s.between(0.5, 20))
	}
	if s.oneIn(2) {
		p.Filter.Rated = min(max(flow, plan.FieldNamed("filter", "rated").Min), plan.FieldNamed("filter", "rated").Max)
	}
	for _, e := range p.Check() {
		if strings.HasPrefix(e.Path, "supply") || strings.HasPrefix(e.Path, "points") {
			p.Supply = kept.Supply
			return
		}
	}
}

// mend draws the field of a path again; after some tries it takes the default,
// then that of the whole record, and at last of the whole list.
func mend(s *Source, p *plan.Plan, path string, try int) {
	fresh := plan.Default()
	part := strings.Split(path, ".")
	var sec *plan.Section
	name, i := part[len(part)-1], 0
	if len(part) == 1 && plan.SectionNamed(path) == nil {
		sec = plan.SectionNamed("")
	} else {
		sec = plan.SectionNamed(part[0])
	}
	if len(part) == 3 {
		i, _ = strconv.Atoi(part[1])
		i--
	}
	switch f := plan.FieldNamed(sec.Name, name); {
	case f != nil && try < 3:
		draw(s, f, p, i)
	case f != nil && try < 6:
		if f.Type == plan.Text {
			*f.Text(p, i) = ""
		}
		f.SetValue(p, i, f.Default)
	case !sec.List && try < 9:
		sec.SetDefaults(p, 0)
	case sec.List && f != nil && try < 9:
		sec.SetDefaults(p, i)
	case sec.List && sec.Name != "rows":
		n := sec.Len(fresh)
		sec.Resize(p, n)
		for k := range n {
			for _, f := range sec.Fields() {
				f.Copy(p, k, fresh, k)
			}
		}
	case try > 30:
		panic(path + " cannot be mended")
	default:
		crowd(s, p)
	}
}
