//go:build !js

package wasm

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"path/filepath"
	"slices"
	"testing"

	load "golang.org/x/tools/go/packages"
)

const planPath = module + "grower/plan"

// carriers hold, show and keep every field of a plan, whatever it is for: what
// they do with one does not use it.
var carriers = []string{planPath, module + "grower/carry", module + "shown/form"}

// Each field of the plan is read where something is worked out or said with it:
// in a package that is none of the carriers, or in a function of package plan
// that such a package calls. What only its form, its limits and its examples
// know is asked of a grower for nothing.
func TestEveryFieldOfThePlanIsUsed(t *testing.T) {
	stat(t)
	pkgs, err := load.Load(&load.Config{
		Mode: load.NeedName | load.NeedFiles | load.NeedSyntax | load.NeedTypes | load.NeedTypesInfo | load.NeedImports,
		Fset: token.NewFileSet(),
	}, "./...")
	if err != nil {
		t.Fatal(err)
	}
	fields := map[string]string{}  // of the plan, by place: "Supply.Tank"
	reads := map[string][]string{} // places of the fields and functions of package plan that are read in a function of it, by its place
	var reached []string           // those that are read elsewhere
	for _, pkg := range pkgs {
		for _, err := range pkg.Errors {
			t.Fatal(err)
		}
		switch {
		case pkg.PkgPath == planPath:
			leaves(pkg, pkg.Types.Scope().Lookup("Plan").Type(), fields)
			for _, file := range pkg.Syntax {
				for _, d := range file.Decls {
					if f, is := d.(*ast.FuncDecl); is { // and not the lists of fields and sections, which are variables
						reads[place(pkg, pkg.TypesInfo.Defs[f.Name])] = readOfPlan(pkg, f)
					}
				}
			}
		case !slices.Contains(carriers, pkg.PkgPath):
			for _, file := range pkg.Syntax {
				reached = append(reached, readOfPlan(pkg, file)...)
			}
		}
	}
	used := map[string]bool{}
	for len(reached) > 0 {
		at := reached[len(reached)-1]
		if reached = reached[:len(reached)-1]; !used[at] {
			used[at] = true
			reached = append(reached, reads[at]...)
		}
	}
	for at, name := range fields {
		if !used[at] {
			t.Errorf("%s: nothing uses %s of the plan", at, name)
		}
	}
	if len(fields) < 100 || len(reads) < 100 {
		t.Errorf("package plan has %d fields and %d functions", len(fields), len(reads))
	}
}

// leaves gathers the fields of a struct of package plan, and of those that it
// holds, by place; what holds others is none.
func leaves(pkg *load.Package, of types.Type, fields map[string]string) {
	named := of.(*types.Named)
	s := named.Underlying().(*types.Struct)
	for i := range s.NumFields() {
		f := s.Field(i)
		inner := f.Type()
		switch list := inner.(type) {
		case *types.Slice:
			inner = list.Elem()
		case *types.Array:
			inner = list.Elem()
		}
		if n, is := inner.(*types.Named); is && n.Obj().Pkg() == pkg.Types {
			if _, is := n.Underlying().(*types.Struct); is {
				leaves(pkg, n, fields)
				continue
			}
		}
		fields[place(pkg, f)] = named.Obj().Name() + "." + f.Name()
	}
}

// readOfPlan returns the places of what is read of package plan in a part of a
// package: its fields and its functions. What is only set is not read.
func readOfPlan(pkg *load.Package, part ast.Node) (places []string) {
	set := map[*ast.Ident]bool{}
	ast.Inspect(part, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.AssignStmt:
			for _, to := range n.Lhs {
				if at, indexed := to.(*ast.IndexExpr); indexed {
					to = at.X
				}
				if sel, is := to.(*ast.SelectorExpr); is && n.Tok == token.ASSIGN {
					set[sel.Sel] = true
				}
			}
		case *ast.CompositeLit:
			for _, e := range n.Elts {
				if kv, is := e.(*ast.KeyValueExpr); is {
					if key, is := kv.Key.(*ast.Ident); is {
						set[key] = true
					}
				}
			}
		case *ast.Ident:
			if o := pkg.TypesInfo.Uses[n]; o != nil && o.Pkg() != nil && o.Pkg().Path() == planPath && !set[n] {
				places = append(places, place(pkg, o))
			}
		}
		return true
	})
	return places
}

// place is where something of package plan is declared, alike from each package
// that knows it: "plan.go:48 Tank".
func place(pkg *load.Package, o types.Object) string {
	at := pkg.Fset.Position(o.Pos())
	return fmt.Sprintf("%s:%d %s", filepath.Base(at.Filename), at.Line, o.Name())
}
