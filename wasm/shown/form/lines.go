package form

import (
	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/wording"
)

// lineOf is what a closed group holds, in a few words, and whether nobody has said
// anything of it: "8 m, up 0.4 m, assumed".
func lineOf(p *plan.Plan, g *Group) string {
	is := lines[g.Sections[0]]
	if is == nil {
		return "" // TestEveryGroupHasItsLine names it
	}
	if assumed(p, g) {
		return words.Say("{what}, assumed", is(p))
	}
	return is(p)
}

// assumed reports whether all values of a group that apply are.
func assumed(p *plan.Plan, g *Group) bool {
	some := false
	for _, name := range g.Sections {
		s := plan.SectionNamed(name)
		for i := range s.Records(p) {
			for _, f := range s.Fields() {
				switch {
				case byButton(s):
					return false // it stands there because somebody asked for it
				case !f.Applies(p, i) || f.Type == plan.Text || f.Section == "":
				case p.Origin(f, i) != plan.Assumed:
					return false
				default:
					some = true
				}
			}
		}
	}
	return some
}

// lines are what stands beside the name of a group, by its first section.
var lines = map[string]func(*plan.Plan) string{
	"": func(p *plan.Plan) string {
		if p.Name == "" {
			return words.Say("{long} by {wide}", amount(p, unit.Length, p.Place.Length), amount(p, unit.Length, p.Place.Width))
		}
		return words.Say("{name}, {long} by {wide}", p.Name, amount(p, unit.Length, p.Place.Length), amount(p, unit.Length, p.Place.Width))
	},
	"supply": func(p *plan.Plan) string { return chosen(p, "supply", "kind") },
	"rows": func(p *plan.Plan) string {
		plants := 0
		var crops []string
		had := map[int]bool{}
		for i := range p.Rows {
			r := &p.Rows[i]
			plants += r.Plants
			if listed(r.Crop) && !had[r.Crop] {
				had[r.Crop] = true
				crops = append(crops, p.CropName(r.Crop))
			}
		}
		return words.Say("{rows} {rows|row|rows}, {n} {n|plant|plants}: {crops}", words.N(len(p.Rows)), words.N(plants), words.List(crops...))
	},
	"limits": func(p *plan.Plan) string {
		return words.Say("{head} to spare, {share} even, {speed}", amount(p, unit.Head, p.Limits.Reserve), amount(p, unit.Share, p.Limits.Evenness), amount(p, unit.Speed, p.Limits.Speed))
	},
	"prices": func(p *plan.Plan) string {
		n, least, most := 0, 0.0, 0.0
		for i := range p.Prices.Tubes {
			if v := p.Prices.Tubes[i]; p.Had(i) {
				if n == 0 || v < least {
					least = v
				}
				n, most = n+1, max(most, v)
			}
		}
		if n == 0 {
			return words.Say("no tubing to be had")
		}
		return words.Say("{n} {n|size|sizes} of tubing, {least} to {most}", words.N(n), wording.Units{Sys: p.Units}.Bare(unit.Price, least), amount(p, unit.Price, most))
	},
	"runs": func(p *plan.Plan) string {
		long, up := 0.0, 0.0
		for i := range p.Runs {
			long += p.Runs[i].Length
			up += p.Runs[i].Rise
		}
		switch {
		case up > 0:
			return words.Say("{length}, up {rise}", amount(p, unit.Length, long), amount(p, unit.Length, up))
		case up < 0:
			return words.Say("{length}, down {drop}", amount(p, unit.Length, long), amount(p, unit.Length, -up))
		}
		return words.Say("{length}, level", amount(p, unit.Length, long))
	},
	"filter": func(p *plan.Plan) string {
		if p.Filter.Present == 0 {
			return words.Say("none")
		}
		return amount(p, unit.Opening, p.Filter.Opening)
	},
	"header": func(p *plan.Plan) string { return chosen(p, "header", "layout") },
	"emitters": func(p *plan.Plan) string {
		e := &p.Emitters[0]
		return words.Say("{flow}, {kind}", amount(p, unit.EmitterFlow, e.Flow), chosen(p, "emitters", "kind"))
	},
	"season": func(p *plan.Plan) string {
		if p.Season.Frost == 0 {
			return words.Say("no frost")
		}
		return words.Say("frost until {last} and from {first}", day.Day(p.Season.LastFrost).Short(), day.Day(p.Season.FirstFrost).Short())
	},
	"plantings": func(p *plan.Plan) string {
		if len(p.Plantings) == 0 {
			return words.Say("each crop once")
		}
		return words.Say("{n} {n|planting|plantings}", words.N(len(p.Plantings)))
	},
	"crops": func(p *plan.Plan) string {
		if len(p.Crops) == 0 {
			return words.Say("none")
		}
		return words.Say("{n} {n|crop|crops}", words.N(len(p.Crops)))
	},
	"bought": func(p *plan.Plan) string {
		if len(p.Bought) == 0 {
			return words.Say("nothing said yet")
		}
		return words.Say("{n} {n|part|parts}", words.N(len(p.Bought)))
	},
	"sky":   func(p *plan.Plan) string { return chosen(p, "sky", "climate") },
	"timer": func(p *plan.Plan) string { return chosen(p, "timer", "kind") },
	"ends": func(p *plan.Plan) string {
		_, known := plan.EndOf(p.Ends.Out[plan.AtOutlet])
		switch {
		case len(p.Fittings) > 0:
			return words.Say("{n} {n|fitting|fittings} of your own", words.N(len(p.Fittings)))
		case known:
			return chosen(p, "ends", "outlet-out")
		}
		return words.Say("the usual ones")
	},
	"chance": func(p *plan.Plan) string {
		if p.Chance.Blocked == 0 {
			return words.Say("no emitter blocked")
		}
		return words.Say("{share} of emitters blocked", amount(p, unit.Share, p.Chance.Blocked))
	},
}

func amount(p *plan.Plan, k unit.Kind, v float64) string {
	return wording.Units{Sys: p.Units}.Amount(k, v)
}

// chosen is what a choice says, of the first record of a list.
func chosen(p *plan.Plan, section, name string) string {
	f := plan.FieldNamed(section, name)
	if v := int(f.Value(p, 0)); v >= 0 && v < len(f.Options) {
		return f.Options[v].Says()
	}
	return ""
}
