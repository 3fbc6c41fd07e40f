package sheet

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/catalogue"
)

func fix(s *Sheet, kind FixKind) *Fix {
	for i := range s.Fixes {
		if s.Fixes[i].Kind == kind {
			return &s.Fixes[i]
		}
	}
	return nil
}

// Behind a regulator that is set too low no stronger tap or pump is named, but
// the regulator.
func TestRegulatorSetTooLow(t *testing.T) {
	p := plan.Default()
	p.Supply.Regulator = 0.5e5
	s := Answer(p)
	f := fix(s, AddRegulator)
	if s.Verdict != No || f == nil || f.Value < 1.1e5 || f.Value > 1.5e5 || fix(s, NewPump) != nil {
		t.Errorf("verdict %d, fixes %+v", s.Verdict, s.Fixes)
	}
}

// hill is a tank 60 m above the default's header.
func hill() *plan.Plan {
	p := plan.Default()
	p.Supply.Kind, p.Filter.Present, p.Supply.Regulator = plan.GravityTank, 0, 0
	p.Runs[0].Rise = -30
	p.Runs = append(p.Runs, p.Runs[0])
	return p
}

// The rows below a tank on a hill are under more than their tubing may carry,
// until a regulator stands before the header; the lead, of 16 bar, may stay as
// it is.
func TestRegulatorBelowATank(t *testing.T) {
	s := Answer(hill())
	f := fix(s, AddRegulator)
	if s.Verdict != Nearly || f == nil || f.Value < 1.1e5 || f.Value > 1.4e5 || fix(s, RaiseTank) != nil {
		t.Fatalf("verdict %d, findings %+v, fixes %+v", s.Verdict, s.Findings, s.Fixes)
	}
	// Measured tubing counts as the weakest, of 4 bar.
	p := f.Plan
	p.Runs[1].Tube, p.Runs[1].Bore = catalogue.Custom, 0.02
	if s := Answer(p); s.Verdict != Nearly || s.Findings[0].Kind != OverRating || math.Abs(s.Findings[0].Value-60) > 1e-9 {
		t.Errorf("a weak lead: verdict %d, findings %+v", s.Verdict, s.Findings)
	}
}

// Only what is narrower than the size that is named gets it.
func TestWiderNarrowsNothing(t *testing.T) {
	p := plan.Default()
	p.Limits.Speed = 0.3
	p.Runs = append(p.Runs, p.Runs[0])
	p.Runs[0].Tube, p.Runs[0].Bore = catalogue.Custom, 0.012
	p.Runs[1].Tube = 6
	for i := range p.Rows {
		p.Rows[i].PerPlant = 2
	}
	p.Header.Feed, p.Header.Tube = plan.FeedMiddle, 5
	f := fix(Answer(p), WiderLead)
	if f == nil || f.Plan.Runs[0].Tube == catalogue.Custom || f.Plan.Runs[1].Tube != 6 {
		t.Errorf("fix %+v", f)
	}
	// The narrow run need not be the first.
	slices.Reverse(p.Runs)
	if f := fix(Answer(p), WiderLead); f == nil || f.Plan.Runs[1].Tube == catalogue.Custom || f.Plan.Runs[0].Tube != 6 {
		t.Errorf("reversed: fix %+v", f)
	}
}

// No filter is to be cleaned at a rise of its loss that no gauge shows.
func TestFilterIsCleanedWhenAGaugeShowsIt(t *testing.T) {
	p := plan.Default()
	p.Limits.Reserve = 0
	p.Supply.Kind, p.Supply.MaxFlow, p.Supply.Regulator = plan.PumpTwo, 1000.0/6e4, 0
	p.Filter.Rated = 4.0 / 6e4
	p.Supply.ShutOff = 12.5
	s := Answer(p)
	p.Supply.ShutOff += 0.2 - s.Zones[0].Margin
	s = Answer(p)
	if s.Verdict != Nearly || s.Findings[0].Kind != Fouled {
		t.Fatalf("verdict %d, findings %+v", s.Verdict, s.Findings)
	}
	if f := fix(s, CleanerFilter); f != nil {
		t.Errorf("to be cleaned at %g Pa", f.Value)
	}
	p.Supply.ShutOff += 1
	if s = Answer(p); fix(s, CleanerFilter) == nil {
		t.Errorf("with %g m to spare, %g m once fouled: fixes %+v", s.Zones[0].Margin, s.Zones[0].Fouled, s.Fixes)
	}
}
