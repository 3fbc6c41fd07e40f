package buy

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
)

// CountsLine says how many parts there are to count.
func CountsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	return words.Say("{n} {n|part|parts}", words.N(len(the.S.Parts))), sheet.Yes
}
