package view

import (
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/watering"
	"evenrow/wasm/trade/catalogue"
	"evenrow/wasm/year/drain"
)

// told returns the fragments about shots of a plan, by id.
func told(p *plan.Plan) map[string]string {
	s := sheet.Answer(p)
	s.Explore(sheet.Season)
	all := map[string]string{}
	for _, f := range Explored(s, sheet.Season, nil) {
		switch f.ID {
		case "cannot", "shots", "timer", "tank", "outage":
			all[f.ID] = f.HTML
		}
	}
	return all
}

func TestShotsOfRandomPlansAreTold(t *testing.T) {
	wrong := regexp.MustCompile(`NaN|Inf|>none\b|%!|e\+\d|- ?\d+ (shot|min)|for –`)
	r := rand.New(rand.NewPCG(21, 22))
	for range 150 {
		p := plan.Default()
		p.Units = unit.System(r.IntN(2))
		p.Rows = p.Rows[:1+r.IntN(4)]
		for i := range p.Rows {
			p.Rows[i].Plants, p.Rows[i].PerPiece = 1+r.IntN(5), 1
			p.Rows[i].Crop, p.Rows[i].Medium, p.Rows[i].Zone = r.IntN(15), r.IntN(5), 1+r.IntN(12)
		}
		p.Header.Layout = r.IntN(3)
		p.Sky.Latitude = 180*r.Float64() - 90
		p.Season.LastFrost += r.IntN(300) - 150
		p.Season.FirstFrost = p.Season.LastFrost + 1 + r.IntN(300)
		tm := &p.Timer
		tm.Kind, tm.Window, tm.Every = r.IntN(3), r.IntN(2), r.IntN(2)
		tm.Programmes, tm.Step = 1+r.IntN(40), []int{1, 10, 60, 600, 1800}[r.IntN(5)]
		tm.First, tm.Last = 8*3600*r.Float64(), 8*3600*r.Float64()
		tm.LastHot = tm.Last * r.Float64()
		if r.IntN(3) == 0 {
			p.Supply.Kind, p.Supply.ShutOff, p.Supply.MaxFlow, p.Supply.Regulator = plan.PumpTwo, 20*r.Float64(), 20.0/6e4, 0
		}
		if len(p.Check()) > 0 {
			continue
		}
		for id, html := range told(p) {
			whole(t, id, html)
			if m := wrong.FindString(html); m != "" {
				t.Errorf("%s prints %q:\n%+v\n%s", id, m, p.Timer, html)
			}
		}
	}
}

// later has lettuce in two rows three times, then cucumbers in a third, in a
// heated house.
func later(p *plan.Plan) {
	p.Season.Shelter = plan.Heated
	on := func(text string) int { d, _ := day.Parse(text); return int(d) }
	crop := func(name string) int {
		return slices.IndexFunc(catalogue.Crops[:], func(c catalogue.Crop) bool { return string(c.Name) == name })
	}
	for i := range p.Rows {
		p.Rows[i].Crop = crop("lettuce")
	}
	p.Plantings = []plan.Planting{
		{Crop: crop("lettuce"), From: 1, To: 2, Mode: plan.FromPlanting + 1, Date: on("2027-03-01"), Times: 3, Every: 35},
		{Crop: crop("cucumber"), From: 3, Mode: plan.FromPlanting + 1, Date: on("2027-05-01"), Times: 1, Every: 21},
	}
}

// What a timer cannot do is said, with what helps.
func TestLimitsOfTheTimerAreTold(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *plan.Plan)
		id     string
		want   string
	}{
		{"enough start times", func(p *plan.Plan) { p.Timer.Programmes, p.Timer.Card = 30, plan.Finer }, "shots", "give 6 shots of 5\u00a0min and 6 of 4\u00a0min"},
		// 54 minutes of the finer card in shots of five, which all are as long.
		{"enough start times, by hand", func(p *plan.Plan) { p.Timer.Programmes = 30 }, "shots", "give 11 shots of 5\u00a0min, the first at 07:30"},
		{"few start times", func(*plan.Plan) {}, "cannot", "16 shots would be right, and the timer holds 12 start times"},
		{"very few", func(p *plan.Plan) { p.Timer.Programmes = 1 }, "cannot", "plants may lack water between two shots"},
		{"a dial", func(p *plan.Plan) { p.Timer.Kind = plan.Dial }, "cannot", "This timer cannot give short shots: a pin is a quarter of an hour, which brings each plant 500\u00a0mL"},
		{"on and off", func(p *plan.Plan) { p.Timer.Kind = plan.OnAndOff }, "timer", "11\u00a0×\u00a04\u00a0min 45\u00a0s, off 64\u00a0min"},
		{"by light", func(p *plan.Plan) { p.Timer.Kind, p.Timer.Window = plan.OnAndOff, plan.ByLight }, "cannot", "The light switch lets the first shot come at sunrise"},
		{"too few valves", func(p *plan.Plan) { p.Rows[3].Zone = 2 }, "cannot", "The plan has 2 zones and the timer switches 1 valve."},
		{"zones that nothing starts in turn", func(p *plan.Plan) { p.Timer.Kind, p.Rows[3].Zone = plan.OnAndOff, 2 }, "cannot", "Such a timer switches one valve"},
		{"a shared valve", func(*plan.Plan) {}, "cannot", "cucumber in row 4 decides, and sweet pepper in rows 1 and 2 drains"},
		{"a bare row", func(*plan.Plan) {}, "cannot", "Row 4 would be watered with nothing in it from 11 September on. Shut it off."},
		{"a bare row of one line", func(p *plan.Plan) { p.Header.Layout = plan.OneLine }, "cannot", "from 11 September on. No valve can shut it off here: plug the emitters there."},
		{"rows that are bare for a time", later, "cannot", "Row 3 would be watered with nothing in it from 1 March to 1 May. Shut it off for so long."},
		{"a row that stays bare", later, "cannot", "Row 4 would be watered with nothing in it from 1 March on."},
		{"a tank to stop", func(p *plan.Plan) { p.Supply.Kind, p.Runs[0].Rise, p.Supply.Regulator = plan.GravityTank, -15, 0 }, "outage", "If the water stops at"},
		{"a shot as the medium takes it", func(p *plan.Plan) { p.Timer.Card = plan.Finer }, "shots", "<dd>160 mL</dd>"}, // 3 % of a third of 16 L
		{"a dial on large pots", func(p *plan.Plan) {
			p.Timer.Kind = plan.Dial
			for i := range p.Rows {
				p.Rows[i].Medium, p.Rows[i].PerPiece = plan.Pot, 1
			}
		}, "cannot", "The medium takes that in"},
		{"a small tank", func(p *plan.Plan) { p.Supply.Tank = 0.1 }, "tank", "less than one day takes"},
		{"a tap", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Static, p.Supply.TapFlow, p.Supply.Regulator = plan.Mains, 3e5, 20.0/6e4, 0
		}, "tank", "on a record-hot day."},
		{"the card", func(p *plan.Plan) { p.Timer.Card = plan.Finer }, "timer", "10\u00a0Jul to 23\u00a0Jul</th>"},
		{"the card by hand", func(*plan.Plan) {}, "timer", "Start times of the whole season, in the order in which they are switched on: 1 at 07:30, 2 at "},
		{"zones in turn by hand", func(p *plan.Plan) { p.Rows[3].Zone = 2 }, "timer", "Zone 2</th>"},
		{"what a finer card saves", func(*plan.Plan) {}, "shots", "A finer card, with lengths that differ and times that follow the sun, saves "},
		{"what the finer card saves", func(p *plan.Plan) { p.Timer.Card = plan.Finer }, "shots", "A card by hand, with one length of shot a day"},
		{"no water", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.ShutOff, p.Supply.MaxFlow, p.Supply.Regulator = plan.PumpTwo, 3, 1e-3, 0
		}, "timer", string(watering.TimerWaits)},
	} {
		p := plan.Default()
		c.change(p)
		if errs := p.Check(); len(errs) > 0 {
			t.Fatalf("%s: %v", c.name, errs)
		}
		if html := told(p)[c.id]; !strings.Contains(html, c.want) {
			t.Errorf("%s: %q is not in\n%s", c.name, c.want, html)
		}
	}
	// One after another in the same rows, plants cannot have a valve each.
	p := plan.Default()
	later(p)
	p.Plantings = p.Plantings[:1]
	if html := told(p)["cannot"]; strings.Contains(html, "share a valve") {
		t.Errorf("lettuce after lettuce: %s", html)
	}
	twelve := plan.Default()
	for range 8 {
		twelve.Rows = append(twelve.Rows, twelve.Rows[2])
	}
	for i := range twelve.Rows {
		twelve.Rows[i].Zone = i + 1
	}
	twelve.Place.Width = 30
	if html := told(twelve)["cannot"]; !strings.Contains(html, "No more shots fit into the day, each of all zones in turn") {
		t.Errorf("twelve zones of long shots, by hand: %s", html)
	}
	twelve.Timer.Card = plan.Finer
	if html := told(twelve)["cannot"]; !strings.Contains(html, "the rounds do not fit into the day") {
		t.Errorf("twelve zones of long shots: %s", html)
	}
}

// Every reason that an advice may have is put into words, also without a
// sheet.
func TestAdviceIsTold(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		log  []drain.Entry
		want string
	}{
		{nil, "Note the drain of a few days"},
		{[]drain.Entry{{Out: 0.2, EC: 4, PH: 4.5, Feed: 2}}, "salt builds up"},
		{[]drain.Entry{{Out: 0.2, EC: 3.2, PH: 7.5, Feed: 2}}, "pH is high, 7.5"},
		{[]drain.Entry{{Out: 0.2, EC: 1.5, PH: 4.5, Feed: 2}}, "weaker than the feed, by 0.5\u00a0mS/cm"},
		{[]drain.Entry{{Out: 0, EC: nan, PH: nan, Feed: nan}}, "No drain at all"},
		// 60 (1 - 0.05) and 70 (1 - 0.18) min were taken up, in the mean 57.2 of 70.
		{[]drain.Entry{{Out: 0.05, EC: nan, PH: nan, Feed: nan, Shots: 12, Long: 300}, {Out: 0.18, EC: nan, PH: nan, Feed: nan, Shots: 14, Long: 300}},
			"Leave the timer as it was on a typical day. Over the last 2 such days that were measured, 11.5\u00a0% drained, and 20\u00a0% should. As the timer was last set, it would have been 18.3\u00a0%."},
		{[]drain.Entry{{Out: nan, EC: 2, PH: 6, Feed: 2}, {Out: 0.21, EC: nan, PH: nan, Feed: nan}}, "Leave the timer as it was on a typical day."},
	} {
		html, _ := watering.Advice(nil, plan.Default(), c.log, nil)
		whole(t, "advice", html)
		if !strings.Contains(html, c.want) || regexp.MustCompile(`NaN|Inf`).MatchString(html) {
			t.Errorf("%+v: %q is not in\n%s", c.log, c.want, html)
		}
	}
}
