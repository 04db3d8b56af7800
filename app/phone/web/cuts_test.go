package web

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// changed is the text of a file after a cut.
func changed(t *testing.T, c change, text string) (string, error) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "file.go")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := c(path); err != nil {
		return "", err
	}
	b, err := os.ReadFile(path)
	return string(b), err
}

func TestOneFont(t *testing.T) {
	const fonts = `package theme

//go:embed font/NotoSans-Regular.ttf
var notoSansRegular []byte

//go:embed font/NotoSans-Bold.ttf
var notoSansBold []byte

//go:embed font/NotoSans-Italic.ttf
var notoSansItalic []byte

//go:embed font/NotoSans-BoldItalic.ttf
var notoSansBoldItalic []byte

//go:embed font/DejaVuSansMono-Powerline.ttf
var dejaVuSansMono []byte
`
	got, err := changed(t, oneFont, fonts)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"var notoSansBold = notoSansRegular\n", "var notoSansItalic = notoSansRegular\n", "var notoSansBoldItalic = notoSansRegular\n",
		"var dejaVuSansMono = notoSansRegular\n", "//go:embed font/NotoSans-Regular.ttf\n"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing from\n%s", want, got)
		}
	}
	if strings.Count(got, "go:embed") != 1 {
		t.Errorf("still embedded:\n%s", got)
	}
}

func TestChanges(t *testing.T) {
	for _, c := range []struct {
		name    string
		change  change
		was, is string
	}{
		{"a text", swap("old", "new"), "package a // old, old\n", "package a // new, new\n"},
		{"a body", body("func f() error", "return nil"), "package a\n\nfunc f() error {\n\tif x {\n\t}\n\treturn y\n}\n\nfunc g() {\n}\n",
			"package a\n\nfunc f() error {\n\treturn nil\n}\n\nfunc g() {\n}\n"},
		{"nothing instead", standIn("", "func f"), "// About.\npackage a\n\nfunc f() {}\n", "package a\n"},
		{"an import", noJPEG, "import (\n\t_ \"image/jpeg\" // for users\n\t\"io\"\n)\n", "import (\n\t\"io\"\n)\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got, err := changed(t, c.change, c.was); err != nil || got != c.is {
				t.Errorf("%q, %v, want %q", got, err, c.is)
			}
		})
	}
}

// TestCutsNeedTheirPlace checks that each cut refuses a file or folder without
// the text that it removes: then the module has changed, and somebody has to
// look.
func TestCutsNeedTheirPlace(t *testing.T) {
	for _, m := range modules {
		for _, c := range m.cuts {
			path := filepath.Join(t.TempDir(), filepath.Base(c.at))
			if !strings.HasSuffix(path, ".go") {
				if err := os.Mkdir(path, 0o755); err != nil {
					t.Fatal(err)
				}
			} else if err := os.WriteFile(path, []byte("package x\n"), 0o644); err != nil {
				t.Fatal(err)
			}
			if err := c.change(path); err == nil {
				t.Errorf("%s: %s was cut where it has nothing of it", m.path, c.at)
			}
		}
	}
}

// TestSlimProgramLeavesOut checks the list of packages that the program depends on.
func TestSlimProgramLeavesOut(t *testing.T) {
	const folder = "../../.."
	modfile, err := slim(t.Context(), folder, t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	out, err := tool(t.Context(), folder, append(append([]string{"list", "-deps"}, flags(modfile)...), "./app/phone")...)
	if err != nil {
		t.Fatal(err)
	}
	taken := strings.Fields(out)
	if !slices.Contains(taken, "stillair/app/shell") {
		t.Fatalf("no list of packages: %.200q", out)
	}
	for _, p := range []string{"net/http", "crypto/tls", "crypto/x509", "image/jpeg", "golang.org/x/image/tiff", "github.com/yuin/goldmark",
		"github.com/BurntSushi/toml", "github.com/nicksnyder/go-i18n/v2/i18n", "golang.org/x/text/encoding/japanese", "os/user"} {
		if slices.Contains(taken, p) {
			t.Errorf("%s is in the program", p)
		}
	}
}
