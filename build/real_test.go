package main

import (
	"bytes"
	"maps"
	"os"
	"testing"

	"evenrow/build/site"
	"evenrow/build/sizes"
	"evenrow/build/tool"
)

// real is the repository's own site around a program that does nothing.
func real(t *testing.T) *site.Bundle { return built(t, false) }

// built is the same, also for a host that answers for plans.
func built(t *testing.T, answered bool) *site.Bundle {
	t.Helper()
	b, err := site.Build(site.Source{
		Content: os.DirFS("../content"),
		Site:    os.DirFS("../site"),
		Program: []byte("\x00asm"),
		Glue:    []byte("globalThis.Go = class {};"),
		Tool:    tool.New(),

		Answered: answered,
	})
	if err != nil {
		t.Fatalf("the site has problems:\n%v", err)
	}
	return b
}

func TestTheSiteHasNoProblems(t *testing.T) {
	b := real(t)
	if _, err := sizes.Budget(0, b.Script, b.Style); err != nil {
		t.Error(err)
	}
}

func TestTheSiteIsTheSameTwice(t *testing.T) {
	a, b := real(t), real(t)
	for name := range a.Files {
		if !bytes.Equal(a.Files[name], b.Files[name]) {
			t.Errorf("two builds of one tree differ in %s", name)
		}
	}
	if !maps.EqualFunc(a.Files, b.Files, bytes.Equal) {
		t.Error("two builds of one tree differ")
	}
}
