package catalogue

import "evenrow/wasm/ground/source"

// Positions in Fittings.
const (
	Elbow      = iota // a bend of 90 degrees, short radius, as insert and threaded fittings have it
	TeeThrough        // straight through a tee
	TeeBranch         // out of a tee's branch, or into the rows from a header
	BallValve         // fully open
	SwingCheck        // a check valve
	Entrance          // from a tank into tubing, flush with the wall
	Exit              // from tubing into a tank or the open
)

// Fittings holds loss coefficients for turbulent flow, on the velocity in the
// tubing. Where sources disagree the larger is taken, so that a plan errs on
// the side of a stronger pump. In laminar flow the true values are higher.
var Fittings = [...]Fitting{
	Elbow: {"elbow, 90 degrees", 1.5, source.Ref{Work: "Munson, Young & Okiishi, Fundamentals of Fluid Mechanics",
		At: "example 8.8; other tables give 0.9, the larger is used"}},
	TeeThrough: {"tee, straight through", 0.9, munson},
	TeeBranch:  {"tee, through its branch", 2.0, munson},
	BallValve:  {"ball valve, open", 0.05, munson},
	SwingCheck: {"check valve", 2.5, source.Ref{
		At: "tables give 1.0 (0.29 to 2.2, Kalsi & Tullis 1993), 2.0 and 2.5; the largest is used", Standing: source.Practice}},
	Entrance: {"inlet from a tank, flush", 0.5, source.Ref{Work: "Fox & McDonald, Introduction to Fluid Mechanics", At: "example 8.5"}},
	Exit:     {"outlet into a tank", 1.0, source.Ref{Work: "Fox & McDonald, Introduction to Fluid Mechanics", At: "example 8.5"}},
}

var munson = source.Ref{Work: "Munson, Young & Okiishi, Fundamentals of Fluid Mechanics", At: "table 8.2, threaded", Standing: source.Memory}
