package plan

import (
	"testing"
)

// An emitter that is turned to another kind takes the exponent that is usual
// for it, unless what stands there is one of that kind.
func TestTurnedEmitterHasAnExponentOfItsKind(t *testing.T) {
	for _, tt := range []struct{ was, now, typed, want string }{
		{"compensating", "plain", "0", "0.5"}, // the trap: 0 is out of range there
		{"compensating", "plain", "0.1", "0.5"},
		{"compensating", "plain", "0.45", "0.45"}, // typed beforehand
		{"compensating", "plain", "", "0.5"},
		{"plain", "compensating", "0.5", "0"},
		{"plain", "compensating", "0.05", "0.05"},
		{"plain", "plain", "0", "0"}, // typed, and told as wrong
		{"", "plain", "0", "0"},      // a form without the mark
		{"compensating", "plain", "half", "half"},
	} {
		d := DraftOf(Default())
		d.Set("emitters.1.kind", tt.now)
		d.Set("emitters.1.exponent", tt.typed)
		if tt.was != "" {
			d.Set("emitters.1."+KindWas, tt.was)
		}
		d.Apply()
		if got := d.Get("emitters.1.exponent"); got != tt.want {
			t.Errorf("from %s to %s, %q became %q, want %q", tt.was, tt.now, tt.typed, got, tt.want)
		}
		if d.Has("emitters.1." + KindWas) {
			t.Error("the mark is left in the draft")
		}
	}
	// The second of two, together with a move: the mark does not get in the way.
	d := DraftOf(Default())
	d.Set(ActionName, "add-emitter")
	d.Apply()
	d.Set("emitters.1."+KindWas, "compensating")
	d.Set("emitters.2."+KindWas, "compensating")
	d.Set("emitters.2.kind", "plain")
	d.Set(ActionName, "emitter-up.2")
	d.Apply()
	if p, errs := d.Read(); len(errs) > 0 || p.Emitters[0].Kind != NonCompensating || p.Emitters[0].Exponent != 0.5 || p.Emitters[1].Exponent != 0 {
		t.Errorf("%v: %+v", errs, p.Emitters)
	}
}
