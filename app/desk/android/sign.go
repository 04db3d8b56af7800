package android

import (
	"context"
	"crypto/rand"
	"crypto/rsa"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"errors"
	"io/fs"
	"math/big"
	"os"
	"path/filepath"
	"time"
)

// sign signs the package at from and writes it to to, with the schemes v2 and
// v3: Android takes the older one for packages of its own time only, and v4 is
// for installing while loading.
func sign(ctx context.Context, from, to string, key []string) error {
	args := append([]string{"sign", "--min-sdk-version", "26", "--v1-signing-enabled", "false", "--v2-signing-enabled", "true",
		"--v3-signing-enabled", "true", "--v4-signing-enabled", "false", "--out", to}, key...)
	_, err := step{}.run(ctx, "apksigner", append(args, from)...)
	return err
}

// PasswordEnv is the name of the environment variable with the password of the
// user's own key.
const PasswordEnv = "STILLAIR_KEY_PASSWORD"

// ownKey are apksigner's arguments for a keystore of the user's.
func ownKey(file string) ([]string, error) {
	if _, err := os.Stat(file); err != nil {
		return nil, err
	}
	if os.Getenv(PasswordEnv) == "" {
		return nil, errors.New("the key's password is missing: put it into the environment as " + PasswordEnv)
	}
	return []string{"--ks", file, "--ks-pass", "env:" + PasswordEnv}, nil
}

// trialKey are apksigner's arguments for the key of trials, which is made in
// folder when it is first needed. A phone installs a new trial over an old one
// only if both have the same key.
func trialKey(folder string, now time.Time) ([]string, error) {
	key, certificate := filepath.Join(folder, "android-trial.pk8"), filepath.Join(folder, "android-trial.pem")
	if _, err := os.Stat(certificate); errors.Is(err, fs.ErrNotExist) {
		if err := makeKey(key, certificate, now); err != nil {
			return nil, err
		}
	}
	return []string{"--key", key, "--cert", certificate}, nil
}

// makeKey makes an RSA key, whose signatures are the same each time, and a
// certificate that outlives the app, as Android asks.
func makeKey(key, certificate string, now time.Time) error {
	private, err := rsa.GenerateKey(rand.Reader, 2048)
	if err != nil {
		return err
	}
	der, err := x509.MarshalPKCS8PrivateKey(private)
	if err != nil {
		return err
	}
	name := pkix.Name{CommonName: "Stillair trial"}
	about := &x509.Certificate{SerialNumber: big.NewInt(now.Unix()), Subject: name, Issuer: name, NotBefore: now, NotAfter: now.AddDate(40, 0, 0)}
	own, err := x509.CreateCertificate(rand.Reader, about, about, &private.PublicKey, private)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(key), 0o700); err != nil {
		return err
	}
	if err := os.WriteFile(key, der, 0o600); err != nil {
		return err
	}
	return os.WriteFile(certificate, pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: own}), 0o600)
}
