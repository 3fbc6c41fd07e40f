package ends

import (
	"math"

	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
)

// A Rule says what becomes of two families of ends.
type Rule uint8

const (
	Undeclared Rule = iota // nobody has said: no pair mates by default

	// Sealed by
	Tape     // wound on the male thread, which jams as it tightens
	Washer   // a flat one in the female end
	OneClamp // around the tubing on its barb
	TwoClamps
	Collar // drip tubing is pressed in
	Nut    // its ring grips as the nut is tightened
	Ring   // of rubber, within
	Cement // for PVC

	// Refused
	HoseOnPipe     // they seem to mate
	MixedPipes     // NPT and BSP
	HoseOnParallel // a hose thread and BSP
	StraightInTaper
	SameSex
	OtherSize
	OtherBore
	OtherOutside
	SoftInGrip // the wall gives way
	HardOnBarb
	WrongGrip
	PlasticsMixed // PVC and others
	TwoTubes
	NothingHolds
	Rules = iota // how many there are
)

// A Seal is how a joint is made tight, and what it then carries.
type Seal struct {
	Name        words.Text // within a sentence; empty for what does not mate
	How         words.Text // a sentence for who makes the joint
	Pressure    float64    // Pa that it carries for long, cold
	Temperature float64    // °C up to which it does
	Source      source.Ref
}

const bar = 1e5

var practice = source.Ref{Standing: source.Practice}

// Seals are the joints that hold, by rule. What plastic joints carry is common practice:
// makers print their own.
var Seals = [HoseOnPipe]Seal{
	Tape: {"tape", "Wind thread tape two to four times around the male thread, the way it turns in; plastic by hand and a turn or two more.",
		8 * bar, 40, source.Ref{At: "plastic; turns from memory", Standing: source.Practice}},
	Washer: {"washer", "The flat washer seals, not tape: see that it lies in the female end, and tighten by hand.", 6 * bar, 40, practice},
	OneClamp: {"clamp", "Warm the end of the tubing in hot water, push it over every ridge of the barb, and put the clamp behind the first ridge.",
		4 * bar, 50, practice},
	TwoClamps: {"two clamps", "Push the pipe over every ridge, and put on two clamps of stainless steel with their screws on opposite sides.",
		7 * bar, 40, source.Ref{Work: "ASTM D2239", At: "as those who sell it explain; 100 psi pipe", Standing: source.Practice}},
	Collar: {"collar", "Cut square, wet the end of the tubing, and press it in to its stop.", 3.5 * bar, 40, practice},
	Nut: {"ring and nut", "Cut square, take off the burr, push the pipe in to its stop, and tighten the nut.",
		16 * bar, 40, source.Ref{Work: "ISO 17885", At: "PN 16", Standing: source.Memory}},
	Ring: {"ring inside", "Cut square, take off the burr, mark the depth, and push the pipe in to the mark.", 10 * bar, 40, practice},
	Cement: {"solvent cement", "Cement for PVC on dry, clean ends; wait as long as its label says before water comes.",
		10 * bar, 40, practice},
}

// Whys say why two ends do not make a joint, by rule.
var Whys = [Rules]words.Text{
	HoseOnPipe:      "a hose thread has 11.5 turns to the inch and is straight, a pipe thread of nearly the same width has 14 and is tapered: they catch for a turn, cross and leak",
	MixedPipes:      "NPT and BSP differ in the angle of the thread, 60° against 55°, and mostly in its turns: they start, then bind or leak",
	HoseOnParallel:  "a hose thread has 11.5 turns to the inch, BSP has 14 or 11, at another angle: they cross and leak",
	StraightInTaper: "a parallel male thread in a tapered female one touches at its first turns alone, and has no face for its washer",
	SameSex:         "both are of one sex",
	OtherSize:       "they are of two sizes",
	OtherBore:       "the bores differ: the barb is loose in the tubing or does not go in",
	OtherOutside:    "the outsides differ: the grip slips off or does not go over it",
	SoftInGrip:      "the wall of drip tubing gives way under a grip that is made for hard pipe",
	HardOnBarb:      "hard pipe does not go over a barb that is made for drip tubing",
	WrongGrip:       "that grip is made for other tubing",
	PlasticsMixed:   "cement holds PVC on PVC alone",
	TwoTubes:        "both are ends of tubing or pipe: a fitting goes between",
	NothingHolds:    "nothing holds one on the other: a piece of tubing or an adapter goes between",
}

// Table is what becomes of each pair of families, whatever their sizes and sexes are.
var Table = func() (t [Families][Families]Rule) {
	both := func(a Family, rule Rule, with ...Family) {
		for _, b := range with {
			t[a][b], t[b][a] = rule, rule
		}
	}
	both(PipeThread, Tape, PipeThread)
	both(PipeThread, HoseOnPipe, HoseThread)
	both(PipeThread, MixedPipes, Parallel, Taper)
	both(HoseThread, Washer, HoseThread)
	both(HoseThread, HoseOnParallel, Parallel, Taper)
	both(Parallel, Washer, Parallel)
	both(Parallel, Tape, Taper) // a tapered male thread in a parallel female one; the other way round see Mate
	both(Taper, Tape, Taper)
	for _, thread := range [...]Family{PipeThread, HoseThread, Parallel, Taper} {
		both(thread, NothingHolds, Socket, Rigid, Soft, Hard, Insertable, Barb, Insert, TubeGrip, PipeGrip, PushIn)
	}
	both(Socket, Cement, Rigid)
	both(Socket, PlasticsMixed, Soft, Hard, Insertable)
	both(Socket, NothingHolds, Socket, Barb, Insert, TubeGrip, PipeGrip, PushIn)
	both(Rigid, TwoTubes, Rigid, Soft, Hard, Insertable)
	both(Rigid, WrongGrip, Barb, Insert, TubeGrip, PipeGrip, PushIn)
	both(Soft, TwoTubes, Soft, Hard, Insertable)
	both(Soft, OneClamp, Barb)
	both(Soft, WrongGrip, Insert)
	both(Soft, Collar, TubeGrip)
	both(Soft, SoftInGrip, PipeGrip, PushIn)
	both(Hard, TwoTubes, Hard, Insertable)
	both(Hard, HardOnBarb, Barb, Insert)
	both(Hard, WrongGrip, TubeGrip)
	both(Hard, Nut, PipeGrip)
	both(Hard, Ring, PushIn)
	both(Insertable, TwoTubes, Insertable)
	both(Insertable, HardOnBarb, Barb)
	both(Insertable, TwoClamps, Insert)
	both(Insertable, WrongGrip, TubeGrip, PipeGrip, PushIn)
	both(Barb, NothingHolds, Barb, Insert, TubeGrip, PipeGrip, PushIn)
	both(Insert, NothingHolds, Insert, TubeGrip, PipeGrip, PushIn)
	both(TubeGrip, NothingHolds, TubeGrip, PipeGrip, PushIn)
	both(PipeGrip, NothingHolds, PipeGrip, PushIn)
	both(PushIn, NothingHolds, PushIn)
	return t
}()

// Fits is how far the bore of a barb, or the outside of a grip, may be from that of its
// tubing, in m: less than lies between any two sizes of drip tubing, 0.25 mm. Common
// practice, no source.
const Fits = 0.15e-3

// Mate says what becomes of two ends: one of the rules of Seals, or one of those of Whys.
// It does not matter which comes first.
func Mate(a, b End) Rule {
	rule := Table[a.Family][b.Family]
	if rule == Undeclared || rule >= HoseOnPipe {
		return rule
	}
	switch {
	case a.Threaded():
		switch {
		case a.Size != b.Size:
			return OtherSize
		case a.Sex == b.Sex:
			return SameSex
		case a.Family == Parallel && b.Family == Taper && a.Sex == Male, b.Family == Parallel && a.Family == Taper && b.Sex == Male:
			return StraightInTaper
		}
	case rule == Cement:
		if a.Size != b.Size {
			return OtherSize
		}
	case a.Size == catalogue.Custom || b.Size == catalogue.Custom:
		if a.Size != b.Size { // a measured bore is no size of a table
			return OtherBore
		}
	case rule == OneClamp || rule == TwoClamps:
		if math.Abs(catalogue.Tubes[a.Size].Bore-catalogue.Tubes[b.Size].Bore) > Fits {
			return OtherBore
		}
	default:
		if math.Abs(catalogue.Tubes[a.Size].Outside-catalogue.Tubes[b.Size].Outside) > Fits {
			return OtherOutside
		}
	}
	return rule
}

// Holds says whether a rule makes a joint that carries a pressure in Pa.
func (r Rule) Holds(pressure float64) bool {
	return r != Undeclared && r < HoseOnPipe && Seals[r].Pressure >= pressure
}

// Seems says whether two ends that do not mate look as if they did: who is in a shop needs
// to be told.
func (r Rule) Seems() bool {
	return r == HoseOnPipe || r == MixedPipes || r == HoseOnParallel || r == StraightInTaper || r == OtherBore || r == SoftInGrip
}
