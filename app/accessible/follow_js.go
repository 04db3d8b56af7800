package accessible

import (
	"bytes"
	"time"

	"fyne.io/fyne/v2"

	"stillair/sensors/device/web"
)

// every is how often the screen is looked at. Nobody hears faster.
const every = 400 * time.Millisecond

// Follow tells the browser's screen reader what a window shows, as long as the
// program runs, and gives its fields what is typed into the page's. It is called
// once, as soon as the window has its content: the page hides its own words when
// it hears of the first screen.
func Follow(w fyne.Window) {
	go func() {
		var before []byte
		web.Typed(func(key, text string) { fyne.Do(func() { typed(w.Canvas(), key, text) }) })
		for tick := time.Tick(every); ; <-tick {
			var now []byte
			var err error
			fyne.DoAndWait(func() {
				scale := w.Canvas().Scale() / float32(web.PixelRatio())
				now, err = Page(thingsOf(w.Canvas()), scale)
			})
			if err != nil {
				fyne.LogError("the screen reader", err)
			}
			if err == nil && !bytes.Equal(now, before) {
				before = now
				web.Show(now)
			}
		}
	}()
}

// typed gives a field what was typed into the page's.
func typed(c fyne.Canvas, key, text string) {
	for _, t := range thingsOf(c) {
		if t.Field != nil && Key(t.Field) == key {
			t.Field.SetFieldValue(text)
		}
	}
}

// thingsOf lists the things of a canvas where they lie on the page.
func thingsOf(c fyne.Canvas) []Thing {
	root := c.Content()
	if top := c.Overlays().Top(); top != nil {
		root = top
	}
	if root == nil {
		return nil
	}
	return Things(root)
}
