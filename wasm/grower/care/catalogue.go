package care

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// A Caution says what to do against a hazard. Its row in the catalogue is all that is
// declared of it; its whole text is a file in content/cautions, with source and standing.
type Caution struct {
	Name    string     // of the file
	Hazards Set        // that it answers
	When    *Condition // for which plans
	At      []Place    // where in the form the whole text stands, and by that on paper
	Short   words.Text // what to do, right where it is met: in a step, a task, a card
}

// A Place is in a section of the form, before one of its fields or at its head.
type Place struct{ Section, Field string }

// A Condition says which plans something concerns.
type Condition struct {
	Words words.Text // a clause: "the water is pumped"
	Holds func(*plan.Plan) bool
}

// The conditions of cautions.
var (
	anyPlan   = Condition{"any plan", func(*plan.Plan) bool { return true }}
	pumped    = Condition{"the water is pumped", func(p *plan.Plan) bool { return !unpumped.Holds(p) }}
	fromTank  = Condition{"the water comes from a raised tank", func(p *plan.Plan) bool { return p.Supply.Kind == plan.GravityTank }}
	tanked    = Condition{"the water stands in a tank", func(p *plan.Plan) bool { return p.Supply.Kind != plan.Mains }}
	unpumped  = Condition{"the water comes from a raised tank or a tap", func(p *plan.Plan) bool { return p.Supply.Kind == plan.GravityTank || p.Supply.Kind == plan.Mains }}
	sheltered = Condition{"the plants stand under a cover", func(p *plan.Plan) bool { return p.Season.Shelter != plan.OpenAir }}
)

// Catalogue is every caution, in the order in which those of one place are told. It is
// shared and must not be changed.
var Catalogue = []*Caution{
	{"electricity", 1 << Current, &pumped, []Place{{"supply", ""}, {"timer", ""}},
		"Current: pull the plug with dry hands, do not just switch off, before you touch the pump, a joint or the water."},
	{"wires", 1 << Timer, &unpumped, []Place{{"timer", ""}},
		"The timer's power: a timer that plugs in needs an outlet with ground-fault protection, and its plug and adapter stay dry."},
	{"cords", 1 << Wiring, &pumped, []Place{{"timer", ""}},
		"Wiring: use only an outlet with ground-fault protection, and a cord without damage. Local code comes first, and fixed wiring is a licensed electrician's work."},
	{"raised", 1 << Height, &fromTank, []Place{{"supply", ""}},
		"Tipping: a raised tank must not tip or slide, and what it stands on must carry it full. Have its stand judged by somebody who knows, and climb only a ladder that stands firm."},
	{"backflow", 1 << Backflow, &anyPlan, []Place{{"supply", ""}},
		"Backflow: fill a tank from above, through an air gap, with no hose lying in it. What is joined to a tap has the device that local code asks for."},
	{"drowning", 1<<Drowning | 1<<InTank, &anyPlan, []Place{{"place", ""}},
		"Air in tanks, drowning: never climb into a tank, its air may not be fit to breathe. Keep its lid on, and empty buckets: small children drown in little water."},
	{"pressure", 1 << Pressure, &anyPlan, []Place{{"filter", ""}},
		"Pressure: stop the water and let it out before you open a joint or an end, and keep your face away from it."},
	{"heat", 1 << Heat, &anyPlan, []Place{{"header", ""}},
		"Heat: where tubing is too stiff for a barb, a minute in hot water, not boiling, makes it soft. It scalds within seconds: wear gloves, and use no flame."},
	{"blades", 1 << Blades, &anyPlan, []Place{{"emitters", ""}},
		"Blades: cut and punch away from yourself, on a firm base and not in your hand."},
	{"lifting", 1 << Weight, &anyPlan, []Place{{"rows", ""}},
		"Weight: set things down empty and fill them where they stand, and lift what is heavy with somebody else."},
	{"dust", 1 << Dust, &anyPlan, []Place{{"rows", ""}},
		"Dust: wet coco and stone wool before you handle them, and wear gloves, long sleeves and a mask."},
	{"slips", 1 << Slips, &anyPlan, []Place{{"runs", ""}},
		"Wet floor: keep tubing off the paths, stop leaks, and wipe up before you go on."},
	{"chemicals", 1 << Chemicals, &anyPlan, []Place{{"season", "treat"}},
		"Chemicals: wear goggles and gloves. Acid goes into water, never water into acid, and never near bleach."},
	{"salts", 1 << Salts, &anyPlan, []Place{{"season", "treat"}},
		"Salts: keep them dry, closed and locked, away from heat, fuel and whatever burns."},
	{"stored-water", 1 << Stored, &tanked, []Place{{"season", ""}},
		"Stored water: keep it covered, dark and cool, and do not breathe its spray."},
	{"feed", 1 << Drinking, &anyPlan, []Place{{"timer", "drain"}},
		"Feed: neither it nor drain is for drinking. Label tanks and outlets, keep children and animals away, and wash your hands."},
	{"tunnel", 1 << Swelter, &sheltered, []Place{{"sky", ""}},
		"Hot tunnel: work early and late, drink, and go into the shade at the first dizziness."},
	{"drain", 1 << Drain, &anyPlan, []Place{{"timer", "drain"}},
		"Drain: let what runs out go to other plants, or where local rules allow, never to a well or a stream."},
}

// Applies reports whether the caution is shown for p.
func (c *Caution) Applies(p *plan.Plan) bool { return c.When.Holds(p) }

// Stands says whether the whole text stands before a field, or at the head of a section.
func (c *Caution) Stands(section, field string) bool {
	for i := range c.At {
		if c.At[i] == (Place{section, field}) {
			return true
		}
	}
	return false
}

// In says whether the whole text stands somewhere in a section.
func (c *Caution) In(section string) bool {
	for i := range c.At {
		if c.At[i].Section == section {
			return true
		}
	}
	return false
}

// Against are the cautions that answer what is declared, for a plan.
func Against(declared Set, p *plan.Plan) (all []*Caution) {
	for _, c := range Catalogue {
		if c.Hazards&declared != 0 && c.Applies(p) {
			all = append(all, c)
		}
	}
	return all
}

// Short is what is said of what is declared, a sentence or two each.
func Short(declared Set, p *plan.Plan) (said []string) {
	for _, c := range Against(declared, p) {
		said = append(said, words.Say(c.Short))
	}
	return said
}
