package plan

import "strings"

// Names in form data of what a screen of one job needs besides the fields in
// sight.
const (
	AtName   = "at"    // which job, group and record are in sight, as in an address: "answer/rows/7"
	RestName = "rest"  // everything typed that is not in sight, as form data within form data
	OpenName = "open"  // ids of long parts of the page that are open, with spaces between
	GoTo     = "show." // begins an action that leads elsewhere: "show.water/timer"

	AllName = "all."     // begins the name of a box for all rows at once: "all.spacing"
	AllWas  = "all-was." // begins the name of what such a box was drawn with
)

// unfold brings back what was typed and is not in sight. What is in sight was
// typed later.
func (d *Draft) unfold() {
	rest, has := d.values[RestName]
	if !has {
		return
	}
	delete(d.values, RestName)
	delete(d.values, "")
	for name, text := range ParseDraft(rest).values {
		if _, seen := d.values[name]; !seen && name != RestName {
			d.values[name] = text
		}
	}
}

// Fold returns as form data everything typed that is not among what is seen, for
// [RestName]. What a form holds for one question alone is left out.
func (d Draft) Fold(seen map[string]bool) string {
	return d.encode(func(name string) bool { return !seen[name] && !passing(name) })
}

// passing says whether a name is drawn with each form anew, or of one question.
func passing(name string) bool {
	switch name {
	case UnitsWas, OpenName, ActionName, ClockName, AtName, RestName, TouchedName, "shape", "good", "step", "seen", "today", "languages":
		return true
	}
	return strings.HasPrefix(name, AllName) || strings.HasPrefix(name, AllWas) || strings.HasPrefix(name, "log.") || strings.HasSuffix(name, "."+KindWas)
}

// shared returns from which row on, counted from 0, a field of rows is typed for all at
// once: the gap of row 1 is another thing.
func shared(f *Field, rows int) int {
	if f.Name == "gap" && rows > 1 {
		return 1
	}
	return 0
}

// Common returns what all rows of the draft have in a field of rows, and whether
// it is the same for all.
func (d Draft) Common(f *Field, rows int) (text string, same bool) {
	from := shared(f, rows)
	for i := from; i < rows; i++ {
		if now := d.values[Path(f, i)]; i == from {
			text = now
		} else if now != text {
			return "", false
		}
	}
	return text, true
}

// spread types what was typed for all rows at once into each, and says of each how
// it came to be.
func (d *Draft) spread() {
	rows := SectionNamed("rows")
	n := min(d.Records(rows), rows.Max)
	touched := d.values[TouchedName]
	for _, f := range rows.Fields() {
		all := AllName + f.Name
		text, has := d.values[all]
		was, how := d.values[AllWas+f.Name], d.values[HowOf+all]
		delete(d.values, all)
		delete(d.values, AllWas+f.Name)
		delete(d.values, HowOf+all)
		typed := has && (text != was || strings.Contains(" "+touched+" ", " "+all+" "))
		for i := shared(f, n); i < n; i++ {
			path := Path(f, i)
			if has && text != was {
				d.Set(path, text)
			}
			if typed {
				d.Set(TouchedName, d.values[TouchedName]+" "+path)
			}
			if how != "" {
				d.Set(HowOf+path, how)
			}
		}
	}
}
