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

// The lines of README's command line must run as they stand there, one after
// another, in an empty folder: by a shell, with this program in the place of
// "go run ./build".
func TestExamplesOfReadmeRun(t *testing.T) {
	text, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, block, _ := strings.Cut(string(text), "## On the command line")
	_, block, _ = strings.Cut(block, "```\n")
	block, _, _ = strings.Cut(block, "```")

	folder, bin := t.TempDir(), t.TempDir()
	program := filepath.Join(bin, "evenrow")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	stand := "#!/bin/sh\n[ \"$1 $2\" = 'run ./build' ] || exit 3\nshift 2\nexec " + program + " \"$@\"\n"
	if err := os.WriteFile(filepath.Join(bin, "go"), []byte(stand), 0o755); err != nil {
		t.Fatal(err)
	}
	said := map[string]string{}
	for _, line := range strings.Split(strings.TrimSpace(block), "\n") {
		name := strings.Fields(line)[3]
		if name == "sizes" {
			continue // compiles the program with the real go; make build runs the same
		}
		run := exec.Command("sh", "-c", line)
		run.Dir = folder
		run.Env = append(os.Environ(), "PATH="+bin+":"+os.Getenv("PATH"))
		var errs strings.Builder
		run.Stderr = &errs
		out, err := run.Output()
		if err != nil || errs.Len() > 0 || len(out) == 0 && name != "example" {
			t.Errorf("%s: %v, %d bytes\n%s", line, err, len(out), errs.String())
		}
		said[line] = string(out)
	}
	if len(said) < 10 {
		t.Errorf("README has %d lines of the command line, want 10", len(said))
	}
	plan, err := os.ReadFile(filepath.Join(folder, "plan.json"))
	if err != nil {
		t.Fatal(err)
	}
	back := false
	for line, out := range said {
		back = back || strings.Contains(line, "link \"$(") && strings.TrimSpace(out) == strings.TrimSpace(string(plan))
	}
	if !back {
		t.Error("the link does not come back as the plan")
	}
	// What is said of help is so.
	for _, name := range regexp.MustCompile(`go run \./build ([a-z]+)`).FindAllStringSubmatch(string(text), -1) {
		if code, out, _ := call("", name[1], "-h"); code != 0 || !strings.HasPrefix(out, "Usage: ") {
			t.Errorf("%s -h: code %d", name[1], code)
		}
	}
}
