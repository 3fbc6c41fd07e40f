package plan

import "evenrow/wasm/ground/words"

// A Caution is shown in a section, at its head or directly before one of its
// fields, and with the others of the plan on paper. Its row in the list below
// is all that is declared of it; its text is a file in content/cautions.
type Caution struct {
	Name    string     // of the file
	Section string     // name of the section that it stands in
	Field   string     // name of the field that it stands before; empty for the head of the section
	When    *Condition // for which plans
}

// A Condition says which plans something concerns.
type Condition struct {
	Words words.Text // a clause: "the water is pumped"
	holds func(p *Plan, _ int) bool
}

// The conditions of cautions.
var (
	anyPlan   = &Condition{"any plan", func(*Plan, int) bool { return true }}
	pumped    = &Condition{"the water is pumped", supplied(PumpPoints, PumpTwo, PumpPower, PumpWanted)}
	fromTank  = &Condition{"the water comes from a raised tank", supplied(GravityTank)}
	unpumped  = &Condition{"the water comes from a raised tank or a tap", supplied(GravityTank, Mains)}
	sheltered = &Condition{"the plants stand under a cover", func(p *Plan, _ int) bool { return p.Season.Shelter != OpenAir }}
)

// cautions stand in the order of the page.
var cautions = []*Caution{
	{"drowning", "place", "", anyPlan},
	{"electricity", "supply", "", pumped},
	{"raised", "supply", "", fromTank},
	{"backflow", "supply", "", anyPlan},
	{"pressure", "filter", "", anyPlan},
	{"heat", "header", "", anyPlan},
	{"blades", "emitters", "", anyPlan},
	{"lifting", "rows", "", anyPlan},
	{"dust", "rows", "", anyPlan},
	{"chemicals", "season", "treat", anyPlan},
	{"tunnel", "sky", "", sheltered},
	{"electricity", "timer", "", pumped},
	{"wires", "timer", "", unpumped},
	{"drain", "timer", "drain", anyPlan},
}

// Applies reports whether the caution is shown for p.
func (c *Caution) Applies(p *Plan) bool { return c.When.holds(p, 0) }

// Cautions returns every caution in the order of the page. They are shared and
// must not be changed.
func Cautions() []*Caution { return cautions }
