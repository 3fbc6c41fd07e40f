package main

import (
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"evenrow/build/edge"
	"evenrow/build/policy"
	"evenrow/build/server"
	"evenrow/build/site"
	"evenrow/build/tool"
	"evenrow/wasm/grower/plan"
)

// plain is the repository's own site for a host that answers with plan pages.
func plain(t *testing.T) *site.Bundle {
	t.Helper()
	b, err := site.Build(site.Source{
		Content: os.DirFS("../content"), Site: os.DirFS("../site"), Program: []byte("\x00asm"), Glue: []byte("globalThis.Go = class {};"),
		Tool: tool.New(), Answered: true,
	})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// A static host has no plan pages, so its site must not lead to one.
func TestAStaticSiteKnowsNoPlanPages(t *testing.T) {
	leads := []byte(`href="plan`)
	static, answered := real(t), plain(t)
	for name, content := range static.Files {
		if bytes.Contains(content, leads) || bytes.Contains(content, []byte("data-plain>")) {
			t.Errorf("%s leads to a plan page", name)
		}
	}
	if static.Shell != nil {
		t.Error("a static site has a shell")
	}
	if !bytes.Contains(answered.Files["index.html"], leads) || answered.Shell == nil {
		t.Error("the site of a host that has plan pages leads to none")
	}
}

// What the worker's script is told is what the program on this machine does.
func TestTheWorkerIsToldWhatTheServerDoes(t *testing.T) {
	b := plain(t)
	text, err := siteModule(b, []byte("\x00asm"))
	if err != nil {
		t.Fatal(err)
	}
	var told struct {
		Paths    []string
		Headers  [][2]string
		Files    []string
		Types    map[string]string
		Assets   string
		ForEver  string
		AskFirst string
		Shell    string
		Version  string
		MaxForm  int
	}
	inner := strings.TrimSuffix(strings.TrimPrefix(string(text), "export default "), ";\n")
	if err := json.Unmarshal([]byte(inner), &told); err != nil {
		t.Fatal(err)
	}
	if len(told.Headers) != len(policy.Headers) || told.Headers[0] != policy.Headers[0] || len(told.Paths) != len(edge.Paths()) || !strings.Contains(told.Shell, "[[job]]") || len(told.Files) != len(b.Files) || len(told.Version) != 64 || told.MaxForm != plan.MaxForm {
		t.Errorf("told %+v", told.Headers)
	}
	h := server.New(b.Files)
	for name := range b.Files {
		w := httptest.NewRecorder()
		h.ServeHTTP(w, httptest.NewRequest("GET", "/"+strings.TrimSuffix(name, "index.html"), nil))
		keep := told.AskFirst
		if strings.HasPrefix(name, told.Assets) {
			keep = told.ForEver
		}
		if w.Header().Get("Content-Type") != told.Types[filepath.Ext(name)] || w.Header().Get("Cache-Control") != keep {
			t.Errorf("%s: %q, %q here, and the worker is told %q, %q", name, w.Header().Get("Content-Type"), w.Header().Get("Cache-Control"), told.Types[filepath.Ext(name)], keep)
		}
	}
}

func TestAFinishedFolderIsServed(t *testing.T) {
	b := plain(t)
	shell, err := json.Marshal(b.Shell)
	if err != nil {
		t.Fatal(err)
	}
	all := site.Files{shellFile: shell}
	for name, content := range b.Files {
		all["site/"+name] = content
	}
	out := filepath.Join(t.TempDir(), "out")
	if err := write(out, all); err != nil {
		t.Fatal(err)
	}
	files, s, err := answered(out)
	if err != nil || len(files) != len(b.Files) || s.Plan != b.Shell.Plan {
		t.Fatalf("%v: %d files of %d", err, len(files), len(b.Files))
	}
	l, err := listen("127.0.0.1:0", 0)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	go http.Serve(l, edge.New(server.New(files), s, edge.Options{}))
	r, err := http.Get("http://" + l.Addr().String() + "/plan.json")
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	if text, err := io.ReadAll(r.Body); err != nil || !bytes.Contains(text, []byte("evenrow plan 1")) {
		t.Errorf("%s, %v", text, err)
	}
	if _, _, err := answered(t.TempDir()); err == nil || !strings.Contains(err.Error(), shellFile) {
		t.Errorf("a folder without a site: %v", err)
	}
}
