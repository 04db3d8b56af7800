//go:build !js

package accessible

import "fyne.io/fyne/v2"

// Follow does nothing here: the toolkit itself informs the system's screen
// reader.
func Follow(fyne.Window) {}
