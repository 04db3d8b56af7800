package web

// Part of what the libraries bring along this app never shows: fonts for
// slanted and for typewriter text, a reader of marked-up text, tables of the
// world's older encodings, which the toolkit's reader of SVG could meet, and what the plots of a report could
// be set in besides one font. Thorough compiles against copies of the modules
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
	{"gonum.org/v1/plot", []cut{{"font/liberation/liberation.go", onePlotFont}, {"text/latex.go", noLaTeX}}},
}

// oneFont has the styles that the app does not use drawn with the upright
// font.
func oneFont(text string) (string, error) {
	for _, font := range []string{"NotoSans-Italic.ttf", "NotoSans-BoldItalic.ttf", "DejaVuSansMono-Powerline.ttf"} {
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

// onePlotFont has every style of a plot measured with the app's own upright
// font. A report's plots carry no font: the page's takes its place.
func onePlotFont(text string) (string, error) {
	const fonts, app = `"codeberg.org/go-fonts/liberation/`, `"fyne.io/fyne/v2/theme"`
	var out []string
	styles := 0
	for line := range strings.Lines(text) {
		if strings.Contains(line, fonts) {
			if styles > 0 {
				continue
			}
			line = "\t" + app + "\n"
		}
		if at := strings.Index(line, "liberation"); at >= 0 && strings.HasSuffix(line, ".TTF)\n") {
			line = line[:at] + "theme.DefaultTextFont().Content())\n"
		}
		if strings.Contains(line, app) || strings.Contains(line, "theme.Default") {
			styles++
		}
		out = append(out, line)
	}
	if styles != 1+12 { // imported once, and the twelve styles
		return "", fmt.Errorf("the twelve fonts are not where they were")
	}
	return strings.Join(out, ""), nil
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

// noLaTeX takes out the typesetting of formulas, of which no plot has any.
func noLaTeX(text string) (string, error) {
	if !strings.Contains(text, "type Latex struct") {
		return "", fmt.Errorf("the type Latex is not where it was")
	}
	return "package text\n", nil
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
