package view

import (
	"regexp"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
)

// The sun of a fortnight stands in two tables, also where the season ends within it.
func TestTheSunIsTheSameInBothTables(t *testing.T) {
	inWeather := regexp.MustCompile(`<th scope="row">(\d+)[\s\x{a0}]+(\w{3})\w*</th><td class="n">([^<]+)</td><td class="n">([^<]+)</td>`)
	inShots := regexp.MustCompile(`<th scope="row">(\d+)[\s\x{a0}]+(\w{3})\w*</th>(?:<td class="n">[^<]*</td>){3}<td class="n">([^<]+)</td><td class="n">([^<]+)</td>`)
	for _, e := range plan.Examples() {
		s := sheet.Answer(e.Plan)
		s.Explore(sheet.Season)
		sun := map[string][]string{}
		for _, m := range inWeather.FindAllStringSubmatch(said(t, s, "weather"), -1) {
			sun[m[1]+m[2]] = m[3:]
		}
		compared := 0
		for _, m := range inShots.FindAllStringSubmatch(said(t, s, "shots"), -1) {
			want, ok := sun[m[1]+m[2]]
			if !ok {
				continue
			}
			compared++
			if m[3] != want[0] || m[4] != want[1] {
				t.Errorf("%s: the fortnight from %s has the sun from %s to %s, and in the other table from %s to %s", e.Key, m[1]+" "+m[2], m[3], m[4], want[0], want[1])
			}
		}
		if compared < 5 && s.Verdict != sheet.No { // of a No there is nothing to set
			t.Errorf("%s: only %d fortnights compared", e.Key, compared)
		}
	}
}
