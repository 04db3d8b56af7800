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

// modules are the ones from which something is left out.
var modules = []module{
	{"fyne.io/fyne/v2", []cut{
		{"theme/bundled-fonts.go", oneFont},
		{"widget/markdown.go", standIn("markdown.go", "func parseMarkdown(content string) []RichTextSegment {")},
		{"widget/markdown_image_wasm.go", standIn("", "func parseMarkdownImage(")},
		{"resource.go", all(swap("\t\"net/http\"\n", "\t\"errors\"\n"), body("func LoadResourceFromURLString(urlStr string) (Resource, error)", noNetwork))},
		{"internal/repository/http.go", standIn("http.go", "func NewHTTPRepository()")},
		{"app/app_wasm.go", all(swap("\t\"net/http\"\n", ""), swap("http.DetectContentType(icon)", `"image/png"`), ownDatabase)},
		{"app/app.go", all(swap("= makeCache(newApp)", "= &cache{a: newApp}"), noDocuments)},
		{"internal/repository/indexdb_wasm.go", standIn("", "func NewIndexDBRepository(")},
		{"internal/repository/indexdb_file_wasm.go", standIn("", "idb")},
		{"lang", folder("lang.go", "func SystemLocale()")},
		{"internal/metadata/load.go", standIn("load.go", "func Load(")},
		{"internal/metadata/icon.go", standIn("scale.go", "func ScaleIcon(")},
		{"internal/metadata/save.go", standIn("", "func Save(")},
		{"internal/painter/font.go", all(lateFonts, spaceOnce)},
		{"internal/painter/gl/painter.go", fewerShaderChecks},
		{"storage/repository/parse.go", all(swap("\t\"regexp\"\n", ""), swap("!rxHostName.MatchString(host)", `host == ""`),
			swap("var rxHostName = regexp.MustCompile(\"^\" + domainLabelPattern + `(?:\\.` + domainLabelPattern + \")*$\")\n", ""))},
		{"internal/driver/glfw/device_wasm.go", all(swap("\t\"regexp\"\n", ""), swap("= regexp.MustCompile(\"Android|iPhone|iPad|iPod\").\n\t\tMatchString(navigator.Get(\"userAgent\").String())", byAgent))},
		{"internal/painter/image.go", noJPEG},
		{"internal/driver/glfw/driver.go", noJPEG},
		{"canvas/image.go", all(noJPEG, decodedOnce)},
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
		{"shaping/input.go", plainLines},
		{"font/glyphs.go", all(
			swap("\t\"image/jpeg\"\n", ""), swap("jpeg.DecodeConfig(bytes.NewReader(b.Data))", noReader),
			swap("\t\"golang.org/x/image/tiff\"\n", ""), swap("tiff.DecodeConfig(bytes.NewReader(b.Data))", noReader))},
	}},
	{"golang.org/x/net", []cut{{"html/charset/charset.go", standIn("charset.go", "func NewReaderLabel(")}}},
}

// ownDatabase removes the toolkit's browser database, which it opens at each
// start and which this app does not use.
var ownDatabase = all(body("func (a *fyneApp) registerRepositories()", ""),
	swap("\tintRepo \"fyne.io/fyne/v2/internal/repository\"\n", ""), swap("\t\"fyne.io/fyne/v2/storage/repository\"\n", ""))

// noDocuments leaves out the folder of documents that the toolkit tries to make at each
// start, which fails with a message in a browser.
var noDocuments = all(body("func makeStoreDocs(id string, s *store) *internal.Docs", "return &internal.Docs{}"),
	swap("\t\"fyne.io/fyne/v2/storage\"\n", ""))

// decodedOnce reads each symbol once, and not for each picture of it, when that gets its
// size, when it is shown and whenever it is drawn again.
var decodedOnce = all(
	swap("\t\ti.icon, err = svg.NewDecoder(source)\n", "\t\ti.icon, err = decoded(source)\n"),
	swap("func (i *Image) imageDetailsFromReader(", `// decoders are the drawings by their text. Only the drawing goroutine uses them.
var decoders = map[string]*svg.Decoder{}

func decoded(source io.Reader) (*svg.Decoder, error) {
	text, err := io.ReadAll(source)
	if err != nil {
		return nil, err
	}
	if d, ok := decoders[string(text)]; ok {
		return d, nil
	}
	if len(decoders) >= 128 { // of themes that are gone
		clear(decoders)
	}
	d, err := svg.NewDecoder(bytes.NewReader(text))
	if err == nil {
		decoders[string(text)] = d
	}
	return d, err
}

func (i *Image) imageDetailsFromReader(`))

// lateFonts reads the toolkit's own fonts only when a letter is needed that the
// app's font lacks: reading them took a tenth of the time to start.
var lateFonts = all(
	swap(`	if theme == fallback {
		faces = &dynamicFontMap{family: family, faces: []*font.Face{f1}}
	} else {
		f2 := loadMeasureFont(fallback)
		faces = &dynamicFontMap{family: family, faces: []*font.Face{f1, f2}}
	}
`, `	faces = &dynamicFontMap{family: family, faces: []*font.Face{f1}, unread: append([]fyne.Resource{fallback}, additional...)}
`),
	swap(`	for _, added := range additional {
		faces.addFace(loadMeasureFont(added))
	}

`, ""),
	swap("type dynamicFontMap struct {\n", "type dynamicFontMap struct {\n\tunread []fyne.Resource\n"),
	swap(`	toAdd := lookupRuneFont(r, d.family, font.Aspect{})
`, `	for len(d.unread) > 0 {
		next := loadMeasureFont(d.unread[0])
		d.unread = d.unread[1:]
		d.addFace(next)
		if _, ok := next.NominalGlyph(r); ok {
			return next
		}
	}

	toAdd := lookupRuneFont(r, d.family, font.Aspect{})
`))

// fewerShaderChecks makes the toolkit check each of its shader programs once,
// after linking, and not each shader: every check waits for the graphics
// processor.
var fewerShaderChecks = all(
	body("func (p *painter) compileShader(source string, shaderType uint32) (Shader, error)", `shader := p.ctx.CreateShader(shaderType)
	p.ctx.ShaderSource(shader, source)
	p.ctx.CompileShader(shader)
	return shader, nil`),
	swap("\tinfo := p.ctx.GetProgramInfoLog(prog)\n", ""),
	swap("fmt.Errorf(\"failed to link OpenGL program:\\n%s\", info)", "fmt.Errorf(\"failed to link OpenGL program:\\n%s\", p.ctx.GetProgramInfoLog(prog))"),
	swap(`	// The info is probably a null terminated string.
	// An empty info has been seen as "\x00" or "\x00\x00".
	if len(info) > 0 && info != "\x00" && info != "\x00\x00" {
		fmt.Printf("OpenGL program linking output:\n%s\n", info)
	}

	if glErr := p.ctx.GetError(); glErr != 0 {
		return noProgram, fmt.Errorf("failed to link OpenGL program; error code: %x", glErr)
	}

`, ""))

const (
	byAgent = `= func(agent string) bool {
		return strings.Contains(agent, "Android") || strings.Contains(agent, "iPhone") || strings.Contains(agent, "iPad") || strings.Contains(agent, "iPod")
	}(navigator.Get("userAgent").String())`
	noNetwork = `return nil, errors.New("nothing is loaded from the network")`
	noReader  = `image.Config{}, fmt.Errorf("a letter that is a picture")`
)

// The replacement files are not part of this package: the compiler ignores them by
// their names.
//
//go:embed standin
var standIns embed.FS

// change turns the file or folder at a path into what is compiled instead.
type change func(path string) error

// edit changes the text of a file.
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

// swap replaces a text by another wherever it occurs.
func swap(was, is string) change {
	return edit(func(text string) (string, error) {
		if !strings.Contains(text, was) {
			return "", fmt.Errorf("%q is not where it was", was)
		}
		return strings.ReplaceAll(text, was, is), nil
	})
}

// body replaces the body of a function.
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

// standIn replaces a file that contains a certain text by one of ours; without
// a name, by its package clause alone.
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

// packageLine is the package clause of a file.
func packageLine(text string) (string, error) {
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "package ") {
			return line, nil
		}
	}
	return "", errors.New("no package is named")
}

// folder replaces a package by a file of ours if one of its files contains a
// certain text.
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

// noJPEG removes the JPEG decoder: the app has no photographs.
var noJPEG = edit(func(text string) (string, error) {
	before, rest, found := strings.Cut(text, "\t_ \"image/jpeg\"")
	_, after, _ := strings.Cut(rest, "\n")
	if !found {
		return "", errors.New("the reader of JPEG is not where it was")
	}
	return before + after, nil
})

// oneFont keeps only the upright one of the toolkit's fonts. It is used if the
// app's font lacks a letter of a name that a rider typed.
var oneFont = edit(func(text string) (string, error) {
	for _, font := range []string{"NotoSans-Bold.ttf", "NotoSans-Italic.ttf", "NotoSans-BoldItalic.ttf", "DejaVuSansMono-Powerline.ttf"} {
		embed := "//go:embed font/" + font
		at := strings.Index(text, embed)
		if at < 0 {
			return "", fmt.Errorf("%s is not where it was", font)
		}
		after := text[at+len(embed)+1:] // the variable that it is embedded in
		variable, rest, ok := strings.Cut(after, " []byte\n")
		if !ok {
			return "", fmt.Errorf("%s is not taken as bytes", font)
		}
		text = text[:at] + variable + " = notoSansRegular\n" + rest
	}
	return text, nil
})
