package site

// A Job is one screen about a plan.
type Job struct {
	ID, Title string
	Asks      string  // what the grower asks
	Foot      bool    // has its own button at the foot of a phone
	Groups    []Place // of inputs
	Asked     []Place // sections that have a place in the frame, because a script asks for them
}

// A Place is where an address leads to.
type Place struct{ ID, Title string }
