//go:build !js

package wasm

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// few are the switches and tables, by package and function or variable, that may
// name some of the kinds only, and why the others need none.
var few = map[string]string{
	"buy.asks":    "what a shop knows by its name needs no sentence",
	"grow.system": "what is done to the system, and not to plants, stands in the picture as a letter",
}

// Whatever says something for each of a list of kinds names them all: a kind that
// is added speaks nowhere as its neighbour. So it is of a table by kind, and of a
// switch that returns something for each; what such a switch returns at its end,
// or by default, would be said of a new kind as well.
func TestEveryKindIsNamed(t *testing.T) {
	kinds, seen, met := kindsDeclared(t), 0, map[string]bool{}
	for _, f := range sources(t, "shown", "../build/answer") {
		where := func(n ast.Node, of, what string, missing []string) {
			t.Errorf("%s: %s %s does not name %s", f.set.Position(n.Pos()), what, of, strings.Join(missing, ", "))
		}
		for _, d := range f.file.Decls {
			name := path.Base(f.pkg) + "." + declared(d)
			ast.Inspect(d, func(n ast.Node) bool {
				var named []ast.Expr
				what := "a switch over"
				switch n := n.(type) {
				case *ast.CompositeLit:
					what = "a table by"
					if _, array := n.Type.(*ast.ArrayType); !array {
						return true
					}
					for _, e := range n.Elts {
						if kv, keyed := e.(*ast.KeyValueExpr); keyed {
							named = append(named, kv.Key)
						}
					}
				case *ast.SwitchStmt:
					returns := false
					for _, c := range n.Body.List {
						c := c.(*ast.CaseClause)
						named = append(named, c.List...)
						for _, s := range c.Body {
							_, back := s.(*ast.ReturnStmt)
							returns = returns || back
						}
					}
					if !returns || n.Tag == nil {
						return true
					}
				}
				of, has := "", map[string]bool{}
				for _, e := range named {
					if kind, constant := f.constant(e, kinds); kind != "" {
						of, has[constant] = kind, true
					}
				}
				if met[name] = met[name] || of != ""; of == "" || few[name] != "" {
					return true
				}
				seen++
				if missing := slices.DeleteFunc(slices.Clone(kinds[of]), func(c string) bool { return has[c] }); len(missing) > 0 {
					where(n, of, what, missing)
				}
				return true
			})
		}
	}
	for name := range few {
		if !met[name] {
			t.Errorf("%s is let off, and names no kinds", name)
		}
	}
	if seen < 40 {
		t.Errorf("only %d switches and tables were looked at", seen)
	}
}

// A source is a file of code, and the package of each name in it.
type source struct {
	pkg  string // its folder, from the root of the repository
	file *ast.File
	set  *token.FileSet
	from map[string]string // import name: folder
}

func sources(t *testing.T, roots ...string) (list []source) {
	t.Helper()
	for _, root := range roots {
		err := filepath.WalkDir(root, func(name string, _ fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
				return err
			}
			set := token.NewFileSet()
			file, err := parser.ParseFile(set, name, nil, 0)
			if err != nil {
				return err
			}
			s := source{pkg: path.Join("wasm", filepath.ToSlash(filepath.Dir(name))), file: file, set: set, from: map[string]string{}}
			for _, i := range file.Imports {
				at := strings.TrimPrefix(strings.Trim(i.Path.Value, `"`), "evenrow/")
				s.from[path.Base(at)] = at
			}
			list = append(list, s)
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return list
}

// kindsDeclared returns the constants of every type whose constants are counted
// from one on, by folder and name of the type.
func kindsDeclared(t *testing.T) map[string][]string {
	kinds := map[string][]string{}
	for _, f := range sources(t, ".") {
		for _, d := range f.file.Decls {
			group, ok := d.(*ast.GenDecl)
			if !ok || group.Tok != token.CONST {
				continue
			}
			of := ""
			for _, spec := range group.Specs {
				v := spec.(*ast.ValueSpec)
				switch id, typed := v.Type.(*ast.Ident); {
				case typed && len(v.Values) == 1 && fmt.Sprint(v.Values[0]) == "iota":
					of = f.pkg + "." + id.Name
				case v.Type != nil || v.Values != nil:
					of = ""
				}
				if of != "" && v.Names[0].Name != "_" {
					kinds[of] = append(kinds[of], v.Names[0].Name)
				}
			}
		}
	}
	if len(kinds) < 30 {
		t.Fatalf("only %d lists of kinds are found", len(kinds))
	}
	return kinds
}

// constant returns the list of kinds that an expression is one of, if it is.
func (s *source) constant(e ast.Expr, kinds map[string][]string) (kind, name string) {
	pkg := s.pkg
	switch e := e.(type) {
	case *ast.SelectorExpr:
		x, ok := e.X.(*ast.Ident)
		if !ok {
			return "", ""
		}
		pkg, name = s.from[x.Name], e.Sel.Name
	case *ast.Ident:
		name = e.Name
	}
	for of, list := range kinds {
		if strings.HasPrefix(of, pkg+".") && slices.Contains(list, name) {
			return of, name
		}
	}
	return "", ""
}

// declared is the name of what is declared.
func declared(d ast.Decl) string {
	switch d := d.(type) {
	case *ast.FuncDecl:
		return d.Name.Name
	case *ast.GenDecl:
		if v, ok := d.Specs[0].(*ast.ValueSpec); ok {
			return v.Names[0].Name
		}
	}
	return ""
}
