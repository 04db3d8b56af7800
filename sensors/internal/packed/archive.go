package packed

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"io"
	"io/fs"
	"path"
	"strings"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Limits of an archive.
const (
	mostDirectory = 1 << 20  // bytes of its table of contents, some ten thousand files
	mostUnpacked  = 2 << 30  // bytes of one file
	bombSize      = 16 << 20 // bytes from which the ratio is checked
	mostRatio     = 100      // recorded readings shrink to a fifth, generated ones to a thirtieth
)

// Archive lists the wanted files of a zip archive of the given size, in any
// folder; name is for messages.
func Archive(r io.ReaderAt, size int64, name string, wanted func(bare string) bool) ([]Entry, error) {
	fail := func(what, remedy finding.Finding) ([]Entry, error) {
		return nil, &sensors.InputError{File: name, What: what, Remedy: remedy}
	}
	switch n, ok := directorySize(r, size); {
	case !ok:
		return fail(finding.New("archive.no_directory"), finding.New("archive.pack_again"))
	case n > mostDirectory:
		return fail(finding.New("archive.many_files"), finding.New("archive.one_ride"))
	}
	z, err := zip.NewReader(r, size)
	if err != nil {
		return nil, AsInput(name, 0, err)
	}
	var all []Entry
	for _, f := range z.File {
		inside := strings.TrimSuffix(f.Name, "/")
		if !fs.ValidPath(inside) || strings.ContainsAny(inside, "\\\x00") {
			return fail(finding.New("archive.outside", Cut("name", f.Name, 80)), finding.New("archive.distrust"))
		}
		bare := path.Base(inside)
		if f.Mode().IsDir() || !wanted(bare) || strings.HasPrefix(inside, "__MACOSX/") {
			continue
		}
		shown := name + "/" + inside
		switch {
		case f.Flags&1 != 0:
			return nil, &sensors.InputError{File: shown, What: finding.New("archive.locked"), Remedy: finding.New("archive.no_password")}
		case f.UncompressedSize64 > mostUnpacked,
			f.UncompressedSize64 > bombSize && f.UncompressedSize64 > mostRatio*f.CompressedSize64:
			return nil, &sensors.InputError{File: shown, What: finding.New("archive.bomb",
				finding.Size("packed", float64(f.CompressedSize64)), finding.Size("unpacked", float64(f.UncompressedSize64))), Remedy: finding.New("archive.distrust")}
		}
		all = append(all, Entry{Name: shown, Bare: bare, Size: int64(f.UncompressedSize64), Open: f.Open})
	}
	return all, nil
}

// directorySize finds the size of a zip's table of contents before it is read
// into memory, from the record at the archive's end (APPNOTE.TXT 4.3.16).
func directorySize(r io.ReaderAt, size int64) (int64, bool) {
	const record, longestComment = 22, 1<<16 - 1
	tail := make([]byte, min(size, record+longestComment))
	if _, err := r.ReadAt(tail, size-int64(len(tail))); err != nil && err != io.EOF {
		return 0, false
	}
	for i := len(tail) - record; i >= 0; i-- {
		if !bytes.HasPrefix(tail[i:], []byte("PK\x05\x06")) {
			continue
		}
		length := int64(binary.LittleEndian.Uint32(tail[i+12:]))
		offset := int64(binary.LittleEndian.Uint32(tail[i+16:]))
		end := size - int64(len(tail)) + int64(i)
		return max(length, end-offset), true
	}
	return 0, false
}
