package answer

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/climate"
	"evenrow/wasm/year/demand"
	"evenrow/wasm/year/shots"
)

// A line is what the timer is set to for some days of the year.
type line struct {
	From string   `json:"from"`
	Days int      `json:"lasts_days"`
	Set  []onADay `json:"set"`
}

type onADay struct {
	Sky     string    `json:"sky"`
	Given   number    `json:"given_m3"`
	Drained number    `json:"drained_m3"`
	Over    number    `json:"late_s"`
	Zones   []setting `json:"zones"`
}

type setting struct {
	Zone  int    `json:"zone"`
	Run   number `json:"needed_s"`
	Given number `json:"given_s"`
	Shots []shot `json:"shots"`
}

type shot struct {
	At  number `json:"after_midnight_s"`
	For number `json:"lasts_s"`
}

var skies [shots.Skies]string = [...]string{shots.Dull: "dull", shots.Typical: "typical", shots.Hot: "hot", shots.Record: "record-hot"}

func linesOf(c *shots.Card) []line {
	list := []line{}
	if c == nil {
		return list
	}
	for i := range c.Lines {
		l := &c.Lines[i]
		out := line{l.From.ISO(), l.Days, []onADay{}}
		for sky := range l.Sets {
			d := &l.Sets[sky]
			given, drained := d.Given()
			one := onADay{skies[sky], number(given), number(drained), number(d.Over), []setting{}}
			for k := range d.Zones {
				z := &d.Zones[k]
				set := setting{z.Zone, number(z.Run), number(z.Given), []shot{}}
				for _, s := range z.Shots {
					set.Shots = append(set.Shots, shot{number(s.At), number(s.For)})
				}
				one.Zones = append(one.Zones, set)
			}
			out.Set = append(out.Set, one)
		}
		list = append(list, out)
	}
	return list
}

// A thirst is what all plants take up on a day, by its kind.
type thirst struct {
	Day     string `json:"day"`
	Cool    number `json:"cool_m3"`
	Typical number `json:"typical_m3"`
	Hot     number `json:"hot_m3"`
	Record  number `json:"record_hot_m3"`
}

func thirstOf(d *demand.Demand) []thirst {
	list := []thirst{}
	if d == nil {
		return list
	}
	for at := d.From; at < d.To; at++ {
		list = append(list, dayOf(at, d.Total(at)))
	}
	return list
}

func dayOf(at day.Day, use [climate.Kinds]float64) thirst {
	return thirst{at.ISO(), number(use[climate.Cool]), number(use[climate.Typical]), number(use[climate.Hot]), number(use[climate.Record])}
}

// A most is the day of the year on which all plants together take up most, and
// the first day of the timer's line that holds it.
type most struct {
	thirst
	Line string `json:"timer_from,omitempty"`
}

func mostOf(s *sheet.Sheet) *most {
	if s.Demand == nil || len(s.Demand.Days) == 0 {
		return nil
	}
	on, use := s.Demand.Most()
	m := &most{thirst: dayOf(on, use)}
	if c := s.Shots; c != nil && len(c.Lines) > 0 {
		m.Line = c.Lines[c.Peak].From.ISO()
	}
	return m
}
