package kit

import (
	"image/color"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Kit makes parts in one look.
type Kit struct {
	Palette Palette
	Scale   float32 // of text; 1 is the size of the system's default
	Decimal rune    // the decimal sign
	touched *bool   // a finger is on something touchable
	hands   *hands
}

// New returns a kit; a scale outside 0.8 to 2 is clamped.
func New(p Palette, scale float32) Kit {
	if scale == 0 {
		scale = 1
	}
	return Kit{Palette: p, Scale: min(max(scale, 0.8), 2), touched: new(bool), hands: &hands{after: func(time.Duration, func()) {}}}
}

// Touched reports whether a finger is on something touchable. Redrawing the
// screen meanwhile loses the tap.
func (k Kit) Touched() bool { return *k.touched }

// Theme gives Fyne's own widgets, of which only input fields are used, the same
// look.
func (k Kit) Theme() fyne.Theme { return fyneTheme{k, theme.DefaultTheme()} }

type fyneTheme struct {
	kit Kit
	fyne.Theme
}

// Color implements fyne.Theme.
func (t fyneTheme) Color(name fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	p := t.kit.Palette
	switch name {
	case theme.ColorNameBackground:
		return p.Ground
	case theme.ColorNameForeground:
		return p.Ink
	case theme.ColorNameInputBackground:
		return p.Sunk
	case theme.ColorNameInputBorder, theme.ColorNameSeparator:
		return p.Line
	case theme.ColorNamePlaceHolder, theme.ColorNameDisabled:
		return p.Muted
	case theme.ColorNamePrimary, theme.ColorNameFocus, theme.ColorNameHyperlink:
		return p.Accent
	case theme.ColorNameForegroundOnPrimary:
		return p.OnAcc
	case theme.ColorNameMenuBackground, theme.ColorNameOverlayBackground, theme.ColorNameHeaderBackground:
		return p.Surface
	case theme.ColorNameError, theme.ColorNameWarning:
		return p.Warn
	case theme.ColorNameSuccess:
		return p.Good
	case theme.ColorNameScrollBar:
		return withAlpha(p.Muted, 0x70)
	case theme.ColorNameScrollBarBackground, theme.ColorNameShadow:
		return color.Transparent
	case theme.ColorNameSelection:
		return withAlpha(p.Accent, 0x50)
	}
	v := theme.VariantLight
	if p.Dark {
		v = theme.VariantDark
	}
	return t.Theme.Color(name, v)
}

// Size implements fyne.Theme.
func (t fyneTheme) Size(name fyne.ThemeSizeName) float32 {
	switch name {
	case theme.SizeNameText:
		return t.kit.points(Body)
	case theme.SizeNameInnerPadding:
		return 14 // makes a field high enough for a glove
	case theme.SizeNamePadding:
		return 4
	case theme.SizeNameInputRadius, theme.SizeNameSelectionRadius:
		return 6
	case theme.SizeNameScrollBar:
		return 6
	case theme.SizeNameScrollBarSmall:
		return 3
	}
	return t.Theme.Size(name)
}

func withAlpha(c color.NRGBA, a uint8) color.NRGBA {
	c.A = a
	return c
}
