package words

import "testing"

func TestLists(t *testing.T) {
	for _, tt := range []struct {
		parts                       []string
		and, list, notes, sentences string
	}{
		{nil, "", "", "", ""},
		{[]string{"a."}, "a.", "a.", "a.", "a."},
		{[]string{"a.", "b."}, "a. and b.", "a., b.", "a.; b.", "a. b."},
		{[]string{"a.", "b.", "c."}, "a., b. and c.", "a., b., c.", "a.; b.; c.", "a. b. c."},
	} {
		for _, got := range [][2]string{
			{And(tt.parts), tt.and}, {List(tt.parts...), tt.list}, {Notes(tt.parts...), tt.notes}, {Sentences(tt.parts...), tt.sentences},
		} {
			if got[0] != got[1] {
				t.Errorf("%q, want %q", got[0], got[1])
			}
		}
	}
	if got := Sentences("", "A.", "", "B.", ""); got != "A. B." {
		t.Errorf("what is not said leaves a space: %q", got)
	}
}
