package device

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/sensors"
	"stillair/sensors/device/web"
	"stillair/sensors/sourcetest"
)

// These tests run in a browser whose sensors simulate a phone at rest;
// .ci/browser/gotest.mjs starts them.

func TestBrowserFilesKeepTheContract(t *testing.T) {
	filesKeepTheContract(t, web.OpenFiles)
}

// TestTablesKeepTheContract is for a browser without a private folder.
func TestTablesKeepTheContract(t *testing.T) {
	filesKeepTheContract(t, web.OpenTables)
}

func filesKeepTheContract(t *testing.T, open func(name string) (*web.Files, error)) {
	t.Helper()
	n := 0
	platformtest.TestFiles(t, func(t *testing.T) platform.Files {
		n++
		f, err := open(fmt.Sprintf("contract-%d-%d", n, rand.Int()))
		if err != nil {
			t.Fatal(err)
		}
		return browserFiles{f}
	})
}

func TestBrowserSourceKeepsTheContract(t *testing.T) {
	d, err := Open()
	if err != nil {
		t.Fatal(err)
	}
	sourcetest.Contract(t, func() sensors.Source { return d.Source() }, sourcetest.Samples(400), sourcetest.Patience(8*time.Second))
}

// TestBrowserDelivers checks that the simulated readings arrive: 60 Hz of
// motion with turn rates and 1 Hz of fixes with a speed.
func TestBrowserDelivers(t *testing.T) {
	d, err := Open()
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := contextFor(t, 6*time.Second)
	defer cancel()
	log, _ := sensors.Collect(ctx, d.Source())
	turns := 0
	for _, m := range log.Motion {
		if m.HasTurn() {
			turns++
		}
	}
	if n := len(log.Motion); n < 300 || turns != n {
		t.Errorf("%d readings of motion in 6 s, %d with a turn rate", n, turns)
	}
	if n := len(log.Fixes); n < 4 {
		t.Errorf("%d fixes in 6 s", n)
	}
	t.Logf("%d readings of motion, %d fixes, states %v", len(log.Motion), len(log.Fixes), log.States)
}

func TestBrowserTellsItsRoom(t *testing.T) {
	d, err := Open()
	if err != nil {
		t.Fatal(err)
	}
	free, err := d.Files.Free()
	if err != nil || free < 1<<20 {
		t.Errorf("free = %d, %v", free, err)
	}
}

func contextFor(t *testing.T, d time.Duration) (context.Context, context.CancelFunc) {
	return context.WithTimeout(t.Context(), d)
}

// BenchmarkAppend is one second of a recording: 4 KiB, on the disk.
func BenchmarkAppend(b *testing.B) {
	f, err := web.OpenFiles(fmt.Sprintf("bench-%d", rand.Int()))
	if err != nil {
		b.Fatal(err)
	}
	file, err := f.Create("a")
	if err != nil {
		b.Fatal(err)
	}
	part := make([]byte, 4096)
	for b.Loop() {
		if _, err := file.Write(part); err != nil {
			b.Fatal(err)
		}
		if err := file.Sync(); err != nil {
			b.Fatal(err)
		}
	}
}
