package screens_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"stillair/app/accessible"
	"stillair/app/recorder"
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/text"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// TestRidingFitsTheSmallestPhone: the screen while the bike moves cannot be scrolled,
// so what is on it fits the smallest phone at every size of text, whatever has
// happened: the first warning always, the missing part of the ride at the usual size.
func TestRidingFitsTheSmallestPhone(t *testing.T) {
	test.NewTempApp(t)
	silent, hidden, torn := movingStatus(), movingStatus(), movingStatus()
	silent.Senses[0].Condition, silent.Unsaved = sensors.Silent, 12
	hidden.Holes = []sensors.Hole{{From: 100, To: 139, Why: finding.New("browser.was_hidden")}}
	torn.Senses, torn.Unsaved, torn.Holes, torn.Kept.Err = silent.Senses, 12, hidden.Holes, errors.New("full")
	for _, scale := range []float32{1, 1.2, 1.45} { // the sizes of package shell
		for _, book := range text.All() {
			for name, st := range map[string]recorder.Status{"moving": movingStatus(), "silent": silent, "hidden": hidden, "all at once": torn} {
				v := variant{w: 360, h: 560, book: book, scale: scale}
				view := v.screens().C.Riding(st)
				for _, make := range []func(screens.Screens) fyne.CanvasObject{
					func(s screens.Screens) fyne.CanvasObject { return s.Riding(view, ridingActions()).Root },
					func(s screens.Screens) fyne.CanvasObject { return s.Pocket(view, nothing) },
				} {
					_, o := draw(t, v, make)
					if need := kit.HeightOf(o, v.w); need > v.h {
						t.Errorf("%s, scale %g, %s: needs a height of %.0f and has %.0f", book.Tag, scale, name, need, v.h)
					}
					if len(view.Warnings) > 0 && !says(o, view.Warnings[0]) {
						t.Errorf("%s, scale %g, %s: does not say %q", book.Tag, scale, name, view.Warnings[0])
					}
					if name == "hidden" && scale == 1 && !says(o, view.Missing) {
						t.Errorf("%s, %s: does not say %q", book.Tag, name, view.Missing)
					}
				}
			}
		}
	}
}

func says(o fyne.CanvasObject, words string) bool {
	return slices.ContainsFunc(accessible.Things(o), func(x accessible.Thing) bool { return strings.HasPrefix(x.Name, words) })
}
