package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"evenrow/build/compile"
	"evenrow/build/site"
	"evenrow/build/sizes"
	"evenrow/build/tool"
)

// parse reads the flags of a command that takes none or one more argument.
// ok is false when they were wrong, or only help was asked for, and code is
// then the exit code.
func parse(flags *flag.FlagSet, args []string, std stdio, most int) (code int, ok bool) {
	flags.SetOutput(io.Discard) // which would get another help than ours
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			help(std.out, flags)
			return 0, false
		}
		fmt.Fprintf(std.err, "%v\n\n", err)
		help(std.err, flags)
		return 2, false
	}
	if flags.NArg() > most {
		fmt.Fprintf(std.err, "%s does not take %q\n", flags.Name(), flags.Arg(most))
		return 2, false
	}
	return 0, true
}

// bundle builds the site of the repository that this folder is in. answered is
// whether the host also answers with plan pages, named whether a stack trace of
// the program names functions.
func bundle(answered, named bool) (root string, b *site.Bundle, err error) {
	root, err = compile.Root()
	if err != nil {
		return "", nil, err
	}
	program, glue, err := compile.Program(root, named)
	if err != nil {
		return "", nil, err
	}
	b, err = site.Build(site.Source{
		Content: os.DirFS(filepath.Join(root, "content")),
		Site:    os.DirFS(filepath.Join(root, "site")),
		Program: program,
		Glue:    glue,
		Tool:    tool.New(),

		Answered: answered,
	})
	return root, b, err
}

func siteCommand(args []string, std stdio) int {
	flags := flag.NewFlagSet("site", flag.ContinueOnError)
	out := flags.String("out", "", "the `FOLDER` to write, instead of build/out")
	named := flags.Bool("names", false, "keep the names of functions in the program, to look for a fault, and hold it to no budget")
	if code, ok := parse(flags, args, std, 0); !ok {
		return code
	}
	root, b, err := bundle(false, *named)
	if err != nil {
		return std.fail(err)
	}
	if *out == "" {
		*out = filepath.Join(root, "build", "out")
	}
	if !*named {
		if code := report(root, b, std); code != 0 {
			return code
		}
	}
	if err := write(*out, b.Files); err != nil {
		return std.fail(err)
	}
	fmt.Fprintf(std.out, "%d files in %s\n", len(b.Files), *out)
	return 0
}

func sizesCommand(args []string, std stdio) int {
	if code, ok := parse(flag.NewFlagSet("sizes", flag.ContinueOnError), args, std, 0); !ok {
		return code
	}
	root, b, err := bundle(false, false)
	if err != nil {
		return std.fail(err)
	}
	parts, err := compile.Parts(root)
	if err != nil {
		return std.fail(err)
	}
	var weights []sizes.Part
	for _, p := range parts {
		weights = append(weights, sizes.Part(p))
	}
	fmt.Fprintln(std.out, sizes.Weights(weights, cacheOf(root)))
	return report(root, b, std)
}

// cacheOf is where compressed sizes are remembered.
func cacheOf(root string) sizes.Cache { return sizes.Cache(filepath.Join(root, "build", "bin")) }

// report prints the sizes and holds them against the budget.
func report(root string, b *site.Bundle, std stdio) int {
	cache := cacheOf(root)
	fmt.Fprintln(std.out, sizes.Table(sizes.Measure(b.Files, cache)))
	budget, err := sizes.Budget(cache.Brotli(b.Files[b.Program]), b.Script, b.Style)
	fmt.Fprintln(std.out, budget)
	if err != nil {
		return std.fail(err)
	}
	return 0
}

// marker is a file that tells a folder made by write from any other.
const marker = ".evenrow"

// write puts the files into a folder and removes whatever an earlier build
// left there. It touches no folder that holds anything else.
func write(out string, files site.Files) error {
	entries, err := os.ReadDir(out)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if len(entries) > 0 {
		if _, err := os.Stat(filepath.Join(out, marker)); err != nil {
			return fmt.Errorf("%s holds files that are no build of this site; name another folder, or empty it", out)
		}
		if err := os.RemoveAll(out); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(out, 0o777); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(out, marker), nil, 0o666); err != nil {
		return err
	}
	for name, content := range files {
		name = filepath.Join(out, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
			return err
		}
		if err := os.WriteFile(name, content, 0o666); err != nil {
			return err
		}
	}
	return nil
}
