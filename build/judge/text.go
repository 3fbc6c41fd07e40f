package judge

import (
	"fmt"
	"net/url"
	"reflect"
	"runtime/debug"
	"strings"

	"evenrow/build/hostile"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/page"
)

// Text holds what is said to a text from outside against what must be so of
// every one: it is a sound plan, or there are errors that say why not.
func Text(text string, kind hostile.Input, show bool) (faults []string) {
	defer func() {
		if fault := recover(); fault != nil {
			faults = append(faults, fmt.Sprintf("%v\n%s", fault, debug.Stack()))
		}
	}()
	fault := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	var p *plan.Plan
	var r page.Reply
	switch kind {
	case hostile.Links:
		q, err := carry.ReadLink(text)
		if (q == nil) == (err == nil) || err != nil && !strings.HasPrefix(err.Error(), "The link ") {
			fault("%v, and a plan: %t", err, q != nil)
		}
		if p = q; p == nil && show {
			r = new(page.Session).Open(text)
		}
	case hostile.Files:
		q, errs := carry.ReadJSON([]byte(text))
		if (q == nil) == (len(errs) == 0) {
			fault("%d errors, and a plan: %t", len(errs), q != nil)
		}
		if p = q; p == nil && show {
			r = new(page.Session).OpenFile(text)
		}
	default:
		d := plan.ParseDraft(text)
		d.Apply()
		q, errs := d.Read()
		if q == nil {
			fault("no plan to see which fields apply by")
		}
		if len(errs) == 0 {
			p = q
		} else if show && !d.Has(page.GoodName) {
			r = new(page.Session).Answer(text)
		}
		if _, err := url.ParseQuery(d.Encode()); err != nil {
			fault("the form is written as none: %v", err)
		}
	}
	ids := map[string]bool{}
	for _, f := range r.Fragments {
		// What was typed is kept as it was, if it is no number too.
		if err := wellFormed(f.HTML, ids); err != nil {
			fault("%s: %v", f.ID, err)
		}
		if m := unreal(f.HTML); m != "" && unreal(text) == "" {
			fault("%s says %s", f.ID, m)
		}
	}
	if p == nil {
		return faults
	}
	if errs := p.Check(); len(errs) > 0 {
		fault("a plan that is none: %v", errs[0])
	}
	if q, err := carry.ReadLink(carry.Link(p)); err != nil || !reflect.DeepEqual(p, q) {
		fault("another plan comes out of its link: %v", err)
	}
	if q, errs := carry.ReadJSON(carry.JSON(p)); len(errs) > 0 || !reflect.DeepEqual(p, q) {
		fault("another plan comes out of its file: %v", errs)
	}
	// Numbers that no box holds are next to one that does: see plan's own tests.
	once, errs := plan.ParseDraft(plan.DraftOf(p).Encode()).Read()
	if len(errs) > 0 {
		fault("the form of a plan has an error: %v", errs[0])
		return faults
	}
	if twice, errs := plan.ParseDraft(plan.DraftOf(once).Encode()).Read(); len(errs) > 0 || !reflect.DeepEqual(once, twice) {
		fault("the form of a plan wanders: %v", errs)
	}
	return faults
}
