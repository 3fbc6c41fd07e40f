package answer

import (
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/works/design"
	"evenrow/wasm/works/limit"
)

type search struct {
	Conclusion string   `json:"conclusion"`             // what the designs that serve come to
	Barrier    string   `json:"none_because,omitempty"` // where none serves
	Failed     string   `json:"most_failed,omitempty"`  // likewise, where no limit alone forbids it: what most fail
	All        bool     `json:"all_compared"`           // nothing cheaper was missed
	Compared   int      `json:"compared"`
	Solved     int      `json:"worked_out"`
	Pruned     int      `json:"passed_over"`
	Cut        bool     `json:"ended_early"`
	Unbeaten   int      `json:"unbeaten"`
	Now        number   `json:"plan_cost"`
	Forbids    []string `json:"forbidden_by"` // what every design fails
	List       []drawn  `json:"list"`
}

type drawn struct {
	Rows    string   `json:"rows"`
	Header  string   `json:"header,omitempty"`
	Runs    []string `json:"runs"`
	Middle  bool     `json:"fed_in_the_middle"`
	Zones   int      `json:"zones"`
	Cost    number   `json:"cost"`
	Head    number   `json:"least_head_m"`
	Flow    number   `json:"least_flow_m3_s"`
	Power   number   `json:"power_w"`
	Margin  number   `json:"margin_m"`
	EU      number   `json:"eu"`
	Round   number   `json:"round_s"`
	Carried bool     `json:"carried_by_own_supply"` // by the plan's own supply
	Wanted  *wanted  `json:"pump_wanted,omitempty"` // where it is sought
	Link    string   `json:"link"`
}

type zoning struct {
	Fewest     int    `json:"fewest_zones"` // 0 when no number that was tried is enough
	Tried      int    `json:"zones_tried"`
	All        bool   `json:"all_tried"`
	Conclusion string `json:"conclusion"`             // what this comes to
	Neighbours bool   `json:"only_neighbours_tried"`  // fewer zones were tried only of rows that stand together
	Crops      bool   `json:"different_crops_reason"` // fewer zones would do, and different crops are a reason to keep those there are
}

type loop struct {
	Tied    bool   `json:"tied"` // the plan has its far header
	More    number `json:"more_tubing_m"`
	Without side   `json:"without"`
	With    side   `json:"with"`
	Gain    gain   `json:"gain"`
}

// A gain is what the far header comes to: with it, less without it.
type gain struct {
	Worth  string `json:"weakest_emitter"`
	Head   number `json:"margin_m"`
	Longer *int   `json:"more_plants_a_row"`  // null where not known
	Only   string `json:"yes_only,omitempty"` // with or without it, where the other is not yes
}

type side struct {
	Verdict string `json:"verdict"`
	Margin  number `json:"margin_m"`
	Low     number `json:"least_head_m"`
	High    number `json:"most_head_m"`
	EU      number `json:"eu"`
	Longer  *int   `json:"more_plants_a_row"` // null where not looked for
}

var conclusions [sheet.Conclusions]string = [...]string{
	sheet.NoneServes: "none-serves", sheet.SoughtPump: "sought-pump", sheet.AnotherRegulator: "another-regulator", sheet.AnotherSupply: "another-supply",
	sheet.NoneCheaper: "none-cheaper", sheet.SomeCheaper: "some-cheaper", sheet.SomeServes: "some-serves",
}

var barriers [sheet.Barriers]string = [...]string{
	sheet.OtherEmitters: "different-emitters", sheet.CutShort: "ended-early", sheet.Forbidden: "forbidden", sheet.NoneCompared: "none-compared",
	sheet.AllUnequal: "none-in-full", sheet.OneOrAnother: "one-limit-or-another",
}

var enough [sheet.EnoughKinds]string = [...]string{
	sheet.OneAlone: "one-is-enough", sheet.NoneAlone: "no-row-alone", sheet.TooLarge: "too-large", sheet.OneRow: "one-row", sheet.NoneEnough: "none-enough",
	sheet.FewerDo: "fewer-do", sheet.Regroup: "regroup", sheet.OthersDo: "others-do", sheet.OneDoes: "one-does", sheet.AllNeeded: "all-needed",
}

var (
	worths [sheet.Worths]string = [...]string{sheet.WorthNothing: "as-much", sheet.WorthLess: "less", sheet.WorthMore: "more"}
	sides                       = [...]string{sheet.Untied: "without", sheet.Tied: "with"}
)

func searchOf(s *sheet.Sheet) *search {
	d, p := s.Designs, s.Plan
	if d == nil {
		return nil
	}
	out := &search{Conclusion: conclusions[s.Concluded()], Compared: d.Counted, Solved: d.Solved, Pruned: d.Pruned, Cut: d.Cut, Unbeaten: len(d.List), Now: number(d.Now), Forbids: []string{}, List: []drawn{}, All: s.AllCompared()}
	if len(d.Best) == 0 {
		why, most := d.Barrier()
		if out.Barrier = barriers[why]; why == sheet.OneOrAnother {
			out.Failed = limit.Names[most]
		}
	}
	for l, name := range limit.Names {
		if d.Forbids.Has(limit.Limit(l)) {
			out.Forbids = append(out.Forbids, name)
		}
	}
	for i := range d.Best {
		b := &d.Best[i]
		one := drawn{
			Rows: sizeOf(b.Rows), Middle: b.Middle, Zones: b.Zones, Cost: number(b.Cost), Head: number(b.Head), Flow: number(b.Flow),
			Power: number(b.Power), Margin: number(b.Margin), EU: number(b.Even), Round: number(b.Round), Carried: b.Present, Wanted: wantedOf(b.Wanted), Link: "#" + carry.Link(b.Take),
		}
		if p.Header.Layout != plan.OneLine && len(p.Rows) > 1 {
			one.Header = sizeOf(b.Header)
		}
		for _, size := range b.Runs {
			one.Runs = append(one.Runs, sizeOf(size))
		}
		out.List = append(out.List, one)
	}
	return out
}

func sizeOf(size int) string {
	if size == design.Kept {
		return "as it stands"
	}
	return words.Say(catalogue.Tubes[size].Short)
}

func zoningOf(s *sheet.Sheet) *zoning {
	z := s.Zoning
	if z == nil {
		return nil
	}
	n := s.Enough()
	return &zoning{z.Fewest, z.Tried, !z.Large, enough[n.Kind], n.Together, n.Crops}
}

func loopOf(l *sheet.Loop) *loop {
	if l == nil {
		return nil
	}
	of := func(s *sheet.Looped) side {
		out := side{verdicts[s.Verdict], number(s.Zone.Margin), number(s.Low), number(s.High), number(s.Zone.Alike.EU), nil}
		if s.Sought {
			out.Longer = &s.Longer
		}
		return out
	}
	return &loop{l.Now == sheet.Tied, number(l.More), of(&l.Side[sheet.Untied]), of(&l.Side[sheet.Tied]), gainOf(l.Gain())}
}

func gainOf(g sheet.Gain) gain {
	out := gain{Worth: worths[g.Worth], Head: number(g.Head)}
	if g.Compared {
		out.Longer = &g.Plants
	}
	if g.Only >= 0 {
		out.Only = sides[g.Only]
	}
	return out
}
