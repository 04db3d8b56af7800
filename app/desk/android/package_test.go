package android

import (
	"os"
	"strings"
	"testing"
)

// TestPackage checks a built package: it passes the checks, and each alteration
// is found. .ci/checks/android passes its path.
func TestPackage(t *testing.T) {
	path := os.Getenv("STILLAIR_PACKAGE")
	if path == "" {
		t.Skip("STILLAIR_PACKAGE names no package")
	}
	if err := Check(t.Context(), path); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var p problems
	code := checkPlaces(&p, data)["lib/arm64-v8a/"+library]
	names, err := knownNames()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name  string
		code  func() []byte
		known []string
		says  string
	}{
		{"a name that is not kept", func() []byte { return code }, names[1:], "leaves the name " + names[0]},
		{"another machine", func() []byte { return with(code, 18, 62) }, names, "wanted is a shared library for arm64"},
		{"small pages", func() []byte { return smallPages(code) }, names, "is aligned to 4096"},
		{"code that can be written", func() []byte { return writable(code) }, names, "may be written and run"},
		{"cut off", func() []byte { return code[:100] }, names, library},
	} {
		t.Run(c.name, func(t *testing.T) {
			var p problems
			checkLibrary(&p, c.code(), c.known)
			if !strings.Contains(strings.Join(p, "\n"), c.says) {
				t.Errorf("said %q", p)
			}
		})
	}
	t.Run("a byte of the package", func(t *testing.T) {
		altered := t.TempDir() + "/altered.apk"
		if err := os.WriteFile(altered, with(data, len(data)/2, data[len(data)/2]^1), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := Check(t.Context(), altered); err == nil || !strings.Contains(err.Error(), "the signature does not hold") {
			t.Errorf("err = %v", err)
		}
	})
}

// with is data with one byte changed.
func with(data []byte, at int, b byte) []byte {
	out := append([]byte(nil), data...)
	out[at] = b
	return out
}

// writable makes every segment writable.
func writable(code []byte) []byte {
	out := append([]byte(nil), code...)
	for i := range int(out[56]) {
		if at := 64 + 56*i; out[at] == 1 {
			out[at+4] |= 2 // PF_W
		}
	}
	return out
}

// smallPages sets the alignment of every segment to 4 KiB: in a header of
// 64-bit ELF the table of segments is at 64, each entry is 56 bytes, and the
// alignment is its last number.
func smallPages(code []byte) []byte {
	out := append([]byte(nil), code...)
	for i := range int(out[56]) {
		at := 64 + 56*i
		if out[at] == 1 { // PT_LOAD
			out[at+49] = 0x10
		}
	}
	return out
}
