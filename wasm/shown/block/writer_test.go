package block

import (
	"math"
	"testing"
)

func TestTextIsEscaped(t *testing.T) {
	for _, tt := range []struct{ typed, want string }{
		{"peppers", "peppers"},
		{`<script>alert("1")</script>`, "&lt;script&gt;alert(&#34;1&#34;)&lt;/script&gt;"},
		{"' onfocus='x", "&#39; onfocus=&#39;x"},
		{"a & b &lt; c", "a &amp; b &amp;lt; c"},
		{"Zürich – 7 °C", "Zürich – 7 °C"},
		{"\x00\x1b", "\uFFFD\uFFFD"},
	} {
		if got := (&Writer{}).Text(tt.typed).String(); got != tt.want {
			t.Errorf("text(%q) = %q\nwant %q", tt.typed, got, tt.want)
		}
		want := ` value="` + tt.want + `"`
		if got := (&Writer{}).Attr("value", tt.typed).String(); got != want {
			t.Errorf("attr(%q) = %q\nwant %q", tt.typed, got, want)
		}
	}
}

func TestCoordinatesAreShortAndFinite(t *testing.T) {
	for _, tt := range []struct {
		v    float64
		want string
	}{
		{0, "0"}, {12, "12"}, {12.34, "12.3"}, {-0.04, "0"}, {-0.06, "-0.1"}, {-3.5, "-3.5"},
		{math.NaN(), "0"}, {math.Inf(1), "0"}, {1e12, "0"},
	} {
		if got := string(appendTenths(nil, tt.v)); got != tt.want {
			t.Errorf("appendTenths(%g) = %q, want %q", tt.v, got, tt.want)
		}
	}
}
