package main

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// A mutant is one change of a package's code.
type mutant struct {
	id       int
	file     string // path from the module's root
	function string // or the variable or constant that is declared
	line     int
	from, to string // source; to is empty where a statement is left out
	nth      int    // which of those in the function that read alike, from 1
}

// key names the mutant as long as its function reads as it does.
func (m *mutant) key() string {
	s := m.file + " " + m.function + ": `" + m.from + "` to `" + m.to + "`"
	if m.to == "" {
		s = m.file + " " + m.function + ": without `" + m.from + "`"
	}
	if m.nth > 1 {
		s += " (" + strconv.Itoa(m.nth) + ")"
	}
	return s
}

// A mutator writes a package anew with all its mutants in it, each behind a
// question to package choice.
//
// Where a place has several mutants, those of its parts are asked for only in
// what it is as written: one mutant runs at a time, so the others hold the
// plain source.
type mutator struct {
	*pack
	root     string // the module's folder
	mutants  []*mutant
	file     *ast.File
	function string
	alike    map[string]int

	values   map[types.Object]ast.Expr // of the package's constants
	owner    map[ast.Expr]string       // by such a value: its constant
	literals map[*ast.BasicLit]int     // their mutants

	whole   map[ast.Expr]bool       // conditions of if, for and switch
	loops   map[ast.Expr]bool       // those of for
	results map[ast.Expr]types.Type // what is returned, with the type that the function declares
	listed  map[ast.Stmt]bool       // statements that stand in a list, so that another may take their place
	fixed   map[ast.Expr]bool       // what has to stay as it is
	last    map[ast.Stmt]bool       // last statements of functions
}

// A change is a constant expression in one mutant.
type change struct {
	literal *ast.BasicLit // what is changed in it
	to      string        // the literal then
	owner   string        // the declared constant that the literal stands in, if any
	text    string        // the expression then
}

// mutate returns the package's mutants, and the files that hold them by name.
func mutate(p *pack, root string) ([]*mutant, map[string]string) {
	m := &mutator{
		pack: p, root: root, alike: map[string]int{},
		values: map[types.Object]ast.Expr{}, owner: map[ast.Expr]string{}, literals: map[*ast.BasicLit]int{},
		whole: map[ast.Expr]bool{}, loops: map[ast.Expr]bool{}, results: map[ast.Expr]types.Type{},
		listed: map[ast.Stmt]bool{}, fixed: map[ast.Expr]bool{}, last: map[ast.Stmt]bool{},
	}
	for _, f := range p.files {
		m.look(f)
	}
	out := map[string]string{}
	for _, f := range p.files {
		m.file = f
		before := len(m.mutants)
		text := m.inside(f)
		at := m.offset(f.Name.End()) // the package clause stays as it is, so the offset holds
		if len(m.mutants) > before || strings.Contains(text, ask) {
			out[m.name(f)] = text[:at] + `; import ` + strings.TrimSuffix(ask, ".") + ` "` + choicePath + `"` + text[at:]
		}
	}
	return m.mutants, out
}

const (
	choicePath = "evenrow/build/mutants/choice"
	ask        = "mutants_." // no name of ours ends so
)

func (m *mutator) name(n ast.Node) string     { return m.fset.Position(n.Pos()).Filename }
func (m *mutator) offset(p token.Pos) int     { return m.fset.Position(p).Offset }
func (m *mutator) plain(n ast.Node) string    { return m.between(n.Pos(), n.End()) }
func (m *mutator) is(e ast.Expr) types.Type   { return m.info.TypeOf(e) }
func (m *mutator) constant(e ast.Expr) bool   { return m.info.Types[e].Value != nil }
func (m *mutator) universe(i *ast.Ident) bool { o := m.info.Uses[i]; return o != nil && o.Pkg() == nil }

func (m *mutator) between(from, to token.Pos) string {
	return string(m.source[m.fset.Position(from).Filename][m.offset(from):m.offset(to)])
}

// add makes a mutant of what stands at a node and returns its number.
func (m *mutator) add(n ast.Node, from, to string) int {
	at := m.fset.Position(n.Pos())
	file, err := filepath.Rel(m.root, at.Filename)
	if err != nil {
		file = at.Filename
	}
	mu := &mutant{id: len(m.mutants) + 1, file: filepath.ToSlash(file), function: m.function, line: at.Line, from: short(from), to: short(to), nth: 1}
	m.alike[mu.key()]++
	mu.nth = m.alike[mu.key()]
	m.mutants = append(m.mutants, mu)
	return mu.id
}

// short returns source on one line, cut where it is long.
func short(s string) string {
	const most = 70
	r := []rune(strings.Join(strings.Fields(s), " "))
	if len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return string(r)
}

// look notes what the places of a file stand in.
func (m *mutator) look(f *ast.File) {
	list := func(stmts []ast.Stmt) {
		for _, s := range stmts {
			m.listed[s] = true
		}
	}
	function := func(t types.Type, body *ast.BlockStmt) {
		if body == nil {
			return
		}
		if n := len(body.List); n > 0 {
			m.last[body.List[n-1]] = true
		}
		want := t.(*types.Signature).Results()
		ast.Inspect(body, func(n ast.Node) bool {
			if r, ok := n.(*ast.ReturnStmt); ok && len(r.Results) == want.Len() {
				for i, e := range r.Results {
					m.results[e] = want.At(i).Type()
				}
			}
			_, other := n.(*ast.FuncLit)
			return !other
		})
	}
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BlockStmt:
			list(n.List)
		case *ast.CaseClause:
			list(n.Body)
		case *ast.CommClause:
			list(n.Body)
		case *ast.FuncDecl:
			function(m.info.Defs[n.Name].Type(), n.Body)
		case *ast.FuncLit:
			function(m.is(n), n.Body)
		case *ast.IfStmt:
			m.whole[n.Cond] = true
		case *ast.ForStmt:
			if n.Cond != nil {
				m.whole[n.Cond], m.loops[n.Cond] = true, true
			}
		case *ast.SwitchStmt:
			if n.Tag == nil {
				for _, c := range n.Body.List {
					for _, e := range c.(*ast.CaseClause).List {
						m.whole[e] = true
					}
				}
			}
		case *ast.CompositeLit:
			switch m.is(n).Underlying().(type) {
			case *types.Array, *types.Slice:
				for _, e := range n.Elts {
					if kv, ok := e.(*ast.KeyValueExpr); ok {
						m.fixed[kv.Key] = true
					}
				}
			}
		case *ast.CallExpr:
			if f, ok := n.Fun.(*ast.Ident); ok && f.Name == "make" && m.universe(f) && len(n.Args) == 3 {
				m.fixed[n.Args[2]] = true // how much room there is changes nothing
			}
		case *ast.GenDecl:
			if n.Tok == token.CONST {
				m.constants(n)
			}
		}
		return true
	})
}

// constants notes the values of declared constants, but for lists of kinds.
func (m *mutator) constants(d *ast.GenDecl) {
	for _, s := range d.Specs {
		spec := s.(*ast.ValueSpec)
		for i, v := range spec.Values {
			counted := false
			ast.Inspect(v, func(n ast.Node) bool {
				id, ok := n.(*ast.Ident)
				counted = counted || ok && id.Name == "iota"
				return true
			})
			if !counted {
				m.values[m.info.Defs[spec.Names[i]]] = v
				m.owner[v] = spec.Names[i].Name
			}
		}
	}
}

// write returns the source of a node with the mutants of everything in it.
func (m *mutator) write(n ast.Node) string {
	if text, ok := m.changed(n); ok {
		return text
	}
	return m.inside(n)
}

// inside returns the source of a node with the mutants of its parts.
func (m *mutator) inside(n ast.Node) string {
	start, end := n.Pos(), n.End()
	if f, ok := n.(*ast.File); ok {
		start, end = f.FileStart, f.FileEnd
	}
	var b strings.Builder
	at := start
	ast.Inspect(n, func(part ast.Node) bool {
		if part == nil || part == n {
			return true
		}
		text, ok := m.changed(part)
		if ok {
			b.WriteString(m.between(at, part.Pos()))
			b.WriteString(text)
			at = part.End()
		}
		return !ok
	})
	b.WriteString(m.between(at, end))
	return b.String()
}

// changed returns the source of a node with its own mutants and those of its
// parts, and whether it has looked at the parts.
func (m *mutator) changed(n ast.Node) (string, bool) {
	switch n := n.(type) {
	case *ast.FuncDecl:
		m.function = n.Name.Name
		if n.Recv != nil {
			m.function = strings.TrimPrefix(m.plain(n.Recv.List[0].Type), "*") + "." + m.function
		}
		if n.Recv == nil && (n.Name.Name == "Assumptions" || n.Name.Name == "Formulas") {
			return m.plain(n), true // they are read, not worked with
		}
	case *ast.GenDecl:
		if n.Tok == token.CONST || n.Tok == token.IMPORT || n.Tok == token.TYPE {
			return m.plain(n), true
		}
	case *ast.ValueSpec:
		if !m.inFunction(n) {
			m.function = n.Names[0].Name
		}
	case *ast.ImportSpec, *ast.ArrayType, *ast.CommentGroup:
		return m.plain(n), true
	case ast.Stmt:
		if m.listed[n] {
			return m.statement(n)
		}
	case ast.Expr:
		return m.expression(n)
	}
	return "", false
}

func (m *mutator) inFunction(s *ast.ValueSpec) bool {
	o := m.info.Defs[s.Names[0]]
	return o == nil || o.Parent() != m.types.Scope()
}

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
