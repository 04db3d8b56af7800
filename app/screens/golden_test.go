package screens_test

import (
	"bytes"
	"flag"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/text"
	"stillair/app/view"
	"stillair/export/shown"
)

var update = flag.Bool("update", false, "write the golden pictures again")

// variant is one way to look at every screen.
type variant struct {
	name   string
	w, h   float32
	dark   bool
	book   *text.Book
	system shown.System
	scale  float32
	tall   bool // as high as the screen's content
}

func variants() []variant {
	en, de := text.English(), text.German()
	return []variant{
		{name: "small-light", w: 360, h: 640, book: en},
		{name: "small-dark", w: 360, h: 640, dark: true, book: en},
		{name: "large-light", w: 412, h: 915, book: en},
		{name: "large-dark", w: 412, h: 915, dark: true, book: en},
		{name: "german-whole", w: 360, h: 640, book: de, tall: true},
		{name: "mph-large-text", w: 390, h: 844, book: en, system: shown.Imperial, scale: 1.4, dark: true, tall: true},
	}
}

func (v variant) screens() screens.Screens {
	p := kit.Light()
	if v.dark {
		p = kit.Dark()
	}
	c := view.Context{Book: v.book, System: v.system}
	if v.system == shown.Imperial {
		c.FuelUnit, c.PowerUnit = shown.MilesPerGallonImp, shown.Horsepower
	}
	return screens.Screens{Kit: kit.New(p, v.scale), C: c}
}

// draw renders a screen in software, as any machine does.
func draw(t *testing.T, v variant, make func(screens.Screens) fyne.CanvasObject) (image.Image, fyne.CanvasObject) {
	t.Helper()
	s := v.screens()
	fyne.CurrentApp().Settings().SetTheme(s.Kit.Theme())
	o := make(s)
	everySignIsOurs(t, s, o)
	w := test.NewTempWindow(t, o)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(v.w, v.h))
	if v.tall {
		w.Resize(fyne.NewSize(v.w, max(v.h, wholeHeight(o, v.h))))
	}
	return w.Canvas().Capture(), o
}

// wholeHeight is the height at which a screen need not scroll.
func wholeHeight(o fyne.CanvasObject, h float32) float32 {
	more := float32(0)
	walk(o, func(x fyne.CanvasObject) {
		if p, ok := x.(*kit.Page); ok {
			more = max(more, p.Hidden())
		}
	})
	return h + more
}

func walk(o fyne.CanvasObject, visit func(fyne.CanvasObject)) {
	visit(o)
	switch x := o.(type) {
	case *fyne.Container:
		for _, c := range x.Objects {
			walk(c, visit)
		}
	case fyne.Widget:
		for _, c := range test.WidgetRenderer(x).Objects() {
			walk(c, visit)
		}
	}
}

// hold compares a picture with its golden picture. Software drawing with the
// font that is built in is the same on every machine except for the last bit of
// floating point, so a few pixels may differ a little.
func hold(t *testing.T, name string, got image.Image) {
	t.Helper()
	path := filepath.Join("testdata", "pictures", name+".png")
	if *update {
		var b bytes.Buffer
		enc := png.Encoder{CompressionLevel: png.BestCompression}
		if err := enc.Encode(&b, coarse(got)); err != nil {
			t.Fatal(err)
		}
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	f, err := os.Open(path)
	if err != nil {
		t.Fatalf("%v; write it with -update and look at it", err)
	}
	defer f.Close()
	want, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	if want.Bounds() != got.Bounds() {
		t.Fatalf("%s: size %v, golden %v", name, got.Bounds(), want.Bounds())
	}
	if share := differing(got, want); share > 0.001 {
		t.Errorf("%s: %.2f %% of the pixels differ from the golden picture", name, 100*share)
	}
}

// coarse keeps sixteen levels of each colour, so that a picture of a screen fits
// a palette and a golden picture takes a few kilobytes. The change is smaller
// than the tolerance of hold.
func coarse(img image.Image) image.Image {
	b := img.Bounds()
	index := map[color.NRGBA]uint8{}
	out := image.NewPaletted(b, nil)
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			c := color.NRGBAModel.Convert(img.At(x, y)).(color.NRGBA)
			c = color.NRGBA{R: level(c.R), G: level(c.G), B: level(c.B), A: 255}
			i, ok := index[c]
			if !ok {
				if len(index) == 256 {
					return img
				}
				i = uint8(len(index))
				index[c] = i
				out.Palette = append(out.Palette, c)
			}
			out.SetColorIndex(x, y, i)
		}
	}
	return out
}

func level(v uint8) uint8 { return uint8((int(v) + 8) / 17 * 17) }

func differing(a, b image.Image) float64 {
	n, all := 0, a.Bounds().Dx()*a.Bounds().Dy()
	for y := a.Bounds().Min.Y; y < a.Bounds().Max.Y; y++ {
		for x := a.Bounds().Min.X; x < a.Bounds().Max.X; x++ {
			ar, ag, ab, _ := a.At(x, y).RGBA()
			br, bg, bb, _ := b.At(x, y).RGBA()
			if apart(ar, br) || apart(ag, bg) || apart(ab, bb) {
				n++
			}
		}
	}
	return float64(n) / float64(all)
}

func apart(a, b uint32) bool { return max(a, b)-min(a, b) > 24<<8 }

func TestPictures(t *testing.T) {
	test.NewTempApp(t)
	all := variants()
	if testing.Short() && !*update {
		all = all[:1]
	}
	for _, v := range all {
		for _, c := range allScreens() {
			name := v.name + "/" + strings.ReplaceAll(c.name, " ", "-")
			t.Run(name, func(t *testing.T) {
				got, _ := draw(t, v, c.make)
				hold(t, name, got)
			})
		}
	}
}
