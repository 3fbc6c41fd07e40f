package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/http"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"evenrow/build/edge"
	"evenrow/build/local"
	"evenrow/build/server"
	"evenrow/build/shell"
	"evenrow/build/site"
)

func serveCommand(args []string, std stdio) int {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	port := flags.Int("port", 8080, "the first `NUMBER` to try; 0 for any that is free")
	origin := flags.String("origin", "", "the `ADDRESS` that others know this host by, for previews of plans; by default that of each request")
	from := flags.String("from", "", "a `FOLDER` that the command site or edge has made, to serve instead of building the site")
	public := flags.String("public", "", "an `ADDRESS` such as :8080 to answer everybody at, instead of this machine alone")
	if code, ok := parse(flags, args, std, 0); !ok {
		return code
	}
	files, shell, err := answered(*from)
	if err != nil {
		return std.fail(err)
	}
	listener, err := listen(*public, *port)
	if err != nil {
		return std.fail(err)
	}
	fmt.Fprintf(std.out, "Evenrow is at %s (Ctrl+C ends it)\n", local.Address(listener))

	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	h, err := host(files, shell, strings.TrimSuffix(*origin, "/"), std.err)
	if err != nil {
		return std.fail(err)
	}
	s := local.Server(h)
	context.AfterFunc(ctx, func() {
		// Answers under way may end; a page that is only kept open may not.
		ctx, cancel := context.WithTimeout(context.Background(), time.Second)
		defer cancel()
		s.Shutdown(ctx)
	})
	if err := s.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return std.fail(err)
	}
	return 0
}

// host answers for files and, where there is a shell, for plans. It tells of faults
// of ours.
func host(files site.Files, shell *shell.Shell, origin string, faults io.Writer) (http.Handler, error) {
	h := server.New(files)
	if shell == nil {
		return h, nil
	}
	version, err := ownVersion()
	return edge.New(h, shell, edge.Options{
		Origin:  origin,
		Version: version,
		Fault:   func(fault any, stack []byte) { fmt.Fprintf(faults, "fault: %v\n%s\n", fault, stack) },
		Pack:    server.Packing,
		Aside:   local.Aside,
	}), err
}

// ownVersion is a hash of this program, which is another whenever anything in
// the calculation or in what it says is changed.
func ownVersion() (string, error) {
	name, err := os.Executable()
	if err != nil {
		return "", err
	}
	f, err := os.Open(name)
	if err != nil {
		return "", err
	}
	defer f.Close()
	sum := sha256.New()
	_, err = io.Copy(sum, f)
	return hex.EncodeToString(sum.Sum(nil)), err
}

// listen opens a port for this machine alone, or an address for everybody.
func listen(public string, port int) (net.Listener, error) {
	if public == "" {
		return local.Listen(port)
	}
	return net.Listen("tcp", public)
}

// answered is the site and its plan pages: built now, or from a folder. A
// folder of a static site has none.
func answered(from string) (site.Files, *shell.Shell, error) {
	if from == "" {
		_, b, err := bundle(true, false)
		if err != nil {
			return nil, nil, err
		}
		return b.Files, b.Shell, nil
	}
	text, err := os.ReadFile(filepath.Join(from, shellFile))
	if errors.Is(err, fs.ErrNotExist) {
		if _, err := os.Stat(filepath.Join(from, "index.html")); err != nil {
			return nil, nil, fmt.Errorf("%s is no finished site: it has neither index.html, which the command site writes, nor %s, which edge writes", from, shellFile)
		}
		files, err := folder(from)
		return files, nil, err
	}
	if err != nil {
		return nil, nil, err
	}
	s := &shell.Shell{}
	if err := json.Unmarshal(text, s); err != nil {
		return nil, nil, fmt.Errorf("%s: %w", filepath.Join(from, shellFile), err)
	}
	files, err := folder(filepath.Join(from, "site"))
	return files, s, err
}

// folder reads all files of a finished site.
func folder(name string) (site.Files, error) {
	files := site.Files{}
	root := os.DirFS(name)
	return files, fs.WalkDir(root, ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && name != marker {
			files[name], err = fs.ReadFile(root, name)
		}
		return err
	})
}
