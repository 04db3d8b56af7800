//go:build js || android || ios || desktop

package main

import (
	"fmt"
	"os"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/driver/mobile"
	"fyne.io/fyne/v2/theme"

	"stillair/app/accessible"
	"stillair/app/device"
	"stillair/app/shell"
	"stillair/app/text"
)

// Sizes of the window where it has one: a small phone.
const width, height = 390, 844

func main() {
	if device.Answered() {
		return
	}
	collectLater()
	a := app.NewWithID("stillair.phone")
	w := a.NewWindow("Stillair")
	w.SetPadded(false)
	w.Resize(fyne.NewSize(width, height))
	w.SetMaster()
	go open(a, w, slices.Contains(os.Args[1:], "--demo"))
	w.ShowAndRun()
}

// open prepares the device, which may take a while, and then shows the app.
func open(a fyne.App, w fyne.Window, demo bool) {
	defer accessible.Follow(w)
	d, err := device.Open()
	if err != nil {
		fmt.Fprintln(os.Stderr, "stillair:", err)
		fyne.Do(func() { w.SetContent(failed(err)) })
		return
	}
	if d.Dark == nil {
		d.Dark = func() bool { return a.Settings().ThemeVariant() == theme.VariantDark }
	}
	if demo && d.Announce == nil {
		d.Announce = func(words string) { fmt.Println(words) }
	}
	s := shell.Open(shell.Config{Device: d, Do: fyne.Do, Location: time.Local,
		SetTheme: func(t fyne.Theme) { fyne.Do(func() { a.Settings().SetTheme(t) }) }})
	fyne.Do(func() {
		w.SetContent(s.Root())
		w.SetOnClosed(s.Close)
		a.Lifecycle().SetOnExitedForeground(func() { s.Hidden(true) })
		a.Lifecycle().SetOnEnteredForeground(func() { s.Hidden(false) })
		w.Canvas().SetOnTypedKey(func(k *fyne.KeyEvent) {
			if k.Name == fyne.KeyEscape || k.Name == mobile.KeyBack {
				s.Back()
			}
		})
		s.Start()
		if demo {
			s.Demo()
		}
	})
}

// failed says why there is no app.
func failed(err error) fyne.CanvasObject {
	return shell.Failure(text.English(), err)
}
