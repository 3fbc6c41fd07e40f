package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"slices"
)

// statement leaves out what can be left out, and turns what is added into
// what is taken away.
func (m *mutator) statement(s ast.Stmt) (string, bool) {
	without := func() (string, bool) {
		id := m.add(s, m.plain(s), "")
		return fmt.Sprintf("if !%sOn(%d) { %s }", ask, id, m.inside(s)), true
	}
	switch s := s.(type) {
	case *ast.ExprStmt:
		if call, ok := s.X.(*ast.CallExpr); ok && !m.calls(call, "", "panic") {
			return without()
		}
	case *ast.IncDecStmt:
		return without()
	case *ast.BranchStmt:
		if s.Tok == token.BREAK || s.Tok == token.CONTINUE {
			return without()
		}
	case *ast.ReturnStmt:
		if len(s.Results) == 0 && !m.last[s] {
			return without()
		}
	case *ast.AssignStmt:
		op := s.Tok - token.ADD_ASSIGN + token.ADD
		other, ok := opposite[op]
		switch {
		case s.Tok == token.DEFINE || !slices.ContainsFunc(s.Lhs, func(e ast.Expr) bool { return !blank(e) }):
		case s.Tok == token.ASSIGN || !ok || !numeric(m.is(s.Lhs[0])):
			return without()
		default:
			turned := m.plain(s.Lhs[0]) + " " + other.String() + "= " + m.plain(s.Rhs[0])
			a, b := m.add(s, m.plain(s), turned), m.add(s, m.plain(s), "")
			return fmt.Sprintf("if %sOn(%d) { %s } else if !%sOn(%d) { %s }", ask, a, turned, ask, b, m.inside(s)), true
		}
	}
	return "", false
}

func blank(e ast.Expr) bool {
	id, ok := e.(*ast.Ident)
	return ok && id.Name == "_"
}

// calls reports whether a call is one of a function of a package, or of the
// language.
func (m *mutator) calls(c *ast.CallExpr, pkg, name string) bool {
	switch f := c.Fun.(type) {
	case *ast.Ident:
		return pkg == "" && f.Name == name && m.universe(f)
	case *ast.SelectorExpr:
		o := m.info.Uses[f.Sel]
		return o != nil && o.Pkg() != nil && o.Pkg().Path() == pkg && o.Name() == name
	}
	return false
}
