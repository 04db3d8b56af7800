// Package packed lists the files of a folder or of a zip archive, without
// trusting either.
package packed

import (
	"errors"
	"io"
	"io/fs"
	"path"
	"strings"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Entry is one file, not yet open.
type Entry struct {
	Name string // as shown to people
	Bare string // without its folder
	Size int64  // bytes once unpacked
	Open func() (io.ReadCloser, error)
}

// Folder lists the wanted files at the top of fsys; name is for people.
func Folder(fsys fs.FS, name string, wanted func(bare string) bool) ([]Entry, error) {
	list, err := fs.ReadDir(fsys, ".")
	if err != nil {
		return nil, AsInput(name, 0, err)
	}
	var all []Entry
	for _, f := range list {
		if !wanted(f.Name()) {
			continue
		}
		shown := path.Join(name, f.Name())
		info, err := fs.Stat(fsys, f.Name()) // of the target of a link
		if err != nil {
			return nil, AsInput(shown, 0, err)
		}
		if !info.Mode().IsRegular() {
			return nil, &sensors.InputError{File: shown, What: finding.New("plain.no_regular_file"), Remedy: finding.New("plain.put_file")}
		}
		all = append(all, Entry{Name: shown, Bare: f.Name(), Size: info.Size(),
			Open: func() (io.ReadCloser, error) { return fsys.Open(f.Name()) }})
	}
	return all, nil
}

// AsInput adds the place to an error of reading an entry.
func AsInput(name string, line int, err error) error {
	var input *sensors.InputError
	if errors.As(err, &input) {
		return err
	}
	return sensors.Unreadable(name, line, err)
}

// Cut truncates a name or a cell for a finding to at most that many bytes.
func Cut[S string | []byte](name string, s S, most int) finding.Arg {
	return finding.Text(name, strings.ToValidUTF8(string(s[:min(len(s), most)]), "�"))
}
