package android

import (
	"bytes"
	"errors"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func TestWhatIsMissingIsNamed(t *testing.T) {
	err := require([]need{{"go", "a-package", ""}, {"no-such-tool", "", "newer than Debian's"}, {"no-such-program", "some-package", "to do this"}, {"/no/such/header.h", "some-package", "to do that"}})
	if !errors.Is(err, ErrMissing) || strings.Count(err.Error(), "some-package") != 1 ||
		!strings.Contains(err.Error(), "no-such-tool (newer than Debian's), no-such-program (to do this), /no/such/header.h (to do that). On Debian: apt-get install some-package") {
		t.Errorf("err = %v", err)
	}
	if strings.Contains(err.Error(), "a-package") {
		t.Errorf("what is there is named: %v", err)
	}
}

func TestBuildMistakes(t *testing.T) {
	if _, _, err := Build(t.Context(), Options{NDK: t.TempDir()}); !errors.Is(err, ErrNoKey) {
		t.Errorf("a release without a key: %v", err)
	}
	if _, err := ndkCompiler(t.TempDir()); err == nil || !strings.Contains(err.Error(), "--ndk") {
		t.Errorf("a folder without an NDK: %v", err)
	}
	t.Setenv(PasswordEnv, "")
	key := filepath.Join(t.TempDir(), "key.p12")
	if _, err := ownKey(key); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a key that is not there: %v", err)
	}
	if err := os.WriteFile(key, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := ownKey(key); err == nil || !strings.Contains(err.Error(), PasswordEnv) {
		t.Errorf("a key without a password: %v", err)
	}
}

// TestNDKIsFound: spaces in its path must not split the command.
func TestNDKIsFound(t *testing.T) {
	ndk := filepath.Join(t.TempDir(), "my ndk")
	clang := filepath.Join(ndk, "toolchains", "llvm", "prebuilt", "linux-x86_64", "bin", "clang")
	if err := write(clang, nil); err != nil {
		t.Fatal(err)
	}
	c, err := ndkCompiler(ndk)
	if err != nil || c.command != "'"+clang+"' "+target {
		t.Errorf("%q, %v", c.command, err)
	}
}

func TestTrialKeyIsKept(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "new")
	now := time.Date(2026, 5, 3, 10, 0, 0, 0, time.UTC)
	args, err := trialKey(folder, now)
	if err != nil {
		t.Fatal(err)
	}
	before, err := os.ReadFile(args[1])
	if err != nil {
		t.Fatal(err)
	}
	if args, err = trialKey(folder, now.AddDate(1, 0, 0)); err != nil {
		t.Fatal(err)
	}
	after, err := os.ReadFile(args[1])
	if err != nil || !bytes.Equal(before, after) {
		t.Errorf("the key changed, %v", err)
	}
}

// TestStatusIcon: Android takes its outline alone.
func TestStatusIcon(t *testing.T) {
	data, err := statusIcon()
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	_, _, _, corner := img.At(0, 0).RGBA()
	_, _, _, middle := img.At(48, 48).RGBA()
	if corner != 0 || middle != 0xffff {
		t.Errorf("corner %x, middle %x", corner, middle)
	}
}
