package android

import (
	"archive/zip"
	"bytes"
	"strings"
	"testing"
)

// wholePackage has an entry for every name that a package needs.
func wholePackage() []entry {
	return []entry{{"AndroidManifest.xml", []byte("m")}, {"resources.arsc", []byte("res")}, {"classes.dex", []byte("dex one")},
		{"classes2.dex", []byte("dex")}, {"lib/arm64-v8a/" + library, bytes.Repeat([]byte("code"), 9999)}, {"z", nil},
		{"res/drawable-nodpi-v4/icon.png", []byte("icon")}, {"res/drawable-nodpi-v4/status.png", []byte("sign")}}
}

func packed(t *testing.T, entries []entry) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := pack(&b, entries); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestPackAligns(t *testing.T) {
	data := packed(t, wholePackage())
	r, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	for i, f := range r.File {
		want := wholePackage()[i]
		got, err := inside(f)
		if err != nil || f.Name != want.name || !bytes.Equal(got, want.data) {
			t.Errorf("%s holds %.10q, %v", f.Name, got, err)
		}
		at, err := f.DataOffset()
		to := int64(4)
		if f.Name == "lib/arm64-v8a/libphone.so" {
			to = 16384
		}
		if err != nil || at%to != 0 {
			t.Errorf("%s begins at %d, %v", f.Name, at, err)
		}
	}
	if !bytes.Equal(data, packed(t, wholePackage())) {
		t.Error("the same entries give other bytes")
	}
}

func TestPadding(t *testing.T) {
	for at := range 5 * 4 {
		for _, to := range []int{4, 16384} {
			if end := at + len(padding(at, to)); end%to != 0 || end-at < 6 || end-at >= to+6 {
				t.Errorf("at %d, to %d: %d", at, to, end)
			}
		}
	}
}

func TestPlacesThatAreWrong(t *testing.T) {
	squeezed := func() []byte {
		var b bytes.Buffer
		z := zip.NewWriter(&b)
		for _, e := range wholePackage() {
			w, err := z.Create(e.name) // compresses
			if err != nil {
				t.Fatal(err)
			}
			if _, err := w.Write(e.data); err != nil {
				t.Fatal(err)
			}
		}
		if err := z.Close(); err != nil {
			t.Fatal(err)
		}
		return b.Bytes()
	}
	for _, c := range []struct {
		name string
		data []byte
		says string // empty: nothing is wrong
	}{
		{"right", packed(t, wholePackage()), ""},
		{"no zip", []byte("PK"), "no zip"},
		{"compressed", squeezed(), "libphone.so is compressed"},
		{"moved by a byte", append([]byte{0}, packed(t, wholePackage())...), "no multiple of 16384"},
		{"without its classes", packed(t, wholePackage()[:3]), "classes2.dex is missing"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var p problems
			checkPlaces(&p, c.data)
			said := strings.Join(p, "; ")
			if c.says == "" && len(p) > 0 || !strings.Contains(said, c.says) {
				t.Errorf("said %q, want %q", said, c.says)
			}
		})
	}
}
