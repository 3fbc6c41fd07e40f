package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
)

// A pack is a package as it is written.
type pack struct {
	path, folder string
	fset         *token.FileSet
	files        []*ast.File
	source       map[string][]byte // by name of file
	info         *types.Info
	types        *types.Package
}

// listed is what go list says of a package.
type listed struct {
	ImportPath, Dir, Export string
	GoFiles                 []string
	DepOnly                 bool
}

// load reads the packages that patterns name and finds the type of every
// expression in them.
func load(patterns ...string) ([]*pack, error) {
	cmd := exec.Command("go", append([]string{"list", "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles,DepOnly", "--"}, patterns...)...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var wanted []listed
	exports := map[string]string{}
	for dec := json.NewDecoder(bytes.NewReader(out)); ; {
		var l listed
		if err := dec.Decode(&l); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		exports[l.ImportPath] = l.Export
		if !l.DepOnly {
			wanted = append(wanted, l)
		}
	}
	var packs []*pack
	for _, l := range wanted {
		p, err := parse(l, exports)
		if err != nil {
			return nil, err
		}
		packs = append(packs, p)
	}
	return packs, nil
}

func parse(l listed, exports map[string]string) (*pack, error) {
	p := &pack{
		path: l.ImportPath, folder: l.Dir,
		fset:   token.NewFileSet(),
		source: map[string][]byte{},
		info:   &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{}},
	}
	for _, name := range l.GoFiles {
		name = filepath.Join(l.Dir, name)
		text, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		file, err := parser.ParseFile(p.fset, name, text, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		p.files, p.source[name] = append(p.files, file), text
	}
	config := types.Config{Importer: importer.ForCompiler(p.fset, "gc", func(path string) (io.ReadCloser, error) {
		return os.Open(exports[path])
	})}
	var err error
	p.types, err = config.Check(l.ImportPath, p.fset, p.files, p.info)
	return p, err
}
