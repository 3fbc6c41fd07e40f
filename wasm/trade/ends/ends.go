// Package ends holds the ends that parts of a water path have, which of them hold one
// another, how such a joint is sealed, and the adapters that are sold between them. No
// brands.
package ends

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
)

// A Family is how an end is made.
type Family uint8

const (
	PipeThread Family = iota // NPT: tapered, in North America
	HoseThread               // of garden hoses in North America: straight
	Parallel                 // G: straight pipe thread of ISO 228
	Taper                    // R, and Rc where it is female: tapered pipe thread of ISO 7
	Socket                   // slip socket for PVC pipe
	Rigid                    // PVC pipe, schedule 40
	Soft                     // drip tubing, made to its bore
	Hard                     // PE pipe, made to its outside
	Insertable               // PE pipe, made to its bore
	Barb                     // goes into drip tubing
	Insert                   // goes into PE pipe that is made to its bore
	TubeGrip                 // compression fitting around drip tubing
	PipeGrip                 // compression fitting around PE pipe: a ring and a nut
	PushIn                   // PE pipe is pushed into it and held by teeth
	Families   = iota        // how many there are
)

// A Sex is which of the two ends of a joint an end is.
type Sex uint8

const (
	Neither Sex = iota // of what holds tubing, and of tubing
	Male
	Female
)

// An End is one end of a part.
type End struct {
	Family Family
	Sex    Sex
	Size   int // index into Sizes for threads and PVC, else into catalogue.Tubes
}

// Sizes are the nominal sizes of threads and PVC pipe, by what the trade calls them. They
// are no measures.
var Sizes = [...]words.Text{"1/2", "3/4", "1", "1-1/4", "1-1/2"}

// Positions in Sizes.
const (
	Half = iota
	ThreeQuarter
	One
	OneQuarter
	OneHalf
)

// All are the ends that a fitting may have. Positions are permanent, because links hold
// them: those of further tubing go to the end.
var All = func() []End {
	var all []End
	for _, f := range [...]Family{PipeThread, Parallel, Taper} {
		for size := range Sizes {
			all = append(all, End{f, Male, size}, End{f, Female, size})
		}
	}
	all = append(all, End{HoseThread, Male, ThreeQuarter}, End{HoseThread, Female, ThreeQuarter})
	for size := Half; size <= OneQuarter; size++ {
		all = append(all, End{Socket, Neither, size}, End{Rigid, Neither, size})
	}
	for i := range catalogue.Tubes {
		all = append(all, Tubing(i))
		for _, f := range holders(i) {
			all = append(all, End{f, Neither, i})
		}
	}
	return all
}()

// Threads is how many of All, the first, are threads.
const Threads = 3*2*len(Sizes) + 2

// Tubing is the end of tubing, an index into catalogue.Tubes.
func Tubing(tube int) End {
	return End{[...]Family{catalogue.Barbs: Soft, catalogue.Inserts: Insertable, catalogue.Compression: Hard}[catalogue.Tubes[tube].Takes], Neither, tube}
}

// Holder is the usual end of a fitting for tubing.
func Holder(tube int) End { return End{holders(tube)[0], Neither, tube} }

// holders are the ends that hold tubing, the usual one first. Drip tubing in
// inches is sold with fittings that grip it from outside, too.
func holders(tube int) []Family {
	t := &catalogue.Tubes[tube]
	switch t.Takes {
	case catalogue.Barbs:
		if t.Outside > 0 && !t.Metric() {
			return []Family{Barb, TubeGrip}
		}
		return []Family{Barb}
	case catalogue.Inserts:
		return []Family{Insert}
	case catalogue.Compression:
		return []Family{PipeGrip, PushIn}
	}
	return nil
}

// Threaded says whether an end is a thread.
func (e End) Threaded() bool { return e.Family <= Taper }

// Pipe says whether an end is that of tubing or pipe, which fittings hold.
func (e End) Pipe() bool { return e.Family >= Rigid && e.Family <= Insertable }

// names are what the trade calls an end, by family, and by sex where it has one.
var names = [Families][3]words.Text{
	PipeThread: {Male: "{size} in pipe thread (NPT), male", Female: "{size} in pipe thread (NPT), female"},
	HoseThread: {Male: "{size} in hose thread, male", Female: "{size} in hose thread, female, with its washer"},
	Parallel:   {Male: "G {size} parallel thread, male", Female: "G {size} parallel thread, female"},
	Taper:      {Male: "R {size} taper thread, male", Female: "Rc {size} taper thread, female"},
	Socket:     {"socket for PVC pipe of {size} in"},
	Rigid:      {"PVC pipe of {size} in"},
	Soft:       {"drip tubing of {size}"},
	Hard:       {"PE pipe of {size}"},
	Insertable: {"PE pipe of {size}"},
	Barb:       {"barb for drip tubing of {size}"},
	Insert:     {"insert for PE pipe of {size}"},
	TubeGrip:   {"compression end for drip tubing of {size}"},
	PipeGrip:   {"compression end for PE pipe of {size}"},
	PushIn:     {"push-in end for PE pipe of {size}"},
}

// Name is what an end is called within a sentence: "3/4 in hose thread, male". bore is how
// measured tubing is called, whose size no table has; empty where there is none.
func (e End) Name(bore string) string { return words.Say(e.Text(), e.size(bore)) }

// Text is Name without its size.
func (e End) Text() words.Text { return names[e.Family][e.Sex] }

// SizeText fills the place in Text.
func (e End) SizeText() words.Text {
	if e.Threaded() || e.Family == Socket || e.Family == Rigid {
		return Sizes[e.Size]
	}
	return catalogue.Tubes[e.Size].Short
}

func (e End) size(bore string) string {
	if bore != "" && !e.Threaded() && e.Family != Socket && e.Family != Rigid && e.Size == catalogue.Custom {
		return bore
	}
	return words.Say(e.SizeText())
}

// Bore is the free bore in m of a part at an end: of threads what is commonly left within
// a male one of plastic, of what is pushed into tubing the share of its bore that
// layout.InsertShare tells too; 0 where the tubing's own bore stays free.
func (e End) Bore() float64 {
	switch {
	case e.Threaded():
		return bores[e.Size]
	case e.Family == Socket, e.Family == Rigid:
		return PVC[e.Size].Bore
	}
	return 0
}

// bores are the free bores in m within threads, by size: common practice, no source.
// Makers differ by a tenth.
var bores = [len(Sizes)]float64{0.0125, 0.0165, 0.0215, 0.0285, 0.0355}
