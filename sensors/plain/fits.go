package plain

import (
	"bytes"
	"io"
	"io/fs"
)

// Fits reports whether the folder holds a plain log, whole or not: one of its
// files with at least one of its columns. The names alone do not suffice, since
// other programs' tables may have them too.
func Fits(fsys fs.FS) bool {
	b, err := folder(fsys, "")
	return err == nil && b.fits()
}

// FitsZip is Fits for a zip archive of the given size. An archive that cannot be
// read fits, so that Read reports the reason.
func FitsZip(r io.ReaderAt, size int64) bool {
	b, err := archive(r, size, "")
	return err != nil || b.fits()
}

func (b *bundle) fits() bool {
	if _, ok := b.files[rideFile]; ok {
		return true
	}
	for name, columns := range map[string][]column{motionFile: motionColumns, gnssFile: gnssColumns} {
		fits := false
		found, err := b.with(name, func(f file) error {
			head := make([]byte, 4096)
			n, err := io.ReadFull(f.in, head)
			line, _, _ := bytes.Cut(head[:n], []byte{'\n'})
			for _, c := range columns {
				fits = fits || bytes.Contains(line, []byte(c.name))
			}
			if n > 0 {
				return nil
			}
			return err
		})
		if found && (fits || err != nil) {
			return true
		}
	}
	return false
}
