package scene

import (
	"strconv"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// Title is the title of the page with a plan: its name, or a plain word.
func Title(p *plan.Plan) string {
	if p.Name == "" {
		return words.Say("A plan")
	}
	return p.Name
}

// Place names a plant: "row 4, plant 30".
func (sc *Scene) Place(plant int) string { return sc.place(plant, "row {row}, plant {plant}") }

// PlaceBegin is [Scene.Place] at the beginning of a sentence.
func (sc *Scene) PlaceBegin(plant int) string { return sc.place(plant, "Row {row}, plant {plant}") }

func (sc *Scene) place(plant int, t words.Text) string {
	if sc.S.Layout == nil || plant < 0 || plant >= len(sc.S.Layout.Plants) {
		return ""
	}
	p := &sc.S.Layout.Plants[plant]
	return words.Say(t, words.N(p.Row+1), words.N(p.Number))
}

// ZoneName says which zone a figure belongs to, if there are several.
func (sc *Scene) ZoneName(z *sheet.ZoneResult) string {
	if len(sc.S.Zones) < 2 {
		return words.Say("all rows together")
	}
	return words.Say("zone {n}", words.N(z.Zone))
}

// A source is what drives the water, as it stands in a sentence. What depends on
// it is decided by the plan's Supply.Kind, never by these words.
type source struct{ name, the, own, your, none words.Text }

var (
	aPump = source{"pump", "the pump", "the pump that you have", "Your pump", "No pump"}
	aTap  = source{"tap", "the tap", "the tap that you have", "Your tap", "No tap"}
	aTank = source{"tank", "the tank", "the tank that you have", "Your tank", "No tank"}
)

func (sc *Scene) source() *source {
	switch sc.S.Plan.Supply.Kind {
	case plan.GravityTank:
		return &aTank
	case plan.Mains:
		return &aTap
	}
	return &aPump
}

// SourceName is what drives the water, in a word, for a label: "pump".
func (sc *Scene) SourceName() string { return words.Say(sc.source().name) }

// TheSource is what drives the water, within a sentence: "the pump".
func (sc *Scene) TheSource() string { return words.Say(sc.source().the) }

// OwnSource tells it from another one: "the pump that you have".
func (sc *Scene) OwnSource() string { return words.Say(sc.source().own) }

// YourSource begins a sentence with it: "Your pump".
func (sc *Scene) YourSource() string { return words.Say(sc.source().your) }

// NoSource begins a sentence that none of its kind will do: "No pump".
func (sc *Scene) NoSource() string { return words.Say(sc.source().none) }

// Idle stands where nothing can be said because no water flows.
func (sc *Scene) Idle() string {
	if len(sc.S.Zones) > 0 {
		return words.Say("This is worked out once water runs at the plants. Look at the answer first.")
	}
	return words.Say("This is worked out as soon as the plan says what drives the water.")
}

// reliefs are said of tubing that cannot carry the pressure at rest.
var reliefs [sheet.Reliefs]words.Text = [...]words.Text{
	sheet.LowerRegulator: "Set the regulator lower.",
	sheet.FitRegulator:   "Fit a regulator.",
	sheet.LowerTank:      "Fit a regulator, or stand the tank lower.",
	sheet.WeakerPump:     "Fit a regulator, or a pump with less head.",
}

// Relief is what takes pressure off tubing that cannot carry it at rest.
func (sc *Scene) Relief() string { return words.Say(reliefs[sc.S.Relief()]) }

// Helped is a sentence that points to what helps; nothing where nothing does.
func (sc *Scene) Helped() string {
	if len(sc.S.Fixes) == 0 {
		return ""
	}
	return words.Say("The answer says what helps.")
}

// RegulatorFirst is a sentence that says on which side it errs that package
// layout puts a regulator before what stands before it in truth; nothing where
// there is no such thing.
func (sc *Scene) RegulatorFirst() string {
	if sc.S.RegulatorFirst() {
		return words.Say("Counted as if the regulator stood before the filter: the safe side.")
	}
	return ""
}

// CardName says on a card which plan and year it is for: it hangs alone.
func (sc *Scene) CardName(first day.Day) {
	sc.HTML(`<p><b>`).Text(Title(sc.S.Plan)).HTML(`</b>, `).Text(strconv.Itoa(first.Year())).HTML(`</p>`)
}

// MostWords is for how many zones everything is said in words.
const MostWords = 3
