package page

import (
	"strings"
	"testing"

	"evenrow/wasm/ground/words"
)

func TestSpeak(t *testing.T) {
	defer words.Use(nil)
	answer := func() string {
		html, _ := fragment(new(Session).Open("#/buy"), "job")
		return html
	}
	if r := Speak("counts: one many\n\nWhat joins what\nWas zu kaufen ist\n"); r.Announce != "" || !strings.Contains(answer(), "Was zu kaufen ist") {
		t.Errorf("%q: %.300s", r.Announce, answer())
	}
	if r := Speak("a page that is no list"); r.Announce == "" || !strings.Contains(answer(), "Was zu kaufen ist") {
		t.Errorf("%q: a list that is none changes the language", r.Announce)
	}
}
