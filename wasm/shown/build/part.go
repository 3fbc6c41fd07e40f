// Package build says where tubing is cut and punched.
package build

import "evenrow/wasm/shown/scene"

// A part draws what this job has to say of a plan.
type part struct{ *scene.Scene }
