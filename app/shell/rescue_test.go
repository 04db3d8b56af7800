package shell_test

import (
	"bytes"
	"context"
	"crypto/rand"
	"syscall"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/export/session"
	"stillair/sensors"
)

// fixes is a source of a few fixes, after which the storage fails for good.
type fixes struct{ files *platformtest.Memory }

func (f fixes) Run(ctx context.Context, sink sensors.Sink) error {
	for i := range 40 {
		if i == 20 {
			f.files.Fail(syscall.EIO)
		}
		sink.Fix(sensors.NewFix(float64(i), 20))
		time.Sleep(20 * time.Millisecond)
	}
	return nil
}

// TestWhatIsNotStoredIsHandedOver ends a ride on a storage that fails: the whole
// ride is shared as one file.
func TestWhatIsNotStoredIsHandedOver(t *testing.T) {
	files := platformtest.NewMemory()
	out := &outlet{shared: map[string][]byte{}}
	calls := 0
	h := openOn(t, &platform.Device{Files: files, Clock: platform.NewSystemClock(), Random: rand.Reader, Locale: "en-IE", Share: out,
		Source: func() sensors.Source {
			if calls++; calls == 1 { // the watch before the ride
				return silent{}
			}
			return fixes{files}
		}})
	h.touch("Start recording")
	h.await("There is no ride in this recording", "Nothing to measure in this ride") // by how long a busy machine let it go on
	data := out.await(".jsonl.gz")
	rec, err := session.Read(bytes.NewReader(data), "handed over")
	if err != nil || len(rec.Log.Fixes) != 40 || !rec.Closed || len(rec.Missing)+len(rec.Unstored) > 0 {
		t.Errorf("%+v, %v", rec, err)
	}
}
