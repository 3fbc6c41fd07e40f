package mend

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/fault"
	"evenrow/wasm/works/flush"
)

// What each part comes to in a line, and whether there is something to do.

// FlushLine says whether the dirt comes out at every end.
func FlushLine(the *scene.Scene) (said string, is sheet.Verdict) {
	f := the.S.Flush
	if f == nil {
		return "", sheet.Yes
	}
	switch f.Verdict {
	case flush.Clean:
		return words.Say("yes, one end at a time"), sheet.Yes
	case flush.CleanShut:
		return words.Say("yes, with the other rows shut"), sheet.Yes
	case flush.Dry, flush.Shared, flush.Weak, flush.WeakShut:
		return words.Say("not everywhere"), sheet.Nearly
	}
	return "", sheet.Yes
}

// FaultsLine says whether the filter is cleaned before it matters, and how much
// the supply may lose.
func FaultsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	f := the.S.Faults
	if f == nil {
		return "", sheet.Yes
	}
	for i := range f.Slow {
		switch s := &f.Slow[i]; {
		case s.Already:
			return words.Say("even now an emitter is out of its range"), sheet.Nearly
		case s.Kind == fault.Dirt && f.Clean == fault.TooLate:
			return words.Say("the filter is cleaned too late"), sheet.Nearly
		}
	}
	for i := range f.Slow {
		if s := &f.Slow[i]; s.Kind == fault.Wear && !s.Never {
			return words.Say("{source} may lose {share} of its head", the.TheSource(), the.Amount(unit.Share, s.Amount)), sheet.Yes
		}
	}
	return words.Say("how each is seen"), sheet.Yes
}
