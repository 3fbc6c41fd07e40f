package why

import (
	"math"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/wording"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/chance"
	"evenrow/wasm/works/layout"
	"evenrow/wasm/works/limit"
	"evenrow/wasm/works/surge"
)

// What each part comes to in a line, and whether there is something to do.

// SpeedsLine says how fast the water runs where it runs fastest, of what has a limit.
func SpeedsLine(the *scene.Scene) (said string, is sheet.Verdict) {
	most := 0.0
	for i := range the.S.Zones {
		for _, rank := range [...]int{layout.Lead, layout.Main} {
			v, pace := the.S.Pace(&the.S.Zones[i], rank)
			if most = max(most, v); pace == sheet.TooFast {
				is = sheet.Nearly
			}
		}
	}
	switch {
	case most == 0:
		return "", sheet.Yes
	case is != sheet.Yes:
		return words.Say("too fast: {speed}", the.Amount(unit.Speed, most)), is
	}
	return words.Say("{speed} at most", the.Amount(unit.Speed, most)), sheet.Yes
}

// PumpLine says where the supply works.
func PumpLine(the *scene.Scene) (said string, is sheet.Verdict) {
	switch z := the.Zone; {
	case z == nil || !(z.Flow > 0):
		return "", sheet.Yes
	case the.S.Layout.Curve == nil:
		return words.Say("its own height"), sheet.Yes
	default:
		return words.Say("{head} at {flow}", the.Head(z.Head), the.Amount(unit.Flow, z.Flow)), sheet.Yes
	}
}

// AlongLine says between which heads the plants are.
func AlongLine(the *scene.Scene) (said string, is sheet.Verdict) {
	lo, hi := math.Inf(1), math.Inf(-1)
	for i := range the.S.Rows {
		if r := &the.S.Rows[i]; r.Plants > 0 && r.In[sheet.Unknown] < r.Plants {
			lo, hi = min(lo, r.LeastHead), max(hi, r.MostHead)
		}
	}
	if lo > hi {
		return "", sheet.Yes
	}
	return words.Say("{least} to {most}", the.Amount(unit.Head, lo), the.Amount(unit.Head, hi)), sheet.Yes
}

// EvennessLine says what the limit is held against: how true emitters are to what
// they are made to give, where that is least.
func EvennessLine(the *scene.Scene) (said string, is sheet.Verdict) {
	var least *sheet.ZoneResult
	for i := range the.S.Zones {
		if z := &the.S.Zones[i]; z.Open > 0 && (least == nil || z.Even.EU < least.Even.EU) {
			least = z
		}
	}
	if least == nil {
		return "", sheet.Yes
	}
	wanted := limit.EvennessOf(the.S.Plan)
	if wanted.Broken(least.Even.EU) {
		return words.Say("{eu}, and {limit} is wanted", the.Amount(unit.Share, least.Even.EU), the.Amount(unit.Share, wanted.At)), sheet.Nearly
	}
	return the.Amount(unit.Share, least.Even.EU), sheet.Yes
}

// ZonesLine says how many zones there are, and where others would do better.
func ZonesLine(the *scene.Scene) (said string, is sheet.Verdict) {
	if the.S.Zoning == nil || len(the.S.Zones) == 0 {
		return "", sheet.Yes
	}
	switch z := the.S.Zoning; the.S.Enough().Kind {
	case sheet.FewerDo:
		return words.Say("{fewer} would do", words.N(z.Fewest)), sheet.Yes
	case sheet.OthersDo:
		return words.Say("{n} would do it", words.N(z.Fewest)), sheet.Nearly
	case sheet.Regroup:
		return words.Say("other rows in each would do it"), sheet.Nearly
	case sheet.OneAlone, sheet.NoneAlone, sheet.TooLarge, sheet.OneRow, sheet.NoneEnough, sheet.OneDoes, sheet.AllNeeded:
	}
	return words.Say("{n} {n|zone|zones}", words.N(len(the.S.Zones))), sheet.Yes
}

// RingLine says what a loop gains.
func RingLine(the *scene.Scene) (said string, is sheet.Verdict) {
	l := the.S.Loop
	if l == nil {
		return "", sheet.Yes
	}
	switch g := l.Gain(); g.Worth {
	case sheet.WorthNothing:
		return words.Say("next to nothing"), sheet.Yes
	case sheet.WorthLess:
		return words.Say("nothing"), sheet.Yes
	case sheet.WorthMore:
		return the.Head(g.Head), sheet.Yes
	}
	return "", sheet.Yes
}

// StartingLine says after how long the water is everywhere.
func StartingLine(the *scene.Scene) (said string, is sheet.Verdict) {
	u := the.S.Startup
	if u == nil {
		return "", sheet.Yes
	}
	most := 0.0
	for i := range u.Zones {
		most = max(most, u.Zones[i].Filled)
	}
	switch {
	case u.Stuck:
		return words.Say("emitters flush for ever"), sheet.No
	case math.IsInf(most, 1):
		return words.Say("some rows never fill"), sheet.No
	case most == 0:
		return "", sheet.Yes
	}
	return words.Say("full after {time}", the.Elapsed(most)), sheet.Yes
}

// SurgeLine says whether the tubing stands a valve that shuts at once.
func SurgeLine(the *scene.Scene) (said string, is sheet.Verdict) {
	if len(the.S.Surge) == 0 {
		return "", sheet.Yes
	}
	switch worst, slowest := surge.Worst(the.S.Surge); {
	case math.IsInf(worst.Closing, 1):
		return words.Say("too much even at rest"), sheet.Nearly
	case worst.Closing > 0:
		return words.Say("shut valves over {time}", wording.Closing(slowest)), sheet.Nearly
	default:
		return words.Say("the tubing stands it at {temperature}", the.Amount(unit.Temperature, catalogue.Sun)), sheet.Yes
	}
}

// ChanceLine says how many plants are short.
func ChanceLine(the *scene.Scene) (said string, is sheet.Verdict) {
	if len(the.S.Chance) == 0 {
		return "", sheet.Yes
	}
	z := chance.Worst(the.S.Chance)
	if z.Short == 0 {
		return words.Say("no plant short"), sheet.Yes
	}
	return words.Say("{share} of plants short", the.Amount(unit.Share, z.Short)), sheet.Yes
}
