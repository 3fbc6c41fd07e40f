package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"errors"
	"maps"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"evenrow/build/guide"
	"evenrow/build/policy"
	"evenrow/build/server"
)

// small is a whole site, as small as one can be.
func small() Source {
	file := func(s string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(s)} }
	return Source{
		Site: fstest.MapFS{
			"templates/base.html": file(`{{define "base"}}<!doctype html>
<html lang="en" data-worker="{{.Worker}}" data-program="{{.Program}}" data-offline="{{.Offline}}"><head>
<meta http-equiv="Content-Security-Policy" content="{{.Policy}}"><title>{{.Title}}</title>
<link rel="icon" href="{{.Icon}}"><link rel="manifest" href="{{.Manifest}}"><link rel="stylesheet" href="{{.Style}}">
<script type="module" src="{{.Script}}"></script></head><body>
<nav>{{range .Nav}}<a href="{{.Href}}"{{if .Here}} aria-current="page"{{end}}>{{.Title}}</a>{{end}}</nav>
{{template "main" .}}</body></html>{{end}}`),
			"templates/index.html":   file(`{{define "main"}}<main><h1>Plan</h1><div id="answer">{{index .Fragments "answer"}}</div>{{range .Cautions}}<template data-for="{{.Name}}">{{.Inner}}</template>{{end}}</main>{{end}}`),
			"templates/guide.html":   file(`{{define "main"}}<main><h1>{{.Title}}</h1>{{.Body}}{{range .Contents}}<a href="{{.Href}}">{{.Title}}</a>{{end}}{{with .After}}<a href="{{.Href}}">Next</a>{{end}}</main>{{end}}`),
			"css/b.css":              file("@layer base { b { color: light-dark(#000, #fff); } }"),
			"css/a.css":              file("@layer tokens, base;"),
			"js/page.js":             file("// @ts-check\nimport { swap } from \"./swap.js\";\nswap(document.title);\n"),
			"js/swap.js":             file("/** @param {string} s */\nexport function swap(s) { document.title = s; }\n"),
			"js/early.js":            file("document.documentElement.dataset.early = \"\";\n"),
			"js/worker.js":           file("self.onmessage = () => { self.postMessage(new Glue()); };\n"),
			"js/offline.js":          file("const files = __FILES__;\nconst cache = \"evenrow-__VERSION__\";\nself.addEventListener(\"install\", (e) => e.waitUntil(caches.open(cache).then((c) => c.addAll(Object.keys(files)))));\n"),
			"icons/icon.svg":         file(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10"><path id="drop" d="M 1 1 L 2 2"/></svg>`),
			"manifest.webmanifest":   file(`{ "name": "Evenrow", "start_url": "./", "icons": [ { "src": "icons/icon.svg" } ] }`),
			"templates/parts/x.html": file(`{{define "x"}}{{end}}`),
		},
		Content: fstest.MapFS{
			"cautions/blades.md": file("---\ntitle: Knives\nstanding: practice\nsource: Common practice, no source\n---\nCut away from you.\n"),
			"guides/pump.md":     file("---\ntitle: Pumps\nsummary: S\norder: 2\nsources:\n- W\n---\n## Reading\n\nSee [rows](rows.html#one).\n"),
			"guides/rows.md":     file("---\ntitle: Rows\nsummary: S\norder: 1\nsources:\n- W\n---\n## One\n\n> [!CAUTION] blades\n\nSee [pumps](pump.md#reading), the [planner](index.html) and [a plan](index.html#p=1).\n"),
		},
		Program: []byte("\x00asm"),
		Glue:    []byte("globalThis.Glue = class {};"),
		Tool: Tool{
			Start: func() map[string]string {
				return map[string]string{"answer": `<p>Yes. <a href="#p=2">Change</a></p><div class="caution" data-caution="blades"></div>`}
			},
			Guides: guide.Tools{Plan: func(_, _ string) (string, error) { return "", errors.New("no plans here") }},
			Names:  []Name{{From: "field rows.spacing", Guide: "pump#reading", Caution: "blades"}},
			IsPlan: func(fragment string) bool { return strings.HasPrefix(fragment, "p=") },
		},
	}
}

func build(t *testing.T, src Source) *Bundle {
	t.Helper()
	b, err := Build(src)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// with returns the small site with one file changed, or gone when s is empty.
func with(name, s string) Source {
	src := small()
	for _, folder := range []fstest.MapFS{src.Site.(fstest.MapFS), src.Content.(fstest.MapFS)} {
		if _, ok := folder[name]; ok && s == "" {
			delete(folder, name)
			return src
		}
	}
	folder := src.Site.(fstest.MapFS)
	if strings.HasPrefix(name, "guides/") || strings.HasPrefix(name, "cautions/") {
		folder = src.Content.(fstest.MapFS)
	}
	folder[name] = &fstest.MapFile{Data: []byte(s)}
	return src
}

var hashedName = regexp.MustCompile(`-[0-9a-f]{16}\.`)

func TestFilesOfASite(t *testing.T) {
	b := build(t, small())
	var names []string
	for name := range b.Files {
		names = append(names, hashedName.ReplaceAllString(name, "-HASH."))
		if _, ok := server.Type(name); !ok {
			t.Errorf("the server does not know the kind of %s", name)
		}
	}
	slices.Sort(names)
	want := []string{
		"404.html", "assets/early-HASH.js", "assets/page-HASH.js", "assets/planner-HASH.wasm", "assets/style-HASH.css",
		"assets/worker-HASH.js", "guides.html", "icons/icon.svg", "index.html", "manifest.webmanifest", "offline.js",
		"pump.html", "rows.html",
	}
	if !slices.Equal(names, want) {
		t.Errorf("files\n%q\nwant\n%q", names, want)
	}
	if string(b.Files[b.Program]) != "\x00asm" || b.Script == 0 || b.Style == 0 {
		t.Errorf("program %q, script %d bytes, style %d bytes", b.Program, b.Script, b.Style)
	}
}

func TestSameInputSameBytes(t *testing.T) {
	a, b := build(t, small()), build(t, small())
	if !maps.EqualFunc(a.Files, b.Files, bytes.Equal) {
		t.Error("two builds of one source differ")
	}
}

// A change anywhere gives the cache another name, so that files of two
// versions never mix.
func TestAnyChangeNamesAnotherCache(t *testing.T) {
	cache := func(src Source) string {
		return regexp.MustCompile(`evenrow-[0-9a-f]{16}`).FindString(string(build(t, src).Files["offline.js"]))
	}
	was := cache(small())
	if was == "" {
		t.Fatal("the service worker has no name for its cache")
	}
	for name, s := range map[string]string{
		"css/b.css":      "@layer base { b { color: red; } }",
		"js/worker.js":   "self.onmessage = null;",
		"icons/icon.svg": `<svg xmlns="http://www.w3.org/2000/svg"/>`,
		"guides/pump.md": "---\ntitle: Other pumps\nsummary: S\norder: 2\nsources:\n- W\n---\n## Reading\n",
	} {
		if cache(with(name, s)) == was {
			t.Errorf("the cache keeps its name when %s changes", name)
		}
	}
}

func TestServiceWorkerKeepsEveryFile(t *testing.T) {
	files := build(t, small()).Files
	script := string(files["offline.js"])
	var sums map[string]string
	if err := json.Unmarshal([]byte(script[strings.Index(script, "{"):strings.Index(script, "}")+1]), &sums); err != nil {
		t.Fatalf("%v in %s", err, script)
	}
	var kept []string
	for name, have := range sums {
		kept = append(kept, name)
		want := sha256.Sum256(files[name])
		if have != base64.StdEncoding.EncodeToString(want[:]) {
			t.Errorf("of %s it is told another hash than that of its content", name)
		}
	}
	// The browser keeps the first itself; the second is no page to open.
	kept = append(kept, "offline.js", "404.html")
	slices.Sort(kept)
	if want := slices.Sorted(maps.Keys(files)); !slices.Equal(kept, want) {
		t.Errorf("keeps\n%q\nof\n%q", kept, want)
	}
}

func TestScriptsAreJoined(t *testing.T) {
	file := func(s string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(s)} }
	src := small()
	src.Site.(fstest.MapFS)["js/page.js"] = file("import { swap, two } from \"./swap.js\";\nimport \"./alone.js\";\nswap(document.title + two);\n")
	src.Site.(fstest.MapFS)["js/swap.js"] = file("import { three } from \"./three.js\";\nexport function swap(s) { document.title = s + hidden; }\nexport const two = 2;\nconst hidden = three;\n")
	src.Site.(fstest.MapFS)["js/three.js"] = file("export const three = 3;\nconst own = 4;\nconsole.log(own);\n")
	src.Site.(fstest.MapFS)["js/alone.js"] = file("import { three } from \"./three.js\";\nconsole.log(three);\n")
	files := build(t, src).Files
	var page, worker string
	for name := range files {
		switch {
		case strings.HasPrefix(name, "assets/page-"):
			page = name
		case strings.HasPrefix(name, "assets/worker-"):
			worker = name
		case strings.HasSuffix(name, ".js") && name != "offline.js" && !strings.HasPrefix(name, "assets/early-"):
			t.Errorf("%s is a file of its own", name)
		}
	}
	script := string(files[page])
	if strings.Contains(script, "import") || strings.Contains(script, "export") || strings.Contains(script, "hidden") {
		t.Errorf("%s is not joined: %s", page, script)
	}
	// It does what the modules did, in their order.
	if node, err := exec.LookPath("node"); err == nil {
		said, err := exec.Command(node, "--input-type=module", "-e", "globalThis.document = {title: 'x'};"+script+";console.log(document.title)").CombinedOutput()
		if err != nil || string(said) != "4\n3\nx23\n" {
			t.Errorf("%s says %q, %v", page, said, err)
		}
	} else {
		t.Error("there is no node to try the script with")
	}
	w := string(files[worker])
	if !strings.HasPrefix(w, "/*!") || !strings.Contains(w, "globalThis.Glue=class") ||
		strings.Index(w, "globalThis.Glue=class") > strings.Index(w, "onmessage") {
		t.Errorf("the worker is not the notice, the glue and the script: %s", w)
	}
	if !strings.Contains(string(files["index.html"]), `src="`+page+`"`) || !strings.Contains(string(files["index.html"]), `data-worker="`+worker+`"`) {
		t.Errorf("index.html does not name its scripts: %s", files["index.html"])
	}
}

func TestPages(t *testing.T) {
	files := build(t, small()).Files
	for name, want := range map[string][]string{
		"index.html":  {`<a href="./" aria-current="page">Planner</a>`, `<p>Yes. <a href="#p=2">`, `data-caution="blades"><p class="caution__title">Knives</p>`, `<template data-for="blades"><p class="caution__title">Knives</p>`, policy.TrustedTypes},
		"guides.html": {`<a href="guides.html" aria-current="page">Guides</a>`, "<h1>Guides</h1>"},
		"rows.html":   {"Cut away from you.", `href="pump.html#reading"`, `<a href="pump.html">Next</a>`, `<a href="#one">One</a>`},
		"404.html":    {`href="/guides.html"`, `href="/assets/style-`, `src="/assets/page-`, `href="/icons/icon.svg"`},
	} {
		for _, s := range want {
			if !strings.Contains(string(files[name]), s) {
				t.Errorf("%s lacks %s:\n%s", name, s, files[name])
			}
		}
	}
	var style string
	for name, content := range files {
		if strings.HasSuffix(name, ".css") {
			style = string(content)
		}
	}
	if style != "@layer tokens,base;@layer base{b{color:light-dark(#000,#fff)}}" {
		t.Errorf("style %s", style)
	}
}

func TestProblems(t *testing.T) {
	const guideHead = "---\ntitle: Pumps\nsummary: S\norder: 2\nsources:\n- W\n---\n"
	index := func(main string) string { return `{{define "main"}}` + main + `{{end}}` }
	tests := []struct{ name, file, content, want string }{
		{"no page of that name", "guides/pump.md", guideHead + "## Reading\n\n[x](pmup.html)\n",
			"content/guides/pump.md:10: links to pmup.html, but there is no page pmup.html"},
		{"no place of that name", "guides/pump.md", guideHead + "## Reading\n\n[x](rows.html#two)\n",
			"content/guides/pump.md:10: links to rows.html#two, but rows.html has no place called two"},
		{"no place on the page itself", "guides/pump.md", guideHead + "## Reading\n\n[x](#two)\n",
			"content/guides/pump.md:10: links to #two, but pump.html has no place called two"},
		{"another scheme", "guides/pump.md", guideHead + "## Reading\n\n[x](http://x.test)\n",
			"content/guides/pump.md:10: links to http://x.test, which is neither a page of the site nor an https address"},
		{"a field's place is gone", "guides/pump.md", guideHead + "## Other\n",
			"content/guides/rows.md:12: links to pump.html#reading, but pump.html has no place called reading\n" +
				"wasm: field rows.spacing links to pump.html#reading, but pump.html has no place called reading"},
		{"a caution is gone", "cautions/blades.md", "",
			"content/cautions: holds no files that end in .md\n" +
				"content/guides/rows.md:10: there is no caution blades in content/cautions\n" +
				"wasm: field rows.spacing names the caution blades, which is not in content/cautions"},
		{"a guide with a page's name", "guides/index.md", "---\ntitle: T\nsummary: S\norder: 3\nsources:\n- W\n---\nText.\n",
			"content/guides/index.md: has the name of another page of the site"},
		{"no title", "templates/index.html", index("<main></main>"), "site/templates/index.html: index.html must have one h1, and has 0"},
		{"no main", "templates/index.html", index("<h1>x</h1>"), "site/templates/index.html: index.html must have one main part, and has 0"},
		{"a skipped rank", "templates/index.html", index("<main><h1>x</h1><h3>x</h3></main>"),
			"site/templates/index.html: index.html skips from a heading of rank 1 to one of rank 3"},
		{"an id twice", "templates/index.html", index(`<main><h1 id="a">x</h1><svg><g id="a"/></svg></main>`),
			"site/templates/index.html: index.html has two elements with the id a"},
		{"inline style in a picture", "templates/index.html", index(`<main><h1>x</h1><svg><g style="fill:red"/></svg></main>`),
			"site/templates/index.html: index.html has a style attribute on g, which the policy refuses"},
		{"inline handler", "templates/index.html", index(`<main><h1 onclick="x()">x</h1></main>`),
			"site/templates/index.html: index.html has the attribute onclick on h1, which the policy refuses"},
		{"inline script", "templates/index.html", index(`<main><h1>x</h1><script>x()</script></main>`),
			"site/templates/index.html: index.html has a script within the page, which the policy refuses"},
		{"a picture that is missing", "templates/index.html", index(`<main><h1>x</h1><img src="x.png" alt="x"></main>`),
			"site/templates/index.html: index.html loads x.png, which is missing"},
		{"a picture without words", "templates/index.html", index(`<main><h1>x</h1><img src="icons/icon.svg"></main>`),
			"site/templates/index.html: index.html has a picture without the attribute alt"},
		{"a field that a page lacks", "templates/index.html", index(`<main><h1>{{.Titel}}</h1></main>`),
			`can't evaluate field Titel in type site.Index`},
		{"a fragment that is missing", "templates/index.html", index(`<main><h1>{{.Fragments.rows}}</h1></main>`),
			`map has no entry for key "rows"`},
		{"a script that nothing imports", "js/lost.js", "export {};", "site/js/lost.js: is imported by no script"},
		{"a script that is missing", "js/swap.js", "", "site/js/swap.js: is missing or cannot be read"},
		{"a script that exports what cannot be joined", "js/swap.js", "export default 1;", "site/js/swap.js: cannot be joined with the others for the line export default 1;"},
		{"a script that does not export what is imported", "js/swap.js", "function swap() {}", "site/js/page.js: imports swap, which swap.js does not export"},
		{"two scripts with one name", "js/page.js", "import { swap } from \"./swap.js\";\nconst f = () => swap(1);\nfunction swap() {}", "site/js/swap.js: declares swap, as page.js does"},
		{"a script that means a name of the browser", "js/swap.js", "export function swap() {}\nfunction title() {}\nclass document {}", "site/js/page.js: uses document, which is also a name in swap.js"},
		{"scripts in a ring", "js/swap.js", "import \"./page.js\";\nexport function swap() {}", "site/js/page.js: imports itself, by way of page.js, swap.js"},
		{"a script that is none", "js/worker.js", "self.onmessage = (;", "site/js/worker.js: cannot be minified"},
		{"no service worker", "js/offline.js", "", "site/js/offline.js: is missing or cannot be read"},
		{"a service worker that is told nothing", "js/offline.js", "self.x = 1;", "site/js/offline.js: must hold __FILES__ once\nsite/js/offline.js: must hold __VERSION__ once"},
		{"no icon", "icons/icon.svg", "", "site/icons/icon.svg: is missing"},
		{"an icon of the manifest", "manifest.webmanifest", `{"start_url": "./", "icons": [{"src": "icons/big.png"}]}`,
			"site/manifest.webmanifest: names the icon icons/big.png, which is missing"},
		{"a start elsewhere", "manifest.webmanifest", `{"start_url": "/x", "icons": [{"src": "icons/icon.svg"}]}`,
			`site/manifest.webmanifest: start_url must be "./", so that the site works in any folder`},
		{"an unknown kind", "icons/x.bmp", "x", "site/icons/x.bmp: is of a kind that the server does not know"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			b, err := Build(with(tt.file, tt.content))
			if err == nil || b != nil {
				t.Fatalf("built without a problem, want %s", tt.want)
			}
			if !strings.Contains(err.Error(), tt.want) {
				t.Errorf("got\n%v\nwant\n%s", err, tt.want)
			}
		})
	}
}

// What the pages depend on must come through the minifier.
func TestMinifyingKeepsMeaning(t *testing.T) {
	b := &builder{}
	for _, tt := range []struct{ file, in, want string }{
		{"x.html", `<label for="a b">x</label> <input id="a b" value="" aria-invalid="false" type="text" inputmode="decimal">`, `<label for="a b">x</label> <input id="a b" aria-invalid="false" type="text" inputmode="decimal">`},
		{"x.html", `<option value="">none</option>`, `<option value>none</option>`},
		{"x.html", `<p>a <b> c </b> d</p>`, `<p>a <b>c </b>d</p>`},
		{"x.html", `<img alt="" src="x.svg">`, `<img alt src="x.svg">`},
		{"x.html", `<div id="errors" class="" tabindex="-1"></div>`, `<div id="errors" tabindex="-1"></div>`},
		{"x.html", `<p hidden aria-live="polite" data-announce></p>`, `<p hidden aria-live="polite" data-announce></p>`},
		{"x.html", `<svg viewBox="0 0 10 10" role="img" aria-label="a b"><g id="g1" class="row"><text x="1.5" y="2">12 m</text></g></svg>`,
			`<svg viewBox="0 0 10 10" role="img" aria-label="a b"><g id="g1" class="row"><text x="1.5" y="2">12 m</text></g></svg>`},
		{"x.css", "@layer a, b;\n@layer a { :root { color-scheme: light dark; --x: light-dark(#111111, #eee); } }", "@layer a,b;@layer a{:root{color-scheme:light dark;--x:light-dark(#111111, #eee)}}"},
		{"x.css", "@layer a { @media (width >= 64rem) { .a { inset-block-start: 0; margin-inline: auto } } }", "@layer a{@media(width >= 64rem){.a{inset-block-start:0;margin-inline:auto}}}"},
		{"x.css", "@media print { @page { size: A4; margin: 15mm } }", "@media print{@page{size:A4;margin:15mm}}"},
		{"x.svg", `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 8 8"><path id="drop" d="M 1 1 L 2 2"/></svg>`, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 8 8"><path id="drop" d="M1 1 2 2"/></svg>`},
		{"x.webmanifest", `{ "start_url": "./" }`, `{"start_url":"./"}`},
	} {
		if got := string(b.minified(tt.file, tt.file, []byte(tt.in))); got != tt.want {
			t.Errorf("%s\n%s\nbecomes\n%s\nwant\n%s", tt.file, tt.in, got, tt.want)
		}
	}
}

// The minifier writes over what it is given: a script that was measured by
// itself and then joined to another lost its names.
func TestMinifyingLeavesItsInputAlone(t *testing.T) {
	const script = "addEventListener(\"message\", async ({ data }) => { try { f(data); } catch (fault) { g(fault); } });"
	b, in := &builder{}, append(make([]byte, 0, 4096), script...) // a file is read into more room than it takes
	b.minified("x.js", "x.js", in)
	if string(in) != script {
		t.Errorf("the input has become %s", in)
	}
}
