package answer

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// rests is what the answer rests on: values that are assumed, each moved alone
// through what it may really be.
type rests struct {
	Turns    []turning `json:"would_turn_it"` // the most delicate first
	Steady   int       `json:"values_that_cannot"`
	Untested int       `json:"values_not_tried"`
}

type turning struct {
	Field   string   `json:"field"`   // its path in the plan file, without a record's number
	Records []int    `json:"records"` // that are moved together
	Came    string   `json:"came"`
	From    number   `json:"from"`
	Low     number   `json:"may_be_from"`
	High    number   `json:"may_be_to"`
	Below   *turnEnd `json:"below"` // null where nothing below turns it
	Beyond  *turnEnd `json:"beyond"`
	Margin  number   `json:"delicate_share"` // of the way from what is assumed to the end of its range
	Unit    string   `json:"unit,omitempty"` // of all these numbers; none for counts and shares
}

type turnEnd struct {
	Still   number `json:"still_with"`
	At      number `json:"turns_at"`
	Verdict string `json:"verdict"`
}

// restsOf is null where it was left out.
func restsOf(s *sheet.Sheet) *rests {
	if s.Rest == nil || s.Left[sheet.Turning] {
		return nil
	}
	r := &rests{Turns: []turning{}, Steady: s.Rest.Steady, Untested: s.Rest.Untested}
	for i := range s.Rest.Turns {
		t := &s.Rest.Turns[i]
		told := turning{
			Field: t.Field.PathOfAll(), Came: s.Plan.Origin(t.Field, t.Records[0]).Code(), From: number(t.From), Low: number(t.Low), High: number(t.High),
			Margin: number(t.Margin), Below: turnEndOf(&t.Ends[0]), Beyond: turnEndOf(&t.Ends[1]),
		}
		for _, k := range t.Records {
			told.Records = append(told.Records, k+1)
		}
		if t.Field.Type == plan.Number {
			told.Unit = unit.Inner(t.Field.Kind)
		}
		r.Turns = append(r.Turns, told)
	}
	return r
}

func turnEndOf(e *sheet.TurnEnd) *turnEnd {
	if !e.Turns {
		return nil
	}
	return &turnEnd{number(e.Still), number(e.At), verdicts[e.To]}
}
