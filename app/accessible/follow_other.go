//go:build !js

package accessible

import "fyne.io/fyne/v2"

// Follow does nothing here: the toolkit itself tells the system's reader.
func Follow(fyne.Window) {}
