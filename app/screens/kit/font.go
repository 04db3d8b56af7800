package kit

import (
	_ "embed" // the two weights of the font

	"fyne.io/fyne/v2"
)

// The font is a subset of Source Sans 3 with the characters that the app uses,
// under the SIL Open Font License (font/LICENSE), made by .ci/font/remake.mjs.
// The toolkit's own font lacks the minus sign, among others, and in a browser
// there is no fallback font.
var (
	//go:embed font/regular.ttf
	regular []byte
	//go:embed font/bold.ttf
	bold []byte
)

// Font implements fyne.Theme.
func (t fyneTheme) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Monospace || style.Symbol:
		return t.Theme.Font(style)
	case style.Bold:
		return boldFont
	}
	return regularFont
}

// The toolkit identifies a font by its resource, so each has one.
var (
	regularFont = fyne.NewStaticResource("stillair-regular.ttf", regular)
	boldFont    = fyne.NewStaticResource("stillair-bold.ttf", bold)
)
