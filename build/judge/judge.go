// Package judge says what must be so of every plan, link, file and form, and
// holds what the calculation and the page say to it. No program links it: it is
// for tests, for the fuzzer of Go and for runs of many hours.
package judge

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"runtime/debug"
	"strings"

	"evenrow/build/answer"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/page"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/view"
)

// How far a plan is followed.
const (
	ToSeason = iota // the answer and the season
	ToPage          // and the page that answers the plan's form
	ToEnd           // every exploration, and the JSON
)

// A Verdict is what a plan was found to do.
type Verdict struct {
	Faults []string
	Claim  string // which kind of headline it has

	Used float64 // the greatest share of a bound of the work that was used
	Left int     // pieces of work that ended at their bound, which the page says
}

// spent takes down what the sheet's last piece of work took of its bound. It ends
// at the next step after it, and a step is one pass over all places of water.
func (v *Verdict) spent(s *sheet.Sheet, bound int, whole bool) {
	m := s.Layout.Network.Meter
	if m == nil || bound == 0 {
		return
	}
	used := bound - m.Left()
	v.Used = max(v.Used, float64(used)/float64(bound))
	switch over := used > bound; {
	case over && whole:
		v.Faults = append(v.Faults, fmt.Sprintf("%d units of work were done, and %d are all there are", used, bound))
	case over && used > bound+bound/100:
		v.Faults = append(v.Faults, fmt.Sprintf("work went on to %d units of %d", used, bound))
	case !whole:
		v.Left++
	}
}

// Plan has a checked plan worked out and carried to and fro, and holds what
// comes of it against what must be so of every plan.
func Plan(p *plan.Plan, far int) (v Verdict) {
	defer func() {
		if fault := recover(); fault != nil {
			v.Faults = append(v.Faults, fmt.Sprintf("%v\n%s", fault, debug.Stack()))
		}
	}()
	fault := func(format string, args ...any) { v.Faults = append(v.Faults, fmt.Sprintf(format, args...)) }

	carried(p, fault)
	link := func(p *plan.Plan) string { return "#" + carry.Link(p) }
	s := sheet.Answer(p)
	told := view.Told(s, link)
	fixing, exploring := sheet.Bounds()
	if s.Verdict == sheet.Nearly || s.Verdict == sheet.No {
		v.spent(s, fixing, s.Layout.Network.Meter.Left() >= 0)
	}
	v.Faults = append(v.Faults, flows(s)...)
	sought(s, fault)
	claim, lie := headline(s)
	if v.Claim = claim; lie != "" {
		fault("%s", lie)
	}

	ids := map[string]bool{}
	for _, f := range told {
		shown(f, ids, fault)
	}
	if far >= ToPage {
		answered(p, link(p), told, fault)
	}
	for which := range sheet.Exploration(sheet.Explorations) {
		if which != sheet.Season && far < ToEnd {
			continue
		}
		s.Explore(which)
		v.spent(s, exploring, !s.Left[which])
		for _, f := range view.Explored(s, which, link) {
			shown(f, ids, fault)
		}
	}
	for i := range s.Fixes {
		if q := s.Fixes[i].Plan; q != nil {
			if errs := q.Check(); len(errs) > 0 {
				fault("what would help, %d, is no plan: %v", i, errs[0])
			}
			short(p, q, fault)
		}
	}
	calendar(page.CalendarFile(s).File, fault)
	if far == ToEnd {
		data, err := answer.JSON(p)
		if err != nil || !json.Valid(data) || bytes.Contains(data, []byte("NaN")) {
			fault("the answer is not JSON: %v", err)
		}
	}
	return v
}

// sought checks that a pump is asked for where the plan has none, that the answer is
// Yes only with one, and that it is the same for a plan that has one of those that are
// asked for.
func sought(s *sheet.Sheet, fault func(string, ...any)) {
	seeks := s.Plan.Supply.Kind == plan.PumpPower || s.Plan.Supply.Kind == plan.PumpWanted
	w := s.Wanted
	if seeks != (w != nil) {
		fault("a pump is sought: %t, and %+v is asked for", seeks, w)
	}
	if w == nil {
		return
	}
	well := true
	for _, f := range s.Findings {
		well = well && (sheet.Kinds[f.Kind].Verdict == sheet.Yes || f.Kind == sheet.OutsidePlace || f.Kind == sheet.Unlike)
	}
	if w.Does != well {
		fault("%+v is asked for, with %+v", *w, s.Findings)
	}
	if !w.Does {
		return
	}
	if !(w.Least >= 0.5 && w.Flow > 0 && w.Most > w.Least && w.Most <= 150 && w.Regulator >= 0) {
		fault("%+v is asked for", *w)
	}
	if got := s.Layout.Plan.Supply.Kind; s.Verdict == sheet.Yes && (got != plan.PumpTwo || sheet.Answer(s.Layout.Plan).Verdict != sheet.Yes) {
		fault("%+v is asked for, and with one of kind %d the answer is not Yes", *w, got)
	}
}

// answered checks that the page says of a plan's form what was told of the plan,
// and that the form is well formed.
func answered(p *plan.Plan, link string, told []block.Fragment, fault func(string, ...any)) {
	said := map[string]string{}
	for _, f := range told {
		said[f.ID] = f.HTML
	}
	var s page.Session
	for i := range view.Jobs {
		r := s.Answer(plan.DraftOf(p).Encode() + "&" + plan.AtName + "=" + view.Jobs[i].ID + "&" + plan.OpenName + "=rows")
		if len(r.Errors) > 0 {
			fault("the form of the plan has an error: %v", r.Errors[0])
		}
		if r.Link != link {
			fault("the form is of another plan, %s", r.Link)
		}
		ids := map[string]bool{} // of one screen
		for _, f := range r.Fragments {
			if html, known := said[f.ID]; known && html != f.HTML {
				fault("%s is another one the second time", f.ID)
			}
			delete(said, f.ID)
			shown(f, ids, fault)
			for id, html := range said {
				if f.ID == "job" && strings.Contains(f.HTML, `id="`+id+`"`) && strings.Contains(f.HTML, html) {
					delete(said, id)
				}
			}
		}
	}
	for id := range said {
		fault("%s is told of the plan and not of its form", id)
	}
}

// shown checks a fragment of the page.
func shown(f block.Fragment, ids map[string]bool, fault func(string, ...any)) {
	if err := wellFormed(f.HTML, ids); err != nil {
		fault("%s: %v", f.ID, err)
	}
	if m := unreal(f.HTML); m != "" {
		fault("%s says %s", f.ID, m)
	}
}

// short checks that what was worked out for a plan that is offered stands in its
// boxes in as many digits as a reader bears.
func short(p, q *plan.Plan, fault func(string, ...any)) {
	for _, sec := range plan.Sections() {
		for i := range sec.Records(q) {
			for _, f := range sec.Fields() {
				if i < sec.Records(p) && f.Value(p, i) == f.Value(q, i) {
					continue
				}
				// Ten digits, a point, a sign, and zeros before them.
				if box := f.Typed(q, i); f.Type == plan.Number && len(strings.TrimLeft(box, "-0.")) > 11 {
					fault("%s is offered as %q", plan.Path(f, i), box)
				}
			}
		}
	}
}

// carried checks that a plan comes back from a link, a file and a form, to the
// last bit.
func carried(p *plan.Plan, fault func(string, ...any)) {
	if q, err := carry.ReadLink(carry.Link(p)); err != nil || !reflect.DeepEqual(p, q) {
		fault("another plan comes out of its link: %v", err)
	}
	if q, errs := carry.ReadJSON(carry.JSON(p)); len(errs) > 0 || !reflect.DeepEqual(p, q) {
		fault("another plan comes out of its file: %v", errs)
	}
	if q, errs := plan.ParseDraft(plan.DraftOf(p).Encode()).Read(); len(errs) > 0 || !reflect.DeepEqual(p, q) {
		fault("another plan comes out of its form: %v", errs)
	}
}

// calendar checks an iCalendar file: lines of at most 75 bytes that end with
// CRLF, and components that end in order (RFC 5545, sections 3.1 and 3.4).
func calendar(file string, fault func(string, ...any)) {
	var open []string
	lines := strings.Split(file, "\r\n")
	if lines[len(lines)-1] != "" || strings.Count(file, "\n") != len(lines)-1 {
		fault("a line of the calendar does not end with CRLF")
	}
	for _, line := range lines {
		if len(line) > 75 {
			fault("a line of the calendar has %d bytes: %q", len(line), line)
		}
		if name, ok := strings.CutPrefix(line, "BEGIN:"); ok {
			open = append(open, name)
		}
		if name, ok := strings.CutPrefix(line, "END:"); ok {
			if len(open) == 0 || open[len(open)-1] != name {
				fault("the calendar ends %s within %v", name, open)
				return
			}
			open = open[:len(open)-1]
		}
	}
	if len(open) > 0 {
		fault("the calendar does not end %v", open)
	}
	if m := unreal(file); m != "" {
		fault("the calendar says %s", m)
	}
}
