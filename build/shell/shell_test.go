package shell

import "testing"

func TestFill(t *testing.T) {
	page := "<title>" + Mark(Title) + `</title><a href="` + Mark(Origin) + "/x?" + Mark(Link) + `">` + Mark("nothing") + "</a>"
	got := Fill(page, map[string]string{Title: Mark(Link) + " &amp; more", Origin: "https://example.org", Link: "1abc"})
	if want := "<title>" + Mark(Link) + ` &amp; more</title><a href="https://example.org/x?1abc"></a>`; got != want {
		t.Errorf("filled in:\n%s\nwant\n%s", got, want)
	}
}

func TestCautions(t *testing.T) {
	text := func(name string) string { return "<p>" + name + "</p>" }
	for in, want := range map[string]string{
		`<div class="caution" data-caution="acid" role="note"></div>b`: `<div class="caution" data-caution="acid" role="note"><p>acid</p></div>b`,
		`<div data-caution="a"></div><div data-caution="b"></div>`:     `<div data-caution="a"><p>a</p></div><div data-caution="b"><p>b</p></div>`,
		`<p>none</p>`: `<p>none</p>`,
	} {
		if got := Cautions(in, text); got != want {
			t.Errorf("Cautions(%q)\n= %q\nwant %q", in, got, want)
		}
	}
}
