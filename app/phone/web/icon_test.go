package web

import (
	"bytes"
	"flag"
	"os"
	"testing"
)

var update = flag.Bool("update", false, "write the icon of the phone packages again")

// TestPackagesHaveTheSameIcon: the packaging tool reads the icon from a file.
func TestPackagesHaveTheSameIcon(t *testing.T) {
	const path = "../Icon.png"
	want, err := iconPNG(512)
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile(path, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(path)
	if err != nil || !bytes.Equal(got, want) {
		t.Errorf("%s is not the page's icon (%v); run this test with -update", path, err)
	}
}
