package main

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"strconv"
	"strings"
)

// of returns the number of the mutant that a change belongs to: one for all
// uses of a declared constant.
func (m *mutator) of(c change) int {
	id, ok := m.literals[c.literal]
	if !ok {
		outer := m.function
		if c.owner != "" {
			m.function = c.owner
		}
		id = m.add(c.literal, c.literal.Value, c.to)
		m.function = outer
		m.literals[c.literal] = id
	}
	return id
}

// changes returns what a constant expression is with each of the numbers in
// it changed.
func (m *mutator) changes(e ast.Expr) []change {
	within := func(parts ...ast.Expr) []change {
		var all []change
		for _, p := range parts {
			for _, c := range m.changes(p) {
				c.text = m.between(e.Pos(), p.Pos()) + c.text + m.between(p.End(), e.End())
				all = append(all, c)
			}
		}
		return all
	}
	switch x := e.(type) {
	case *ast.BasicLit:
		return m.literal(x)
	case *ast.Ident:
		o, ok := m.info.Uses[x].(*types.Const)
		v := m.values[o]
		if !ok || v == nil {
			return nil
		}
		all := m.changes(v)
		if name, ok := m.spell(o.Type()); ok {
			for i := range all {
				all[i].text = name + "(" + all[i].text + ")"
			}
		}
		for i, c := range all {
			all[i].text = "(" + c.text + ")"
			if c.owner == "" {
				all[i].owner = m.owner[v]
			}
		}
		return all
	case *ast.ParenExpr:
		return within(x.X)
	case *ast.UnaryExpr:
		return within(x.X)
	case *ast.BinaryExpr:
		return within(x.X, x.Y)
	case *ast.CallExpr:
		if m.info.Types[x.Fun].IsType() {
			return within(x.Args...)
		}
	}
	return nil
}

// literal changes n to n+1 and x to 2x.
func (m *mutator) literal(l *ast.BasicLit) []change {
	v := constant.MakeFromLiteral(l.Value, l.Kind, 0)
	to := ""
	switch l.Kind {
	case token.INT:
		to = constant.BinaryOp(v, token.ADD, constant.MakeInt64(1)).ExactString()
	case token.FLOAT:
		f, _ := constant.Float64Val(v)
		if f *= 2; f == 0 {
			f = 1
		}
		to = strconv.FormatFloat(f, 'g', -1, 64)
		if !strings.ContainsAny(to, ".e") {
			to += ".0" // it must not turn a division into one of integers
		}
	case token.CHAR:
		r, _ := constant.Int64Val(v)
		to = strconv.QuoteRune(rune(r + 1))
	default:
		return nil
	}
	return []change{{literal: l, to: to, text: to}}
}
