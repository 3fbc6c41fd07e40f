package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"net/http"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"time"

	"evenrow/build/edge"
	"evenrow/build/local"
	"evenrow/build/server"
)

func serveCommand(args []string, std stdio) int {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	port := flags.Int("port", 8080, "the first port to try; 0 for any that is free")
	origin := flags.String("origin", "", "the address that others know this host by, for previews of plans; by default that of each request")
	if code, ok := parse(flags, args, std, 0); !ok {
		return code
	}
	_, b, err := bundle(true)
	if err != nil {
		return std.fail(err)
	}
	listener, err := local.Listen(*port)
	if err != nil {
		return std.fail(err)
	}
	fmt.Fprintf(std.out, "Evenrow is at %s (Ctrl+C ends it)\n", local.Address(listener))

	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	h := edge.New(server.New(b.Files), b.Shell, edge.Options{
		Origin: strings.TrimSuffix(*origin, "/"),
		Fault:  func(fault any, stack []byte) { fmt.Fprintf(std.err, "fault: %v\n%s\n", fault, stack) },
	})
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
