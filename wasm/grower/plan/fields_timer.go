package plan

import (
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
)

func listed(p *Plan, _ int) bool { return p.Timer.Kind == StartTimes }

// Figures of the timer's defaults that growers go by are from memory (Raviv and
// Lieth, 2008; FAO Paper 217; University of Florida Bulletin 327).
var timerFields = []*Field{
	choice(1, "kind", "Kind of timer", []Option{
		StartTimes: {Code: "list", Label: "start times, with minutes for each"},
		OnAndOff:   {Code: "cycle", Label: "seconds on, minutes off, repeated"},
		Dial:       {Code: "dial", Label: "a dial with a pin per quarter hour"},
	}, StartTimes, "", func(p *Plan, _ int) *int { return &p.Timer.Kind }),
	whole(2, "programmes", "Start times a day", 1, 99, 12,
		"As many as it holds for one valve.", func(p *Plan, _ int) *int { return &p.Timer.Programmes }).when(listed),
	whole(3, "step", "Shortest step, in seconds", 1, 1800, 60,
		"60 when you can only set whole minutes.", func(p *Plan, _ int) *int { return &p.Timer.Step }).when(listed),
	whole(4, "channels", "Valves that it switches", 1, MaxZones, 1,
		"1 when it switches the pump and nothing else.", func(p *Plan, _ int) *int { return &p.Timer.Channels }).when(listed),
	choice(5, "window", "When it may run", []Option{
		ByClock: {Code: "clock", Label: "between two times that I set"},
		ByLight: {Code: "light", Label: "as long as it is light"},
	}, ByClock, "", func(p *Plan, _ int) *int { return &p.Timer.Window }).when(func(p *Plan, _ int) bool { return p.Timer.Kind == OnAndOff }),
	number(6, "shot", "One shot, of the medium that a plant has", unit.Share, 0.5, 20, 3,
		"Coco 3 to 6 %, stone wool 2 to 4 %.", func(p *Plan, _ int) *float64 { return &p.Timer.Shot }),
	number(7, "drain", "Share to drain", unit.Share, 0, 60, 20,
		"On a typical day 15 to 25 %.", func(p *Plan, _ int) *float64 { return &p.Timer.Drain }).guide("timer#drain"),
	number(8, "drain-hot", "Share to drain on a hot day", unit.Share, 0, 60, 30,
		"25 to 40 %; more where the water is salty.", func(p *Plan, _ int) *float64 { return &p.Timer.DrainHot }).must(func(p *Plan, _ int) *words.Remark {
		if t := &p.Timer; t.DrainHot < t.Drain {
			return words.About("{field} must be at least that of a typical day, {limit}.", unit.Text(unit.Share, p.Units, t.Drain))
		}
		return nil
	}),
	number(9, "drain-low", "Share to drain on a dull day, and while plants root in", unit.Share, 0, 60, 10,
		"0 to 10 %.", func(p *Plan, _ int) *float64 { return &p.Timer.DrainLow }).must(func(p *Plan, _ int) *words.Remark {
		if t := &p.Timer; t.DrainLow > t.Drain {
			return words.About("{field} must not exceed that of a typical day, {limit}.", unit.Text(unit.Share, p.Units, t.Drain))
		}
		return nil
	}),
	number(10, "first", "First shot after sunrise", unit.Hours, 0, 8, 1.5,
		"1 to 2 hours.", func(p *Plan, _ int) *float64 { return &p.Timer.First }),
	number(11, "last", "Last shot before sunset", unit.Hours, 0, 8, 2.5,
		"2 to 3 hours.", func(p *Plan, _ int) *float64 { return &p.Timer.Last }),
	number(12, "last-hot", "Last shot before sunset on a hot day", unit.Hours, 0, 8, 1.5,
		"1 to 2 hours.", func(p *Plan, _ int) *float64 { return &p.Timer.LastHot }).must(func(p *Plan, _ int) *words.Remark {
		if t := &p.Timer; t.LastHot > t.Last {
			return words.About("{field} must not exceed that of other days, {limit}.", unit.Text(unit.Hours, p.Units, t.Last))
		}
		return nil
	}),
	choice(13, "every", "A line of the card for each", []Option{
		Fortnight: {Code: "fortnight", Label: "fortnight"},
		Week:      {Code: "week", Label: "week"},
	}, Fortnight, "", func(p *Plan, _ int) *int { return &p.Timer.Every }),
	choice(14, "card", "How the card is made", []Option{
		ByHand: {Code: "by-hand", Label: "one length of shot a day, start times that stay"},
		Finer:  {Code: "finer", Label: "lengths that differ, start times by the sun"},
	}, ByHand, "By hand, only the number of shots and the minutes change.", func(p *Plan, _ int) *int { return &p.Timer.Card }).when(listed),
}
