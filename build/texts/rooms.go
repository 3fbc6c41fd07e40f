package texts

import (
	"go/ast"
	"go/constant"
	"go/token"
	"regexp"
	"slices"
	"strings"
)

// prose is what reads like a part of a sentence: two words, or one that begins
// with a capital and goes on small.
var prose = regexp.MustCompile(`[A-Za-z]{2,} [A-Za-z]{2,}|^[A-Z][a-z]+|[a-z]{2,}[.:;,] | [a-z]{2,} `)

// Loose returns the strings of packages that read like a part of a sentence and
// are no texts, so that no list has them. Of a folder of source files only those
// of the packages named are looked at: those whose words are texts already.
func (p *Program) Loose(rooms []string, but func(s string) bool) []string {
	var loose []string
	for _, pkg := range p.pkgs {
		if !slices.Contains(rooms, strings.TrimPrefix(pkg.PkgPath, "evenrow/wasm/")) {
			continue
		}
		for _, file := range pkg.Syntax {
			if strings.HasSuffix(pkg.Fset.Position(file.Pos()).Filename, "assumptions.go") {
				continue // for the Method page, which is written in English
			}
			ast.Inspect(file, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.ImportSpec:
					return false
				case *ast.Field:
					return n.Tag == nil
				case *ast.BasicLit:
					if n.Kind != token.STRING {
						return true
					}
					tv := pkg.TypesInfo.Types[n]
					if tv.Type == nil || tv.Type.String() != "string" && tv.Type.String() != "untyped string" {
						return true // markup, or a text
					}
					if s := constant.StringVal(tv.Value); prose.MatchString(s) && !but(s) {
						loose = append(loose, p.place(pkg, n.Pos())+": "+s)
					}
				}
				return true
			})
		}
	}
	slices.Sort(loose)
	return loose
}
