package edge

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"net/http"
	"slices"
	"strings"

	"evenrow/build/policy"
	"evenrow/build/shell"
	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
)

// version is that of the program and of the frames that it fills.
func version(program string, s *shell.Shell) string {
	parts := []string{program, s.Plan, s.Refusal}
	for name, text := range s.Cautions {
		parts = append(parts, name+" "+text)
	}
	slices.Sort(parts[3:])
	return digest(parts...)
}

// digest is a hash of texts, in their order. No two lists of texts have the
// same one, because each is hashed by itself first.
func digest(texts ...string) string {
	all := make([]byte, 0, len(texts)*sha256.Size)
	for _, text := range texts {
		h := sha256.New()
		io.WriteString(h, text)
		all = h.Sum(all)
	}
	sum := sha256.Sum256(all)
	return hex.EncodeToString(sum[:16])
}

// kept returns the tag by which the answer for what was asked is known again,
// and how it may be kept. Both are known before anything is worked out: the
// same plan from the same program at the same address is the same answer.
//
// A plan is its reader's own, and no business of a cache that others share. What
// was sent in a body, or has a mistake, is kept nowhere.
func (q *question) kept(to *route, a *asked) (tag, keep string) {
	if q.r.Method == http.MethodPost || len(a.errs) > 0 {
		return "", ""
	}
	keep = policy.AskAlone
	if a.public {
		keep = policy.AskFirst
	}
	if q.version != "" {
		tag = `"` + digest(q.version, to.path, q.origin(), a.key) + `"`
	}
	return tag, keep
}

// matches reports whether a client that has these has the tag. A host on the
// way may have weakened it by compressing.
func matches(lines []string, tag string) bool {
	for _, line := range lines {
		for one := range strings.SplitSeq(line, ",") {
			one = strings.TrimPrefix(strings.TrimSpace(one), "W/")
			if one == tag || one == "*" {
				return true
			}
		}
	}
	return false
}

// exampleLinks is the links of the examples, which every page leads to.
func exampleLinks() map[string]bool {
	all := map[string]bool{}
	for _, e := range plan.Examples() {
		all[carry.Link(e.Plan)] = true
	}
	return all
}
