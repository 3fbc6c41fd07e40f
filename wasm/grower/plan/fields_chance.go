package plan

import "evenrow/wasm/ground/unit"

var chanceFields = []*Field{
	number(1, "blocked", "Emitters that are blocked", unit.Share, 0, 50, 0,
		"0 when all are new. Count some rows after a season.", func(p *Plan, _ int) *float64 { return &p.Chance.Blocked }),
}
