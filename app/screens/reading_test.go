package screens_test

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"stillair/app/accessible"
	"stillair/app/screens/kit"
	"stillair/app/text"
)

var readings = flag.String("readings", "", "folder into which TestReading writes what the page's script receives of each screen")

// unclean is what a screen reader would stumble over: text of more than one
// line, two punctuation marks in a row, or one with nothing after or before it.
var unclean = regexp.MustCompile(`\n|  |[,:;] *[,:;.]|\. *\.( |$)|[,:;] *$|^ *[,:;.]|^\s*$`)

// TestReading checks what a screen reader gets of each screen: clean names, and
// one heading that names the page.
func TestReading(t *testing.T) {
	test.NewTempApp(t)
	for _, book := range text.All() {
		for _, c := range allScreens() {
			t.Run(book.Tag+"/"+c.name, func(t *testing.T) {
				o := c.make(variant{book: book}.screens())
				w := test.NewTempWindow(t, o)
				w.SetPadded(false)
				w.Resize(fyne.NewSize(360, 3000))
				things := accessible.Things(o)
				readsWell(t, o, things)
				write(t, book.Tag+" "+strings.ReplaceAll(c.name, "/", " "), things)
			})
		}
	}
}

func readsWell(t *testing.T, o fyne.CanvasObject, things []accessible.Thing) {
	t.Helper()
	tops, page := 0, false
	for _, x := range things {
		if unclean.MatchString(x.Name) {
			t.Errorf("the name %q", x.Name)
		}
		if x.Level == 1 {
			tops++
		}
	}
	walk(o, func(x fyne.CanvasObject) { _, ok := x.(*kit.Page); page = page || ok })
	if page && tops != 1 {
		t.Errorf("%d headings name the page", tops)
	}
}

func write(t *testing.T, name string, things []accessible.Thing) {
	t.Helper()
	if *readings == "" {
		return
	}
	b, err := accessible.Page(things, 1)
	if err == nil {
		err = os.WriteFile(filepath.Join(*readings, name+".json"), b, 0o644)
	}
	if err != nil {
		t.Error(err)
	}
}
