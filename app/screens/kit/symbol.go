package kit

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Symbol is a small drawing, always the same for the same meaning.
type Symbol string

// The symbols. Each is drawn for this app on a grid of 24 by 24.
const (
	None      Symbol = ""
	Tick      Symbol = "tick"
	Cross     Symbol = "cross"
	Caution   Symbol = "caution"
	Wait      Symbol = "wait"
	Missing   Symbol = "missing"
	Box0      Symbol = "box"
	Box1      Symbol = "box ticked"
	Ring      Symbol = "ring"
	RingFull  Symbol = "ring chosen"
	Back      Symbol = "back"
	Forward   Symbol = "forward"
	Up        Symbol = "up"
	Down      Symbol = "down"
	Plus      Symbol = "plus"
	Pencil    Symbol = "pencil"
	Bin       Symbol = "bin"
	Hand      Symbol = "hand over"
	Voice     Symbol = "voice"
	Lock      Symbol = "lock"
	Record    Symbol = "record"
	End       Symbol = "end"
	Info      Symbol = "info"
	RideTab   Symbol = "road"
	ListTab   Symbol = "curves"
	BikeTab   Symbol = "bike"
	PairTab   Symbol = "pair"
	MoreTab   Symbol = "more"
	SLaunch   Symbol = "launch"
	SRollOn   Symbol = "roll-on"
	SPull     Symbol = "pull"
	SCoast    Symbol = "coast-down"
	SStop     Symbol = "stop"
	Satellite Symbol = "satellite"
	Motion    Symbol = "motion"
	Barometer Symbol = "barometer"
	Storage   Symbol = "storage"
	Guide     Symbol = "guide"
	Season    Symbol = "points over time"
)

// drawn returns a symbol's outline. Strokes are 2 wide; an element with
// class="f" is filled.
func drawn(s Symbol) string {
	switch s {
	case Tick:
		return `<path d="M4 13 L9.5 18.5 L20 6"/>`
	case Cross:
		return `<path d="M5.5 5.5 L18.5 18.5 M18.5 5.5 L5.5 18.5"/>`
	case Caution:
		return `<path d="M12 3.5 L22 20.5 L2 20.5 Z M12 10 L12 14.5 M12 17 L12 17.8"/>`
	case Wait:
		return `<path d="M6 3 L18 3 M6 21 L18 21 M7.5 3 L7.5 6.5 L16.5 17.5 L16.5 21 M16.5 3 L16.5 6.5 L7.5 17.5 L7.5 21"/>`
	case Missing:
		return `<path d="M5 12 L19 12"/>`
	case Box0:
		return `<path d="M4 4 L20 4 L20 20 L4 20 Z"/>`
	case Box1:
		return `<path d="M4 4 L20 4 L20 20 L4 20 Z M7.5 12.2 L11 15.7 L16.8 8.4"/>`
	case Ring:
		return `<circle cx="12" cy="12" r="9"/>`
	case RingFull:
		return `<circle cx="12" cy="12" r="9"/><circle cx="12" cy="12" r="5" class="f"/>`
	case Back:
		return `<path d="M15 4.5 L7.5 12 L15 19.5"/>`
	case Forward:
		return `<path d="M9 4.5 L16.5 12 L9 19.5"/>`
	case Up:
		return `<path d="M12 20.5 L12 3.5 M5 10.5 L12 3.5 L19 10.5"/>`
	case Down:
		return `<path d="M12 3.5 L12 20.5 M5 13.5 L12 20.5 L19 13.5"/>`
	case Plus:
		return `<path d="M12 4 L12 20 M4 12 L20 12"/>`
	case Pencil:
		return `<path d="M4 20 L5 15.5 L16 4.5 L19.5 8 L8.5 19 Z M13.5 7 L17 10.5"/>`
	case Bin:
		return `<path d="M4 6.5 L20 6.5 M9 6.5 L9 3.5 L15 3.5 L15 6.5 M6 6.5 L7 20.5 L17 20.5 L18 6.5 M10.2 10.5 L10.5 16.5 M13.8 10.5 L13.5 16.5"/>`
	case Hand:
		return `<path d="M12 14.5 L12 3.5 M8 7.5 L12 3.5 L16 7.5 M4.5 13 L4.5 20.5 L19.5 20.5 L19.5 13"/>`
	case Voice:
		return `<path d="M3.5 9.5 L7.5 9.5 L12.5 5 L12.5 19 L7.5 14.5 L3.5 14.5 Z M16 9 C17.4 10.8 17.4 13.2 16 15 M18.8 6.5 C21.6 9.7 21.6 14.3 18.8 17.5"/>`
	case Lock:
		return `<path d="M5 11 L19 11 L19 20.5 L5 20.5 Z M8 11 L8 8 C8 2.6 16 2.6 16 8 L16 11 M12 14.5 L12 17"/>`
	case Record:
		return `<circle cx="12" cy="12" r="6.5" class="f"/><circle cx="12" cy="12" r="9.6"/>`
	case End:
		return `<path d="M6 6 L18 6 L18 18 L6 18 Z" class="f"/>`
	case Info:
		return `<circle cx="12" cy="12" r="9.5"/><path d="M12 11 L12 17 M12 7 L12 7.6"/>`
	}
	return drawnTrade(s)
}

// drawnTrade holds the symbols of the trade and of the tabs.
func drawnTrade(s Symbol) string {
	switch s {
	case RideTab:
		return `<path d="M4 21 L9.5 3 M20 21 L14.5 3 M12 20 L12 16.5 M12 12.5 L12 9.8 M12 6.2 L12 4.2"/>`
	case ListTab:
		return `<path d="M3.5 3 L3.5 20.5 L21 20.5 M6.5 17 C9 8.5 12 6.5 20 5.5 M6.5 6.5 C10 12.5 14 15.5 20 16.5"/>`
	case BikeTab:
		return `<circle cx="5.2" cy="16.6" r="3.6"/><circle cx="18.8" cy="16.6" r="3.6"/>` +
			`<path d="M18.8 16.6 L15.2 6.8 L12.6 6.3" /><path d="M2.6 9.6 L8.4 10.2 C9.6 8.2 13.6 7.6 15.8 9.4 L12.6 13.2 L8.2 13.2 L5.4 10.4 Z" class="f"/>` +
			`<path d="M5.2 16.6 L13.2 16.6 L14.6 13"/>`
	case PairTab:
		return `<path d="M3 8 L21 8 M6 5 L6 11 M17 5 L17 11 M3 16 L21 16 M9 13 L9 19 M20 13 L20 19 "/><circle cx="11.5" cy="8" r="1.6" class="f"/><circle cx="14.5" cy="16" r="1.6" class="f"/>`
	case Season:
		return `<path d="M3.5 3 L3.5 20.5 L21 20.5"/><circle cx="8" cy="14.8" r="1.8" class="f"/><circle cx="13" cy="8.5" r="1.8" class="f"/><circle cx="18" cy="11.5" r="1.8" class="f"/>`
	case MoreTab:
		return `<path d="M3.5 7 L20.5 7 M3.5 12 L20.5 12 M3.5 17 L14 17"/>`
	case SLaunch:
		return `<path d="M3.5 20.5 L7 20.5 C11 18 14.5 10.5 20 4 M13.5 4 L20 4 L20 10.5"/>`
	case SRollOn:
		return `<path d="M3 17.5 L21 17.5 M3 6.5 L21 6.5 M7 17.5 C11.5 16 13 8.5 17 6.5"/>`
	case SPull:
		return `<path d="M3.5 20 C3.5 9 7 5 12 5 C17 5 20.5 9 20.5 20 M12 18.5 L16.5 11"/>`
	case SCoast:
		return `<path d="M3.5 4.5 C7 12.5 12 17 20.5 18.5 M15.5 13.6 L20.5 18.5 L14.6 21.2"/>`
	case SStop:
		return `<path d="M3.5 4.5 L9.5 4.5 C13 5 15.5 12 16.5 20.5 M20.5 12 L20.5 20.5 M12.5 20.5 L20.5 20.5"/>`
	case Satellite:
		return `<path d="M9.2 9.2 L14.8 14.8 L12 17.6 L6.4 12 Z M4 7.5 L7.5 4 M16.5 20 L20 16.5 M5.7 5.7 L9.2 9.2 M14.8 14.8 L18.3 18.3 M14.5 4 C17.5 4.5 19.5 6.5 20 9.5 M14.3 7.4 C15.6 7.7 16.3 8.4 16.6 9.7"/>`
	case Motion:
		return `<path d="M8.5 3.5 L15.5 3.5 L15.5 20.5 L8.5 20.5 Z M5.2 8 L5.2 16 M2.4 10 L2.4 14 M18.8 8 L18.8 16 M21.6 10 L21.6 14"/>`
	case Barometer:
		return `<circle cx="12" cy="12" r="9"/><path d="M12 12 L16 7.8 M6 12 L7.3 12 M12 6 L12 6.9 M16.8 12 L18 12"/>`
	case Storage:
		return `<path d="M4 5 L20 5 L20 10 L4 10 Z M4 14 L20 14 L20 19 L4 19 Z M7.5 7.5 L8 7.5 M7.5 16.5 L8 16.5"/>`
	case Guide:
		return `<path d="M12 21 L12 3.5 M12 5 L18.5 5 L21 7.5 L18.5 10 L12 10 M12 12 L5.5 12 L3 14.5 L5.5 17 L12 17"/>`
	}
	return ""
}

// Icon shows a symbol at a size.
func (k Kit) Icon(s Symbol, ink Ink, size float32) *Box {
	img := canvas.NewImageFromResource(k.resource(s, ink))
	img.FillMode = canvas.ImageFillContain
	return newBox(fixed{size, size}, img)
}

func (k Kit) resource(s Symbol, ink Ink) *fyne.StaticResource {
	c := k.Palette.Of(ink)
	hex := fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
	body := strings.ReplaceAll(drawn(s), `class="f"`, `fill="`+hex+`" stroke="none"`)
	svg := `<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24">` +
		`<g fill="none" stroke="` + hex + `" stroke-width="2" stroke-linecap="round" stroke-linejoin="round">` + body + `</g></svg>`
	return fyne.NewStaticResource(string(s)+hex+".svg", []byte(svg))
}

// fixed gives its objects a fixed size, at the top left.
type fixed struct{ w, h float32 }

func (f fixed) height([]fyne.CanvasObject, float32) float32 { return f.h }
func (f fixed) width([]fyne.CanvasObject) float32           { return f.w }
func (f fixed) place(objects []fyne.CanvasObject, _ fyne.Size) {
	for _, o := range objects {
		put(o, 0, 0, f.w, f.h)
	}
}
