package view

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenrow/build/hostile"
	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/sheet"
)

var (
	restsRow  = regexp.MustCompile(`<tr><th scope="row">.*?<a href="#f-([^"]*)">.*?</th><td>([^<]*)</td><td>([^<]*)</td></tr>`)
	restsTurn = regexp.MustCompile(`(Yes|Nearly|No|Unknown) (below|beyond|at) ([−0-9.]+)( [^ ,]+)?( and (?:below|above))?`)
	restsIf   = regexp.MustCompile(`^Yes, if (\d+) (?:thing is|things are) so\. `)
)

// typedIn is the verdict of a plan with a number typed into the boxes of a field,
// of all records that have the same in them as the first.
func typedIn(t *testing.T, p *plan.Plan, path, number string) sheet.Verdict {
	t.Helper()
	d := plan.DraftOf(p)
	was := d.Get(path)
	section, rest, _ := strings.Cut(path, ".")
	name := rest[strings.LastIndexByte(rest, '.')+1:]
	f := plan.FieldNamed(section, name)
	x, _ := strconv.ParseFloat(number, 64)
	old, _ := strconv.ParseFloat(was, 64)
	for i := range plan.SectionNamed(section).Records(p) {
		at := plan.Path(f, i)
		switch v, _ := strconv.ParseFloat(d.Get(at), 64); {
		case section == "points":
			d.Set(at, strconv.FormatFloat(v*(x/old), 'g', 12, 64))
		case d.Get(at) == was && p.Origin(f, i) == plan.Assumed:
			d.Set(at, number)
		}
	}
	q, errs := d.Read()
	if len(errs) > 0 {
		t.Fatalf("%s as %s: %v", path, number, errs[0])
	}
	return sheet.AnswerWithin(0, q, nil).Verdict
}

// What the page says of turns is so when it is typed: at the number the answer is
// still what it is, or already the better one, and a step of its last digit on, or
// back, it is the other.
func TestWhatIsSaidToTurnTheAnswerDoes(t *testing.T) {
	word := map[string]sheet.Verdict{"Yes": sheet.Yes, "Nearly": sheet.Nearly, "No": sheet.No, "Unknown": sheet.Cannot}
	said := map[string]int{}
	plans := []*plan.Plan{plan.Default()}
	for _, x := range plan.Examples() {
		p := x.Plan.Clone()
		p.Propose()
		plans = append(plans, p)
	}
	tap := plan.Default()
	tap.Supply.Kind, tap.Supply.Regulator, tap.Supply.Static, tap.Supply.TapFlow = plan.Mains, 0, 3e5, 20/6e4
	tap.Propose()
	plans = append(plans, tap)
	for n := range 25 {
		p := hostile.Ordinary(hostile.Numbered(64, n))
		p.Propose()
		plans = append(plans, p)
	}
	for n, p := range plans {
		s := sheet.AnswerWithin(0, p, nil)
		before := answer.Announce(s)
		s.ExploreWithin(plenty, sheet.Turning)
		after := answer.Announce(s)
		rows := restsRow.FindAllStringSubmatch(strings.ReplaceAll(Explored(s, sheet.Turning, linked)[0].HTML, "\u00a0", " "), -1)
		switch things := restsIf.FindStringSubmatch(after); {
		case s.Wanted != nil: // and the answer is for what it takes
			said["wanted"]++
		case s.Rest.Untested > 0: // by its own bound
			if s.Verdict == sheet.Yes && !strings.HasPrefix(after, "Yes, if what is assumed is so. ") {
				t.Errorf("plan %d: not all is tried: %s", n, after)
			}
		case s.Verdict != sheet.Yes:
			if before != after || things != nil {
				t.Errorf("plan %d: %q before, %q after", n, before, after)
			}
		case !strings.HasPrefix(before, "Yes, if what is assumed is so. "):
			t.Errorf("plan %d: before anybody looked: %s", n, before)
		case len(rows) == 0:
			if said["plain"]++; !strings.HasPrefix(after, "Yes. ") {
				t.Errorf("plan %d: nothing turns it: %s", n, after)
			}
		default:
			if said["if"]++; things == nil || things[1] != strconv.Itoa(len(rows)) {
				t.Errorf("plan %d: %d things turn it: %s", n, len(rows), after)
			}
		}
		for _, row := range rows {
			path := row[1]
			turns := restsTurn.FindAllStringSubmatch(row[3], -1)
			if len(turns) == 0 {
				t.Errorf("plan %d, %s: %q", n, path, row[3])
			}
			for _, turn := range turns {
				to, number := word[turn[1]], strings.ReplaceAll(turn[3], "−", "-")
				v, err := strconv.ParseFloat(number, 64)
				if err != nil {
					t.Fatal(err)
				}
				down, better := turn[2] == "below" || turn[5] == " and below", turn[2] == "at"
				said[turn[1]+" "+turn[2]]++
				here := typedIn(t, p, path, number)
				if better && here != to || !better && here != s.Verdict {
					t.Errorf("plan %d, %s: %q, and at %s it is %d", n, path, row[3], number, here)
				}
				// A twentieth of the range on is on the other side.
				i := slices.IndexFunc(s.Rest.Turns, func(turn sheet.Turn) bool { return plan.Path(turn.Field, turn.Records[0]) == path })
				told := &s.Rest.Turns[i]
				u := unit.Of(told.Field.Kind, p.Units)
				if told.Field.Type == plan.Whole {
					u = unit.Of(unit.Count, p.Units)
				}
				from, end := u.FromInner(told.From), u.FromInner(told.High)
				if down {
					end = u.FromInner(told.Low)
				}
				step := math.Abs(end-from) / 20
				if told.Field.Type == plan.Whole {
					step = max(1, math.Ceil(step))
				}
				if down == better {
					v = min(v+step, max(from, end))
				} else {
					v = max(v-step, min(from, end))
				}
				there := typedIn(t, p, path, strconv.FormatFloat(v, 'g', 12, 64))
				if better && there == to || !better && there == s.Verdict {
					t.Errorf("plan %d, %s: %q, and at %g it is %d", n, path, row[3], v, there)
				}
			}
		}
	}
	for _, kind := range []string{"plain", "if", "Nearly below", "Nearly beyond", "Yes at"} {
		if said[kind] == 0 {
			t.Errorf("%q is never said", kind)
		}
	}
}

// What an exploration changes of the answer's sentence is what a screen that is made
// anew has, and every job is told it.
func TestTheAnswerIsToldAgain(t *testing.T) {
	for _, x := range plan.Examples() {
		for i := range Jobs {
			s := sheet.Answer(x.Plan)
			screen := &Screen{Job: &Jobs[i], Sheet: s}
			first := sheet.Turning
			if Jobs[i].Needs(sheet.Helping) && !s.Idle(sheet.Helping) {
				first = sheet.Helping
			}
			if _, next := screen.Owed(0); next != int(by(first)) {
				t.Errorf("%s, %s: %d comes first", x.Key, Jobs[i].ID, next)
			}
			s.Explore(sheet.Turning)
			again := map[string]string{}
			for _, f := range screen.Explored(sheet.Turning) {
				again[f.ID] = f.HTML
			}
			for _, f := range append(screen.Around(), screen.Answered()...) {
				if again[f.ID] != f.HTML {
					t.Errorf("%s, %s: %s is told as %q, and is %q", x.Key, Jobs[i].ID, f.ID, again[f.ID], f.HTML)
				}
			}
			if again["line"] == "" || again["always"] == "" || Jobs[i].ID == "answer" && (again["answer"] == "" || again["rests"] == "") {
				t.Errorf("%s, %s: the answer is not told again", x.Key, Jobs[i].ID)
			}
			if len(screen.Explored(sheet.Season)) > 0 && Jobs[i].ID == "why" {
				t.Error("the season is told under Why")
			}
		}
	}
}
