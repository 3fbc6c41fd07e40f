// Command mutants tells how well tests hold the calculation: it changes the
// code in one place after the other, a comparison here, a number there, and
// sees whether a test of the same package fails. A change that no test notices
// is a mutant that survives, and its place is printed.
//
//	go run ./build/mutants [-list] [-sample 300] [-seed 1] [package...]
//
// Each package is compiled once, with all its mutants in it, and its tests run
// once for each, those that reach the mutant's place only. The tree stays as
// it is.
//
// What changes: comparisons, at the border and to their contrary; conditions,
// to true and to false; && and ||; operators of arithmetic and bits; numbers,
// n to n+1 and x to 2x, a declared constant wherever it is used; statements,
// left out; what is returned, to nothing or its contrary. What does not: words,
// errors and panics, lists of kinds, what is declared of formulas and
// assumptions but for the functions in it, how much room is set aside, and the
// step of a loop, without which nothing ends.
//
// A test that names a declared constant sees it as it is written, while the code
// around it runs with another: such a test may notice a change of the constant
// that it would not notice if someone typed it.
package main

import (
	"bytes"
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"time"
)

// packages are those whose tests are held to the goal.
var packages = []string{
	"wasm/trade/pipe", "wasm/trade/pump", "wasm/trade/emitter",
	"wasm/grower/carry",
	"wasm/works/network", "wasm/works/layout", "wasm/works/design",
	"wasm/year/demand", "wasm/year/season", "wasm/year/shots",
}

// goal is the least share of mutants that is to be killed, and mostEquivalent
// the greatest share that may be listed as no change at all.
const (
	goal           = 0.85
	mostEquivalent = 0.05
)

//go:embed equivalent.txt
var equivalent string

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	flags := flag.NewFlagSet("mutants", flag.ContinueOnError)
	sample := flags.Int("sample", 0, "how many mutants to run, of all packages together; 0 is all")
	seed := flags.Uint64("seed", 1, "which mutants a sample has")
	list := flags.Bool("list", false, "only print the mutants, and what is wrong with the list of equivalent ones")
	workers := flags.Int("workers", runtime.NumCPU(), "how many to run at once")
	if err := flags.Parse(args); err != nil {
		return err
	}
	root, err := moduleRoot()
	if err != nil {
		return err
	}
	wanted := flags.Args()
	if len(wanted) == 0 {
		wanted = packages
	}
	for i, p := range wanted {
		if wanted[i] = p; !filepath.IsAbs(p) {
			wanted[i] = filepath.Join(root, p)
		}
	}
	listed, err := readEquivalents(equivalent)
	if err != nil {
		return err
	}
	return judge(wanted, root, listed, way{sampling{*sample, *seed}, *list, *workers, patience}, out)
}

func moduleRoot() (string, error) {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	return filepath.Dir(string(bytes.TrimSpace(out))), err
}

// A way to run mutants.
type way struct {
	sampling
	list     bool // print them, and run none
	workers  int  // how many at once
	patience int  // s of a processor that each has in any case
}

// A sampling is how many mutants to run; 0 is all.
type sampling struct {
	most int
	seed uint64
}

// of returns which of n mutants to run.
func (s sampling) of(n int) map[int]bool {
	order := rand.New(rand.NewPCG(s.seed, 0)).Perm(n)
	if s.most > 0 && s.most < n {
		order = order[:s.most]
	}
	chosen := map[int]bool{}
	for _, i := range order {
		chosen[i] = true
	}
	return chosen
}

// A score is what came of mutants: how many ran, how many of those were killed, and how
// many are listed as no change at all.
type score struct{ all, killed, hung, equivalent int }

func (s *score) add(o score) {
	s.all += o.all
	s.killed += o.killed
	s.hung += o.hung
	s.equivalent += o.equivalent
}

// share is what part of those that change anything is killed.
func (s score) share() float64 {
	if s.all == s.equivalent {
		return 1
	}
	return float64(s.killed) / float64(s.all-s.equivalent)
}

func (s score) String() string {
	return fmt.Sprintf("%5d killed of %5d, %5.1f %%; %3d ran without end, %3d listed as equivalent", s.killed, s.all-s.equivalent, 100*s.share(), s.hung, s.equivalent)
}

// A loaded package has its mutants and the files that hold them.
type loaded struct {
	*pack
	mutants []*mutant
	files   map[string]string
}

// judge runs the mutants of packages, prints who survives and the scores, and
// returns an error where a goal is missed.
func judge(wanted []string, root string, listed equivalents, by way, out io.Writer) error {
	packs, err := load(wanted...)
	if err != nil {
		return err
	}
	var all []loaded
	count := 0
	for _, p := range packs {
		mutants, files := mutate(p, root)
		all = append(all, loaded{p, mutants, files})
		count += len(mutants)
	}
	chosen := by.of(count)
	var total score
	var lines []string
	var wrong []error
	count = 0
	for _, l := range all {
		var run []*mutant
		for i, mu := range l.mutants {
			if chosen[count+i] {
				run = append(run, mu)
			}
		}
		count += len(l.mutants)
		if by.list {
			for _, mu := range run {
				fmt.Fprintf(out, "%s  (line %d)\n", mu.key(), mu.line)
			}
			wrong = append(wrong, listed.stale(l.mutants)...)
			continue
		}
		start := time.Now()
		s, errs := survivors(l, run, listed, by, out)
		wrong = append(wrong, errs...)
		lines = append(lines, fmt.Sprintf("%-28s %v  (%.0f s)", relative(root, l.folder), s, time.Since(start).Seconds()))
		total.add(s)
	}
	if by.list {
		return errors.Join(wrong...)
	}
	fmt.Fprintf(out, "\n%s\n%-28s %v\n", strings.Join(lines, "\n"), "all", total)
	if total.share() < goal {
		wrong = append(wrong, fmt.Errorf("%.1f %% are killed, and %.0f %% should be", 100*total.share(), 100*goal))
	}
	if e := float64(total.equivalent); e > mostEquivalent*float64(total.all) {
		wrong = append(wrong, fmt.Errorf("%.0f of %d are listed as equivalent: more than %.0f %%", e, total.all, 100*mostEquivalent))
	}
	return errors.Join(wrong...)
}

func relative(root, name string) string {
	if r, err := filepath.Rel(root, name); err == nil {
		return filepath.ToSlash(r)
	}
	return name
}

// survivors runs mutants of one package and prints those that survive. What is
// listed as equivalent runs too: if a test kills it, or if there is no such
// mutant any more, the list is wrong.
func survivors(l loaded, run []*mutant, listed equivalents, by way, out io.Writer) (score, []error) {
	temp, err := os.MkdirTemp("", "mutants-")
	if err != nil {
		return score{}, []error{err}
	}
	defer os.RemoveAll(temp)
	b, err := compile(l.pack, l.files, temp, by)
	if err != nil {
		return score{}, []error{err}
	}
	var ids []int
	for _, mu := range run {
		ids = append(ids, mu.id)
	}
	s := score{all: len(run)}
	var wrong []error
	b.each(ids, func(i int, f fate) {
		mu := run[i]
		same, dead := listed[mu.key()] != "", f == killed || f == hung
		if f == hung {
			s.hung++
		}
		switch {
		case dead:
			s.killed++
			if same {
				wrong = append(wrong, errors.New("listed as equivalent, but "+f.String()+": "+mu.key()))
			}
		case same:
			s.equivalent++
		default:
			fmt.Fprintf(out, "%s  (line %d, %v)\n", mu.key(), mu.line, f)
		}
	})
	return s, append(wrong, listed.stale(l.mutants)...)
}

// equivalents are the reasons why mutants change nothing that could be seen,
// by key.
type equivalents map[string]string

// readEquivalents reads a list: the key of a mutant on a line, as it is
// printed, and indented below it the reason. What begins with # is a remark.
func readEquivalents(text string) (equivalents, error) {
	list := equivalents{}
	key := ""
	for i, line := range strings.Split(text, "\n") {
		said := strings.TrimSpace(line)
		switch {
		case said == "" || strings.HasPrefix(line, "#"):
		case line[0] != '\t' && line[0] != ' ':
			if key != "" {
				return nil, fmt.Errorf("equivalent.txt:%d: the mutant before has no reason", i+1)
			}
			if key = said; list[key] != "" {
				return nil, fmt.Errorf("equivalent.txt:%d: stands there twice", i+1)
			}
		case key == "":
			return nil, fmt.Errorf("equivalent.txt:%d: a reason without a mutant", i+1)
		default:
			list[key], key = said, ""
		}
	}
	if key != "" {
		return nil, errors.New("equivalent.txt: the last mutant has no reason")
	}
	return list, nil
}

// stale returns an error for each entry of the list about a file of these
// mutants that is none of them.
func (e equivalents) stale(mutants []*mutant) []error {
	there, files := map[string]bool{}, map[string]bool{}
	for _, mu := range mutants {
		there[mu.key()], files[mu.file] = true, true
	}
	var wrong []error
	for key := range e {
		file, _, _ := strings.Cut(key, " ")
		if files[file] && !there[key] {
			wrong = append(wrong, errors.New("listed as equivalent, and no mutant: "+key))
		}
	}
	slices.SortFunc(wrong, func(a, b error) int { return strings.Compare(a.Error(), b.Error()) })
	return wrong
}
