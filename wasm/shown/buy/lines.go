package buy

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
)

// AsksLine says how many parts are explained.
func AsksLine(the *scene.Scene) (said string, is sheet.Verdict) {
	sc, n := part{the}, 0
	for i := range sc.S.Parts {
		if sc.ask(&sc.S.Parts[i]) != "" {
			n++
		}
	}
	return words.Say("{n} {n|part|parts} in plain words", words.N(n)), sheet.Yes
}

// CountsLine says how many parts there are to count.
func CountsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	return words.Say("{n} {n|part|parts}", words.N(len(the.S.Parts))), sheet.Yes
}
