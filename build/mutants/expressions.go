package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"strconv"
	"strings"
)

// opposite is what each operator turns into; choice has functions for them.
var opposite = map[token.Token]token.Token{
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.MUL,
	token.AND: token.OR, token.OR: token.AND, token.XOR: token.AND, token.AND_NOT: token.AND,
	token.SHL: token.SHR, token.SHR: token.SHL,
}

var functions = map[token.Token]string{
	token.ADD: "Add", token.SUB: "Sub", token.MUL: "Mul", token.QUO: "Quo", token.REM: "Rem",
	token.AND: "And", token.OR: "Or", token.XOR: "Xor", token.AND_NOT: "AndNot", token.SHL: "Shl", token.SHR: "Shr",
}

// others is what a comparison turns into: another at the border, then its
// contrary.
var others = map[token.Token][]token.Token{
	token.LSS: {token.LEQ, token.GEQ}, token.LEQ: {token.LSS, token.GTR},
	token.GTR: {token.GEQ, token.LEQ}, token.GEQ: {token.GTR, token.LSS},
	token.EQL: {token.NEQ}, token.NEQ: {token.EQL},
}

// expression returns an expression with its mutants.
func (m *mutator) expression(e ast.Expr) (string, bool) {
	if m.fixed[e] || m.info.Types[e].IsType() {
		return m.plain(e), true
	}
	text, ok := "", true
	switch x := e.(type) {
	case *ast.CompositeLit:
		if m.declaration(x) {
			return m.functionsOf(x), true
		}
		ok = false
	case *ast.CallExpr:
		if m.calls(x, "", "panic") || m.calls(x, "errors", "New") {
			return m.plain(x), true
		}
		ok = false
	default:
		text, ok = m.operation(e)
	}
	return m.around(e, text, ok)
}

// declaration reports whether a literal tells of a formula or an assumption.
func (m *mutator) declaration(x *ast.CompositeLit) bool {
	t, ok := m.is(x).(*types.Named)
	return ok && t.Obj().Pkg() != nil && strings.HasSuffix(t.Obj().Pkg().Path(), "wasm/ground/formula")
}

// functionsOf returns a literal with the mutants of the functions in it.
func (m *mutator) functionsOf(x ast.Node) string {
	var b strings.Builder
	at := x.Pos()
	ast.Inspect(x, func(n ast.Node) bool {
		f, ok := n.(*ast.FuncLit)
		if ok {
			b.WriteString(m.between(at, f.Pos()) + m.inside(f))
			at = f.End()
		}
		return !ok
	})
	return b.String() + m.between(at, x.End())
}

// operation returns a constant, or what an operator stands in, with its
// mutants.
func (m *mutator) operation(e ast.Expr) (string, bool) {
	if m.constant(e) {
		return m.constantValue(e), true
	}
	switch x := e.(type) {
	case *ast.UnaryExpr:
		switch {
		case x.Op == token.NOT && !m.whole[e]:
			id := m.add(e, m.plain(e), m.plain(x.X))
			return fmt.Sprintf("(%sOn(%d) != (!%s))", ask, id, m.write(x.X)), true
		case x.Op == token.SUB:
			id := m.add(e, m.plain(e), m.plain(x.X))
			return fmt.Sprintf("%sNeg(%d, %s)", ask, id, m.write(x.X)), true
		}
	case *ast.BinaryExpr:
		return m.binary(x)
	}
	return "", false
}

func (m *mutator) binary(x *ast.BinaryExpr) (string, bool) {
	var turned []token.Token
	switch x.Op {
	case token.LAND:
		turned = []token.Token{token.LOR}
	case token.LOR:
		turned = []token.Token{token.LAND}
	case token.LSS, token.LEQ, token.GTR, token.GEQ, token.EQL, token.NEQ:
		turned = others[x.Op]
		if m.whole[x] {
			turned = turned[:len(turned)-1] // the contrary is true and false at once
		}
	default:
		return m.arithmetic(x)
	}
	if len(turned) == 0 {
		return "", false
	}
	a, b := m.plain(x.X), m.plain(x.Y)
	var parts []string
	first := len(m.mutants) + 1
	for _, op := range turned {
		id := m.add(x, a+" "+x.Op.String()+" "+b, a+" "+op.String()+" "+b)
		parts = append(parts, fmt.Sprintf("%sOn(%d) && (%s %s %s)", ask, id, a, op, b))
	}
	last := len(m.mutants)
	parts = append(parts, fmt.Sprintf("%sNone(%d, %d) && (%s %s %s)", ask, first, last, m.write(x.X), x.Op, m.write(x.Y)))
	return "(" + strings.Join(parts, " || ") + ")", true
}

func (m *mutator) arithmetic(x *ast.BinaryExpr) (string, bool) {
	if !numeric(m.is(x)) {
		return "", false
	}
	typed := ""
	if x.Op == token.SHL || x.Op == token.SHR {
		name, ok := m.spell(m.is(x))
		if !ok {
			return "", false
		}
		typed = "[" + name + "]"
	}
	id := m.add(x, m.plain(x.X)+" "+x.Op.String()+" "+m.plain(x.Y), m.plain(x.X)+" "+opposite[x.Op].String()+" "+m.plain(x.Y))
	return fmt.Sprintf("%s%s%s(%d, %s, %s)", ask, functions[x.Op], typed, id, m.write(x.X), m.write(x.Y)), true
}

func numeric(t types.Type) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&(types.IsInteger|types.IsFloat) != 0
}

func boolean(t types.Type) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsBoolean != 0
}

// around adds the mutants that an expression has by where it stands: a whole
// condition is true or false, a result is nothing or its contrary.
func (m *mutator) around(e ast.Expr, text string, ok bool) (string, bool) {
	inner := func() string {
		if ok {
			return text
		}
		return m.inside(e)
	}
	if m.whole[e] && !m.constant(e) {
		id := m.add(e, m.plain(e), "false")
		if m.loops[e] {
			return fmt.Sprintf("(!%sOn(%d) && %s)", ask, id, inner()), true
		}
		yes := m.add(e, m.plain(e), "true")
		return fmt.Sprintf("(%sOn(%d) || !%sOn(%d) && (%s))", ask, yes, ask, id, inner()), true
	}
	want := m.results[e]
	if want == nil || m.constant(e) || m.empty(e) {
		return text, ok
	}
	switch b, basic := want.Underlying().(*types.Basic); {
	case boolean(want):
		if turns(e) {
			return text, ok
		}
		id := m.add(e, "return "+m.plain(e), "return !("+m.plain(e)+")")
		return fmt.Sprintf("(%sOn(%d) != (%s))", ask, id, inner()), true
	case basic && b.Info()&types.IsString != 0:
		return text, ok
	}
	name, spelt := m.spell(want)
	if !spelt {
		return text, ok
	}
	id := m.add(e, "return "+m.plain(e), "return of nothing")
	return fmt.Sprintf("%sZero[%s](%d, %s)", ask, name, id, inner()), true
}

// empty reports whether an expression is nothing already.
func (m *mutator) empty(e ast.Expr) bool {
	c, ok := e.(*ast.CompositeLit)
	return m.info.Types[e].IsNil() || ok && len(c.Elts) == 0
}

// turns reports whether an expression has its contrary as a mutant of its own.
func turns(e ast.Expr) bool {
	switch x := e.(type) {
	case *ast.UnaryExpr:
		return x.Op == token.NOT
	case *ast.BinaryExpr:
		return others[x.Op] != nil
	case *ast.ParenExpr:
		return turns(x.X)
	}
	return false
}

// spell returns the name of a type in the file at hand, if it has one there.
func (m *mutator) spell(t types.Type) (string, bool) {
	ok := true
	name := types.TypeString(t, func(p *types.Package) string {
		if p == m.types {
			return ""
		}
		for _, i := range m.file.Imports {
			if i.Path.Value == strconv.Quote(p.Path()) {
				if i.Name != nil {
					return i.Name.Name
				}
				return p.Name()
			}
		}
		ok = false
		return p.Name()
	})
	return name, ok && !strings.Contains(name, "untyped")
}

// constantValue returns a constant expression with a mutant for each number
// in it, also in the constants that it names. So a declared constant is changed
// everywhere at once.
func (m *mutator) constantValue(e ast.Expr) string {
	t := m.is(e)
	if id, ok := e.(*ast.Ident); ok && boolean(t) && m.universe(id) {
		n := m.add(e, id.Name, strconv.FormatBool(id.Name == "false"))
		return fmt.Sprintf("(%s != %sOn(%d))", id.Name, ask, n)
	}
	if !numeric(t) {
		return m.plain(e)
	}
	if b, ok := t.(*types.Basic); ok && b.Info()&types.IsUntyped != 0 {
		t = types.Default(t)
	}
	name, ok := m.spell(t)
	if !ok {
		return m.plain(e)
	}
	text := m.plain(e)
	for _, c := range m.changes(e) {
		if _, err := types.Eval(m.fset, m.types, e.Pos(), name+"("+c.text+")"); err != nil {
			continue // it does not fit the type
		}
		text = fmt.Sprintf("%sValue[%s](%d, %s, %s)", ask, name, m.of(c), text, c.text)
	}
	return text
}
