package web

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// modules are those of which something is left out.
var modules = []module{
	{"fyne.io/fyne/v2", []cut{
		{"theme/bundled-fonts.go", oneFont},
		{"widget/markdown.go", standIn("markdown.go", "func parseMarkdown(content string) []RichTextSegment {")},
		{"widget/markdown_image_wasm.go", standIn("", "func parseMarkdownImage(")},
		{"resource.go", all(swap("\t\"net/http\"\n", "\t\"errors\"\n"), body("func LoadResourceFromURLString(urlStr string) (Resource, error)", noNetwork))},
		{"internal/repository/http.go", standIn("http.go", "func NewHTTPRepository()")},
		{"app/app_wasm.go", all(swap("\t\"net/http\"\n", ""), swap("http.DetectContentType(icon)", `"image/png"`))},
		{"lang", folder("lang.go", "func SystemLocale()")},
		{"internal/metadata/load.go", standIn("load.go", "func Load(")},
		{"internal/metadata/icon.go", standIn("scale.go", "func ScaleIcon(")},
		{"internal/metadata/save.go", standIn("", "func Save(")},
		{"internal/painter/image.go", noJPEG},
		{"internal/driver/glfw/driver.go", noJPEG},
		{"canvas/image.go", noJPEG},
	}},
	{"github.com/fyne-io/glfw-js", []cut{
		{"browser_wasm.go", all(swap("\t\"net/http\"\n", ""), body("func Open(name string) (io.ReadCloser, error)", noNetwork))},
	}},
	{"github.com/go-text/render", []cut{
		{"bitmap.go", standIn("bitmap.go", "func (r *Renderer) drawBitmap(")},
		{"svg.go", standIn("svg.go", "func (r *Renderer) drawSVG(")},
	}},
	{"github.com/go-text/typesetting", []cut{
		{"fontscan", folder("fontscan.go", "func (fm *FontMap) UseSystemFonts(")},
		{"font/glyphs.go", all(
			swap("\t\"image/jpeg\"\n", ""), swap("jpeg.DecodeConfig(bytes.NewReader(b.Data))", noReader),
			swap("\t\"golang.org/x/image/tiff\"\n", ""), swap("tiff.DecodeConfig(bytes.NewReader(b.Data))", noReader))},
	}},
	{"golang.org/x/net", []cut{{"html/charset/charset.go", standIn("charset.go", "func NewReaderLabel(")}}},
}

const (
	noNetwork = `return nil, errors.New("nothing is loaded from the network")`
	noReader  = `image.Config{}, fmt.Errorf("a letter that is a picture")`
)

// The stand-ins are not of this package: their names keep the compiler away.
//
//go:embed standin
var standIns embed.FS

// change turns what is at a path into what is to be compiled instead.
type change func(path string) error

// edit is a change of a file's text.
func edit(f func(text string) (string, error)) change {
	return func(path string) error {
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		changed, err := f(string(text))
		if err != nil {
			return err
		}
		return os.WriteFile(path, []byte(changed), 0o644)
	}
}

func all(changes ...change) change {
	return func(path string) error {
		for _, c := range changes {
			if err := c(path); err != nil {
				return err
			}
		}
		return nil
	}
}

// swap puts a text in the place of another, wherever that stands.
func swap(was, is string) change {
	return edit(func(text string) (string, error) {
		if !strings.Contains(text, was) {
			return "", fmt.Errorf("%q is not where it was", was)
		}
		return strings.ReplaceAll(text, was, is), nil
	})
}

// body gives a function another one.
func body(head, is string) change {
	return edit(func(text string) (string, error) {
		before, rest, found := strings.Cut(text, "\n"+head+" {\n")
		_, after, ends := strings.Cut(rest, "\n}\n")
		if !found || !ends {
			return "", fmt.Errorf("%q is not where it was", head)
		}
		return before + "\n" + head + " {\n\t" + is + "\n}\n" + after, nil
	})
}

// standIn puts a file of ours in the place of one that has a certain text;
// without a name it is one that has nothing.
func standIn(name, has string) change {
	return edit(func(text string) (string, error) {
		if !strings.Contains(text, has) {
			return "", fmt.Errorf("%q is not where it was", has)
		}
		if name == "" {
			return packageLine(text)
		}
		is, err := standIns.ReadFile("standin/" + name + ".txt")
		return string(is), err
	})
}

// packageLine is the line of a file that names its package.
func packageLine(text string) (string, error) {
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "package ") {
			return line, nil
		}
	}
	return "", errors.New("no package is named")
}

// folder puts a file of ours in the place of a package one of whose files has
// a certain text.
func folder(name, has string) change {
	return func(path string) error {
		files, err := filepath.Glob(filepath.Join(path, "*.go"))
		if err != nil {
			return err
		}
		found := false
		for _, f := range files {
			text, err := os.ReadFile(f)
			if err == nil {
				found = found || strings.Contains(string(text), has)
				err = os.Remove(f)
			}
			if err != nil {
				return err
			}
		}
		if !found {
			return fmt.Errorf("%q is not where it was", has)
		}
		is, err := fs.ReadFile(standIns, "standin/"+name+".txt")
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(path, name), is, 0o644)
	}
}

// noJPEG leaves out a reader of photographs, of which the app has none.
var noJPEG = edit(func(text string) (string, error) {
	before, rest, found := strings.Cut(text, "\t_ \"image/jpeg\"")
	_, after, _ := strings.Cut(rest, "\n")
	if !found {
		return "", errors.New("the reader of JPEG is not where it was")
	}
	return before + after, nil
})

// oneFont leaves of the toolkit's own fonts the upright one, which stands in
// where the app's lacks a letter of a name that a rider typed.
var oneFont = edit(func(text string) (string, error) {
	for _, font := range []string{"NotoSans-Bold.ttf", "NotoSans-Italic.ttf", "NotoSans-BoldItalic.ttf", "DejaVuSansMono-Powerline.ttf"} {
		embed := "//go:embed font/" + font
		at := strings.Index(text, embed)
		if at < 0 {
			return "", fmt.Errorf("%s is not where it was", font)
		}
		after := text[at+len(embed)+1:] // the variable it goes into
		variable, rest, ok := strings.Cut(after, " []byte\n")
		if !ok {
			return "", fmt.Errorf("%s is not taken as bytes", font)
		}
		text = text[:at] + variable + " = notoSansRegular\n" + rest
	}
	return text, nil
})
