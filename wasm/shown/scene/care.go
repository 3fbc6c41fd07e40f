package scene

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
)

// Careful says what to do against what is declared, right where it is met. It is never
// folded away by itself, and stands before what is done.
func (sc *Scene) Careful(declared care.Set) {
	for _, said := range care.Short(declared, sc.S.Plan) {
		sc.HTML(`<p class="hazard">`).Text(said).HTML(`</p>`)
	}
}

// Beware names what is declared, in small print behind what is done; what to do
// against it stands on the same card.
func (sc *Scene) Beware(declared care.Set) {
	var names []string
	for h := range care.Hazard(care.Hazards) {
		if (declared & care.In(sc.S.Plan)).Has(h) {
			names = append(names, words.Say(care.Names[h]))
		}
	}
	if len(names) > 0 {
		sc.HTML(` <small>`).Text(words.Say("Beware: {hazards}.", words.List(names...))).HTML(`</small>`)
	}
}
