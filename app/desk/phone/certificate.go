package phone

import (
	"bytes"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/sha256"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"errors"
	"fmt"
	"io/fs"
	"math/big"
	"net"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// How long a certificate is good for, and how much of that must be left for it
// to be used again. Phones refuse those of more than 398 days.
const (
	lifetime = 365 * 24 * time.Hour
	leftOver = 14 * 24 * time.Hour
)

// Certificate returns the certificate kept in folder if it still holds at now
// for every one of hosts, and makes and keeps a new one otherwise. The same
// certificate each time spares the rider the browser's warning.
func Certificate(folder string, hosts []net.IP, name string, now time.Time) (tls.Certificate, error) {
	path := filepath.Join(folder, "phone.pem")
	text, err := os.ReadFile(path)
	if err == nil {
		if c, err := tls.X509KeyPair(text, text); err == nil && holds(c.Leaf, hosts, name, now) {
			return c, nil
		}
	} else if !errors.Is(err, fs.ErrNotExist) {
		return tls.Certificate{}, err
	}
	if text, err = issue(hosts, name, now); err != nil {
		return tls.Certificate{}, err
	}
	if err := keep(path, text); err != nil {
		return tls.Certificate{}, err
	}
	return tls.X509KeyPair(text, text)
}

// keep writes the file that holds the key, for its owner's eyes alone.
func keep(path string, text []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600) // follows no link
	if err != nil {
		return err
	}
	_, err = f.Write(text)
	return errors.Join(err, f.Close())
}

func holds(c *x509.Certificate, hosts []net.IP, name string, now time.Time) bool {
	if now.Before(c.NotBefore) || now.Add(leftOver).After(c.NotAfter) {
		return false
	}
	if name != "" && c.VerifyHostname(name) != nil {
		return false
	}
	for _, h := range hosts {
		if c.VerifyHostname(h.String()) != nil {
			return false
		}
	}
	return true
}

// issue makes a certificate that signs itself (RFC 5280), and its key, as PEM.
func issue(hosts []net.IP, name string, now time.Time) ([]byte, error) {
	names := []string{"localhost"}
	if name != "" {
		names = append(names, name)
	}
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		return nil, err
	}
	serial, err := rand.Int(rand.Reader, new(big.Int).Lsh(big.NewInt(1), 127))
	if err != nil {
		return nil, err
	}
	c := &x509.Certificate{
		SerialNumber: serial,
		Subject:      pkix.Name{CommonName: "Stillair on this computer"},
		NotBefore:    now.Add(-time.Hour), // a phone's clock may be behind
		NotAfter:     now.Add(lifetime),
		KeyUsage:     x509.KeyUsageDigitalSignature,
		ExtKeyUsage:  []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth},
		IPAddresses:  hosts, DNSNames: names,
		BasicConstraintsValid: true,
	}
	der, err := x509.CreateCertificate(rand.Reader, c, c, &key.PublicKey, key)
	if err != nil {
		return nil, err
	}
	secret, err := x509.MarshalPKCS8PrivateKey(key)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	for _, b := range []pem.Block{{Type: "CERTIFICATE", Bytes: der}, {Type: "PRIVATE KEY", Bytes: secret}} {
		if err := pem.Encode(&out, &b); err != nil {
			return nil, err
		}
	}
	return out.Bytes(), nil
}

// Fingerprint is the SHA-256 of a certificate as browsers show it.
func Fingerprint(c tls.Certificate) string {
	sum := sha256.Sum256(c.Certificate[0])
	parts := make([]string, len(sum))
	for i, b := range sum {
		parts[i] = fmt.Sprintf("%02X", b)
	}
	return strings.Join(parts, ":")
}
