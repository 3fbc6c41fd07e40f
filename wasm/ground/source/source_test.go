package source

import "testing"

func TestString(t *testing.T) {
	tests := []struct {
		ref  Ref
		want string
	}{
		{Ref{Work: "A", At: "p. 3"}, "A, p. 3"},
		{Ref{Work: "A"}, "A"},
		{Ref{Work: "A", Standing: Memory}, "A (from memory)"},
		{Ref{Work: "A", At: "p. 3", Standing: Derived}, "A, p. 3 (derived)"},
		{Ref{Standing: Practice}, "common practice, no source"},
		{Ref{Standing: Choice}, "our own choice"},
		{Ref{At: "the safe side", Standing: Choice}, "the safe side (our own choice)"},
		{Ref{At: "algebra", Standing: Derived}, "algebra (derived)"},
	}
	for _, tt := range tests {
		if got := tt.ref.String(); got != tt.want {
			t.Errorf("%#v is %q, want %q", tt.ref, got, tt.want)
		}
	}
}
