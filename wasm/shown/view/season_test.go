package view

import (
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/grow"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/year/season"
)

func TestSeasonInWords(t *testing.T) {
	at := func(change func(p *plan.Plan)) *sheet.Sheet {
		p := plan.Default()
		change(p)
		if errs := p.Check(); len(errs) > 0 {
			t.Fatal(errs)
		}
		s := sheet.Answer(p)
		s.Explore(sheet.Season)
		return s
	}
	same := func(*plan.Plan) {}
	lettuce := func(out day.Day) func(p *plan.Plan) {
		return func(p *plan.Plan) {
			p.Plantings = []plan.Planting{{Crop: 11, From: 4, Mode: plan.FromPlanting + 1, Date: int(out), Times: 2, Every: 40}}
		}
	}
	for _, tt := range []struct {
		s        *sheet.Sheet
		fragment string
		want     []string
	}{
		{at(same), "season", []string{"It fits together. Sow the first seed, sweet pepper, on 4 April 2027.", "a week before 15 May 2027", "first harvest is cucumber, about 19 June 2027", "it ends after 5 weeks of harvest, so that the system is drained two weeks before the frost of 8 October 2027. In warmth it would go on for 15 weeks more.", "rows 1 and 2, 60 plants", "<td>20 April 2027</td>", ">first frost</text>", ">Aug</text>"}},
		{at(func(p *plan.Plan) { p.Season.After = -2; p.Season.Seedbed = 8 }), "season", []string{"5 things do not fit.", "seed does not come up at 8\u00a0°C. Keep the seedbed at 27\u00a0°C to 32\u00a0°C", "planted out on 10 May 2027, and the last frost comes 2 days later"}},
		{at(lettuce(day.Of(2027, 5, 1))), "season", []string{"Row 4 is not free for cucumber on 15 May 2027: lettuce 1 stands there until 5 June 2027. Move one of them by 21 days"}},
		{at(func(p *plan.Plan) { p.Season.Places = 90; p.Season.Start += 70 }), "season", []string{"120 blocks stand at the same time, and you have places for 90. Make room for 30 more", "The system is not ready"}},
		{at(func(p *plan.Plan) { p.Season.Shelter = plan.OpenAir; p.Season.Seedbed = 44 }), "season", []string{"in the open 3 days after the last frost", "were not tested at 44"}},
		{at(func(p *plan.Plan) {
			p.Plantings = []plan.Planting{{Crop: 2, From: 50, Mode: plan.FromPlanting + 1, Date: int(day.Of(2027, 9, 25)), Times: 1, Every: 1}, {Crop: 2, From: 4, Mode: plan.FromPlanting + 1, Date: int(day.Of(2027, 9, 25)), Times: 1, Every: 1}}
		}), "season", []string{"Cucumber 1 stands in no row", "Cucumber 2: the frost of 8 October 2027 kills it before the first harvest, which would be on 30 October 2027. Sow it 38 to 135 days earlier, or heat. Tasks and water end on 8 October 2027."}},
		{at(same), "tasks", []string{"<th scope=\"row\">3 May 2027</th><td><strong>Sat 8 May</strong> Fill the system", "<strong>Sat 15 May</strong> Plant out: sweet pepper, 60 plants; tomato, 30 plants; cucumber, 30 plants", "Every week", "Sat 24 April to 7 May", "and every 28 days until 4 September", "22 May to 18 September 2027</strong> Tie up: sweet pepper; tomato <small>Beware: blades, hot tunnel.</small><br>", "Cups under emitters"}},
		{at(same), "crops", []string{"is the best start for every crop", "<small>The medium holds water in reserve", "<td>best", "FAO Irrigation and Drainage Paper 56", "common practice, no source", "from memory", "Days until seedlings are up at 10\u00a0°C</th><td class=\"n\">none"}},
		{at(lettuce(day.Of(2027, 4, 1))), "crops", []string{"another method is the usual start for: lettuce"}},
		{at(func(p *plan.Plan) {
			plan.SectionNamed("crops").Resize(p, 1)
			plan.SectionNamed("crops").SetDefaults(p, 0)
			p.Crops[0].Name, p.Crops[0].Traits[1] = "physalis <b>", 1.5
			p.Rows[0].Crop = 15
		}), "crops", []string{"Physalis &lt;b&gt;", "1.5\u00a0/m²</td><td>yours"}},
		{&sheet.Sheet{Plan: plan.Default()}, "season", []string{"nothing to sow yet"}},
		{&sheet.Sheet{Plan: plan.Default()}, "tasks", []string{"nothing to do yet"}},
	} {
		got := said(t, tt.s, tt.fragment)
		for _, want := range tt.want {
			if !strings.Contains(got, want) {
				t.Errorf("not said: %s\nin %.900s", want, got)
			}
		}
	}
}

// Whatever season is asked for, the fragments are whole and say numbers only:
// every way to date plantings, empty and full lists, both systems of units.
func TestAnySeasonIsDrawn(t *testing.T) {
	wrong := regexp.MustCompile(`NaN|Inf|%!|e\+\d|-1000|[ ,>]1 (days|weeks|plants)\b`)
	r := rand.New(rand.NewPCG(4, 10))
	taken := 0
	for range 50 {
		p := plan.Default()
		p.Units = unit.System(r.IntN(unit.Systems))
		plan.SectionNamed("rows").Resize(p, 1+r.IntN(plan.MaxRows))
		for i := range p.Rows {
			p.Rows[i].Crop = r.IntN(len(catalogue.Crops))
		}
		s := &p.Season
		s.Mode, s.Shelter = r.IntN(4), r.IntN(3)
		s.LastFrost += r.IntN(2000) - 1000
		s.FirstFrost = s.LastFrost + 1 + r.IntN(365)
		s.Date = s.LastFrost + r.IntN(800) - 400
		s.After = r.IntN(241) - 120
		s.Seedbed = 1 + 44*r.Float64()
		s.Places, s.Flush, s.Treat = r.IntN(90), r.IntN(366), r.IntN(366)
		plan.SectionNamed("plantings").Resize(p, r.IntN(3)*r.IntN(plan.MaxPlantings/2+1))
		for i := range p.Plantings {
			p.Plantings[i] = plan.Planting{Crop: r.IntN(len(catalogue.Crops)), From: r.IntN(plan.MaxRows + 1), Mode: r.IntN(5), Date: s.Date, Times: 1 + r.IntN(plan.MaxTimes), Every: 1 + r.IntN(365)}
		}
		plan.SectionNamed("crops").Resize(p, r.IntN(3))
		for i := range p.Crops {
			plan.SectionNamed("crops").SetDefaults(p, i)
			p.Crops[i].Of = r.IntN(len(catalogue.Crops))
			p.Crops[i].Name = `"<b> & é`
			p.Crops[i].Traits[catalogue.Wait] = 1
		}
		if errs := p.Check(); len(errs) > 0 {
			continue
		}
		taken++
		sc := scene.New(&sheet.Sheet{Plan: p, Season: season.Of(p)}, nil)
		for _, f := range []block.Fragment{fragmentOf("season", grow.Season, sc), fragmentOf("crops", grow.Crops, sc), fragmentOf("tasks", grow.Tasks, sc)} {
			whole(t, f.ID, f.HTML)
			if bad := wrong.FindString(f.HTML); bad != "" {
				t.Fatalf("%s prints %q", f.ID, bad)
			}
		}
	}
	if taken < 20 {
		t.Errorf("only %d of the seasons are taken by the form", taken)
	}
}

// A crop of the grower's own is chosen by its name.
func TestOwnCropsAreChosenByName(t *testing.T) {
	p := plan.Default()
	plan.SectionNamed("crops").Resize(p, 1)
	plan.SectionNamed("crops").SetDefaults(p, 0)
	p.Crops[0].Name = "physalis <3"
	p.Rows[1].Crop = catalogue.FirstOwn
	form := form.Ask(p, plan.DraftOf(p), nil, Groups(), form.Place{Record: "rows.2"})
	for _, want := range []string{`<option value="own crop 1" selected>physalis &lt;3</option>`, "Row 2: physalis &lt;3, 30 plants", "Crop 1: physalis"} {
		if !strings.Contains(form, want) {
			t.Errorf("the form lacks %s", want)
		}
	}
}

// fragmentOf draws one section.
func fragmentOf(id string, draw func(*scene.Scene), sc *scene.Scene) block.Fragment {
	sc.Clear()
	draw(sc)
	return block.Fragment{ID: id, HTML: sc.String()}
}
