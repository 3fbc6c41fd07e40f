package answer

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/limit"
)

// Every kind has a name, and no two of a list have the same. That a list is as long
// as there are kinds, the compiler says.
func TestEveryKindHasItsName(t *testing.T) {
	for what, list := range named() {
		seen := map[string]int{}
		for k, name := range list {
			if name == "" {
				t.Errorf("%s %d, after %q, has no name", what, k, list[max(k, 1)-1])
			}
			if other, there := seen[name]; there {
				t.Errorf("%s: %d and %d are both called %q", what, other, k, name)
			}
			seen[name] = k
		}
	}
}

// named are all lists of names of kinds.
func named() map[string][]string {
	all := map[string][]string{
		"verdict": verdicts[:], "sameness": samenesses[:], "state": states[:], "relief": reliefs[:], "end": ends[:], "loss": losses[:],
		"stretch": stretches[:], "group": groups[:], "fault": faults[:], "sky": skies[:], "task": taskNames[:], "conflict": conflictNames[:],
		"sign": signs[:], "cleaning": cleanings[:], "flush": flushed[:], "remedy": remedies[:], "limit of a timer": timerLimits[:], "cure": cures[:],
		"conclusion": conclusions[:], "limit": limit.Names[:], "fewest zones": enough[:], "worth of a loop": worths[:], "side of a loop": sides[:],
		"barrier": barriers[:], "filling": fillings[:],
	}
	for k := range sheet.Kinds {
		all["finding"] = append(all["finding"], sheet.Kinds[k].Name)
	}
	for k := range sheet.FixesOf {
		all["fix"] = append(all["fix"], sheet.FixesOf[k].Name)
	}
	for k := range rooms {
		all["room"] = append(all["room"], rooms[k].name)
	}
	for which := range sheet.Exploration(sheet.Explorations) {
		all["exploration"] = append(all["exploration"], which.Name())
	}
	return all
}

// A finding has the name of what was found, wherever it stands in the order of
// gravity: that order was changed once, and the names stayed behind.
func TestFindingsHaveTheirOwnNames(t *testing.T) {
	for _, tt := range []struct {
		of   sheet.FindingKind
		name string
		make func(p *plan.Plan)
	}{
		{sheet.ShortReserve, "short-margin", func(p *plan.Plan) { p.Supply.Regulator, p.Limits.Reserve = 0, 30 }},
		{sheet.FastLead, "fast-supply-line", func(p *plan.Plan) { p.Limits.Speed = 0.1 }},
		{sheet.OverRating, "over-rating", func(p *plan.Plan) { p.Supply.Regulator = 0 }},
		{sheet.NoFilter, "no-filter", func(p *plan.Plan) { p.Filter.Present = 0 }},
		{sheet.OutsidePlace, "outside-place", func(p *plan.Plan) { p.Place.Length = 3 }},
		{sheet.BelowRange, "below-range", func(p *plan.Plan) { p.Emitters[0].Lowest = 25 * 9806 }},
	} {
		p := plan.Default()
		tt.make(p)
		s := sheet.Answer(p)
		at := slices.IndexFunc(s.Findings, func(f sheet.Finding) bool { return f.Kind == tt.of })
		text, err := JSON(p)
		if err != nil {
			t.Fatal(err)
		}
		var d struct {
			Findings []struct{ Kind string }
		}
		if err := json.Unmarshal(text, &d); err != nil {
			t.Fatal(err)
		}
		if at < 0 || d.Findings[at].Kind != tt.name {
			t.Errorf("%s: the sheet has %+v, and the JSON %+v", tt.name, s.Findings, d.Findings)
		}
	}
}

func TestExamplesAreAnswered(t *testing.T) {
	for _, e := range plan.Examples() {
		text, err := JSON(e.Plan)
		if err != nil {
			t.Errorf("%s: %v", e.Key, err)
			continue
		}
		var d struct {
			Answer, Verdict string
			Zones           []struct {
				Plants []struct {
					Row, Plant int
					Flow       *float64 `json:"flow_m3_s"`
				}
				Flow float64 `json:"flow_m3_s"`
			}
			Flush struct {
				Ends []struct {
					Of    string   `json:"place"`
					Speed *float64 `json:"speed_m_s"`
				}
			}
			Surge []struct {
				Tubing, Stretch string
				Rise            *float64 `json:"rise_pa"`
			}
			Headroom []struct {
				Of    string   `json:"kind"`
				Yes   *float64 `json:"yes_with"`
				Ended string   `json:"ended_by"`
			}
			Plan map[string]any
		}
		if err := json.Unmarshal(text, &d); err != nil {
			t.Errorf("%s: %v", e.Key, err)
			continue
		}
		if d.Answer == "" || d.Verdict == "" || d.Verdict == "other" || len(d.Plan) == 0 {
			t.Errorf("%s: answer %q, verdict %q, %d sections", e.Key, d.Answer, d.Verdict, len(d.Plan))
		}
		if len(d.Zones) > 0 && (len(d.Flush.Ends) == 0 || d.Flush.Ends[0].Speed == nil || d.Flush.Ends[0].Of == "other") {
			t.Errorf("%s: no end is flushed", e.Key)
		}
		if (d.Verdict == "yes") != (len(d.Headroom) > 0) {
			t.Errorf("%s: %s, and %d kinds of headroom", e.Key, d.Verdict, len(d.Headroom))
		}
		if len(d.Zones) > 0 && len(d.Surge) == 0 {
			t.Errorf("%s: no surge", e.Key)
		}
		for _, b := range d.Surge {
			if b.Tubing == "" || b.Stretch == "" || b.Stretch == "other" || b.Rise == nil {
				t.Errorf("%s: surge %+v", e.Key, b)
			}
		}
		for _, r := range d.Headroom {
			if r.Of == "other" || r.Yes == nil || r.Ended == "" || r.Ended == "other" {
				t.Errorf("%s: headroom %+v", e.Key, r)
			}
		}
		plants := 0
		for _, z := range d.Zones {
			sum := 0.0
			for _, p := range z.Plants {
				if p.Flow == nil {
					t.Fatalf("%s: row %d plant %d has no flow", e.Key, p.Row, p.Plant)
				}
				sum += *p.Flow
			}
			plants += len(z.Plants)
			// What leaves at the plants is what the source gives.
			if math.Abs(sum-z.Flow) > 1e-6*math.Max(sum, 1e-9) {
				t.Errorf("%s: the plants of a zone take %g m³/s of %g", e.Key, sum, z.Flow)
			}
		}
		want := 0
		for _, r := range e.Plan.Rows {
			want += r.Plants
		}
		if len(d.Zones) > 0 && plants != want {
			t.Errorf("%s: %d plants, want %d", e.Key, plants, want)
		}
	}
}

func TestWhatIsOpenIsNull(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if b, err := json.Marshal(number(v)); err != nil || string(b) != "null" {
			t.Errorf("%g becomes %s, %v", v, b, err)
		}
	}
	if b, err := json.Marshal(number(0.25)); err != nil || string(b) != "0.25" {
		t.Errorf("0.25 becomes %s, %v", b, err)
	}
}

// Every plant of the answer stands in the file, also where no valve shuts off a
// row alone and the rows' own zones count for nothing.
func TestEveryPlantIsInTheFile(t *testing.T) {
	for _, layout := range []int{plan.HeaderAndRows, plan.OneLine, plan.Ring} {
		p := plan.Default()
		p.Header.Layout = layout
		p.Rows[2].Zone, p.Rows[3].Zone = 2, 2
		text, err := JSON(p)
		if err != nil {
			t.Fatal(err)
		}
		var d struct {
			Zones []struct {
				Plants []struct{} `json:"plants"`
			} `json:"zones"`
		}
		if err := json.Unmarshal(text, &d); err != nil {
			t.Fatal(err)
		}
		n := 0
		for _, z := range d.Zones {
			n += len(z.Plants)
		}
		if n != 120 {
			t.Errorf("layout %d: %d plants of 120", layout, n)
		}
	}
}
