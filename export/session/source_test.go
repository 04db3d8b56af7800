package session

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"stillair/sensors"
)

// TestFileIsNotTakenIntoMemory reads a file of 400 MiB of rubbish between parts
// of a session: the session is read, and memory stays small.
func TestFileIsNotTakenIntoMemory(t *testing.T) {
	path := filepath.Join(t.TempDir(), "big.jsonl.gz")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	whole := written(t, invented(4, 20))
	const hole = 400 << 20
	for _, part := range []struct {
		data []byte
		at   int64
	}{{whole, 0}, {whole[partEnds(t, whole)[3]:], hole}} {
		if _, err := f.WriteAt(part.data, part.at); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		t.Fatal(err)
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	rec, err := Read(f, "big.jsonl.gz")
	runtime.ReadMemStats(&after)
	if err != nil || len(rec.Log.Fixes) != 4 {
		t.Fatalf("%v", err)
	}
	if grown := after.TotalAlloc - before.TotalAlloc; grown > 8<<20 {
		t.Errorf("%d MiB were allocated", grown>>20)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
}

// TestAnyReader reads the same file through a reader that cannot seek.
func TestAnyReader(t *testing.T) {
	log := invented(4, 20)
	data := written(t, log)
	rec, err := Read(io.MultiReader(bytes.NewReader(data[:500]), bytes.NewReader(data[500:])), "piped")
	if err != nil || !sameSamples(log, rec.Log) {
		t.Errorf("%v", err)
	}
	r := bytes.NewReader(append([]byte("before"), data...))
	if _, err := r.Seek(6, io.SeekStart); err != nil {
		t.Fatal(err)
	}
	if rec, err = Read(r, "from the middle"); err != nil || !sameSamples(log, rec.Log) {
		t.Errorf("%v", err)
	}
}

// TestBeginningSpoilt checks that the rest of a file can be read without its
// first bytes, as after a power cut that left the first block empty.
func TestBeginningSpoilt(t *testing.T) {
	log := invented(5, 20)
	data := written(t, log)
	clear(data[:10])
	rec := read(t, data)
	if !sameSamples(log, rec.Log) || len(rec.Log.Notes) == 0 {
		t.Errorf("%d samples came back; notes %v", samples(rec.Log), rec.Log.Notes)
	}
}

// failing is a storage that cannot be read beyond a position.
type failing struct {
	*bytes.Reader
	from int64
}

var errMedium = errors.New("input/output error")

func (f failing) ReadAt(p []byte, at int64) (int, error) {
	if at+int64(len(p)) > f.from {
		n := 0
		if at < f.from {
			n, _ = f.Reader.ReadAt(p[:f.from-at], at)
		}
		return n, errMedium
	}
	return f.Reader.ReadAt(p, at)
}

// TestStorageCannotBeRead checks that the readable part of a failing medium is
// kept, and that the rest is reported.
func TestStorageCannotBeRead(t *testing.T) {
	data := written(t, invented(8, 20))
	end := partEnds(t, data)[5]
	want := samples(read(t, data[:end]).Log)
	rec, err := Read(failing{bytes.NewReader(data), int64(end) + 40}, "worn")
	if err != nil || samples(rec.Log) != want {
		t.Fatalf("%v", err)
	}
	if len(rec.Log.Notes) == 0 || rec.Closed {
		t.Errorf("closed %v, notes %v", rec.Closed, rec.Log.Notes)
	}
	_, err = Read(failing{bytes.NewReader(data), 2}, "worn")
	var input *sensors.InputError
	if !errors.As(err, &input) || !errors.Is(err, errMedium) || !strings.Contains(err.Error(), "input.copy_again") {
		t.Errorf("%v", err)
	}
}
