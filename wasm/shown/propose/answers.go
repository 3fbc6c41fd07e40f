// Package propose turns the answers to five questions into a whole plan: rows by
// the crop table and the place, emitters by the head at hand, tubing and zones by
// the search for designs. All that nobody has said is marked as assumed.
package propose

import (
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// Answers are what a grower answers to the five questions, in inner units. What
// was not answered is plan.Unset; see [Empty].
type Answers struct {
	Name  string
	Units unit.System

	Crops  []Count
	Medium int // as in plan.Row

	Length float64 // m, of the place along the rows
	Width  float64 // m, across them

	Supply     int     // one of plan.Mains, PumpTwo, GravityTank and PumpWanted
	Static     float64 // Pa, plan.Mains: with every tap closed
	TapFlow    float64 // m³/s, plan.Mains: of the open tap
	ShutOff    float64 // m, plan.PumpTwo: greatest head on the label
	MaxFlow    float64 // m³/s, plan.PumpTwo: greatest flow on the label
	Power      float64 // W, plan.PumpTwo: on the label
	TankHeight float64 // m, plan.GravityTank: of the water in the half-full tank above the rows

	Distance float64 // m, of tubing from the supply to the rows
	Rise     float64 // m, of the rows above the water in the tank, or the tap; not for plan.GravityTank
}

// A Count is so many plants of a crop.
type Count struct {
	Crop   int // index into catalogue.Crops
	Plants int // plan.Unset where it was not answered
}

// Empty returns answers of which none was given.
func Empty(sys unit.System) Answers {
	const none = plan.Unset
	return Answers{Units: sys, Medium: none, Length: none, Width: none, Supply: none, Static: none, TapFlow: none,
		ShutOff: none, MaxFlow: none, Power: none, TankHeight: none, Distance: none, Rise: none}
}

// MaxCrops is how many crops can be answered: each has two inputs, and nobody
// reads more than twenty before a first result.
const MaxCrops = 6

// Five is how many questions there are.
const Five = 5

// A Question is one input of the five questions.
type Question struct {
	*plan.Field // its label, limits, options, help, and where it stands in the answers; the plan is only asked for its units

	Name string // in form data, such as "ask.length"
	Of   int    // which of the five questions it belongs to, from 0
	Line int    // of crops, from 1; 0 elsewhere
	Only int    // the supply that it belongs to; plan.Unset for all
	May  bool   // it may be left empty also where its question is answered
}

// Asks are the five questions, in their order.
var Asks = [Five]words.Text{
	"What do you grow, and how many?",
	"In what?",
	"How big is the place?",
	"What drives the water?",
	"How far away are the rows, and how much higher?",
}

// Names in form data of what is asked.
const (
	Prefix   = "ask."
	SupplyAt = "ask.supply"
)

// the kinds of supply that can be answered, by their code in form data.
var supplies = []struct {
	kind   int
	name   words.Text
	option plan.Option
}{
	{plan.Mains, "Tap", plan.Option{Code: "mains", Label: "a tap"}},
	{plan.PumpTwo, "Pump", plan.Option{Code: "pump", Label: "a pump that I have, by its label"}},
	{plan.GravityTank, "Tank", plan.Option{Code: "gravity", Label: "a tank that stands higher"}},
	{plan.PumpWanted, "Pump to buy", plan.Option{Code: "pump-wanted", Label: "a pump that I have yet to buy"}},
}

// Questions are all inputs, in their order; they read into a.
func Questions(a *Answers) []Question {
	var list []Question
	const none = plan.Unset
	// as is a field of the plan that asks the same.
	as := func(of int, name, section, field string) *Question {
		f := *plan.FieldNamed(section, field)
		list = append(list, Question{Field: &f, Name: Prefix + name, Of: of, Only: none})
		return &list[len(list)-1]
	}
	number := func(q *Question, v *float64) *Question {
		q.Field.Number = func(*plan.Plan, int) *float64 { return v }
		return q
	}
	whole := func(q *Question, v *int) *Question {
		q.Field.Int = func(*plan.Plan, int) *int { return v }
		return q
	}
	for i := range a.Crops {
		n := "." + strconv.Itoa(i+1)
		whole(as(0, "crop"+n, "rows", "crop"), &a.Crops[i].Crop).says("Which crop", "").Line = i + 1
		q := whole(as(0, "plants"+n, "rows", "plants"), &a.Crops[i].Plants).says("How many plants", "")
		q.Line, q.Max = i+1, plan.MaxPlants
	}
	whole(as(1, "medium", "rows", "medium"), &a.Medium).says("What the plants stand in", "")
	number(as(2, "length", "place", "length"), &a.Length).says("Length of the place", "Rows run along it.")
	number(as(2, "width", "place", "width"), &a.Width).says("Width of the place", "")

	q := as(3, "supply", "supply", "kind").says("What drives the water", "")
	q.Options = nil
	for _, s := range supplies {
		q.Options = append(q.Options, s.option)
	}
	q.Int = func(*plan.Plan, int) *int { return &a.Supply }
	number(as(3, "static", "supply", "static"), &a.Static).only(plan.Mains).May = true
	number(as(3, "tap-flow", "supply", "tap-flow"), &a.TapFlow).only(plan.Mains).May = true
	number(as(3, "shut-off", "supply", "shut-off"), &a.ShutOff).only(plan.PumpTwo)
	number(as(3, "max-flow", "supply", "max-flow"), &a.MaxFlow).only(plan.PumpTwo)
	number(as(3, "power", "supply", "power"), &a.Power).only(plan.PumpTwo).
		says("Power on the label", "It does not tell how high a pump lifts water, but what the two figures above may be.").May = true
	tank := number(as(3, "tank-height", "runs", "rise"), &a.TankHeight).only(plan.GravityTank).
		says("Height of the water above the rows", "In the half-full tank.")
	tank.Min, tank.Max = lowestTank, -tank.Min

	number(as(4, "distance", "runs", "length"), &a.Distance).says("From the supply to the rows", "Along the way that tubing takes.")
	rise := number(as(4, "rise", "runs", "rise"), &a.Rise).
		says("How much higher the rows are", "Than the water in the tank, or the tap, with a minus sign when they are lower.")
	rise.May = true
	for i := range list {
		f := list[i].Field
		f.When = nil
		f.Guide = ""
	}
	return list
}

// SupplyName is what the page calls a supply that can be chosen.
func SupplyName(kind int) string {
	for _, s := range supplies {
		if s.kind == kind {
			return words.Say(s.name)
		}
	}
	return ""
}

// lowestTank is the least height of a tank in m that can be answered.
const lowestTank = 0.1

func (q *Question) says(label, help words.Text) *Question {
	q.Label, q.Help = label, help
	return q
}

func (q *Question) only(kind int) *Question {
	q.Only = kind
	return q
}

// Applies says whether a question is asked beside other answers.
func (q *Question) Applies(a *Answers) bool {
	if q.Name == Prefix+"rise" {
		return a.Supply != plan.GravityTank
	}
	return q.Only == plan.Unset || q.Only == a.Supply
}

// Lines returns how many lines of crops a draft has: one at least.
func Lines(d plan.Draft) int {
	n := 1
	for i := 2; i <= MaxCrops; i++ {
		if at := "." + strconv.Itoa(i); d.Has(Prefix+"crop"+at) || d.Has(Prefix+"plants"+at) {
			n = i
		}
	}
	return n
}

// More adds an empty line of crops to a draft, and returns its number, from 1; 0
// where it has as many as it may.
func More(d *plan.Draft) int {
	n := Lines(*d)
	if n == MaxCrops {
		return 0
	}
	d.Set(Prefix+"crop."+strconv.Itoa(n+1), "")
	d.Set(Prefix+"plants."+strconv.Itoa(n+1), "")
	return n + 1
}

// SwitchUnits changes every number of the answers in a draft from the units that it
// was typed in to those chosen now, as [plan.Draft.Apply] does for a plan's: it has
// to come before that. Text that is no number, or has its unit with it, stays.
func SwitchUnits(d *plan.Draft) {
	units := plan.FieldNamed("", "units")
	was, _ := units.Option(d.Get(plan.UnitsWas))
	now, _ := units.Option(d.Get("units"))
	if !d.Has(plan.UnitsWas) || was == now {
		return
	}
	list, _ := Drawn(*d)
	for _, q := range list {
		if q.Type != plan.Number || !d.Has(q.Name) {
			continue
		}
		if x, problem := unit.ParseIn(d.Get(q.Name), q.Field.Kind); problem == nil {
			d.Set(q.Name, unit.Tidy(q.Field.Kind, unit.System(now), unit.Of(q.Field.Kind, unit.System(was)).ToInner(x)))
		}
	}
}

// Drawn returns the questions of a draft, to be drawn, and the answers as far as
// they can be read.
func Drawn(d plan.Draft) ([]Question, Answers) {
	a, _, _ := Read(d)
	lines := a
	lines.Crops = make([]Count, Lines(d))
	return Questions(&lines), a
}

// Read reads the answers of a draft, everything that is wrong with them, and how
// many of the five questions are still to be answered. A line of crops that is
// empty is left out. What is wrong comes back as it would be typed.
func Read(d plan.Draft) (a Answers, errs []plan.Error, left int) {
	units := plan.FieldNamed("", "units")
	sys, _ := units.Option(d.Get("units"))
	a = Empty(unit.System(sys))
	a.Name = d.Get("name")
	p := &plan.Plan{Units: a.Units}
	if problem := plan.FieldNamed("", "name").Problem(&plan.Plan{Name: a.Name}, 0); problem != nil {
		errs = append(errs, plan.Error{Path: "name", Text: problem.Of(words.Say("Name of the plan")), Typed: a.Name})
		a.Name = ""
	}
	for range Lines(d) {
		a.Crops = append(a.Crops, Count{plan.Unset, plan.Unset})
	}
	var open [Five]bool
	bad := map[string]bool{}
	questions := Questions(&a)
	for i := range questions {
		q := &questions[i]
		typed := d.Get(q.Name)
		if typed == "" || !q.Applies(&a) {
			continue
		}
		problem := q.Field.Read(p, 0, typed)
		if problem == nil {
			problem = q.Field.Problem(p, 0)
		}
		if q.Name == SupplyAt && problem == nil {
			a.Supply = supplies[a.Supply].kind
		}
		if problem != nil {
			errs = append(errs, q.error(typed, problem))
			q.clear()
			open[q.Of], bad[q.Name] = true, true
		}
	}
	// What is missing where the rest of a question is there.
	wants := func(q *Question, problem *words.Remark) {
		if q.missing(p) && !bad[q.Name] {
			errs = append(errs, q.error("", problem))
			open[q.Of] = true
		}
	}
	for i := range questions {
		q, next := &questions[i], &Question{}
		if i+1 < len(questions) {
			next = &questions[i+1]
		}
		switch q.Name {
		case Prefix + "length":
			if !next.missing(p) {
				wants(q, unit.Missing)
			} else if !q.missing(p) {
				wants(next, unit.Missing)
			}
		case Prefix + "shut-off":
			switch {
			case a.Supply != plan.PumpTwo:
			case q.missing(p) && next.missing(p) && a.Power == plan.Unset:
				wants(q, words.About("{field} must stand here, and the greatest flow below it, or the power of the pump."))
			case !q.missing(p):
				wants(next, unit.Missing)
			case !next.missing(p):
				wants(q, unit.Missing)
			}
		case Prefix + "tank-height":
			if a.Supply == plan.GravityTank {
				wants(q, unit.Missing)
			}
		}
		if q.Of == 0 && q.Type == plan.Choice {
			switch {
			case q.missing(p) && !next.missing(p):
				wants(q, unit.Missing)
			case !q.missing(p) && next.missing(p) && i > 0:
				wants(next, unit.Missing)
			}
		}
	}
	var whole []Count
	for _, c := range a.Crops {
		if c.Crop != plan.Unset && c.Plants != plan.Unset {
			whole = append(whole, c)
		}
	}
	a.Crops = whole
	open[0] = open[0] || len(whole) == 0
	open[1] = open[1] || a.Medium == plan.Unset
	open[2] = open[2] || a.Length == plan.Unset || a.Width == plan.Unset
	open[3] = open[3] || a.Supply == plan.Unset
	open[4] = open[4] || a.Distance == plan.Unset
	for _, is := range open {
		if is {
			left++
		}
	}
	return a, errs, left
}

// Unanswered is an error for each of the five questions that has no answer and
// nothing else wrong in it.
func Unanswered(d plan.Draft, errs []plan.Error) []plan.Error {
	a, _, _ := Read(d)
	a.Crops = make([]Count, 1) // further lines may be empty
	list := Questions(&a)
	var said [Five]bool
	for _, e := range errs {
		for i := range list {
			said[list[i].Of] = said[list[i].Of] || list[i].Name == e.Path
		}
	}
	var all []plan.Error
	for i := range list {
		if q := &list[i]; !said[q.Of] && !q.May && q.Only == plan.Unset && q.Applies(&a) && d.Get(q.Name) == "" { // [Read] knows which figures a supply needs
			said[q.Of] = true
			all = append(all, q.error("", unit.Missing))
		}
	}
	return all
}

// error is one about a question.
func (q *Question) error(typed string, problem *words.Remark) plan.Error {
	name := words.Say(q.Label)
	if q.Line > 0 {
		name = words.Say("Crop {n}: {field}", words.N(q.Line), words.Within(q.Label, ""))
	}
	return plan.Error{Path: q.Name, Text: problem.Of(name), Typed: typed}
}

// missing says whether the question has no answer.
func (q *Question) missing(p *plan.Plan) bool {
	return q.Field == nil || q.Field.Value(p, 0) == plan.Unset
}

// clear takes an answer back.
func (q *Question) clear() { q.Field.SetValue(&plan.Plan{}, 0, plan.Unset) }

// Write puts the answers into a draft, as they would be typed. A question that was
// not answered is left empty.
func (a Answers) Write(d *plan.Draft) {
	p := &plan.Plan{Units: a.Units}
	for _, q := range Questions(&a) {
		text := ""
		switch {
		case q.missing(p):
		case q.Name == SupplyAt:
			for _, s := range supplies {
				if s.kind == a.Supply {
					text = s.option.Code
				}
			}
		default:
			text = q.Field.Typed(p, 0)
		}
		d.Set(q.Name, text)
	}
}

// AnswersOf returns what the questions would hold for a plan: its crops in the
// order of its rows, the medium of its first row, of a supply line of several runs
// the whole, and of a pump's curve its two ends.
func AnswersOf(p *plan.Plan) Answers {
	a := Empty(p.Units)
	a.Name = p.Name
	for i := range p.Rows {
		r, known := &p.Rows[i], false
		for k := range a.Crops {
			if a.Crops[k].Crop == r.Crop {
				a.Crops[k].Plants += r.Plants
				known = true
			}
		}
		if !known {
			a.Crops = append(a.Crops, Count{r.Crop, r.Plants})
		}
	}
	a.Medium = p.Rows[0].Medium
	a.Length, a.Width = p.Place.Length, p.Place.Width
	a.Distance, a.Rise = 0, 0
	for i := range p.Runs {
		a.Distance += p.Runs[i].Length
		a.Rise += p.Runs[i].Rise
	}
	switch s := &p.Supply; s.Kind {
	case plan.Mains:
		a.Supply, a.Static, a.TapFlow = s.Kind, s.Static, s.TapFlow
	case plan.GravityTank:
		a.Supply, a.TankHeight, a.Rise = s.Kind, -a.Rise, plan.Unset
	case plan.PumpTwo:
		a.Supply, a.ShutOff, a.MaxFlow, a.Power = s.Kind, s.ShutOff, s.MaxFlow, s.Label
	case plan.PumpPower:
		a.Supply, a.Power = plan.PumpTwo, s.Power
	case plan.PumpPoints:
		last := s.Points[len(s.Points)-1]
		a.Supply, a.ShutOff, a.MaxFlow = plan.PumpTwo, s.Points[0].Head, last.Flow
	default:
		a.Supply = s.Kind
	}
	// What may be left empty, and is assumed, is.
	assumed := func(v *float64, section, name string) {
		f := plan.FieldNamed(section, name)
		for i := range plan.SectionNamed(section).Records(p) {
			if p.Origin(f, i) != plan.Assumed {
				return
			}
		}
		*v = plan.Unset
	}
	assumed(&a.Static, "supply", "static")
	assumed(&a.TapFlow, "supply", "tap-flow")
	assumed(&a.Rise, "runs", "rise")
	return a
}
