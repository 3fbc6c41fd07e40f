package problem

import "testing"

func TestErrIsSortedAndToldOnce(t *testing.T) {
	var l List
	if l.Err() != nil {
		t.Error("an empty list is an error")
	}
	l.Add("b.md", 2, "second")
	l.Add("b.md", 2, "second")
	l.Add("b.md", 0, "whole file")
	l.Add("a.md", 12, "first")
	const want = "a.md:12: first\nb.md: whole file\nb.md:2: second"
	if got := l.Err().Error(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
