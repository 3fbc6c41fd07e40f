package judge

import (
	"encoding/csv"
	"encoding/xml"
	"flag"
	"fmt"
	"io"
	"net/http/httptest"
	"os"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"evenrow/build/edge"
	"evenrow/build/hostile"
	"evenrow/build/server"
	"evenrow/build/site"
	"evenrow/build/tool"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
)

// How much of each run; make endure gives more.
var (
	seasons = flag.Int("seasons", 80, "plans through the answer and the season")
	wholes  = flag.Int("wholes", 6, "plans through everything")
	texts   = flag.Int("texts", 6000, "links, files and forms")
	run     = flag.Int("run-number", 1, "number of the run: another one has other cases")
)

// A tally is what came of a run.
type tally struct {
	tried, failed, left atomic.Int64
	mu                  sync.Mutex
	used                float64
	longest             time.Duration
	slowest             int
	claims              map[string]int
}

// TestEverythingHolds prints a table: what was tried, how often, and what failed.
func TestEverythingHolds(t *testing.T) {
	var table strings.Builder
	fmt.Fprintf(&table, "%-32s %9s %7s %9s %12s %s\n", "run "+fmt.Sprint(*run), "tried", "failed", "left out", "most of work", "longest")
	of := func(name string, n int, do func(n int) Verdict) *tally {
		all := &tally{claims: map[string]int{}}
		var next atomic.Int64
		var workers sync.WaitGroup
		for range runtime.GOMAXPROCS(0) {
			workers.Go(func() {
				for {
					k := int(next.Add(1)) - 1
					if k >= n {
						return
					}
					at := time.Now()
					v := do(k)
					took := time.Since(at)
					all.tried.Add(1)
					all.left.Add(int64(v.Left))
					if len(v.Faults) > 0 && all.failed.Add(1) <= 20 {
						t.Errorf("%s, run %d, case %d: %s", name, *run, k, strings.Join(v.Faults[:min(3, len(v.Faults))], "\n"))
					}
					all.mu.Lock()
					all.claims[v.Claim]++
					all.used = max(all.used, v.Used)
					if took > all.longest {
						all.longest, all.slowest = took, k
					}
					all.mu.Unlock()
				}
			})
		}
		workers.Wait()
		fmt.Fprintf(&table, "%-32s %9d %7d %9d %11.1f%% %.2f s, case %d\n", name, all.tried.Load(), all.failed.Load(), all.left.Load(),
			100*all.used, all.longest.Seconds(), all.slowest)
		return all
	}
	judge := func(kind, far int) func(int) Verdict {
		return func(n int) Verdict {
			p, _ := hostile.Plan(hostile.Numbered(*run*10+kind, n))
			if far == ToSeason && n%4 == 0 {
				return Plan(p, ToPage)
			}
			return Plan(p, far)
		}
	}
	all := of("plans, answer and season", *seasons, judge(0, ToSeason))
	t.Log(all.claims)
	of("plans, all explorations, JSON", *wholes, judge(1, ToEnd))
	for kind, name := range [hostile.Inputs]string{"links", "files", "forms"} {
		// To draw a plan takes longer than to judge a text, so some are of one.
		type drawn struct {
			n int
			p *plan.Plan
		}
		var last atomic.Pointer[drawn]
		of(name, *texts/hostile.Inputs, func(n int) Verdict {
			from := last.Load()
			if from == nil || from.n != n/16 {
				p, _ := hostile.Plan(hostile.Numbered(*run*10+5+kind, n/16))
				from = &drawn{n / 16, p}
				last.Store(from)
			}
			return Verdict{Faults: Text(hostile.Text(hostile.Numbered(*run*10+2+kind, n), from.p, hostile.Input(kind)), hostile.Input(kind), n%20 == 0)}
		})
	}
	t.Log("\n" + table.String())
}

// FuzzPlans has the fuzzer of Go look for plans of which something does not hold.
func FuzzPlans(f *testing.F) {
	for _, seed := range []string{"", "evenrow", "\x01\x02\x03\x04\x05\x06\x07\x08", strings.Repeat("\x00", 400), strings.Repeat("\xff", 400), strings.Repeat("\x07\x55", 300)} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		p, _ := hostile.Plan(hostile.NewSource(data))
		plants := 0
		for i := range p.Rows {
			plants += p.Rows[i].Plants
		}
		far := ToPage
		if plants <= 60 {
			far = ToEnd
		}
		for _, fault := range Plan(p, far).Faults {
			t.Error(fault)
		}
	})
}

// The fuzzer of Go looks for texts, of which the first byte says the kind.
func FuzzTexts(f *testing.F) {
	for kind := range byte(hostile.Inputs) {
		for n := range 4 {
			s := hostile.Numbered(3, n)
			p, _ := hostile.Plan(s)
			f.Add(append([]byte{kind}, hostile.Text(s, p, hostile.Input(kind))...))
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) == 0 {
			return
		}
		for _, fault := range Text(string(data[1:]), hostile.Input(data[0]%hostile.Inputs), true) {
			t.Error(fault)
		}
	})
}

// What a host makes of any plan is what it says it is: a page, a table (RFC
// 4180), a file, a calendar and a picture.
func TestPlansAtTheEdge(t *testing.T) {
	b, err := site.Build(site.Source{
		Content: os.DirFS("../../content"), Site: os.DirFS("../../site"),
		Program: []byte("\x00asm"), Glue: []byte("globalThis.Go = class {};"), Tool: tool.New(), Answered: true,
	})
	if err != nil {
		t.Fatal(err)
	}
	host := edge.New(server.New(b.Files), b.Shell, edge.Options{Fault: func(fault any, stack []byte) { t.Errorf("%v\n%s", fault, stack) }})
	for n := range 25 {
		p, _ := hostile.Plan(hostile.Numbered(4, n))
		for _, path := range edge.Paths() {
			w := httptest.NewRecorder()
			host.ServeHTTP(w, httptest.NewRequest("GET", path+"?"+carry.Link(p), nil))
			body := w.Body.String()
			if w.Code != 200 || len(body) == 0 || unreal(body) != "" {
				t.Errorf("plan %d, %s: %d, %d bytes, %q", n, path, w.Code, len(body), unreal(body))
			}
			switch path[strings.LastIndexByte(path, '/')+1:] {
			case "plan.csv":
				if rows, err := csv.NewReader(strings.NewReader(body)).ReadAll(); err != nil || len(rows) < 2 {
					t.Errorf("plan %d: a table of %d rows, %v", n, len(rows), err)
				}
			case "plan.svg":
				for d := xml.NewDecoder(strings.NewReader(body)); ; {
					if _, err := d.Token(); err == io.EOF {
						break
					} else if err != nil {
						t.Errorf("plan %d: the picture is no XML: %v", n, err)
						break
					}
				}
			case "plan.ics":
				calendar(body, func(format string, args ...any) { t.Errorf("plan %d: "+format, append([]any{n}, args...)...) })
			}
		}
	}
}
