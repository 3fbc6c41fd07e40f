package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"net/http"
	"os"
	"os/signal"
	"syscall"
	"time"

	"evenrow/build/local"
	"evenrow/build/server"
)

func serveCommand(args []string, std stdio) int {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	port := flags.Int("port", 8080, "the first port to try; 0 for any that is free")
	if code, ok := parse(flags, args, std, 0); !ok {
		return code
	}
	_, b, err := bundle()
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
	s := local.Server(server.New(b.Files))
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
