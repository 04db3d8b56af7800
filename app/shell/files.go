package shell

import (
	"errors"

	"fyne.io/fyne/v2"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/text"
	"stillair/app/view"
	"stillair/sensors"
)

var errNoShare = errors.New("this device has no way to share; its files are in the app's folder")

// noRide reports whether an analysis failed because there is no ride in the
// recording.
func noRide(err error) bool {
	var input *sensors.InputError
	return errors.As(err, &input)
}

// Failure is what is shown where the app cannot start at all.
func Failure(book *text.Book, err error) fyne.CanvasObject {
	s := screens.Screens{Kit: kit.New(kit.Light(), 1), C: view.Context{Book: book}}
	return s.Failed(book.More.AboutTitle, s.C.Error(err), nil, nil)
}
