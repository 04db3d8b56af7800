package plain

import (
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"

	"stillair/sensors"
	"stillair/sensors/finding"
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
	name string // as shown to people
	size int64
	open func() (io.ReadCloser, error)
}

// bundle is the files of a log by their bare names in lower case.
type bundle struct {
	name  string // of the folder or archive
	files map[string]entry
}

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
		return &sensors.InputError{File: b.name, What: finding.Said(fmt.Sprintf("%.80q and %.80q are both there", other.name, e.name)),
			Remedy: finding.Said("a log is one ride; take one of them out")}
	}
	b.files[bare] = e
	return nil
}

// folder lists the files of a log in a directory of fsys.
func folder(fsys fs.FS, name string) (*bundle, error) {
	list, err := fs.ReadDir(fsys, ".")
	if err != nil {
		return nil, asInput(name, 0, err)
	}
	b := &bundle{name: name, files: map[string]entry{}}
	for _, f := range list {
		if !isWanted(f.Name()) {
			continue
		}
		shown := path.Join(name, f.Name())
		info, err := fs.Stat(fsys, f.Name()) // of what a link points to
		if err != nil {
			return nil, asInput(shown, 0, err)
		}
		if !info.Mode().IsRegular() {
			return nil, &sensors.InputError{File: shown, What: finding.Said("this is no ordinary file"), Remedy: finding.Said("put the file itself there")}
		}
		e := entry{name: shown, size: info.Size(), open: func() (io.ReadCloser, error) { return fsys.Open(f.Name()) }}
		if err := b.add(e, f.Name()); err != nil {
			return nil, err
		}
	}
	return b, nil
}

// with opens a file of the log for the time of a call. A file that may be
// missing is no error: found is false.
func (b *bundle) with(bare string, use func(file) error) (found bool, err error) {
	e, ok := b.files[bare]
	if !ok {
		return false, nil
	}
	in, err := e.open()
	if err != nil {
		return true, asInput(e.name, 0, err)
	}
	defer in.Close() // it was only read
	return true, use(file{name: e.name, size: e.size, in: in})
}

func (b *bundle) lacks(bare, mend string) error {
	return &sensors.InputError{File: b.name, What: finding.Said(bare + " is missing"), Remedy: finding.Said(mend)}
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
