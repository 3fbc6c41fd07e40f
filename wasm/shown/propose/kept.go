package propose

import (
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// kept is what a proposal takes over from the plan that stood before it: what a grower
// has typed, looked up or measured there and is not asked here.
type kept struct {
	before *plan.Plan // nil for none
	list   []keeping
	lost   []keeping // at once, for what is wrong with them
}

// A keeping is one value of the plan before, and where it belongs in the proposal.
type keeping struct {
	value
	from int // the record before
}

// designed are fields that a proposal finds by a search, or as the place asks for them. What was
// typed there is kept only while the answer is no worse for it; false is for those that go by
// the place alone.
var designed = map[string]bool{
	"header.layout": true, "header.feed": true, "header.tube": true, "header.bore": true,
	"runs.tube": true, "runs.bore": true, "rows.tube": true, "rows.bore": true, "supply.regulator": true,
	"rows.crop": false, "rows.plants": false, "rows.medium": false, "rows.per-piece": false, "rows.first": false, "rows.gap": false, "rows.zone": false,
}

// said reports whether a grower has said what stands in record i of the plan before.
func (k kept) said(f *plan.Field, i int) bool {
	return k.before != nil && k.before.Origin(f, i) != plan.Assumed
}

// length is a length of the place that a grower has said, or the usual one.
func (k kept) length(name string, usual float64) float64 {
	if f := plan.FieldNamed("place", name); k.said(f, 0) {
		return f.Value(k.before, 0)
	}
	return usual
}

// room is the ground kept free, as the grower wants it.
func (k kept) room(r Room) Room {
	return Room{Path: k.length("path", r.Path), Margin: k.length("margin", r.Margin), Door: k.length("door", r.Door)}
}

// alike is the record of the plan before whose value holds for all rows of a crop; -1
// where they differ, or nobody has said it.
func (k kept) alike(f *plan.Field, crop int) int {
	found := -1
	if k.before == nil {
		return found
	}
	for i := range k.before.Rows {
		switch o := k.before.Origin(f, i); {
		case k.before.Rows[i].Crop != crop:
		case o != plan.Typed && o != plan.Measured: // what was looked up is the crop's
			return -1
		case found >= 0 && f.Value(k.before, i) != f.Value(k.before, found):
			return -1
		case found < 0:
			found = i
		}
	}
	return found
}

// spacing is how far apart in m plants of a crop are to stand, or the usual.
func (k kept) spacing(crop int, usual float64) float64 {
	if i := k.alike(plan.FieldNamed("rows", "spacing"), crop); i >= 0 {
		return k.before.Rows[i].Spacing
	}
	return usual
}

// line reports whether the supply line before, of several runs perhaps, is as long and as
// high as the answers have it.
func (k kept) line(p *plan.Plan) bool {
	length, rise := 0.0, 0.0
	for i := range k.before.Runs {
		length += k.before.Runs[i].Length
		rise += k.before.Runs[i].Rise
	}
	run := &p.Runs[0]
	return len(p.Runs) == 1 && abs(length-run.Length) < near && abs(rise-run.Rise) < near
}

func abs(v float64) float64 { return max(v, -v) }

// curve gives the proposal the whole curve of a pump of which it was told the two ends.
func (k kept) curve(p *plan.Plan) {
	if k.before.Supply.Kind != plan.PumpPoints || p.Supply.Kind != plan.PumpTwo {
		return
	}
	points := k.before.Supply.Points
	if points[0].Head == p.Supply.ShutOff && points[len(points)-1].Flow == p.Supply.MaxFlow {
		p.Supply.Kind = plan.PumpPoints
		p.Supply.Points = append([]plan.Point(nil), points...)
	}
}

// take has a proposal begin with what is kept: all but what the questions ask.
func (k *kept) take(p *plan.Plan) {
	if k.before == nil {
		return
	}
	k.curve(p)
	k.lists(p)
	if k.emitters() && k.before.Emitters[0].Kind == plan.NonCompensating {
		plainEmitter(p)
	}
	asked := map[string]bool{"supply.label": true}
	for _, q := range Questions(&Answers{}) {
		asked[q.PathOfAll()] = true
	}
	if len(p.Runs) > 1 { // the line before, of which the answers are the sum
		delete(asked, "runs.length")
		delete(asked, "runs.rise")
	}
	keep := func(f *plan.Field, i, from int) {
		k.list = append(k.list, keeping{value{f, i}, from})
	}
	for _, s := range plan.Sections() {
		// Dates hang together, and so do the figures of a data sheet.
		whole := s.Name == "season" && k.dated() || s.Name == "emitters" && k.emitters()
		for _, f := range s.Fields() {
			path := f.PathOfAll()
			found, here := designed[path]
			switch {
			case here && !found, asked[path], s.Name == "":
			case s.Name == "rows":
				for i := range p.Rows {
					if from := k.alike(f, p.Rows[i].Crop); from >= 0 {
						keep(f, i, from)
					}
				}
			case s.Name == "season" && !k.dated():
			case s.Records(p) == s.Records(k.before):
				for i := range s.Records(p) {
					if whole || k.said(f, i) {
						keep(f, i, i)
					}
				}
			}
		}
	}
	good := possible(k.list, func(list []keeping) *plan.Plan {
		q := p.Clone()
		k.into(q, list, false)
		return q
	})
	stays := map[value]bool{}
	for _, v := range good {
		stays[v.value] = true
	}
	k.lost = except(k.list, func(v keeping) bool { return stays[v.value] })
	k.list = good
	k.into(p, k.list, false)
}

// dated reports whether a grower has said anything of the season or when something is
// planted.
func (k kept) dated() bool {
	if k.before == nil {
		return false
	}
	for _, name := range [...]string{"season", "plantings"} {
		s := plan.SectionNamed(name)
		for i := range s.Records(k.before) {
			for _, f := range s.Fields() {
				if (name == "season" || f.Type == plan.Date) && k.said(f, i) {
					return true
				}
			}
		}
	}
	return false
}

// lists gives the proposal the lists of the plan before that no answer is about.
func (k kept) lists(p *plan.Plan) {
	for _, name := range [...]string{"plantings", "crops", "months", "bought"} {
		plan.SectionNamed(name).CopyRecords(p, k.before)
	}
	if len(k.before.Emitters) > 1 {
		plan.SectionNamed("emitters").CopyRecords(p, k.before)
	}
	if k.line(p) {
		plan.SectionNamed("runs").CopyRecords(p, k.before)
	}
}

// emitters reports whether a grower has said more of the emitters than their flow: then
// they are those at hand.
func (k kept) emitters() bool {
	if k.before == nil {
		return false
	}
	for i := range k.before.Emitters {
		for _, f := range plan.SectionNamed("emitters").Fields() {
			if f.Name != "flow" && k.said(f, i) {
				return true
			}
		}
	}
	return len(k.before.Emitters) > 1
}

// into puts what is kept into a proposal; of what a search finds only with search.
func (k kept) into(p *plan.Plan, list []keeping, search bool) {
	for _, v := range list {
		if designed[v.field.PathOfAll()] && !search {
			continue
		}
		v.field.Copy(p, v.record, k.before, v.from)
	}
}

// recall has an answer that stands in the plan before as well be known as it was known there:
// a rise that was measured still is.
func (k kept) recall(p *plan.Plan, v value) {
	if k.before == nil || v.record >= plan.SectionNamed(v.field.Section).Records(k.before) {
		return
	}
	o := k.before.Origin(v.field, v.record)
	if o != plan.Assumed && v.field.Type != plan.Text && v.field.Value(p, v.record) == v.field.Value(k.before, v.record) {
		p.SetOrigin(v.field, v.record, o)
	}
}

// keep puts what is kept into a proposal that is whole otherwise, as far as it goes together
// with the rest and, where a search finds the field, the answer is no worse for it.
func (o *Outcome) keep(p *plan.Plan, k kept) *plan.Plan {
	if len(k.list) == 0 {
		return p
	}
	with := func(list []keeping) *plan.Plan {
		q := p.Clone()
		k.into(q, list, true)
		return q
	}
	list := possible(k.list, with)
	q := with(list)
	o.Verdict = sheet.Judged(q, nil).Verdict
	if o.Verdict != sheet.Yes {
		less := except(list, func(v keeping) bool { return designed[v.field.PathOfAll()] })
		if r := with(less); len(less) < len(list) && len(r.Check()) == 0 {
			if verdict := sheet.Judged(r, nil).Verdict; verdict < o.Verdict {
				q, list, o.Verdict = r, less, verdict
			}
		}
	}
	stays := map[value]bool{}
	for _, v := range list {
		stays[v.value] = true
		q.SetOrigin(v.field, v.record, k.before.Origin(v.field, v.from))
	}
	seen := map[*plan.Field]bool{}
	for _, v := range append(k.list, k.lost...) {
		own, old := v.field.Default, v.field.Value(k.before, v.from)
		if designed[v.field.PathOfAll()] {
			own = v.field.Value(p, v.record)
		}
		switch {
		case seen[v.field] || own == old || !v.field.Applies(q, v.record):
			continue
		case stays[v.value]:
			o.Kept = append(o.Kept, v.field)
		case v.field.Value(q, v.record) != old && k.said(v.field, v.from):
			o.Lost = append(o.Lost, v.field)
		}
		seen[v.field] = true
	}
	return q
}

// possible leaves out of what is kept whatever is wrong beside the rest of a plan.
func possible(list []keeping, with func([]keeping) *plan.Plan) []keeping {
	for len(list) > 0 {
		wrong := map[string]bool{}
		for _, e := range with(list).Check() {
			wrong[e.Path] = true
		}
		if len(wrong) == 0 {
			break
		}
		less := except(list, func(v keeping) bool { return wrong[plan.Path(v.field, v.record)] })
		if len(less) == len(list) { // what is wrong was not kept, and goes by what was
			return nil
		}
		list = less
	}
	return list
}

// except is what is kept without some.
func except(list []keeping, without func(keeping) bool) (rest []keeping) {
	for _, v := range list {
		if !without(v) {
			rest = append(rest, v)
		}
	}
	return rest
}
