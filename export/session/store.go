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

// row is parts in a row, bounded by their bytes.
type row struct {
	parts [][]byte
	bytes int
}

// add appends a part, and drops the oldest ones if there are too many. It
// returns the number dropped.
func (r *row) add(part []byte) (lost int) {
	r.parts = append(r.parts, part)
	r.bytes += len(part)
	for r.bytes > backlogBytes {
		r.drop()
		lost++
	}
	return lost
}

// drop removes the oldest.
func (r *row) drop() {
	r.bytes -= len(r.parts[0])
	r.parts = r.parts[1:]
}

// drain appends the waiting parts and syncs. A part whose append failed is
// appended again as a whole: a reader skips the torn copy.
func (w *Writer) drain() error {
	for len(w.backlog.parts) > 0 {
		part := w.backlog.parts[0]
		if err := w.append(part); err != nil {
			return w.storeError("writing", err)
		}
		w.backlog.drop()
		w.unsynced.add(part) // if the row drops one, it is in the file unless the failed syncs lost it
	}
	if err := w.sync(); err != nil {
		return w.storeError("syncing", err)
	}
	if w.lost > 0 {
		return fmt.Errorf("%w: %d parts of about a second", ErrBacklog, w.lost)
	}
	return nil
}

func (w *Writer) append(part []byte) error {
	err := w.store.Append(part)
	if err == nil {
		w.written += int64(len(part))
	}
	return err
}

// sync syncs what was appended. Systems that could not write a page may count
// it as written from then on (Rebello et al., Can applications recover from
// fsync failures?, USENIX ATC 2020), so a success after a failure proves
// nothing for the parts before it: they are appended and synced once more. A
// reader leaves doubles out.
func (w *Writer) sync() error {
	if len(w.unsynced.parts) == 0 {
		return nil
	}
	if err := w.store.Sync(); err != nil {
		w.doubted = true
		return err
	}
	if w.doubted {
		for _, part := range w.unsynced.parts {
			if err := w.append(part); err != nil {
				return err
			}
		}
		if err := w.store.Sync(); err != nil {
			return err
		}
	}
	w.unsynced, w.doubted, w.kept = row{}, false, w.parts
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
	n, err := s.f.Write(p)
	if err == nil && n < len(p) {
		err = io.ErrShortWrite
	}
	return err
}

func (s fileStore) Sync() error { return s.f.Sync() }
