package report

import (
	"bytes"
	"flag"
	"os"
	"testing"

	"stillair/export/internal/invented"
)

var keep = flag.String("keep", "", "write the page of the invented ride to this file, to look at it")

func TestLook(t *testing.T) {
	var out bytes.Buffer
	if err := Write(&out, invented.Result(), Options{Invented: true}); err != nil {
		t.Fatal(err)
	}
	if *keep != "" {
		if err := os.WriteFile(*keep, out.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
