package scene

import (
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// Title is the title of the page with a plan: its name, or a plain word.
func Title(p *plan.Plan) string {
	if p.Name == "" {
		return "A plan"
	}
	return p.Name
}

// Place names a plant: "row 4, plant 30".
func (sc *Scene) Place(plant int) string {
	if sc.S.Layout == nil || plant < 0 || plant >= len(sc.S.Layout.Plants) {
		return ""
	}
	p := &sc.S.Layout.Plants[plant]
	return "row " + strconv.Itoa(p.Row+1) + ", plant " + strconv.Itoa(p.Number)
}

// ZoneName says which zone a figure belongs to, if there are several.
func (sc *Scene) ZoneName(z *sheet.ZoneResult) string {
	if len(sc.S.Zones) < 2 {
		return "all rows together"
	}
	return "zone " + strconv.Itoa(z.Zone)
}

// SourceName is what drives the water, in a word.
func (sc *Scene) SourceName() string {
	switch sc.S.Plan.Supply.Kind {
	case plan.GravityTank:
		return "tank"
	case plan.Mains:
		return "tap"
	}
	return "pump"
}

// Idle stands where nothing can be said because no water flows.
func (sc *Scene) Idle() string {
	if len(sc.S.Zones) > 0 {
		return "This is worked out once water runs at the plants. Look at the answer first."
	}
	return "This is worked out as soon as the plan says what drives the water."
}

// Relief is what takes pressure off tubing that cannot carry it at rest.
func (sc *Scene) Relief() string {
	switch {
	case sc.S.Plan.Supply.Regulator > 0:
		return "Set the regulator lower."
	case sc.SourceName() == "tap":
		return "Fit a regulator."
	case sc.SourceName() == "tank":
		return "Fit a regulator, or stand the tank lower."
	}
	return "Fit a regulator, or a pump with less head."
}

// Helped points to what helps, where something does.
func (sc *Scene) Helped() string {
	if len(sc.S.Fixes) == 0 {
		return ""
	}
	return " The answer says what helps."
}

// Regulated says whether a regulator follows a pump or a tap, so that the head
// that zones are given is that behind it.
func (sc *Scene) Regulated() bool {
	l := sc.S.Layout
	return l != nil && l.Curve != nil && sc.S.Plan.Supply.Regulator > 0
}

// RegulatorFirst says on which side it errs that package layout puts a regulator
// before what stands before it in truth; nothing where there is no such thing.
func (sc *Scene) RegulatorFirst() string {
	if sc.Regulated() && (sc.S.Layout.FilterLink >= 0 || sc.S.Plan.Supply.Devices > 0) {
		return " Counted as if the regulator stood before the filter: the safe side."
	}
	return ""
}

// CardName says on a card which plan and year it is for: it hangs alone.
func (sc *Scene) CardName(first day.Day) {
	sc.HTML(`<p><b>`).Text(Title(sc.S.Plan)).HTML(`</b>, `).Text(strconv.Itoa(first.Year())).HTML(`</p>`)
}

// MostWords is for how many zones everything is said in words.
const MostWords = 3
