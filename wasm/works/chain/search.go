package chain

import "evenrow/wasm/trade/ends"

// A Part is one that the search may take.
type Part struct {
	ends.Part
	Own int // index into Plan.Fittings, of one of the grower's own; -1 for one of the catalogue
}

// A Step is a part in its place.
type Step struct {
	Part    int // index into the parts that were searched
	In, Out ends.End
}

// cost is what the search keeps low: the first number, and where it is the same the
// second.
type cost struct{ first, second float64 }

func (c cost) less(d cost) bool {
	return c.first < d.first-1e-9 || c.first < d.first+1e-9 && c.second < d.second-1e-9
}

// Best finds the parts from one end to another over joints that carry a pressure in
// Pa: those that cost least, and as few of them as do, or where fewest is set as few as there
// can be, and the cheapest of those. It is proved best: ends are settled in the order of
// what it costs to reach them (Dijkstra, A note on two problems in connexion with graphs,
// 1959, from memory), and no price is negative. ok is false where no parts lead there; reached
// are then the ends that some parts lead to, the first of which is from.
func Best(parts []Part, from, to ends.End, pressure float64, fewest bool) (steps []Step, ok bool, reached []ends.End) {
	type open struct {
		end    ends.End
		is     cost
		part   int      // that leads here; -1 at from
		in     ends.End // of that part
		before int      // the end that the part is joined to, an index into list
		done   bool
	}
	list := []open{{end: from, part: -1, before: -1}}
	for {
		at := -1
		for i := range list {
			if !list[i].done && (at < 0 || list[i].is.less(list[at].is)) {
				at = i
			}
		}
		if at < 0 {
			for i := range list {
				reached = append(reached, list[i].end)
			}
			return nil, false, reached
		}
		list[at].done = true
		if ends.Mate(list[at].end, to).Holds(pressure) {
			for i := at; list[i].part >= 0; i = list[i].before {
				steps = append(steps, Step{Part: list[i].part, In: list[i].in, Out: list[i].end})
			}
			for i, k := 0, len(steps)-1; i < k; i, k = i+1, k-1 {
				steps[i], steps[k] = steps[k], steps[i]
			}
			return steps, true, nil
		}
		for i := range parts {
			p := &parts[i]
			for _, turned := range [...]bool{false, true} {
				in, out := p.A, p.B
				if turned {
					in, out = out, in
				}
				if turned && in == out || !ends.Mate(list[at].end, in).Holds(pressure) {
					continue
				}
				is := cost{list[at].is.first + p.Price, list[at].is.second + 1}
				if fewest {
					is = cost{list[at].is.first + 1, list[at].is.second + p.Price}
				}
				k := 0
				for k < len(list) && list[k].end != out {
					k++
				}
				switch {
				case k == len(list):
					list = append(list, open{out, is, i, in, at, false})
				case !list[k].done && is.less(list[k].is):
					list[k] = open{out, is, i, in, at, false}
				}
			}
		}
	}
}
