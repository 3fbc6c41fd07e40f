package check

import (
	_ "embed"
	"slices"
	"strings"
	"testing"
)

//go:embed testdata/hydraulics-ids.txt
var wanted string

func TestEveryRowOfTheReferenceIsHere(t *testing.T) {
	var ids []string
	for _, r := range Rows {
		if strings.HasPrefix(r.ID, "HY-") {
			ids = append(ids, r.ID)
		}
	}
	slices.Sort(ids)
	want := strings.Fields(wanted)
	if len(want) != 80 {
		t.Fatalf("the list of the reference has %d rows, want 80", len(want))
	}
	if !slices.Equal(ids, want) {
		t.Errorf("rows:\n got %v\nwant %v", ids, want)
	}
}

func TestRows(t *testing.T) {
	for _, r := range Rows {
		t.Run(r.ID, func(t *testing.T) {
			if len(r.Parts) == 0 || r.Source.String() == "" || r.Topic == "" || r.Quantity == "" || r.Given == "" {
				t.Fatalf("the row lacks something: %+v", r)
			}
			for _, p := range r.Parts {
				got, err := p.Got()
				t.Logf("%s %s(%s): want %.7g, got %.7g, difference %.2g of %.2g %s",
					r.ID, p.Formula, r.Given, p.Want, got, got-p.Want, p.Tol, p.Unit)
				if err != nil || !p.Close(got) {
					t.Errorf("%s %s(%v): got %.9g %s, %v\nwant %.9g ± %g from %s",
						r.ID, p.Formula, p.In, got, p.Unit, err, p.Want, p.Tol, r.Source)
				}
			}
		})
	}
}
