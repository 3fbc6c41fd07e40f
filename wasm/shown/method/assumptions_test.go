package method_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strings"
	"testing"

	"evenrow/wasm/ground/formula"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/shown/method"
	"evenrow/wasm/trade/catalogue"
)

// whole packages that hold no assumption, with the reason.
var without = map[string]string{
	"carry": "form of links and files", "day": "the calendar", "ical": "form of calendar files", "page": "form of the page",
	"unit": "definitions of units", "plan": "limits of the form", "numeric": "mathematics", "formula": "form of formulas",
	"source": "names of works", "method": "lists", "water": "formulas, and standard gravity", "sun": "formulas",
	"evenness": "formulas", "chlorine": "formulas", "medium": "formulas",
}

// numbers that are no assumption, with the reason.
var exempt = map[string]string{
	"catalogue.Custom": "a position", "catalogue.OwnCrops": "a position", "catalogue.FirstOwn": "a position", "catalogue.none": "a mark", "catalogue.untested": "a mark",
	"catalogue.inch": "a unit", "catalogue.bar": "a unit", "catalogue.psi": "a unit", "catalogue.scale": "units",
	"catalogue.Climates":  "shown in the form, and invented",
	"catalogue.Crops":     "on the page with a source each",
	"catalogue.Rated":     "for which standards rate tubing",
	"catalogue.seedTemps": "on the page with its source", "catalogue.seeds": "on the page with its source",
	"chance.work": "time that a reader waits", "chance.solves": "time that a reader waits", "chance.nodes": "time that a reader waits",
	"chance.Bins": "form of a picture", "chance.Width": "form of a picture",
	"chance.layers": "random numbers", "chance.tail": "random numbers", "chance.area": "random numbers",
	"design.Kept": "a mark", "design.near": "precision", "design.knots": "precision",
	"design.mostWork": "time that a reader waits",
	"dose.near":       "precision", "dose.spin": "seconds in a day", "dose.turn": "spin as an angle",
	"drain.MostOut": "limits of the form", "drain.MostEC": "limits of the form", "drain.LeastPH": "limits of the form", "drain.MostPH": "limits of the form",
	"answer.alongPiece": "form of a picture", "answer.letter": "form of a picture", "answer.clear": "form of a picture", "answer.besideIt": "form of a picture", "steps.threaded": "a set of steps", "care.Catalogue": "sets of hazards", "season.hazards": "likewise", "view.Jobs": "likewise", "ends.names": "the number of names", "ends.Threads": "a position", "ends.bar": "a unit", "ends.psi": "a unit", "ends.inch": "a unit", "ends.Cuts": "a table, whose rows name their sources", "ends.bsp": "likewise", "ends.PVC": "likewise",
	"chain.held": "how much is remembered", "chain.maxPairs": "likewise", "plan.MaxFittings": "limits of the form",
	"parts.tiny": "precision", "parts.pound": "a unit", "cuts.steps": "time that a reader waits", "cuts.mm": "a unit", "plan.ShortestRoll": "limits of the form", "marks.Strip": "form of a picture", "marks.LongestStrip": "form of a picture", "catalogue.feet": "a unit",
	"drain.leastShare": "precision", "watering.leastMore": "precision", "drain.MaxRows": "limits of the form", "drain.MostLong": "limits of the form", "drain.MostRun": "limits of the form", "drain.Columns": "limits of the form",
	"evapo.latent": "in its formula", "evapo.albedo": "in its formula", "evapo.Coastal": "no plan uses it",
	"fault.work": "time that a reader waits", "fault.most": "where a search ends",
	"flush.work":         "time that a reader waits",
	"headroom.tolerance": "where a search ends", "headroom.riseStep": "where a search ends", "headroom.foulingStep": "where a search ends",
	"headroom.large": "time that a reader waits",
	"layout.Apart":   "form of a picture", "layout.slack": "precision", "layout.NoTube": "a mark",
	"network.None": "a mark", "network.flowTolerance": "precision", "network.flowRounding": "precision", "network.stillFlow": "precision",
	"network.headTolerance": "precision", "network.maxSteps": "precision", "network.shortestStep": "precision",
	"network.leastFlow": "precision", "network.stillHead": "precision", "network.dropping": "a mark",
	"network.preparing": "units of work", "network.inverting": "units of work", "work.often": "units of work",
	"pipe.barbs":        "in the formulas for barbs",
	"propose.usualCrop": "a position", "propose.foot": "a unit", "propose.Units": "time that a reader waits", "propose.near": "precision", "propose.Five": "form of the page", "propose.most": "form of the page", "propose.MaxCrops": "form of the page",
	"propose.lowestTank": "limits of the form",
	"sheet.listed":       "form of the page", "sheet.most": "form of the page", "limit.asMuch": "guides a search", "limit.rounding": "precision",
	"sheet.rounding": "precision", "sheet.sameHead": "precision", "sheet.zoning": "time that a reader waits", "sheet.longest": "time that a reader waits",
	"sheet.pairing": "time that a reader waits", "sheet.dozens": "time that a reader waits", "sheet.unpriced": "form of the page", "sheet.fine": "precision",
	"sheet.turning": "time that a reader waits", "sheet.fineness": "form of the page", "sheet.between": "where a search looks",
	"sheet.fixing": "time that a reader waits", "sheet.exploring": "time that a reader waits",
	"shots.Quarter": "what a dial with pins has", "shots.mostCycles": "what a day has room for", "shots.forever": "a mark", "shots.fortnight": "form of the page", "season.week": "days of a week",
	"startup.brim": "precision", "startup.leastShare": "precision", "shots.leastShare": "precision", "startup.little": "precision", "startup.much": "precision",
	"startup.halvings": "precision", "startup.mostWork": "where a search ends", "startup.shortest": "precision",
	"block.BarHeight": "form of a picture", "form.inSight": "form of the page", "grow.letterWidth": "form of a picture", "watering.hour": "a unit", "watering.outages": "form of a table",
	"block.widths": "form of a picture", "grow.mostBars": "form of a picture", "grow.mostTasks": "form of a table", "scene.MostWords": "form of the page",
	"grow.mostThirsts": "form of a picture", "sheet.nothing": "precision", "view.Never": "a name", "view.Answered": "a name", "view.OnRequest": "a name",
}

func all() (all []formula.Assumption) {
	for _, g := range method.Assumptions() {
		all = append(all, g.All...)
	}
	return all
}

// declared returns every declaration of the packages beside this one, by
// "package.Name", a method as "package.Type.Name"; those of plain numbers are
// true. Formulas and their symbols are no plain numbers.
func declared(t *testing.T) map[string]bool {
	t.Helper()
	found := map[string]bool{}
	files, err := filepath.Glob("../../*/*/*.go")
	if err != nil || len(files) < 100 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		pkg := filepath.Base(filepath.Dir(file))
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range parsed.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				name := pkg + "." + d.Name.Name
				if d.Recv != nil {
					typ := d.Recv.List[0].Type
					if star, ok := typ.(*ast.StarExpr); ok {
						typ = star.X
					}
					name = pkg + "." + typ.(*ast.Ident).Name + "." + d.Name.Name
				}
				found[name] = false
			case *ast.GenDecl:
				for _, s := range d.Specs {
					v, ok := s.(*ast.ValueSpec)
					if !ok {
						continue
					}
					for i, n := range v.Names {
						found[pkg+"."+n.Name] = i < len(v.Values) && number(v.Values[i])
					}
				}
			}
		}
	}
	return found
}

// number says whether an expression holds a number that was typed, and is
// neither a count of names nor a formula.
func number(e ast.Expr) bool {
	typed := false
	ast.Inspect(e, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncLit:
			return false
		case *ast.BasicLit:
			typed = typed || n.Kind == token.INT || n.Kind == token.FLOAT
		case *ast.SelectorExpr:
			if x, ok := n.X.(*ast.Ident); ok && x.Name == "formula" {
				typed = false
				e = nil
			}
		case *ast.Ident:
			if n.Name == "iota" {
				e = nil
			}
		}
		return true
	})
	return typed && e != nil
}

// Every number that a package declares is an assumption of the list, or no
// assumption for a reason that is named here. A new one fails until it is put
// on the list, as does a declaration that the list names and that is gone.
func TestEveryNumberIsOnTheList(t *testing.T) {
	found, listed := declared(t), map[string]bool{}
	for _, a := range all() {
		listed[a.Code] = true
		if _, ok := found[a.Code]; !ok {
			t.Errorf("%q is of %s, which is not declared", a.Title, a.Code)
		}
	}
	for name, isNumber := range found {
		pkg, _, _ := strings.Cut(name, ".")
		switch {
		case !isNumber || without[pkg] != "":
		case !listed[name] && exempt[name] == "":
			t.Errorf("%s is a number on no list: give it to Assumptions of its package, or say here why it is none", name)
		case listed[name] && exempt[name] != "":
			t.Errorf("%s is on the list now: drop its reason here", name)
		}
	}
	for name := range exempt {
		if !found[name] {
			t.Errorf("%s is no number of the code any more: drop its reason here", name)
		}
	}
	for _, name := range []string{"layout.InsertShare", "flush.Mouth", "catalogue.Fittings", "network.Solver.openReady", "pump.ByPoints"} {
		if !listed[name] {
			t.Errorf("%s is not on the list", name)
		}
	}
}

// A number on the list is the declaration itself and not typed a second time:
// where an entry has numbers, its expression names the declaration.
func TestTheListTakesNumbersFromTheCode(t *testing.T) {
	files, err := filepath.Glob("../../*/*/assumptions.go")
	if err != nil || len(files) < 20 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, file := range files {
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		if filepath.Base(filepath.Dir(file)) == "method" {
			continue // from the catalogue's tables; see below
		}
		ast.Inspect(parsed, func(n ast.Node) bool {
			lit, ok := n.(*ast.CompositeLit)
			if !ok {
				return true
			}
			code, values := "", ast.Expr(nil)
			for _, e := range lit.Elts {
				if kv, ok := e.(*ast.KeyValueExpr); ok {
					switch key, _ := kv.Key.(*ast.Ident); key.Name {
					case "Code":
						code = strings.Trim(kv.Value.(*ast.BasicLit).Value, `"`)
					case "Values":
						values = kv.Value
					}
				}
			}
			if code == "" || values == nil {
				return true
			}
			name := code[strings.LastIndex(code, ".")+1:]
			named := code == "filter.Meshes" // through a function of its own
			ast.Inspect(values, func(n ast.Node) bool {
				id, ok := n.(*ast.Ident)
				named = named || ok && id.Name == name
				return true
			})
			if !named {
				t.Errorf("%s: the numbers of %s are not taken from it", file, code)
			}
			return true
		})
	}
	ks := map[string]float64{}
	for _, a := range all() {
		if a.Code == "catalogue.Fittings" {
			ks[strings.TrimPrefix(a.Title, "Loss coefficient: ")] = a.Values[0]
		}
	}
	for _, f := range catalogue.Fittings {
		if k, ok := ks[f.Name]; !ok || k != f.K {
			t.Errorf("%s has K %g on the list, want %g", f.Name, k, f.K)
		}
	}
}

// The losses of the layout take every coefficient from a declaration: no
// fraction is typed in what lays the network out.
func TestLossesTypeNoNumber(t *testing.T) {
	files, err := filepath.Glob("../../works/layout/*.go")
	if err != nil || len(files) == 0 {
		t.Fatal(err)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		fset := token.NewFileSet()
		parsed, err := parser.ParseFile(fset, file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range parsed.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok || f.Body == nil {
				continue
			}
			ast.Inspect(f.Body, func(n ast.Node) bool {
				if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.FLOAT && strings.Trim(l.Value, "0.") != "" && l.Value != "1.0" && !strings.HasPrefix(l.Value, "1e-") {
					t.Errorf("%s: %s in %s: declare it, and list it with the assumptions", fset.Position(l.Pos()), l.Value, f.Name.Name)
				}
				return true
			})
		}
	}
}

func TestEveryAssumptionIsWhole(t *testing.T) {
	titles := map[string]bool{}
	for _, g := range method.Assumptions() {
		if g.Title == "" || len(g.All) == 0 {
			t.Errorf("the group %q is empty", g.Title)
		}
		for _, a := range g.All {
			if a.Title == "" || titles[g.Title+a.Title] || len(a.Values) == 0 && a.Rule == "" || a.Used == "" || a.Source.String() == "" {
				t.Errorf("%+v lacks something", a)
			}
			titles[g.Title+a.Title] = true
			for _, sentence := range []string{a.Rule, a.Used} {
				if sentence != "" && !strings.HasSuffix(sentence, ".") {
					t.Errorf("%s: no sentence: %s", a.Code, sentence)
				}
			}
			for _, sys := range []unit.System{unit.Metric, unit.US} {
				if text := a.Text(sys); strings.Contains(text, "NaN") || (text == "") != (len(a.Values) == 0) {
					t.Errorf("%s reads %q", a.Code, text)
				}
			}
		}
	}
}

// A number reads alike in both systems where they share its unit, and is cut to
// four digits where it was declared in the other one: the seed of the random
// numbers is no 20260000, and 50 psi are no 3.447378647 bar.
func TestAssumptionsAreReadable(t *testing.T) {
	seen := map[string]string{}
	for _, a := range all() {
		metric, us := a.Text(unit.Metric), a.Text(unit.US)
		if unit.Of(a.Kind, unit.Metric).Symbol == unit.Of(a.Kind, unit.US).Symbol && metric != us {
			t.Errorf("%s: %q is %q in the other system", a.Title, metric, us)
		}
		for _, text := range []string{metric, us} {
			for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' }) {
				if whole, part, _ := strings.Cut(strings.Trim(word, "-"), "."); part != "" && len(strings.TrimLeft(whole+part, "0")) > 5 {
					t.Errorf("%s reads %q", a.Title, text)
				}
			}
		}
		seen[a.Title] = metric + " (" + us + ")"
	}
	for title, want := range map[string]string{
		"Seed of the random numbers":                                        "20260101 (20260101)",
		"1 in PE pipe, SIDR 15 (1.049 in bore): what it may carry at 20 °C": "6.895 bar (100 psi)",
		"Share of its rating that PE 100 pipe carries then":                 "75.625 % (75.625 %)", // 121/160
		"Least speed at an open end that carries dirt out":                  "0.3 m/s (0.9843 ft/s)",
	} {
		if seen[title] != want {
			t.Errorf("%s: %q, want %q", title, seen[title], want)
		}
	}
}
