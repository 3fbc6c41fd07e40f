package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"flag"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"

	"evenrow/build/compile"
	"evenrow/build/edge"
	"evenrow/build/policy"
	"evenrow/build/server"
	"evenrow/build/site"
	"evenrow/wasm/grower/plan"
)

// maxWorker is how many bytes the worker may have, compressed by gzip: what the
// platform takes for free.
const maxWorker = 3_000_000

// shellFile holds the frames of the plan pages, for a server that takes the
// site from the folder.
const shellFile = "shell.json"

func edgeCommand(args []string, std stdio) int {
	flags := flag.NewFlagSet("edge", flag.ContinueOnError)
	out := flags.String("out", "", "the `FOLDER` to write, instead of build/out-edge")
	if code, ok := parse(flags, args, std, 0); !ok {
		return code
	}
	root, b, err := bundle(true, false)
	if err != nil {
		return std.fail(err)
	}
	worker, err := workerFiles(root, b)
	if err != nil {
		return std.fail(err)
	}
	size, err := gzipped(worker)
	if err != nil {
		return std.fail(err)
	}
	fmt.Fprintf(std.out, "worker, gzip %7.1f of %5.0f kB\n", float64(size)/1000, float64(maxWorker)/1000)
	if size > maxWorker {
		return std.fail(fmt.Errorf("the worker is over the budget of %.0f kB", float64(maxWorker)/1000))
	}
	files := site.Files{}
	for name, content := range b.Files {
		files["site/"+name] = content
	}
	if files[shellFile], err = json.Marshal(b.Shell); err != nil {
		return std.fail(err)
	}
	for name, content := range worker {
		files["worker/"+name] = content
	}
	if *out == "" {
		*out = filepath.Join(root, "build", "out-edge")
	}
	if err := write(*out, files); err != nil {
		return std.fail(err)
	}
	fmt.Fprintf(std.out, "%d files in %s\n", len(files), *out)
	return 0
}

// workerFiles is everything that the platform runs, by name.
func workerFiles(root string, b *site.Bundle) (site.Files, error) {
	program, glue, err := compile.Worker(root)
	if err != nil {
		return nil, err
	}
	agreed, err := siteModule(b, program)
	if err != nil {
		return nil, err
	}
	files := site.Files{"app.wasm": program, "wasm_exec.js": glue, "site.mjs": agreed}
	for _, name := range []string{"worker.mjs", "wrangler.toml"} {
		if files[name], err = os.ReadFile(filepath.Join(root, "build", "edge", "worker", name)); err != nil {
			return nil, err
		}
	}
	return files, nil
}

// siteModule is what the worker's script and the site must agree on, as a
// module of its own.
func siteModule(b *site.Bundle, program []byte) ([]byte, error) {
	types := map[string]string{}
	for name := range b.Files {
		types[filepath.Ext(name)], _ = server.Type(name)
	}
	shell, err := json.Marshal(b.Shell)
	if err != nil {
		return nil, err
	}
	version := sha256.Sum256(program)
	text, err := json.MarshalIndent(map[string]any{
		"paths":    edge.Paths(),
		"headers":  policy.Headers,
		"files":    slices.Sorted(maps.Keys(b.Files)),
		"types":    types,
		"assets":   server.Assets,
		"forEver":  policy.ForEver,
		"askFirst": policy.AskFirst,
		"shell":    string(shell),
		"version":  hex.EncodeToString(version[:]),
		"maxForm":  plan.MaxForm,
	}, "", "  ")
	return append(append([]byte("export default "), text...), ";\n"...), err
}

// gzipped is the size of files, compressed together as one upload.
func gzipped(files site.Files) (int, error) {
	var out bytes.Buffer
	w, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		return 0, err
	}
	for _, name := range []string{"worker.mjs", "site.mjs", "wasm_exec.js", "app.wasm"} {
		if _, err := w.Write(files[name]); err != nil {
			return 0, err
		}
	}
	return out.Len(), w.Close()
}
