package phone

import (
	"context"
	"net"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"

	"stillair/app/phone/web"
)

// TestStrictHeaders checks the headers of every response, and that HSTS is sent
// only for a host name.
func TestStrictHeaders(t *testing.T) {
	p, err := web.NewPage()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ host, path, bound string }{
		{"192.168.1.20:8443", "/", ""}, {"localhost:8443", "/", ""}, {"garage.local:8443", "/", "max-age=2592000"}, {"garage.local:8443", "/none", "max-age=2592000"},
	} {
		r := httptest.NewRequest(http.MethodGet, "https://"+c.host+c.path, nil)
		w := httptest.NewRecorder()
		strict(p.Handler()).ServeHTTP(w, r)
		h := w.Result().Header
		for name, want := range map[string]string{"Cross-Origin-Opener-Policy": "same-origin", "Cross-Origin-Embedder-Policy": "require-corp",
			"Cross-Origin-Resource-Policy": "same-origin", "X-Frame-Options": "DENY", "Strict-Transport-Security": c.bound} {
			if got := h.Get(name); got != want {
				t.Errorf("%s%s: %s is %q, want %q", c.host, c.path, name, got, want)
			}
		}
	}
}

// TestASlowClientIsLetGo checks that the server has timeouts, so that a slow client is
// disconnected.
func TestASlowClientIsLetGo(t *testing.T) {
	s := server(http.NotFoundHandler())
	if s.WriteTimeout <= 0 || s.WriteTimeout > 10*time.Minute || s.ReadTimeout <= 0 || s.ReadTimeout > time.Minute || s.ReadHeaderTimeout <= 0 || s.IdleTimeout <= 0 {
		t.Errorf("timeouts: %v to write, %v to read, %v for the header, %v idle", s.WriteTimeout, s.ReadTimeout, s.ReadHeaderTimeout, s.IdleTimeout)
	}
}

// TestNoNameWithoutAnAnswer checks that a host name that does not resolve is not
// used.
func TestNoNameWithoutAnAnswer(t *testing.T) {
	for _, host := range []string{"", "no-such-computer-of-anybody", "localhost"} {
		if got := Name(t.Context(), host, []net.IP{net.IPv4(192, 0, 2, 7)}); got != "" {
			t.Errorf("%q is called %q", host, got)
		}
	}
	ended, cancel := context.WithCancel(t.Context())
	cancel()
	if got := Name(ended, "garage", []net.IP{net.IPv4(127, 0, 0, 1)}); got != "" {
		t.Errorf("after the end: %q", got)
	}
}
