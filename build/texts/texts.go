// Package texts finds what the program says, looks whether each text's places
// and arguments go together, and makes and checks the lists of other languages.
package texts

import (
	"errors"
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"path/filepath"
	"slices"
	"strings"

	"golang.org/x/tools/go/packages"

	"evenrow/wasm/ground/words"
)

// A Text is what is said at one place of the program.
type Text struct {
	Where string // file and line, from the folder of go.mod
	Words string // in English
}

// A Program is everything that was found in the code.
type Program struct {
	Texts    []Text   // by file and line
	Problems []string // each with its file and line
	pkgs     []*packages.Package
	root     string
}

const wordsPath = "evenrow/wasm/ground/words"

// Find reads everything under wasm/, from the folder that holds go.mod.
func Find(root string) (*Program, error) {
	pkgs, err := packages.Load(&packages.Config{
		Mode: packages.NeedName | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo | packages.NeedDeps | packages.NeedImports,
		Dir:  root,
		Fset: token.NewFileSet(),
	}, "./wasm/...")
	if err != nil {
		return nil, err
	}
	p := &Program{pkgs: pkgs, root: root}
	for _, pkg := range pkgs {
		if len(pkg.Errors) > 0 {
			return nil, errors.New(pkg.Errors[0].Error())
		}
		for _, file := range pkg.Syntax {
			p.look(pkg, file)
		}
	}
	byPlace := func(a, b Text) int { return strings.Compare(a.Where, b.Where) }
	slices.SortStableFunc(p.Texts, byPlace)
	slices.Sort(p.Problems)
	return p, nil
}

// look gathers the texts of a file and what is wrong with them.
func (p *Program) look(pkg *packages.Package, file *ast.File) {
	ast.Inspect(file, func(n ast.Node) bool {
		if call, ok := n.(*ast.CallExpr); ok {
			p.call(pkg, call)
		}
		e, ok := n.(ast.Expr)
		if !ok {
			return true
		}
		tv := pkg.TypesInfo.Types[e]
		if !isText(tv.Type) || tv.Value == nil {
			return true
		}
		if _, named := e.(*ast.Ident); named {
			return true // a constant, which stands where it is declared
		}
		if _, named := e.(*ast.SelectorExpr); named {
			return true
		}
		text := constant.StringVal(tv.Value)
		if text == "" {
			return false // no text
		}
		at := p.place(pkg, e.Pos())
		p.Texts = append(p.Texts, Text{at, text})
		if problem := malformed(text); problem != "" {
			p.Problems = append(p.Problems, at+": "+problem+": "+text)
		}
		return false // what it is joined of is no text of its own
	})
}

// call looks at one call: whether it makes a text of what is no constant, and
// whether a text has as many arguments as places.
func (p *Program) call(pkg *packages.Package, call *ast.CallExpr) {
	info := pkg.TypesInfo
	at := p.place(pkg, call.Pos())
	if fun := info.Types[call.Fun]; fun.IsType() {
		if isText(fun.Type) && info.Types[call].Value == nil && pkg.PkgPath != wordsPath {
			p.Problems = append(p.Problems, at+": what is no constant becomes a text, which no list can have")
		}
		return
	}
	sig, ok := info.Types[call.Fun].Type.(*types.Signature)
	if !ok || !sig.Variadic() || sig.Params().Len() < 2 || call.Ellipsis.IsValid() {
		return
	}
	last := sig.Params().Len() - 1
	if !isText(sig.Params().At(last-1).Type()) || sig.Params().At(last).Type().String() != "[]string" || len(call.Args) < last {
		return
	}
	v := info.Types[call.Args[last-1]].Value
	if v == nil {
		return
	}
	text := constant.StringVal(v)
	given := len(call.Args) - last
	if fun, ok := call.Fun.(*ast.SelectorExpr); ok && fun.Sel.Name == "About" {
		given++ // the name of what it is about, which comes later
	}
	if places := len(words.Places(text)); places != given {
		p.Problems = append(p.Problems, fmt.Sprintf("%s: %d places and %d arguments: %s", at, places, given, text))
	}
}

func (p *Program) place(pkg *packages.Package, pos token.Pos) string {
	at := pkg.Fset.Position(pos)
	name, err := filepath.Rel(p.root, at.Filename)
	if err != nil {
		name = at.Filename
	}
	return fmt.Sprintf("%s:%04d", filepath.ToSlash(name), at.Line)
}

func isText(t types.Type) bool {
	named, ok := t.(*types.Named)
	return ok && named.Obj().Name() == "Text" && named.Obj().Pkg() != nil && named.Obj().Pkg().Path() == wordsPath
}

// malformed says what is wrong with a text by itself.
func malformed(text string) string {
	if strings.TrimSpace(text) != text {
		return "it begins or ends with a space, so something is joined to it"
	}
	if strings.ContainsAny(text, "\n\r\t") {
		return "a text is one line"
	}
	for rest := text; ; {
		open, end := strings.IndexByte(rest, '{'), strings.IndexByte(rest, '}')
		switch {
		case open < 0 && end < 0:
			return ""
		case open < 0 || end < open || strings.IndexByte(rest[open+1:end], '{') >= 0:
			return "a brace stands alone"
		}
		name, forms, counted := strings.Cut(rest[open+1:end], "|")
		if name == "" || strings.Trim(name, "abcdefghijklmnopqrstuvwxyz0123456789") != "" {
			return "the name of a place is small letters and digits"
		}
		if counted && strings.Count(forms, "|") != 1 {
			return "English has two forms: {" + name + "|one|many}"
		}
		rest = rest[end+1:]
	}
}

// Unique are the texts that a list of another language has, each once.
func (p *Program) Unique() []string {
	seen := map[string]bool{}
	var all []string
	for _, t := range p.Texts {
		if !seen[t.Words] {
			seen[t.Words] = true
			all = append(all, t.Words)
		}
	}
	return all
}
