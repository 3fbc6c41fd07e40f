package main

import (
	"go/ast"
	"go/token"
	"go/types"
	"path/filepath"
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
