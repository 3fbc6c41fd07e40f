package view

import (
	"html"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/care"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/steps"
	"evenrow/wasm/year/ical"
	"evenrow/wasm/year/season"
)

// A thing is something that is done, as it is drawn for a plan, with what it declares.
type thing struct {
	name     string
	p        *plan.Plan
	declared care.Set
	shown    string // text, without what is said against hazards
	careful  string // all that is in sight of it, as text
	boxes    string // names of whole cautions that stand in it, with spaces around
}

var (
	ofHazards = regexp.MustCompile(`<p class="hazard">(.*?)</p>`)
	boxNames  = regexp.MustCompile(`data-caution="([a-z-]+)"`)
)

func asText(h string) string {
	return strings.ReplaceAll(html.UnescapeString(anyTag.ReplaceAllString(h, " ")), "\u00a0", " ")
}

// things are all steps, tasks, cards and groups of inputs of a plan, drawn anew.
func things(name string, s *sheet.Sheet) []thing {
	p := s.Plan
	var all []thing
	draw := func(section *Section) string {
		sc := scene.New(s, nil)
		section.content(sc, false)
		return sc.String()
	}
	add := func(what string, declared care.Set, markup, sight string) {
		boxes := " "
		for _, m := range boxNames.FindAllStringSubmatch(sight, -1) {
			boxes += m[1] + " "
		}
		all = append(all, thing{name + ": " + what, p, declared, asText(ofHazards.ReplaceAllString(markup, " ")), asText(sight), boxes})
	}
	for j := range Jobs {
		for g := range Jobs[j].Groups {
			group := &Jobs[j].Groups[g]
			if group.Applies(p) {
				_, drawn, _ := strings.Cut(form.Ask(p, plan.DraftOf(p), nil, Jobs[j].Groups[g:g+1], form.Place{Job: Jobs[j].ID, Group: group.ID}), `id="g-`)
				add("group "+group.ID, group.Hazards, "", drawn)
			}
		}
		for k := range Jobs[j].Sections {
			section := &Jobs[j].Sections[k]
			if section.draw == nil {
				continue
			}
			drawn := draw(section)
			switch section.ID {
			case "steps":
				parts := strings.Split(drawn, `<div class="step">`)[1:]
				for i, step := range steps.Of(s.Layout, s.Parts) {
					add("step "+steps.Keys[step.Kind], step.Hazards, parts[i], parts[i])
				}
			case "tasks":
				var told [season.TaskKinds]bool
				for i := range s.Season.Tasks {
					t := &s.Season.Tasks[i]
					if told[t.Kind] {
						continue
					}
					told[t.Kind] = true
					add("task "+t.Kind.String()+" in the table", t.Kind.Hazards(), "<p>"+t.Kind.String()+" "+t.Note()+"</p>", folds.ReplaceAllString(drawn, " "))
				}
			case "week":
				// drawn for days of its own below
			default:
				if strings.TrimSpace(asText(drawn)) != "" {
					add("card "+section.ID, section.Hazards, drawn, drawn)
				}
			}
		}
	}
	// The week of each task, and the calendar file.
	for i := range s.Season.Tasks {
		t := &s.Season.Tasks[i]
		sc := scene.New(s, nil)
		s.Now.Day = t.Day
		JobNamed("grow").Sections[0].content(sc, false)
		add("task "+t.Kind.String()+" in its week", t.Kind.Hazards(), "", sc.String())
	}
	file := strings.ReplaceAll(strings.ReplaceAll(ical.Write(s.Season.Calendar(p)), "\r\n ", ""), `\,`, ",")
	for i, event := range strings.Split(file, "BEGIN:VEVENT")[1:] {
		add("task in the file", s.Season.Tasks[i].Kind.Hazards(), "", strings.ReplaceAll(event, `\;`, ";"))
	}
	return all
}

// unseen are the hazards that are declared, can hurt in the plan, and of which nothing of the
// whole catalogue is in sight.
func unseen(all []thing, catalogue []*care.Caution) (missing []string) {
	for _, one := range all {
		for h := range care.Hazard(care.Hazards) {
			if !(one.declared & care.In(one.p)).Has(h) {
				continue
			}
			seen := false
			for _, c := range catalogue {
				seen = seen || c.Hazards.Has(h) && c.Applies(one.p) && (strings.Contains(one.careful, words.Say(c.Short)) || strings.Contains(one.boxes, " "+c.Name+" "))
			}
			if !seen {
				missing = append(missing, one.name+" declares "+words.Say(care.Names[h])+", and no caution is in sight")
			}
		}
	}
	return missing
}

// What can hurt in this trade, as it is gathered apart: the hazard, what is usually done
// against it, and which caution says so in which words. A line without a caution is a
// hazard that nobody is told of.
var usual = []struct {
	hazard string
	said   []string // name of a caution, and what its text must match
}{
	{"electric shock: ground-fault protection", []string{"electricity", `ground-fault protection .{0,60}30 mA`}},
	{"electric shock: unplug first", []string{"electricity", `Unplug the pump, do not just switch it off`}},
	{"electric shock: drip loop", []string{"electricity", `loop below the outlet`}},
	{"electric shock: cords for outdoors", []string{"cords", `cord is made for outdoors`}},
	{"electric shock: a qualified person", []string{"cords", `licensed electrician`}},
	{"electric shock: low voltage of valves", []string{"wires", `safety transformer`}},
	{"acids: goggles, face shield, gloves", []string{"chemicals", `goggles and gloves.{0,40}face shield`}},
	{"acids: acid into water", []string{"chemicals", `Add acid to water, never water to acid`}},
	{"acids: moving air, water within reach", []string{"chemicals", `moving air.{0,40}running water within reach`}},
	{"bases and bleach: the same care, never with acid or ammonium salts", []string{"chemicals", `Never mix bleach with acid.*Bases.*from acid and from ammonium salts`}},
	{"hot air, hot water: gloves", []string{"heat", `Water at 60 °C.*gloves.*hot-air gun`}},
	{"slips: leaks, grit or mat, tubes off paths, dry floor before current", []string{"slips", `Mend leaks.*off the paths.*grit or a mat.*Dry the floor before`}},
	{"drowning: lids, locks, empty buckets, fence", []string{"drowning", `lid that locks.*empty buckets.*fence`}},
	{"confined space", []string{"drowning", `Never climb into a tank.*not even to help`}},
	{"oxidisers: from heat, clothing, fuel; cool, dry, off concrete, labelled, locked; much water", []string{"salts", `burn harder.*labels.*cool and dry, off bare concrete and under lock.*heat, fuel, oil, clothing.*pesticides.*much water`}},
	{"cross-connection: air gap or device, no hose in the tank", []string{"backflow", `air gap.*no hose lying in it.*approved backflow device`}},
	{"coco and mould dust: wet, mask, moving air, wash hands", []string{"dust", `mould.*Wet the medium.*mask.*doors open.*Wash your hands`}},
	{"mineral wool: sleeves, gloves, goggles, wash clothes apart", []string{"dust", `irritate skin, eyes and lungs.*gloves, sleeves, goggles.*clothes apart`}},
	{"lifting: 23 kg, less if low, far, twisted, often; water weighs", []string{"lifting", `litre of water weighs 1 kg.*23 kg.*less if you bend, twist or repeat`}},
	{"pressurised lines: relieve, below the rating when warm, goggles", []string{"pressure", `stop the water.*no pressure is left.*goggles.*below the rating.*warm plastic`}},
	{"drain: off wells and streams, used on crops, local rules", []string{"drain", `out of wells, streams.*local rules.*other plants`}},
	{"stored water: covered against algae and mosquitoes", []string{"stored-water", `algae.*mosquitoes.*close it, keep it dark`}},
	{"stored water: Legionella in warm water and sprays", []string{"stored-water", `Legionella.*spray`}},
	{"eating: labels, children and animals kept away", []string{"feed", `Label every tank.*children and animals away`}},
	{"a tank that tips", []string{"raised", `it tips.*made for that weight`}},
	{"knives and punches", []string{"blades", `Cut away from your body`}},
	{"heat illness", []string{"tunnel", `heat illness can kill`}},
}

// untold are the lines above that no caution of a catalogue says.
func untold(t *testing.T, catalogue []*care.Caution) (missing []string) {
	t.Helper()
	for _, u := range usual {
		told := false
		for _, c := range catalogue {
			if c.Name == u.said[0] {
				text, err := os.ReadFile("../../../content/cautions/" + c.Name + ".md")
				if err != nil {
					t.Fatal(err)
				}
				told = regexp.MustCompile(`(?s)` + u.said[1]).Match(text)
			}
		}
		if !told {
			missing = append(missing, u.hazard+" is in no caution")
		}
	}
	return missing
}

// What is declared has a caution in sight wherever it is drawn, and what usually hurts in
// this trade is in one.
func TestWhatIsDeclaredHasItsCaution(t *testing.T) {
	met := care.Set(0)
	for name, s := range sheets() {
		all := things(name, s)
		if len(all) < 40 {
			t.Errorf("%s: %d things are looked at", name, len(all))
		}
		for _, missing := range unseen(all, care.Catalogue) {
			t.Error(missing)
		}
		for _, one := range all {
			met |= one.declared & care.In(one.p)
		}
	}
	if met != 1<<care.Hazards-1 {
		t.Errorf("of all hazards the plans here declare %b", met)
	}
	for _, missing := range untold(t, care.Catalogue) {
		t.Error(missing)
	}
}

// Each caution is needed: without it, something that is declared stands without one.
func TestNoCautionCanBeTakenOut(t *testing.T) {
	whole := care.Catalogue
	defer func() { care.Catalogue = whole }()
	every := sheets()
	for i, c := range whole {
		care.Catalogue = slices.Delete(slices.Clone(whole), i, i+1)
		missing := 0
		for _, name := range []string{"millrace", "balcony", "a tap"} {
			missing += len(unseen(things(name, every[name]), whole))
		}
		if missing == 0 {
			t.Errorf("without %s nothing stands without a caution", c.Name)
		}
	}
	// And what usually hurts is told by each but those that only say it elsewhere too.
	for i, c := range whole {
		if len(untold(t, slices.Delete(slices.Clone(whole), i, i+1))) == 0 {
			t.Errorf("%s says nothing of what usually hurts", c.Name)
		}
	}
}

// bought are the cards that name what there is to buy: nothing is done by them.
var bought = []string{"card parts", "card asks", "card counts", "card chain", "card spots"}

// Words that only stand where something can hurt.
var marks = [care.Hazards]string{
	care.Current:   `plug (the pump|it) in|unplug|pull the plug|its plug|\bshock|electric`,
	care.Timer:     ``, // a timer's own power is told of in its group alone
	care.Wiring:    `\bthe cord\b|outlet stands|extension cord|fixed wiring`,
	care.Pressure:  `no joint drips|gauges stand still|close all ends|open the (tap|valve)|open every end|touch an end|open it and look|joint anew`,
	care.Heat:      `hot water|hot-air|hose clamp|heat gun|\bscald`,
	care.Blades:    `\bcut (its|each|it|the|them|where|or open)\b|cutter|knife|with the punch|\bdrill|clip the stem|scissors`,
	care.Chemicals: `\bacid|bleach|mix the feed|\bEC and pH|disinfect (it|the|every)`,
	care.Salts:     `mix the feed|nitrate|fertili[sz]er|strong doses`,
	care.Weight:    `\blift (it|them|the)\b|\bheavy\b|carries it full|slab is even and full|take the plants out`,
	care.Slips:     `runs? out of every|run(s)? off|slippery|let the water run out|slab is even and full|catch-can|cups under`,
	care.Drain:     `drain is to leave|drain slits|runs? off|run it until|on a hot day. It is feed`,
	care.Height:    `ladder|climb (a|the|only|on)\b|on ground that carries it full`,
	care.InTank:    `tank with a lid|wash the tank`,
	care.Drowning:  `tank with a lid|\bdrain can\b|open every end and let it drain`,
	care.Dust:      `loose medium|\bdust|sweep up|seed to a plug|perlite`,
	care.Backflow:  `(into|out of) (the )?drinking water|backflow device stands|fill the tank with plain|fill the system`,
	care.Stored:    `algae|mosquito|\bgerms|tank with a lid|drain the system and store`,
	care.Drinking:  `\bEC and pH|soak the blocks in feed|\bdrain can\b`,
	care.Swelter:   `side shoots|heat illness`,
}

func TestWordsOfAHazardAreDeclared(t *testing.T) {
	said := care.Set(0)
	for name, s := range sheets() {
		for _, one := range things(name, s) {
			if slices.ContainsFunc(bought, func(card string) bool { return strings.HasSuffix(one.name, card) }) {
				continue
			}
			for h, mark := range marks {
				if mark == "" {
					continue
				}
				found := regexp.MustCompile(`(?i)(` + mark + `)`).FindString(one.shown)
				if found == "" || !care.In(one.p).Has(care.Hazard(h)) {
					continue
				}
				said |= 1 << h
				if !one.declared.Has(care.Hazard(h)) {
					t.Errorf("%s says %q, and does not declare %s", one.name, found, words.Say(care.Names[h]))
				}
			}
		}
	}
	for h, mark := range marks {
		if mark != "" && !said.Has(care.Hazard(h)) {
			t.Errorf("nothing says a word of %s", words.Say(care.Names[h]))
		}
	}
}

// A guide is what an author wrote: what it declares, the cautions that stand in it, and the rest.
type aGuide struct {
	name, declared, text string
	cautions             []string
}

func guides(t *testing.T) (all []aGuide) {
	t.Helper()
	names, err := filepath.Glob("../../../content/guides/*.md")
	if err != nil || len(names) < 10 {
		t.Fatalf("%d guides, %v", len(names), err)
	}
	for _, name := range names {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		head, body, _ := strings.Cut(strings.TrimPrefix(string(b), "---"), "\n---\n")
		g := aGuide{name: filepath.Base(name)}
		if m := regexp.MustCompile(`(?m)^hazards: (.*)$`).FindStringSubmatch(head); m != nil {
			g.declared = ", " + m[1] + ", "
		}
		for _, m := range regexp.MustCompile(`(?m)^> \[!CAUTION\] ([a-z-]+)$`).FindAllStringSubmatch(body, -1) {
			g.cautions = append(g.cautions, m[1])
		}
		g.text = strings.Join(strings.Fields(body), " ")
		all = append(all, g)
	}
	return all
}

// unsaid are the hazards that a guide declares without a caution of the catalogue in it, and
// the cautions in it that no row answers for.
func unsaid(all []aGuide, catalogue []*care.Caution) (missing []string) {
	for _, g := range all {
		answered := care.Set(0)
		for _, name := range g.cautions {
			i := slices.IndexFunc(catalogue, func(c *care.Caution) bool { return c.Name == name })
			if i < 0 {
				missing = append(missing, g.name+" has the caution "+name+", which is in no catalogue")
				continue
			}
			answered |= catalogue[i].Hazards
		}
		rest := g.declared
		for h, name := range care.Names {
			declared := strings.Contains(g.declared, ", "+string(name)+", ")
			rest = strings.Replace(rest, string(name)+", ", "", 1)
			if declared != answered.Has(care.Hazard(h)) {
				missing = append(missing, g.name+" and "+string(name)+": it is declared, or its caution stands there, and not both")
			}
		}
		if rest != "" && rest != ", " {
			missing = append(missing, g.name+" declares what is no hazard: "+rest)
		}
	}
	return missing
}

// Words of a guide that tell to do what can hurt. A guide explains much besides: these are
// fewer than those of a step.
var guideMarks = map[care.Hazard]string{
	care.Current:   `unplug the pump|plug (the pump|it) in`,
	care.Pressure:  `open the (filter|end of one row)|loosen a`,
	care.Heat:      `hot water`,
	care.Blades:    `tubing cutter|\bthe punch\b|\bcut the (slits?|drain)`,
	care.Chemicals: `bleach|(add|pour|mix|with|never) acid|acidified`,
	care.Weight:    `lay the slabs dry|raised tank`,
	care.InTank:    `wash the tank`,
	care.Dust:      `sow one seed|wet the (coco|medium) before`,
	care.Height:    `\btips\b`,
	care.Swelter:   `heat illness`,
}

func TestGuidesDeclareTheirHazards(t *testing.T) {
	all := guides(t)
	for _, missing := range unsaid(all, care.Catalogue) {
		t.Error(missing)
	}
	for h, mark := range guideMarks {
		said := false
		for _, g := range all {
			found := regexp.MustCompile(`(?i)(` + mark + `)`).FindString(g.text)
			said = said || found != ""
			if found != "" && !strings.Contains(g.declared, ", "+string(care.Names[h])+", ") {
				t.Errorf("%s says %q, and does not declare %s", g.name, found, care.Names[h])
			}
		}
		if !said {
			t.Errorf("no guide says a word of %s", care.Names[h])
		}
	}
	for i, c := range care.Catalogue {
		used := slices.ContainsFunc(all, func(g aGuide) bool { return slices.Contains(g.cautions, c.Name) })
		if used && len(unsaid(all, slices.Delete(slices.Clone(care.Catalogue), i, i+1))) == 0 {
			t.Errorf("without %s no guide lacks a caution", c.Name)
		}
	}
}
