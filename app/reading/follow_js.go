package reading

import (
	"slices"
	"time"

	"fyne.io/fyne/v2"

	"stillair/sensors/device/web"
)

// every is how often the screen is looked at. Nobody hears faster.
const every = 400 * time.Millisecond

// Follow tells the browser's screen reader what a window shows, as long as the
// program runs. It is called once, before the window is shown.
func Follow(w fyne.Window) {
	go func() {
		var before []web.Thing
		for range time.Tick(every) {
			var now []web.Thing
			fyne.DoAndWait(func() { now = onPage(w.Canvas()) })
			if slices.Equal(now, before) {
				continue
			}
			before = now
			if err := web.Show(now); err != nil {
				fyne.LogError("the screen reader", err)
			}
		}
	}()
}

// onPage lists the things of a canvas where they lie on the page.
func onPage(c fyne.Canvas) []web.Thing {
	root := c.Content()
	if top := c.Overlays().Top(); top != nil {
		root = top
	}
	if root == nil {
		return nil
	}
	scale := c.Scale() / float32(web.PixelRatio())
	var out []web.Thing
	for _, t := range Things(root) {
		out = append(out, web.Thing{Name: t.Name, Role: string(t.Role), Value: t.Value, Note: t.Note, Lines: t.Lines,
			X: t.Pos.X * scale, Y: t.Pos.Y * scale, W: t.Size.Width * scale, H: t.Size.Height * scale})
	}
	return out
}
