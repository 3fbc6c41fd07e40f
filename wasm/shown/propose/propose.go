package propose

import (
	"math"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/numeric"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/layout"
)

// What stands for a question that was not answered. The other figures are those
// that a form starts with.
const (
	usualCrop   = 1  // tomato
	usualPlants = 10 // our own choice
)

// Units is how much work a proposal may take, as package work counts: most take a
// tenth of it, and a thousand plants a third.
const Units = 8_000_000

// An Outcome is what became of the answers, in numbers and kinds.
type Outcome struct {
	Asked   []Count // each crop once, in the order of the answers
	Planned []Count // likewise; those of which none finds a place are left out
	Room    Room    // what is kept free
	Usual   Room    // what would be, were the place large enough
	None    bool    // not one plant finds a place; one is planned all the same
	Plain   bool    // emitters do not compensate, because such as do need more head than there can be
	Verdict sheet.Verdict
	Fixes   []sheet.Fix // what would make it a Yes, or as near as it gets; none where it is one
	Cut     bool        // the work ended at its bound: there may be a better plan

	Kept []*plan.Field // of the plan before, and other than in a new one
	Lost []*plan.Field // of it too, but not possible any more, or the answer were worse for them

	Dated bool // a grower has said when the season is
	Late  bool // it is too late this year: the season is that of the next
}

// Known is what is known besides the answers.
type Known struct {
	Before *plan.Plan // that stood there: what a grower has said in it stays; nil for none
	Today  day.Day    // 0 where nobody knows

	Currency string // of where the reader is; empty likewise
}

// Of turns answers into a whole plan, which is valid whatever they are as long as
// each is in its range, and says what became of them. What was not answered is
// assumed. The work spends from m, and where it ends there the plan has usual
// tubing.
func Of(m *work.Meter, a Answers, have Known) (*plan.Plan, Outcome) {
	asked := a
	a.assume()
	k := kept{before: have.Before}
	f, o := place(&a, k)
	p := f.lay(&a, &o)
	p.Prices.Currency = have.Currency
	k.take(p)
	p = o.date(o.drive(m, p, k), k, have.Today)
	if n := len(p.Zones()); p.Timer.Channels < n {
		p.Timer.Channels = n
	}
	// What was worked out is made easy to type, and what was typed stays as it was.
	exact := p.Clone()
	p.Shorten(plan.Default())
	p.Propose()
	for _, v := range asked.told(p) {
		v.field.Copy(p, v.record, exact, v.record)
		p.SetOrigin(v.field, v.record, plan.Typed)
	}
	for i := range p.Rows {
		r := &p.Rows[i]
		if r.Spacing == catalogue.Crops[r.Crop].Of(catalogue.Spacing) {
			p.SetOrigin(plan.FieldNamed("rows", "spacing"), i, plan.LookedUp)
		}
		if f.medium.Along && r.PerPiece == int(catalogue.Crops[r.Crop].Of(catalogue.PerSlab)) {
			p.SetOrigin(plan.FieldNamed("rows", "per-piece"), i, plan.LookedUp)
		}
	}
	for _, v := range asked.told(p) {
		k.recall(p, v)
	}
	return o.keep(p, k), o
}

// A value is one of a plan.
type value struct {
	field  *plan.Field
	record int
}

// told returns the values of a plan that are answers.
func (a *Answers) told(p *plan.Plan) (list []value) {
	is := func(told bool, section, name string) {
		f := plan.FieldNamed(section, name)
		for i := range plan.SectionNamed(section).Records(p) {
			if told {
				list = append(list, value{f, i})
			}
		}
	}
	is(true, "", "units")
	is(a.Name != "", "", "name")
	is(len(a.Crops) > 0, "rows", "crop")
	is(len(a.Crops) > 0, "rows", "plants")
	is(a.Medium != plan.Unset, "rows", "medium")
	is(a.Length != plan.Unset, "place", "length")
	is(a.Width != plan.Unset, "place", "width")
	is(a.Supply != plan.Unset, "supply", "kind")
	is(a.Static != plan.Unset, "supply", "static")
	is(a.TapFlow != plan.Unset, "supply", "tap-flow")
	is(a.ShutOff != plan.Unset, "supply", "shut-off")
	is(a.MaxFlow != plan.Unset, "supply", "max-flow")
	is(a.Power != plan.Unset && p.Supply.Kind != plan.PumpTwo, "supply", "power")
	is(a.Power != plan.Unset && p.Supply.Kind == plan.PumpTwo, "supply", "label")
	is(a.Distance != plan.Unset && p.Runs[0].Length == a.Distance, "runs", "length")
	is(p.Runs[0].Rise == a.Rise || p.Runs[0].Rise == -a.TankHeight, "runs", "rise")
	return list
}

// assume fills in what no rule needs to know whether it was answered.
func (a *Answers) assume() {
	usual := func(v *float64, section, name string) {
		if *v == plan.Unset {
			*v = plan.FieldNamed(section, name).Default
		}
	}
	if len(a.Crops) == 0 {
		a.Crops = []Count{{usualCrop, usualPlants}}
	}
	if a.Medium == plan.Unset {
		a.Medium = plan.CocoSlab
	}
	usual(&a.Length, "place", "length")
	usual(&a.Width, "place", "width")
	if a.Supply == plan.Unset {
		a.Supply = plan.PumpWanted
	}
	usual(&a.Static, "supply", "static")
	usual(&a.TapFlow, "supply", "tap-flow")
	if a.Supply == plan.PumpTwo && (a.ShutOff == plan.Unset || a.MaxFlow == plan.Unset) {
		if a.Supply = plan.PumpPower; a.Power == plan.Unset {
			a.Supply = plan.PumpWanted
		}
	}
	if a.Supply == plan.GravityTank {
		if a.TankHeight == plan.Unset {
			a.TankHeight = usualTank
		}
		a.Rise = -a.TankHeight
	}
	usual(&a.Distance, "runs", "length")
	usual(&a.Rise, "runs", "rise")
}

// usualTank is the height in m of a tank of which nobody has said how high it
// stands: on a table or a low wall. Our own choice.
const usualTank = 1

// place puts the plants on the ground, with less of it kept free where not all
// find a place.
func place(a *Answers, before kept) (*field, Outcome) {
	var f *field
	var o Outcome
	most := 0
	for i, r := range rooms[a.Units] {
		if next := fieldOf(a, before.room(r), before); i < 2 || most == 0 {
			have := next.fit()
			all, n := 0, 0
			for k := range have {
				n += have[k]
				all += next.kinds[k].asked
			}
			if next.have = have; f == nil || n > most || n == 0 {
				f, most = next, n
			}
			if n == all {
				break
			}
		}
	}
	if o.None = most == 0; o.None {
		f.have[0] = 1
	}
	o.Room, o.Usual = f.Room, before.room(rooms[a.Units][0])
	for k := range f.kinds {
		o.Asked = append(o.Asked, Count{f.kinds[k].crop, f.kinds[k].asked})
		if f.have[k] > 0 {
			o.Planned = append(o.Planned, Count{f.kinds[k].crop, f.have[k]})
		}
	}
	return f, o
}

// lay makes a plan of the ground: its rows, its place, and a way for the water
// with all figures as a form starts with, but for those that follow from the
// answers.
func (f *field) lay(a *Answers, o *Outcome) *plan.Plan {
	p := plan.Default()
	p.Name, p.Units = a.Name, a.Units
	points := p.Supply.Points
	for _, s := range plan.Sections() {
		if s.Name == "supply" || s.Name == "runs" || s.Name == "header" {
			s.SetDefaults(p, 0)
		}
	}
	p.Supply.Points = points
	p.Place.Length, p.Place.Width = a.Length, a.Width
	p.Place.Door, p.Place.Path, p.Place.Margin = f.Door, f.Path, f.Margin

	list := f.planted(f.have)
	if o.None {
		list = []segment{{plants: 1}}
	}
	plan.SectionNamed("rows").Resize(p, len(list))
	first, pitch := f.across(a, list)
	at := 0
	for i, s := range list {
		r, k := &p.Rows[i], &f.kinds[s.kind]
		plan.SectionNamed("rows").SetDefaults(p, i)
		r.Crop, r.Plants, r.Spacing, r.Medium = k.crop, s.plants, k.spacing, a.Medium
		r.PerPiece = min(k.each, s.plants)
		before, _ := layout.Reach(f.medium, r.Plants, r.PerPiece, r.Spacing)
		r.First = f.begins + s.at + before
		r.Gap = first
		if i > 0 {
			r.Gap = float64(s.line-at) * pitch
		}
		at = s.line
	}
	if len(p.Rows) == 1 {
		p.Header.Layout = plan.OneLine
	}

	s := &p.Supply
	s.Kind = a.Supply
	s.Static, s.TapFlow = a.Static, a.TapFlow
	answered(&s.ShutOff, a.ShutOff)
	answered(&s.MaxFlow, a.MaxFlow)
	if s.Kind == plan.PumpTwo {
		s.Label = a.Power
	} else {
		answered(&s.Power, a.Power)
	}
	run := &p.Runs[0]
	run.Length = max(a.Distance, math.Abs(a.Rise), plan.FieldNamed("runs", "length").Min)
	run.Rise = a.Rise
	return p
}

// answered puts an answer in the place of what stands there.
func answered(v *float64, to float64) {
	if to != plan.Unset {
		*v = to
	}
}

// across returns how far in m the first line is from the side wall, and the lines
// from one another: as far as the crop table has it, if the place is wide enough,
// and all of them in its middle. One alone stands along the wall, so that the way
// beside it is as wide as can be.
func (f *field) across(a *Answers, list []segment) (first, pitch float64) {
	lines := list[len(list)-1].line + 1
	edge := f.Margin + f.medium.Width/2
	if lines == 1 {
		return min(edge, a.Width/2), 0
	}
	pitch = f.Path + f.medium.Width
	apart := pitch
	for i := range list {
		apart = max(apart, f.kinds[list[i].kind].across)
	}
	apart = min(apart, (a.Width-2*edge)/float64(lines-1))
	whole := step(a.Units)
	pitch = max(pitch, math.Floor(apart/whole+near)*whole)
	first = (a.Width - float64(lines-1)*pitch) / 2
	return min(max(edge, math.Floor(first/whole+near)*whole), plan.FieldNamed("rows", "gap").Max), pitch
}

// Figures of what nobody has typed, in inner units. Common practice, no source,
// where nothing else is said.
const (
	lossOfDevices = 0.3e5  // Pa, of a backflow device at a tap with water flowing; from memory, of two check valves in one body
	anHour        = 3600.0 // s, that a tank lasts at the least
)

// plainEmitter turns the emitter into one that does not compensate, for a few
// tenths of a bar, and the filter and the margin into ones that leave it some:
// common practice, no source.
func plainEmitter(p *plan.Plan) {
	e := &p.Emitters[0]
	e.Kind, e.Exponent = plan.NonCompensating, 0.5
	e.Nominal, e.Lowest, e.Highest = 0.1e5, 0.05e5, 1e5
	e.CV, e.Passage = 0.05, 1.3e-3
	p.Filter.Clean, p.Filter.Fouling = 0.01e5, 0.02e5
	p.Limits.Reserve = 0.5
	if p.Units == unit.US {
		p.Limits.Reserve = 1.5 * foot
	}
}

// drive gives the plan its emitters, its filter, its tank, a regulator where one is
// needed, and then tubing and zones.
func (o *Outcome) drive(m *work.Meter, p *plan.Plan, k kept) *plan.Plan {
	flow := 0.0
	for i := range p.Rows {
		flow += float64(p.Rows[i].Plants*p.Rows[i].PerPlant) * p.Emitters[p.Rows[i].Emitter].Flow
	}
	p.Filter.Rated = max(p.Filter.Rated, round(p, unit.Flow, flow, 5))
	if p.Supply.Kind == plan.Mains {
		p.Supply.Devices = lossOfDevices
	}
	w := water.At(p.Place.Water)
	head, known := headAt(p, w)
	best := p
	if known && !k.emitters() && head < w.HeadOf(p.Emitters[0].Lowest)+p.Limits.Reserve {
		o.Plain = true
		plainEmitter(p)
		k.into(p, k.list, false)
		best = o.settle(m, p, w)
	} else if best = o.settle(m, p, w); o.Verdict != sheet.Yes && !k.emitters() {
		q := p.Clone()
		plainEmitter(q)
		k.into(q, k.list, false)
		other := Outcome{}
		if q = other.settle(m, q, w); other.Verdict == sheet.Yes || other.Verdict < o.Verdict && len(other.Fixes) > 0 {
			best, o.Plain, o.Verdict, o.Fixes, o.Cut = q, true, other.Verdict, other.Fixes, other.Cut
		}
	}
	// The tank is of no consequence for the flows, and follows them: an hour of them
	// is not to be less by rounding.
	m.Within(func() {
		flow := 0.0
		for _, z := range sheet.Judged(best, m).Zones {
			flow = max(flow, z.Flow)
		}
		if tank := round(p, unit.Volume, flow*anHour*(1+1e-6), 50); best.Supply.Kind != plan.Mains && best.Supply.Tank < tank {
			best.Supply.Tank = min(tank, plan.FieldNamed("supply", "tank").Max)
		}
	})
	return best
}

// round returns v rounded up to so many of the units that a plan is in.
func round(p *plan.Plan, k unit.Kind, v, step float64) float64 {
	u := unit.Of(k, p.Units)
	return u.ToInner(numeric.RoundUp(u.FromInner(v), step))
}

// headAt returns the head in m that the supply gives at the header with nothing
// flowing, and whether that is known.
func headAt(p *plan.Plan, w water.Water) (head float64, known bool) {
	switch p.Supply.Kind {
	case plan.Mains:
		return w.HeadOf(p.Supply.Static) - p.Runs[0].Rise, true
	case plan.PumpTwo:
		return p.Supply.ShutOff - p.Runs[0].Rise, true
	case plan.GravityTank:
		return -p.Runs[0].Rise, true
	case plan.PumpPoints:
		return p.Supply.Points[0].Head - p.Runs[0].Rise, true
	}
	return 0, false
}

// settle finds tubing, zones and a regulator for a plan, and works the answer out.
func (o *Outcome) settle(m *work.Meter, p *plan.Plan, w water.Water) *plan.Plan {
	tubed(p, false)
	regulate(p, w)
	best := p
	judged, untried := false, false
	judge := func(v sheet.Verdict) { o.Verdict, judged = v, true }
	o.Cut = !m.Within(func() {
		if q := sheet.Settled(p, m); q != nil && len(q.Check()) == 0 {
			best = q
			judge(sheet.Yes)
			return
		}
		s := sheet.Judged(p, m)
		judge(s.Verdict)
		if s.Verdict == sheet.Yes {
			return
		}
		wide := p.Clone()
		tubed(wide, true)
		if t := sheet.Judged(wide, m); t.Verdict == sheet.Yes {
			best = wide
			judge(sheet.Yes)
			return
		}
		s.Mend()
		o.Fixes, untried = s.Fixes, s.Untried
		for i := range o.Fixes {
			if c := &o.Fixes[i]; c.Solves && c.Plan != nil && ours(c) && len(c.Plan.Check()) == 0 {
				best, o.Fixes, untried = c.Plan, nil, false
				judge(sheet.Yes)
				return
			}
		}
	})
	o.Cut = o.Cut || untried
	if !judged && !m.Gone() { // one look is always to be had
		o.Verdict = sheet.Judged(best, nil).Verdict
	}
	return best
}

// ours says whether a fix changes nothing that the grower has answered.
func ours(f *sheet.Fix) bool {
	return !f.Driven()
}

// tubed lays tubing of usual sizes, or the widest there is, in the family of the
// plan's units.
func tubed(p *plan.Plan, widest bool) {
	row, main := catalogue.Custom, catalogue.Custom
	for i := range catalogue.Tubes {
		switch t := &catalogue.Tubes[i]; {
		case !p.Had(i):
		case t.Row && (row == catalogue.Custom || widest && t.Bore > catalogue.Tubes[row].Bore):
			row = i
		case !t.Row && (main == catalogue.Custom || widest && t.Bore > catalogue.Tubes[main].Bore):
			main = i
		}
	}
	for i := range p.Rows {
		p.Rows[i].Tube = row
	}
	p.Header.Tube, p.Runs[0].Tube = main, main
}

// regulate sets a regulator where shut valves would put more pressure on the rows
// than their tubing may carry in the sun, or emitters would have more than they
// are made for: half-way between that and the least that they need.
func regulate(p *plan.Plan, w water.Water) {
	const step = 0.1e5 // Pa
	p.Supply.Regulator = 0
	head, known := headAt(p, w)
	if !known {
		return
	}
	e := &p.Emitters[0]
	most := w.HeadOf(min(e.Highest, catalogue.Tubes[p.Rows[0].Tube].InSun()))
	if head <= most {
		return
	}
	least := w.HeadOf(e.Lowest+p.Filter.Clean+p.Filter.Fouling) + p.Limits.Reserve
	if p.Supply.Kind != plan.GravityTank { // whose regulator stands at the header
		most += p.Runs[0].Rise
		least += p.Runs[0].Rise
	}
	set := math.Floor(w.PressureHead(min(most, max(least, (least+most)/2)))/step+near) * step
	p.Supply.Regulator = min(max(set, step), plan.FieldNamed("supply", "regulator").Max)
}
