package answer

import (
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/chance"
	"evenrow/wasm/works/fault"
	"evenrow/wasm/works/startup"
)

// A start is the first minutes of a zone's shot, and what runs out after it.
type start struct {
	Zone     int      `json:"zone"`
	Holds    number   `json:"holds_m3"`
	Filled   number   `json:"filled_from_empty_s"` // null where it never is, or where that was left out
	Swell    number   `json:"pressure_up_when_full_s"`
	Rows     []filled `json:"rows"`
	Fewest   int      `json:"open_when_pressure_builds_slowly"`
	Opened   int      `json:"open_when_turned_on"`
	Held     int      `json:"open_when_all_were"`
	InTurn   int      `json:"open_when_rows_come_in_turn,omitempty"`
	Checked  bool     `json:"states_checked"`
	Flood    *flood   `json:"flushing_themselves,omitempty"`
	Drained  number   `json:"runs_out_m3"`
	Back     number   `json:"runs_back_m3"`
	Outlets  int      `json:"plants_that_get_it"`
	Refill   number   `json:"refill_s"`
	Prevents number   `json:"closing_head_to_prevent_it_m"`
	Siphon   bool     `json:"siphon"`
}

type filled struct {
	Row   int    `json:"row"`
	Start number `json:"start_s"`
	End   number `json:"end_s"`
}

type flood struct {
	Emitters int    `json:"emitters"`
	Stuck    int    `json:"stuck"`
	Wanted   number `json:"wanted_flow_m3_s"`
	Flow     number `json:"flow_m3_s"`
	Zones    int    `json:"zones_that_help"` // 0 when not found
}

func startsOf(s *startup.Startup) []start {
	list := []start{}
	if s == nil {
		return list
	}
	for i := range s.Zones {
		z := &s.Zones[i]
		d, st := &z.Drain, &z.States
		one := start{
			z.Zone, number(z.Holds), number(z.Filled), number(z.Swell), []filled{}, st.Few, st.Opened, st.Held, st.InTurn, st.Checked,
			nil, number(d.Volume), number(d.Back), d.Outlets, number(d.Refill), number(d.Prevents), d.Siphon,
		}
		for _, r := range z.Rows {
			one.Rows = append(one.Rows, filled{r.Row + 1, number(r.Start), number(r.End)})
		}
		if f := z.Flood; f != nil {
			one.Flood = &flood{f.Emitters, f.Stuck, number(f.Wanted), number(f.Total), f.Zones}
		}
		list = append(list, one)
	}
	return list
}

// A failing is one fault, with what gauges show without it and with it.
type failing struct {
	Kind    string   `json:"kind"`
	Zone    int      `json:"zone"`
	Row     int      `json:"row,omitempty"`
	Place   *place   `json:"place,omitempty"`
	Head    *number  `json:"fails_at_m,omitempty"`     // head lost at which the first emitter is not served; left out for wear and for what is sudden
	Share   *number  `json:"fails_at_share,omitempty"` // the same of wear
	Never   bool     `json:"never_fails,omitempty"`
	Already bool     `json:"fails_already,omitempty"`
	Cleaned string   `json:"cleaned,omitempty"` // of dirt: how the loss at which the filter is to be cleaned goes with it
	By      string   `json:"told_by,omitempty"` // of what is sudden
	Lost    number   `json:"lost_m3_s"`
	Cut     int      `json:"plants_cut_off"`
	Dry     int      `json:"other_plants_dry"`
	Below   int      `json:"other_plants_below_range"`
	Above   int      `json:"other_plants_above_range"`
	Was     readings `json:"without"`
	Now     readings `json:"with"`
}

type readings struct {
	Before number `json:"before_filter_m"`
	After  number `json:"after_filter_m"`
	Header number `json:"at_header_m"`
	Still  number `json:"before_filter_at_rest_m"`
	Flow   number `json:"flow_m3_s"`
}

func readingsOf(r fault.Reading) readings {
	return readings{number(r.Before), number(r.After), number(r.Header), number(r.Still), number(r.Flow)}
}

var faults [fault.Kinds]string = [...]string{
	fault.Dirt: "dirty-filter", fault.Wear: "wear", fault.Sinking: "sinking-tank", fault.Emitter: "blocked-emitter",
	fault.Row: "blocked-row", fault.Hole: "emitter-out", fault.End: "open-end",
}

func faultsOf(s *sheet.Sheet) []failing {
	list := []failing{}
	if s.Faults == nil {
		return list
	}
	for i := range s.Faults.Slow {
		f := &s.Faults.Slow[i]
		one := failing{Kind: faults[f.Kind], Zone: f.Zone, Place: placeOf(s, f.Plant),
			Never: f.Never, Already: f.Already, Was: readingsOf(f.Was), Now: readingsOf(f.Now)}
		if f.Kind == fault.Dirt {
			one.Cleaned = cleanings[s.Faults.Clean]
		}
		amount := number(f.Amount)
		if f.Kind == fault.Wear {
			one.Share = &amount
		} else {
			one.Head = &amount
		}
		list = append(list, one)
	}
	for i := range s.Faults.Sudden {
		f := &s.Faults.Sudden[i]
		list = append(list, failing{Kind: faults[f.Kind], Zone: f.Zone, Row: f.Row + 1, Place: placeOf(s, f.Plant),
			By: signs[f.Sign], Lost: number(f.Lost), Cut: f.Cut, Dry: f.Dry, Below: f.Below, Above: f.Above, Was: readingsOf(f.Was), Now: readingsOf(f.Now)})
	}
	return list
}

// An odds is what the draws of one zone say.
type odds struct {
	Zone    int    `json:"zone"`
	Draws   int    `json:"draws"`
	Enough  number `json:"enough_share"` // of the mean
	Short   number `json:"plants_short_share"`
	AllWell number `json:"draws_without_one_share"`
	CV      number `json:"cv"`
	EU      number `json:"eu"`
	Formula number `json:"eu_by_formula"`
	CU      number `json:"cu"`
	Solved  int    `json:"draws_solved_in_full"`
	Off     number `json:"greatest_difference_share"`
	Singled bool   `json:"weakest_is_singled_out"` // it is short more often than luck explains
	Weakest *place `json:"weakest"`
	Remedy  string `json:"remedy"`
}

func oddsOf(s *sheet.Sheet) []odds {
	list := []odds{}
	for i := range s.Chance {
		z := &s.Chance[i]
		list = append(list, odds{z.Number, z.Draws, chance.Enough, number(z.Short), number(z.None), number(z.CV), number(z.EU), number(z.Design), number(z.CU), z.Solved, number(z.Off),
			z.Singled(), placeOf(s, z.Weakest), remedies[z.Remedy(s.Plan.Chance.Blocked)]})
	}
	return list
}
