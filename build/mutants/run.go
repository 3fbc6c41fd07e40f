package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// A bench holds the compiled tests of a package with all its mutants in it.
type bench struct {
	program, folder string // the tests run in their package's folder, for testdata
	temp            string
	tests           []test
	by              way
}

// A test is one of a package's tests, examples or targets of fuzzing with
// their seeds.
type test struct {
	name    string
	took    time.Duration // on a processor, unchanged
	reaches map[int]bool  // mutants
}

// A fate is what came of a mutant.
type fate int

const (
	survived  fate = iota
	unreached      // no test comes past its place
	killed
	hung // killed by the limit of time or memory
)

func (f fate) String() string {
	return [...]string{"survived", "not reached by any test", "killed", "hung"}[f]
}

// compile builds the tests of a package with the given files in the place of
// its own, and finds out which test reaches which mutant.
func compile(p *pack, files map[string]string, temp string, by way) (*bench, error) {
	replace := map[string]string{}
	for i, name := range names(files) {
		at := filepath.Join(temp, strconv.Itoa(i)+".go")
		if err := os.WriteFile(at, []byte(files[name]), 0o644); err != nil {
			return nil, err
		}
		replace[name] = at
	}
	overlay, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return nil, err
	}
	overlayAt := filepath.Join(temp, "overlay.json")
	if err := os.WriteFile(overlayAt, overlay, 0o644); err != nil {
		return nil, err
	}
	b := &bench{program: filepath.Join(temp, "mutants.test"), folder: p.folder, temp: temp, by: by}
	build := exec.Command("go", "test", "-c", "-vet=off", "-overlay", overlayAt, "-o", b.program, p.path)
	if out, err := build.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%s with its mutants does not compile: %w\n%s", p.path, err, out)
	}
	return b, b.try()
}

// try runs every test by itself, unchanged: all must pass.
func (b *bench) try() error {
	list := exec.Command(b.program, "-test.list", "^(Test|Fuzz|Example)")
	list.Dir = b.folder
	out, err := list.Output()
	if err != nil {
		return fmt.Errorf("listing tests: %w", err)
	}
	for _, name := range strings.Fields(string(out)) {
		b.tests = append(b.tests, test{name: name})
	}
	errs := make([]error, len(b.tests))
	inTurn(b.by.workers, len(b.tests), func(i int) { errs[i] = b.record(&b.tests[i]) })
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	slices.SortStableFunc(b.tests, func(x, y test) int { return int(x.took - y.took) })
	return nil
}

// record runs a test unchanged and notes what it reaches and how long it takes.
func (b *bench) record(t *test) error {
	file := filepath.Join(b.temp, t.name+".reached")
	cmd := exec.Command(b.program, "-test.run", "^"+t.name+"$")
	cmd.Dir = b.folder
	cmd.Env = append(os.Environ(), "MUTANTS_REACHED="+file, "MUTANT=")
	if out, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("%s fails without a mutant: %w\n%s", t.name, err, out)
	}
	t.took = cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
	t.reaches = map[int]bool{}
	text, err := os.ReadFile(file)
	if err != nil && !os.IsNotExist(err) {
		return err
	}
	for _, line := range strings.Fields(string(text)) {
		id, err := strconv.Atoi(line)
		if err != nil {
			return err
		}
		t.reaches[id] = true
	}
	return nil
}

// quick is how long tests take that run together: to start them one by one
// would take longer.
const quick = 200 * time.Millisecond

// fate runs the tests that reach a mutant, the quickest first, until one fails.
func (b *bench) fate(id int) fate {
	var batch []string
	var took time.Duration
	outcome := unreached
	run := func() bool {
		outcome = b.run(id, batch, took)
		batch, took = nil, 0
		return outcome != survived
	}
	for _, t := range b.tests {
		if !t.reaches[id] {
			continue
		}
		if len(batch) > 0 && took+t.took > quick && run() {
			return outcome
		}
		batch, took = append(batch, t.name), took+t.took
	}
	if len(batch) > 0 {
		run()
	}
	return outcome
}

// A mutant may run for ever, or take all memory. It may take so many times
// what the tests take unchanged, on a processor, and some seconds: a loaded
// machine makes no difference to that. One that waits for ever takes nothing,
// so the clock stops it at last.
const (
	longer   = 5
	patience = 4 // s
	byClock  = 60 * time.Second
	mostHeap = 6 << 20 // kB of addresses, of which Go reserves one or two gigabytes
)

// run runs tests in a mutant.
func (b *bench) run(id int, tests []string, took time.Duration) fate {
	seconds := b.by.patience + int((longer * took).Seconds())
	ctx, cancel := context.WithTimeout(context.Background(), byClock+longer*time.Duration(seconds)*time.Second)
	defer cancel()
	limits := fmt.Sprintf(`ulimit -t %d && ulimit -v %d && exec "$0" "$@"`, seconds, mostHeap)
	cmd := exec.CommandContext(ctx, "sh", "-c", limits, b.program, "-test.failfast", "-test.timeout=0", "-test.run", "^("+strings.Join(tests, "|")+")$")
	cmd.Dir = b.folder
	cmd.Env = append(os.Environ(), "MUTANT="+strconv.Itoa(id), "MUTANTS_REACHED=", "GOTRACEBACK=none")
	var out bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &out
	err := cmd.Run()
	switch {
	case err == nil:
		return survived
	case cmd.ProcessState == nil:
		panic(err) // it did not even start
	case cmd.ProcessState.ExitCode() < 0 || bytes.Contains(out.Bytes(), []byte("SIGXCPU")) || bytes.Contains(out.Bytes(), []byte("out of memory")):
		return hung
	}
	return killed
}

// each runs all of the given mutants and tells what came of each, one by one.
func (b *bench) each(ids []int, tell func(i int, f fate)) {
	var one sync.Mutex
	inTurn(b.by.workers, len(ids), func(i int) {
		f := b.fate(ids[i])
		one.Lock()
		defer one.Unlock()
		tell(i, f)
	})
}

// inTurn calls do for each number below n, so many at once.
func inTurn(workers, n int, do func(i int)) {
	next := make(chan int)
	var done sync.WaitGroup
	for range max(workers, 1) {
		done.Go(func() {
			for i := range next {
				do(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	done.Wait()
}

// names returns the files that hold mutants, in order.
func names(files map[string]string) []string { return slices.Sorted(maps.Keys(files)) }
