package screens_test

import (
	"image/color"
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"stillair/app/accessible"
	"stillair/app/screens/kit"
	"stillair/app/text"
	"stillair/export/shown"
)

// TestNothingIsCutOff draws every screen in its tightest variants and checks
// that each line of text fits its box and that no page is wider than the phone.
func TestNothingIsCutOff(t *testing.T) {
	test.NewTempApp(t)
	tight := []variant{{name: "german", w: 320, h: 568, book: text.German()}}
	if !testing.Short() {
		tight = append(tight, variant{name: "german large text", w: 360, h: 640, book: text.German(), scale: 1.4},
			variant{name: "english largest text", w: 360, h: 640, book: text.English(), scale: 1.7})
	}
	for _, v := range tight {
		eachScreen(t, v, func(t *testing.T, c picture, o fyne.CanvasObject) {
			lines := 0
			walk(o, func(x fyne.CanvasObject) {
				line, ok := x.(*canvas.Text)
				if !ok || line.Text == "" {
					return
				}
				lines++
				need := fyne.MeasureText(line.Text, line.TextSize, line.TextStyle).Width
				if need > line.Size().Width+1 {
					t.Errorf("%s: %s: %q needs %.0f and has %.0f", v.name, c.name, line.Text, need, line.Size().Width)
				}
			})
			if lines == 0 {
				t.Errorf("%s: %s: no text seen", v.name, c.name)
			}
		})
	}
}

// eachScreen draws every screen in its own subtest, which also closes its
// window.
func eachScreen(t *testing.T, v variant, do func(*testing.T, picture, fyne.CanvasObject)) {
	t.Helper()
	for _, c := range allScreens() {
		t.Run(v.name+"/"+c.name, func(t *testing.T) {
			_, o := draw(t, v, c.make)
			do(t, c, o)
		})
	}
}

// TestWordsAreNotBroken checks that no word has to be broken at the default size.
func TestWordsAreNotBroken(t *testing.T) {
	if testing.Short() {
		t.Skip("the pictures show the same in -short")
	}
	test.NewTempApp(t)
	for _, book := range text.All() {
		v := variant{name: book.Tag, w: 360, h: 640, book: book}
		eachScreen(t, v, func(t *testing.T, c picture, o fyne.CanvasObject) {
			walk(o, func(x fyne.CanvasObject) {
				if p, ok := x.(*kit.Prose); ok && p.Breaks() {
					t.Errorf("%s: %s: a word of %q does not fit", book.Tag, c.name, p.AccessibilityLabel())
				}
			})
		})
	}
}

// TestTouchesAreLargeEnough checks that whatever answers to a touch is at least
// 48 units high and wide, the size that Android's and the W3C's guidance ask
// for (WCAG 2.2, success criterion 2.5.5, 44 CSS pixels).
func TestTouchesAreLargeEnough(t *testing.T) {
	if testing.Short() {
		t.Skip("held in the full run")
	}
	test.NewTempApp(t)
	eachScreen(t, variants()[0], func(t *testing.T, c picture, o fyne.CanvasObject) {
		walk(o, func(x fyne.CanvasObject) {
			b, ok := x.(*kit.Touch)
			if !ok {
				return
			}
			if s := b.Size(); s.Height < 48 || s.Width < 48 {
				t.Errorf("%s: %q is %.0f × %.0f", c.name, b.AccessibilityLabel(), s.Width, s.Height)
			}
			if strings.TrimSpace(b.AccessibilityLabel()) == "" {
				t.Errorf("%s: something to touch has no label for a screen reader", c.name)
			}
		})
	})
}

// TestRidingAnswersToNoTouch checks the most important rule: while the bike
// moves there is nothing to touch.
func TestRidingAnswersToNoTouch(t *testing.T) {
	test.NewTempApp(t)
	for _, c := range rideScreens() {
		if !strings.HasPrefix(c.name, "riding") {
			continue
		}
		_, o := draw(t, variants()[0], c.make)
		walk(o, func(x fyne.CanvasObject) {
			if _, ok := x.(fyne.Tappable); ok {
				t.Errorf("%s: %T answers to a touch", c.name, x)
			}
		})
	}
}

// contrast is the ratio of WCAG 2.2 (relative luminance, success criterion
// 1.4.3).
func contrast(a, b color.NRGBA) float64 {
	lum := func(c color.NRGBA) float64 {
		lin := func(v uint8) float64 {
			x := float64(v) / 255
			if x <= 0.04045 {
				return x / 12.92
			}
			return math.Pow((x+0.055)/1.055, 2.4)
		}
		return 0.2126*lin(c.R) + 0.7152*lin(c.G) + 0.0722*lin(c.B)
	}
	la, lb := lum(a), lum(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func TestContrast(t *testing.T) {
	white, black := color.NRGBA{255, 255, 255, 255}, color.NRGBA{0, 0, 0, 255}
	if c := contrast(white, black); math.Abs(c-21) > 1e-9 { // WCAG: the highest possible contrast
		t.Fatalf("black on white has %g, want 21", c)
	}
	for name, p := range map[string]kit.Palette{"light": kit.Light(), "dark": kit.Dark()} {
		for ground, g := range map[string]color.NRGBA{"ground": p.Ground, "surface": p.Surface} {
			for ink, c := range map[string]color.NRGBA{"ink": p.Ink, "muted": p.Muted, "accent": p.Accent, "good": p.Good, "warn": p.Warn} {
				if r := contrast(c, g); r < 4.5 {
					t.Errorf("%s: %s on %s has contrast %.2f, want 4.5", name, ink, ground, r)
				}
			}
		}
		if r := contrast(p.OnAcc, p.Accent); r < 4.5 {
			t.Errorf("%s: words on a button have contrast %.2f, want 4.5", name, r)
		}
		for i, tone := range p.Tones[:3] {
			if r := contrast(tone, p.Surface); r < 3 {
				t.Errorf("%s: line %d of a plot has contrast %.2f, want 3 (success criterion 1.4.11)", name, i, r)
			}
		}
	}
}

// TestTheSensorsAreAboveTheFold checks that the state of the sensors is visible
// before the ride without scrolling on the smallest phone, even if there is
// more to say.
func TestTheSensorsAreAboveTheFold(t *testing.T) {
	test.NewTempApp(t)
	for _, book := range text.All() {
		seen := 0
		for _, c := range rideScreens() {
			if !strings.HasPrefix(c.name, "ready") {
				continue
			}
			_, o := draw(t, variant{w: 360, h: 560, book: book}, c.make)
			for _, title := range []string{book.Senses.Satellites, book.Senses.Motion} {
				if !slices.ContainsFunc(accessible.Things(o), func(x accessible.Thing) bool { return strings.HasPrefix(x.Name, title+":") }) {
					t.Errorf("%s: %s: %s is below the fold", book.Tag, c.name, title)
				}
				seen++
			}
		}
		if seen < 6 {
			t.Errorf("%s: only %d lines looked for", book.Tag, seen)
		}
	}
}

// TestNoTextIsTooSmall: what has to be read is 14 units high or more at the usual
// size. Common practice for text on a phone; both platforms' own small text is 11 to
// 14 (from memory). The bar's labels stand under a symbol and shrink to fit, and a
// plot's numbers are not prose.
func TestNoTextIsTooSmall(t *testing.T) {
	test.NewTempApp(t)
	lines := 0
	eachScreen(t, variants()[0], func(t *testing.T, c picture, o fyne.CanvasObject) {
		walk(o, func(x fyne.CanvasObject) {
			p, ok := x.(*kit.Prose)
			if !ok {
				return
			}
			for _, line := range test.WidgetRenderer(p).Objects() {
				lines++
				if got := line.(*canvas.Text).TextSize; got < 14 {
					t.Errorf("%s: %q is %.0f high", c.name, p.AccessibilityLabel(), got)
				}
			}
		})
	})
	if lines < 100 {
		t.Errorf("only %d lines looked at", lines)
	}
}

// TestPassesComeBeforeTheRuns: the mean of both directions is the answer of a ride
// of passes, and the launches into them are not.
func TestPassesComeBeforeTheRuns(t *testing.T) {
	test.NewTempApp(t)
	for _, c := range resultScreens() {
		if c.name != "ride" {
			continue
		}
		v := variants()[0]
		v.tall = true
		_, o := draw(t, v, c.make)
		at := func(name string) int {
			return slices.IndexFunc(accessible.Things(o), func(x accessible.Thing) bool { return x.Name == name })
		}
		passes, found := at(v.book.Passes.Title), at(v.book.Ride.RunsTitle)
		if passes < 0 || found < passes {
			t.Errorf("passes are number %d on the screen and runs %d", passes, found)
		}
	}
}

// TestMarksKeepTheirUnits: at no size of text does a mark in the table of times break
// between its number and its unit, and the column of times says its unit.
func TestMarksKeepTheirUnits(t *testing.T) {
	test.NewTempApp(t)
	for _, scale := range []float32{1, 1.2, 1.45} { // the sizes of package shell
		for _, book := range text.All() {
			for _, system := range []shown.System{shown.Metric, shown.Imperial} {
				v := variant{name: book.Tag, w: 360, h: 560, book: book, scale: scale, system: system}
				seen, seconds := 0, false
				for _, c := range resultScreens() {
					if c.name != "launch" && c.name != "roll-on" && c.name != "stop" {
						continue
					}
					_, o := draw(t, v, c.make)
					walk(o, func(x fyne.CanvasObject) {
						if b, ok := x.(*kit.Box); ok && strings.HasSuffix(b.AccessibilityLabel(), " s") {
							seconds = true
						}
						p, ok := x.(*kit.Prose)
						if !ok || !strings.HasSuffix(p.AccessibilityLabel(), "km/h") && !strings.HasSuffix(p.AccessibilityLabel(), "mph") || !strings.Contains(p.AccessibilityLabel(), "–") {
							return
						}
						seen++
						if p.NaturalWidth() > p.Size().Width+1 {
							t.Errorf("%s, scale %g: %q needs %.0f and has %.0f", book.Tag, scale, p.AccessibilityLabel(), p.NaturalWidth(), p.Size().Width)
						}
					})
				}
				if seen < 3 || !seconds {
					t.Errorf("%s, scale %g: %d marks seen, unit said: %v", book.Tag, scale, seen, seconds)
				}
			}
		}
	}
}
