package session

import (
	"compress/gzip"
	"errors"
	"fmt"
	"io"
)

// pack returns text as one gzip member of its own memory.
func (w *Writer) pack(text []byte) []byte {
	w.packd.Reset()
	if w.gz == nil {
		w.gz = gzip.NewWriter(&w.packd)
	} else {
		w.gz.Reset(&w.packd)
	}
	_, err := w.gz.Write(text)
	if err = errors.Join(err, w.gz.Close()); err != nil {
		panic("session: gzip into memory failed: " + err.Error())
	}
	return append([]byte(nil), w.packd.Bytes()...)
}

// queue puts a part behind those that wait, and gives up the oldest where they
// become too many.
func (w *Writer) queue(part []byte) {
	w.backlog = append(w.backlog, part)
	w.waiting += len(part)
	for w.waiting > backlogBytes {
		w.waiting -= len(w.backlog[0])
		w.backlog = w.backlog[1:]
		w.lost++
	}
}

// drain appends what waits and syncs. A part whose append failed is appended
// again as a whole: a reader steps over the torn copy.
func (w *Writer) drain() error {
	for len(w.backlog) > 0 {
		part := w.backlog[0]
		if err := w.store.Append(part); err != nil {
			return w.storeError("writing", err)
		}
		w.backlog, w.waiting = w.backlog[1:], w.waiting-len(part)
		w.written += int64(len(part))
		w.unsync = true
	}
	if w.unsync {
		if err := w.store.Sync(); err != nil {
			return w.storeError("syncing", err)
		}
		w.unsync = false
	}
	if w.lost > 0 {
		return fmt.Errorf("%w: %d parts of about a second", ErrBacklog, w.lost)
	}
	return nil
}

func (w *Writer) storeError(doing string, err error) error {
	if w.lost > 0 {
		err = errors.Join(err, ErrBacklog)
	}
	return fmt.Errorf("%s the session file: %w", doing, err)
}

// File is what ToFile needs of an *os.File.
type File interface {
	io.Writer
	Sync() error
}

// ToFile returns a store that appends to f, which must be open at its end.
func ToFile(f File) Store { return fileStore{f} }

type fileStore struct{ f File }

func (s fileStore) Append(p []byte) error {
	_, err := s.f.Write(p)
	return err
}

func (s fileStore) Sync() error { return s.f.Sync() }
