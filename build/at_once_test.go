package main

import (
	"go/ast"
	"go/build"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// A package in which things happen at once, by goroutines, channels or what is
// shared between them, has a test whose name ends in AtOnce: make race runs
// those under the detector of races.
func TestWhatRunsAtOnceIsTested(t *testing.T) {
	together, tested := map[string]string{}, map[string]bool{}
	for _, root := range []string{"../build", "../wasm"} {
		err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(name, ".go") {
				return err
			}
			file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			folder := filepath.Dir(name)
			if ok, err := build.Default.MatchFile(folder, filepath.Base(name)); err != nil || !ok {
				return err // of a program in WebAssembly, which has one thread
			}
			if strings.HasSuffix(name, "_test.go") {
				for _, d := range file.Decls {
					f, ok := d.(*ast.FuncDecl)
					if ok && f.Recv == nil && strings.HasPrefix(f.Name.Name, "Test") && strings.HasSuffix(f.Name.Name, "AtOnce") {
						tested[folder] = true
					}
				}
				return nil
			}
			for _, i := range file.Imports {
				if path := strings.Trim(i.Path.Value, `"`); path == "sync" || path == "sync/atomic" {
					together[folder] = name
				}
			}
			ast.Inspect(file, func(n ast.Node) bool {
				switch n.(type) {
				case *ast.GoStmt, *ast.ChanType:
					together[folder] = name
				}
				return true
			})
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if together["../build/queue"] == "" {
		t.Errorf("of what happens at once in build/queue, nothing was found: %v", together)
	}
	for folder, name := range together {
		if !tested[folder] {
			t.Errorf("in %s things happen at once, and no test's name in its folder ends in AtOnce", name)
		}
	}
}
