package check

import (
	_ "embed"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

//go:embed testdata/agronomy-ids.txt
var agronomy string

// Rows that are no formulas, such as almanacs and tables of crops, are tested
// in the packages that they belong to: the row's number and its source stand
// beside each value there.
func TestEveryRowOfTheAgronomyReferenceIsTested(t *testing.T) {
	tested := map[string]bool{}
	for _, r := range Rows {
		tested[r.ID] = true
	}
	id := regexp.MustCompile(`\b[A-Z]{2}-\d\d\b`)
	err := filepath.WalkDir("../../..", func(name string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(name, "_test.go") {
			return err
		}
		text, err := os.ReadFile(name)
		for _, found := range id.FindAllString(string(text), -1) {
			tested[found] = true
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	want := strings.Fields(agronomy)
	if len(want) != 132 {
		t.Fatalf("the list of the reference has %d rows, want 132", len(want))
	}
	for _, id := range want {
		if !tested[id] {
			t.Errorf("%s is tested nowhere", id)
		}
	}
}
