package main

import (
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var (
	code     = regexp.MustCompile("(?s)```\n(.*?)```|`([^`\n]+)`")
	targets  = regexp.MustCompile(`\bmake ([a-z][a-z-]*)`)
	calls    = regexp.MustCompile(`\bgo run \./build ([a-z]+)`)
	testName = regexp.MustCompile(`^(Test|Fuzz)[A-Z]\w*$`)
)

// TestDocumentsAreTrue holds what the documents name against the tree: paths,
// make targets, commands, tests and links.
func TestDocumentsAreTrue(t *testing.T) {
	makefile, err := os.ReadFile("../Makefile")
	if err != nil {
		t.Fatal(err)
	}
	tests := testNames(t)
	named := 0
	for _, doc := range []string{"README.md", "DEVELOPERS.md"} {
		text, err := os.ReadFile("../" + doc)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range code.FindAllStringSubmatch(string(text), -1) {
			said := m[1] + m[2]
			for _, target := range targets.FindAllStringSubmatch(said, -1) {
				named++
				if !strings.Contains("\n"+string(makefile), "\n"+target[1]+":") {
					t.Errorf("%s names make %s, which the Makefile does not have", doc, target[1])
				}
			}
			for _, call := range calls.FindAllStringSubmatch(said, -1) {
				named++
				if !slices.ContainsFunc(commands, func(c command) bool { return c.name == call[1] }) {
					t.Errorf("%s names the command %s, which is not there", doc, call[1])
				}
			}
			switch {
			case testName.MatchString(m[2]):
				named++
				if !tests[m[2]] {
					t.Errorf("%s names %s, which is no test", doc, m[2])
				}
			case isPath(m[2]):
				named++
				if _, err := os.Stat(filepath.Join("..", m[2])); err != nil {
					t.Errorf("%s names %s, which is not there", doc, m[2])
				}
			}
		}
		for _, link := range regexp.MustCompile(`\]\(([^)#]+)\)`).FindAllStringSubmatch(string(text), -1) {
			if _, err := os.Stat(filepath.Join("..", link[1])); err != nil {
				t.Errorf("%s links to %s, which is not there", doc, link[1])
			}
		}
	}
	if named < 40 {
		t.Errorf("only %d names were found in the documents: the patterns miss them", named)
	}
}

// isPath reports whether a piece of code in a document is a path of the
// repository: it begins with one of its folders. What a build makes is not
// looked for.
func isPath(s string) bool {
	first, _, _ := strings.Cut(s, "/")
	return slices.Contains([]string{"wasm", "site", "content", "build", ".ci"}, first) &&
		!strings.ContainsAny(s, " *") && path.Clean(s) != "build/out" && path.Clean(s) != "build/out-edge"
}

// testNames is every test of the repository.
func testNames(t *testing.T) map[string]bool {
	t.Helper()
	names := map[string]bool{}
	found := regexp.MustCompile(`(?m)^func ((?:Test|Fuzz)\w+)\(`)
	for _, folder := range []string{"../wasm", "../build"} {
		err := filepath.WalkDir(folder, func(name string, d os.DirEntry, err error) error {
			if err != nil || d.Name() == "node_modules" {
				if err == nil {
					err = filepath.SkipDir
				}
				return err
			}
			if !strings.HasSuffix(name, "_test.go") {
				return nil
			}
			text, err := os.ReadFile(name)
			for _, m := range found.FindAllStringSubmatch(string(text), -1) {
				names[m[1]] = true
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return names
}

// The examples in README must run as they stand there.
func TestExamplesOfReadmeRun(t *testing.T) {
	text, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	ran := 0
	for _, line := range strings.Split(string(text), "\n") {
		args, ok := strings.CutPrefix(line, "go run ./build formula")
		if !ok {
			continue
		}
		ran++
		args, _, _ = strings.Cut(args, "#")
		// A shell takes the quotes away.
		split, err := exec.Command("sh", "-c", "printf '%s\\n' "+args).Output()
		if err != nil {
			t.Fatal(err)
		}
		var words []string
		for _, w := range strings.Split(string(split), "\n") {
			if w != "" {
				words = append(words, w)
			}
		}
		if code, out, errs := call("", append([]string{"formula"}, words...)...); code != 0 || out == "" {
			t.Errorf("%s: code %d\n%s", line, code, errs)
		}
	}
	if ran < 3 {
		t.Errorf("README has %d examples of formula, want 3", ran)
	}
}
