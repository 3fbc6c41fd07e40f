package view

import (
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/form"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/watering"
	"evenrow/wasm/year/drain"
)

// told returns the fragment of sun and water of a plan, as text without tags.
func toldWeather(t *testing.T, name string, p *plan.Plan) string {
	t.Helper()
	s := sheet.Answer(p)
	s.Explore(sheet.Season)
	html := said(t, s, "weather")
	whole(t, name, html)
	if bad := regexp.MustCompile(`NaN|Inf|\bnone\b`).FindString(html); bad != "" {
		t.Errorf("%s prints %s", name, bad)
	}
	return regexp.MustCompile(`<[^>]*>`).ReplaceAllString(html, " ")
}

// planted is the default plan, planted out on a day in warmth.
func plantedOut(date string) *plan.Plan {
	p := plan.Default()
	d, _ := day.Parse(date)
	p.Season.Mode, p.Season.Date, p.Season.Shelter, p.Season.Frost = plan.FromPlanting, int(d), plan.Heated, 0
	return p
}

func TestSunAndWaterInWords(t *testing.T) {
	south := plantedOut("2027-10-15")
	south.Sky.Latitude, south.Sky.Longitude, south.Sky.Offset, south.Sky.Summer = -37.8, 145, 10*3600, plan.OctoberApril
	north := plantedOut("2027-05-10")
	north.Sky.Latitude = 72
	dark := plantedOut("2027-09-20")
	dark.Sky.Latitude = 78
	us := plantedOut("2027-05-10")
	us.Units = unit.US
	known := plantedOut("2027-05-10")
	known.Sky.Humidity = 0.6
	known.Sky.Climate = plan.OwnClimate
	for range 12 {
		known.Months = append(known.Months, plan.Month{High: 25, Low: 12})
	}
	for _, c := range []struct {
		name string
		p    *plan.Plan
		want []string
	}{
		{"default", plan.Default(), []string{"each plant of tomato takes up 1.41\u00a0L on a typical day", "The longest day of the season is 21 June 2027: 15 h 56 min, from 05:31 to 21:26", "only temperatures", "invented sketch", "Cool days lie 6 °C below the usual high of the date, and hot and record-hot days 6 °C and 11 °C above it", "√(Tmax - Tmin)"}},
		{"south", south, []string{"The longest day of the season is 2", "December 2027", "January 2028"}},
		{"midnight sun", north, []string{"the sun is up all day"}},
		{"polar night", dark, []string{"the sun is down all day", "0 h 00 min"}},
		{"US units", us, []string{" gal on a typical day", " am to ", " pm on your clock", "days lie 11 °F below", "11 °F and 20 °F above"}},
		{"known weather", known, []string{"what else you know of the weather", "1 + 0.34 u"}},
	} {
		text := toldWeather(t, c.name, c.p)
		for _, want := range c.want {
			if !strings.Contains(strings.ToLower(strings.ReplaceAll(text, "\u00a0", " ")), strings.ToLower(strings.ReplaceAll(want, "\u00a0", " "))) {
				t.Errorf("%s: %q does not stand in\n%s", c.name, want, text[:min(len(text), 1500)])
			}
		}
	}
}

// No sky makes the page print what is no number.
func TestSunAndWaterUnderAnySky(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	for range 60 {
		p := plantedOut("2027-01-01")
		p.Season.Date += r.IntN(800)
		p.Units = unit.System(r.IntN(unit.Systems))
		for _, f := range plan.SectionNamed("sky").Fields() {
			if f.Name == "climate" || f.Empty && r.IntN(2) == 0 {
				continue
			}
			v := f.Min + (f.Max-f.Min)*r.Float64()
			if f.Type != plan.Number {
				v = float64(int(f.Min) + r.IntN(int(f.Max-f.Min)+1))
			}
			f.SetValue(p, 0, v)
		}
		p.Sky.Climate = []int{0, 2, 3, 4, 5}[r.IntN(5)]
		if text := toldWeather(t, "any sky", p); t.Failed() || len(text) < 1000 {
			t.Fatalf("%+v: %s", p.Sky, text[:min(len(text), 900)])
		}
	}
}

// A scale that shows nothing but 0 says nothing.
func TestTheScaleOfThirstHasAFigure(t *testing.T) {
	for _, sys := range []unit.System{unit.Metric, unit.US} {
		p := plan.Default()
		p.Units = sys
		for use := 0.2; use <= 4; use += 0.05 {
			p.Sky.Adjust = use
			s := sheet.Answer(p)
			s.Explore(sheet.Season)
			html := said(t, s, "weather")
			if regexp.MustCompile(`>0(\.0*)? (L|gal)</text>`).MatchString(html) {
				t.Errorf("system %d, use %g: no figure but 0 beside the picture", sys, use)
			}
		}
	}
}

func TestManyPlantingsShowTheThirstiest(t *testing.T) {
	p := plantedOut("2027-05-10")
	for crop := range 12 {
		p.Plantings = append(p.Plantings, plan.Planting{Crop: crop, From: 1 + crop%4, Times: 2, Every: 30})
	}
	text := toldWeather(t, "many", p)
	if !strings.Contains(text, "Shown: the 6 of 2") {
		t.Errorf("%s", text[:min(len(text), 1200)])
	}
}

func TestNothingPlantedSaysSo(t *testing.T) {
	p := plantedOut("2027-05-10")
	for i := range p.Rows {
		p.Rows[i].Crop = 0
	}
	p.Plantings = []plan.Planting{{Crop: 0, From: 50, Times: 1, Every: 1}}
	if text := toldWeather(t, "nothing", p); !strings.Contains(text, "nothing drinks") {
		t.Errorf("%s", text[:min(len(text), 600)])
	}
}

func TestTheFormTakesATable(t *testing.T) {
	d := plan.DraftOf(plan.Default())
	d.Set("sky.climate", "own")
	d.Set(plan.TableName, "1 <2>\n")
	d.Set(plan.ActionName, plan.FillMonths)
	d.Apply()
	p, errs := d.Read()
	html := form.Ask(p, d, errs, Groups(), form.Place{})
	for _, want := range []string{`<textarea id="f-months-table"`, `1 &lt;2&gt;`, "The pasted table must have", "January: 3", "December: 4"} {
		if !strings.Contains(html, want) {
			t.Errorf("%s does not stand in the form", want)
		}
	}
	if strings.Contains(html, plan.TableName+"=") {
		t.Error("the table is carried twice: in its box, and with what is not in sight")
	}
	whole(t, "ask", html)
}

// Figures of judgement that stand in a sentence are those that the calculation
// goes by, and that the Method page lists.
func TestSentencesTakeTheirFigures(t *testing.T) {
	s := sheet.Work(plan.Default())
	all := ""
	for _, f := range Everything(s, func(*plan.Plan) string { return "#x" }) {
		all += f.HTML
	}
	for _, want := range []string{
		"less than 0.05\u00a0bar counts as not to be seen on a gauge, and less than 5\u00a0% of the flow",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	log := []drain.Entry{{Row: 1, Sky: drain.Typical, Out: 0.05, EC: math.NaN(), PH: math.NaN(), Feed: math.NaN(), Shots: math.NaN(), Long: math.NaN()}}
	if html, _ := watering.Advice(s, s.Plan, log, nil); !strings.Contains(html, "by no more than 15\u00a0%, rounded up to what the timer can be set to, and measure 3 days before") {
		t.Errorf("the log advises %s", html)
	}
}
