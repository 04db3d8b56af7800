package session

import (
	"bytes"
	"errors"
	"io"
)

// open returns r from its current position to its end as an io.ReaderAt. A
// reader that cannot seek is read into memory, up to a byte more than a session
// may have.
func open(r io.Reader) (*io.SectionReader, error) {
	type placed interface {
		io.ReaderAt
		io.Seeker
	}
	if f, ok := r.(placed); ok {
		at, err := f.Seek(0, io.SeekCurrent)
		if err == nil {
			var end int64
			if end, err = f.Seek(0, io.SeekEnd); err == nil {
				return io.NewSectionReader(f, at, end-at), nil
			}
		}
		// A pipe has the methods and cannot do it.
	}
	data, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err != nil {
		return nil, err
	}
	return io.NewSectionReader(bytes.NewReader(data), 0, int64(len(data))), nil
}

// find returns where the next part may begin from at on, -1 where nothing does.
func (d *decoder) find(src io.ReaderAt, at int64) (int64, error) {
	look := d.look[:len(magic)] // the place itself, where it nearly always is
	for {
		n, err := src.ReadAt(look, at)
		if i := bytes.Index(look[:n], magic); i >= 0 {
			return at + int64(i), nil
		}
		if errors.Is(err, io.EOF) {
			return -1, nil
		}
		if err != nil {
			return -1, err
		}
		at += int64(n - len(magic) + 1)
		look = d.look
	}
}
