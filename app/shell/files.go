package shell

import (
	"bytes"
	"context"
	"errors"

	"fyne.io/fyne/v2"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/text"
	"stillair/app/view"

	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/replay"
)

var errNoShare = errors.New("this device has no way to share; its files are in the app's folder")

// memory is a session file that is never on a disk.
type memory struct{ *bytes.Buffer }

// Sync implements session.File.
func (memory) Sync() error { return nil }

// writeLog writes a whole log into a session.
func writeLog(ctx context.Context, log *sensors.Log, w *session.Writer) error {
	if err := replay.New(log).Run(ctx, w); err != nil {
		return err
	}
	return w.Close()
}

// unreadable is an error of reading a recording, apart from those of measuring
// it.
type unreadable struct{ error }

func (u unreadable) Unwrap() error { return u.error }

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
