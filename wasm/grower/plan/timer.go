package plan

// Kinds of timer, the values of Timer.Kind.
const (
	StartTimes = iota // a list of start times with minutes for each
	OnAndOff          // seconds on and minutes off, over and over within a window
	Dial              // a dial with a pin for each quarter of an hour
)

// Windows of a timer that goes on and off, the values of Timer.Window.
const (
	ByClock = iota // between two times
	ByLight        // as long as it is light
)

// Lengths of a line of the timer card, the values of Timer.Every.
const (
	Fortnight = iota
	Week
)

// Ways to make the timer card, the values of Timer.Card.
const (
	ByHand = iota // one length of shot a day, and start times that stay the same all season
	Finer         // lengths that differ, and start times that follow the sun
)

// A Timer is what starts the water, and how much of it is to drain.
type Timer struct {
	Kind       int
	Programmes int // start times that it holds for each valve; StartTimes
	Step       int // s, shortest step of its minutes; StartTimes
	Channels   int // valves, or pumps, that it switches; StartTimes
	Window     int // OnAndOff

	Shot     float64 // one shot as a share of the medium that a plant has
	Drain    float64 // share of the water given that is to drain on a typical day
	DrainHot float64 // on a hot day; at least Drain
	DrainLow float64 // on a dull day and while plants root in; at most Drain

	First   float64 // s from sunrise to the first shot
	Last    float64 // s from the last shot to sunset
	LastHot float64 // s from the last shot to sunset on a hot day; at most Last

	Every int // what a line of the card is for
	Card  int // how the card is made; StartTimes
}
