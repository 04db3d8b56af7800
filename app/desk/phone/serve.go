package phone

import (
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"strconv"
	"syscall"
	"time"

	"stillair/app/phone/web"
)

// Reach is who may connect.
type Reach string

// The network is everybody who can reach this computer; this computer is its
// own browser alone.
const (
	TheNetwork   Reach = ""
	ThisComputer Reach = "127.0.0.1"
)

// Listen opens a port.
func Listen(port int, to Reach) (net.Listener, error) {
	l, err := net.Listen("tcp4", net.JoinHostPort(string(to), strconv.Itoa(port)))
	if errors.Is(err, syscall.EADDRINUSE) {
		return nil, fmt.Errorf("port %d is taken by another program; choose another with --port", port)
	}
	return l, err
}

// Serve hands out the page until ctx ends.
func Serve(ctx context.Context, l net.Listener, c tls.Certificate, p web.Page) error {
	s := server(strict(p.Handler()))
	s.TLSConfig = &tls.Config{Certificates: []tls.Certificate{c}, MinVersion: tls.VersionTLS12}
	stop := context.AfterFunc(ctx, func() {
		late, cancel := context.WithTimeout(context.WithoutCancel(ctx), 2*time.Second)
		defer cancel()
		s.Shutdown(late)
	})
	defer stop()
	if err := s.ServeTLS(l, "", ""); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// server is what serves, without its certificate. The whole page, about 5 MB as it
// is sent, may take five minutes: 200 kbit/s.
func server(h http.Handler) *http.Server {
	return &http.Server{
		Handler:           h,
		ReadHeaderTimeout: 10 * time.Second,
		ReadTimeout:       20 * time.Second,
		WriteTimeout:      5 * time.Minute,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    1 << 14,
		// A phone that has not yet accepted the certificate fails each
		// handshake; that is no news.
		ErrorLog: log.New(io.Discard, "", 0),
	}
}

// URL is where a phone finds the page, by an address or a name.
func URL(host string, l net.Listener) string {
	return "https://" + net.JoinHostPort(host, strconv.Itoa(l.Addr().(*net.TCPAddr).Port)) + "/"
}
