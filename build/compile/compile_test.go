package compile

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The same tree must give the same program, wherever it stands, or every build
// would cost each reader a download.
func TestTheProgramIsTheSameTwice(t *testing.T) {
	root, err := Root()
	if err != nil {
		t.Fatal(err)
	}
	// The test runner keeps a result until something that the test looked at
	// has changed, and does not see what the compiler reads.
	err = filepath.WalkDir(filepath.Join(root, "wasm"), func(name string, _ fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(name, ".go") {
			_, err = os.Stat(name)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	first, glue, err := Program(root, false)
	if err != nil {
		t.Fatal(err)
	}
	second, _, err := Program(root, false)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.HasPrefix(first, []byte("\x00asm")) || !bytes.Equal(first, second) {
		t.Errorf("two builds give %d and %d bytes that differ, or no WebAssembly", len(first), len(second))
	}
	if bytes.Contains(first, []byte(root+"/")) {
		t.Errorf("the program names this machine's folder %s", root)
	}
	if !bytes.Contains(glue, []byte("globalThis.Go")) {
		t.Error("wasm_exec.js defines no Go")
	}
}

func TestProblemsOfTheCompilerAreTold(t *testing.T) {
	if _, err := run(".", nil, "build", "./no/such"); err == nil || !bytes.Contains([]byte(err.Error()), []byte("no/such")) {
		t.Errorf("building what is not there: %v", err)
	}
}
