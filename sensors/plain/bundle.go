package plain

import (
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
		return &sensors.InputError{File: b.name, What: finding.New("plain.two_files", cut("one", other.name, 80), cut("other", e.name, 80)),
			Remedy: finding.New("plain.remove_one")}
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
			return nil, &sensors.InputError{File: shown, What: finding.New("plain.no_regular_file"), Remedy: finding.New("plain.put_file")}
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

func (b *bundle) lacks(bare string, remedy finding.Finding) error {
	return &sensors.InputError{File: b.name, What: finding.New("plain.file_missing", finding.Text("file", bare)), Remedy: remedy}
}

// cut is a name or a cell as a finding shows it: of at most that many bytes.
func cut[S string | []byte](name string, s S, most int) finding.Arg {
	return finding.Text(name, strings.ToValidUTF8(string(s[:min(len(s), most)]), "�"))
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
