package edge

import (
	"bytes"
	"compress/gzip"
	"strings"
	"testing"
	"unicode/utf16"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/scene"
)

// A form that cannot be read as it was meant is refused, and not answered with
// what was never asked.
func TestFormsThatAreNotWhatTheySay(t *testing.T) {
	const kind = "application/x-www-form-urlencoded"
	good := "name=Mine&rows.1.plants=7"
	var packed bytes.Buffer
	z := gzip.NewWriter(&packed)
	z.Write([]byte(good))
	z.Close()
	wide := ""
	for _, u := range utf16.Encode([]rune(good)) {
		wide += string([]byte{byte(u), byte(u >> 8)})
	}
	for name, tt := range map[string]struct {
		body   string
		header []string
		status int
		says   string
	}{
		"packed":                 {packed.String(), []string{"Content-Encoding", "gzip"}, 415, "without a Content-Encoding"},
		"said to be packed":      {good, []string{"Content-Encoding", "br"}, 415, "without a Content-Encoding"},
		"packed, unsaid":         {packed.String(), nil, 400, "must be UTF-8"},
		"of another charset":     {wide, []string{"Content-Type", kind + "; charset=utf-16"}, 415, "must be UTF-8"},
		"UTF-16, unsaid":         {wide, nil, 400, "no form of Evenrow"},
		"Latin-1":                {"name=Zo\xeb", nil, 400, "must be UTF-8"},
		"Latin-1 in escapes":     {"name=Zo%EB", nil, 400, "must be UTF-8"},
		"a lone percent sign":    {"name=50%", nil, 400, "after every percent sign"},
		"half an escape":         {"name=5%2", nil, 400, "after every percent sign"},
		"an escape of letters":   {"name=%zz", nil, 400, "after every percent sign"},
		"another site's form":    {"user=me&password=secret", nil, 400, "no form of Evenrow"},
		"no form at all":         {"<xml/>", nil, 400, "no form of Evenrow"},
		"two types":              {good, []string{"Content-Type", kind + ", text/plain"}, 415, "must be a form"},
		"an empty form":          {"", []string{"Content-Type", kind}, 200, scene.Title(plan.Default())},
		"UTF-8, said":            {good, []string{"Content-Type", kind + "; charset=UTF-8"}, 200, "Mine"},
		"packed in no way":       {good, []string{"Content-Encoding", "identity"}, 200, "Mine"},
		"one field among others": {"utm=1&name=Mine", nil, 200, "Mine"},
		"an escaped name":        {"n%61me=Mine", nil, 200, "Mine"},
		"nothing but a button":   {"action=add-row", nil, 200, "rows."},
		"a name that is no text": {"name=%00", nil, 422, "to put right"},
	} {
		w := ask(t, "POST", "/plan", tt.body, tt.header...)
		if w.Code != tt.status || !strings.Contains(w.Body.String(), tt.says) {
			t.Errorf("%s: %d, want %d and %q in\n%.300s", name, w.Code, tt.status, tt.says, w.Body)
		}
	}
	for query, status := range map[string]int{"name=%zz": 400, "name=Zo%EB": 400, "name=Zo%C3%AB": 200, "from=chat": 200, "from=%zz": 400} {
		if w := ask(t, "GET", "/plan?"+query, ""); w.Code != status {
			t.Errorf("GET /plan?%s: %d, want %d", query, w.Code, status)
		}
	}
}

// One path, one answer, however it is written; and no path leads elsewhere.
func TestPathsThatAreWrittenOddly(t *testing.T) {
	for target, status := range map[string]int{
		"/plan%2ecsv":             200,
		"/%70lan":                 200,
		"//plan.json":             200,
		"/x/../plan.json":         200,
		"/x%2f..%2fplan.json":     200,
		"/./plan.json":            200,
		"/plan/":                  404,
		"/plan//":                 404,
		"/PLAN":                   404,
		"/plan.csv/":              404,
		"/plan.CSV":               404,
		"/plan%00":                404,
		"/plan%ff":                404,
		"//evil.example/plan":     404,
		"///evil.example/x":       404,
		"/%2f/evil.example/":      404,
		"/https://evil.example/x": 404,
		"//guides.html":           200,
	} {
		w := ask(t, "GET", target, "")
		if w.Code != status || w.Header().Get("Location") != "" {
			t.Errorf("%s: %d, %v, want %d", target, w.Code, w.Header(), status)
		}
	}
}
