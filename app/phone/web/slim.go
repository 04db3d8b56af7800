package web

// Part of what the libraries bring along this app never shows: fonts for
// slanted and for typewriter text, a reader of marked-up text, and tables of the
// world's older encodings, which the toolkit's reader of SVG could meet. Thorough compiles against copies of the modules
// from which that is taken out.

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// module is one whose files are changed.
type module struct {
	path string
	cuts []cut
}

// cut is a change of one file of a module.
type cut struct {
	file   string
	change func(text string) (string, error)
}

var modules = []module{
	{"fyne.io/fyne/v2", []cut{{"theme/bundled-fonts.go", oneFont},
		{"widget/markdown.go", noMarkdown}, {"widget/markdown_image_wasm.go", noMarkdownImages}}},
	{"golang.org/x/net", []cut{{"html/charset/charset.go", onlyUTF8}}},
}

// oneFont leaves of the toolkit's own fonts the upright one, which stands in
// where the app's lacks a letter of a name that a rider typed.
func oneFont(text string) (string, error) {
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
}

// onlyUTF8 stands in for the package's readers of all the world's encodings:
// what the app draws is its own, and in UTF-8.
func onlyUTF8(string) (string, error) {
	return `// Package charset reads UTF-8 and nothing else.
package charset

import (
	"errors"
	"io"
	"strings"
)

// NewReaderLabel returns input where the label is that of UTF-8.
func NewReaderLabel(label string, input io.Reader) (io.Reader, error) {
	if !strings.EqualFold(strings.TrimSpace(label), "utf-8") {
		return nil, errors.New("not UTF-8")
	}
	return input, nil
}
`, nil
}

// noMarkdown has text that is marked up shown as it is: the app has none.
func noMarkdown(text string) (string, error) {
	if !strings.Contains(text, "func parseMarkdown(content string) []RichTextSegment {") {
		return "", fmt.Errorf("the function parseMarkdown is not where it was")
	}
	return `package widget

// NewRichTextFromMarkdown shows the text as it is.
func NewRichTextFromMarkdown(content string) *RichText { return NewRichTextWithText(content) }

// ParseMarkdown shows the text as it is.
func (t *RichText) ParseMarkdown(content string) {
	t.Segments = NewRichTextWithText(content).Segments
	t.Refresh()
}

// AppendMarkdown appends the text as it is.
func (t *RichText) AppendMarkdown(content string) {
	t.Segments = append(t.Segments, NewRichTextWithText(content).Segments...)
	t.Refresh()
}
`, nil
}

// noMarkdownImages goes with noMarkdown.
func noMarkdownImages(text string) (string, error) {
	if !strings.Contains(text, "func parseMarkdownImage(") {
		return "", fmt.Errorf("the function parseMarkdownImage is not where it was")
	}
	return "package widget\n", nil
}

// slim copies the modules into work, makes the cuts and returns the path of a
// go.mod that names the copies.
func slim(ctx context.Context, folder, work string) (string, error) {
	modfile := filepath.Join(work, "slim.mod")
	for from, to := range map[string]string{"go.mod": modfile, "go.sum": filepath.Join(work, "slim.sum")} {
		text, err := os.ReadFile(filepath.Join(folder, from))
		if err != nil {
			return "", err
		}
		if err := os.WriteFile(to, text, 0o644); err != nil {
			return "", err
		}
	}
	for i, m := range modules {
		from, err := tool(ctx, folder, "list", "-m", "-f", "{{.Dir}}", m.path)
		if err != nil {
			return "", err
		}
		to := filepath.Join(work, fmt.Sprint("module", i))
		if err := copyModule(to, strings.TrimSpace(from)); err != nil {
			return "", err
		}
		for _, c := range m.cuts {
			if err := c.make(to); err != nil {
				return "", fmt.Errorf("%s: %w; the version of %s has changed", c.file, err, m.path)
			}
		}
		if _, err := tool(ctx, folder, "mod", "edit", "-replace", m.path+"="+to, modfile); err != nil {
			return "", err
		}
	}
	return modfile, nil
}

func (c cut) make(folder string) error {
	path := filepath.Join(folder, filepath.FromSlash(c.file))
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	changed, err := c.change(string(text))
	if err != nil {
		return err
	}
	return os.WriteFile(path, []byte(changed), 0o644)
}

// copyModule copies what is compiled of a module, writable.
func copyModule(to, from string) error {
	return filepath.WalkDir(from, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		at := filepath.Join(to, rel)
		switch {
		case d.IsDir() && d.Name() == "testdata":
			return filepath.SkipDir
		case d.IsDir():
			return os.MkdirAll(at, 0o755)
		case strings.HasSuffix(path, "_test.go"):
			return nil
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		return os.WriteFile(at, data, 0o644)
	})
}
