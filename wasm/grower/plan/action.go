package plan

import (
	"strconv"
	"strings"

	"evenrow/wasm/ground/unit"
)

// Names in form data that are not fields.
const (
	UnitsWas   = "units-was" // the units that the numbers in the form are in
	KindWas    = "kind-was"  // after "emitters.2.": the kind that the emitter's other fields were typed for
	ActionName = "action"    // what a button asks for: see [Draft.Apply]
	ClockName  = "clock"     // the changes of a device's clock, as [Draft.SetClock] takes them
)

// Apply does what the form asks for besides being read, and removes the asking
// from the draft. How values came to be is gathered under [HowName], from what
// stands there, from the paths under [TouchedName], which were typed, and from
// what was chosen for a value under [HowOf]; of a value that was both typed in and
// chosen to be measured it is that. When the units differ from [UnitsWas], every number is
// changed to the new units. An emitter whose kind differs from [KindWas] takes
// the usual exponent of its new kind, unless it has one. Then the action is carried out, which is one of
//
//	add-row  copy-row.3  remove-row.3  row-up.3  row-down.3  fill-months  set-clock  season-to.2028
//	correct-to.2027-07-16.110  correct-back  price-of.pump
//
// and the same for run, point and emitter. A new record is like the last, a new
// point empty. Text that is no number stays as it was typed. An action that is
// not possible changes nothing.
//
// Apply returns the path of the record that the reader's attention belongs to,
// such as "rows.4", or that of a section, or "". When the last record of a list was removed it is
// that of a record 0.
func (d *Draft) Apply() (focus string) {
	d.spread()
	h := d.history()
	d.settle(&h)
	d.switchUnits()
	d.turnEmitters()
	d.startMonths()
	action := d.values[ActionName]
	delete(d.values, ActionName)
	if action == FillMonths && d.fillMonths() {
		return "months.1"
	}
	if action == SetClock {
		d.SetClock(d.Get(ClockName))
		return "sky"
	}
	if d.correct(&h, action) {
		return "drain"
	}
	if year, is := strings.CutPrefix(action, SeasonTo); is {
		if d.moveSeason(year) {
			return "season"
		}
		return ""
	}
	if key, is := strings.CutPrefix(action, PriceOf); is {
		return d.priceOf(&h, key)
	}
	verb, number, _ := strings.Cut(action, ".")
	k, _ := strconv.Atoi(number)
	for _, s := range sections {
		if !s.List {
			continue
		}
		what := 0
		for v, name := range [...]string{add: "add-" + s.One, duplicate: "copy-" + s.One, remove: "remove-" + s.One, up: s.One + "-up", down: s.One + "-down"} {
			if v > 0 && name == verb {
				what = v
			}
		}
		if what == 0 {
			continue
		}
		n := d.Records(s)
		if n == 0 {
			fresh := Default()
			fresh.Units = d.system("units")
			if n = s.Len(fresh); n == 0 && what == add {
				s.Resize(fresh, 1)
				s.SetDefaults(fresh, 0)
				d.put(s, fresh)
				return s.Name + ".1"
			}
			d.put(s, fresh)
		}
		order, at := reorder(s, n, what, k)
		if order == nil {
			return ""
		}
		d.arrange(s, n, order)
		if what == add && s.Name == "points" {
			for _, f := range s.Fields() {
				d.Set(Path(f, at-1), "")
			}
		}
		return s.Name + "." + strconv.Itoa(at)
	}
	return ""
}

const (
	add = iota + 1
	duplicate
	remove
	up
	down
)

// reorder returns which of the n records of a section, from 1, stand where
// after an action on record k, and which place to look at then; nil when the
// action is not possible.
func reorder(s *Section, n, what, k int) (order []int, at int) {
	if what == add {
		k = n
	}
	grows := what == add || what == duplicate
	if k < 1 || k > n || grows && n >= s.Max || what == remove && n <= s.Min ||
		what == up && k == 1 || what == down && k == n {
		return nil, 0
	}
	order = make([]int, 0, n+1)
	for i := 1; i <= n; i++ {
		if i == k && what == remove {
			continue
		}
		order = append(order, i)
		if i == k && grows {
			order = append(order, i)
		}
	}
	at = k
	switch what {
	case add, duplicate:
		at = k + 1
	case remove:
		at = min(k, n-1)
	case up:
		order[k-1], order[k-2] = order[k-2], order[k-1]
		at = k - 1
	case down:
		order[k-1], order[k] = order[k], order[k-1]
		at = k + 1
	}
	return order, at
}

// arrange puts the records of a section in a new order. Rows go on using the
// emitter that they chose; those whose emitter was removed use the first.
func (d *Draft) arrange(s *Section, n int, order []int) {
	old := make(map[string]string)
	for i := range n {
		for _, f := range s.Fields() {
			path := Path(f, i)
			if text, has := d.values[path]; has {
				old[path] = text
				delete(d.values, path)
			}
		}
	}
	h := d.history()
	for _, f := range s.Fields() {
		if _, by := h.of(f); by != nil {
			moved := make([]Origin, len(order))
			for i, from := range order {
				moved[i] = h.said(f, from-1)
			}
			h.set(f, moved)
		}
	}
	d.settle(&h)
	place := make([]int, n+1) // by old number, the first new one
	for i, from := range order {
		if place[from] == 0 {
			place[from] = i + 1
		}
		for _, f := range s.Fields() {
			if text, has := old[Path(f, from-1)]; has {
				d.Set(Path(f, i), text)
			}
		}
	}
	if s.Name != "emitters" {
		return
	}
	f := FieldNamed("rows", "emitter")
	for i := range d.Records(SectionNamed("rows")) {
		path := Path(f, i)
		if v, ok := f.Option(d.values[path]); ok && v < n {
			d.Set(path, f.Options[max(place[v+1]-1, 0)].Code)
		}
	}
}

// switchUnits changes every number from the units it was typed in to those
// chosen now.
func (d *Draft) switchUnits() {
	was, now := d.system(UnitsWas), d.system("units")
	asked := d.Has(UnitsWas)
	delete(d.values, UnitsWas)
	if !asked || was == now {
		return
	}
	d.each(func(f *Field, i int) {
		path := Path(f, i)
		if f.Type != Number || !d.Has(path) {
			return
		}
		if x, problem := unit.ParseIn(d.values[path], f.Kind); problem == nil {
			d.Set(path, unit.Tidy(f.Kind, now, unit.Of(f.Kind, was).ToInner(x)))
		}
	})
}

// system returns the units named at a path, metric when there are none.
func (d *Draft) system(path string) unit.System {
	sys, _ := FieldNamed("", "units").Option(d.values[path])
	return unit.System(sys)
}

// turnEmitters types the usual exponent of emitters whose kind was changed,
// where what stands there is none of the new kind.
func (d *Draft) turnEmitters() {
	kind := FieldNamed("emitters", "kind")
	for i := range d.Records(SectionNamed("emitters")) {
		mark := "emitters." + strconv.Itoa(i+1) + "." + KindWas
		was, asked := d.values[mark]
		delete(d.values, mark)
		now, known := kind.Option(d.Get(Path(kind, i)))
		if !asked || !known || was == kind.Options[now].Code {
			continue
		}
		path := Path(FieldNamed("emitters", "exponent"), i)
		low, high, usual := exponents(now)
		if x, problem := unit.ParseNumber(d.values[path]); (problem == nil || d.values[path] == "") && !(low <= x && x <= high) {
			d.Set(path, unit.Exact(unit.None, unit.Metric, usual))
			d.Set(HowOf+path, Assumed.Code())
		}
	}
	h := d.history()
	d.settle(&h)
}
