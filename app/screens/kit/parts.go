package kit

import "fyne.io/fyne/v2"

// Parts implements reading.Whole.
func (b *Box) Parts() []fyne.CanvasObject { return b.objects }

// Parts implements reading.Whole.
func (t *Touch) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{t.inner} }

// Parts implements reading.Whole. head, body and foot.
func (p *Page) Parts() (parts []fyne.CanvasObject) {
	for _, o := range []fyne.CanvasObject{p.head, p.scroll, p.foot} {
		if o != nil {
			parts = append(parts, o)
		}
	}
	return parts
}
