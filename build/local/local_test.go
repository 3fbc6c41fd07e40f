package local

import (
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
)

func TestATakenPortLeadsToTheNext(t *testing.T) {
	first, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	port := first.Addr().(*net.TCPAddr).Port
	second, err := Listen(port)
	if err != nil {
		t.Fatal(err)
	}
	defer second.Close()
	addr := second.Addr().(*net.TCPAddr)
	if addr.Port <= port || addr.Port >= port+tries {
		t.Errorf("port %d is taken and leads to %d", port, addr.Port)
	}
	if !addr.IP.IsLoopback() {
		t.Errorf("listens on %v, not on this machine alone", addr.IP)
	}
}

func TestPortsThatAreNone(t *testing.T) {
	for _, port := range []int{-1, 65536} {
		if _, err := Listen(port); err == nil || !strings.HasPrefix(err.Error(), "the port must be from 0 to 65535") {
			t.Errorf("port %d: %v", port, err)
		}
	}
}

func TestServes(t *testing.T) {
	l, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	s := Server(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { io.WriteString(w, "yes") }))
	go s.Serve(l)
	defer s.Close()
	r, err := http.Get(Address(l))
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	if body, err := io.ReadAll(r.Body); err != nil || string(body) != "yes" {
		t.Errorf("%q, %v", body, err)
	}
}
