package ends

import "evenrow/wasm/trade/catalogue"

// A Part joins what its two ends mate with. It may be turned round.
type Part struct {
	A, B  End
	Rare  bool    // not in every shop: between the threads of two parts of the world
	Price float64 // in no currency, invented: it rises with the size. Common practice, no source
}

// Parts are the adapters that are commonly sold, generic ones. Common practice, no source:
// what a shop has differs, so growers add their own.
var Parts = func() (list []Part) {
	rare := false
	add := func(a, b End) { list = append(list, Part{a, b, rare, price(a) + price(b)}) }
	male := func(f Family, size int) End { return End{f, Male, size} }
	female := func(f Family, size int) End { return End{f, Female, size} }

	// Of one family: nipples, sockets, bushings and reducers. BSP ones have tapered male
	// and parallel female threads, but for nipples with flat faces, which take washers.
	for _, f := range [...]struct{ male, female Family }{{PipeThread, PipeThread}, {Taper, Parallel}} {
		for size := range Sizes {
			add(male(f.male, size), male(f.male, size))
			add(female(f.female, size), female(f.female, size))
			for less := max(0, size-2); less < size; less++ {
				add(male(f.male, size), female(f.female, less))
				add(female(f.female, size), male(f.male, less))
				if less == size-1 {
					add(male(f.male, size), male(f.male, less))
					add(female(f.female, size), female(f.female, less))
				}
			}
		}
	}
	for size := range Sizes {
		add(male(Parallel, size), male(Parallel, size))
	}

	// From family to family.
	hose := func(s Sex) End { return End{HoseThread, s, ThreeQuarter} }
	add(hose(Male), hose(Male))
	add(hose(Female), hose(Female))
	for size := Half; size <= ThreeQuarter; size++ {
		for _, s := range [...]Sex{Male, Female} {
			add(male(PipeThread, size), hose(s))
			add(female(PipeThread, size), hose(s))
		}
	}
	rare = true
	add(hose(Female), male(Parallel, ThreeQuarter))
	add(hose(Male), female(Parallel, ThreeQuarter))
	for size := Half; size <= One; size++ {
		add(female(PipeThread, size), male(Taper, size))
		add(male(PipeThread, size), female(Parallel, size))
	}
	rare = false

	// From threads to tubing, in the sizes next to its bore; and a short piece of it.
	for i := range catalogue.Tubes {
		t := &catalogue.Tubes[i]
		for _, holder := range holders(i) {
			hold := End{holder, Neither, i}
			for _, size := range near(t) {
				if i == catalogue.Custom || t.Metric() {
					add(male(Taper, size), hold)
					add(female(Parallel, size), hold)
				}
				if i == catalogue.Custom || !t.Metric() {
					add(male(PipeThread, size), hold)
					add(female(PipeThread, size), hold)
					if size == ThreeQuarter && t.Takes == catalogue.Barbs {
						add(hose(Male), hold)
						add(hose(Female), hold)
					}
				}
			}
		}
		add(Tubing(i), Tubing(i))
	}

	// PVC.
	for size := Half; size <= OneQuarter; size++ {
		socket, pipe := End{Socket, Neither, size}, End{Rigid, Neither, size}
		add(male(PipeThread, size), socket)
		add(female(PipeThread, size), socket)
		add(socket, socket)
		add(pipe, pipe)
		if size > Half {
			add(pipe, End{Socket, Neither, size - 1})
		}
	}
	return list
}()

// BranchOf is the thread of a tee's branch, or of an elbow, that holds tubing of one size
// at its other ends and lets tubing of another kind be joined to it: female, of the size
// whose bore is next to that of the tubing.
func BranchOf(tube int) End {
	t := &catalogue.Tubes[tube]
	f := PipeThread
	if tube == catalogue.Custom || t.Metric() {
		f = Parallel
	}
	return End{f, Female, next(t)}
}

// near are the sizes of threads that adapters to tubing are sold with: that whose bore is
// nearest, and its neighbours. Of the smallest tubing 1/2 and 3/4.
func near(t *catalogue.Tube) []int {
	at := next(t)
	var sizes []int
	for size := max(0, at-1); size <= min(at+1, len(bores)-1); size++ {
		sizes = append(sizes, size)
	}
	return sizes
}

// next is the greatest size of thread that is no wider than tubing, or the least.
func next(t *catalogue.Tube) int {
	at := 0
	for at < len(bores)-1 && bores[at+1] <= t.Bore {
		at++
	}
	return at
}

// price is the share of a part's price that an end of it makes.
func price(e End) float64 {
	bore := e.Bore()
	if bore == 0 {
		bore = catalogue.Tubes[e.Size].Bore
	}
	if e.Family == TubeGrip || e.Family == PushIn {
		bore *= 1.5
	}
	return cents(0.3 + 40*bore)
}

// cents rounds a price to tenths.
func cents(price float64) float64 { return float64(int(price*10+0.5)) / 10 }

// Of says whether a part holds tubing, an index into catalogue.Tubes, or is a piece of it.
func (p *Part) Of(tube int) bool {
	of := func(e End) bool { return !e.Threaded() && e.Family != Socket && e.Family != Rigid && e.Size == tube }
	return of(p.A) || of(p.B)
}
