package device

import (
	"crypto/rand"
	"errors"
	"io"
	"time"

	"stillair/app/platform"
	"stillair/app/store"
	"stillair/app/work"
	sensing "stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/device/web"
)

// storage is what the app's storage is called.
const storage = "stillair"

// Open returns the browser. It waits for the storage and may not be called
// from the drawing loop.
func Open() (*platform.Device, error) {
	files, err := web.OpenFiles(storage)
	if err != nil {
		return nil, err
	}
	return &platform.Device{
		Files:  browserFiles{files},
		Clock:  clock{platform.NewSystemClock()},
		Random: rand.Reader,
		Source: func() sensing.Source { return device.NewLive(web.NewPort(), web.After) },
		Awake:  web.Awake{},
		Share:  web.Sharer{},
		Voice:  web.Voice{},
		Buzzer: web.Buzzer{},
		Permit: web.Permit,
		Ahead:  web.Ahead,
		Hear: func() sensing.Source {
			return device.NewLive(device.Hearing(web.NewPort(), web.NewMicrophone()), web.After)
		},
		PermitHearing: web.PermitMicrophone,
		Dark:          web.Dark,
		TextScale:     web.TextScale,
		Announce:      web.Announce,
		Language:      web.SetLanguage,
		Locale:        web.Language(),
		CoarseTiming:  true,
		Machine:       machine(),
		Aside:         web.Aside{},
		WentBack:      web.WentBack,
		Deep:          web.Deep,
		Obstacles: func() []platform.Obstacle {
			if files.Persisted() {
				return nil
			}
			return []platform.Obstacle{platform.Clearable}
		},
	}, nil
}

// Answered does what the page asks of this program, where it was started in a worker
// for that alone, and reports whether it was.
func Answered() bool {
	if !web.Asked() {
		return false
	}
	web.Answer(func(asked io.Reader, size int, tell func(share float64)) (func(io.Writer) error, error) {
		files, err := web.OpenFiles(storage)
		if err != nil {
			return nil, err
		}
		here := work.Here{Sessions: store.NewSessions(browserFiles{files}, platform.NewSystemClock()), Random: rand.Reader}
		return work.Answering(here, asked, size, tell)
	})
	return true
}

func machine() platform.Machine {
	switch web.Phone() {
	case "apple":
		return platform.AppleBrowser
	case "other":
		return platform.PhoneBrowser
	}
	return platform.DeskBrowser
}

// clock is the system's, which wakes a recording also while the page is hidden.
type clock struct{ platform.SystemClock }

// After implements platform.Clock.
func (clock) After(d time.Duration) <-chan time.Time { return web.After(d) }

// browserFiles is web.Files with the names and errors of package platform.
type browserFiles struct{ files *web.Files }

// meaning maps an error of the storage to that of package platform.
func meaning(err error) error {
	switch {
	case errors.Is(err, web.ErrFull):
		return errors.Join(platform.ErrFull, err)
	case errors.Is(err, web.ErrBusy):
		return platform.ErrBusy
	}
	return err
}

func (b browserFiles) Create(name string) (platform.File, error) {
	if err := platform.CheckName(name); err != nil {
		return nil, err
	}
	f, err := b.files.Create(name)
	if err != nil {
		return nil, meaning(err)
	}
	return browserFile{f}, nil
}

func (b browserFiles) Open(name string) (io.ReadCloser, error) {
	r, err := b.files.Open(name)
	return r, meaning(err)
}

func (b browserFiles) Replace(name string, data []byte) error {
	if err := platform.CheckName(name); err != nil {
		return err
	}
	return meaning(b.files.Replace(name, data))
}

func (b browserFiles) Remove(name string) error { return meaning(b.files.Remove(name)) }

func (b browserFiles) List() ([]platform.Info, error) {
	list, err := b.files.List()
	infos := make([]platform.Info, len(list))
	for i, f := range list {
		infos[i] = platform.Info{Name: f.Name, Size: f.Size, Modified: f.Modified}
	}
	return infos, meaning(err)
}

func (b browserFiles) Free() (int64, error) {
	n, err := b.files.Free()
	if err != nil {
		return 0, errors.Join(platform.ErrUnknown, err)
	}
	return n, nil
}

func (b browserFiles) Lock(name string) (func(), error) {
	unlock, err := b.files.Lock(name)
	return unlock, meaning(err)
}

type browserFile struct{ file *web.File }

func (f browserFile) Write(p []byte) (int, error) {
	n, err := f.file.Write(p)
	return n, meaning(err)
}

func (f browserFile) Sync() error  { return meaning(f.file.Sync()) }
func (f browserFile) Close() error { return meaning(f.file.Close()) }
