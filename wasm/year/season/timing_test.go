package season_test

import (
	"slices"
	"strings"
	"testing"

	"evenrow/wasm/ground/day"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/year/season"
)

const hour = 3600.0

func TestTimingIsTold(t *testing.T) {
	eight := season.Shots{At: []float64{7.5 * hour, 14.25 * hour}, Many: 2, Long: 360}
	mixed := season.Shots{At: []float64{8 * hour, 9 * hour, 10 * hour}, Many: 2, Long: 300, Few: 1, Short: 285}
	cycle := season.Shots{At: []float64{8 * hour, 9 * hour, 18.75 * hour}, Many: 3, Long: 45, Off: 45 * 60}
	one := &season.Timing{Zones: []season.ZoneTiming{{Typical: eight, Hot: mixed}}}
	two := &season.Timing{Zones: []season.ZoneTiming{{Zone: 1, Typical: cycle, Dull: cycle}, {Zone: 3}}}
	p := plan.Default()
	s := &season.Season{}
	for _, c := range []struct {
		sys        unit.System
		timer      *season.Timing
		title, how string
	}{
		{unit.Metric, one, "Set the timer: 2 × 6 min", "Typical day: 2 × 6 min at 07:30, 14:15. Hot day: 2 × 5 min + 1 × 4 min 45 s at 08:00, 09:00, 10:00. Dull day: off."},
		{unit.US, one, "Set the timer: 2 × 6 min", "Typical day: 2 × 6 min at 7:30 am, 2:15 pm."},
		{unit.Metric, two, "Set the timer: zone 1 3 × 45 s, off 45 min, zone 3 off", "Zone 1, typical day: 3 × 45 s, off 45 min, the first at 08:00, the last at 18:45. Hot day: off."},
	} {
		p.Units = c.sys
		k := &season.Task{Kind: season.Resetting, Day: 1, Days: 1, Times: 1, Planting: -1, Timer: c.timer}
		plain := func(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }
		if got := plain(s.Title(p, k)); got != c.title {
			t.Errorf("title %q, want %q", got, c.title)
		}
		if got := plain(s.How(p, k)); !strings.Contains(got, c.how) || !strings.HasPrefix(got, k.Note()) {
			t.Errorf("%q lacks %q", got, c.how)
		}
	}
}

// The timer is set for what was planted out that day, with an alarm on the eve;
// no other task has one. Each change has an id of its own.
func TestSettingsStandInTheCalendar(t *testing.T) {
	p := rows(day.Of(2027, 3, 1), tomato)
	s := season.Of(p)
	n := len(s.Tasks)
	at := func(d day.Day, number int) season.Task {
		return season.Task{Kind: season.Resetting, Day: d, Days: 1, Times: 1, Planting: -1, Number: number, Timer: &season.Timing{Zones: []season.ZoneTiming{{}}}}
	}
	s.Add([]season.Task{at(day.Of(2027, 4, 30), 1), at(day.Of(2027, 3, 1), 0)})
	if len(s.Tasks) != n+2 {
		t.Fatalf("%d tasks, want %d", len(s.Tasks), n+2)
	}
	k := slices.IndexFunc(s.Tasks, func(k season.Task) bool { return k.Kind == season.Resetting })
	if s.Tasks[k].Number != 0 || s.Tasks[k-1].Kind != season.Setting {
		t.Errorf("the first stands after %+v", s.Tasks[k-1])
	}
	for i := 1; i < len(s.Tasks); i++ {
		if s.Tasks[i].Day < s.Tasks[i-1].Day {
			t.Errorf("%+v after %+v", s.Tasks[i], s.Tasks[i-1])
		}
	}
	uids := map[string]bool{}
	alarms := 0
	for i, e := range s.Calendar(p).Events {
		if uids[e.UID] {
			t.Errorf("%s stands twice", e.UID)
		}
		uids[e.UID] = true
		if set := s.Tasks[i].Kind == season.Resetting; set != (e.Alarm == 6) || !set && e.Alarm != 0 {
			t.Errorf("%s rings %d h before", e.Summary, e.Alarm)
		} else if set {
			alarms++
		}
	}
	if alarms != 2 {
		t.Errorf("%d alarms", alarms)
	}
}
