package mend

import "evenrow/wasm/shown/scene"

// A part draws what this job has to say of a plan.
type part struct{ *scene.Scene }
