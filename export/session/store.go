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
		w.keepUntilSynced(part)
	}
	if err := w.sync(); err != nil {
		return w.storeError("syncing", err)
	}
	if w.lost > 0 {
		return fmt.Errorf("%w: %d parts of about a second", ErrBacklog, w.lost)
	}
	return nil
}

// keepUntilSynced remembers a part that was appended and may still get lost.
func (w *Writer) keepUntilSynced(part []byte) {
	w.unsynced = append(w.unsynced, part)
	w.unsyncedBytes += len(part)
	for w.unsyncedBytes > backlogBytes {
		w.unsyncedBytes -= len(w.unsynced[0])
		w.unsynced = w.unsynced[1:]
	}
}

// sync syncs what was appended. Systems that could not write a page may count
// it as written from then on (Rebello et al., Can applications recover from
// fsync failures?, USENIX ATC 2020), so a success after a failure proves
// nothing for the parts before it: they are appended and synced once more. A
// reader leaves doubles out.
func (w *Writer) sync() error {
	if len(w.unsynced) == 0 {
		return nil
	}
	if err := w.store.Sync(); err != nil {
		w.doubted = true
		return err
	}
	if w.doubted {
		for _, part := range w.unsynced {
			if err := w.store.Append(part); err != nil {
				return err
			}
			w.written += int64(len(part))
		}
		if err := w.store.Sync(); err != nil {
			return err
		}
	}
	w.unsynced, w.unsyncedBytes, w.doubted = nil, 0, false
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
