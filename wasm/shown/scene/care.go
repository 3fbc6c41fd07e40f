package scene

import "evenrow/wasm/grower/care"

// Careful says what to do against what is declared, right where it is met. It is never
// folded away by itself, and stands before what is done.
func (sc *Scene) Careful(declared care.Set) {
	for _, said := range care.Short(declared, sc.S.Plan) {
		sc.HTML(`<p class="hazard">`).Text(said).HTML(`</p>`)
	}
}
