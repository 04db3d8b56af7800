package phone

import (
	"context"
	"crypto/tls"
	"crypto/x509"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rsc.io/qr"

	"stillair/app/phone/web"
)

var (
	home = net.IPv4(192, 168, 1, 20)
	now  = time.Date(2026, 5, 3, 10, 0, 0, 0, time.UTC)
)

// TestServedPageReachesAClient serves a page and fetches it with a client that
// trusts only this certificate.
func TestServedPageReachesAClient(t *testing.T) {
	cert, err := Certificate(t.TempDir(), []net.IP{net.IPv4(127, 0, 0, 1)}, "", time.Now())
	if err != nil {
		t.Fatal(err)
	}
	p, err := web.NewPage()
	if err != nil {
		t.Fatal(err)
	}
	l, err := net.Listen("tcp4", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	done := make(chan error, 1)
	go func() { done <- Serve(ctx, l, cert, p) }()
	trusted := x509.NewCertPool()
	trusted.AddCert(cert.Leaf)
	client := &http.Client{Transport: &http.Transport{TLSClientConfig: &tls.Config{RootCAs: trusted}}}
	answer, err := client.Get(URL("127.0.0.1", l))
	if err != nil {
		t.Fatal(err)
	}
	body, err := io.ReadAll(answer.Body)
	answer.Body.Close()
	if err != nil || !strings.Contains(string(body), "<title>Stillair</title>") {
		t.Errorf("got %q, %v", body, err)
	}
	if _, err := http.Get(URL("127.0.0.1", l)); err == nil {
		t.Error("a client that does not know the certificate took it")
	}
	client.CloseIdleConnections()
	cancel()
	if err := <-done; err != nil {
		t.Error(err)
	}
}

func TestCertificateIsKeptWhileItHolds(t *testing.T) {
	for _, c := range []struct {
		name  string
		hosts []net.IP
		later time.Duration
		same  bool
	}{
		{"the next day", []net.IP{home}, 24 * time.Hour, true},
		{"another address", []net.IP{home, net.IPv4(10, 0, 0, 2)}, 0, false},
		{"about to end", []net.IP{home}, 360 * 24 * time.Hour, false},
		{"ended", []net.IP{home}, 400 * 24 * time.Hour, false},
		{"clock set back", []net.IP{home}, -48 * time.Hour, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			folder := filepath.Join(t.TempDir(), "made")
			first, err := Certificate(folder, []net.IP{home}, "", now)
			if err != nil {
				t.Fatal(err)
			}
			second, err := Certificate(folder, c.hosts, "", now.Add(c.later))
			if err != nil {
				t.Fatal(err)
			}
			if same := Fingerprint(first) == Fingerprint(second); same != c.same {
				t.Errorf("same certificate: %v, want %v", same, c.same)
			}
			for _, h := range c.hosts {
				if err := second.Leaf.VerifyHostname(h.String()); err != nil {
					t.Error(err)
				}
			}
		})
	}
}

func TestCertificateFile(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "phone.pem")
	if err := os.WriteFile(path, []byte("damaged"), 0o644); err != nil {
		t.Fatal(err)
	}
	cert, err := Certificate(folder, []net.IP{home}, "", now)
	if err != nil {
		t.Fatal(err)
	}
	st, err := os.Stat(path)
	if err != nil || st.Mode().Perm() != 0o600 {
		t.Errorf("the key's file has mode %v, %v", st.Mode(), err)
	}
	if days := cert.Leaf.NotAfter.Sub(cert.Leaf.NotBefore).Hours() / 24; days > 398 {
		t.Errorf("good for %.0f days; phones refuse more than 398", days)
	}
	if f := Fingerprint(cert); len(f) != 32*3-1 {
		t.Errorf("fingerprint %q", f)
	}
}

func TestLocalAddresses(t *testing.T) {
	addr := func(s string) net.Addr {
		ip, n, err := net.ParseCIDR(s)
		if err != nil {
			t.Fatal(err)
		}
		return &net.IPNet{IP: ip, Mask: n.Mask}
	}
	all := []net.Addr{addr("127.0.0.1/8"), addr("169.254.3.4/16"), addr("172.17.0.1/16"), addr("192.168.1.20/24"),
		addr("203.0.113.5/24"), addr("fe80::1/64"), addr("10.1.2.3/8")}
	var got []string
	for _, ip := range local(all, home) {
		got = append(got, ip.String())
	}
	if want := "192.168.1.20 10.1.2.3 172.17.0.1 169.254.3.4"; strings.Join(got, " ") != want {
		t.Errorf("addresses %v, want %s", got, want)
	}
}

// TestCodeShowsEveryModule reads the drawing back.
func TestCodeShowsEveryModule(t *testing.T) {
	const text = "https://192.168.1.20:8443/"
	want, err := qr.Encode(text, qr.M)
	if err != nil {
		t.Fatal(err)
	}
	drawn, err := Code(text, false)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimRight(drawn, "\n"), "\n")
	for y := -quiet; y < want.Size+quiet; y++ {
		row := []rune(lines[(y+quiet)/2])
		for x := -quiet; x < want.Size+quiet; x++ {
			lit := strings.ContainsRune("█▀", row[x+quiet])
			if (y+quiet)%2 == 1 {
				lit = strings.ContainsRune("█▄", row[x+quiet])
			}
			if lit == want.Black(x, y) {
				t.Fatalf("module %d, %d is drawn wrong", x, y)
			}
		}
	}
	coloured, err := Code(text, true)
	if err != nil || strings.Count(coloured, "\x1b[0m") != len(lines) {
		t.Errorf("colours are not put back on every line: %v", err)
	}
}

func TestPortInUse(t *testing.T) {
	l, err := Listen(0, TheNetwork)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if _, err := Listen(l.Addr().(*net.TCPAddr).Port, TheNetwork); err == nil || !strings.Contains(err.Error(), "--port") {
		t.Errorf("err = %v", err)
	}
}
