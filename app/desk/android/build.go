package android

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"time"
)

// Kind is the kind of a package.
type Kind int

// The kinds. A trial has never been run on a phone, see the package's
// documentation.
const (
	Trial Kind = iota
	Release
)

// File is the file name of a package of that kind.
func (k Kind) File() string {
	if k == Release {
		return "stillair.apk"
	}
	return "stillair-trial.apk"
}

// Options is what a package is built from.
type Options struct {
	Source string // folder of the project's source
	NDK    string // folder of an Android NDK; empty: a trial package
	Key    string // keystore with a key of the user's own; a release needs one
	Into   string // folder for the package
	Cache  string // folder that outlives this call, for headers
	Keep   string // folder in which the key of trials is kept
	Now    time.Time
}

// ErrNoKey is returned where a release has no key of its own.
var ErrNoKey = errors.New("a release has to be signed with a key of your own, since a phone takes updates of the same key only; " +
	"make one with\n  keytool -genkeypair -keyalg RSA -keysize 3072 -validity 20000 -alias stillair -keystore stillair.p12\nand give it with --key")

// Build builds, packs, signs and checks a package and returns its path.
func Build(ctx context.Context, o Options) (path string, kind Kind, err error) {
	if o.NDK != "" {
		kind = Release
	}
	if kind == Release && o.Key == "" {
		return "", kind, ErrNoKey
	}
	needs := toPack
	if kind == Trial {
		needs = append(needs[:len(needs):len(needs)], toCompile...)
	}
	if err := require(needs); err != nil {
		return "", kind, err
	}
	work, err := os.MkdirTemp("", "stillair-android-*")
	if err != nil {
		return "", kind, err
	}
	defer os.RemoveAll(work)
	entries, err := o.entries(ctx, kind, work)
	if err != nil {
		return "", kind, err
	}
	path = filepath.Join(o.Into, kind.File())
	if err := o.finish(ctx, entries, work, path); err != nil {
		return "", kind, err
	}
	return path, kind, Check(ctx, path)
}

// entries are the files of the package.
func (o Options) entries(ctx context.Context, kind Kind, work string) ([]entry, error) {
	c, err := o.compiler(ctx, kind)
	if err != nil {
		return nil, err
	}
	if err := c.sizes(ctx, work); err != nil {
		return nil, err
	}
	program := filepath.Join(work, library)
	if err := c.program(ctx, o.Source, program, kind); err != nil {
		return nil, err
	}
	icon, err := os.ReadFile(filepath.Join(o.Source, "app", "phone", "Icon.png"))
	if err != nil {
		return nil, err
	}
	all, err := resources(ctx, icon, kind, filepath.Join(work, "resources"))
	if err != nil {
		return nil, err
	}
	dex, err := classes(ctx, filepath.Join(work, "classes"))
	if err != nil {
		return nil, err
	}
	code, err := os.ReadFile(program)
	if err != nil {
		return nil, err
	}
	licence, err := read("toolkit-license.txt")
	if err != nil {
		return nil, err
	}
	return append(append(all, dex...), entry{"lib/arm64-v8a/" + library, code}, entry{"assets/toolkit-license.txt", licence}), nil
}

func (o Options) compiler(ctx context.Context, kind Kind) (compiler, error) {
	if kind == Release {
		return ndkCompiler(o.NDK)
	}
	folder, err := lay(ctx, o.Cache)
	if err != nil {
		return compiler{}, err
	}
	return trialCompiler(ctx, folder)
}

// finish packs and signs.
func (o Options) finish(ctx context.Context, entries []entry, work, path string) error {
	var b bytes.Buffer
	if err := pack(&b, entries); err != nil {
		return err
	}
	plain := filepath.Join(work, "unsigned.zip")
	if err := os.WriteFile(plain, b.Bytes(), 0o600); err != nil {
		return err
	}
	var key []string
	var err error
	if o.Key != "" {
		key, err = ownKey(o.Key)
	} else {
		key, err = trialKey(o.Keep, o.Now)
	}
	if err != nil {
		return err
	}
	if err := os.MkdirAll(o.Into, 0o755); err != nil {
		return err
	}
	return sign(ctx, plain, path, key)
}
