package wording

import "testing"

func TestRows(t *testing.T) {
	for want, rows := range map[string][]int{
		"no row": nil, "row 3": {2}, "rows 1 and 2": {0, 1}, "rows 1 to 4": {0, 1, 2, 3}, "rows 1, 3 and 5": {0, 2, 4},
		"rows 1 to 3 and 5": {0, 1, 2, 4}, "rows 2, 3 and 7 to 9": {1, 2, 6, 7, 8}, "rows 1 to 3, 5, 7 and 8": {0, 1, 2, 4, 6, 7},
	} {
		if got := Rows(rows); got != want {
			t.Errorf("%v: %s, want %s", rows, got, want)
		}
	}
	if got := RowsBegin([]int{0, 1}) + RowsBegin([]int{4}) + RowsBegin(nil); got != "Rows 1 and 2Row 5No row" {
		t.Error(got)
	}
}
