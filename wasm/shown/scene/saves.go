package scene

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/block"
)

// Saves is a button that saves what stands above it as a table, where there is a script
// for it. of is what the page asks the planner for.
func (sc *Scene) Saves(of block.Markup) {
	if sc.Link != nil && !sc.Still {
		sc.HTML(`<p class="screen"><button type="button" class="button" data-do="`).HTML(of).HTML(`">`).Text(words.Say("Save as a table")).HTML(`</button></p>`)
	}
}
