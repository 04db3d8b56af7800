// Package platformtest holds the contract of platform.Files as tests, and a
// storage in memory that fails on request.
package platformtest

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"testing"

	"stillair/app/platform"
)

// TestFiles runs the contract against the storages that open returns, an empty
// one on each call.
func TestFiles(t *testing.T, open func(t *testing.T) platform.Files) {
	for _, c := range []struct {
		name string
		run  func(*testing.T, platform.Files)
	}{
		{"append and read", appendAndRead},
		{"create refuses a taken name", createTaken},
		{"replace", replace},
		{"list and remove", listAndRemove},
		{"names", names},
		{"missing", missing},
		{"lock", lock},
	} {
		t.Run(c.name, func(t *testing.T) { c.run(t, open(t)) })
	}
}

// Read returns the whole file.
func Read(t testing.TB, files platform.Files, name string) []byte {
	t.Helper()
	r, err := files.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	return b
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func appendAndRead(t *testing.T, files platform.Files) {
	f, err := files.Create("a.bin")
	must(t, err)
	var want []byte
	for i := range 5 {
		part := bytes.Repeat([]byte{byte(i), 0, '\n', 0xff}, 1000*i+1)
		n, err := f.Write(part)
		must(t, err)
		if n != len(part) {
			t.Fatalf("wrote %d of %d bytes without an error", n, len(part))
		}
		must(t, f.Sync())
		want = append(want, part...)
		if got := Read(t, files, "a.bin"); !bytes.Equal(got, want) {
			t.Fatalf("after sync %d: read %d bytes, want %d", i, len(got), len(want))
		}
	}
	must(t, f.Close())
	if got := Read(t, files, "a.bin"); !bytes.Equal(got, want) {
		t.Fatalf("after close: read %d bytes, want %d", len(got), len(want))
	}
}

func createTaken(t *testing.T, files platform.Files) {
	f, err := files.Create("a")
	must(t, err)
	_, err = f.Write([]byte("kept"))
	must(t, err)
	if _, err := files.Create("a"); !errors.Is(err, fs.ErrExist) {
		t.Errorf("while open: err = %v, want fs.ErrExist", err)
	}
	must(t, f.Close())
	if _, err := files.Create("a"); !errors.Is(err, fs.ErrExist) {
		t.Errorf("after close: err = %v, want fs.ErrExist", err)
	}
	if got := Read(t, files, "a"); string(got) != "kept" {
		t.Errorf("content is now %q", got)
	}
}

func replace(t *testing.T, files platform.Files) {
	for _, text := range []string{"first and long", "second", ""} {
		must(t, files.Replace("r.json", []byte(text)))
		if got := Read(t, files, "r.json"); string(got) != text {
			t.Errorf("read %q, want %q", got, text)
		}
	}
}

func listAndRemove(t *testing.T, files platform.Files) {
	must(t, files.Replace("b", []byte("12345")))
	must(t, files.Replace("a", nil))
	infos, err := files.List()
	must(t, err)
	if len(infos) != 2 || infos[0].Name != "a" || infos[1].Name != "b" || infos[1].Size != 5 {
		t.Fatalf("list = %+v", infos)
	}
	must(t, files.Remove("a"))
	infos, err = files.List()
	must(t, err)
	if len(infos) != 1 || infos[0].Name != "b" {
		t.Fatalf("after remove: list = %+v", infos)
	}
}

func names(t *testing.T, files platform.Files) {
	for _, name := range []string{"", ".x", "..", "../x", "a/b", `a\b`, "ä", "a b", "a\x00"} {
		if _, err := files.Create(name); !errors.Is(err, platform.ErrName) {
			t.Errorf("create %q: err = %v, want ErrName", name, err)
		}
		if err := files.Replace(name, nil); !errors.Is(err, platform.ErrName) {
			t.Errorf("replace %q: err = %v, want ErrName", name, err)
		}
	}
}

func missing(t *testing.T, files platform.Files) {
	if _, err := files.Open("none"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("open: err = %v, want fs.ErrNotExist", err)
	}
	if err := files.Remove("none"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("remove: err = %v, want fs.ErrNotExist", err)
	}
	if infos, err := files.List(); err != nil || len(infos) != 0 {
		t.Errorf("list = %v, %v; want nothing", infos, err)
	}
}

func lock(t *testing.T, files platform.Files) {
	unlock, err := files.Lock("recorder")
	must(t, err)
	if _, err := files.Lock("recorder"); !errors.Is(err, platform.ErrBusy) {
		t.Errorf("second lock: err = %v, want ErrBusy", err)
	}
	other, err := files.Lock("other")
	must(t, err)
	other()
	unlock()
	unlock() // a second call must be harmless
	again, err := files.Lock("recorder")
	must(t, err)
	again()
}
