package answer

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/headroom"
)

// What each part comes to in a line, and whether there is something to do: Yes
// where there is not.

// RestsLine is what the answer rests on.
func RestsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	switch rest := the.S.Rest; {
	case rest == nil || the.S.Verdict == sheet.Cannot:
		return "", sheet.Yes
	case len(rest.Turns) > 0:
		return words.Say("{n} {n|thing|things}", words.N(len(rest.Turns))), sheet.Nearly
	case rest.Untested > 0:
		if the.S.Wanted != nil {
			return words.Say("what the pump goes by"), sheet.Yes
		}
		return words.Say("not all was tried"), sheet.Yes
	case rest.Steady > 0:
		return words.Say("nothing that is assumed turns it"), sheet.Yes
	}
	return words.Say("nothing is assumed"), sheet.Yes
}

// FindingsLine says how many things there are to look at.
func FindingsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	if n := len(the.S.Findings); n > 0 {
		return words.Say("{n} {n|thing|things}", words.N(n)), max(the.S.Verdict, sheet.Nearly)
	}
	return words.Say("nothing"), sheet.Yes
}

// RowsLine says how many plants have what their emitters need.
func RowsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	var in [sheet.States]int
	all := 0
	for i := range the.S.Rows {
		for state, n := range the.S.Rows[i].In {
			in[state] += n
			all += n
		}
	}
	switch {
	case all == 0 || in[sheet.Unknown] > 0:
		return "", sheet.Yes
	case in[sheet.Shut] > 0:
		is = sheet.No
	case in[sheet.Within] < all:
		is = sheet.Nearly
	default:
		return words.Say("all {n} in range", words.N(all)), sheet.Yes
	}
	return words.Say("{n} of {all} not in range", words.N(all-in[sheet.Within]), words.N(all)), is
}

// HeadroomLine says how many plants more the system carries. Where it carries
// none, the answer says why.
func HeadroomLine(the *scene.Scene) (said string, is sheet.Verdict) {
	switch rooms := the.S.Headroom; {
	case len(rooms) == 0:
		return "", sheet.Yes
	case rooms[0].Why.Limit == headroom.Enough:
		return words.Say("{n} {n|plant|plants} or more", words.N(rooms[0].Most)), sheet.Yes
	default:
		return words.Say("{n} {n|plant|plants} more", words.N(rooms[0].Most)), sheet.Yes
	}
}

// DesignsLine says what the designs come to.
func DesignsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	d := the.S.Designs
	switch the.S.Concluded() {
	case sheet.NoneServes:
		if d == nil {
			return "", sheet.Yes
		}
		return words.Say("none serves"), sheet.Nearly
	case sheet.NoneCheaper:
		return words.Say("none"), sheet.Yes
	case sheet.SomeCheaper:
		return words.Say("{less} less", the.Amount(unit.Money, -sheet.DearerBy(d.Now, d.Best[0].Cost))), sheet.Yes
	case sheet.SomeServes, sheet.AnotherRegulator:
		return words.Say("one makes it Yes"), sheet.Nearly
	case sheet.AnotherSupply:
		return words.Say("with another supply"), sheet.Yes
	case sheet.SoughtPump:
		return words.Say("{n} to choose from", words.N(len(d.Best))), sheet.Yes
	}
	return "", sheet.Yes
}
