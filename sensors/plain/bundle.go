package plain

import (
	"io"
	"io/fs"
	"strings"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/packed"
)

// The files of a log.
const (
	motionFile   = "motion.csv"
	gnssFile     = "gnss.csv"
	pressureFile = "pressure.csv"
	soundFile    = "sound.csv"
	rideFile     = "ride.json"
	nmeaSuffix   = ".nmea"
)

// entry is one file of a log, not yet open.
type entry struct {
	name string // as shown in messages
	size int64
	open func() (io.ReadCloser, error)
}

// bundle holds the files of a log by their bare names in lower case.
type bundle struct {
	name  string // of the folder or archive
	files map[string]entry
}

// IsPart reports whether a file of that name, without its folder, may be part of
// a plain log.
func IsPart(name string) bool { return isWanted(name) }

// isWanted reports whether a file with the bare name belongs to a log.
func isWanted(name string) bool {
	switch name = strings.ToLower(name); name {
	case motionFile, gnssFile, pressureFile, soundFile, rideFile:
		return true
	}
	return strings.HasSuffix(name, nmeaSuffix) && !strings.HasPrefix(name, ".")
}

func (b *bundle) add(e entry, bare string) error {
	bare = strings.ToLower(bare)
	if other, ok := b.files[bare]; ok {
		return &sensors.InputError{File: b.name, What: finding.New("plain.two_files", packed.Cut("one", other.name, 80), packed.Cut("other", e.name, 80)),
			Remedy: finding.New("plain.remove_one")}
	}
	b.files[bare] = e
	return nil
}

// collect makes a bundle of the files that belong to a log.
func collect(name string, all []packed.Entry, err error) (*bundle, error) {
	if err != nil {
		return nil, err
	}
	b := &bundle{name: name, files: map[string]entry{}}
	for _, e := range all {
		if err := b.add(entry{name: e.Name, size: e.Size, open: e.Open}, e.Bare); err != nil {
			return nil, err
		}
	}
	return b, nil
}

// folder lists the files of a log in a directory of fsys.
func folder(fsys fs.FS, name string) (*bundle, error) {
	all, err := packed.Folder(fsys, name, isWanted)
	return collect(name, all, err)
}

// archive lists the files of a log in a zip, at its top or in one folder.
func archive(r io.ReaderAt, size int64, name string) (*bundle, error) {
	all, err := packed.Archive(r, size, name, isWanted)
	return collect(name, all, err)
}

// with opens a file of the log for the duration of a call. A missing file is
// not an error: found is false.
func (b *bundle) with(bare string, use func(file) error) (found bool, err error) {
	e, ok := b.files[bare]
	if !ok {
		return false, nil
	}
	in, err := e.open()
	if err != nil {
		return true, packed.AsInput(e.name, 0, err)
	}
	defer in.Close() // errors do not matter after reading
	return true, use(file{name: e.name, size: e.size, in: in})
}

func (b *bundle) lacks(bare string, remedy finding.Finding) error {
	return &sensors.InputError{File: b.name, What: finding.New("plain.file_missing", finding.Text("file", bare)), Remedy: remedy}
}

// nmeaFiles returns the bare names of the satellite sentences in the log.
func (b *bundle) nmeaFiles() (names []string) {
	for bare := range b.files {
		if strings.HasSuffix(bare, nmeaSuffix) {
			names = append(names, bare)
		}
	}
	return names
}
