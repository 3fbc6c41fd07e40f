package plan

// A Chance is how reliable the emitters are.
type Chance struct {
	Blocked float64 // chance that an emitter is blocked, as a fraction
}
