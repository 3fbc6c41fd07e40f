package view

import (
	"strings"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/works/flush"
)

// said returns a fragment of what is told about a plan.
func said(t *testing.T, s *sheet.Sheet, id string) string {
	t.Helper()
	for _, f := range Everything(s, nil) {
		if f.ID == id {
			return f.HTML
		}
	}
	t.Fatalf("nothing is told about %s", id)
	return ""
}

func TestFlushInWords(t *testing.T) {
	at := func(change func(f *flush.Flush)) *sheet.Sheet {
		s := sheet.Work(plan.Default())
		change(s.Flush)
		s.Flush.Judge(s.Layout)
		return s
	}
	for _, tt := range []struct {
		s    *sheet.Sheet
		want []string
	}{
		{sheet.Work(plan.Default()), []string{"Yes. With one end open", "at once: all 4."}},
		{at(func(f *flush.Flush) {
			f.Slow, f.Slowest = 1, 2
			f.Ends[2].Speed, f.Ends[2].Alone = 0.2, 0.5
			f.Zones[0].Most = 3
		}), []string{"Yes, with the other rows shut: then the water runs at 0.50\u00a0m/s or more", "at 1 of 5 ends", "row 3 reaches 0.20\u00a0m/s", "at once: 3 of the 4."}},
		{at(func(f *flush.Flush) {
			f.Slow, f.Stuck, f.Slowest, f.Every = 5, 1, 4, 7
			f.Ends[4].Alone = 0.1
		}), []string{"Not everywhere. At 5 of 5 ends", "the header at row 4", "With the other rows shut it reaches 0.10\u00a0m/s, which is still too little. It takes 5.88\u00a0L/min", "one in 7"}},
		{at(func(f *flush.Flush) {
			f.Slow, f.Stuck = 1, 1
			f.Ends[2].Place, f.Ends[2].Alone = flush.RowInto, 0.1
		}), []string{"The rows share"}},
		{at(func(f *flush.Flush) { f.Ends[0].Flow = 1e-3 }), []string{"draws up to 60.00\u00a0L/min", "ends at 50.00\u00a0L/min"}},
		{&sheet.Sheet{Plan: plan.Default()}, []string{"as soon as"}},
	} {
		got := said(t, tt.s, "flush")
		for _, want := range tt.want {
			if !strings.Contains(got, want) {
				t.Errorf("not said: %s\nin %.600s", want, got)
			}
		}
	}
}
