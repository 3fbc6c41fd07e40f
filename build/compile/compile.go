// Package compile makes the WebAssembly programs with the Go of this machine.
package compile

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// Root returns the folder that holds go.mod, from any folder within it.
func Root() (string, error) {
	mod, err := run(".", nil, "env", "GOMOD")
	if err != nil {
		return "", err
	}
	if mod == "" || mod == os.DevNull {
		return "", errors.New("run this inside the repository: there is no go.mod in this folder or above it")
	}
	return filepath.Dir(mod), nil
}

// Program compiles wasm/cmd/planner of the repository at root and returns it
// with wasm_exec.js of the same Go, without which it does not run.
//
// Without -trimpath and -buildvcs=false the program would name this machine's
// folders and the commit, so that every commit cost each reader a download.
//
// A program that is named shows the names of functions in the text of a stack
// trace, and is 30 kB more to download.
func Program(root string, named bool) (program, glue []byte, err error) {
	if program, err = wasm(root, "./wasm/cmd/planner", small...); err != nil {
		return nil, nil, err
	}
	if program, err = Smaller(program, named); err != nil {
		return nil, nil, err
	}
	glue, err = glueOf(root)
	return program, glue, err
}

// Worker compiles build/edge/worker of the repository at root and returns it
// with wasm_exec.js of the same Go. What the platform takes for free is bounded, so that it
// is kept as small as the page's program, but for the rewriting.
func Worker(root string) (program, glue []byte, err error) {
	if program, err = wasm(root, "./build/edge/worker", small...); err != nil {
		return nil, nil, err
	}
	glue, err = glueOf(root)
	return program, glue, err
}

// glueOf is wasm_exec.js, which starts a program of the same Go.
func glueOf(root string) ([]byte, error) {
	goroot, err := run(root, nil, "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(goroot, "lib", "wasm", "wasm_exec.js"))
}

// wasm compiles a command to WebAssembly.
func wasm(root, command string, flags ...string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "evenrow-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "program.wasm")
	// The older collector is 8 kB less to download, and on a heap as small as
	// ours as fast.
	env := []string{"GOOS=js", "GOARCH=wasm", "GOFLAGS=", "GOEXPERIMENT=nogreenteagc"}
	args := slices.Concat([]string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", out}, flags, []string{command})
	if _, err := run(root, env, args...); err != nil {
		return nil, err
	}
	return os.ReadFile(out)
}

// small turns inlining off, which makes the download an eighth smaller: a body
// that is copied into each of its callers is downloaded as often. The packages
// in which the solver spends its time keep it.
var small = []string{
	"-gcflags=all=-l",
	"-gcflags=math=",
	"-gcflags=evenrow/wasm/trade/emitter=",
	"-gcflags=evenrow/wasm/works/network=",
	"-gcflags=evenrow/wasm/trade/pipe=",
}

// run returns what the go command prints. The error holds what it complained
// about.
func run(dir string, env []string, args ...string) (string, error) {
	cmd := exec.Command("go", args...)
	cmd.Dir = dir
	cmd.Env = append(cmd.Environ(), env...)
	var complaints bytes.Buffer
	cmd.Stderr = &complaints
	out, err := cmd.Output()
	if err != nil {
		return "", errors.New("go " + strings.Join(args, " ") + ": " + err.Error() + "\n" + strings.TrimSpace(complaints.String()))
	}
	return strings.TrimSpace(string(out)), nil
}
