// Package local serves a handler to this machine alone.
package local

import (
	"errors"
	"net"
	"net/http"
	"strconv"
	"syscall"
	"time"
)

// tries is how many ports Listen tries, the wanted one included.
const tries = 20

// Listen opens the port on 127.0.0.1, or the next free one above it when it is
// taken. Port 0 is any free port.
func Listen(port int) (net.Listener, error) {
	if port < 0 || port > 65535 {
		return nil, errors.New("the port must be from 0 to 65535, and is " + strconv.Itoa(port))
	}
	for p := port; ; p++ {
		l, err := net.Listen("tcp4", net.JoinHostPort("127.0.0.1", strconv.Itoa(p)))
		switch {
		case err == nil:
			return l, nil
		case !errors.Is(err, syscall.EADDRINUSE):
			return nil, errors.New("port " + strconv.Itoa(p) + " cannot be opened: " + err.Error())
		case p-port+1 == tries || p == 65535:
			return nil, errors.New("the ports from " + strconv.Itoa(port) + " to " + strconv.Itoa(p) + " are all taken")
		}
	}
}

// Address is how a browser on this machine reaches the listener.
func Address(l net.Listener) string { return "http://" + l.Addr().String() + "/" }

// Server is a server for the handler that gives up on a client that is too slow.
func Server(h http.Handler) *http.Server {
	return &http.Server{
		Handler:           h,
		ReadHeaderTimeout: 10 * time.Second,
		ReadTimeout:       30 * time.Second,
		WriteTimeout:      60 * time.Second,
		MaxHeaderBytes:    64 << 10, // a plan in an address is at most 24 KiB
	}
}
